import { requireRange } from '../errors.ts';

/** Nutrients as they stand on labels: P and K as oxides, the rest as elements. */
export const nutrientNames = ['N', 'P2O5', 'K2O', 'Ca', 'Mg', 'S'] as const;
export type Nutrient = (typeof nutrientNames)[number];

/** An amount of each nutrient, kg. */
export type NutrientMasses = Readonly<Record<Nutrient, number>>;

export const noNutrients: NutrientMasses = { N: 0, P2O5: 0, K2O: 0, Ca: 0, Mg: 0, S: 0 };

/** Molar masses 141.943/(2 x 30.974) and 94.195/(2 x 39.098); the trade rounds to 2.29 and 1.20. */
export const P2O5_PER_P = 2.2914;
export const K2O_PER_K = 1.2046;

/**
 * Mass of phosphorus as the oxide of labels.
 *
 *   P2O5 = 2.2914 P
 *
 *   P     elemental phosphorus    kg   0 or more
 *   P2O5  the same as its oxide   kg
 *
 * Source: molar masses.
 */
export function phosphate_kg(phosphorus_kg: number): number {
  requireRange('phosphorus_kg', phosphorus_kg, 0, Infinity, 'kg');
  return phosphorus_kg * P2O5_PER_P;
}

/**
 * Mass of potassium as the oxide of labels: K2O = 1.2046 K, kg from kg. Source: molar masses.
 */
export function potash_kg(potassium_kg: number): number {
  requireRange('potassium_kg', potassium_kg, 0, Infinity, 'kg');
  return potassium_kg * K2O_PER_K;
}

export function addNutrients(a: NutrientMasses, b: NutrientMasses): NutrientMasses {
  return mapNutrients((name) => a[name] + b[name]);
}

export function mapNutrients(of: (name: Nutrient) => number): NutrientMasses {
  return { N: of('N'), P2O5: of('P2O5'), K2O: of('K2O'), Ca: of('Ca'), Mg: of('Mg'), S: of('S') };
}
