import type { IsoDate } from '../calendar.ts';

/** Trays of one planting, standing from the day it is sown to the day it is set out. */
export type StandingTrays = { readonly from: IsoDate; readonly to: IsoDate; readonly trays: number };

/**
 * The most trays that stand at once, and the first day on which they do. A tray that is emptied on a day is free for a sowing
 * of that day. One pass over the days sorted, `n log n`. Source: counting.
 */
export function mostTraysAtOnce(standing: readonly StandingTrays[]): { readonly trays: number; readonly day: IsoDate } | null {
  const changes = standing
    .filter((each) => each.trays > 0 && each.from < each.to)
    .flatMap((each) => [
      { day: each.from, by: each.trays },
      { day: each.to, by: -each.trays },
    ])
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.by - b.by));
  let now = 0;
  let most: { readonly trays: number; readonly day: IsoDate } | null = null;
  for (const { day, by } of changes) {
    now += by;
    if (now > (most?.trays ?? 0)) most = { trays: now, day };
  }
  return most;
}
