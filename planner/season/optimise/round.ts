import type { RelaxedSeason } from './column-generation.ts';
import { fillUnits, largestFirst } from './construct.ts';
import { dualsOf } from './master.ts';
import { priceGroups, sequenceValue_minor } from './pricing.ts';
import type { SeasonProblem } from './problem.ts';
import { createSearchState, type ScarcityPrices, type SearchState } from './search-state.ts';

type Solved = Extract<RelaxedSeason, { state: 'solved' | 'stopped' }>;

const WHOLE = 1e-6;
const MOST_ROUNDS = 20;

/**
 * Whole units from the relaxed season: as many copies of each row as its whole part says; each unit left over, largest
 * first, gets its best row given the rest, at the relaxed season's prices.
 */
export function floorPlan(problem: SeasonProblem, relaxed: Solved, values: Float64Array, prices: ScarcityPrices): SearchState {
  const state = createSearchState(problem);
  const free = problem.groups.map((group) => [...group.units]);
  relaxed.pool.columns.forEach((column, at) => {
    const copies = Math.floor((values[relaxed.pool.firstColumn + at] ?? 0) + WHOLE);
    for (let copy = 0; copy < copies; copy++) {
      const unit = free[column.group]!.shift();
      if (unit === undefined) return;
      state.put(unit, column.sequence);
      // The whole parts keep every limit together; a crop counted in part may still bring one crop too many.
      if (!Number.isFinite(state.margin_minor())) {
        state.take(unit);
        free[column.group]!.unshift(unit);
        return;
      }
    }
  });
  fillUnits(state, largestFirst(state, free.flat()), { prices, factor: 1 });
  return state;
}

/**
 * Fixes the relaxed season step by step and solves it again: whole parts first; crops nearly settled are settled, then
 * the most certain open crop is taken until the most are in; then the most nearly whole tenth of the rows is rounded up,
 * at most one a group and only while hours and water of what is fixed stay within their limits. New rows are priced
 * once a round.
 */
export function divePlan(problem: SeasonProblem, relaxed: Solved, shouldStop: () => boolean): SearchState | null {
  const { pool } = relaxed;
  const { lp, master } = pool;
  const fixed = new Map<number, number>();
  const left = problem.groups.map((group) => group.units.length);
  const probe = createSearchState(problem);
  const spare = problem.groups.map((group) => [...group.units]);
  const settled = new Map<number, 0 | 1>();
  let values = relaxed.values;
  let duals: ScarcityPrices = relaxed.duals;

  const fix = (at: number): boolean => {
    const column = pool.columns[at]!;
    const unit = spare[column.group]![0];
    if (unit === undefined) return false;
    probe.put(unit, column.sequence);
    if (!Number.isFinite(probe.margin_minor())) {
      probe.take(unit);
      return false;
    }
    spare[column.group]!.shift();
    left[column.group] = left[column.group]! - 1;
    fixed.set(at, (fixed.get(at) ?? 0) + 1);
    return true;
  };

  for (let round = 0; round < MOST_ROUNDS; round++) {
    if (shouldStop()) return null;
    pool.columns.forEach((_, at) => {
      const whole = Math.floor((values[pool.firstColumn + at] ?? 0) + WHOLE);
      for (let copy = fixed.get(at) ?? 0; copy < whole; copy++) if (!fix(at)) return;
    });
    settleCrops(problem, master.grownColumn, values, settled);
    const parts = pool.columns
      .map((column, at) => ({ at, column, part: (values[pool.firstColumn + at] ?? 0) - (fixed.get(at) ?? 0) }))
      .filter(({ part }) => part > WHOLE)
      .sort((a, b) => b.part - a.part || a.at - b.at);
    if (parts.length === 0 || left.every((units) => units === 0)) break;
    const used = new Set<number>();
    const goal = Math.max(1, Math.ceil(parts.length / 10));
    for (const { at, column } of parts) {
      if (used.size >= goal) break;
      if (used.has(column.group) || column.sequence.some((j) => settled.get(problem.optionCrop[j]!) === 0)) continue;
      if (fix(at)) used.add(column.group);
    }
    if (used.size === 0) break;
    const columns = [...fixed.keys()].sort((a, b) => a - b);
    lp.setColumnBounds(
      columns.map((at) => pool.firstColumn + at),
      columns.map((at) => fixed.get(at)!),
      columns.map((at) => problem.groups[pool.columns[at]!.group]!.units.length),
    );
    const crops = [...settled].filter(([c]) => master.grownColumn[c]! >= 0);
    lp.setColumnBounds(
      crops.map(([c]) => master.grownColumn[c]!),
      crops.map(([, grown]) => grown),
      crops.map(([, grown]) => grown),
    );
    const outcome = lp.solve('bounds-changed');
    if (outcome.state !== 'optimal') break;
    values = outcome.solution.values;
    const now = dualsOf(problem, master, outcome.solution.rowDuals);
    duals = now;
    const barred = new Set([...settled].filter(([, grown]) => grown === 0).map(([c]) => c));
    const fresh = priceGroups(problem, now, barred)
      .map(({ column }) => column)
      .filter(
        (column) =>
          left[column.group]! > 0 &&
          sequenceValue_minor(problem, now, column) > now.group[column.group]! + master.moneyScale * 1e-6,
      );
    if (pool.add(fresh) > 0) {
      const again = lp.solve('columns-added');
      if (again.state === 'optimal') {
        values = again.solution.values;
        duals = dualsOf(problem, master, again.solution.rowDuals);
      }
    }
  }
  const open = problem.groups.flatMap((group) => group.units.filter((unit) => probe.sequences[unit]!.length === 0));
  fillUnits(probe, largestFirst(probe, open), { prices: duals, factor: 1 });
  return probe;
}

/** Crops with nearly all or nothing of their overhead paid are settled; where none is, the most certain open one is taken. */
function settleCrops(problem: SeasonProblem, grownColumn: Int32Array, values: Float64Array, settled: Map<number, 0 | 1>): void {
  const limit = problem.instance.mostCrops;
  const share = (c: number) => values[grownColumn[c]!] ?? 0;
  const open: number[] = [];
  let grown = 0;
  let changed = false;
  grownColumn.forEach((column, c) => {
    if (column < 0) return;
    if (!settled.has(c)) {
      if (share(c) > 0.9) {
        settled.set(c, 1);
        changed = true;
      } else if (share(c) < 0.02) {
        settled.set(c, 0);
        changed = true;
      } else open.push(c);
    }
    if (settled.get(c) === 1) grown += 1;
  });
  if (grown >= limit) for (const c of open) settled.set(c, 0);
  else if (!changed && open.length > 0) settled.set(open.sort((a, b) => share(b) - share(a) || a - b)[0]!, 1);
}
