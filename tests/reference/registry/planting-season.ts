import { refuse } from '../../../planner/errors.ts';
import { enumerateSeason } from '../../../planner/season/optimise/enumerate.ts';
import { evaluatePlan } from '../../../planner/season/optimise/evaluate.ts';
import type { SeasonCrop, SeasonInstance, SeasonPlan } from '../../../planner/season/optimise/instance.ts';
import type { Registry } from '../registry.ts';

export type SeasonCase = {
  readonly weeks: number;
  readonly rotation_gap_years: Readonly<Record<string, number>>;
  readonly beds: readonly {
    readonly id: string;
    readonly area_m2: number;
    readonly years_since: Readonly<Record<string, number>>;
  }[];
  readonly options: readonly {
    readonly id: string;
    readonly crop: string;
    readonly family: string;
    readonly start_week: number;
    readonly end_week: number;
    readonly yield_kg_per_m2_by_week: Readonly<Record<string, number>>;
    readonly cost_cents_per_m2: number;
  }[];
  readonly demand: readonly {
    readonly crop: string;
    readonly week: number | null;
    readonly max_kg: number;
    readonly price_cents_per_kg: number;
    readonly min_kg: number;
    readonly short_penalty_cents_per_kg: number;
  }[];
};

/** A case in the planner's terms. Demand of a whole season is sold in its last week from harvest that keeps until then. */
export function instanceOfCase(given: SeasonCase): SeasonInstance {
  const families = [...new Set(given.options.map(({ family }) => family))];
  const names = [...new Set(given.options.map(({ crop }) => crop))];
  const all = <T>(value: T) => Array.from({ length: given.weeks }, () => value);
  const crops = names.map((name): SeasonCrop => {
    const wanted = given.demand.filter(({ crop }) => crop === name);
    const wholeSeason = wanted.some(({ week }) => week === null);
    if (wholeSeason && wanted.length > 1)
      refuse('demand', 'mixed', `demand: ${name} is asked for by the week and for the season.`);
    const options = given.options.filter(({ crop }) => crop === name);
    return {
      name,
      family: families.indexOf(options[0]?.family ?? ''),
      shelf_weeks: wholeSeason ? given.weeks : 0,
      overhead_minor: 0,
      steadiness_minor: 0,
      options: options.map((option) => {
        const weeks = Array.from({ length: option.end_week - option.start_week + 1 }, (_, k) => option.start_week + k);
        return {
          startWeek: option.start_week - 1,
          harvest_per_m2: weeks.map((week) => option.yield_kg_per_m2_by_week[String(week)] ?? 0),
          labour_h_per_m2: weeks.map(() => 0),
          water_L_per_m2: weeks.map(() => 0),
          bench_m2_per_m2: [],
          cost_minor_per_m2: option.cost_cents_per_m2,
        };
      }),
      demand: [...wanted]
        .sort((a, b) => (a.week ?? 0) - (b.week ?? 0))
        .map((each) => ({
          week: (each.week ?? given.weeks) - 1,
          contract: each.min_kg,
          contractPrice_minor: each.price_cents_per_kg,
          penalty_minor: each.short_penalty_cents_per_kg,
          tiers: [{ cap: each.max_kg - each.min_kg, price_minor: each.price_cents_per_kg }],
        })),
    };
  });
  return {
    weeks: given.weeks,
    families: families.map((name) => ({ name, inSeason: 'once' as const })),
    units: given.beds.map((bed, position) => ({
      id: bed.id,
      bedId: bed.id,
      block: 0,
      position,
      part: 0,
      area_m2: bed.area_m2,
      zone: 0,
      cropsFit: names.map((_, c) => c),
      barredFamilies: families.flatMap((family, f) => {
        const since = bed.years_since[family];
        return since !== undefined && since < (given.rotation_gap_years[family] ?? 0) ? [f] : [];
      }),
      fixed: [],
      seasonsSince: {},
    })),
    crops,
    wage_minor_per_h: 0,
    labourCap_h: all(Infinity),
    overtimeMost_h: 0,
    overtimePremium_minor_per_h: 0,
    waterCap_L: [all(Infinity)],
    benchCap_m2: all(Infinity),
    mostCrops: crops.length,
    standing: null,
  };
}

function answer(given: SeasonCase) {
  const instance = instanceOfCase(given);
  const found = enumerateSeason(instance);
  const optionsOf = new Map(
    instance.crops.map((crop, c) => [c, given.options.flatMap(({ crop: name }, at) => (name === crop.name ? [at] : []))]),
  );
  const numbers = (plan: SeasonPlan) =>
    plan.map((row) => row.map(({ crop, option }) => optionsOf.get(crop)?.[option] ?? -1).sort((a, b) => a - b));
  const sorted = [...found.bestPlans].sort((a, b) => order(numbers(a), numbers(b)));
  const plans = sorted.map(numbers);
  const outcome = evaluatePlan(instance, sorted[0] ?? []);
  const sold = given.demand.map(({ crop, week }) => {
    const of = outcome.crops[instance.crops.findIndex(({ name }) => name === crop)];
    const amount = (of?.sales ?? [])
      .filter((sale) => week === null || sale.week === week - 1)
      .reduce((sum, sale) => sum + sale.amount, 0);
    return [week === null ? crop : `${crop}@${week}`, amount] as const;
  });
  return {
    best_margin_cents: found.best_minor,
    second_best_margin_cents: found.secondBest_minor,
    feasible_plans: found.feasiblePlans,
    revenue_cents: outcome.revenue_minor,
    cost_cents: outcome.direct_minor,
    penalty_cents: outcome.penalty_minor,
    optimal_plans: plans.map((plan) =>
      Object.fromEntries(given.beds.map((bed, u) => [bed.id, (plan[u] ?? []).map((at) => given.options[at]?.id)])),
    ),
    sold_kg: Object.fromEntries(sold),
  };
}

function order(a: readonly (readonly number[])[], b: readonly (readonly number[])[]): number {
  for (let u = 0; u < a.length; u++)
    for (let k = 0; ; k++) {
      const x = a[u]?.[k];
      const y = b[u]?.[k];
      if (x === undefined && y === undefined) break;
      if (x !== y) return (x ?? -1) - (y ?? -1);
    }
  return 0;
}

export const plantingSeason: Registry = { 'planting.pl-season-1': answer };
