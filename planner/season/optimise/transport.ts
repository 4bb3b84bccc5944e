import type { SeasonCrop } from './instance.ts';

export type Sale = { readonly week: number; readonly contract: boolean; readonly price_minor: number; readonly amount: number };

const LEAST = 1e-9;

/**
 * What to sell where so as to earn most, as a transport problem: harvest of week v may go to week w when v <= w <= v + L.
 * Steps are served dearest first, and each draws on harvest along augmenting paths (a step may take harvest of another,
 * which takes older harvest in its turn), so that no earlier step loses. Exact, since the amounts that can be served
 * together form a polymatroid.
 */
export function bestSales(crop: SeasonCrop, harvest: readonly number[]): readonly Sale[] {
  const steps = crop.demand
    .flatMap((week) => [
      {
        week: week.week,
        contract: true,
        cap: week.contract,
        worth: week.contractPrice_minor + week.penalty_minor,
        price_minor: week.contractPrice_minor,
      },
      ...week.tiers.map((tier) => ({
        week: week.week,
        contract: false,
        cap: tier.cap,
        worth: tier.price_minor,
        price_minor: tier.price_minor,
      })),
    ])
    .filter((step) => step.cap > 0 && step.worth > 0)
    .sort((a, b) => b.worth - a.worth || a.week - b.week);
  const left = [...harvest];
  /** flow[w][v]: harvest of week v that goes to the steps of week w. */
  const flow = harvest.map(() => new Map<number, number>());
  const sales: Sale[] = [];
  for (const step of steps) {
    let amount = 0;
    while (amount < step.cap - LEAST) {
      const pushed = augment(step.week, step.cap - amount, crop.shelf_weeks, left, flow);
      if (pushed <= LEAST) break;
      amount += pushed;
    }
    if (amount > LEAST) sales.push({ week: step.week, contract: step.contract, price_minor: step.price_minor, amount });
  }
  return sales;
}

/** One shortest path from a selling week to harvest that is left; moves as much along it as fits. */
function augment(week: number, want: number, shelf: number, left: number[], flow: readonly Map<number, number>[]): number {
  const cameFrom = new Map<number, { readonly sale: number; readonly harvest: number }>();
  const queue = [week];
  const seen = new Set(queue);
  const tried = new Set<number>();
  while (queue.length > 0) {
    const sale = queue.shift();
    if (sale === undefined) break;
    for (let v = Math.max(0, sale - shelf); v <= sale; v++) {
      if (tried.has(v)) continue;
      tried.add(v);
      if ((left[v] ?? 0) > LEAST) return shift(week, sale, v, want, left, flow, cameFrom);
      // Harvest v is spoken for: whoever holds it may take other harvest instead.
      flow.forEach((from, holder) => {
        if ((from.get(v) ?? 0) > LEAST && !seen.has(holder)) {
          seen.add(holder);
          cameFrom.set(holder, { sale, harvest: v });
          queue.push(holder);
        }
      });
    }
  }
  return 0;
}

function shift(
  start: number,
  end: number,
  source: number,
  want: number,
  left: number[],
  flow: readonly Map<number, number>[],
  cameFrom: ReadonlyMap<number, { readonly sale: number; readonly harvest: number }>,
): number {
  let amount = Math.min(want, left[source] ?? 0);
  for (let at = end; at !== start; ) {
    const step = cameFrom.get(at);
    if (step === undefined) throw new RangeError('A path of sales was lost.');
    amount = Math.min(amount, flow[at]?.get(step.harvest) ?? 0);
    at = step.sale;
  }
  const move = (sale: number, harvest: number, by: number) => {
    const from = flow[sale];
    from?.set(harvest, (from.get(harvest) ?? 0) + by);
  };
  left[source] = (left[source] ?? 0) - amount;
  let takes = source;
  for (let at = end; ; ) {
    move(at, takes, amount);
    const step = cameFrom.get(at);
    if (at === start || step === undefined) return amount;
    move(at, step.harvest, -amount);
    takes = step.harvest;
    at = step.sale;
  }
}
