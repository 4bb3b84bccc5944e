import { requireRange } from '../errors.ts';
import { computed, source, type Working } from '../working.ts';

/** Protein holds 16 % nitrogen. Source: USDA National Nutrient Database (the general factor). */
const PROTEIN_PER_N = 6.25;
/** P2O5 over 2 P, and K2O over 2 K, by atomic mass, digits as agronomy prints them. */
const P2O5_PER_P = 2.2914;
const K2O_PER_K = 1.2046;

export type CompositionInput = {
  readonly protein_kg_per_kg: number;
  readonly phosphorus_kg_per_kg: number;
  readonly potassium_kg_per_kg: number;
};

export type Removal = {
  readonly n_kg_per_kg: number;
  readonly p2o5_kg_per_kg: number;
  readonly k2o_kg_per_kg: number;
};

/**
 * Nutrients that a kilogram of fresh produce takes from the bed, from a food composition table.
 *
 *   N = protein / 6.25      P2O5 = 2.2914 P      K2O = 1.2046 K
 *
 *   protein, P, K   in the fresh edible part   kg/kg   0 to 1
 *
 * Counts only what is eaten: husks, tops and outer leaves leave the bed too when they are sold or composted elsewhere.
 * Source: USDA National Nutrient Database for Standard Reference, release 27 (2014); conversion factors by definition.
 * @throws InputError naming the field
 */
export function removalOf(input: CompositionInput): Removal {
  requireRange('protein_kg_per_kg', input.protein_kg_per_kg, 0, 1, 'kg/kg');
  requireRange('phosphorus_kg_per_kg', input.phosphorus_kg_per_kg, 0, 1, 'kg/kg');
  requireRange('potassium_kg_per_kg', input.potassium_kg_per_kg, 0, 1, 'kg/kg');
  return {
    n_kg_per_kg: input.protein_kg_per_kg / PROTEIN_PER_N,
    p2o5_kg_per_kg: input.phosphorus_kg_per_kg * P2O5_PER_P,
    k2o_kg_per_kg: input.potassium_kg_per_kg * K2O_PER_K,
  };
}

export function explainNitrogenRemoval(input: CompositionInput): Working {
  const result = { value: removalOf(input).n_kg_per_kg, unit: 'kg_per_kg' };
  return {
    title: 'Nitrogen taken away',
    formula: 'N = protein / 6.25',
    symbols: [
      {
        symbol: 'protein',
        name: 'protein of the fresh edible part',
        figure: { value: input.protein_kg_per_kg, unit: 'kg_per_kg' },
        origin: source('USDA National Nutrient Database for Standard Reference, release 27 (2014)'),
      },
      { symbol: 'N', name: 'nitrogen', figure: result, origin: computed() },
    ],
    steps: [{ text: 'Nitrogen in the protein', figures: `${input.protein_kg_per_kg} / 6.25`, result }],
    result,
    sources: ['USDA National Nutrient Database for Standard Reference, release 27 (2014)'],
    notes: ['Counts only what is eaten; husks, tops and outer leaves come on top when they leave the bed.'],
  };
}
