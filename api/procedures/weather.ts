import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { changeFarm, farmOfFile } from '../../db/repositories/farm.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import {
  addStation,
  changeStation,
  daysOfStation,
  removeStation,
  replaceDays,
  stationOfId,
  stationsOfFarm,
} from '../../db/repositories/weather.ts';
import { fillGaps } from '../../planner/climate/fill-gaps.ts';
import { frostDays, frostYears } from '../../planner/climate/frost-dates.ts';
import { frostDate, YEARS_FOR_EMPIRICAL } from '../../planner/climate/frost-quantiles.ts';
import { weatherDoubts } from '../../planner/climate/weather-checks.ts';
import { longestDryRun, wetDry } from '../../planner/climate/wet-dry.ts';
import { refuse, requireRange } from '../../planner/errors.ts';
import { Refusal } from '../errors.ts';
import { act, change, nothing, read } from '../procedure.ts';
import { daysToKeep, previewOf, readWeatherFile } from '../water/read-weather-file.ts';
import { weatherDayOf, weatherOfFarm } from '../water/weather-record.ts';

const stationFields = z.object({
  name: z.string().trim().min(1, 'A station needs a name.').max(120),
  latitude_deg: z.number('The latitude is a number.'),
  longitude_deg: z.number('The longitude is a number.'),
  elevation_m: z.number('The elevation is a number.'),
  windHeight_m: z.number('The height of the wind meter is a number.'),
  source: z.string().trim().max(400),
});

/** @throws InputError naming the field */
function requireStation(fields: z.infer<typeof stationFields>): void {
  requireRange('latitude_deg', fields.latitude_deg, -90, 90, 'degrees');
  requireRange('longitude_deg', fields.longitude_deg, -180, 180, 'degrees');
  requireRange('elevation_m', fields.elevation_m, -430, 9000, 'm');
  requireRange('windHeight_m', fields.windHeight_m, 0.1, 100, 'm');
}

const text = z.string().max(30_000_000, 'A weather file has at most 30 million characters.');
const RISKS = [0.1, 0.5, 0.9] as const;

export const weather = {
  /** Stations, and the chosen record month by month. */
  record: read({
    input: nothing,
    run({ db }) {
      const farm = farmOfFile(db);
      if (farm === undefined) throw new Refusal({ code: 'not-found', what: 'farm' });
      const record = weatherOfFarm(db);
      const frosts = record === null ? [] : frostYears(record.days);
      return {
        farm: {
          latitude_deg: farm.latitude_deg,
          longitude_deg: farm.longitude_deg,
          elevation_m: farm.elevation_m,
          revision: farm.revision,
        },
        stationId: farm.stationId,
        stations: stationsOfFarm(db),
        methods: record?.methods ?? [],
        assumed: record?.assumed ?? [],
        doubts: record === null ? [] : weatherDoubts(record.days, record.place.latitude_deg).slice(0, 400),
        months: record === null ? [] : monthsOf(record.days),
        dryRuns:
          record === null
            ? []
            : record.years.map((year) => ({
                year,
                run: longestDryRun(record.days.filter((day) => day.date.startsWith(String(year)))),
              })),
        frosts,
        frostDates:
          frosts.length === 0
            ? []
            : RISKS.map((risk) => ({
                risk,
                spring: frostDate('spring', frostDays(frosts, 'spring'), risk).day,
                fall: frostDate('fall', frostDays(frosts, 'fall'), risk).day,
              })),
        frostYearsWanted: YEARS_FOR_EMPIRICAL,
      };
    },
  }),
  /** What a file holds and what is doubtful in it; nothing is kept. */
  preview: act({
    input: z.object({ text, latitude_deg: z.number() }),
    run(_, input) {
      requireRange('latitude_deg', input.latitude_deg, -90, 90, 'degrees');
      return previewOf(readWeatherFile(input.text), input.latitude_deg);
    },
  }),
  /** Keeps a file's days, under a new station or in the place of the same days of one. */
  importFile: change({
    note: ({ station }) => `Import the weather of ${station.name}`,
    input: z.object({
      text,
      stationId: z.string().nullable(),
      station: stationFields,
      fill: z.boolean(),
      skipFaults: z.boolean(),
    }),
    run({ db }, input) {
      requireStation(input.station);
      const found = readWeatherFile(input.text);
      if (found.faults.length > 0 && !input.skipFaults)
        refuse(
          'text',
          'bad-cells',
          `${found.faults.length} cells cannot be read; the first is in line ${found.faults[0]?.line}. Mend them, or leave them out knowingly.`,
        );
      const stationId = input.stationId ?? newId<string>();
      if (input.stationId === null) addStation(db, { id: stationId, ...input.station });
      else if (!changeStation(db, stationId, input.station)) throw new Refusal({ code: 'not-found', what: 'weather station' });
      const days = daysToKeep(found, input.fill);
      replaceDays(
        db,
        stationId,
        days.map((day) => ({ ...day, stationId })),
      );
      const farm = farmOfFile(db);
      if (farm !== undefined && farm.stationId === null) changeFarm(db, { stationId }, farm.revision);
      return { stationId, days: days.length, filled: days.filter((day) => day.filled).length };
    },
  }),
  choose: change({
    note: ({ stationId }, { db }) => `Choose weather station ${nameOf(db, 'station', stationId)}`,
    input: z.object({ stationId: z.string() }),
    run({ db }, { stationId }) {
      const farm = farmOfFile(db);
      if (farm === undefined || stationOfId(db, stationId) === undefined)
        throw new Refusal({ code: 'not-found', what: 'weather station' });
      changeFarm(db, { stationId }, farm.revision);
      return { stationId };
    },
  }),
  changeStation: change({
    note: ({ stationId }, { db }) => `Change weather station ${nameOf(db, 'station', stationId)}`,
    input: stationFields.extend({ stationId: z.string() }),
    run({ db }, { stationId, ...fields }) {
      requireStation(fields);
      if (!changeStation(db, stationId, fields)) throw new Refusal({ code: 'not-found', what: 'weather station' });
      return { stationId };
    },
  }),
  /** Fills the gaps of a record as the page said it would; every filled day is marked. */
  fill: change({
    note: ({ stationId }, { db }) => `Fill the gaps in the weather of ${nameOf(db, 'station', stationId)}`,
    input: z.object({ stationId: z.string() }),
    run({ db }, { stationId }) {
      const rows = daysOfStation(db, stationId);
      const known = new Map(rows.map((row) => [row.date, row]));
      const filled = fillGaps(rows.map(weatherDayOf)).filter((day) => day.filled);
      for (const day of filled)
        replaceDays(db, stationId, [{ ...day, stationId, flags: known.get(day.date)?.flags ?? '', filled: true }]);
      return { filled: filled.length };
    },
  }),
  remove: change({
    note: ({ stationId }, { db }) => `Take away weather station ${nameOf(db, 'station', stationId)}`,
    input: z.object({ stationId: z.string() }),
    run({ db }, { stationId }) {
      const farm = farmOfFile(db);
      if (!removeStation(db, stationId)) throw new Refusal({ code: 'not-found', what: 'weather station' });
      if (farm?.stationId === stationId) changeFarm(db, { stationId: null }, farm.revision);
      return { removed: true };
    },
  }),
};

type Day = {
  readonly date: string;
  readonly tmin_C: number | null;
  readonly tmax_C: number | null;
  readonly rain_mm: number | null;
  readonly eto_mm: number | null;
};

/** Means of each month over the record; a month's mean needs at least one day, and how many it has is shown. */
function monthsOf(days: readonly (Day & Parameters<typeof wetDry>[0][number])[]) {
  const mean = (values: readonly (number | null)[]): number | null => {
    const known = values.filter((value) => value !== null);
    return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0) / known.length;
  };
  return Array.from({ length: 12 }, (_, month) => {
    const own = days.filter((day) => Number(day.date.slice(5, 7)) === month + 1);
    const rain = mean(own.map((day) => day.rain_mm));
    const chain = wetDry(days, month + 1);
    return {
      month: month + 1,
      days: own.length,
      tmin_C: mean(own.map((day) => day.tmin_C)),
      tmax_C: mean(own.map((day) => day.tmax_C)),
      rain_mm_per_day: rain,
      eto_mm_per_day: mean(own.map((day) => day.eto_mm)),
      wetAfterWet_share: chain.pWetAfterWet,
      wetAfterDry_share: chain.pWetAfterDry,
    };
  });
}
