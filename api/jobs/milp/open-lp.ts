import type { Highs, HighsCallbackMap, Model } from 'highs';
import type { LpColumn, LpOutcome, LpSolver, OpenLp } from '../../../planner/lp.ts';
import type { MilpModel, RowEntry } from '../../../planner/milp.ts';
import { modelData } from './highs.ts';
import { loadHighs } from './load-highs.ts';

const PRIMAL_SIMPLEX = 4;
const DUAL_SIMPLEX = 1;

/** Linear models that stay open between solves, for the search that adds columns. Loads the engine once. */
export async function loadLpSolver(shouldStop: () => boolean): Promise<LpSolver> {
  const highs = await loadHighs();
  return (model) => openLp(highs, model, shouldStop);
}

function openLp(highs: Highs, model: MilpModel, shouldStop: () => boolean): OpenLp {
  const engine = highs.createModel(modelData(highs, model, false));
  engine.options.set({ output_flag: false, random_seed: 1, presolve: 'off' });
  let rowCount = model.rowLower.length;
  let columnCount = model.cost.length;

  return {
    addColumns(columns) {
      if (columns.length === 0) return;
      appendColumns(engine, columns, rowCount);
      columnCount += columns.length;
    },
    addRows(rows) {
      if (rows.length === 0) return;
      appendRows(engine, rows, columnCount);
      rowCount += rows.length;
    },
    setColumnBounds(columns, lower, upper) {
      if (columns.length === 0) return;
      const order = columns.map((_, at) => at).sort((a, b) => (columns[a] ?? 0) - (columns[b] ?? 0));
      const pick = (from: readonly number[]) => order.map((at) => from[at] ?? 0);
      engine.changeColsBounds({ kind: 'set', indices: pick(columns) }, pick(lower), pick(upper));
    },
    solve(since) {
      engine.options.set({ simplex_strategy: since === 'bounds-changed' ? DUAL_SIMPLEX : PRIMAL_SIMPLEX });
      return solve(highs, engine, shouldStop);
    },
    close: () => engine.dispose(),
  };
}

function solve(highs: Highs, engine: Model, shouldStop: () => boolean): LpOutcome {
  const { modelStatus, callbackType } = highs.constants;
  const callbacks: HighsCallbackMap = {
    [callbackType.simplexInterrupt](event) {
      if (shouldStop()) event.interrupt();
      return undefined;
    },
  };
  engine.run(callbacks);
  const status = engine.getModelStatus();
  if (status === modelStatus.optimal) {
    const { colValue, rowDual } = engine.getSolution();
    return { state: 'optimal', solution: { objective: engine.getObjectiveValue(), values: colValue, rowDuals: rowDual } };
  }
  if (status === modelStatus.infeasible || status === modelStatus.unboundedOrInfeasible)
    return { state: 'no-solution', because: 'infeasible' };
  if (status === modelStatus.unbounded) return { state: 'no-solution', because: 'unbounded' };
  return { state: 'no-solution', because: status === modelStatus.interrupted ? 'stopped' : 'failed' };
}

function appendColumns(engine: Model, columns: readonly LpColumn[], numRows: number): void {
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const column of columns) {
    for (const [row, value] of column.entries) {
      indices.push(row);
      values.push(value);
    }
    starts.push(indices.length);
  }
  engine.addCols({
    cost: Float64Array.from(columns, (c) => c.cost),
    lower: Float64Array.from(columns, (c) => c.lower),
    upper: Float64Array.from(columns, (c) => c.upper),
    matrix: {
      format: 'csc',
      numRows,
      numCols: columns.length,
      starts: Int32Array.from(starts),
      indices: Int32Array.from(indices),
      values: Float64Array.from(values),
    },
  });
}

function appendRows(engine: Model, rows: readonly RowEntry[], numCols: number): void {
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const row of rows) {
    for (const [column, value] of row.entries) {
      indices.push(column);
      values.push(value);
    }
    starts.push(indices.length);
  }
  engine.addRows({
    lower: Float64Array.from(rows, (r) => r.lower ?? -Infinity),
    upper: Float64Array.from(rows, (r) => r.upper ?? Infinity),
    matrix: {
      format: 'csr',
      numRows: rows.length,
      numCols,
      starts: Int32Array.from(starts),
      indices: Int32Array.from(indices),
      values: Float64Array.from(values),
    },
  });
}
