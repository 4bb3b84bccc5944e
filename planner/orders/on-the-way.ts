import { addDays, type IsoDate } from '../calendar.ts';

/** A line of a purchase that may still be open. */
export type OrderedLine = {
  readonly materialId: string;
  readonly orderedDate: IsoDate;
  /** Packages. */
  readonly ordered: number;
  /** Packages that came of it. */
  readonly received: number;
  /** What one package holds, in the material's base unit. */
  readonly packageAmount: number;
  /** From ordering to having it, as its supplier says. */
  readonly lead_days: number;
};

/** What is ordered of a material and not here yet, in its base unit, and the day by which all of it should be here. */
export type OnTheWay = { readonly onTheWay: number; readonly expectedDate: IsoDate };

/**
 * Goods on the way, by material: what was ordered less what came of it. What went back to the supplier had come, and is not on the way
 * again. More than was ordered came of some lines: nothing of those is to come.
 *
 *   on the way = sum over lines of max(0, ordered - received) x package       base unit
 *   expected   = latest of ordered + lead                                     date
 *
 * Source: counting.
 */
export function goodsOnTheWay(lines: readonly OrderedLine[]): ReadonlyMap<string, OnTheWay> {
  const found = new Map<string, OnTheWay>();
  for (const line of lines) {
    const amount = Math.max(0, line.ordered - line.received) * line.packageAmount;
    if (amount <= 0) continue;
    const expected = addDays(line.orderedDate, line.lead_days);
    const known = found.get(line.materialId);
    found.set(line.materialId, {
      onTheWay: (known?.onTheWay ?? 0) + amount,
      expectedDate: known !== undefined && known.expectedDate > expected ? known.expectedDate : expected,
    });
  }
  return found;
}
