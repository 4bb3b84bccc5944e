import { requirePositive, requireRange } from '../errors.ts';
import { computed, entry, type Working } from '../working.ts';

/** A break-even that may not exist: `per_unit` earns nothing over what each unit costs. */
export type BreakEven =
  | { readonly state: 'found'; readonly amount: number }
  | { readonly state: 'no-break-even'; readonly because: 'each unit costs as much as it brings' };

/**
 * Price at which a quantity sold covers its cost: `cost / quantity`. With variable cost alone it is the short-run price.
 *
 * Source: Penn State Extension, Agricultural Alternatives: budgets.
 * @throws InputError when nothing was sold: there is no price then
 */
export function breakEvenPrice_minor(cost_minor: number, sold: number): number {
  requireRange('cost_minor', cost_minor, -Infinity, Infinity, '');
  requirePositive('sold', sold, '');
  return cost_minor / sold;
}

/**
 * Quantity that covers the cost, where some cost follows each unit sold.
 *
 *   Q = F / (p (1 - s) - v)
 *
 *   F  cost that does not follow the yield        minor units
 *   p  price                                      minor units a unit
 *   s  selling share of the gross                 0 to 1
 *   v  cost that follows each unit (box, picking) minor units a unit
 *
 * With v = 0 and s = 0 it is the simple form of most leaflets, which overstates the need when some cost falls with the yield.
 * Source: Penn State Extension, Agricultural Alternatives (simple form); the split form is common practice.
 * @throws InputError naming the field
 */
export function breakEvenYield(input: {
  readonly fixed_minor: number;
  readonly price_minor_per_unit: number;
  readonly following_minor_per_unit: number;
  readonly sellingShare: number;
}): BreakEven {
  requireRange('price_minor_per_unit', input.price_minor_per_unit, 0, Infinity, '');
  requireRange('following_minor_per_unit', input.following_minor_per_unit, 0, Infinity, '');
  requireRange('sellingShare', input.sellingShare, 0, 1, '');
  const kept = input.price_minor_per_unit * (1 - input.sellingShare) - input.following_minor_per_unit;
  if (kept <= 0) return { state: 'no-break-even', because: 'each unit costs as much as it brings' };
  return { state: 'found', amount: input.fixed_minor / kept };
}

/** Beds (or any area) whose gross margins cover the overhead: `overhead / margin per bed`. */
export function breakEvenBeds(overhead_minor: number, margin_minor_per_bed: number): BreakEven {
  if (margin_minor_per_bed <= 0) return { state: 'no-break-even', because: 'each unit costs as much as it brings' };
  return { state: 'found', amount: overhead_minor / margin_minor_per_bed };
}

/** Working of {@link breakEvenPrice_minor}. */
export function explainBreakEvenPrice(cost_minor: number, sold: number, unit: string): Working {
  return {
    title: 'Break-even price',
    formula: 'p = C / Q',
    symbols: [
      { symbol: 'C', name: 'cost', figure: { value: cost_minor, unit: 'minor' }, origin: computed() },
      { symbol: 'Q', name: 'sold', figure: { value: sold, unit }, origin: entry('your sales') },
    ],
    steps: [],
    result: { value: breakEvenPrice_minor(cost_minor, sold), unit: 'minor' },
    sources: ['Penn State Extension, Agricultural Alternatives'],
    notes: ['With the yield as it was. A larger yield lowers it.'],
  };
}

/** The part of a cost that does not follow the yield: total less what follows each unit at the yield it was budgeted for. */
export function stayingCost_minor(total_minor: number, following_minor_per_unit: number, sold: number): number {
  requireRange('sold', sold, 0, Infinity, '');
  return total_minor - following_minor_per_unit * sold;
}

/** Labour of all classes and its share of the cost. @throws InputError when there is no cost */
export function labourShare(
  labour_minor: readonly number[],
  total_minor: number,
): { readonly labour_minor: number; readonly share: number } {
  requirePositive('total_minor', total_minor, '');
  const labour = labour_minor.reduce((sum, each) => sum + each, 0);
  return { labour_minor: labour, share: labour / total_minor };
}
