import { bestPath } from './best-path.ts';
import type { SeasonInstance } from './instance.ts';
import type { MasterDuals } from './master.ts';
import { optionWorth } from './pricing.ts';
import { compileSeason } from './problem.ts';

/** What one more of each scarce thing would be worth in each week, at the prices of the relaxed season. */
export type ShadowValues = {
  readonly labour_minor_per_h: readonly number[];
  readonly water_minor_per_L: readonly (readonly number[])[];
  readonly bench_minor_per_m2: readonly number[];
  /** What losing one m2 of bed for that week alone would cost, as a mean over the area that is free then. */
  readonly bed_minor_per_m2: readonly number[];
};

/**
 * Shadow values by week. Hours, litres and bench space: the prices (duals) of their limits. A bed-week has no limit of
 * its own in the model; its value is what the best row of a unit loses at the same prices when the week is taken away:
 *
 *   value_w = sum over groups n_g (V_g - V_g without week w) / sum over groups n_g a_g
 *
 *   V_g  value of the group's best row   money      n_g units    a_g area, m2
 *
 * Prices hold for small changes only, and where many limits meet they are not the only ones possible.
 */
export function shadowValues(instance: SeasonInstance, duals: MasterDuals): ShadowValues {
  const problem = compileSeason(instance);
  const worth = instance.waterCap_L.map((_, zone) => optionWorth(problem, duals, zone, new Set()));
  const lost = new Float64Array(problem.weeks);
  const area = new Float64Array(problem.weeks);
  for (const group of problem.groups) {
    const all = Float64Array.from(group.options, (j) => group.area_m2 * worth[group.zone]![j]!);
    const { value, sequence } = bestPath(problem, group, all);
    const free = freeWeeks(group.fixedTo, problem.weeks);
    for (let week = 0; week < problem.weeks; week++) {
      if (free[week] === 0) continue;
      area[week] = area[week]! + group.units.length * group.area_m2;
      const inUse = sequence.some((j) => problem.optionStart[j]! <= week && problem.optionEnd[j]! > week);
      if (!inUse) continue;
      const without = all.map((v, at) => {
        const j = group.options[at]!;
        return problem.optionStart[j]! <= week && problem.optionEnd[j]! > week ? 0 : v;
      });
      lost[week] = lost[week]! + group.units.length * (value - bestPath(problem, group, without).value);
    }
  }
  return {
    labour_minor_per_h: [...duals.labour],
    water_minor_per_L: duals.water.map((line) => [...line]),
    bench_minor_per_m2: [...duals.bench],
    bed_minor_per_m2: Array.from(lost, (sum, week) => (area[week]! > 0 ? sum / area[week]! : 0)),
  };
}

function freeWeeks(fixedTo: Int32Array, weeks: number): Uint8Array {
  const free = new Uint8Array(weeks).fill(1);
  fixedTo.forEach((to, from) => {
    if (to > from) free.fill(0, from, to);
  });
  return free;
}
