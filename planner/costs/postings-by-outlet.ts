import { splitMoney } from '../money.ts';
import type { IncomeLine } from './earning-rows.ts';
import type { Posting } from './spread-charges.ts';

/**
 * Costs and incomes by outlet. The costs of a planting go to its outlets by what each paid for it, in whole minor units; what earned
 * nothing stays without outlet. In the rows given back the outlet stands in the place of the bed.
 *
 * A share by income makes a good outlet look dear: read its margin as a share, not as a cost of selling there.
 * Common practice, no source.
 */
export function postingsByOutlet(
  postings: readonly Posting[],
  incomes: readonly IncomeLine[],
): { readonly postings: readonly Posting[]; readonly incomes: readonly IncomeLine[] } {
  const paid = new Map<string, Map<string, number>>();
  for (const { plantingId, outletId, paid_minor } of incomes) {
    if (plantingId === null || outletId === null || paid_minor <= 0) continue;
    const of = paid.get(plantingId) ?? new Map<string, number>();
    of.set(outletId, (of.get(outletId) ?? 0) + paid_minor);
    paid.set(plantingId, of);
  }
  return {
    postings: postings.flatMap((posting): readonly Posting[] => {
      const outlets = posting.plantingId === null ? undefined : paid.get(posting.plantingId);
      if (outlets === undefined) return [{ ...posting, bedId: null }];
      const ids = [...outlets.keys()];
      const { parts_minor } = splitMoney(posting.amount_minor, [...outlets.values()]);
      return ids.map((outletId, at) => ({ ...posting, bedId: outletId, amount_minor: parts_minor[at] ?? 0 }));
    }),
    incomes: incomes.map((income) => ({ ...income, bedId: income.outletId })),
  };
}
