import { requireRange } from '../errors.ts';
import { roundMoney } from '../money.ts';

/**
 * Interest on operating cost that is outstanding on average by a share: `cost x i x months / 12 x share`.
 *
 *   cost    money laid out           minor units   0 or more
 *   i       interest                 share a year  0 to 1
 *   months  from outlay to sale      months        0 to 24
 *   share   average outstanding      0 to 1        a half where outlay is even over the season
 *
 * Rounded to the minor unit, as a line of the budget.
 * Source: usual form of extension budgets, from memory.
 * @throws InputError naming the field
 */
export function averageInterest_minor(input: {
  readonly cost_minor: number;
  readonly interest_share_per_year: number;
  readonly months: number;
  readonly outstandingShare: number;
}): number {
  requireRange('cost_minor', input.cost_minor, 0, Infinity, '');
  requireRange('interest_share_per_year', input.interest_share_per_year, 0, 1, '');
  requireRange('months', input.months, 0, 24, 'months');
  requireRange('outstandingShare', input.outstandingShare, 0, 1, '');
  return roundMoney((input.cost_minor * input.interest_share_per_year * input.months * input.outstandingShare) / 12);
}

/**
 * Interest on the cumulative cash cost, charged each month on the month-end balance until the month of sale.
 *
 * Rounded once, at the end.
 * Source: form of the University of California cost studies, from memory.
 * @throws InputError naming the field
 */
export function monthlyInterest_minor(
  cashCost_minor: readonly number[],
  interest_share_per_year: number,
): { readonly interest_minor: number; readonly cumulative_minor: number } {
  requireRange('interest_share_per_year', interest_share_per_year, 0, 1, '');
  let balance = 0;
  let outstanding_minor_months = 0;
  for (const [at, cost] of cashCost_minor.entries()) {
    requireRange(`cashCost_minor.${at}`, cost, 0, Infinity, '');
    balance += cost;
    outstanding_minor_months += balance;
  }
  return {
    interest_minor: roundMoney((outstanding_minor_months * interest_share_per_year) / 12),
    cumulative_minor: balance,
  };
}
