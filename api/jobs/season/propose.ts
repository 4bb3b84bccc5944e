import { evaluatePlan } from '../../../planner/season/optimise/evaluate.ts';
import { type Goal, withGoal } from '../../../planner/season/optimise/goals.ts';
import type { SeasonInstance } from '../../../planner/season/optimise/instance.ts';
import { type OptimisedSeason, optimiseSeason, type SearchStage } from '../../../planner/season/optimise/optimise.ts';
import { type ShadowValues, shadowValues } from '../../../planner/season/optimise/shadow-values.ts';
import {
  type Remedy,
  remedies,
  shortByChoice_share,
  type UnmetOrder,
  unmetOrders,
} from '../../../planner/season/optimise/unmet.ts';
import { type PlanKey, type ProposedPlanting, proposedPlantings } from '../../../planner/season/proposal/compare-plans.ts';
import { figuresOfPlan, type PlanFigures } from '../../../planner/season/proposal/figures-of-plan.ts';
import { loadLpSolver } from '../milp/open-lp.ts';
import type { JobVoice } from '../runners.ts';

export type ProposeData = {
  readonly instance: SeasonInstance;
  readonly key: PlanKey;
  readonly goal: Goal;
  readonly seed: number;
  readonly moves: number;
  readonly gapGoal: number;
};

/** How the search stands: shown while it runs. */
export type ProposeSoFar = {
  readonly stage: SearchStage;
  readonly margin_minor: number;
  readonly bound_minor: number | null;
  readonly gap: number | null;
  readonly gaps: readonly { readonly at_s: number; readonly gap: number | null; readonly margin_minor: number }[];
  /** The plan of a moment ago, whole: what is kept when the thread has to be ended. */
  readonly latest: ProposeResult | null;
};

export type ProposeResult = {
  readonly plantings: readonly ProposedPlanting[];
  readonly figures: PlanFigures;
  /** The goal's own measure: equal to the margin where the goal is the margin. */
  readonly reached_minor: number;
  readonly firstPlan_minor: number;
  readonly bound_minor: number | null;
  readonly gap: number | null;
  readonly state: OptimisedSeason['state'];
  readonly boundMissing: string;
  readonly unmet: readonly UnmetOrder[];
  readonly remedies: readonly Remedy[];
  /** Share of the shortfall that beds, hours and water could meet if the orders came before the margin; null where it was not looked into. */
  readonly byChoice_share: number | null;
  readonly shadow: ShadowValues | null;
  readonly gaps: ProposeSoFar['gaps'];
  readonly seconds: number;
};

const TELL_EVERY_MS = 200;
/** A whole plan is handed over so often, so that little is lost if the thread must be ended. */
const KEEP_EVERY_MS = 1500;

const says: Readonly<Record<SearchStage, string>> = {
  greedy: 'A first plan',
  local: 'Bed by bed',
  bound: 'How good a plan can be at best',
  floor: 'Whole beds from the best possible',
  dive: 'Whole beds, step by step',
  improve: 'Trying to do better',
};

/** Proposes a season in the worker. The clock is only told, never used to decide. */
export async function run(data: ProposeData, voice: JobVoice): Promise<ProposeResult> {
  const began = performance.now();
  const since_s = () => (performance.now() - began) / 1000;
  const solver = await loadLpSolver(voice.shouldStop);
  const season = withGoal(data.instance, data.goal);
  const gaps: { at_s: number; gap: number | null; margin_minor: number }[] = [];
  let told = Number.NEGATIVE_INFINITY;
  let kept = Number.NEGATIVE_INFINITY;
  let latest: ProposeResult | null = null;
  let first_minor: number | null = null;
  const found = optimiseSeason(season, {
    seed: data.seed,
    moves: data.moves,
    gapGoal: data.gapGoal,
    solver,
    shouldStop: voice.shouldStop,
    onProgress({ stage, margin_minor, bound_minor, gap }) {
      const last = gaps.at(-1);
      if (last === undefined || last.gap !== gap || last.margin_minor !== margin_minor)
        gaps.push({ at_s: since_s(), gap, margin_minor });
      const now = performance.now();
      if (now - told < TELL_EVERY_MS && stage !== 'greedy' && stage !== 'local') return;
      told = now;
      voice.progress({ share: null, text: says[stage] });
      voice.best({ stage, margin_minor, bound_minor, gap, gaps: gaps.slice(-120), latest } satisfies ProposeSoFar);
    },
    onBetter(plan, { margin_minor, bound_minor, gap }) {
      first_minor ??= margin_minor;
      const now = performance.now();
      if (now - kept < KEEP_EVERY_MS) return;
      kept = now;
      const found = {
        plan: plan(),
        margin_minor,
        greedyMargin_minor: first_minor,
        bound_minor,
        gap,
        state: 'stopped' as const,
        boundMissing: '',
      };
      latest = resultOf(data, found, gaps.slice(-120), since_s());
    },
  });
  const result = resultOf(data, found, gaps, since_s());
  const { unmet } = result;
  if (unmet.length > 0) voice.progress({ share: null, text: 'What would help with the orders that fall short' });
  const helped = unmet.length > 0 ? remedies(data.instance, solver, voice.shouldStop) : null;
  return {
    ...result,
    remedies: helped?.remedies ?? [],
    byChoice_share: helped === null ? null : shortByChoice_share(data.instance, found.plan, helped.leastShort),
    shadow: found.duals === null ? null : shadowValues(season, found.duals),
    seconds: since_s(),
  };
}

type Found = Pick<
  OptimisedSeason,
  'plan' | 'margin_minor' | 'greedyMargin_minor' | 'bound_minor' | 'gap' | 'state' | 'boundMissing'
>;

/** A plan with its figures, checked by the evaluator that knows nothing of the search. */
function resultOf(data: ProposeData, found: Found, gaps: ProposeSoFar['gaps'], seconds: number): ProposeResult {
  const outcome = evaluatePlan(data.instance, found.plan);
  if (outcome.faults.length > 0)
    throw new Error(`The proposal breaks ${outcome.faults.length} rules, the first ${JSON.stringify(outcome.faults[0])}.`);
  return {
    plantings: proposedPlantings(data.key, found.plan),
    figures: figuresOfPlan(data.instance, outcome, outcome.bedWeeks_m2),
    reached_minor: found.margin_minor,
    firstPlan_minor: found.greedyMargin_minor,
    bound_minor: found.bound_minor,
    gap: found.gap,
    state: found.state,
    boundMissing: found.boundMissing,
    unmet: unmetOrders(data.instance, outcome),
    remedies: [],
    byChoice_share: null,
    shadow: null,
    gaps,
    seconds,
  };
}
