import { type IsoDate, yearOf } from '../calendar.ts';

export type Spending = {
  readonly category: string;
  readonly date: IsoDate;
  readonly amount_minor: number;
  readonly received: boolean;
};
export type BudgetEntry = { readonly category: string; readonly month: number | null; readonly amount_minor: number };

export type BudgetRow = {
  readonly category: string;
  readonly budget_minor: number;
  /** Ordered and not yet received. */
  readonly committed_minor: number;
  readonly actual_minor: number;
  readonly left_minor: number;
  /** Spent and committed by month, January first. */
  readonly months_minor: readonly number[];
};

/**
 * Spending of a season by category and month against its budget: `left = budget - actual - committed`.
 * Every category of either has a row. Common practice, no source.
 */
export function seasonBudget(year: number, spending: readonly Spending[], budgets: readonly BudgetEntry[]): readonly BudgetRow[] {
  const inYear = spending.filter((each) => yearOf(each.date) === year);
  const categories = [...new Set([...inYear.map((each) => each.category), ...budgets.map((each) => each.category)])].sort();
  return categories.map((category) => {
    const of = inYear.filter((each) => each.category === category);
    const sum = (received: boolean): number =>
      of.reduce((all, each) => all + (each.received === received ? each.amount_minor : 0), 0);
    const budget = budgets.reduce((all, each) => all + (each.category === category ? each.amount_minor : 0), 0);
    const months = Array.from({ length: 12 }, (_, at) =>
      of.reduce((all, each) => all + (Number(each.date.slice(5, 7)) === at + 1 ? each.amount_minor : 0), 0),
    );
    return {
      category,
      budget_minor: budget,
      committed_minor: sum(false),
      actual_minor: sum(true),
      left_minor: budget - sum(true) - sum(false),
      months_minor: months,
    };
  });
}
