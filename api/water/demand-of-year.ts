import { derived } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { dateOfYearDay } from '../../planner/calendar.ts';
import { highestSpell, type Spell } from '../../planner/climate/spells.ts';
import { monthOf } from '../../planner/water/bed-run.ts';
import { soilStore_L } from '../../planner/water/bed-store.ts';
import { explainThirstiestWeek, type NeedDay, thirstiestWeek } from '../../planner/water/week-need.ts';
import { runsOfYear, type YearRuns } from './bed-runs.ts';
import { type LineSupply, lineSupplies } from './line-supply.ts';
import type { WaterFarm } from './load-water.ts';
import { runOfYear, type WeatherRecord } from './weather-record.ts';

/** Beds on no line are watered by hand. */
export const BY_HAND = 'by-hand';

const WEEK = 7;

/** The week in which the record asks for most water. */
export function hottestWeek(record: WeatherRecord): Spell | null {
  return record.days.length === 0
    ? null
    : highestSpell(
        record.days.map((day) => ({ date: day.date, value: day.eto_mm })),
        WEEK,
      );
}

/** The year asked for where the record has it whole, else that of the hottest week, else the last whole one. */
export function yearShown(record: WeatherRecord, asked: number | null): number | null {
  if (asked !== null && record.years.includes(asked)) return asked;
  const hot = Number((hottestWeek(record)?.from ?? '').slice(0, 4));
  return record.years.includes(hot) ? hot : (record.years.at(-1) ?? null);
}

/** The need of a loaded farm in one year of its record, worked out once until a row of the farm is written. */
export const demandOfFarm = (db: FarmDb, farm: WaterFarm, record: WeatherRecord, year: number) =>
  derived(db, `demand ${farm.season.id} ${year}`, () =>
    demandOfYear(farm, lineSupplies(db, farm), runsOfFarm(db, farm, record, year), year),
  );

/** The beds of a loaded farm through one year of its record. */
export const runsOfFarm = (db: FarmDb, farm: WaterFarm, record: WeatherRecord, year: number): YearRuns =>
  derived(
    db,
    `demand: runs ${farm.season.id} ${year}`,
    (before: YearRuns | undefined) => runsOfYear(farm, lineSupplies(db, farm), record, year, before),
    [farm, record],
  );

/** The farm's need for water on each day of one year of the record, by line and by bed. */
function demandOfYear(farm: WaterFarm, supplies: readonly LineSupply[], runs: YearRuns, year: number) {
  const weather = runOfYear(runs.record, year);
  const length = weather.eto_mm.length;
  const groups = [...supplies.map(({ lineId, name }) => ({ groupId: lineId, name })), { groupId: BY_HAND, name: 'By hand' }];
  const needs = new Map(groups.map(({ groupId }) => [groupId, new Float64Array(length)]));
  const beds = farm.beds.map((bed) => {
    const run = runs.of(bed);
    const { full, planned } = run;
    const need = needs.get(bed.lineId ?? BY_HAND) ?? needs.get(BY_HAND);
    if (need !== undefined) for (let at = 0; at < length; at += 1) need[at] = (need[at] ?? 0) + (run.need_L[at] ?? 0);
    return {
      bedId: bed.bedId,
      code: bed.code,
      block: bed.block,
      groupId: bed.lineId ?? BY_HAND,
      supply: groups.find(({ groupId }) => groupId === (bed.lineId ?? BY_HAND))?.name ?? '',
      watering: bed.watering,
      crops: [...new Set(bed.plantings.map((planting) => planting.crop.name))].join(', '),
      area_m2: bed.store.area_m2,
      soilStore_L: soilStore_L(bed.store),
      freeStore_L: bed.store.free?.capacity_L ?? 0,
      peak_L_per_day: run.peak_L_per_day,
      peakDate: dateOfYearDay(year, run.peakAt + 1),
      need_L: full.given_L,
      use_L: full.used_L,
      given_L: planned.given_L,
      lost_L: planned.drained_L + planned.overflow_L,
      stress_days: planned.stressDays,
      metShare: planned.wanted_L <= 0 ? 1 : planned.used_L / planned.wanted_L,
    };
  });
  const byDay = Array.from({ length }, (_, at) => ({
    date: dateOfYearDay(year, at + 1),
    eto_mm: weather.eto_mm[at] ?? 0,
    rain_mm: weather.rain_mm[at] ?? 0,
    need_L: Object.fromEntries([...needs].map(([groupId, days]) => [groupId, days[at] ?? 0])),
  }));
  const needDays = (need: Float64Array): readonly NeedDay[] =>
    byDay.map(({ date, eto_mm, rain_mm }, at) => ({ date, eto_mm, rain_mm, need_L: need[at] ?? 0 }));
  return {
    year,
    beds,
    byDay,
    groups: groups.map(({ groupId, name }) => {
      const days = needs.get(groupId) ?? new Float64Array(0);
      const supply = supplies.find((each) => each.lineId === groupId);
      return {
        groupId,
        name,
        beds: beds.filter((bed) => bed.groupId === groupId).length,
        year_L: days.reduce((sum, value) => sum + value, 0),
        week: thirstiestWeek(needDays(days)),
        weekWorking: explainThirstiestWeek(needDays(days), { name, beds: beds.filter((bed) => bed.groupId === groupId).length }),
        months: monthly(days, weather.yearDay, supply),
        flow_L_per_h: supply?.flow_L_per_h ?? null,
        most_L_per_day: supply?.most_L_per_day ?? null,
        usable_L: supply?.usable_L ?? null,
        because: supply?.because ?? null,
      };
    }),
  };
}

function monthly(days: Float64Array, yearDay: Int16Array, supply: LineSupply | undefined) {
  const sums = Array.from({ length: 12 }, () => ({ need: 0, days: 0 }));
  days.forEach((value, at) => {
    const month = sums[monthOf(yearDay[at] ?? 0)];
    if (month === undefined) return;
    month.need += value;
    month.days += 1;
  });
  return sums.map((each, month) => ({
    need_L_per_day: each.days === 0 ? 0 : each.need / each.days,
    timer_L_per_day: supply?.timer_L_per_day[month] ?? null,
  }));
}
