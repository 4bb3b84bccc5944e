import { bestPath } from './best-path.ts';
import type { ScarcityPrices, SearchState } from './search-state.ts';

export type ResponseWishes = {
  readonly prices?: ScarcityPrices | null;
  /** Share of the prices that is charged: 0, 1/2 or 1. */
  readonly factor?: number;
  /** A crop that may not be used in this move. */
  readonly barredCrop?: number;
  /** Leave the overhead of new crops out of account, so that a crop can come in which pays only in several units. */
  readonly overheadFree?: boolean;
  /** Leaves options out by chance; for shaking the search. */
  readonly leaveOut?: (() => boolean) | null;
};

let values = new Float64Array(0);

/**
 * The best row of plantings for one empty unit, given all others: each option is worth what it adds to the revenue now,
 * less its cost, overtime and a new crop's overhead; the row is the longest path. Exact for the unit where no crop comes
 * twice, since its plantings share no week of labour or water; a crop that comes twice is valued as if alone, so the
 * caller compares margins before keeping the row.
 */
export function bestResponse(state: SearchState, unit: number, wishes: ResponseWishes = {}): readonly number[] {
  const { problem } = state;
  const { crops, mostCrops } = problem.instance;
  const group = problem.groups[problem.groupOfUnit[unit]!]!;
  const { options, area_m2, areaAt, zone } = group;
  const { prices = null, factor = 0, barredCrop = -1, overheadFree = false, leaveOut = null } = wishes;
  if (values.length < options.length) values = new Float64Array(options.length);
  const open = mostCrops - state.cropsGrown();
  for (let at = 0; at < options.length; at++) {
    const j = options[at]!;
    const c = problem.optionCrop[j]!;
    const isNew = state.cropPlantings[c]! === 0;
    if (c === barredCrop || (isNew && open <= 0) || leaveOut?.() === true) {
      values[at] = 0;
      continue;
    }
    const worth =
      state.addedRevenue_minor(j, area_m2, areaAt) -
      area_m2 * problem.optionCost_minor[j]! -
      (isNew && !overheadFree ? crops[c]!.overhead_minor : 0);
    values[at] = worth <= 0 ? 0 : worth - state.addedLoad_minor(j, area_m2, zone, prices, factor);
  }
  let path = bestPath(problem, group, values);
  for (;;) {
    const dropped = cropOverLimit(state, path.sequence, open) ?? null;
    if (dropped === null) return withinBench(state, path.sequence, area_m2);
    for (let at = 0; at < options.length; at++) if (problem.optionCrop[options[at]!] === dropped) values[at] = 0;
    path = bestPath(problem, group, values);
  }
}

/** The new crop of least use in a row that brings in more new crops than may be added; null where it fits. */
function cropOverLimit(state: SearchState, sequence: readonly number[], open: number): number | null {
  const fresh = [...new Set(sequence.map((j) => state.problem.optionCrop[j]!))].filter((c) => state.cropPlantings[c]! === 0);
  return fresh.length > open ? fresh[fresh.length - 1]! : null;
}

/** Leaves out later plantings whose young plants would overfill the bench together with those before them. */
function withinBench(state: SearchState, sequence: readonly number[], area_m2: number): readonly number[] {
  const { problem } = state;
  const cap = problem.instance.benchCap_m2;
  if (sequence.every((j) => problem.optionBench_m2[j]!.length === 0)) return sequence;
  const used = state.bench_m2.slice();
  return sequence.filter((j) => {
    const b = problem.optionBench_m2[j]!;
    const from = problem.optionStart[j]! - b.length;
    const fits = b.every((space, k) => from + k < 0 || space === 0 || used[from + k]! + area_m2 * space <= cap[from + k]! + 1e-7);
    if (fits)
      b.forEach((space, k) => {
        if (from + k >= 0) used[from + k] = used[from + k]! + area_m2 * space;
      });
    return fits;
  });
}
