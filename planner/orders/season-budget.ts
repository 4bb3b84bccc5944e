import { type IsoDate, yearOf } from '../calendar.ts';

export type Spending = {
  readonly category: string;
  readonly date: IsoDate;
  readonly amount_minor: number;
  readonly received: boolean;
  /** The season whose list it was bought from; null where it was bought without one. */
  readonly seasonId: string | null;
};
export type BudgetEntry = { readonly category: string; readonly month: number | null; readonly amount_minor: number };
export type BudgetSeason = { readonly seasonId: string; readonly startDate: IsoDate; readonly endDate: IsoDate };

/** A month of the season's year: 1 to 12, 0 for all before it, 13 for all after it. */
export type BudgetMonth = {
  readonly month: number;
  readonly budget_minor: number;
  readonly committed_minor: number;
  readonly actual_minor: number;
};

export type BudgetRow = {
  readonly category: string;
  readonly budget_minor: number;
  /** Ordered and not yet received. */
  readonly committed_minor: number;
  readonly actual_minor: number;
  readonly left_minor: number;
  /** From before the year to after it, fourteen in all. Money set aside for the season as a whole is in no month. */
  readonly months: readonly BudgetMonth[];
};

const MONTHS = Array.from({ length: 14 }, (_, at) => at);

/** Whether a spending counts for a season: by the list it was bought from, else by its day. */
export function isOfSeason(season: BudgetSeason, spending: Pick<Spending, 'date' | 'seasonId'>): boolean {
  return spending.seasonId === null
    ? season.startDate <= spending.date && spending.date <= season.endDate
    : spending.seasonId === season.seasonId;
}

/**
 * Spending of a season by category and month against its budget: `left = budget - actual - committed`.
 * Every category of either has a row. Common practice, no source.
 */
export function seasonBudget(
  season: BudgetSeason,
  spending: readonly Spending[],
  budgets: readonly BudgetEntry[],
): readonly BudgetRow[] {
  const own = spending.filter((each) => isOfSeason(season, each));
  const year = yearOf(season.startDate);
  const categories = [...new Set([...own.map((each) => each.category), ...budgets.map((each) => each.category)])].sort();
  return categories.map((category) => {
    const of = own.filter((each) => each.category === category);
    const set = budgets.filter((each) => each.category === category);
    const months = MONTHS.map((month): BudgetMonth => {
      const here = of.filter((each) => monthIn(year, each.date) === month);
      return {
        month,
        budget_minor: set.reduce((sum, each) => sum + (each.month === month ? each.amount_minor : 0), 0),
        committed_minor: total(here, false),
        actual_minor: total(here, true),
      };
    });
    const budget_minor = set.reduce((sum, each) => sum + each.amount_minor, 0);
    const committed_minor = total(of, false);
    const actual_minor = total(of, true);
    return {
      category,
      budget_minor,
      committed_minor,
      actual_minor,
      left_minor: budget_minor - actual_minor - committed_minor,
      months,
    };
  });
}

const total = (spending: readonly Spending[], received: boolean): number =>
  spending.reduce((sum, each) => sum + (each.received === received ? each.amount_minor : 0), 0);

const monthIn = (year: number, date: IsoDate): number =>
  yearOf(date) < year ? 0 : yearOf(date) > year ? 13 : Number(date.slice(5, 7));
