import { MINERAL_PARTICLES_KG_PER_M3, massOf_kg, porosity, WATER_KG_PER_M3 } from '../beds/density.ts';
import { requirePositive, requireRange } from '../errors.ts';
import { computed, library, type Working } from '../working.ts';

/** One layer as placed and as it lies once settled, with the densities of the loose material. */
export type WeighedLayer = {
  readonly name?: string;
  readonly loose_L: number;
  readonly settled_L: number;
  readonly dryDensity_kg_per_m3: number;
  /** As handled; the dry density where it is not known. */
  readonly moistDensity_kg_per_m3?: number;
  /** Share of the settled volume that water can fill; from the dry density and mineral solids where not known. */
  readonly porosityShare?: number;
};

export type BedWeight = { readonly dry_kg: number; readonly moist_kg: number; readonly saturated_kg: number };

/**
 * What the fill of a bed weighs dry, moist as handled and full of water.
 *
 *   dry        sum V_l rho_dry;   moist  sum V_l rho_moist
 *   saturated  dry + 1000 sum n V_s;   n = 1 - (rho_dry V_l/V_s)/2650 where the pores are not known
 *
 *   V_l, V_s   loose and settled volume of a layer       m3
 *   rho        density of the loose material             kg/m3
 *   n          pores of the settled layer                -
 *
 * Mass stays when a layer settles; its pores shrink. Taking all solids as mineral gives the most pore water and so errs to
 * the heavy side for peat and bark.
 * Source: definitions; particle densities in the form of EN 13041 (memory).
 * @throws InputError naming the layer
 */
export function bedWeight(layers: readonly WeighedLayer[]): BedWeight {
  let dry_kg = 0;
  let moist_kg = 0;
  let water_kg = 0;
  layers.forEach((layer, at) => {
    requireRange(`layers.${at}.loose_L`, layer.loose_L, 0, 1e9, 'L');
    requireRange(`layers.${at}.settled_L`, layer.settled_L, 0, 1e9, 'L');
    requirePositive(`layers.${at}.dryDensity_kg_per_m3`, layer.dryDensity_kg_per_m3, 'kg/m3');
    dry_kg += massOf_kg(layer.loose_L, layer.dryDensity_kg_per_m3);
    moist_kg += massOf_kg(layer.loose_L, Math.max(layer.moistDensity_kg_per_m3 ?? 0, layer.dryDensity_kg_per_m3));
    water_kg += massOf_kg(layer.settled_L, WATER_KG_PER_M3 * poresOf(layer));
  });
  return { dry_kg, moist_kg, saturated_kg: Math.max(moist_kg, dry_kg + water_kg) };
}

/** Share of a settled layer that water can fill. */
export function poresOf(layer: WeighedLayer): number {
  if (layer.settled_L === 0) return 0;
  const settledDry_kg_per_m3 = (layer.dryDensity_kg_per_m3 * layer.loose_L) / layer.settled_L;
  const most = porosity(Math.min(settledDry_kg_per_m3, MINERAL_PARTICLES_KG_PER_M3));
  return layer.porosityShare === undefined ? most : Math.min(layer.porosityShare, most);
}

/** Density of a settled layer when full of water, for the load on a floor. */
export function saturatedDensity_kg_per_m3(layer: WeighedLayer): number {
  if (layer.settled_L === 0) return layer.dryDensity_kg_per_m3;
  return (layer.dryDensity_kg_per_m3 * layer.loose_L) / layer.settled_L + WATER_KG_PER_M3 * poresOf(layer);
}

export function explainBedWeight(layers: readonly WeighedLayer[]): Working {
  const weight = bedWeight(layers);
  const result = { value: weight.saturated_kg, unit: 'kg' };
  return {
    title: 'Weight of the fill, full of water',
    formula: 'M = Σ V_l ρ_dry + 1000 Σ n V_s',
    symbols: layers.flatMap((layer, at) => [
      {
        symbol: `V${at + 1}`,
        name: `${layer.name ?? `layer ${at + 1}`}, loose`,
        figure: { value: layer.loose_L, unit: 'bulk_L' },
        origin: computed('the fill recipe'),
      },
      {
        symbol: `ρ${at + 1}`,
        name: 'its dry density',
        figure: { value: layer.dryDensity_kg_per_m3, unit: 'kg_per_m3' },
        origin: library('the material library'),
      },
      {
        symbol: `n${at + 1}`,
        name: 'its pores once settled',
        figure: { value: poresOf(layer), unit: 'share' },
        origin: computed('dry density and mineral solids of 2650 kg/m³, or the library'),
      },
    ]),
    steps: [
      { text: 'Dry', figures: '', result: { value: weight.dry_kg, unit: 'kg' } },
      { text: 'Moist, as handled', figures: '', result: { value: weight.moist_kg, unit: 'kg' } },
      { text: 'Full of water', figures: '', result },
    ],
    sources: ['Definitions; particle densities in the form of EN 13041 (memory)'],
    notes: ['Where the pores of a material are not known they are taken high: the weight errs to the heavy side.'],
    result,
  };
}
