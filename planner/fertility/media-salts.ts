import { refuse, requirePositive, requireRange } from '../errors.ts';
import { classOf } from './between-rows.ts';
import type { SaltClasses, SoilTables } from './soil-tables.ts';

export const saltMethods = ['1:2', 'SME', 'pour-through'] as const;
export type SaltMethod = (typeof saltMethods)[number];

/**
 * Class of a medium's electrical conductivity, on the scale of the method that measured it. Figures of two methods are
 * never compared. Source: University of Massachusetts Extension, classes for soilless media.
 */
export function mediaSaltClass(table: SaltClasses, method: string, ec_dS_per_m: number): string {
  requireRange('ec_dS_per_m', ec_dS_per_m, 0, 60, 'dS/m');
  const known = saltMethods.find((each) => each.toLowerCase() === method.trim().toLowerCase());
  if (known === undefined) return refuse('method', 'unknown', `method: "${method}" is none of ${saltMethods.join(', ')}.`);
  return classOf(ec_dS_per_m, table.upper_bounds.classes, table.upper_bounds[known]);
}

/**
 * Largest share of a salty part in a blend, by volume.
 *
 *   f = (limit - base)/(part - base)      held to 0..1; EC of a blend is about the mean by volume
 *
 *   base, part, limit   EC dS/m by one method
 *
 * Source: linear mixing, an approximation; common practice.
 */
export function saltyPartShare(base_dS_per_m: number, part_dS_per_m: number, limit_dS_per_m: number): number {
  requireRange('base_dS_per_m', base_dS_per_m, 0, 60, 'dS/m');
  requireRange('part_dS_per_m', part_dS_per_m, 0, 60, 'dS/m');
  requirePositive('limit_dS_per_m', limit_dS_per_m, 'dS/m');
  if (part_dS_per_m <= limit_dS_per_m && base_dS_per_m <= limit_dS_per_m) return 1;
  if (base_dS_per_m >= limit_dS_per_m) return 0;
  return (limit_dS_per_m - base_dS_per_m) / (part_dS_per_m - base_dS_per_m);
}

/** Milligrams of an ion for a milliequivalent. */
const MG_PER_MEQ = { sodium: 22.99, calcium: 20.04, magnesium: 12.15 } as const;

/**
 * Sodium adsorption ratio.
 *
 *   SAR = Na / sqrt((Ca + Mg)/2)      all in meq/L
 *
 * The half belongs to the sum, not to the root: one turf booklet prints 20.6 for 14.4.
 * Source: USDA Handbook 60, definition.
 */
export function sodiumAdsorption(ions: {
  readonly sodium_meq_per_L: number;
  readonly calcium_meq_per_L: number;
  readonly magnesium_meq_per_L: number;
}): number {
  requireRange('sodium_meq_per_L', ions.sodium_meq_per_L, 0, 2000, 'meq/L');
  requireRange('calcium_meq_per_L', ions.calcium_meq_per_L, 0, 2000, 'meq/L');
  requireRange('magnesium_meq_per_L', ions.magnesium_meq_per_L, 0, 2000, 'meq/L');
  const hardness = ions.calcium_meq_per_L + ions.magnesium_meq_per_L;
  requirePositive('calcium_meq_per_L', hardness, 'meq/L');
  return ions.sodium_meq_per_L / Math.sqrt(hardness / 2);
}

/** Milliequivalents from milligrams in a litre. */
export function milliequivalents(ions: {
  readonly sodium_mg_per_L: number;
  readonly calcium_mg_per_L: number;
  readonly magnesium_mg_per_L: number;
}) {
  return {
    sodium_meq_per_L: ions.sodium_mg_per_L / MG_PER_MEQ.sodium,
    calcium_meq_per_L: ions.calcium_mg_per_L / MG_PER_MEQ.calcium,
    magnesium_meq_per_L: ions.magnesium_mg_per_L / MG_PER_MEQ.magnesium,
  };
}

/** Class of a sodium adsorption ratio. Source: turf water-quality booklet; USDA Handbook 60 puts the last limit at 26. */
export function sodiumClass(table: SoilTables['sar_classes'], sar: number): string {
  requireRange('sar', sar, 0, 500, '');
  return classOf(sar, table.upper_bounds.classes, table.upper_bounds.sar);
}
