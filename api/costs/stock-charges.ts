import type { MoveFact } from '../../db/repositories/cost-facts.ts';
import type { ShareKey } from '../../planner/costs/allocate.ts';
import type { Charge, ChargeTarget, CostKind } from '../../planner/costs/spread-charges.ts';
import { type StockMovement, valueStock } from '../../planner/orders/stock-ledger.ts';

/** What went out of stock, at the ledger's average cost. */
export type ValuedMove = MoveFact & {
  readonly cost_minor: number;
  /** How much of it has a price that nobody knows: it is not in the cost. */
  readonly unpricedAmount: number;
};

/**
 * Values every movement out of stock by moving average, material by material. What is used of a material that never came into the
 * books costs what the grower said. `moves` come sorted by material and day.
 */
export function valuedMoves(moves: readonly MoveFact[]): readonly ValuedMove[] {
  return [...Map.groupBy(moves, (move) => move.materialId).values()].flatMap((ofMaterial) => {
    const counted = ofMaterial.filter((move) => move.amount !== 0);
    const movements = counted.map(
      (move): StockMovement =>
        move.amount > 0
          ? { kind: 'in', amount: move.amount, value_minor: Math.max(0, move.value_minor) }
          : { kind: 'out', amount: -move.amount, flagged: true },
    );
    const { values_minor } = valueStock(movements, 'moving-average');
    let came = 0;
    let cameUnpriced = 0;
    return counted.flatMap((move, at): readonly ValuedMove[] => {
      if (move.amount > 0) {
        came += move.amount;
        cameUnpriced += move.unpriced ? move.amount : 0;
        return [];
      }
      if (came === 0)
        return [{ ...move, cost_minor: Math.max(0, -move.value_minor), unpricedAmount: move.unpriced ? -move.amount : 0 }];
      return [{ ...move, cost_minor: values_minor[at] ?? 0, unpricedAmount: (-move.amount * cameUnpriced) / came }];
    });
  });
}

/** Name of a filling: what went into a bed on a day. */
export const fillingOf = (move: { readonly bedId: string | null; readonly date: string; readonly materialId: string }): string =>
  `${move.bedId ?? ''} ${move.date} ${move.materialId}`;

/** What was used of the stock in a season as costs. Fillings of beds, and what became a part of one or of a line, are left out: they last for years. */
export function stockCharges(
  moves: readonly ValuedMove[],
  from: string,
  to: string,
  isFilling: (move: ValuedMove) => boolean,
  overheadKey: ShareKey,
): readonly Charge[] {
  return usesOf(moves, from, to, isFilling).map((move) => chargeOf(move, overheadKey));
}

/** What went out of stock in a season and lasts for no longer. */
export const usesOf = (
  moves: readonly ValuedMove[],
  from: string,
  to: string,
  isFilling: (move: ValuedMove) => boolean,
): readonly ValuedMove[] =>
  moves.filter((move) => move.date >= from && move.date <= to && move.partId === null && !isFilling(move));

function chargeOf(move: ValuedMove, overheadKey: ShareKey): Charge {
  switch (move.kind) {
    case 'use':
      return { kind: kindOf(move), amount_minor: move.cost_minor, target: targetOf(move, overheadKey) };
    case 'correction':
      return { kind: 'stock-loss', amount_minor: move.cost_minor, target: { to: 'all', key: overheadKey } };
    case 'return':
      // what the supplier gave back is no cost; only what it fell short of the ledger is
      return { kind: 'stock-loss', amount_minor: move.cost_minor + move.value_minor, target: { to: 'all', key: overheadKey } };
    case 'opening':
    case 'purchase':
    case 'made':
      return { kind: 'stock-loss', amount_minor: move.cost_minor, target: { to: 'nobody' } };
  }
}

function kindOf(move: ValuedMove): CostKind {
  if (move.materialKind === 'seed' || move.materialKind === 'start') return 'seed';
  return move.materialKind === 'packing' ? 'packing' : 'inputs';
}

/** What a use belongs to, as far as that is known. */
export function targetOf(move: ValuedMove, overheadKey: ShareKey): ChargeTarget {
  if (move.plantingId !== null && move.bedId !== null)
    return { to: 'planting-in-bed', plantingId: move.plantingId, bedId: move.bedId };
  if (move.plantingId !== null) return { to: 'planting', plantingId: move.plantingId };
  if (move.bedId !== null) return { to: 'bed', bedId: move.bedId };
  return { to: 'all', key: move.materialKind === 'packing' ? 'income' : overheadKey };
}
