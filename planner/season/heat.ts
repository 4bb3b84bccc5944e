import { type DegreeDayInput, type DegreeDayMethod, degreeDays, singleSine } from '../climate/degree-days.ts';
import { refuse, requireRange } from '../errors.ts';

/**
 * Degree days of a day by the single sine, cut off level at an upper limit.
 *
 *   heat above the base less heat above the upper limit, each by the area of the sine
 *
 * Source: Baskerville & Emin 1969 (memory); checked by numerical integration.
 * @throws InputError when the limits are crossed or the day's extremes are
 */
export function singleSineCut(input: DegreeDayInput): number {
  if (input.tmin_C > input.tmax_C) refuse('tmin_C', 'too-large', 'The minimum of a day cannot lie above its maximum.');
  const { upper_C } = input;
  if (upper_C === undefined) return singleSine(input);
  if (upper_C < input.base_C) refuse('upper_C', 'too-small', 'The upper limit cannot lie below the base temperature.');
  return singleSine(input) - singleSine({ ...input, base_C: upper_C });
}

/** How a crop's heat is counted. A total and its method belong together. */
export type HeatRule = { readonly method: DegreeDayMethod; readonly base_C: number; readonly upper_C: number | null };

export type Extremes = { readonly tmin_C: number | null; readonly tmax_C: number | null };

/** Degree days of a day by a rule; null when a temperature is not known. */
export function heatOfDay({ tmin_C, tmax_C }: Extremes, { method, base_C, upper_C }: HeatRule): number | null {
  if (tmin_C === null || tmax_C === null) return null;
  const input = upper_C === null ? { tmin_C, tmax_C, base_C } : { tmin_C, tmax_C, base_C, upper_C };
  return method === 'single-sine' ? singleSineCut(input) : degreeDays(method, input);
}

/** Whole days until a heat sum is reached at so many degree days a day: ceil(need / a day). @throws InputError */
export function daysToHeat(need_C_days: number, perDay_C_days: number): number {
  requireRange('need_C_days', need_C_days, 0, 20_000, 'C days');
  if (!(perDay_C_days > 0)) refuse('perDay_C_days', 'never-ripe', 'Days as cool as this never reach the heat sum.');
  return Math.ceil(need_C_days / perDay_C_days - 1e-9);
}

/** Mean degree days a day over a number of days, and the mean temperature they stand for above a base. @throws InputError */
export function meanHeat(
  need_C_days: number,
  days: number,
  base_C: number,
): { readonly perDay_C_days: number; readonly mean_C: number } {
  requireRange('days', days, 1, 3650, 'days');
  const perDay_C_days = need_C_days / days;
  return { perDay_C_days, mean_C: base_C + perDay_C_days };
}
