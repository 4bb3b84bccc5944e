import type { LpSolver, OpenLp } from '../../lp.ts';
import { addBrokenSteps, buildMaster, dualsOf, type MasterDuals, type MasterModel, type SequenceColumn } from './master.ts';
import { priceGroups, sequenceValue_minor } from './pricing.ts';
import type { SeasonProblem } from './problem.ts';

export type ColumnPool = {
  readonly lp: OpenLp;
  readonly master: MasterModel;
  readonly columns: SequenceColumn[];
  /** Number of the first sequence column in the linear model. */
  readonly firstColumn: number;
  readonly add: (columns: readonly SequenceColumn[]) => number;
};

export type RelaxedSeason =
  | {
      readonly state: 'solved' | 'stopped';
      readonly pool: ColumnPool;
      /** No plan can earn more. */
      readonly bound_minor: number;
      readonly value_minor: number;
      readonly values: Float64Array;
      readonly duals: MasterDuals;
      readonly iterations: number;
    }
  | { readonly state: 'failed'; readonly because: string };

/** Share of the prices of the best bound in the prices that columns are sought with. */
const SMOOTHING = 0.6;
const CLOSE_ENOUGH = 1e-3;
const MOST_ITERATIONS = 80;
const STEPS_A_ROUND = 400;

/**
 * Solves the master model over all rows of plantings by adding the columns that pay, and gives a proven bound:
 *
 *   bound = value of the current columns + sum over groups  n_g max(0, V_g - mu_g)
 *
 *   V_g   value of the group's best row at the prices    money
 *   mu_g  price of one unit of the group                 money
 *   n_g   units of the group                             -
 *
 * valid at every step. Columns are sought at prices smoothed towards those of the best bound.
 * Source: Wentges, Weighted Dantzig-Wolfe decomposition, Int. Trans. in Operational Research 4, 1997; Desaulniers, Desrosiers &
 * Solomon (eds), Column Generation, 2005 (both from memory).
 */
export function relaxSeason(
  problem: SeasonProblem,
  solver: LpSolver,
  start: readonly SequenceColumn[],
  wishes: {
    readonly shouldStop: () => boolean;
    readonly onBound: (bound_minor: number) => void;
    /** Relative distance of value and bound at which it is solved; 0.1 % where left out. */
    readonly closeEnough?: number;
  },
): RelaxedSeason {
  const master = buildMaster(problem);
  const lp = solver(master.model);
  const pool = createPool(lp, master);
  pool.add(start);
  const stepsDone = new Set<number>();
  let bound = Infinity;
  let centre: { duals: MasterDuals; fixed_minor: number } | null = null;
  let since: 'fresh' | 'columns-added' | 'bounds-changed' = 'fresh';
  for (let iteration = 1; ; iteration++) {
    const outcome = lp.solve(since);
    if (outcome.state !== 'optimal') {
      lp.close();
      return { state: 'failed', because: outcome.because };
    }
    const { solution } = outcome;
    const value_minor = solution.objective * master.moneyScale + master.constant_minor;
    const duals = dualsOf(problem, master, solution.rowDuals);
    const fixed_minor = problem.groups.reduce((sum, group, g) => sum - group.units.length * duals.group[g]!, value_minor);
    const fresh: SequenceColumn[] = [];
    const tryPrices = (prices: MasterDuals, fixed: number) => {
      const priced = priceGroups(problem, prices);
      const reached = priced.reduce(
        (sum, { value_minor: v }, g) => sum + problem.groups[g]!.units.length * Math.max(0, v),
        fixed,
      );
      for (const { column } of priced)
        if (
          column.sequence.length > 0 &&
          sequenceValue_minor(problem, duals, column) - duals.group[column.group]! > 1e-6 * master.moneyScale
        )
          fresh.push(column);
      if (reached < bound) {
        bound = reached;
        centre = { duals: prices, fixed_minor: fixed };
        wishes.onBound(bound);
      }
    };
    const held = centre as { duals: MasterDuals; fixed_minor: number } | null;
    if (held !== null) tryPrices(mix(held.duals, duals, SMOOTHING), SMOOTHING * held.fixed_minor + (1 - SMOOTHING) * fixed_minor);
    tryPrices(duals, fixed_minor);
    const solved = bound - value_minor <= (wishes.closeEnough ?? CLOSE_ENOUGH) * Math.abs(bound) || fresh.length === 0;
    const done = (state: 'solved' | 'stopped') =>
      ({ state, pool, bound_minor: bound, value_minor, values: solution.values, duals, iterations: iteration }) as const;
    if (wishes.shouldStop() || iteration >= MOST_ITERATIONS) return done('stopped');
    since = 'columns-added';
    if (solved) {
      if (addBrokenSteps(lp, master, solution.values, stepsDone, STEPS_A_ROUND) === 0) return done('solved');
      since = 'bounds-changed';
      continue;
    }
    if (pool.add(fresh) === 0) return done('solved');
  }
}

function createPool(lp: OpenLp, master: MasterModel): ColumnPool {
  const known = new Set<string>();
  const columns: SequenceColumn[] = [];
  return {
    lp,
    master,
    columns,
    firstColumn: master.model.cost.length,
    add(list) {
      const fresh = list.filter((column) => {
        const key = `${column.group}:${column.sequence.join(',')}`;
        if (known.has(key) || column.sequence.length === 0) return false;
        known.add(key);
        return true;
      });
      columns.push(...fresh);
      lp.addColumns(fresh.map(master.sequenceColumn));
      return fresh.length;
    },
  };
}

function mix(a: MasterDuals, b: MasterDuals, share: number): MasterDuals {
  const blend = (x: Float64Array, y: Float64Array) => x.map((value, at) => share * value + (1 - share) * y[at]!);
  return {
    group: blend(a.group, b.group),
    harvest: blend(a.harvest, b.harvest),
    labour: blend(a.labour, b.labour),
    water: a.water.map((line, z) => blend(line, b.water[z]!)),
    bench: blend(a.bench, b.bench),
  };
}
