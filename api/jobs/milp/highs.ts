import type { Highs, HighsCallbackMap, Model, ModelData } from 'highs';
import type { MilpAnswer, MilpModel, MilpSolver, MilpWishes } from '../../../planner/milp.ts';
import { dropHighs, loadHighs } from './load-highs.ts';

/** A model in the engine's own arrays. */
export function modelData(highs: Highs, model: MilpModel, withIntegers: boolean): ModelData {
  const numCols = model.cost.length;
  const numRows = model.rowLower.length;
  return {
    numCols,
    numRows,
    sense: model.sense === 'maximise' ? highs.constants.objectiveSense.maximize : highs.constants.objectiveSense.minimize,
    colCost: model.cost,
    colLower: model.columnLower,
    colUpper: model.columnUpper,
    rowLower: model.rowLower,
    rowUpper: model.rowUpper,
    matrix: {
      format: 'csr',
      numRows,
      numCols,
      starts: model.rows.starts,
      indices: model.rows.columns,
      values: model.rows.values,
    },
    ...(withIntegers ? { integrality: Int32Array.from(model.integer) } : {}),
  };
}

/**
 * Solves a model with whole-number columns. Runs in the calling thread until it ends or `shouldStop` says so: call it
 * in a job's worker unless the model is tiny. Same model, seed and limits: same answer.
 */
export async function solveMilp(model: MilpModel, wishes: MilpWishes = {}): Promise<MilpAnswer> {
  return (await loadMilpSolver())(model, wishes);
}

/** Loads the engine once; what it gives then answers at once, as pure planner code wants it. */
export async function loadMilpSolver(): Promise<MilpSolver> {
  const highs = await loadHighs();
  return (model, wishes = {}) => solveNow(highs, model, wishes);
}

function solveNow(highs: Highs, model: MilpModel, wishes: MilpWishes): MilpAnswer {
  try {
    return highs.withModel(modelData(highs, model, model.integer.includes(1)), (engine) => run(highs, engine, model, wishes));
  } catch (error) {
    if (error instanceof Error && error.name === 'RuntimeError') {
      dropHighs();
      throw new Error('The solver ran out of memory.', { cause: error });
    }
    throw error;
  }
}

function run(highs: Highs, engine: Model, model: MilpModel, wishes: MilpWishes): MilpAnswer {
  const { modelStatus, callbackType } = highs.constants;
  engine.options.set({ output_flag: false, random_seed: wishes.randomSeed ?? 1, mip_rel_gap: wishes.relativeGap ?? 1e-6 });
  if (wishes.nodeLimit !== undefined) engine.options.set({ mip_max_nodes: wishes.nodeLimit });
  if (wishes.start !== undefined) engine.setSolution({ colValue: wishes.start });
  const stop = wishes.shouldStop ?? (() => false);
  const interrupt = (event: { interrupt(): void }): undefined => {
    if (stop()) event.interrupt();
  };
  const callbacks: HighsCallbackMap = {
    [callbackType.simplexInterrupt]: interrupt,
    [callbackType.ipmInterrupt]: interrupt,
    [callbackType.mipInterrupt]: interrupt,
    [callbackType.mipImprovingSolution](event) {
      const { mip_solution: values, objective_function_value: objective, mip_dual_bound: bound = Number.NaN } = event.data;
      if (values !== undefined && objective !== undefined)
        wishes.onImprovement?.({ values, objective, bound, gap: gapOf(objective, bound) });
      return undefined;
    },
  };
  engine.run(callbacks);
  const status = engine.getModelStatus();
  if (status === modelStatus.infeasible) return { state: 'no-solution', because: 'infeasible' };
  if (status === modelStatus.unbounded || status === modelStatus.unboundedOrInfeasible)
    return { state: 'no-solution', because: status === modelStatus.unbounded ? 'unbounded' : 'infeasible' };
  const found = Number(engine.info.get('primal_solution_status')) === 2;
  if (!found) return { state: 'no-solution', because: 'stopped-before-any' };
  const objective = engine.getObjectiveValue();
  const isMilp = model.integer.includes(1);
  const bound = isMilp ? Number(engine.info.get('mip_dual_bound')) : objective;
  return {
    state: status === modelStatus.optimal ? 'optimal' : 'stopped',
    values: engine.getSolution().colValue,
    objective,
    bound,
    gap: isMilp ? gapOf(objective, bound) : 0,
  };
}

const gapOf = (objective: number, bound: number): number =>
  objective === bound ? 0 : Math.abs(objective - bound) / Math.max(Math.abs(objective), 1e-9);
