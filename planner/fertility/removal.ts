import { refuse, requirePositive, requireRange } from '../errors.ts';
import { K2O_PER_K, P2O5_PER_P } from './nutrients.ts';
import type { RemovalRow } from './soil-tables.ts';

/** Share of protein that is nitrogen, inverted; 6.25 for plants in general. */
export const PROTEIN_PER_NITROGEN = 6.25;

/** Nutrients in a kilogram of the harvested part, share of fresh mass. */
export type HarvestedPart = { readonly nShare: number; readonly p2o5Share: number; readonly k2oShare: number };

/**
 * Nutrients in a harvested part, from food composition.
 *
 *   N = protein/6.25      P2O5 = 2.2914 P      K2O = 1.2046 K      as shares of fresh mass
 *
 *   protein   g per 100 g    0 to 60
 *   P, K      mg per 100 g   0 to 5,000
 *
 * It is the edible part: add what is thrown away where the yield was weighed with husks, pods or rind.
 * Source: USDA National Nutrient Database for Standard Reference, release 26 (2013).
 */
export function harvestedPart(input: {
  readonly protein_g_per_100g: number;
  readonly phosphorus_mg_per_100g: number;
  readonly potassium_mg_per_100g: number;
  readonly proteinPerNitrogen?: number;
}): HarvestedPart {
  requireRange('protein_g_per_100g', input.protein_g_per_100g, 0, 60, 'g/100 g');
  requireRange('phosphorus_mg_per_100g', input.phosphorus_mg_per_100g, 0, 5000, 'mg/100 g');
  requireRange('potassium_mg_per_100g', input.potassium_mg_per_100g, 0, 8000, 'mg/100 g');
  const perNitrogen = input.proteinPerNitrogen ?? PROTEIN_PER_NITROGEN;
  requireRange('proteinPerNitrogen', perNitrogen, 4, 8, '');
  return {
    nShare: input.protein_g_per_100g / perNitrogen / 100,
    p2o5Share: (input.phosphorus_mg_per_100g * P2O5_PER_P) / 100_000,
    k2oShare: (input.potassium_mg_per_100g * K2O_PER_K) / 100_000,
  };
}

/** The composition of a crop's harvested part, by its name in the table or its key in the crop library. @throws InputError */
export function harvestedPartOf(rows: readonly RemovalRow[], crop: string): HarvestedPart {
  const row = rows.find((each) => each.crop === crop || each.crops_csv_id === crop);
  if (row === undefined) return refuse('crop', 'unknown', `crop: nothing is known of what "${crop}" removes.`);
  return harvestedPart({
    protein_g_per_100g: row.protein_g_per_100g,
    phosphorus_mg_per_100g: row.P_mg_per_100g,
    potassium_mg_per_100g: row.K_mg_per_100g,
  });
}

export type Removal = { readonly n_kg: number; readonly p2o5_kg: number; readonly k2o_kg: number };

/** What a harvest takes away: mass of the harvest times the shares of its part, kg. */
export function harvestRemoval(part: HarvestedPart, harvest_kg: number): Removal {
  requireRange('harvest_kg', harvest_kg, 0, Infinity, 'kg');
  return { n_kg: part.nShare * harvest_kg, p2o5_kg: part.p2o5Share * harvest_kg, k2o_kg: part.k2oShare * harvest_kg };
}

/**
 * Nutrient in a part that leaves the field, from dry matter: mass x dry matter share x nutrient share of dry matter.
 * Source: Cornell, certified crop adviser study resources, nutrient management PO 59.
 */
export function dryMatterRemoval_kg(harvest_kg: number, dryMatterShare: number, nutrientShareOfDry: number): number {
  requireRange('harvest_kg', harvest_kg, 0, Infinity, 'kg');
  requireRange('dryMatterShare', dryMatterShare, 0, 1, '');
  requireRange('nutrientShareOfDry', nutrientShareOfDry, 0, 1, '');
  return harvest_kg * dryMatterShare * nutrientShareOfDry;
}

/**
 * Nutrient in a part that leaves the field, by unit yield: units x nutrient in a unit x share of the part taken away.
 * Source: International Plant Nutrition Institute, Plant Nutrition Today, Fall 2008 no. 4.
 */
export function unitRemoval_kg(units: number, each_kg: number, takenShare: number): number {
  requireRange('units', units, 0, Infinity, '');
  requireRange('each_kg', each_kg, 0, Infinity, 'kg');
  requireRange('takenShare', takenShare, 0, 1, '');
  return units * each_kg * takenShare;
}

/** Nutrient in one unit of yield: what went away over the yield, to compare seasons of unlike yield. */
export function removalByUnit_kg(removed_kg: number, units: number): number {
  requireRange('removed_kg', removed_kg, 0, Infinity, 'kg');
  requirePositive('units', units, '');
  return removed_kg / units;
}
