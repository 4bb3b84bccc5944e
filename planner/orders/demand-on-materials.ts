import type { PurchaseOffer, PurchaseProblem } from './purchase-problem.ts';

/** The most of each material that all needs together could take, in the material's unit. */
export function mostUseful(problem: PurchaseProblem): ReadonlyMap<string, number> {
  const most = new Map<string, number>();
  for (const need of problem.needs)
    for (const { materialId, ratio } of need.materials) most.set(materialId, (most.get(materialId) ?? 0) + need.amount * ratio);
  return most;
}

/**
 * The most packages of an offer worth looking at: what covers the need, the start of the price step above it, and a
 * top-up to free delivery or the minimum order, and no more.
 */
export function mostPackages(problem: PurchaseProblem, offer: PurchaseOffer, useful: number): number {
  const supplier = problem.suppliers.find((each) => each.id === offer.supplierId);
  const cheapest = Math.max(1, Math.min(...offer.steps.map((step) => step.price_minor)));
  const cover = Math.ceil(useful / offer.packageAmount - 1e-9);
  const dearest = offer.steps.filter((step) => step.fromPackages <= cover).at(-1)?.price_minor ?? Infinity;
  const reachable = offer.steps
    .filter((step) => step.fromPackages > cover && step.fromPackages * step.price_minor <= cover * dearest)
    .map((step) => step.fromPackages);
  const topUp =
    supplier === undefined ? 0 : Math.ceil(Math.max(supplier.deliveryFee_minor, supplier.minimumOrder_minor) / cheapest);
  const most = Math.max(cover, offer.steps[0]?.fromPackages ?? 1, ...reachable) + topUp;
  return Math.min(most, offer.availablePackages ?? Infinity);
}
