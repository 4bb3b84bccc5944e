import { requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';

/** How a material is kept: its base unit, and what tells its mass and volume from each other where that is known. */
export type KeptAs = {
  readonly baseUnit: string;
  /** Bulk density as handled. */
  readonly moistDensity_kg_per_m3: number | null;
  /** Weight of one piece, metre or square metre, where it is bought by these and its offer says it. */
  readonly piece_kg?: number | null;
};

/**
 * Kilograms in one base unit.
 *
 *   kg: 1      L: rho / 1000      by the piece: the weight of one
 *
 *   rho   bulk density as handled   kg/m3   more than 0
 *
 * `null` where the density or the weight of a piece is not known. Source: definition of density.
 * @throws InputError naming the density when it is not one
 */
export function kgPerBaseUnit({ baseUnit, moistDensity_kg_per_m3: density, piece_kg = null }: KeptAs): number | null {
  if (baseUnit === 'kg') return 1;
  if (baseUnit !== 'L') return piece_kg;
  return density === null ? null : convert(1, 'L', 'm3') * checked(density);
}

/**
 * Litres, loose, in one base unit.
 *
 *   L: 1      else kilograms in one / rho
 *
 * `null` where the density or the weight of a piece is not known. Source: definition of density.
 * @throws InputError naming the density when it is not one
 */
export function litresPerBaseUnit(kept: KeptAs): number | null {
  if (kept.baseUnit === 'L') return 1;
  const mass_kg = kgPerBaseUnit(kept);
  const density = kept.moistDensity_kg_per_m3;
  return mass_kg === null || density === null ? null : convert(mass_kg / checked(density), 'm3', 'L');
}

function checked(density: number): number {
  requireRange('moistDensity_kg_per_m3', density, 1, 25_000, 'kg/m3');
  return density;
}
