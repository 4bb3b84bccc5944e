import { stringify } from 'csv-stringify/sync';
import { applicationsOfFarm } from '../../db/repositories/applications.ts';
import { compostBatches, teaBatches } from '../../db/repositories/compost.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { soilTests } from '../../db/repositories/soil-tests.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { manureInterval } from '../../planner/fertility/manure-interval.ts';
import { significant } from '../../planner/units/significant.ts';
import { loadBeds } from '../beds/load-beds.ts';
import type { Download } from '../http/downloads.ts';
import type { Ctx } from '../procedure.ts';
import { compostView } from './compost-view.ts';

type Cell = string | number | null;

const csv = (name: string, head: readonly string[], rows: readonly (readonly Cell[])[]): Download => ({
  name: `${name}.csv`,
  type: 'text/csv; charset=utf-8',
  body: stringify([head as string[], ...rows.map((row) => [...row])], { escape_formulas: true, bom: true }),
});

const plain = (value: number | null | undefined): Cell =>
  value === null || value === undefined ? null : Number(value.toPrecision(6));

/** Every application of a material: what an inspection of organic production asks for. */
export function applicationRecords({ db }: Ctx): Download {
  const farm = farmOfFile(db);
  const areas = new Map(loadBeds(db).map((each) => [each.bed.id, each.figures?.area_m2 ?? null]));
  const rows = applicationsOfFarm(db)
    .filter((row) => row.application.state !== 'skipped')
    .map((row): readonly Cell[] => {
      const { application, material } = row;
      const area = areas.get(row.bedId) ?? null;
      const worked = application.incorporatedDate;
      const earliest = material.animalOrigin === 'raw' && worked !== null ? manureInterval(worked, true).firstHarvest : null;
      return [
        farm?.name ?? '',
        application.state,
        application.date,
        application.time,
        row.code,
        plain(area),
        material.name,
        material.kind,
        material.organicUse,
        material.animalOrigin,
        row.lot ?? '',
        row.supplier ?? '',
        plain(row.amount_kg),
        area === null || area === 0 ? null : plain(row.amount_kg / area),
        application.method,
        worked,
        application.weather,
        application.who,
        application.reason,
        earliest,
        application.note,
        material.source,
      ];
    });
  return csv(
    'applications',
    [
      'farm',
      'state',
      'date',
      'time',
      'bed',
      'area_m2',
      'material',
      'kind',
      'organic_use',
      'animal_origin',
      'lot',
      'supplier',
      'amount_kg',
      'rate_kg_per_m2',
      'method',
      'incorporated',
      'weather',
      'by',
      'reason',
      'earliest_harvest_if_touching_soil',
      'note',
      'analysis_source',
    ],
    rows,
  );
}

/** Heaps and teas: ingredients, starting C:N, temperatures, turnings, and the time-temperature arithmetic. */
export function compostRecords({ db }: Ctx): Download {
  const heaps = compostBatches(db).map(compostView);
  const rows = heaps.flatMap((heap): (readonly Cell[])[] =>
    (heap.readings.length === 0 ? [null] : heap.readings).map((reading) => [
      'compost',
      heap.code,
      heap.startedDate,
      heap.curedDate,
      heap.method,
      heap.place,
      heap.ingredients.map((each) => `${each.name} ${significant(each.amount_kg, 3)} kg`).join('; '),
      plain(heap.mix?.carbonToNitrogen),
      plain(heap.mix?.moistureShare),
      reading?.date ?? null,
      plain(reading?.temperature_C),
      reading === null ? null : reading.turned ? 'yes' : 'no',
      reading?.who ?? null,
      heap.rule?.daysInBand ?? null,
      heap.rule?.turnings ?? null,
    ]),
  );
  const teas = teaBatches(db).map(({ tea, compost, beds }): readonly Cell[] => [
    'tea',
    tea.code,
    tea.startedAt,
    tea.appliedDate,
    tea.additives === '' ? 'no additives' : `additives: ${tea.additives}`,
    tea.waterSource,
    `compost ${compost ?? ''} ${significant(tea.compost_kg, 3)} kg; beds ${beds.map((bed) => bed.code).join(' ')}`,
    null,
    null,
    tea.useByAt,
    null,
    null,
    null,
    null,
    null,
  ]);
  const head = [
    'kind',
    'batch',
    'started',
    'ended',
    'method',
    'place_or_water',
    'ingredients',
    'starting_C_to_N',
    'starting_moisture_share',
    'reading_date',
    'temperature_C',
    'turned',
    'by',
    'days_131_to_170_F',
    'turnings',
  ];
  return csv('compost', head, [...rows, ...teas]);
}

/** Every laboratory sheet, one figure a line. */
export function soilTestRecords({ db }: Ctx): Download {
  const rows = soilTests(db).flatMap(({ test, values, beds }) =>
    values.map((value): readonly Cell[] => [
      test.date as IsoDate,
      test.laboratory,
      test.sample,
      beds.map((bed) => bed.code).join(' '),
      test.kind,
      test.method,
      test.ph,
      test.bufferPh,
      test.bufferMethod,
      plain(test.organicMatterShare),
      test.cec_meq_per_100g,
      test.ec_dS_per_m,
      value.nutrient,
      plain(value.value_mg_per_kg),
      value.enteredValue,
      value.enteredUnit,
    ]),
  );
  const head = [
    'date',
    'laboratory',
    'sample',
    'beds',
    'kind',
    'method',
    'ph',
    'buffer_ph',
    'buffer_method',
    'organic_matter_share',
    'cec_meq_per_100g',
    'ec_dS_per_m',
    'nutrient',
    'value_mg_per_kg',
    'entered_value',
    'entered_unit',
  ];
  return csv('soil-tests', head, rows);
}
