import type { FarmDb } from '../../db/file/open-farm.ts';
import type { FarmRow } from '../../db/repositories/farm.ts';
import { dateOfDay, dayNumber, dayOfYear, type IsoDate } from '../../planner/calendar.ts';
import { type KnownFacts, numberOf } from '../../planner/crops/crop-facts.ts';
import { dayClock, dayLengthClock, type GrowthClock } from '../../planner/season/growth-clock.ts';
import type { HeatRule } from '../../planner/season/heat.ts';
import { type HeatRecord, heatClock, heatRecord, type TemperatureDay } from '../../planner/season/heat-record.ts';
import { daylightFrom_h } from '../../planner/season/short-days.ts';
import { farmTemperatures } from './farm-frost.ts';

/** The growth clocks of a farm over a span of days, each made once. */
export type SeasonClocks = {
  readonly temperatures: readonly TemperatureDay[];
  readonly plain: GrowthClock;
  readonly byLight: GrowthClock;
  readonly record: (rule: HeatRule) => HeatRecord | null;
  readonly normals: (rule: HeatRule) => GrowthClock | null;
  readonly years: (rule: HeatRule) => readonly GrowthClock[];
};

/** Days before a season's start that clocks reach back, for raising and for autumn sowings; and on after its end. */
const BEFORE_DAYS = 400;
const AFTER_DAYS = 800;

export function seasonClocks(db: FarmDb, farm: FarmRow, start: IsoDate): SeasonClocks {
  const firstDay = dayNumber(start) - BEFORE_DAYS;
  const length = BEFORE_DAYS + AFTER_DAYS;
  const dates = Array.from({ length }, (_, at) => dateOfDay(firstDay + at));
  const temperatures = farmTemperatures(db, farm);
  const records = new Map<string, HeatRecord | null>();
  const record = (rule: HeatRule): HeatRecord | null => {
    const key = `${rule.method} ${rule.base_C} ${rule.upper_C ?? ''}`;
    const present = records.get(key);
    if (present !== undefined) return present;
    const made = temperatures.length === 0 ? null : heatRecord(temperatures, rule);
    records.set(key, made);
    return made;
  };
  return {
    temperatures,
    plain: dayClock(firstDay, length),
    byLight: dayLengthClock(
      firstDay,
      daylightFrom_h(
        farm.latitude_deg,
        dates.map((date) => dayOfYear(date)),
      ),
    ),
    record,
    normals(rule) {
      const made = record(rule);
      return made === null ? null : heatClock(made.normals_C_days, firstDay, dates);
    },
    years(rule) {
      const made = record(rule);
      return made === null ? [] : [...made.years.values()].map((year) => heatClock(year, firstDay, dates));
    },
  };
}

/** How a crop's heat is counted; null when its base temperature is not known. */
export function heatRuleOf(facts: KnownFacts): HeatRule | null {
  const base_C = numberOf(facts, 'gdd_base_C');
  if (base_C === null) return null;
  const upper_C = numberOf(facts, 'gdd_upper_C');
  return { method: upper_C === null ? 'mean-against-base' : 'extremes-held', base_C, upper_C };
}
