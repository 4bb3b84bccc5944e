import { refuse } from '../errors.ts';

/** How the heat of a day is reckoned. A crop's total belongs to one method only. */
export type DegreeDayMethod = 'mean-against-base' | 'extremes-held' | 'single-sine';

export type DegreeDayInput = {
  readonly tmax_C: number;
  readonly tmin_C: number;
  readonly base_C: number;
  /** Upper limit; only the method that holds the extremes uses it. */
  readonly upper_C?: number;
};

/**
 * Growing degree days of one day, mean against base (method 1): `max(0, (Tmax + Tmin)/2 - base)`.
 * Any one temperature scale, base in the same. Source: McMaster & Wilhelm 1997.
 */
export const meanAgainstBase = (input: DegreeDayInput): number => Math.max(0, (input.tmax_C + input.tmin_C) / 2 - input.base_C);

/**
 * Growing degree days of one day, extremes held first (method 2): Tmax and Tmin raised to the base and lowered to the
 * upper limit, then the mean less the base. Never less than method 1 without an upper limit.
 * Source: McMaster & Wilhelm 1997; with base 10 C and upper 30 C the rule for corn.
 */
export function extremesHeld(input: DegreeDayInput): number {
  const upper = input.upper_C ?? Number.POSITIVE_INFINITY;
  if (upper < input.base_C) refuse('upper_C', 'too-small', 'The upper limit cannot lie below the base temperature.');
  const hold = (value: number): number => Math.min(upper, Math.max(input.base_C, value));
  return (hold(input.tmax_C) + hold(input.tmin_C)) / 2 - input.base_C;
}

/**
 * Growing degree days of one day as the area of a sine wave above the base.
 *
 *   Tmin < base < Tmax:   [(M - b)(pi/2 - t) + W cos t] / pi,   t = arcsin((b - M)/W)
 *
 *   M, W   mean and half range of the day
 *
 * Source: Baskerville & Emin 1969 (from memory). No upper limit.
 */
export function singleSine(input: DegreeDayInput): number {
  const mean = (input.tmax_C + input.tmin_C) / 2;
  const half = (input.tmax_C - input.tmin_C) / 2;
  if (input.tmax_C <= input.base_C) return 0;
  if (input.tmin_C >= input.base_C) return mean - input.base_C;
  const t = Math.asin((input.base_C - mean) / half);
  return ((mean - input.base_C) * (Math.PI / 2 - t) + half * Math.cos(t)) / Math.PI;
}

/** Growing degree days of one day by the named method. */
export function degreeDays(method: DegreeDayMethod, input: DegreeDayInput): number {
  switch (method) {
    case 'mean-against-base':
      return meanAgainstBase(input);
    case 'extremes-held':
      return extremesHeld(input);
    case 'single-sine':
      return singleSine(input);
  }
}
