import { z } from 'zod';
import { derived } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { bedsInUse } from '../../db/repositories/beds.ts';
import { seasonsOfFarm } from '../../db/repositories/seasons.ts';
import { dateOfYearDay } from '../../planner/calendar.ts';
import { explainReferenceEt } from '../../planner/climate/reference-et.ts';
import { explainBedUse } from '../../planner/water/bed-demand.ts';
import { traceBed, type Watering } from '../../planner/water/bed-run.ts';
import { explainRootedStore } from '../../planner/water/bed-store.ts';
import { handRound } from '../../planner/water/hand-rounds.ts';
import { explainLineInterval, lineInterval } from '../../planner/water/watering-interval.ts';
import { Refusal } from '../errors.ts';
import { change, job, read } from '../procedure.ts';
import { bedDryings, MOST_INTERVAL_DAYS } from '../water/bed-dryings.ts';
import { BY_HAND, demandOfFarm, hottestWeek, yearShown } from '../water/demand-of-year.ts';
import { lineSupplies, wateringOf } from '../water/line-supply.ts';
import { loadWater, type WaterBed, type WaterFarm } from '../water/load-water.ts';
import { choicesOfFarm, keepChoices, waterChoices } from '../water/water-choices.ts';
import { runOfYear, runOfYears, type WeatherRecord } from '../water/weather-record.ts';

const seasonId = z.string().nullable();
const year = z.int('A year is a whole number.').nullable();
const month = z.int('A month is 1 to 12.').min(1).max(12);

function bedOf(farm: WaterFarm, bedId: string): WaterBed {
  const bed = farm.beds.find((each) => each.bedId === bedId);
  if (bed === undefined) throw new Refusal({ code: 'not-found', what: 'bed' });
  return bed;
}

function recordOf(farm: WaterFarm): WeatherRecord {
  if (farm.record === null) throw new Refusal({ code: 'not-found', what: 'weather record' });
  return farm.record;
}

const aboutRecord = (record: WeatherRecord | null) =>
  record === null
    ? null
    : {
        station: record.station.name,
        source: record.station.source,
        from: record.days[0]?.date ?? null,
        to: record.days.at(-1)?.date ?? null,
        years: record.years,
        yearsWithGaps: record.yearsWithGaps,
        methods: record.methods,
        assumed: record.assumed,
        hottest: hottestWeek(record),
      };

/** The overview of a farm without a season. */
const noSeason = (db: FarmDb) => ({
  season: null,
  seasons: [],
  choices: choicesOfFarm(db),
  record: null,
  left: [],
  notes: [],
  beds: bedsInUse(db).length,
  demand: null,
});

/** Interval, run and round of each line and of the beds by hand. */
function intervalsOf(db: FarmDb, farm: WaterFarm, month: number) {
  const record = recordOf(farm);
  const { terms, of } = bedDryings(db, farm, record, { month, most_days: MOST_INTERVAL_DAYS });
  const supplies = lineSupplies(db, farm);
  const codes = new Map(farm.beds.map((bed) => [bed.bedId, bed.code]));
  const code = (bedId: string | null): string => (bedId === null ? '' : (codes.get(bedId) ?? bedId));
  const groups = [...supplies.map(({ lineId, name }) => ({ groupId: lineId, name })), { groupId: BY_HAND, name: 'By hand' }];
  return {
    month,
    standing_days: farm.choices.standing_days,
    can_L: farm.can_L,
    groups: groups.map(({ groupId, name }) => {
      const own = farm.beds.filter((bed) => (bed.lineId ?? BY_HAND) === groupId);
      const found = lineInterval({ ...terms, beds: own }, of);
      const flow = supplies.find((supply) => supply.lineId === groupId)?.flow_L_per_h ?? null;
      return {
        groupId,
        name,
        beds: own.length,
        days: found.days,
        most_days: MOST_INTERVAL_DAYS,
        limitedBy: code(found.limitedBy),
        run_L: found.run_L,
        run_min: flow === null || flow <= 0 ? null : (found.run_L / flow) * 60,
        basins: found.beds.filter((bed) => bed.fill_L !== null).length,
        rows: found.beds.map((bed) => ({ ...bed, code: code(bed.bedId) })),
        round:
          groupId === BY_HAND
            ? handRound(
                found.beds.map((bed) => ({ bedId: code(bed.bedId), need_L: bed.run_L })),
                farm.can_L,
              )
            : null,
        working: explainLineInterval(found, { line: name, bed: code(found.limitedBy), confidence: farm.choices.confidence }),
      };
    }),
  };
}

export const waterDemand = {
  /** Need against capacity on each day of a year of the record, by line and bed. */
  overview: read({
    input: z.object({ seasonId, year }),
    run({ db }, input) {
      // a farm just founded has neither season nor beds: the page says what to do next
      if (seasonsOfFarm(db).length === 0) return noSeason(db);
      const farm = loadWater(db, input.seasonId);
      const chosen = farm.record === null ? null : yearShown(farm.record, input.year);
      return {
        season: farm.season,
        seasons: seasonsOfFarm(db).map(({ id, name }) => ({ id, name })),
        choices: farm.choices,
        record: aboutRecord(farm.record),
        left: farm.left,
        notes: farm.notes,
        beds: farm.beds.length,
        demand: farm.record === null || chosen === null ? null : demandOfFarm(db, farm, farm.record, chosen),
      };
    },
  }),
  /** One bed day by day through a year of the record. */
  trace: read({
    input: z.object({ seasonId, year, bedId: z.string(), watering: z.enum(['as-planned', 'rain-only', 'when-due']) }),
    run({ db }, input) {
      const farm = loadWater(db, input.seasonId);
      const bed = bedOf(farm, input.bedId);
      const record = recordOf(farm);
      const chosen = yearShown(record, input.year);
      if (chosen === null) throw new Refusal({ code: 'not-found', what: 'whole year in the weather record' });
      const weather = runOfYear(record, chosen);
      const watering: Watering =
        input.watering === 'as-planned'
          ? wateringOf(farm, lineSupplies(db, farm), bed.bedId, bed.lineId)
          : { kind: input.watering };
      const { days, totals } = traceBed(bed.store, bed.year, weather, watering);
      return {
        code: bed.code,
        year: chosen,
        store: bed.store,
        wateredBy: watering.kind,
        plantings: bed.plantings.map(({ crop, inBedDate, clearDate, share }) => ({
          crop: crop.name,
          inBedDate,
          clearDate,
          share,
        })),
        totals,
        days: Array.from(days.missing_L, (missing_L, at) => ({
          date: dateOfYearDay(chosen, at + 1),
          missing_L,
          allowed_L: days.allowed_L[at] ?? 0,
          free_L: days.free_L[at] ?? 0,
          given_L: days.given_L[at] ?? 0,
          used_L: days.used_L[at] ?? 0,
          lost_L: days.lost_L[at] ?? 0,
          rain_mm: weather.rain_mm[at] ?? 0,
          ks: days.ks[at] ?? 1,
        })),
      };
    },
  }),
  /** Workings of one bed on one day: the reference, the use, the store. */
  explainDay: read({
    input: z.object({ seasonId, year, bedId: z.string(), date: z.iso.date() }),
    run({ db }, input) {
      const farm = loadWater(db, input.seasonId);
      const bed = bedOf(farm, input.bedId);
      const record = recordOf(farm);
      const at = record.days.find((day) => day.date === input.date);
      if (at === undefined || at.eto_mm === null) throw new Refusal({ code: 'not-found', what: 'day in the weather record' });
      const yearDay = record.days.filter((day) => day.date.slice(0, 4) === at.date.slice(0, 4) && day.date <= at.date).length - 1;
      const reference = explainReferenceEt(at, record.place);
      const use = explainBedUse({ store: bed.store, year: bed.year, yearDay, eto_mm_per_day: at.eto_mm, code: bed.code });
      const store = explainRootedStore(bed.store, bed.year.roots_m[yearDay] ?? bed.store.depth_m, bed.year.p[yearDay] ?? 0.5);
      return { ...use, parts: [...(reference === null ? [] : [reference]), store] };
    },
  }),
  /** Longest interval and run of every line in a month, and the round by hand. */
  intervals: read({
    input: z.object({ seasonId, month }),
    run({ db }, { seasonId: asked, month: of }) {
      const farm = loadWater(db, asked);
      return derived(db, `intervals ${farm.season.id} ${of}`, () => intervalsOf(db, farm, of), [farm]);
    },
  }),
  setChoices: change({
    note: 'Change the water choices',
    input: waterChoices,
    run({ db }, choices) {
      keepChoices(db, choices);
      return { changed: true };
    },
  }),
  /** Every year of record run through the plan. */
  startStress: job({
    input: z.object({ seasonId }),
    kind: 'water-stress',
    gather({ db }, input) {
      const farm = loadWater(db, input.seasonId);
      const record = recordOf(farm);
      const supplies = lineSupplies(db, farm);
      return {
        beds: farm.beds.map((bed) => ({
          code: bed.code,
          store: bed.store,
          year: bed.year,
          watering: wateringOf(farm, supplies, bed.bedId, bed.lineId),
        })),
        years: record.years.map((each) => runOfYear(record, each)),
      };
    },
  }),
  /** Departures tried in a month, all years of record. */
  startDaysAway: job({
    input: z.object({ seasonId, month, confidence: z.number().min(0.5).max(1), limit_days: z.int().min(1).max(60) }),
    kind: 'days-away',
    gather({ db }, input) {
      const farm = loadWater(db, input.seasonId);
      const record = recordOf(farm);
      return {
        codes: Object.fromEntries(farm.beds.map((bed) => [bed.bedId, bed.code])),
        lines: Object.fromEntries(farm.supplies.map((supply) => [supply.lineId, supply.name])),
        input: {
          beds: farm.beds.map(({ store, year: bedYear, lineId }) => ({ store, year: bedYear, lineId })),
          supplies: lineSupplies(db, farm).map((supply) => ({
            lineId: supply.lineId,
            usable_L: supply.usable_L ?? 1e12,
            capacity_L_per_day: supply.most_L_per_day ?? 0,
          })),
          weather: runOfYears(record),
          month: input.month,
          confidence: input.confidence,
          limit_days: input.limit_days,
        },
      };
    },
  }),
};
