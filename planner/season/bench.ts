import { dateOfDay, dayNumber, type IsoDate, mondayOf } from '../calendar.ts';
import { refuse } from '../errors.ts';

/** Trays standing on the propagation bench from sowing up to but not counting planting out. */
export type BenchStay = { readonly plantingId: string; readonly from: IsoDate; readonly to: IsoDate; readonly bench_m2: number };

export type BenchWeek = {
  readonly week: IsoDate;
  /** The most that stands there on any day of the week. */
  readonly bench_m2: number;
  readonly plantingIds: readonly string[];
};

/** Bench space by week: in each week the fullest day counts, as trays have to stand somewhere. @throws InputError */
export function benchByWeek(stays: readonly BenchStay[]): readonly BenchWeek[] {
  const perDay = new Map<number, number>();
  const ids = new Map<number, Set<string>>();
  for (const stay of stays) {
    const from = dayNumber(stay.from);
    const to = dayNumber(stay.to);
    if (to < from) refuse('to', 'dates-out-of-order', 'Trays cannot leave the bench before they are sown.');
    for (let day = from; day < to; day += 1) {
      perDay.set(day, (perDay.get(day) ?? 0) + stay.bench_m2);
      const monday = dayNumber(mondayOf(dateOfDay(day)));
      const here = ids.get(monday) ?? new Set<string>();
      here.add(stay.plantingId);
      ids.set(monday, here);
    }
  }
  return [...ids]
    .sort(([a], [b]) => a - b)
    .map(([monday, plantings]) => ({
      week: dateOfDay(monday),
      bench_m2: Math.max(0, ...Array.from({ length: 7 }, (_, at) => perDay.get(monday + at) ?? 0)),
      plantingIds: [...plantings].sort(),
    }));
}
