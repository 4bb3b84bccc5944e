import { type PurchaseNeed, SAME_SHARE } from './purchase-problem.ts';

/** What is wanted of a need beyond the stock, that nobody is known to sell, in the need's own unit. */
export type UnpricedNeed = { readonly needId: string; readonly amount: number };

/**
 * Needs that no price is known for: neither the material nor an allowed stand-in is on offer by a supplier that will do, and the
 * stock does not cover it. Stock goes to such needs first, in the order given, since the others can be bought.
 *
 * Source: counting; that an unknown price is not nothing is no more than honest book-keeping (common practice, no source).
 */
export function unpricedNeeds(
  needs: readonly PurchaseNeed[],
  stock: ReadonlyMap<string, number>,
  offers: readonly { readonly materialId: string; readonly supplierId: string }[],
): readonly UnpricedNeed[] {
  const left = new Map(stock);
  const sellers = Map.groupBy(offers, (offer) => offer.materialId);
  return needs.flatMap(({ id, amount, materials, supplierIds }): readonly UnpricedNeed[] => {
    const isSold = materials.some(({ materialId }) =>
      (sellers.get(materialId) ?? []).some((offer) => supplierIds === undefined || supplierIds.includes(offer.supplierId)),
    );
    if (isSold) return [];
    let open = amount;
    for (const { materialId, ratio } of materials) {
      const there = Math.max(0, left.get(materialId) ?? 0);
      const taken = Math.min(open * ratio, there);
      left.set(materialId, there - taken);
      open -= taken / ratio;
    }
    return open > SAME_SHARE * amount ? [{ needId: id, amount: open }] : [];
  });
}
