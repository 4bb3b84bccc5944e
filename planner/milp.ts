import { refuse } from './errors.ts';

/** A matrix kept row by row: row i holds the entries starts[i] .. starts[i + 1] - 1. */
export type SparseRows = {
  readonly starts: Int32Array;
  readonly columns: Int32Array;
  readonly values: Float64Array;
};

/**
 * A linear model with some whole-number columns:
 *
 *   best  cost . x     with  rowLower <= A x <= rowUpper,  columnLower <= x <= columnUpper,  x[j] whole where integer[j] = 1
 *
 * A missing bound is plus or minus `Infinity`. Scale units so that coefficients lie between 1e-4 and 1e4: smaller than
 * 1e-9 in size are dropped by solvers.
 */
export type MilpModel = {
  readonly sense: 'minimise' | 'maximise';
  readonly cost: Float64Array;
  readonly columnLower: Float64Array;
  readonly columnUpper: Float64Array;
  readonly integer: Uint8Array;
  readonly rowLower: Float64Array;
  readonly rowUpper: Float64Array;
  readonly rows: SparseRows;
};

/** How a solve ended. `values` is the best plan found, empty where none was found. */
export type MilpAnswer =
  | {
      /** `optimal`: within the relative gap asked for. `stopped`: ended before; the best plan so far is given. */
      readonly state: 'optimal' | 'stopped';
      readonly values: Float64Array;
      readonly objective: number;
      /** No plan can be better than this. */
      readonly bound: number;
      /** |objective - bound| / |objective|; 0 for a model without whole numbers. */
      readonly gap: number;
    }
  | { readonly state: 'no-solution'; readonly because: 'infeasible' | 'unbounded' | 'stopped-before-any' };

export type MilpImprovement = {
  readonly values: Float64Array;
  readonly objective: number;
  readonly bound: number;
  readonly gap: number;
};

export type MilpWishes = {
  readonly shouldStop?: () => boolean;
  readonly onImprovement?: (improvement: MilpImprovement) => void;
  /** Stop once the plan is proven to be within this share of the best. */
  readonly relativeGap?: number;
  readonly randomSeed?: number;
  /** A limit by count, so that the same input gives the same plan on every machine. */
  readonly nodeLimit?: number;
  /** A plan to start from, one value for each column. */
  readonly start?: Float64Array;
};

/** Solves a model at once; handed in from outside, since the engine is no pure computation. */
export type MilpSolver = (model: MilpModel, wishes?: MilpWishes) => MilpAnswer;

export type ColumnEntry = {
  readonly cost: number;
  readonly lower?: number;
  readonly upper?: number;
  readonly integer?: boolean;
};

export type RowEntry = {
  readonly lower?: number;
  readonly upper?: number;
  /** Pairs of column number and coefficient; a column named twice is added up. */
  readonly entries: readonly (readonly [column: number, coefficient: number])[];
};

export type MilpBuilder = {
  /** @returns the number of the new column. Lower bound 0 and no upper bound unless given. */
  readonly column: (column: ColumnEntry) => number;
  /** @returns the number of the new row. */
  readonly row: (row: RowEntry) => number;
  readonly columnCount: () => number;
  readonly build: () => MilpModel;
};

/** Gathers columns and rows into a {@link MilpModel}. @throws InputError on a number that is none, or a column that is not there */
export function createMilp(sense: MilpModel['sense']): MilpBuilder {
  const columns: Required<ColumnEntry>[] = [];
  const rowLower: number[] = [];
  const rowUpper: number[] = [];
  const starts: number[] = [0];
  const indices: number[] = [];
  const values: number[] = [];

  function column(entry: ColumnEntry): number {
    const full = { lower: 0, upper: Infinity, integer: false, ...entry };
    if (!Number.isFinite(full.cost)) refuse(`columns.${columns.length}.cost`, 'not-a-number', 'A column needs a finite cost.');
    checkBounds(`columns.${columns.length}`, full.lower, full.upper);
    columns.push(full);
    return columns.length - 1;
  }

  function row(entry: RowEntry): number {
    const at = rowLower.length;
    const lower = entry.lower ?? -Infinity;
    const upper = entry.upper ?? Infinity;
    checkBounds(`rows.${at}`, lower, upper);
    const sums = new Map<number, number>();
    for (const [of, coefficient] of entry.entries) {
      if (columns[of] === undefined) refuse(`rows.${at}`, 'no-such-column', `Row ${at} names column ${of}, which is not there.`);
      if (!Number.isFinite(coefficient)) refuse(`rows.${at}`, 'not-a-number', `Row ${at} has a coefficient that is no number.`);
      sums.set(of, (sums.get(of) ?? 0) + coefficient);
    }
    for (const [of, coefficient] of sums) {
      if (coefficient === 0) continue;
      indices.push(of);
      values.push(coefficient);
    }
    rowLower.push(lower);
    rowUpper.push(upper);
    starts.push(indices.length);
    return at;
  }

  return {
    column,
    row,
    columnCount: () => columns.length,
    build: () => ({
      sense,
      cost: Float64Array.from(columns, (c) => c.cost),
      columnLower: Float64Array.from(columns, (c) => c.lower),
      columnUpper: Float64Array.from(columns, (c) => c.upper),
      integer: Uint8Array.from(columns, (c) => (c.integer ? 1 : 0)),
      rowLower: Float64Array.from(rowLower),
      rowUpper: Float64Array.from(rowUpper),
      rows: { starts: Int32Array.from(starts), columns: Int32Array.from(indices), values: Float64Array.from(values) },
    }),
  };
}

function checkBounds(path: string, lower: number, upper: number): void {
  if (Number.isNaN(lower) || Number.isNaN(upper)) refuse(path, 'not-a-number', `${path}: a bound is no number.`);
  if (lower > upper) refuse(path, 'too-large', `${path}: the lower bound ${lower} is above the upper bound ${upper}.`);
}
