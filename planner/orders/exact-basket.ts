import { refuse } from '../errors.ts';
import { billOf } from './bill.ts';
import { mostPackages, mostUseful } from './demand-on-materials.ts';
import {
  type Bought,
  type PurchaseOffer,
  type PurchaseProblem,
  priceAt_minor,
  requireProblem,
  SAME_SHARE,
} from './purchase-problem.ts';

export type ExactBasket =
  | { readonly state: 'found'; readonly bought: readonly Bought[]; readonly total_minor: number }
  | { readonly state: 'no-solution'; readonly because: 'the offers cannot cover the needs' };

/** More needs than this would make the check of every set of them slow. */
const MOST_NEEDS = 16;

/**
 * The cheapest basket of a small problem, found by trying every number of packages of every offer, with branches cut whose
 * goods alone already cost as much as the best basket found. Exact. For more than some dozen offers use the model of
 * `purchase-model.ts`.
 *
 * Whether a basket serves the needs is Hall's condition: no set of needs may want more than the materials that it accepts hold.
 * Ties go to the basket with less left over, then to fewer packages of the earlier offers.
 *
 * Source: complete enumeration; Hall 1935, from memory.
 * @throws InputError on a problem that cannot be meant, a need with stand-ins of another ratio than 1, or too many needs
 */
export function exactBasket(problem: PurchaseProblem): ExactBasket {
  requireProblem(problem);
  requireSmall(problem);
  const useful = mostUseful(problem);
  const offers = problem.offers.filter((offer) => (useful.get(offer.materialId) ?? 0) > 0);
  const limits = offers.map((offer) => mostPackages(problem, offer, useful.get(offer.materialId) ?? 0));
  const rest = restBound(problem, offers);
  const counts = offers.map(() => 0);
  let best: { total: number; over: number; counts: number[] } | null = null;

  const offerFor = new Map(offers.map((offer, at) => [offer.id, at]));
  const basket = (): Bought[] =>
    problem.offers.flatMap((offer) => {
      const at = offerFor.get(offer.id);
      const packages = at === undefined ? 0 : (counts[at] ?? 0);
      return packages > 0 ? [{ offerId: offer.id, packages }] : [];
    });

  function look(at: number, goods: number): void {
    if (best !== null && goods + rest(at, counts) > best.total) return;
    const offer = offers[at];
    if (offer === undefined) {
      judge();
      return;
    }
    for (let packages = 0; packages <= (limits[at] ?? 0); packages += 1) {
      const price = priceAt_minor(offer, packages);
      if (packages > 0 && price === null) continue;
      counts[at] = packages;
      look(at + 1, goods + packages * (price ?? 0));
    }
    counts[at] = 0;
  }

  function judge(): void {
    const bill = billOf(problem, basket());
    if (bill.suppliers.some((each) => each.underMinimum_minor > 0)) return;
    if (problem.mostSuppliers !== null && bill.suppliers.length > problem.mostSuppliers) return;
    if (best !== null && bill.total_minor > best.total) return;
    if (!serves(problem, offers, counts)) return;
    const over = offers.reduce((sum, offer, at) => sum + offer.packageAmount * (counts[at] ?? 0), 0);
    if (best !== null && bill.total_minor === best.total && over >= best.over) return;
    best = { total: bill.total_minor, over, counts: [...counts] };
  }

  look(0, 0);
  const found = best as { total: number; over: number; counts: number[] } | null;
  if (found === null) return { state: 'no-solution', because: 'the offers cannot cover the needs' };
  counts.splice(0, counts.length, ...found.counts);
  return { state: 'found', bought: basket(), total_minor: found.total };
}

/** Least that the offers from `at` on must still cost, from needs that accept one material only. */
function restBound(
  problem: PurchaseProblem,
  offers: readonly PurchaseOffer[],
): (at: number, counts: readonly number[]) => number {
  const only = new Map<string, number>();
  for (const need of problem.needs) {
    const first = need.materials[0];
    if (need.materials.length === 1 && first !== undefined)
      only.set(first.materialId, (only.get(first.materialId) ?? 0) + need.amount);
  }
  for (const { materialId, amount } of problem.stock)
    if (only.has(materialId)) only.set(materialId, (only.get(materialId) ?? 0) - amount);
  const cheapest = offers.map((_, from) => {
    const least = new Map<string, number>();
    for (const offer of offers.slice(from)) {
      const unit = Math.min(...offer.steps.map((step) => step.price_minor)) / offer.packageAmount;
      least.set(offer.materialId, Math.min(least.get(offer.materialId) ?? Infinity, unit));
    }
    return least;
  });
  return (at, counts) => {
    let sum = 0;
    for (const [materialId, want] of only) {
      let left = want;
      for (let n = 0; n < at; n += 1)
        if (offers[n]?.materialId === materialId) left -= (offers[n]?.packageAmount ?? 0) * (counts[n] ?? 0);
      if (left <= SAME_SHARE * Math.abs(want)) continue;
      const unit = cheapest[at]?.get(materialId);
      if (unit === undefined) return Infinity;
      sum += left * unit;
    }
    // money is whole: a bound a hair above a whole number is that number
    return sum * (1 - SAME_SHARE);
  };
}

/** Hall's condition over every set of needs. */
function serves(problem: PurchaseProblem, offers: readonly PurchaseOffer[], counts: readonly number[]): boolean {
  const needs = problem.needs;
  for (let set = 1; set < 1 << needs.length; set += 1) {
    const inSet = needs.filter((_, at) => (set & (1 << at)) !== 0);
    const want = inSet.reduce((sum, need) => sum + need.amount, 0);
    const accepts = (materialId: string, supplierId: string | null): boolean =>
      inSet.some(
        (need) =>
          need.materials.some((each) => each.materialId === materialId) &&
          (supplierId === null || need.supplierIds === undefined || need.supplierIds.includes(supplierId)),
      );
    const held =
      problem.stock.reduce((sum, each) => sum + (accepts(each.materialId, null) ? each.amount : 0), 0) +
      offers.reduce(
        (sum, offer, at) => sum + (accepts(offer.materialId, offer.supplierId) ? offer.packageAmount * (counts[at] ?? 0) : 0),
        0,
      );
    if (held < want * (1 - SAME_SHARE)) return false;
  }
  return true;
}

function requireSmall(problem: PurchaseProblem): void {
  if (problem.needs.length > MOST_NEEDS) refuse('needs', 'too-large', `This way takes at most ${MOST_NEEDS} needs.`);
  problem.needs.forEach((need, at) => {
    if (need.materials.some((each) => each.ratio !== 1))
      refuse(`needs.${at}.materials`, 'ratio', 'This way takes stand-ins of the same strength only.');
  });
}
