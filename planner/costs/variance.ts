import { requireRange } from '../errors.ts';
import { computed, entry, type Working } from '../working.ts';

/** A stand as planned or as it came: its ground, what each m2 gave, what each kg brought. */
export type StandResult = {
  readonly area_m2: number;
  readonly yield_kg_per_m2: number;
  readonly price_minor_per_kg: number;
};

export type RevenueVariance = {
  readonly plan_minor: number;
  readonly actual_minor: number;
  readonly area_minor: number;
  readonly yield_minor: number;
  readonly price_minor: number;
  /** The three parts together: actual less plan. */
  readonly sum_minor: number;
};

/**
 * Why income is not as planned, in parts that add up.
 *
 *   area part  (Aa - Ap) Yp pp;   yield part  Aa (Ya - Yp) pp;   price part  Aa Ya (pa - pp)
 *
 *   A  area m2,  Y  yield kg/m2,  p  price minor units/kg;  a actual, p plan
 *
 * The order matters: each cause is valued with the ones before it at their actual size. Not rounded.
 * Source: standard variance analysis, from memory.
 * @throws InputError naming the field
 */
export function revenueVariance(plan: StandResult, actual: StandResult): RevenueVariance {
  requireStand('plan', plan);
  requireStand('actual', actual);
  const area = (actual.area_m2 - plan.area_m2) * plan.yield_kg_per_m2 * plan.price_minor_per_kg;
  const yieldPart = actual.area_m2 * (actual.yield_kg_per_m2 - plan.yield_kg_per_m2) * plan.price_minor_per_kg;
  const price = actual.area_m2 * actual.yield_kg_per_m2 * (actual.price_minor_per_kg - plan.price_minor_per_kg);
  return {
    plan_minor: revenueOf(plan),
    actual_minor: revenueOf(actual),
    area_minor: area,
    yield_minor: yieldPart,
    price_minor: price,
    sum_minor: area + yieldPart + price,
  };
}

/** Cost against plan: the quantity part at the plan's price, the price part at the quantity used. Source: as above. */
export function costVariance(
  plan: { readonly amount: number; readonly price_minor_per_unit: number },
  actual: { readonly amount: number; readonly price_minor_per_unit: number },
): { readonly quantity_minor: number; readonly price_minor: number; readonly sum_minor: number } {
  const quantity = (actual.amount - plan.amount) * plan.price_minor_per_unit;
  const price = actual.amount * (actual.price_minor_per_unit - plan.price_minor_per_unit);
  return { quantity_minor: quantity, price_minor: price, sum_minor: quantity + price };
}

/** Working of {@link revenueVariance}. */
export function explainRevenueVariance(plan: StandResult, actual: StandResult): Working {
  const found = revenueVariance(plan, actual);
  return {
    title: 'Income against plan',
    formula: '(Aa - Ap) Yp pp + Aa (Ya - Yp) pp + Aa Ya (pa - pp)',
    symbols: [
      { symbol: 'Ap', name: 'planned area', figure: { value: plan.area_m2, unit: 'm2' }, origin: entry('your plan') },
      { symbol: 'Aa', name: 'area grown', figure: { value: actual.area_m2, unit: 'm2' }, origin: entry() },
      {
        symbol: 'Yp',
        name: 'planned yield',
        figure: { value: plan.yield_kg_per_m2, unit: 'kg_per_m2' },
        origin: entry('your plan'),
      },
      { symbol: 'Ya', name: 'yield sold', figure: { value: actual.yield_kg_per_m2, unit: 'kg_per_m2' }, origin: computed() },
      {
        symbol: 'pp',
        name: 'planned price of a kg',
        figure: { value: plan.price_minor_per_kg, unit: 'minor' },
        origin: entry('your plan'),
      },
      { symbol: 'pa', name: 'price of a kg', figure: { value: actual.price_minor_per_kg, unit: 'minor' }, origin: computed() },
    ],
    steps: [
      { text: 'Area', figures: '(Aa - Ap) Yp pp', result: { value: found.area_minor, unit: 'minor' } },
      { text: 'Yield', figures: 'Aa (Ya - Yp) pp', result: { value: found.yield_minor, unit: 'minor' } },
      { text: 'Price', figures: 'Aa Ya (pa - pp)', result: { value: found.price_minor, unit: 'minor' } },
    ],
    result: { value: found.sum_minor, unit: 'minor' },
    sources: ['standard variance analysis, from memory'],
    notes: [],
  };
}

const revenueOf = (stand: StandResult): number => stand.area_m2 * stand.yield_kg_per_m2 * stand.price_minor_per_kg;

function requireStand(path: string, stand: StandResult): void {
  requireRange(`${path}.area_m2`, stand.area_m2, 0, Infinity, 'm2');
  requireRange(`${path}.yield_kg_per_m2`, stand.yield_kg_per_m2, 0, Infinity, 'kg/m2');
  requireRange(`${path}.price_minor_per_kg`, stand.price_minor_per_kg, 0, Infinity, '');
}
