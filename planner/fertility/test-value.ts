import { type Fault, refuse, requireRange } from '../errors.ts';
import { ownValue } from '../own-value.ts';
import { convert } from '../units/convert.ts';

/** Units in which laboratories print nutrients. */
export const testUnits = ['mg/kg', 'ppm', 'lb/acre', 'kg/ha', 'meq/100g', 'mg/L', '%'] as const;
export type TestUnit = (typeof testUnits)[number];

/** Grams of an element for one mole of charge. Molar mass over valence. */
const GRAMS_PER_EQUIVALENT: Readonly<Record<string, number>> = { Ca: 20.04, Mg: 12.15, K: 39.1, Na: 22.99 };

export type TestValueInput = {
  readonly nutrient: string;
  readonly value: number;
  readonly unit: TestUnit;
  /** Depth of the sample and bulk density, wanted for values by area. */
  readonly depth_m: number;
  readonly bulkDensity_kg_per_m3: number;
};

/**
 * A laboratory's figure as mg/kg.
 *
 *   mg/kg, ppm, mg/L   as they are (mg/L of a saturated extract stays on its own scale)
 *   lb/acre, kg/ha     area mass / (density x depth)
 *   meq/100 g          x 10 x equivalent mass      Ca 20.04, Mg 12.15, K 39.10, Na 22.99 g
 *   %                  x 10,000
 *
 * Source: definitions. "Twice ppm is lb/acre" holds for a 2,000,000 lb slice only (6.67 in at 1.324 g/cm3).
 * @throws InputError for meq of an element without charge here
 */
export function testValue_mg_per_kg(input: TestValueInput): number {
  requireRange('value', input.value, 0, 1_000_000, input.unit);
  switch (input.unit) {
    case 'mg/kg':
    case 'ppm':
    case 'mg/L':
      return input.value;
    case '%':
      return input.value * 10_000;
    case 'meq/100g': {
      const mass = ownValue(GRAMS_PER_EQUIVALENT, input.nutrient);
      if (mass === undefined) refuse('unit', 'other-dimension', `unit: meq/100 g has no meaning for ${input.nutrient}.`);
      return input.value * 10 * mass;
    }
    case 'lb/acre':
    case 'kg/ha': {
      requireRange('depth_m', input.depth_m, 0.01, 2, 'm');
      requireRange('bulkDensity_kg_per_m3', input.bulkDensity_kg_per_m3, 50, 2200, 'kg/m³');
      const mass_kg_per_m2 = convert(input.value, input.unit === 'lb/acre' ? 'lb_per_acre' : 'kg_per_ha', 'kg_per_m2');
      return convert(mass_kg_per_m2 / (input.bulkDensity_kg_per_m3 * input.depth_m), 'kg', 'mg');
    }
  }
}

/**
 * Nutrient in the sampled layer under a square metre.
 *
 *   m = ppm x rho x D      g/m2 with rho in g/cm3 and D in m; here kg/m2 with rho in kg/m3 and ppm as mg/kg
 *
 * Source: definition. In a light mix twice the ppm overstates lb/acre about threefold.
 */
export function layerNutrient_kg_per_m2(value_mg_per_kg: number, bulkDensity_kg_per_m3: number, depth_m: number): number {
  requireRange('value_mg_per_kg', value_mg_per_kg, 0, 1_000_000, 'mg/kg');
  requireRange('bulkDensity_kg_per_m3', bulkDensity_kg_per_m3, 50, 2200, 'kg/m³');
  requireRange('depth_m', depth_m, 0, 2, 'm');
  return convert(value_mg_per_kg, 'mg', 'kg') * bulkDensity_kg_per_m3 * depth_m;
}

/** Above these a mineral soil hardly ever tests, mg/kg: common practice, no source. */
const UNLIKELY_ABOVE: Readonly<Record<string, number>> = {
  P: 600,
  K: 1500,
  Ca: 12_000,
  Mg: 2500,
  S: 600,
  Na: 3000,
  N: 400,
  NO3N: 400,
};

/**
 * A figure that looks as if it had been read in another unit: lb/acre typed as ppm, or a percentage as mg/kg.
 * @returns a warning to show at the field; the value is kept as entered
 */
export function unlikelyValue(nutrient: string, value_mg_per_kg: number, unit: TestUnit): Fault | null {
  const most = ownValue(UNLIKELY_ABOVE, nutrient);
  if (most !== undefined && value_mg_per_kg > most) {
    const guess = unit === 'ppm' || unit === 'mg/kg' ? ' Was the report in lb/acre? That is about twice the ppm.' : '';
    return {
      path: nutrient,
      code: 'unlikely-high',
      message: `${nutrient}: ${Math.round(value_mg_per_kg)} mg/kg is far above what soils test.${guess}`,
    };
  }
  const calciumLike = nutrient === 'Ca' || nutrient === 'K' || nutrient === 'Mg';
  if (calciumLike && value_mg_per_kg > 0 && value_mg_per_kg < 12 && unit !== 'meq/100g' && unit !== 'mg/L')
    return {
      path: nutrient,
      code: 'unlikely-low',
      message: `${nutrient}: ${value_mg_per_kg} mg/kg is far below what soils test. Was the report in meq/100 g?`,
    };
  return null;
}
