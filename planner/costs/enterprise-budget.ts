import { requireRange } from '../errors.ts';
import { roundMoney } from '../money.ts';
import { computed, entry, type Working } from '../working.ts';

/** One line of a budget. `printed_minor` stands where a budget prints its own total; it wins over price times quantity. */
export type BudgetLine = {
  readonly item: string;
  readonly quantity: number;
  readonly price_minor_per_unit: number;
  readonly printed_minor?: number;
};

export type EnterpriseBudget = {
  readonly receipts: readonly BudgetLine[];
  /** Costs that change with planting the crop: materials, labour, marketing. */
  readonly variable: readonly BudgetLine[];
  readonly operatingInterest_minor: number;
  readonly fixed: readonly { readonly item: string; readonly printed_minor: number }[];
  /** A share of fixed and variable cost less what is left out of its base. */
  readonly managementFee?: { readonly share: number; readonly leftOut_minor: number };
};

export type BudgetTotals = {
  readonly gross_minor: number;
  readonly subtotal_minor: number;
  /** The same subtotal from price times quantity of each line, rounded to the minor unit line by line. */
  readonly subtotalOfProducts_minor: number;
  readonly variable_minor: number;
  readonly fixed_minor: number;
  readonly fixedAndVariable_minor: number;
  readonly managementFee_minor: number;
  readonly total_minor: number;
  readonly overVariable_minor: number;
  readonly net_minor: number;
  /** Lines whose printed total is not price times quantity. */
  readonly differing: readonly { readonly item: string; readonly printed_minor: number; readonly product_minor: number }[];
};

/**
 * What one line comes to: its printed total, else price times quantity rounded half up to the minor unit.
 * @throws InputError naming the field
 */
export function lineTotal_minor(line: BudgetLine): number {
  return line.printed_minor ?? product_minor(line);
}

/**
 * An enterprise budget from its lines to the net return.
 *
 *   total variable = lines + interest on operating capital
 *   management fee = share x (variable + fixed - what is left out of its base)
 *   return over variable = gross - total variable;  net = gross - (variable + fixed + fee)
 *
 * Money is whole minor units: each line rounded, totals are sums of rounded lines. Ratios are never fed back.
 * Source: form of the Rutgers Cooperative Extension budgets (Farm Management, Costs of production, Northeastern United
 * States, 1996, Tables 57, 69, 73) and of the Carolina Farm Stewardship Association's (2014, 2015).
 * @throws InputError naming the line's field
 */
export function budgetTotals(budget: EnterpriseBudget): BudgetTotals {
  const gross = sumOf(budget.receipts.map(lineTotal_minor));
  const subtotal = sumOf(budget.variable.map(lineTotal_minor));
  const variable = subtotal + budget.operatingInterest_minor;
  const fixed = sumOf(budget.fixed.map((line) => line.printed_minor));
  const fee =
    budget.managementFee === undefined
      ? 0
      : roundMoney(budget.managementFee.share * (variable + fixed - budget.managementFee.leftOut_minor));
  const total = variable + fixed + fee;
  return {
    gross_minor: gross,
    subtotal_minor: subtotal,
    subtotalOfProducts_minor: sumOf(budget.variable.map(product_minor)),
    variable_minor: variable,
    fixed_minor: fixed,
    fixedAndVariable_minor: variable + fixed,
    managementFee_minor: fee,
    total_minor: total,
    overVariable_minor: gross - variable,
    net_minor: gross - total,
    differing: [...budget.receipts, ...budget.variable]
      .filter((line) => line.printed_minor !== undefined && line.printed_minor !== product_minor(line))
      .map((line) => ({ item: line.item, printed_minor: lineTotal_minor(line), product_minor: product_minor(line) })),
  };
}

/** Working of the net return of {@link budgetTotals}. */
export function explainBudget(budget: EnterpriseBudget): Working {
  const totals = budgetTotals(budget);
  const money = (symbol: string, name: string, value: number) => ({
    symbol,
    name,
    figure: { value, unit: 'minor' },
    origin: entry('the lines of the budget'),
  });
  return {
    title: 'Net return',
    formula: 'net = G - (V + F + M)',
    symbols: [
      money('G', 'gross receipts', totals.gross_minor),
      money('V', 'variable cost with interest on operating capital', totals.variable_minor),
      money('F', 'fixed cost', totals.fixed_minor),
      { symbol: 'M', name: 'management fee', figure: { value: totals.managementFee_minor, unit: 'minor' }, origin: computed() },
    ],
    steps: [
      {
        text: 'Return over variable cost',
        figures: `${totals.gross_minor} - ${totals.variable_minor}`,
        result: { value: totals.overVariable_minor, unit: 'minor' },
      },
      {
        text: 'All costs',
        figures: `${totals.variable_minor} + ${totals.fixed_minor} + ${totals.managementFee_minor}`,
        result: { value: totals.total_minor, unit: 'minor' },
      },
    ],
    result: { value: totals.net_minor, unit: 'minor' },
    sources: ['Rutgers Cooperative Extension, Farm Management, Costs of production, Northeastern United States, 1996'],
    notes: totals.differing.map((line) => `${line.item}: the printed total is not price times quantity.`),
  };
}

function product_minor(line: BudgetLine): number {
  requireRange(`${line.item}.quantity`, line.quantity, 0, Infinity, '');
  return roundMoney(line.price_minor_per_unit * line.quantity);
}

const sumOf = (parts: readonly number[]): number => parts.reduce((sum, part) => sum + part, 0);
