import type { BudgetMonth, BudgetRow } from '../../../planner/orders/season-budget.ts';
import { shortMonthNames } from '../../words/months.ts';
import { say } from '../../words/say.ts';

export type BudgetMonthRow = BudgetMonth & { readonly name: string; readonly mayEdit: boolean };

const names = [say('Before'), ...shortMonthNames, say('After')] as const;

/** Months of one category, or of all together; what lies before and after the year only where there is something. */
export function budgetMonths(rows: readonly BudgetRow[], category: string | null): readonly BudgetMonthRow[] {
  const own = rows.filter((row) => category === null || row.category === category);
  return names
    .map((name, month): BudgetMonthRow => {
      const sum = (read: (each: BudgetMonth) => number): number =>
        own.reduce((all, row) => all + row.months.reduce((some, each) => some + (each.month === month ? read(each) : 0), 0), 0);
      const inYear = month >= 1 && month <= 12;
      return {
        month,
        name,
        mayEdit: category !== null && inYear,
        budget_minor: sum((each) => each.budget_minor),
        committed_minor: sum((each) => each.committed_minor),
        actual_minor: sum((each) => each.actual_minor),
      };
    })
    .filter((row) => (row.month >= 1 && row.month <= 12) || row.committed_minor !== 0 || row.actual_minor !== 0);
}
