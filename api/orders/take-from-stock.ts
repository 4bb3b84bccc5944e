import { newId } from '../../db/file/new-id.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { addStockMoves, stockBalances } from '../../db/repositories/bed-history.ts';
import { materialFacts } from '../../db/repositories/stock.ts';
import { unitPrices } from '../../db/repositories/unit-prices.ts';
import { roundMoney } from '../../planner/money.ts';
import { costsOfTaking, movementsOf, unpricedShareOf } from './ledger-of-material.ts';

/** An amount of a material, in its base unit, that goes into a bed, or into a line where there is no bed. */
export type Taking = {
  readonly materialId: string;
  readonly amount: number;
  readonly bedId: string | null;
  readonly reason: string;
  /** The part of a bed or line that it becomes, to be paid for over its life. */
  readonly partId?: string;
};

/** What it cost: what lay in stock at its average cost, the rest at the lowest price on offer. */
export type Taken = {
  readonly fromStock: number;
  readonly stock_minor: number;
  readonly priced_minor: number;
  /** How much of the amount has a price that nobody knows: it is in neither cost. */
  readonly unpriced: number;
};

/**
 * Takes materials out of stock as far as they lie there, on that day and now, so that no balance falls below nothing. What
 * did not lie there was bought outside the books: it stands at the lowest price on offer, and as not priced where none is.
 */
export function takeFromStock(db: FarmDb, takings: readonly Taking[], date: string): readonly Taken[] {
  const left = new Map<string, number>();
  const now = stockBalances(db);
  for (const { materialId } of takings) {
    if (left.has(materialId)) continue;
    const then = movementsOf(db, materialId, date).reduce(
      (sum, each) => sum + (each.kind === 'in' ? each.amount : -each.amount),
      0,
    );
    left.set(materialId, Math.max(0, Math.min(then, now.get(materialId) ?? 0)));
  }
  const fromStock = takings.map(({ materialId, amount }) => {
    const there = left.get(materialId) ?? 0;
    const taken = Math.min(amount, there);
    left.set(materialId, there - taken);
    return taken;
  });
  const costs_minor = costsOfTaking(
    db,
    takings.map(({ materialId }, at) => ({ materialId, amount: fromStock[at] ?? 0 })),
    date,
  );
  addStockMoves(
    db,
    takings.flatMap(({ materialId, bedId, reason, partId = null }, at) => {
      const amount = fromStock[at] ?? 0;
      return amount > 0
        ? [
            {
              id: newId<string>(),
              materialId,
              date,
              kind: 'use' as const,
              amount: -amount,
              value_minor: -(costs_minor[at] ?? 0),
              bedId,
              reason,
              partId,
            },
          ]
        : [];
    }),
  );
  const prices = unitPrices(db);
  const facts = materialFacts(db);
  return takings.map(({ materialId, amount }, at): Taken => {
    const stocked = fromStock[at] ?? 0;
    const price = prices.get(materialId);
    const unpricedOfStock = stocked > 0 ? stocked * unpricedShareOf(db, materialId, date) : 0;
    const isFree = facts.get(materialId)?.own === true;
    return {
      fromStock: stocked,
      stock_minor: costs_minor[at] ?? 0,
      priced_minor: roundMoney((amount - stocked) * (price ?? 0)),
      unpriced: unpricedOfStock + (price === undefined && !isFree ? amount - stocked : 0),
    };
  });
}
