import type { Posting } from './spread-charges.ts';

/** Income of a planting, in a bed where that is known, at an outlet. */
export type IncomeLine = {
  readonly plantingId: string | null;
  readonly bedId: string | null;
  readonly outletId: string | null;
  readonly paid_minor: number;
  readonly sold_kg: number;
};

export type EarningRow = {
  readonly id: string;
  readonly income_minor: number;
  readonly direct_minor: number;
  readonly bed_minor: number;
  /** Water, power and the parts of the lines. */
  readonly water_minor: number;
  /** Of the water's: the parts of the lines over their years. */
  readonly lineParts_minor: number;
  readonly overhead_minor: number;
  readonly cost_minor: number;
  readonly labour_minor: number;
  /** Income less direct costs. */
  readonly contribution_minor: number;
  /** Income less all costs. */
  readonly margin_minor: number;
  readonly sold_kg: number;
};

export type Grouping = {
  /** The group of a place; empty leaves it to the row of what belongs to nobody. */
  readonly of: (bedId: string | null, plantingId: string | null) => string | null;
};

/** The row of costs and income that belong to no group. */
export const NOBODY = '';

type Sums = {
  income: number;
  direct: number;
  bed: number;
  water: number;
  lineParts: number;
  overhead: number;
  labour: number;
  sold: number;
};

/**
 * Income, cost and margin by any grouping. Sums of rows are sums of postings and incomes: nothing is added or lost.
 */
export function earningRows(
  postings: readonly Posting[],
  incomes: readonly IncomeLine[],
  grouping: Grouping,
): readonly EarningRow[] {
  const groups = new Map<string, Sums>();
  const sumsOf = (id: string): Sums => {
    const known = groups.get(id);
    if (known !== undefined) return known;
    const fresh = { income: 0, direct: 0, bed: 0, water: 0, lineParts: 0, overhead: 0, labour: 0, sold: 0 };
    groups.set(id, fresh);
    return fresh;
  };
  for (const posting of postings) {
    const sums = sumsOf(grouping.of(posting.bedId, posting.plantingId) ?? NOBODY);
    switch (posting.kind) {
      case 'parts':
      case 'fill':
        sums.bed += posting.amount_minor;
        break;
      case 'line-parts':
        sums.lineParts += posting.amount_minor;
        sums.water += posting.amount_minor;
        break;
      case 'water':
      case 'power':
        sums.water += posting.amount_minor;
        break;
      case 'overhead':
      case 'stock-loss':
        sums.overhead += posting.amount_minor;
        break;
      case 'labour':
        sums.labour += posting.amount_minor;
        sums.direct += posting.amount_minor;
        break;
      case 'inputs':
      case 'seed':
      case 'packing':
        sums.direct += posting.amount_minor;
        break;
    }
  }
  for (const income of incomes) {
    const sums = sumsOf(grouping.of(income.bedId, income.plantingId) ?? NOBODY);
    sums.income += income.paid_minor;
    sums.sold += income.sold_kg;
  }
  return [...groups].map(([id, sums]) => {
    const cost = sums.direct + sums.bed + sums.water + sums.overhead;
    return {
      id,
      income_minor: sums.income,
      direct_minor: sums.direct,
      bed_minor: sums.bed,
      water_minor: sums.water,
      lineParts_minor: sums.lineParts,
      overhead_minor: sums.overhead,
      cost_minor: cost,
      labour_minor: sums.labour,
      contribution_minor: sums.income - sums.direct,
      margin_minor: sums.income - cost,
      sold_kg: sums.sold,
    };
  });
}
