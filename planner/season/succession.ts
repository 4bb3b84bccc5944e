import { dateOfDay, dayNumber, type IsoDate } from '../calendar.ts';
import { refuse, requireRange, requireWhole } from '../errors.ts';
import { dayReaching, type GrowthClock, madeBetween } from './growth-clock.ts';

/** So many sowings are as many as anybody makes in a season; more is taken for a slip of the pen. */
const MOST_SOWINGS = 120;

export type SowingsInput = { readonly first: IsoDate; readonly notAfter: IsoDate; readonly interval_days: number };

/**
 * Sowings at S, S + i, S + 2 i ... not after the last date.
 * Source: definition; published intervals in {@link publishedIntervals}.
 * @throws InputError naming the field
 */
export function sowingsEvery({ first, notAfter, interval_days }: SowingsInput): readonly IsoDate[] {
  requireWhole('interval_days', interval_days, 1, 365);
  const from = dayNumber(first);
  const to = dayNumber(notAfter);
  if (to < from) refuse('notAfter', 'dates-out-of-order', `The last sowing (${notAfter}) lies before the first (${first}).`);
  const count = Math.floor((to - from) / interval_days) + 1;
  if (count > MOST_SOWINGS) refuse('interval_days', 'too-small', `${count} sowings are too many: ${MOST_SOWINGS} at most.`);
  return Array.from({ length: count }, (_, at) => dateOfDay(from + at * interval_days));
}

/** From the harvest window and the days that two harvests shall overlap: window - overlap. @throws InputError */
export function intervalByWindow_days(window_days: number, overlap_days: number): number {
  requireWhole('window_days', window_days, 1, 365);
  requireWhole('overlap_days', overlap_days, 0, window_days - 1);
  return window_days - overlap_days;
}

export type SowingsByHeatInput = {
  readonly first: IsoDate;
  readonly notAfter: IsoDate;
  /** Degree days of the place's normals. */
  readonly heat: GrowthClock;
  readonly need_C_days: number;
  /** Days wanted between first harvests. */
  readonly gap_days: number;
};

/**
 * Sowings by heat, for harvests that come a wanted number of days apart: the next sowing waits until as many degree days
 * have gone by since the last as the gap holds at harvest time. So gaps shorten as the days warm.
 * @throws InputError naming the field, or when a sowing would not ripen within the days known
 */
export function sowingsByHeat(input: SowingsByHeatInput): readonly IsoDate[] {
  requireRange('need_C_days', input.need_C_days, 1, 20_000, 'C days');
  requireWhole('gap_days', input.gap_days, 1, 120);
  const last = dayNumber(input.notAfter);
  let sow = dayNumber(input.first);
  if (last < sow) refuse('notAfter', 'dates-out-of-order', 'The last sowing lies before the first.');
  const sowings: IsoDate[] = [];
  while (sow <= last && sowings.length < MOST_SOWINGS) {
    sowings.push(dateOfDay(sow));
    const harvest = dayReaching(input.heat, sow, input.need_C_days);
    if (harvest === null) break;
    const held = madeBetween(input.heat, harvest, harvest + input.gap_days);
    const next = dayReaching(input.heat, sow, held);
    sow = Math.max(sow + 1, next ?? last + 1);
  }
  return sowings;
}

/** Two sowings that ripen within this many days are hardly two. Common practice, no source. */
export const RIPEN_TOGETHER_DAYS = 3;

/** Neighbours of a succession that ripen within {@link RIPEN_TOGETHER_DAYS}: index of the later one. */
export function ripenTogether(firstHarvests: readonly IsoDate[]): readonly number[] {
  return firstHarvests.flatMap((date, at) => {
    const before = firstHarvests[at - 1];
    return before !== undefined && dayNumber(date) - dayNumber(before) <= RIPEN_TOGETHER_DAYS ? [at] : [];
  });
}

/**
 * Published days between sowings, least and most.
 * Sources: UF/IFAS, Succession Planting of Vegetables (lettuce, bean, beet, broccoli); UC Master Gardeners of Alameda
 * County (cilantro); Teagasc (cut sunflower).
 */
export const publishedIntervals: Readonly<Record<string, readonly [least_days: number, most_days: number]>> = {
  'lettuce-leaf': [14, 14],
  'lettuce-romaine': [14, 14],
  'lettuce-head': [14, 14],
  cilantro: [7, 21],
  'sunflower-cut': [7, 14],
  'bean-bush': [14, 14],
  beet: [14, 14],
  broccoli: [14, 14],
};
