import { refuse, requireRange } from '../errors.ts';
import { normalQuantile } from './normal-quantile.ts';

export type FrostSide = 'spring' | 'fall';

/** Years from which the record itself gives the quantile. With fewer a normal curve is laid through it. Common practice, no source. */
export const YEARS_FOR_EMPIRICAL = 20;

/**
 * Quantile of a list, straight between order statistics at the position `(n - 1) p`.
 * Source: the usual definition (type 7 of Hyndman & Fan 1996, from memory).
 * @throws InputError for an empty list
 */
export function empiricalQuantile(values: readonly number[], p: number): number {
  requireRange('p', p, 0, 1, '');
  const sorted = [...values].sort((a, b) => a - b);
  const position = (sorted.length - 1) * p;
  const low = sorted[Math.floor(position)];
  const high = sorted[Math.ceil(position)];
  if (low === undefined || high === undefined) return refuse('values', 'too-few', 'At least one value is needed.');
  return low + (high - low) * (position - Math.floor(position));
}

/** Mean and sample standard deviation (divisor n - 1). @throws InputError for an empty list */
export function meanAndSpread(values: readonly number[]): { readonly mean: number; readonly sd: number } {
  if (values.length === 0) refuse('values', 'too-few', 'At least one value is needed.');
  const mean = values.reduce((sum, each) => sum + each, 0) / values.length;
  const squares = values.reduce((sum, each) => sum + (each - mean) ** 2, 0);
  return { mean, sd: values.length < 2 ? 0 : Math.sqrt(squares / (values.length - 1)) };
}

/** Quantile of the normal curve of that mean and spread. */
export const normalValue = (mean: number, sd: number, p: number): number => mean + sd * normalQuantile(p);

export type MixedFrost = {
  readonly years: number;
  readonly share: number;
  readonly mean: number;
  readonly sd: number;
  /** Day of the year, or null where a freeze is too rare for that level. */
  readonly day: number | null;
};

/**
 * Frost date at a level, for places where some years have no freeze: the share of years with one, times a normal curve of dates.
 *
 *   spring, a freeze LATER than the date in p of the years:    day = mean + sd z(1 - p/s)
 *   fall, a freeze EARLIER than the date in p of the years:    day = mean + sd z(p/s)
 *
 *   s   share of years with a freeze; no date when p >= s
 *
 * Source: NOAA Climatography of the United States No. 20; the normal curve from memory.
 * @param days one entry a year, null for a year without a freeze
 * @throws InputError when no year has a freeze
 */
export function mixedFrost(side: FrostSide, days: readonly (number | null)[], p: number): MixedFrost {
  requireRange('p', p, 0, 1, '');
  const known = days.filter((day) => day !== null);
  const share = days.length === 0 ? 0 : known.length / days.length;
  const { mean, sd } = meanAndSpread(known);
  if (p <= 0 || p >= share) return { years: days.length, share, mean, sd, day: null };
  const z = side === 'spring' ? normalQuantile(1 - p / share) : normalQuantile(p / share);
  return { years: days.length, share, mean, sd, day: mean + sd * z };
}

export type FrostDate = {
  readonly day: number | null;
  readonly years: number;
  readonly freezeYears: number;
  readonly method: 'record' | 'normal-curve' | 'never';
};

/**
 * Day of the year of the last spring or first fall freeze at a level of risk.
 *
 *   spring: risk 0.1 is late (a freeze comes later in 1 year of 10); fall: risk 0.1 is early.
 *
 * With 20 years or more the record's own quantile, with fewer the mixed normal curve. Years without a freeze count: they are
 * put before every spring date and after every fall date.
 * @param risk chance of a freeze after (spring) or before (fall) the day, 0 to 1
 */
export function frostDate(side: FrostSide, days: readonly (number | null)[], risk: number): FrostDate {
  const known = days.filter((day) => day !== null);
  const base = { years: days.length, freezeYears: known.length };
  if (known.length === 0) return { ...base, day: null, method: 'never' };
  if (days.length < YEARS_FOR_EMPIRICAL) return { ...base, day: mixedFrost(side, days, risk).day, method: 'normal-curve' };
  const never = side === 'spring' ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  const all = days.map((day) => day ?? never).sort((a, b) => a - b);
  const position = (all.length - 1) * (side === 'spring' ? 1 - risk : risk);
  const low = all[Math.floor(position)] ?? never;
  const high = all[Math.ceil(position)] ?? never;
  const day = Number.isFinite(low) && Number.isFinite(high) ? low + (high - low) * (position - Math.floor(position)) : null;
  return { ...base, day, method: 'record' };
}

/** Chance of a freeze after a day of spring: the share of years whose last one came later. */
export function chanceOfFrostAfter(days: readonly (number | null)[], day: number): number {
  if (days.length === 0) refuse('days', 'too-few', 'A record of at least one year is needed.');
  return days.filter((each) => each !== null && each > day).length / days.length;
}
