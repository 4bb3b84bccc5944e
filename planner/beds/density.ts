import { requirePositive, requireRange } from '../errors.ts';

/** Density of water as used with water contents by volume. */
export const WATER_KG_PER_M3 = 1000;
/** Density of the solids alone. Source: form of EN 13041 (memory). */
export const MINERAL_PARTICLES_KG_PER_M3 = 2650;
export const ORGANIC_PARTICLES_KG_PER_M3 = 1550;

/**
 * Density of a medium with a share of its volume filled with water: at container capacity, saturated, or between.
 *
 *   rho = rho_dry + 1000 theta
 *
 *   rho_dry   dry bulk density            kg/m3   0 to 2600
 *   theta     water by volume             -       0 to 1
 *
 * Source: definition; checked with peat at container capacity (Int. J. Agronomy 2012, 978528, Table 1).
 * @throws InputError naming the field
 */
export function wetDensity_kg_per_m3(dry_kg_per_m3: number, waterShare: number): number {
  requireRange('dry_kg_per_m3', dry_kg_per_m3, 0, 2600, 'kg/m3');
  requireRange('waterShare', waterShare, 0, 1, '');
  return dry_kg_per_m3 + WATER_KG_PER_M3 * waterShare;
}

/** Moist density from moisture by mass of the moist material: rho_dry/(1 - m), m below 1. @throws InputError */
export function moistDensity_kg_per_m3(dry_kg_per_m3: number, moistureShare: number): number {
  requirePositive('dry_kg_per_m3', dry_kg_per_m3, 'kg/m3');
  requireRange('moistureShare', moistureShare, 0, 0.98, '');
  return dry_kg_per_m3 / (1 - moistureShare);
}

/** Pore share of a medium: 1 - dry density/particle density. @throws InputError when denser than its own solids */
export function porosity(dry_kg_per_m3: number, particle_kg_per_m3 = MINERAL_PARTICLES_KG_PER_M3): number {
  requirePositive('particle_kg_per_m3', particle_kg_per_m3, 'kg/m3');
  requireRange('dry_kg_per_m3', dry_kg_per_m3, 0, particle_kg_per_m3, 'kg/m3');
  return 1 - dry_kg_per_m3 / particle_kg_per_m3;
}

/** Total porosity is air space and container capacity together. @throws InputError when they pass 1 */
export function totalPorosity(airShare: number, capacityShare: number): number {
  requireRange('airShare', airShare, 0, 1, '');
  requireRange('capacityShare', capacityShare, 0, 1 - airShare + 1e-9, '');
  return airShare + capacityShare;
}

/** Particle density of a mix by its share of organic matter by mass: 1/rho = f/1550 + (1 - f)/2650. */
export function particleDensity_kg_per_m3(organicShare: number): number {
  requireRange('organicShare', organicShare, 0, 1, '');
  return 1 / (organicShare / ORGANIC_PARTICLES_KG_PER_M3 + (1 - organicShare) / MINERAL_PARTICLES_KG_PER_M3);
}

/** Density from what a measured volume weighs, net: the grower's own bucket weighing. @throws InputError */
export function weighedDensity_kg_per_m3(net_kg: number, volume_L: number): number {
  requirePositive('net_kg', net_kg, 'kg');
  requirePositive('volume_L', volume_L, 'L');
  return (net_kg / volume_L) * WATER_KG_PER_M3;
}

/**
 * Bulk density of a slice of ground from its mass over an area: rho = m/d.
 *
 *   m   mass of the slice    kg/m2
 *   d   depth                m
 *
 * Two million pounds an acre at 6.67 in is 1.324 g/cm3 (a convention of soil reports).
 * @throws InputError naming the field
 */
export function sliceDensity_kg_per_m3(mass_kg_per_m2: number, depth_m: number): number {
  requirePositive('mass_kg_per_m2', mass_kg_per_m2, 'kg/m2');
  requirePositive('depth_m', depth_m, 'm');
  return mass_kg_per_m2 / depth_m;
}

/** Mass of a volume: L times kg/m3, in kg. */
export function massOf_kg(volume_L: number, density_kg_per_m3: number): number {
  return (volume_L * density_kg_per_m3) / WATER_KG_PER_M3;
}
