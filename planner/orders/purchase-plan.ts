import type { MilpAnswer } from '../milp.ts';
import { type Bill, billOf } from './bill.ts';
import type { PurchaseModel } from './purchase-model.ts';
import type { Bought, PurchaseProblem } from './purchase-problem.ts';

/** What of a need comes out of which material. */
export type NeedServed = {
  readonly needId: string;
  readonly uses: readonly { readonly materialId: string; readonly amount: number }[];
  /** What cannot be had, in the need's own unit. */
  readonly short: number;
};

export type PurchasePlan =
  | {
      readonly state: 'found';
      readonly bought: readonly Bought[];
      readonly bill: Bill;
      readonly served: readonly NeedServed[];
      /** No basket costs less than this. */
      readonly bound_minor: number;
      readonly gapShare: number;
      readonly proven: boolean;
    }
  | { readonly state: 'no-solution'; readonly because: 'infeasible' | 'unbounded' | 'stopped-before-any' };

const MONEY_SCALE = 100;
/** Shortfalls below this share are the solver's own rounding. */
const SHORT_SHARE = 1e-6;

/**
 * Reads the solver's answer as a basket, works the bill out anew from the price lists, and says what is served by what. The gap
 * is against the bill, not the solver's objective.
 */
export function readPurchase(problem: PurchaseProblem, { columns }: PurchaseModel, answer: MilpAnswer): PurchasePlan {
  if (answer.state === 'no-solution') return answer;
  const at = (column: number): number => answer.values[column] ?? 0;
  const bought = problem.offers.flatMap((offer, n) => {
    const packages = (columns.packages[n] ?? []).reduce((sum, column) => sum + Math.round(at(column)), 0);
    return packages > 0 ? [{ offerId: offer.id, packages }] : [];
  });
  const bill = billOf(problem, bought);
  const shortOf = new Map(columns.short.map((each) => [each.need, at(each.column) * each.scale]));
  const penalty = columns.short.reduce((sum, each) => sum + at(each.column), 0);
  const served = problem.needs.map((need, n): NeedServed => {
    const short = shortOf.get(n) ?? 0;
    return {
      needId: need.id,
      uses: columns.uses
        .filter((use) => use.need === n && at(use.column) > SHORT_SHARE)
        .map((use) => ({ materialId: use.materialId, amount: at(use.column) * use.scale })),
      short: short > SHORT_SHARE * need.amount ? short : 0,
    };
  });
  const bound =
    penalty > SHORT_SHARE ? bill.total_minor - (answer.objective - answer.bound) * MONEY_SCALE : answer.bound * MONEY_SCALE;
  const gap = bill.total_minor === 0 ? 0 : Math.max(0, (bill.total_minor - bound) / bill.total_minor);
  return {
    state: 'found',
    bought,
    bill,
    served,
    bound_minor: Math.min(bill.total_minor, Math.max(0, bound)),
    gapShare: gap,
    proven: answer.state === 'optimal',
  };
}
