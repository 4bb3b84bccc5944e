import type { SeasonCrop } from './instance.ts';

/** A crop's demand sorted by what a unit is worth: price, and for a standing order also the penalty it spares. */
export type Market = {
  readonly weeks: number;
  readonly shelf_weeks: number;
  readonly steadiness_minor: number;
  /** Penalties if nothing at all were delivered. */
  readonly penalties_minor: number;
  /** Levels of equal worth, dearest first; cap of each week. */
  readonly levels: readonly { readonly worth_minor: number; readonly cap: Float64Array }[];
  /** For each week its steps, dearest first, as worth and cap pairs laid flat. */
  readonly weekSteps: readonly Float64Array[];
  /** 1 for weeks whose harvest counts for steadiness against the week before. */
  readonly steadyPair: Uint8Array;
  readonly isDemandWeek: Uint8Array;
};

/** Prepares a crop's demand for {@link revenue_minor}. */
export function createMarket(crop: SeasonCrop, weeks: number): Market {
  const byWorth = new Map<number, Float64Array>();
  const isDemandWeek = new Uint8Array(weeks);
  let penalties_minor = 0;
  const add = (worth: number, week: number, cap: number) => {
    if (cap <= 0 || worth <= 0) return;
    let level = byWorth.get(worth);
    if (level === undefined) {
      level = new Float64Array(weeks);
      byWorth.set(worth, level);
    }
    level[week] = level[week]! + cap;
  };
  for (const week of crop.demand) {
    isDemandWeek[week.week] = 1;
    penalties_minor += week.contract * week.penalty_minor;
    add(week.contractPrice_minor + week.penalty_minor, week.week, week.contract);
    for (const tier of week.tiers) add(tier.price_minor, week.week, tier.cap);
  }
  const levels = [...byWorth].map(([worth_minor, cap]) => ({ worth_minor, cap })).sort((a, b) => b.worth_minor - a.worth_minor);
  const weekSteps = Array.from({ length: weeks }, (_, week) =>
    Float64Array.from(levels.flatMap((level) => (level.cap[week]! > 0 ? [level.worth_minor, level.cap[week]!] : []))),
  );
  const steadyPair = new Uint8Array(weeks);
  for (let week = 1; week < weeks; week++) steadyPair[week] = isDemandWeek[week]! & isDemandWeek[week - 1]!;
  return {
    weeks,
    shelf_weeks: Math.min(crop.shelf_weeks, weeks),
    steadiness_minor: crop.steadiness_minor,
    penalties_minor,
    levels,
    weekSteps,
    steadyPair,
    isDemandWeek,
  };
}

/** What one week's harvest earns when it must be sold in that week. */
export function weekRevenue_minor(market: Market, week: number, harvest: number): number {
  const steps = market.weekSteps[week]!;
  let left = harvest;
  let sum = 0;
  for (let at = 0; at < steps.length && left > 0; at += 2) {
    const cap = steps[at + 1]!;
    const sold = Math.min(left, cap);
    sum += sold * steps[at]!;
    left -= sold;
  }
  return sum;
}

/** Charge for harvests that jump from one demand week to the next. */
export function steadinessCost_minor(market: Market, harvest: Float64Array): number {
  if (market.steadiness_minor === 0) return 0;
  let sum = 0;
  for (let week = 1; week < market.weeks; week++)
    if (market.steadyPair[week] === 1) sum += Math.abs(harvest[week]! - harvest[week - 1]!);
  return market.steadiness_minor * sum;
}
