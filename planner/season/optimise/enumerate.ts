import { refuse } from '../../errors.ts';
import { evaluatePlan, unitFaults } from './evaluate.ts';
import type { PlannedPlanting, SeasonInstance, SeasonPlan } from './instance.ts';

export type EnumeratedSeason = {
  readonly feasiblePlans: number;
  readonly best_minor: number;
  /** The next lower margin; null where all plans earn the same. */
  readonly secondBest_minor: number | null;
  /** Every plan that earns the best, within `tie_minor`. */
  readonly bestPlans: readonly SeasonPlan[];
};

const MOST_PLANS = 2_000_000;

/**
 * Every feasible plan of a tiny season, one by one: the yardstick for the search.
 *
 * @throws InputError when there are more than two million plans to look at
 */
export function enumerateSeason(instance: SeasonInstance, tie_minor = 1e-6): EnumeratedSeason {
  const rows = instance.units.map((_, u) => rowsOfUnit(instance, u));
  const size = rows.reduce((product, list) => product * list.length, 1);
  if (size > MOST_PLANS) refuse('units', 'too-large', `units: ${size} plans are too many to look at one by one.`);
  let feasiblePlans = 0;
  let best = Number.NEGATIVE_INFINITY;
  let second: number | null = null;
  let bestPlans: SeasonPlan[] = [];
  const chosen: (readonly PlannedPlanting[])[] = [];
  const visit = (u: number): void => {
    const list = rows[u];
    if (list === undefined) {
      const outcome = evaluatePlan(instance, chosen);
      if (outcome.faults.length > 0) return;
      feasiblePlans += 1;
      const margin = outcome.margin_minor;
      if (margin > best + tie_minor) {
        if (Number.isFinite(best)) second = best;
        best = margin;
        bestPlans = [[...chosen]];
      } else if (margin >= best - tie_minor) bestPlans.push([...chosen]);
      else if (second === null || margin > second) second = margin;
      return;
    }
    for (const row of list) {
      chosen[u] = row;
      visit(u + 1);
    }
  };
  visit(0);
  return { feasiblePlans, best_minor: best, secondBest_minor: second, bestPlans };
}

/** All feasible rows of plantings of one unit, the empty one first. */
function rowsOfUnit(instance: SeasonInstance, u: number): readonly (readonly PlannedPlanting[])[] {
  const all = instance.crops.flatMap((crop, c) =>
    crop.options.map((option, at) => ({ crop: c, option: at, start: option.startWeek })),
  );
  all.sort((a, b) => a.start - b.start || a.crop - b.crop || a.option - b.option);
  const found: (readonly PlannedPlanting[])[] = [];
  const unit = instance.units[u];
  if (unit === undefined) return [];
  const feasible = (row: readonly PlannedPlanting[]) => unitFaults(instance, unit, row).length === 0;
  const grow = (row: readonly PlannedPlanting[], from: number): void => {
    found.push(row);
    for (let at = from; at < all.length; at++) {
      const next = all[at];
      if (next === undefined) continue;
      const longer = [...row, { crop: next.crop, option: next.option }];
      if (feasible(longer)) grow(longer, at + 1);
    }
  };
  grow([], 0);
  return found;
}
