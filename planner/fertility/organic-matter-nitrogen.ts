import { requireRange } from '../errors.ts';

/** Organic matter holds about 5 % N, of which 1 to 4 % comes free in a year; 2 % gives the rule of 20 lb/acre for each percent. */
export const ORGANIC_MATTER_N_SHARE = 0.05;
export const ORGANIC_MATTER_RELEASE_SHARE = 0.02;

export type OrganicMatterNitrogenInput = {
  readonly organicMatterShare: number;
  /** Mass of the layer, density times depth. */
  readonly soil_kg_per_m2: number;
  readonly nShareOfOrganicMatter: number;
  readonly releasedShare: number;
};

/**
 * Nitrogen freed from soil organic matter in a year.
 *
 *   N held = OM x soil mass x n      N freed = N held x r
 *
 *   OM   organic matter            share  0 to 1
 *   n    nitrogen in it            share  about 0.05
 *   r    freed in a year           share  0.01 to 0.04; 0.02 gives 20 lb/acre for each percent of OM
 *
 * For field soils; in a potting or raised-bed mix take none until a test says otherwise.
 * Source: rule of thumb of extension services, from memory.
 */
export function organicMatterNitrogen(input: OrganicMatterNitrogenInput): {
  readonly held_kg_per_m2: number;
  readonly released_kg_per_m2: number;
} {
  requireRange('organicMatterShare', input.organicMatterShare, 0, 1, '');
  requireRange('soil_kg_per_m2', input.soil_kg_per_m2, 0, 3000, 'kg/m²');
  requireRange('nShareOfOrganicMatter', input.nShareOfOrganicMatter, 0, 0.2, '');
  requireRange('releasedShare', input.releasedShare, 0, 0.2, '');
  const held_kg_per_m2 = input.organicMatterShare * input.soil_kg_per_m2 * input.nShareOfOrganicMatter;
  return { held_kg_per_m2, released_kg_per_m2: held_kg_per_m2 * input.releasedShare };
}
