import { loadMilpSolver } from '../../../api/jobs/milp/highs.ts';
import { loadLpSolver } from '../../../api/jobs/milp/open-lp.ts';
import {
  type BlendMaterial,
  type BlendProblem,
  leastCostBlend,
  wholeMeasureBlend,
} from '../../../planner/fertility/least-cost-blend.ts';
import type { CaseValues, Registry } from '../registry.ts';
import { share } from './soil-fertility-units.ts';

const lp = await loadLpSolver(() => false);
const milp = await loadMilpSolver();

type Amounts = Readonly<Record<string, number>>;
type ByName<T> = Readonly<Record<string, T>>;
const suffixed = (amounts: Amounts, suffix: string) =>
  Object.fromEntries(Object.entries(amounts).map(([name, amount]) => [`${name}_${suffix}`, amount]));
const materialsOf = (price: Amounts, contents: ByName<Amounts>, most: Amounts = {}): readonly BlendMaterial[] =>
  Object.entries(price).map(([name, each]) => {
    const cap = most[name];
    return { name, price: each, contents: contents[name] ?? {}, ...(cap === undefined ? {} : { most: cap }) };
  });
const blend = (problem: BlendProblem, unit: string): CaseValues => {
  const found = leastCostBlend(problem, lp);
  if (found.state === 'cannot-be-met') return { status: 'Infeasible', clash: found.clash };
  const prices = Object.fromEntries(
    found.binding
      .filter((each) => each.limit === 'minimum')
      .map((each) => [`shadow_price_${each.of}_per_${unit === 'kg' ? 'g' : unit}`, each.price]),
  );
  return {
    status: 'Optimal',
    cost: found.cost,
    ...suffixed(found.brings, unit === 'kg' ? 'g' : unit),
    ...suffixed(found.amounts, unit),
    ...prices,
  };
};
type KgBlend = {
  price_per_kg: Amounts;
  available_g_per_kg: ByName<Amounts>;
  minimum_g: Amounts;
  maximum_g?: Amounts;
  maximum_kg?: Amounts;
};
const kgBlend = (i: KgBlend) =>
  blend(
    {
      materials: materialsOf(i.price_per_kg, i.available_g_per_kg, i.maximum_kg),
      minimum: i.minimum_g,
      ...(i.maximum_g === undefined ? {} : { maximum: i.maximum_g }),
    },
    'kg',
  );
type FractionBlend = {
  price_per_lb: Amounts;
  fraction: ByName<Amounts>;
  minimum_lb: Amounts;
  max_total_lb?: number;
  budget?: number;
};
const fractionBlend = (i: FractionBlend) =>
  blend(
    {
      materials: materialsOf(i.price_per_lb, i.fraction),
      minimum: i.minimum_lb,
      ...(i.max_total_lb === undefined ? {} : { mostTotal: i.max_total_lb }),
      ...(i.budget === undefined ? {} : { budget: i.budget }),
    },
    'lb',
  );

/** Least-cost blends. */
export const soilBlend: Registry = {
  'soil.blend-01': (i: { cost_per_lb: Amounts; oz_per_lb: ByName<Amounts>; minimum_oz: Amounts }) =>
    blend({ materials: materialsOf(i.cost_per_lb, i.oz_per_lb), minimum: i.minimum_oz }, 'lb'),
  'soil.blend-02': (i: {
    order_lb: number;
    price_per_100_lb: Amounts;
    analysis_pct: ByName<readonly number[]>;
    minimum_pct: readonly number[];
  }) => {
    const names = ['N', 'P2O5', 'K2O'];
    const named = (values: readonly number[]) => Object.fromEntries(names.map((name, at) => [name, share(values[at] ?? 0)]));
    const price = Object.fromEntries(Object.entries(i.price_per_100_lb).map(([name, of100]) => [name, of100 / 100]));
    const contents = Object.fromEntries(Object.entries(i.analysis_pct).map(([name, values]) => [name, named(values)]));
    const minimum = Object.fromEntries(Object.entries(named(i.minimum_pct)).map(([name, least]) => [name, least * i.order_lb]));
    return blend({ materials: materialsOf(price, contents), minimum, total: i.order_lb }, 'lb');
  },
  'soil.blend-03': fractionBlend,
  'soil.blend-04': fractionBlend,
  'soil.blend-05': kgBlend,
  'soil.blend-06': kgBlend,
  'soil.also-blend-01': kgBlend,
  'soil.blend-07': (i: { scoop_price_cents: Amounts; available_g_per_scoop: ByName<Amounts>; minimum_g: Amounts }) => {
    const found = wholeMeasureBlend(
      { materials: materialsOf(i.scoop_price_cents, i.available_g_per_scoop), minimum: i.minimum_g },
      milp,
      lp,
    );
    if (found.state === 'cannot-be-met') return { status: 'Infeasible' };
    return {
      status: 'Optimal',
      cost_cents: found.cost,
      ...suffixed(found.amounts, 'scoops'),
      ...suffixed(found.brings, 'g'),
    };
  },
};
