import type { FarmDb } from '../../db/file/open-farm.ts';
import { movesOfMaterial } from '../../db/repositories/stock.ts';
import { type StockMovement, valueStock } from '../../planner/orders/stock-ledger.ts';

/** The movements of a material as the ledger takes them, all of them or those up to a day. */
export function movementsOf(db: FarmDb, materialId: string, until?: string): readonly StockMovement[] {
  return movesOfMaterial(db, materialId)
    .filter((move) => move.amount !== 0 && (until === undefined || move.date <= until))
    .map((move) =>
      move.amount > 0
        ? { kind: 'in', amount: move.amount, value_minor: Math.max(0, move.value_minor) }
        : { kind: 'out', amount: -move.amount, flagged: true },
    );
}

type Taking = { readonly materialId: string; readonly amount: number };

/**
 * What each of several amounts taken out on one day, in this order, costs by the moving average of its material. Nothing
 * taken costs nothing: what never lay in stock has no cost in the ledger.
 */
export function costsOfTaking(db: FarmDb, takings: readonly Taking[], date: string): readonly number[] {
  const costs = takings.map(() => 0);
  const numbered = takings.map((taking, at) => ({ ...taking, at })).filter((taking) => taking.amount > 0);
  for (const [materialId, of] of Map.groupBy(numbered, (taking) => taking.materialId)) {
    const before = movementsOf(db, materialId, date);
    const outs = of.map(({ amount }): StockMovement => ({ kind: 'out', amount, flagged: true }));
    const { values_minor } = valueStock([...before, ...outs], 'moving-average');
    of.forEach(({ at }, order) => {
      costs[at] = values_minor[before.length + order] ?? 0;
    });
  }
  return costs;
}

/**
 * The share of what came into stock up to a day whose price nobody knows; 1 where nothing ever came in. What is used is taken to
 * be mixed like what came in.
 */
export function unpricedShareOf(db: FarmDb, materialId: string, until: string): number {
  const came = movesOfMaterial(db, materialId).filter((move) => move.amount > 0 && move.date <= until);
  const total = came.reduce((sum, move) => sum + move.amount, 0);
  return total === 0 ? 1 : came.reduce((sum, move) => sum + (move.unpriced ? move.amount : 0), 0) / total;
}

/** Whether nothing of a material had come into the books by a day: what is used then has no cost in the ledger. */
export const nothingCame = (db: FarmDb, materialId: string, until: string): boolean =>
  !movesOfMaterial(db, materialId).some((move) => move.amount > 0 && move.date <= until);
