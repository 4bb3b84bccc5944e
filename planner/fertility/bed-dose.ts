import { requirePositive, requireRange } from '../errors.ts';

/**
 * Mass for a bed from a rate by area, corrected for depth where the rate is for another depth.
 *
 *   m = rate x area x depth/table depth      kg
 *
 * Source: definition.
 */
export function bedDose_kg(rate_kg_per_m2: number, area_m2: number, depthRatio = 1): number {
  requireRange('rate_kg_per_m2', rate_kg_per_m2, 0, 100, 'kg/m²');
  requireRange('area_m2', area_m2, 0, 1_000_000, 'm²');
  requireRange('depthRatio', depthRatio, 0, 10, '');
  return rate_kg_per_m2 * area_m2 * depthRatio;
}

/** Volume of a loose material, L: mass over bulk density. */
export function looseVolume_L(mass_kg: number, density_kg_per_m3: number): number {
  requireRange('mass_kg', mass_kg, 0, Infinity, 'kg');
  requirePositive('density_kg_per_m3', density_kg_per_m3, 'kg/m³');
  return (1000 * mass_kg) / density_kg_per_m3;
}

export type Scoops = {
  readonly scoops: number;
  readonly given_kg: number;
  /** How far the whole scoops miss the wanted mass, share of it; above 0 is too much. */
  readonly missShare: number;
};

/**
 * Whole measures for a wanted mass, rounded up where the mass is a minimum (`up`), else to the nearest.
 * @param step the finest part of a measure the grower reads, 1, 1/2 or 1/4
 */
export function wholeScoops(mass_kg: number, scoop_kg: number, rounding: 'up' | 'nearest', step = 1): Scoops {
  requireRange('mass_kg', mass_kg, 0, Infinity, 'kg');
  requirePositive('scoop_kg', scoop_kg, 'kg');
  requireRange('step', step, 0.05, 1, '');
  const exact = mass_kg / (scoop_kg * step);
  const steps = rounding === 'up' ? Math.max(0, Math.ceil(exact - 1e-9)) : Math.round(exact);
  const given_kg = steps * step * scoop_kg;
  return { scoops: steps * step, given_kg, missShare: mass_kg === 0 ? 0 : given_kg / mass_kg - 1 };
}
