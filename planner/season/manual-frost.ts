import { normalQuantile } from '../climate/normal-quantile.ts';
import { requireRange } from '../errors.ts';

/** Days of the year that a grower entered: early and late are what one year in ten passes. */
export type EnteredFrost = { readonly early: number | null; readonly median: number | null; readonly late: number | null };

/**
 * The frost day at a chance from dates entered by hand: the median moved towards the late (spring) or early (fall) date as
 * a normal curve would. With no such date, the median itself.
 *
 *   spring: median + (late - median) z(1 - p)/z(0.9)       fall: median - (median - early) z(1 - p)/z(0.9)
 *
 *   p   chance of a frost after (spring) or before (fall) the day   -   0.01 to 0.5
 *
 * Source: normal curve of frost dates, as NOAA's freeze data take it (memory).
 * @returns null when no median was entered
 * @throws InputError naming the field
 */
export function frostAtRisk(side: 'spring' | 'fall', entered: EnteredFrost, risk: number): number | null {
  requireRange('risk', risk, 0.01, 0.5, '');
  const { median } = entered;
  if (median === null) return null;
  const outer = side === 'spring' ? entered.late : entered.early;
  if (outer === null) return median;
  return median + (outer - median) * (normalQuantile(1 - risk) / normalQuantile(0.9));
}
