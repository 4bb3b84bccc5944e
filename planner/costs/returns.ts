import { requirePositive } from '../errors.ts';
import { computed, entry, type Working } from '../working.ts';

const DAYS_PER_WEEK = 7;

/** What is left of the gross after the variable cost, by bed-week and by m2 and day. */
export type MarginRates = {
  readonly margin_minor: number;
  /** Of the gross; empty where nothing was earned. */
  readonly marginShare: number | null;
  readonly margin_minor_per_bed_week: number;
  readonly margin_minor_per_m2_day: number;
};

/**
 * Gross margin of a stand and what it comes to for the ground and time it took.
 *
 *   GM = G - V;   per bed-week = GM / (beds x days / 7);   per m2 and day = GM / (beds x area x days)
 *
 * Source: University of Maryland Extension, Enterprise Budgeting (gross margin); the rates are common practice, no source.
 * @throws InputError naming the field
 */
export function marginRates(stand: {
  readonly gross_minor: number;
  readonly variable_minor: number;
  readonly bedArea_m2: number;
  readonly beds: number;
  readonly occupied_days: number;
}): MarginRates {
  requirePositive('bedArea_m2', stand.bedArea_m2, 'm2');
  requirePositive('beds', stand.beds, '');
  requirePositive('occupied_days', stand.occupied_days, 'days');
  const margin = grossMargin_minor(stand.gross_minor, stand.variable_minor);
  return {
    margin_minor: margin,
    marginShare: stand.gross_minor === 0 ? null : margin / stand.gross_minor,
    margin_minor_per_bed_week: margin / (stand.beds * (stand.occupied_days / DAYS_PER_WEEK)),
    margin_minor_per_m2_day: margin / (stand.beds * stand.bedArea_m2 * stand.occupied_days),
  };
}

/** Return above variable cost. Source: University of Maryland Extension, Enterprise Budgeting. */
export function grossMargin_minor(gross_minor: number, variable_minor: number): number {
  return gross_minor - variable_minor;
}

/**
 * What is left for labour and management: gross less every cost but labour, and less a management fee that total cost
 * already holds; and the same for each hour worked.
 *
 * Source: form of the extension budgets of Rutgers and of the Carolina Farm Stewardship Association.
 * @throws InputError when there are no hours
 */
export function returnToLabour(input: {
  readonly gross_minor: number;
  readonly total_minor: number;
  readonly labour_minor: number;
  readonly managementFee_minor: number;
  readonly labour_h: number;
}): { readonly return_minor: number; readonly return_minor_per_h: number } {
  requirePositive('labour_h', input.labour_h, 'h');
  const left = input.gross_minor - input.total_minor + input.labour_minor + input.managementFee_minor;
  return { return_minor: left, return_minor_per_h: left / input.labour_h };
}

/** What a change brings: added returns + reduced costs - reduced returns - added costs. Source: partial budgeting, from memory. */
export function partialBudget_minor(change: {
  readonly addedReturns_minor: number;
  readonly reducedCosts_minor: number;
  readonly reducedReturns_minor: number;
  readonly addedCosts_minor: number;
}): number {
  return change.addedReturns_minor + change.reducedCosts_minor - change.reducedReturns_minor - change.addedCosts_minor;
}

/**
 * Net return over a grid of yields (rows) and prices (columns): `Q (p - v) - F`.
 *
 * Source: ranging tables of the University of California cost studies.
 */
export function rangingTable_minor(input: {
  readonly yields: readonly number[];
  readonly prices_minor_per_unit: readonly number[];
  readonly fixed_minor: number;
  readonly following_minor_per_unit: number;
}): readonly (readonly number[])[] {
  return input.yields.map((sold) =>
    input.prices_minor_per_unit.map((price) => sold * (price - input.following_minor_per_unit) - input.fixed_minor),
  );
}

/** Working of the gross margin. */
export function explainMargin(gross_minor: number, variable_minor: number): Working {
  return {
    title: 'Margin over direct cost',
    formula: 'GM = G - V',
    symbols: [
      { symbol: 'G', name: 'income', figure: { value: gross_minor, unit: 'minor' }, origin: entry('your sales') },
      { symbol: 'V', name: 'direct cost', figure: { value: variable_minor, unit: 'minor' }, origin: computed() },
    ],
    steps: [],
    result: { value: grossMargin_minor(gross_minor, variable_minor), unit: 'minor' },
    sources: ['University of Maryland Extension, Enterprise Budgeting'],
    notes: ['Parts of the bed, fill, overheads and shared items are not in it.'],
  };
}
