import { dateOfYearDay, dayOfYear, type IsoDate } from '../calendar.ts';
import { growsFrom_C, type HardinessClass, hardinessClasses } from '../crops/hardiness.ts';
import type { TemperatureDay } from './heat-record.ts';

const DAYS = 366;
const SMOOTHED_DAYS = 15;
/** Middle of the year: what is warm from there on back to the last cool day is the warm half of spring. */
const MIDYEAR_DAY = 183;

/**
 * From when on spring days are warm enough for a class to grow: the day after the last day before midyear whose usual
 * maximum (mean over the years on record, over 15 days) is below what the class needs. Null without a record of a year.
 *
 * North of the equator. Source of the temperatures: Colorado State University Extension, GardenNotes 720; the smoothing is our rule.
 */
export function warmFrom(days: readonly TemperatureDay[], year: number): Readonly<Record<HardinessClass, IsoDate | null>> | null {
  const sums = new Float64Array(DAYS + 1);
  const counts = new Float64Array(DAYS + 1);
  for (const { date, tmax_C } of days) {
    if (tmax_C === null) continue;
    const at = dayOfYear(date);
    sums[at] = (sums[at] ?? 0) + tmax_C;
    counts[at] = (counts[at] ?? 0) + 1;
  }
  if (counts.filter((count) => count > 0).length < DAYS - 1) return null;
  const usual = (day: number): number => {
    let sum = 0;
    let count = 0;
    for (let at = Math.max(1, day - 7); at <= Math.min(DAYS - 1, day - 7 + SMOOTHED_DAYS - 1); at += 1) {
      sum += sums[at] ?? 0;
      count += counts[at] ?? 0;
    }
    return sum / count;
  };
  const from = (least_C: number): IsoDate | null => {
    for (let day = MIDYEAR_DAY; day >= 1; day -= 1)
      if (usual(day) < least_C) return day === MIDYEAR_DAY ? null : dateOfYearDay(year, day + 1);
    return dateOfYearDay(year, 1);
  };
  const entries = hardinessClasses.map((each) => [each, from(growsFrom_C[each])] as const);
  return Object.fromEntries(entries) as Record<HardinessClass, IsoDate | null>;
}
