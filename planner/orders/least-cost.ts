import type { MilpSolver, MilpWishes } from '../milp.ts';
import { goodsOf_minor } from './bill.ts';
import { purchaseModel } from './purchase-model.ts';
import { type PurchasePlan, readPurchase } from './purchase-plan.ts';
import type { PurchaseProblem } from './purchase-problem.ts';

export type BasketOfOne = {
  readonly supplierId: string;
  readonly goods_minor: number;
  readonly total_minor: number;
  readonly short: number;
};

export type LeastCost = {
  readonly plan: PurchasePlan;
  /** The cheapest basket of one supplier that serves as much, and what the list saves against it; empty where none does. */
  readonly single: BasketOfOne | null;
  readonly saving_minor: number | null;
};

/** A plan within this share of the best possible is good enough to show as it is; the gap is told. */
const RELATIVE_GAP = 0.005;
/** Limits by count, so that the same list comes out on every machine. */
const NODE_LIMIT = 20_000;
const SINGLE_NODE_LIMIT = 500;

/**
 * The basket of least total cost over suppliers, packages, breaks and deliveries, set against the simplest way: everything from
 * one supplier.
 *
 * @throws InputError on a problem that cannot be meant
 */
export function leastCost(problem: PurchaseProblem, solve: MilpSolver, wishes: PurchaseWishes = {}): LeastCost {
  const built = purchaseModel(problem);
  const answer = solve(built.model, {
    relativeGap: RELATIVE_GAP,
    nodeLimit: NODE_LIMIT,
    ...(wishes.shouldStop === undefined ? {} : { shouldStop: wishes.shouldStop }),
    ...(wishes.onBetter === undefined
      ? {}
      : {
          onImprovement: (found) => {
            const better = readPurchase(problem, built, { state: 'stopped', ...found });
            wishes.onBetter?.(better);
          },
        }),
  });
  const plan = readPurchase(problem, built, answer);
  if (plan.state === 'no-solution') return { plan, single: null, saving_minor: null };
  const short = shortCount(plan);
  const singles = problem.suppliers.flatMap((supplier) => {
    if (wishes.shouldStop?.() === true) return [];
    const one = singleBasket(problem, supplier.id, solve);
    return one === null || one.short > short ? [] : [one];
  });
  singles.sort((a, b) => a.total_minor - b.total_minor || a.supplierId.localeCompare(b.supplierId));
  const single = singles[0] ?? null;
  return { plan, single, saving_minor: single === null ? null : single.total_minor - plan.bill.total_minor };
}

export type PurchaseWishes = {
  readonly shouldStop?: () => boolean;
  readonly onBetter?: (plan: PurchasePlan) => void;
};

/** Everything from one supplier, as far as it goes; empty where there is no such basket. */
function singleBasket(problem: PurchaseProblem, supplierId: string, solve: MilpSolver): BasketOfOne | null {
  const alone: PurchaseProblem = {
    ...problem,
    offers: problem.offers.filter((offer) => offer.supplierId === supplierId),
    suppliers: problem.suppliers.filter((supplier) => supplier.id === supplierId),
  };
  const built = purchaseModel(alone);
  const wishes: MilpWishes = { relativeGap: RELATIVE_GAP, nodeLimit: SINGLE_NODE_LIMIT };
  const plan = readPurchase(alone, built, solve(built.model, wishes));
  if (plan.state !== 'found') return null;
  return { supplierId, goods_minor: goodsOf_minor(plan.bill), total_minor: plan.bill.total_minor, short: shortCount(plan) };
}

const shortCount = (plan: Extract<PurchasePlan, { state: 'found' }>): number =>
  plan.served.filter((each) => each.short > 0).length;
