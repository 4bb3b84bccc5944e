import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { putFact } from '../../db/repositories/crops.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import {
  addHarvests,
  allLotCodes,
  changeHarvest,
  countHarvests,
  harvestLog,
  harvestOfId,
  lotBalances,
  markHarvesting,
  plantingFacts,
  recordHarvest,
  removeHarvest,
  removeSaleUnit,
  salesOfHarvest,
  saleUnitsOfFarm,
  setSaleUnit,
} from '../../db/repositories/harvests.ts';
import { addLabour } from '../../db/repositories/labour.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { addDays, type IsoDate, isIsoDate } from '../../planner/calendar.ts';
import { harvestFaults } from '../../planner/costs/harvest-check.ts';
import { netOfUnit_kg } from '../../planner/costs/units-of-sale.ts';
import { explainYield } from '../../planner/costs/yield-against.ts';
import { InputError } from '../../planner/errors.ts';
import { Refusal } from '../errors.ts';
import { entryChoices } from '../harvest/entry-choices.ts';
import { importFacts } from '../harvest/import-facts.ts';
import { listedUnits } from '../harvest/listed-units.ts';
import { readHarvestCsv } from '../harvest/read-harvest-csv.ts';
import { writeHarvest, writeTime } from '../harvest/write-harvests.ts';
import { yieldsOfSeason } from '../harvest/yields-of-season.ts';
import { change, job, nothing, read } from '../procedure.ts';

const isoDate = z.string().refine(isIsoDate, 'A calendar date is needed, as 2026-07-09.');
const amount = z.number('Enter an amount.').positive('A harvest is more than nothing.');
const money = z.int('Money is kept in whole minor units.').nonnegative('This cannot be negative.');
const MOST_LINES = 5000;
const IMPORT_LIMIT_CHARS = 30_000_000;

const entry = z.object({
  date: isoDate,
  plantingId: z.string().min(1, 'Choose a planting.'),
  bedId: z.string().nullable().default(null),
  amount,
  unit: z.string().trim().min(1, 'Choose a unit.').max(60),
  unit_kg: z.number().positive('A unit weighs more than nothing.').nullable().default(null),
  unitSource: z.string().max(300).default(''),
  grade: z.string().trim().min(1).max(40).default('first'),
  outletId: z.string().nullable().default(null),
  price_minor: money.nullable().default(null),
  culls_kg: z.number().nonnegative('Culls cannot be negative.').default(0),
  cullReason: z.string().max(200).default(''),
  labour_min: z.number().nonnegative('Time cannot be negative.').nullable().default(null),
  picker: z.string().max(60).default(''),
  conditions: z.string().max(200).default(''),
  note: z.string().max(500).default(''),
  confirmed: z.boolean().default(false),
});

const editable = entry
  .pick({
    date: true,
    amount: true,
    unit: true,
    grade: true,
    outletId: true,
    price_minor: true,
    culls_kg: true,
    cullReason: true,
    labour_min: true,
    picker: true,
    note: true,
  })
  .partial();

export const harvest = {
  choices: read({
    input: z.object({ date: isoDate }),
    run: ({ db, now, program }, { date }) => entryChoices(db, date as IsoDate, now, program.places.resources),
  }),
  add: change({
    note: ({ amount: n, unit, plantingId }, { db }) => `Log a harvest of ${nameOf(db, 'planting', plantingId)}: ${n} ${unit}`,
    input: entry,
    run: ({ db, today, now }, input) => writeHarvest(db, { ...input, date: input.date as IsoDate }, { today, now }),
  }),
  log: read({
    input: z.object({ from: isoDate, to: isoDate }),
    run: ({ db }, { from, to }) => ({
      rows: harvestLog(db, from, to, MOST_LINES),
      all: countHarvests(db, from, to),
      most: MOST_LINES,
    }),
  }),
  setMany: change({
    note: ({ edits }) => (edits.length === 1 ? 'Change a harvest' : `Change ${edits.length} harvests`),
    input: z.object({
      edits: z
        .array(z.object({ harvestId: z.string(), revision: z.int(), values: editable }))
        .min(1)
        .max(5000),
      confirmed: z.boolean().default(false),
    }),
    run({ db, today }, { edits, confirmed }) {
      for (const { harvestId, revision, values } of edits) {
        const before = harvestOfId(db, harvestId);
        const facts = before === undefined ? undefined : plantingFacts(db, before.plantingId);
        if (before === undefined || facts === undefined) throw new Refusal({ code: 'not-found', what: 'harvest' });
        const given = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
        const next = { ...before, ...given } as typeof before;
        const sameUnit = next.unit === before.unit && before.weight_kg !== null && before.amount > 0;
        const net_kg = sameUnit
          ? (before.weight_kg ?? 0) / before.amount
          : netOfUnit_kg(next.unit, facts.cropId, saleUnitsOfFarm(db));
        const faults = harvestFaults(
          { ...next, date: next.date as IsoDate, net_kg, confirmed },
          {
            name: `${facts.crop} ${facts.number}`,
            inBed: facts.inBed as IsoDate,
            cleared: facts.cleared as IsoDate | null,
            yieldUnit: facts.yieldUnit,
            record: recordHarvest(db, facts.cropId, next.unit),
            expected: facts.yieldTypical,
          },
          today,
        );
        if (faults.length > 0) throw new InputError(faults);
        const weight_kg = net_kg === null ? null : next.amount * net_kg;
        if (!changeHarvest(db, harvestId, revision, { ...given, weight_kg }))
          throw new Refusal({ code: 'changed-meanwhile', what: 'harvest' });
        if (values.labour_min !== undefined || values.date !== undefined)
          writeTime(db, harvestId, { ...next, date: next.date as IsoDate }, next.bedId);
      }
      return { changed: edits.length };
    },
  }),
  remove: change({
    note: ({ harvestIds }) => (harvestIds.length === 1 ? 'Take a harvest away' : `Take ${harvestIds.length} harvests away`),
    input: z.object({ harvestIds: z.array(z.string()).min(1).max(5000) }),
    run({ db }, { harvestIds }) {
      for (const id of harvestIds) {
        const row = harvestOfId(db, id);
        if (row === undefined) throw new Refusal({ code: 'not-found', what: 'harvest' });
        if (salesOfHarvest(db, id) > 0)
          throw new Refusal({ code: 'in-use', what: 'harvest' }, 'Something of this harvest was sold. Take the sale away first.');
        writeTime(db, id, { date: row.date as IsoDate, plantingId: row.plantingId, picker: row.picker, labour_min: null }, null);
        removeHarvest(db, id);
      }
      return { removed: harvestIds.length };
    },
  }),
  checkImport: job({
    kind: 'harvest-import',
    input: z.object({ text: z.string().min(1, 'The file is empty.').max(IMPORT_LIMIT_CHARS, 'This file is over 30 MB.') }),
    gather: ({ db, today }, { text }) => ({ text, facts: importFacts(db, today), taken: [...allLotCodes(db)] }),
  }),
  importAll: change({
    note: 'Import a file of harvests',
    input: z.object({ text: z.string().min(1, 'The file is empty.').max(IMPORT_LIMIT_CHARS, 'This file is over 30 MB.') }),
    run({ db, today, now }, { text }) {
      const reading = readHarvestCsv(text, importFacts(db, today), allLotCodes(db));
      if (reading.faults.length > 0)
        throw new InputError(
          reading.faults.slice(0, 100).map((fault) => ({
            path: `line.${fault.line}.${fault.column}`,
            code: 'row',
            message: `Line ${fault.line}, ${fault.column}: ${fault.message}`,
          })),
        );
      const wage_minor_per_h = farmOfFile(db)?.wage_minor_per_h ?? 0;
      const rows = reading.rows.map((row) => ({ ...row, id: newId<string>(), lotId: newId<string>() }));
      addHarvests(
        db,
        rows.map(({ lot: _, ...row }) => ({ ...row, createdAt: now })),
        rows.map((row) => ({ id: row.lotId, code: row.lot, date: row.date })),
      );
      addLabour(
        db,
        rows.flatMap((row) =>
          row.labour_min === null || row.labour_min <= 0
            ? []
            : [
                {
                  id: newId(),
                  date: row.date,
                  task: 'harvest',
                  minutes: row.labour_min,
                  wage_minor_per_h,
                  plantingId: row.plantingId,
                  bedId: row.bedId,
                  harvestId: row.id,
                  who: row.picker,
                },
              ],
        ),
      );
      const first = new Map<string, string>();
      for (const row of rows) {
        const known = first.get(row.plantingId);
        if (known === undefined || row.date < known) first.set(row.plantingId, row.date);
      }
      markHarvesting(db, [...first.keys()], (id) => first.get(id) ?? '');
      return { added: rows.length };
    },
  }),
  lots: read({
    input: z.object({ date: isoDate }),
    run: ({ db }, { date }) =>
      lotBalances(db, { since: addDays(date as IsoDate, -60) }).map((lot) => ({ ...lot, left: lot.harvested - lot.gone })),
  }),
  yields: read({
    input: z.object({ seasonId: z.string() }),
    run: ({ db }, { seasonId }) => yieldsOfSeason(db, seasonId),
  }),
  explainYield: read({
    input: z.object({ seasonId: z.string(), plantingId: z.string() }),
    run({ db }, { seasonId, plantingId }) {
      const row = yieldsOfSeason(db, seasonId).find((each) => each.plantingId === plantingId);
      if (row === undefined) throw new Refusal({ code: 'not-found', what: 'planting' });
      return explainYield({ ...row, name: `${row.crop} ${row.number}` });
    },
  }),
  /** Writes what the farm's own harvests say of a crop's yield, for the next plan. */
  learn: change({
    note: ({ cropIds }) =>
      cropIds.length === 1
        ? 'Learn the yield of one crop from harvests'
        : `Learn the yields of ${cropIds.length} crops from harvests`,
    input: z.object({ seasonId: z.string(), cropIds: z.array(z.string()).min(1).max(500) }),
    run({ db }, { seasonId, cropIds }) {
      const rows = Map.groupBy(
        yieldsOfSeason(db, seasonId).filter((row) => cropIds.includes(row.cropId) && row.perM2 !== null && row.harvested > 0),
        (row) => row.cropId,
      );
      for (const [cropId, plantings] of rows) {
        const perM2 = plantings.map((row) => row.perM2 ?? 0).sort((a, b) => a - b);
        const area = plantings.reduce((sum, row) => sum + row.area_m2, 0);
        const whole = plantings.reduce((sum, row) => sum + row.harvested, 0);
        const say = (name: string, number: number) =>
          putFact(
            db,
            newId(),
            { cropId, varietyId: null, name, origin: 'learned' },
            { number, words: null, source: `own harvests, ${plantings.length} plantings` },
          );
        say('yield_typical_per_m2', whole / area);
        say('yield_low_per_m2', perM2[0] ?? 0);
        say('yield_high_per_m2', perM2.at(-1) ?? 0);
      }
      return { learned: rows.size };
    },
  }),
  units: read({
    input: nothing,
    run: ({ db, program }) => ({ own: saleUnitsOfFarm(db), listed: listedUnits(program.places.resources) }),
  }),
  setUnit: change({
    note: ({ unit }) => `Set the weight of one ${unit}`,
    input: z.object({
      cropId: z.string().nullable(),
      unit: z.string().trim().min(1, 'Name the unit.').max(60),
      net_kg: z.number().positive('A unit weighs more than nothing.').max(2000),
      source: z.string().max(300).default('own weighing'),
    }),
    run({ db }, input) {
      setSaleUnit(db, { ...input, id: newId() });
      return { unit: input.unit };
    },
  }),
  removeUnit: change({
    note: ({ saleUnitId }, { db }) => `Take away the unit of sale ${nameOf(db, 'saleUnit', saleUnitId)}`,
    input: z.object({ saleUnitId: z.string() }),
    run({ db }, { saleUnitId }) {
      removeSaleUnit(db, saleUnitId);
      return { saleUnitId };
    },
  }),
};
