import { bestPath } from './best-path.ts';
import type { MasterDuals, SequenceColumn } from './master.ts';
import type { SeasonProblem } from './problem.ts';

export type PricedGroup = {
  readonly column: SequenceColumn;
  /** Value of the group's best row at the prices, before the group's own price. */
  readonly value_minor: number;
};

/**
 * The best row of plantings of each group at given prices: an option is worth
 *
 *   v = sum alpha h - k - sum (beta l + gamma q + delta b)
 *
 *   alpha, beta, gamma, delta  prices of a unit harvested, an hour, a litre, a m2 of bench in its week
 *   h, l, q, b                 harvest, hours, water, bench per m2 in that week
 *   k                          cost per m2 with wage
 *
 * and the row is the longest path. Options of barred crops are left out.
 */
export function priceGroups(
  problem: SeasonProblem,
  duals: Pick<MasterDuals, 'harvest' | 'labour' | 'water' | 'bench'>,
  barred: ReadonlySet<number> = new Set(),
): readonly PricedGroup[] {
  const worth = problem.instance.waterCap_L.map((_, zone) => optionWorth(problem, duals, zone, barred));
  return problem.groups.map((group, g) => {
    const ofZone = worth[group.zone]!;
    const values = new Float64Array(group.options.length);
    for (let at = 0; at < values.length; at++) values[at] = group.area_m2 * ofZone[group.options[at]!]!;
    const { value, sequence } = bestPath(problem, group, values);
    return { column: { group: g, sequence }, value_minor: value };
  });
}

/** What each option is worth per m2 in a zone at given prices. */
export function optionWorth(
  problem: SeasonProblem,
  duals: Pick<MasterDuals, 'harvest' | 'labour' | 'water' | 'bench'>,
  zone: number,
  barred: ReadonlySet<number>,
): Float64Array {
  const worth = new Float64Array(problem.optionCount);
  const water = duals.water[zone]!;
  for (let j = 0; j < problem.optionCount; j++) {
    const c = problem.optionCrop[j]!;
    if (barred.has(c)) continue;
    const start = problem.optionStart[j]!;
    const h = problem.optionHarvest[j]!;
    const l = problem.optionLabour_h[j]!;
    const q = problem.optionWater_L[j]!;
    const base = c * problem.weeks + start;
    let sum = -problem.optionCost_minor[j]!;
    for (let k = 0; k < h.length; k++)
      sum += duals.harvest[base + k]! * h[k]! - duals.labour[start + k]! * l[k]! - water[start + k]! * q[k]!;
    const bench = problem.optionBench_m2[j]!;
    for (let k = 0; k < bench.length; k++) {
      const week = start - bench.length + k;
      if (week >= 0) sum -= duals.bench[week]! * bench[k]!;
    }
    worth[j] = sum;
  }
  return worth;
}

/** Value of one row of plantings of a group at given prices. */
export function sequenceValue_minor(
  problem: SeasonProblem,
  duals: Pick<MasterDuals, 'harvest' | 'labour' | 'water' | 'bench'>,
  { group: g, sequence }: SequenceColumn,
): number {
  const { area_m2, zone } = problem.groups[g]!;
  let sum = 0;
  for (const j of sequence) {
    const start = problem.optionStart[j]!;
    const base = problem.optionCrop[j]! * problem.weeks + start;
    sum -= problem.optionCost_minor[j]!;
    problem.optionHarvest[j]!.forEach((amount, k) => {
      sum += duals.harvest[base + k]! * amount;
      sum -= duals.labour[start + k]! * problem.optionLabour_h[j]![k]!;
      sum -= duals.water[zone]![start + k]! * problem.optionWater_L[j]![k]!;
    });
    const bench = problem.optionBench_m2[j]!;
    bench.forEach((space, k) => {
      const week = start - bench.length + k;
      if (week >= 0) sum -= duals.bench[week]! * space;
    });
  }
  return area_m2 * sum;
}
