import type { Range } from './chance.ts';
import type { StandResult } from './variance.ts';

/** Least, usual and most of what a stand may give: its own planned range, else a share around what it gave. */
export function yieldRange(
  planned: { readonly low: number | null; readonly typical: number | null; readonly high: number | null },
  sold: number,
): Range {
  const typical = planned.typical ?? sold;
  const low = Math.min(planned.low ?? typical * USUAL_LOW, typical);
  const high = Math.max(planned.high ?? typical * USUAL_HIGH, typical);
  return { low, typical, high };
}

/** Where no range is known. Common practice, no source: a third less, a third more. */
const USUAL_LOW = 2 / 3;
const USUAL_HIGH = 4 / 3;

/** Range of a price: the farm's own prices of the crop where there are several, else a fifth either way. Common practice, no source. */
export function priceRange(prices_minor: readonly number[], planned_minor: number): Range {
  const own = prices_minor.filter((price) => price > 0).toSorted((a, b) => a - b);
  const least = own[0];
  const most = own.at(-1);
  if (least === undefined || most === undefined || least === most)
    return { low: planned_minor * 0.8, typical: planned_minor, high: planned_minor * 1.2 };
  const typical = own[Math.floor(own.length / 2)] ?? planned_minor;
  return { low: least, typical, high: most };
}

/** A stand as ground, yield of a m2 and price of a unit, from its sums. Without ground there is nothing to compare. */
export function standOf(area_m2: number, amount: number, income_minor: number): StandResult {
  return {
    area_m2,
    yield_kg_per_m2: area_m2 > 0 ? amount / area_m2 : 0,
    price_minor_per_kg: amount > 0 ? income_minor / amount : 0,
  };
}
