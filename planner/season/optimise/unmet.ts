import type { LpSolver } from '../../lp.ts';
import { relaxSeason } from './column-generation.ts';
import { greedyPlan } from './construct.ts';
import { evaluatePlan, type PlanOutcome } from './evaluate.ts';
import { withGoal } from './goals.ts';
import type { SeasonInstance, SeasonPlan } from './instance.ts';
import { compileSeason } from './problem.ts';
import { createSearchState } from './search-state.ts';
import { type Change, whatIf } from './what-if.ts';

/** A standing order that the plan does not meet in full, with the facts that no plan can change. */
export type UnmetOrder = {
  readonly crop: number;
  readonly weeks: readonly number[];
  readonly amount: number;
  readonly wanted: number;
  readonly penalty_minor: number;
  /** First week in which any planting of the crop could be harvested; null where none can be grown at all. */
  readonly firstHarvestWeek: number | null;
  /** Amount wanted in weeks before that: no bed, hour or litre helps. */
  readonly tooEarly: number;
  /** Area that may carry the crop at all, after kind, depth, sun, trellis and history. */
  readonly fittingArea_m2: number;
};

/** Every order that falls short, dearest shortfall first. */
export function unmetOrders(instance: SeasonInstance, outcome: PlanOutcome): readonly UnmetOrder[] {
  return outcome.crops
    .filter(({ short }) => short.length > 0)
    .map(({ crop: c, short, contract }): UnmetOrder => {
      const crop = instance.crops[c];
      const firsts = (crop?.options ?? []).map(
        (option) =>
          option.startWeek +
          Math.max(
            0,
            option.harvest_per_m2.findIndex((h) => h > 0),
          ),
      );
      const firstHarvestWeek = firsts.length > 0 ? Math.min(...firsts) : null;
      const fittingArea_m2 = instance.units
        .filter((unit) => unit.cropsFit.includes(c) && !unit.barredFamilies.includes(crop?.family ?? -1))
        .reduce((sum, unit) => sum + unit.area_m2, 0);
      return {
        crop: c,
        weeks: short.map(({ week }) => week),
        amount: short.reduce((sum, { amount }) => sum + amount, 0),
        wanted: contract,
        penalty_minor: short.reduce((sum, { penalty_minor }) => sum + penalty_minor, 0),
        firstHarvestWeek,
        tooEarly: short
          .filter(({ week }) => firstHarvestWeek === null || week < firstHarvestWeek)
          .reduce((sum, { amount }) => sum + amount, 0),
        fittingArea_m2,
      };
    })
    .sort((a, b) => b.penalty_minor - a.penalty_minor || b.amount - a.amount || a.crop - b.crop);
}

/**
 * Share of a plan's shortfall that could be met if the orders came before everything else, in the effort weights of
 * {@link remedies}: the rest no plan can meet.
 *
 *   share = 1 - least shortfall / shortfall of the plan      0 to 1
 */
export function shortByChoice_share(instance: SeasonInstance, plan: SeasonPlan, leastShort: number): number {
  const orders = withGoal(instance, { aim: 'fewest-beds', weight: 'above-all' });
  const short = evaluatePlan(orders, plan).penalty_minor;
  return short > 0 ? Math.min(1, Math.max(0, 1 - leastShort / short)) : 0;
}

/** A remedy is told in whole per cent: closer is not needed. */
const REMEDY_CLOSE = 0.01;

export type Remedy = {
  readonly change: Change;
  /** Share by which the least possible shortfall, weighed by what it costs in effort, falls. */
  readonly fallsBy: number;
};

/** What is loosened, one at a time, to see what the orders fall short for want of. */
export function remedyChanges(instance: SeasonInstance): readonly Change[] {
  const largest = instance.units.reduce((best, unit, at) => (unit.area_m2 > (instance.units[best]?.area_m2 ?? 0) ? at : best), 0);
  return [
    { kind: 'labour', factor: 1.5 },
    { kind: 'water', zone: null, factor: 1.5 },
    { kind: 'no-history' },
    ...(instance.units.length > 0 ? [{ kind: 'beds' as const, unit: largest, count: 10 }] : []),
    { kind: 'any-bed' },
  ];
}

/**
 * Solves the season for its standing orders alone, as it is and with one thing loosened at a time, and says by how much the
 * least possible shortfall falls. Linear answers: parts of beds are allowed, so what helps here may help a little less in
 * whole beds. Not the shadow prices, which are degenerate where many limits meet.
 */
export function remedies(
  instance: SeasonInstance,
  solver: LpSolver,
  shouldStop: () => boolean,
): { readonly leastShort: number; readonly remedies: readonly Remedy[] } | null {
  const least = (season: SeasonInstance): number | null => {
    const orders = withGoal(season, { aim: 'fewest-beds', weight: 'above-all' });
    const problem = compileSeason({
      ...orders,
      crops: orders.crops.map((crop) => ({ ...crop, options: crop.options.map((o) => ({ ...o, cost_minor_per_m2: 0 })) })),
    });
    const first = createSearchState(problem);
    greedyPlan(first);
    const start = first.sequences.map((sequence, unit) => ({ group: problem.groupOfUnit[unit] ?? 0, sequence }));
    const relaxed = relaxSeason(problem, solver, start, { shouldStop, onBound: () => undefined, closeEnough: REMEDY_CLOSE });
    if (relaxed.state === 'failed') return null;
    relaxed.pool.lp.close();
    return relaxed.state === 'solved' ? Math.max(0, -relaxed.value_minor) : null;
  };
  const now = least(instance);
  if (now === null) return null;
  const found: Remedy[] = [];
  for (const change of remedyChanges(instance)) {
    if (shouldStop()) break;
    const then = least(whatIf(instance, change));
    if (then !== null) found.push({ change, fallsBy: now > 0 ? Math.max(0, (now - then) / now) : 0 });
  }
  return { leastShort: now, remedies: found.sort((a, b) => b.fallsBy - a.fallsBy) };
}
