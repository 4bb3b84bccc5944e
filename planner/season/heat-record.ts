import { dayOfYear, type IsoDate, yearOf } from '../calendar.ts';
import { clockOf, type GrowthClock } from './growth-clock.ts';
import { type Extremes, type HeatRule, heatOfDay } from './heat.ts';

export type TemperatureDay = Extremes & { readonly date: IsoDate };

/** Heat of a place: what each day of the year brings on the average, and what each year on record brought. */
export type HeatRecord = {
  /** Degree days of day 1 to 366; 29 February as the 28th. */
  readonly normals_C_days: readonly number[];
  readonly years: ReadonlyMap<number, readonly number[]>;
};

const DAYS = 366;
/** A year with more gaps than this is left out of the years. Common practice, no source. */
const MOST_GAPS = 20;

/**
 * Heat by day of the year from daily temperatures. A day without temperatures takes the average of its day; a year with
 * more than 20 such days is left out. Null when there is not one whole year.
 */
export function heatRecord(days: readonly TemperatureDay[], rule: HeatRule): HeatRecord | null {
  const sums = new Float64Array(DAYS + 1);
  const counts = new Float64Array(DAYS + 1);
  const perYear = new Map<number, (number | null)[]>();
  for (const day of days) {
    const heat = heatOfDay(day, rule);
    if (heat === null) continue;
    const at = placeOf(day.date);
    sums[at] = (sums[at] ?? 0) + heat;
    counts[at] = (counts[at] ?? 0) + 1;
    const year = perYear.get(yearOf(day.date)) ?? Array.from({ length: DAYS }, () => null);
    year[at - 1] = heat;
    perYear.set(yearOf(day.date), year);
  }
  const normals = Array.from({ length: DAYS }, (_, at) => (sums[at + 1] ?? 0) / Math.max(1, counts[at + 1] ?? 0));
  const known = Array.from({ length: DAYS }, (_, at) => (counts[at + 1] ?? 0) > 0);
  if (known.filter(Boolean).length < DAYS - 1 - MOST_GAPS) return null;
  const filled = normals.map((each, at) => (known[at] ? each : (normals[at - 1] ?? 0)));
  const years = [...perYear].flatMap(([year, heats]): [number, readonly number[]][] => {
    const gaps = heats.filter((heat) => heat === null).length - 1;
    return gaps > MOST_GAPS ? [] : [[year, heats.map((heat, at) => heat ?? filled[at] ?? 0)]];
  });
  return { normals_C_days: filled, years: new Map(years.sort(([a], [b]) => a - b)) };
}

/** Day of the year with every year as long as a leap year, so that dates keep their place. */
function placeOf(date: IsoDate): number {
  const day = dayOfYear(date);
  const leap = dayOfYear(`${date.slice(0, 4)}-12-31` as IsoDate) === DAYS;
  return !leap && day > 59 ? day + 1 : day;
}

/** Heat by day of the year laid on dates, over and over: a clock. */
export function heatClock(perDay_C_days: readonly number[], firstDay: number, dates: readonly IsoDate[]): GrowthClock {
  return clockOf(
    firstDay,
    dates.map((date) => perDay_C_days[placeOf(date) - 1] ?? 0),
  );
}
