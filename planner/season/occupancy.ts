import { addDays, type IsoDate } from '../calendar.ts';
import { requireRange, requireWhole } from '../errors.ts';

/** A span of a bed's length, 0 to 1, taken from one day up to but not counting another (day numbers). */
export type Stay = {
  readonly plantingId: string;
  readonly bedId: string;
  readonly fromShare: number;
  readonly toShare: number;
  readonly from_day: number;
  readonly to_day: number;
};

export type Clash = {
  readonly bedId: string;
  readonly first: string;
  readonly second: string;
  readonly from_day: number;
  readonly to_day: number;
  /** The part of the bed both want. */
  readonly share: number;
};

/** Shares that end where the next begins do not meet: slack for thirds and sevenths. */
const TOUCHING = 1e-9;

/**
 * Every pair of plantings that want the same piece of a bed on the same day. Intervals are half-open, in days and in
 * shares: one may start on the day and at the place where another ends.
 * Sorted by bed, then by day, then by planting. Source: definition.
 */
export function clashesOf(stays: readonly Stay[]): readonly Clash[] {
  const byBed = new Map<string, Stay[]>();
  for (const stay of stays) {
    const list = byBed.get(stay.bedId);
    if (list === undefined) byBed.set(stay.bedId, [stay]);
    else list.push(stay);
  }
  const clashes: Clash[] = [];
  for (const list of byBed.values()) {
    list.sort((a, b) => a.from_day - b.from_day || (a.plantingId < b.plantingId ? -1 : 1));
    let open: Stay[] = [];
    for (const stay of list) {
      open = open.filter((before) => before.to_day > stay.from_day);
      for (const before of open) {
        const share = Math.min(before.toShare, stay.toShare) - Math.max(before.fromShare, stay.fromShare);
        if (share > TOUCHING && before.plantingId !== stay.plantingId && stay.to_day > stay.from_day)
          clashes.push({
            bedId: stay.bedId,
            first: before.plantingId,
            second: stay.plantingId,
            from_day: stay.from_day,
            to_day: Math.min(before.to_day, stay.to_day),
            share,
          });
      }
      open.push(stay);
    }
  }
  return clashes;
}

/** A stretch of time in which a span of a bed stands empty. */
export type Gap = { readonly from_day: number; readonly to_day: number };

/** Gaps of a span of a bed between two days, in order; those shorter than `least_days` are left out. */
export function gapsOf(
  stays: readonly Stay[],
  span: { readonly bedId: string; readonly fromShare: number; readonly toShare: number },
  period: Gap,
  least_days = 1,
): readonly Gap[] {
  requireRange('span.toShare', span.toShare, span.fromShare, 1, '');
  const here = stays
    .filter(
      (stay) =>
        stay.bedId === span.bedId &&
        Math.min(stay.toShare, span.toShare) - Math.max(stay.fromShare, span.fromShare) > TOUCHING &&
        stay.to_day > period.from_day &&
        stay.from_day < period.to_day,
    )
    .sort((a, b) => a.from_day - b.from_day);
  const gaps: Gap[] = [];
  let free = period.from_day;
  for (const stay of here) {
    if (stay.from_day - free >= least_days) gaps.push({ from_day: free, to_day: stay.from_day });
    free = Math.max(free, stay.to_day);
  }
  if (period.to_day - free >= least_days) gaps.push({ from_day: free, to_day: period.to_day });
  return gaps;
}

export type OccupancyInput = {
  readonly inBed: IsoDate;
  readonly toHarvest_days: number;
  readonly window_days: number;
  readonly turnover_days: number;
};

export type Occupancy = { readonly firstHarvest: IsoDate; readonly lastHarvest: IsoDate; readonly free: IsoDate };

/**
 * How long a planting takes a bed when every day counts: first = in bed + D, last = first + window, free = last + turnover.
 * @throws InputError naming the field
 */
export function occupancy(input: OccupancyInput): Occupancy {
  requireWhole('toHarvest_days', input.toHarvest_days, 1, 1000);
  requireWhole('window_days', input.window_days, 0, 3650);
  requireWhole('turnover_days', input.turnover_days, 0, 365);
  const firstHarvest = addDays(input.inBed, input.toHarvest_days);
  const lastHarvest = addDays(firstHarvest, input.window_days);
  return { firstHarvest, lastHarvest, free: addDays(lastHarvest, input.turnover_days) };
}
