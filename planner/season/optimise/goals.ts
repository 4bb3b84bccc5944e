import { greedyPlan } from './construct.ts';
import { evaluatePlan } from './evaluate.ts';
import type { SeasonCrop, SeasonInstance } from './instance.ts';
import { compileSeason, planOf } from './problem.ts';
import { createSearchState } from './search-state.ts';

export const aims = ['most-margin', 'fewest-beds', 'fewest-hours', 'steady'] as const;
export type Aim = (typeof aims)[number];
/** How much the aim counts beside the margin. */
export const weights = ['a-little', 'clearly', 'above-all'] as const;
export type Weight = (typeof weights)[number];
export type Goal = { readonly aim: Aim; readonly weight: Weight };

/** Charge on a bed-week as a share of what a bed-week sells for in a first plan. Our own choice. */
const BED_SHARE: Readonly<Record<Exclude<Weight, 'above-all'>, number>> = { 'a-little': 0.1, clearly: 0.3 };
/** An hour counts as so many wages. Our own choice. */
const WAGES: Readonly<Record<Exclude<Weight, 'above-all'>, number>> = { 'a-little': 1.5, clearly: 3 };
/** Charge on a jump in harvest from week to week as a share of the crop's dearest price. Our own choice. */
const STEADY_SHARE: Readonly<Record<Weight, number>> = { 'a-little': 0.1, clearly: 0.3, 'above-all': 1 };
/** What one unit of effort (m2-week or hour) counts, where standing orders alone are to be met, in minor units. */
const EFFORT_MINOR = 100;
/** A unit of a standing order outweighs the most effort it can take by this factor. */
const OUTWEIGHS = 50;

/**
 * The season with the goal written into its prices and costs; limits and rules stay as they are, so a plan for one is a
 * plan for the other, and its true margin is found by evaluating it on the season itself.
 *
 * `above-all` with fewest beds or hours means: meet the standing orders with the least, and sell nothing beside.
 */
export function withGoal(instance: SeasonInstance, goal: Goal): SeasonInstance {
  switch (goal.aim) {
    case 'most-margin':
      return instance;
    case 'steady':
      return {
        ...instance,
        crops: instance.crops.map((crop) => ({ ...crop, steadiness_minor: STEADY_SHARE[goal.weight] * dearest(crop) })),
      };
    case 'fewest-beds':
      return goal.weight === 'above-all'
        ? ordersOnly(instance, (option) => option.harvest_per_m2.length)
        : chargeBedWeeks(instance, BED_SHARE[goal.weight]);
    case 'fewest-hours':
      return goal.weight === 'above-all'
        ? ordersOnly(instance, (option) => option.labour_h_per_m2.reduce((sum, hours) => sum + hours, 0))
        : { ...instance, wage_minor_per_h: instance.wage_minor_per_h * WAGES[goal.weight] };
  }
}

const dearest = (crop: SeasonCrop): number =>
  crop.demand.reduce(
    (most, week) => Math.max(most, week.contract > 0 ? week.contractPrice_minor : 0, week.tiers[0]?.price_minor ?? 0),
    0,
  );

function chargeBedWeeks(instance: SeasonInstance, share: number): SeasonInstance {
  const problem = compileSeason(instance);
  const state = createSearchState(problem);
  greedyPlan(state);
  const first = evaluatePlan(instance, planOf(problem, state.sequences));
  const charge_minor = first.bedWeeks_m2 > 0 ? (share * first.revenue_minor) / first.bedWeeks_m2 : 0;
  return {
    ...instance,
    crops: instance.crops.map((crop) => ({
      ...crop,
      options: crop.options.map((option) => ({
        ...option,
        cost_minor_per_m2: option.cost_minor_per_m2 + charge_minor * option.harvest_per_m2.length,
      })),
    })),
  };
}

function ordersOnly(instance: SeasonInstance, effort: (option: SeasonCrop['options'][number]) => number): SeasonInstance {
  return {
    ...instance,
    wage_minor_per_h: 0,
    overtimePremium_minor_per_h: 0,
    crops: instance.crops.map((crop) => {
      const perUnit = crop.options.map((option) => {
        const amount = option.harvest_per_m2.reduce((sum, each) => sum + each, 0);
        return amount > 0 ? (effort(option) * EFFORT_MINOR) / amount : 0;
      });
      const penalty_minor = OUTWEIGHS * Math.max(EFFORT_MINOR, ...perUnit);
      return {
        ...crop,
        overhead_minor: 0,
        steadiness_minor: 0,
        options: crop.options.map((option) => ({ ...option, cost_minor_per_m2: effort(option) * EFFORT_MINOR })),
        demand: crop.demand
          .filter((week) => week.contract > 0)
          .map((week) => ({ ...week, contractPrice_minor: 0, penalty_minor, tiers: [] })),
      };
    }),
  };
}
