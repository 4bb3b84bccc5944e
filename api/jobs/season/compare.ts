import { evaluatePlan } from '../../../planner/season/optimise/evaluate.ts';
import { type Goal, withGoal } from '../../../planner/season/optimise/goals.ts';
import type { SeasonInstance } from '../../../planner/season/optimise/instance.ts';
import { movesOfEffort, optimiseSeason } from '../../../planner/season/optimise/optimise.ts';
import { type Change, whatIf } from '../../../planner/season/optimise/what-if.ts';
import { figuresOfPlan, type PlanFigures } from '../../../planner/season/proposal/figures-of-plan.ts';
import { loadLpSolver } from '../milp/open-lp.ts';
import type { JobVoice } from '../runners.ts';

export type Variant = { readonly name: string; readonly goal: Goal; readonly changes: readonly Change[] };
export type CompareData = { readonly instance: SeasonInstance; readonly variants: readonly Variant[]; readonly seed: number };

export type VariantResult = {
  readonly name: string;
  readonly figures: PlanFigures;
  readonly gap: number | null;
};

/** Each variant of a season solved quickly, one after another, for setting side by side. */
export async function run(data: CompareData, voice: JobVoice): Promise<readonly VariantResult[]> {
  const solver = await loadLpSolver(voice.shouldStop);
  const results: VariantResult[] = [];
  for (const [at, variant] of data.variants.entries()) {
    if (voice.shouldStop()) break;
    voice.progress({ share: at / data.variants.length, text: variant.name });
    const instance = variant.changes.reduce(whatIf, data.instance);
    const found = optimiseSeason(withGoal(instance, variant.goal), {
      seed: data.seed,
      moves: movesOfEffort.quick,
      gapGoal: 0.01,
      solver,
      shouldStop: voice.shouldStop,
    });
    const outcome = evaluatePlan(instance, found.plan);
    results.push({ name: variant.name, figures: figuresOfPlan(instance, outcome, outcome.bedWeeks_m2), gap: found.gap });
    voice.best([...results]);
  }
  return results;
}
