import type { LotRow } from './harvest-types.ts';

/** What the sale of a lot needs to know of it. */
export type LotToSell = Pick<LotRow, 'lotId' | 'code' | 'crop' | 'unit' | 'left' | 'plantingId'>;

/** What is known of a sale before it is entered. */
export type SaleStart = {
  readonly outletId: string;
  readonly price_minor: number;
  readonly amounts: ReadonlyMap<string, number>;
};

type Order<Lot> = {
  readonly outletId: string;
  readonly price_minor: number;
  readonly open: number;
  readonly lots: readonly Lot[];
};

/** Takes what an order still wants from its lots, the oldest first; never more than a lot has left. */
export function fillOrder<Lot extends { readonly lotId: string; readonly date: string; readonly left: number }>(
  order: Order<Lot>,
): { readonly lots: readonly Lot[]; readonly start: SaleStart } {
  const amounts = new Map<string, number>();
  let open = order.open;
  for (const lot of order.lots.toSorted((a, b) => a.date.localeCompare(b.date))) {
    const taken = Number(Math.min(open, lot.left).toFixed(3));
    if (taken <= 0) continue;
    amounts.set(lot.lotId, taken);
    open -= taken;
  }
  return {
    lots: order.lots.filter((lot) => amounts.has(lot.lotId)),
    start: { outletId: order.outletId, price_minor: order.price_minor, amounts },
  };
}
