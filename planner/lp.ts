import type { MilpModel, RowEntry } from './milp.ts';

/** One more column of a linear model: its cost, bounds, and its coefficients in rows that are there already. */
export type LpColumn = {
  readonly cost: number;
  readonly lower: number;
  readonly upper: number;
  readonly entries: readonly (readonly [row: number, coefficient: number])[];
};

export type LpSolution = {
  readonly objective: number;
  readonly values: Float64Array;
  /** What one more unit of each row's bound would add to the objective, with the sign of the model's own sense. */
  readonly rowDuals: Float64Array;
};

/** Answer of one solve: the model is kept so that the next starts from its last vertex. */
export type LpOutcome =
  | { readonly state: 'optimal'; readonly solution: LpSolution }
  | { readonly state: 'no-solution'; readonly because: 'infeasible' | 'unbounded' | 'stopped' | 'failed' };

/**
 * A linear model that stays open: columns and rows may be added and bounds changed between solves. Answers at once; the
 * solver itself is handed in from outside, since it is no pure computation.
 */
export type OpenLp = {
  readonly addColumns: (columns: readonly LpColumn[]) => void;
  readonly addRows: (rows: readonly RowEntry[]) => void;
  readonly setColumnBounds: (columns: readonly number[], lower: readonly number[], upper: readonly number[]) => void;
  /** `columns-added`: the last vertex is still feasible (primal simplex). `bounds-changed`: dual simplex. */
  readonly solve: (since: 'fresh' | 'columns-added' | 'bounds-changed') => LpOutcome;
  readonly close: () => void;
};

/** Opens a linear model. Whole-number marks are left out of account. */
export type LpSolver = (model: MilpModel) => OpenLp;
