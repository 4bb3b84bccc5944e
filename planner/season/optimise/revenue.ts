import { type Market, steadinessCost_minor, weekRevenue_minor } from './market.ts';

/**
 * The most that a crop's weekly harvest can earn, less penalties for standing orders not met and the charge for jumps.
 *
 * Without shelf life each week fills its steps, dearest first. With a shelf life of L weeks the levels are taken dearest
 * first and each in one pass over the weeks; what week i can still sell at a level is
 *
 *   room_i = min over a <= i <= b of  harvest(a - L .. b) - sold(a .. b)
 *
 *   harvest(x..y)  sum of the harvest of weeks x to y    crop's unit   0 or more
 *   sold(a..b)     what weeks a to b have sold already   crop's unit   0 or more
 *   L              shelf life                            weeks         0 or more
 *
 * kept with prefix sums, a running maximum and a suffix minimum. Taking the dearest first is exact because the amounts
 * that can be sold form a polymatroid. Not where a price rises with the amount sold.
 * Source: Edmonds, Submodular functions, matroids and certain polyhedra, 1970 (greedy; from memory).
 */
export function revenue_minor(market: Market, harvest: Float64Array): number {
  const steady = steadinessCost_minor(market, harvest);
  if (market.shelf_weeks === 0) {
    let sum = 0;
    for (let week = 0; week < market.weeks; week++)
      if (harvest[week]! > 0) sum += weekRevenue_minor(market, week, harvest[week]!);
    return sum - market.penalties_minor - steady;
  }
  return sellKept(market, harvest, null) - market.penalties_minor - steady;
}

/** What is sold of a crop in each week under the same rule as {@link revenue_minor}. */
export function soldByWeek(market: Market, harvest: Float64Array): Float64Array {
  const sold = new Float64Array(market.weeks);
  sellKept(market, harvest, sold);
  return sold;
}

/** Working space kept between calls; every call fills what it reads. */
let sumsOfHarvest = new Float64Array(0);
let sumsOfSales = new Float64Array(0);
let leastRoomAfter = new Float64Array(0);
let soldAtLevel = new Float64Array(0);

function sellKept(market: Market, harvest: Float64Array, into: Float64Array | null): number {
  const { weeks, shelf_weeks: shelf } = market;
  if (sumsOfHarvest.length <= weeks) {
    sumsOfHarvest = new Float64Array(weeks + 1);
    sumsOfSales = new Float64Array(weeks + 1);
    leastRoomAfter = new Float64Array(weeks + 1);
    soldAtLevel = new Float64Array(weeks + 1);
  }
  const hp = sumsOfHarvest;
  const sp = sumsOfSales;
  const least = leastRoomAfter;
  const pending = soldAtLevel;
  hp[0] = 0;
  for (let week = 0; week < weeks; week++) {
    hp[week + 1] = hp[week]! + harvest[week]!;
    sp[week + 1] = 0;
  }
  if (hp[weeks]! <= 0) return 0;
  let earned = 0;
  for (const level of market.levels) {
    least[weeks] = Infinity;
    for (let week = weeks - 1; week >= 0; week--) least[week] = Math.min(least[week + 1]!, hp[week + 1]! - sp[week + 1]!);
    let soldHere = 0;
    let most = Number.NEGATIVE_INFINITY;
    for (let week = 0; week < weeks; week++) {
      const from = week - shelf;
      most = Math.max(most, (from > 0 ? hp[from]! : 0) - (sp[week]! + soldHere));
      const cap = level.cap[week]!;
      if (cap > 0) {
        const room = least[week]! - soldHere - most;
        const sold = Math.max(0, Math.min(room, cap));
        pending[week] = sold;
        soldHere += sold;
        if (into !== null) into[week] = into[week]! + sold;
      } else pending[week] = 0;
    }
    earned += soldHere * level.worth_minor;
    let run = 0;
    for (let week = 0; week < weeks; week++) {
      run += pending[week]!;
      sp[week + 1] = sp[week + 1]! + run;
    }
  }
  return earned;
}
