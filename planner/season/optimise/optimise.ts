import type { LpSolver } from '../../lp.ts';
import { checkInstance } from './check-instance.ts';
import { relaxSeason } from './column-generation.ts';
import { greedyPlan, localPlan } from './construct.ts';
import { createGenerator } from './generator.ts';
import { improvePlan, restore } from './improve.ts';
import type { SeasonInstance, SeasonPlan } from './instance.ts';
import type { MasterDuals } from './master.ts';
import { nameUnits } from './name-units.ts';
import { compileSeason, planOf, type SeasonProblem } from './problem.ts';
import { divePlan, floorPlan } from './round.ts';
import { createSearchState, type SearchState } from './search-state.ts';

/** Moves of the search by the effort asked for; limits are by count, so the same wish gives the same plan. */
export const movesOfEffort = { quick: 300, good: 2000, thorough: 10000 } as const;
export type Effort = keyof typeof movesOfEffort;

export type SearchStage = 'greedy' | 'local' | 'bound' | 'floor' | 'dive' | 'improve';

export type SeasonProgress = {
  readonly stage: SearchStage;
  readonly margin_minor: number;
  readonly bound_minor: number | null;
  /** (bound - margin) / |bound|; null while no bound is known. */
  readonly gap: number | null;
};

export type OptimiseWishes = {
  readonly seed: number;
  readonly moves: number;
  /** Stop once the plan is proven to be within this share of the best possible. */
  readonly gapGoal: number;
  /** Without a linear solver the search runs alone and no bound is proven. */
  readonly solver: LpSolver | null;
  readonly shouldStop: () => boolean;
  readonly onProgress?: (progress: SeasonProgress) => void;
  /** Told of each better plan, best first known at once. */
  readonly onBetter?: (plan: () => SeasonPlan, progress: SeasonProgress) => void;
};

export type OptimisedSeason = {
  readonly plan: SeasonPlan;
  readonly margin_minor: number;
  readonly greedyMargin_minor: number;
  readonly bound_minor: number | null;
  readonly gap: number | null;
  readonly duals: MasterDuals | null;
  readonly state: 'within-goal' | 'effort-spent' | 'stopped';
  /** Why no bound is shown; empty where one is. */
  readonly boundMissing: string;
};

/**
 * Proposes what stands where and when: a first plan at once, a local one, a proven bound by column generation, two plans
 * rounded from it, then improvement until the gap is reached, the effort spent or the reader stops. Every step only ever
 * replaces the plan by a better one.
 *
 * @throws InputError when the season's data cannot be computed on
 */
export function optimiseSeason(instance: SeasonInstance, wishes: OptimiseWishes): OptimisedSeason {
  checkInstance(instance);
  const problem = compileSeason(instance);
  const generator = createGenerator(wishes.seed);
  const best = createSearchState(problem);
  let bound: number | null = null;
  let duals: MasterDuals | null = null;
  let boundMissing = wishes.solver === null ? 'no linear solver was at hand' : '';
  const gap = (): number | null => (bound === null ? null : gapOf(bound, best.margin_minor()));
  const tell = (stage: SearchStage, better: boolean) => {
    const progress = { stage, margin_minor: best.margin_minor(), bound_minor: bound, gap: gap() };
    wishes.onProgress?.(progress);
    if (better) wishes.onBetter?.(() => namedPlan(problem, best.sequences), progress);
  };
  const adopt = (stage: SearchStage, other: SearchState) => {
    const better = other.margin_minor() > best.margin_minor();
    if (better) restore(best, other.sequences);
    tell(stage, better);
  };
  const finish = (state: OptimisedSeason['state'], greedyMargin_minor: number): OptimisedSeason => ({
    plan: namedPlan(problem, best.sequences),
    margin_minor: best.margin_minor(),
    greedyMargin_minor,
    bound_minor: bound,
    gap: gap(),
    duals,
    state,
    boundMissing,
  });
  const reached = () => (gap() ?? Infinity) <= wishes.gapGoal;

  const empty_minor = best.margin_minor();
  greedyPlan(best);
  if (best.margin_minor() < empty_minor)
    restore(
      best,
      instance.units.map(() => []),
    );
  const greedyMargin_minor = best.margin_minor();
  tell('greedy', true);
  if (wishes.shouldStop()) return finish('stopped', greedyMargin_minor);
  localPlan(best, generator, { shouldStop: wishes.shouldStop });
  tell('local', true);

  if (wishes.solver !== null && !wishes.shouldStop()) {
    const start = best.sequences.map((sequence, unit) => ({ group: problem.groupOfUnit[unit]!, sequence }));
    const relaxed = relaxSeason(problem, wishes.solver, start, {
      shouldStop: () => wishes.shouldStop() || reached(),
      onBound(value) {
        bound = value;
        tell('bound', false);
      },
    });
    if (relaxed.state === 'failed') boundMissing = relaxed.because;
    else {
      duals = relaxed.duals;
      try {
        if (!wishes.shouldStop() && !reached()) {
          const floor = floorPlan(problem, relaxed, relaxed.values, relaxed.duals);
          localPlan(floor, generator, { shouldStop: wishes.shouldStop, sweeps: 3 });
          adopt('floor', floor);
        }
        if (!wishes.shouldStop() && !reached()) {
          const dive = divePlan(problem, relaxed, wishes.shouldStop);
          if (dive !== null) {
            localPlan(dive, generator, { shouldStop: wishes.shouldStop, sweeps: 3 });
            adopt('dive', dive);
          }
        }
      } finally {
        relaxed.pool.lp.close();
      }
    }
  }
  if (!wishes.shouldStop() && !reached()) {
    improvePlan(best, generator, {
      moves: wishes.moves,
      prices: duals,
      shouldStop: wishes.shouldStop,
      onBetter() {
        tell('improve', true);
        return reached();
      },
    });
    tell('improve', false);
  }
  return finish(reached() ? 'within-goal' : wishes.shouldStop() ? 'stopped' : 'effort-spent', greedyMargin_minor);
}

const namedPlan = (problem: SeasonProblem, sequences: readonly (readonly number[])[]): SeasonPlan =>
  planOf(problem, nameUnits(problem, sequences));

/** How far a plan may be below the best possible, as a share of the bound; 0 where they meet. */
export function gapOf(bound_minor: number, margin_minor: number): number {
  const apart = Math.max(0, bound_minor - margin_minor);
  return apart === 0 ? 0 : apart / Math.max(Math.abs(bound_minor), 1e-9);
}
