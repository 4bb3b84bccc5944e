import { refuse, requireRange } from '../errors.ts';
import { ownValue } from '../own-value.ts';
import { L_PER_US_BUSHEL, L_PER_US_DRY_QUART } from '../units/constants.ts';
import { units } from '../units/convert.ts';

/** A unit of sale of one commodity with its net weight and where that weight holds. */
export type SaleUnit = {
  readonly commodity: string;
  readonly form: string;
  readonly unit: string;
  readonly net_kg: number;
  /** The law, custom or weighing it comes from: the same bushel weighs otherwise in another place. */
  readonly source: string;
};

/** Dry measure, exact: a peck is a quarter, a dry quart a 32nd, a dry pint a 64th of the bushel. Source: NIST Handbook 44, App. C. */
export const dryMeasure_L = {
  bushel: L_PER_US_BUSHEL,
  peck: L_PER_US_BUSHEL / 4,
  dryQuart: L_PER_US_DRY_QUART,
  dryPint: L_PER_US_BUSHEL / 64,
  /** The common produce carton of 1 1/9 bushel. */
  carton: (L_PER_US_BUSHEL * 10) / 9,
} as const;

/** The parts of a bushel for another bushel than the US one. @throws InputError naming the field */
export function dryMeasuresOf_L(bushel_L: number): Readonly<Record<keyof typeof dryMeasure_L, number>> {
  requireRange('bushel_L', bushel_L, 0, Infinity, 'L');
  return {
    bushel: bushel_L,
    peck: bushel_L / 4,
    dryQuart: bushel_L / 32,
    dryPint: bushel_L / 64,
    carton: (bushel_L * 10) / 9,
  };
}

/**
 * Net weight of an amount in a unit of sale: `amount x net weight of one`.
 * @throws InputError when the weight of the unit is not known
 */
export function netWeight_kg(amount: number, net_kg_per_unit: number | null, unit: string): number {
  requireRange('amount', amount, -Infinity, Infinity, '');
  if (net_kg_per_unit === null)
    return refuse(
      'unit',
      'no-weight',
      `The weight of one ${unit} is not known. Weigh some and enter the mean in the units of sale.`,
    );
  return amount * net_kg_per_unit;
}

/** Units that are weights themselves: the same for every crop. */
const weights_kg: Readonly<Record<string, number>> = {
  kg: units.kg.factor,
  g: units.g.factor,
  lb: units.lb.factor,
  oz: units.oz.factor,
  t: units.t.factor,
};

/**
 * Net weight of one unit for a crop: a weight unit by itself, else the grower's own, else a listed one; empty if unknown.
 * Own entries for the crop come before those for any crop.
 */
export function netOfUnit_kg(
  unit: string,
  cropId: string,
  own: readonly { readonly cropId: string | null; readonly unit: string; readonly net_kg: number }[],
): number | null {
  const weight = ownValue(weights_kg, unit);
  if (weight !== undefined) return weight;
  const named = own.filter((each) => each.unit === unit);
  return (named.find((each) => each.cropId === cropId) ?? named.find((each) => each.cropId === null))?.net_kg ?? null;
}

/** True for units that are weights, volumes aside. */
export const isWeightUnit = (unit: string): boolean => ownValue(weights_kg, unit) !== undefined;

/** Mean weight of a unit from the farm's own weighing, with the number weighed. @throws InputError on nothing weighed */
export function weighedUnit(weights: readonly number[]): { readonly net_kg: number; readonly weighed: number } {
  if (weights.length === 0) refuse('weights', 'empty', 'Weigh at least one.');
  weights.forEach((each, at) => {
    requireRange(`weights.${at}`, each, 0, Infinity, 'kg');
  });
  return { net_kg: weights.reduce((sum, each) => sum + each, 0) / weights.length, weighed: weights.length };
}
