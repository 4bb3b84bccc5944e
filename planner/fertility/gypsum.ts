import { requirePositive, requireRange } from '../errors.ts';

/**
 * Exchangeable sodium to be replaced: CEC (ESP now - ESP goal), meq/100 g; shares 0 to 1. Definition.
 */
export function sodiumToReplace_meq_per_100g(cec_meq_per_100g: number, espNowShare: number, espGoalShare: number): number {
  requireRange('cec_meq_per_100g', cec_meq_per_100g, 0, 200, 'meq/100 g');
  requireRange('espNowShare', espNowShare, 0, 1, '');
  requireRange('espGoalShare', espGoalShare, 0, 1, '');
  return Math.max(0, cec_meq_per_100g * (espNowShare - espGoalShare));
}

/**
 * Gypsum to replace exchangeable sodium, by the textbook rate for each meq and 30 cm of depth.
 *
 *   G = g30 x Na x D/0.30 x F
 *
 *   g30  gypsum for 1 meq/100 g over 30 cm   kg/m2   0.385 (3.85 t/ha)
 *   Na   sodium to replace                   meq/100 g
 *   D    depth                               m
 *   F    field allowance                     -       1 to 1.5, commonly 1.25
 *
 * It does not raise pH. Source: Ali, Practices of Irrigation and On-farm Water Management, Example 8.7.
 */
export function gypsumByMeq_kg_per_m2(input: {
  readonly sodium_meq_per_100g: number;
  readonly depth_m: number;
  readonly perMeq30cm_kg_per_m2: number;
  readonly allowance: number;
}): number {
  requireRange('sodium_meq_per_100g', input.sodium_meq_per_100g, 0, 200, 'meq/100 g');
  requireRange('depth_m', input.depth_m, 0, 2, 'm');
  requireRange('allowance', input.allowance, 1, 1.5, '');
  return (input.perMeq30cm_kg_per_m2 * input.sodium_meq_per_100g * input.depth_m * input.allowance) / 0.3;
}

/**
 * Gypsum requirement from density.
 *
 *   G = 8.6 F D rho CEC (ESP now - ESP goal)/purity      t/ha with ESP and purity in percent; here kg/m2
 *
 *   F    efficiency factor   -        1.1 to 1.3
 *   D    depth               m
 *   rho  bulk density        Mg/m3    0.2 to 2
 *   CEC  exchange capacity   cmolc/kg
 *
 * Source: North Dakota State University gypsum worksheet, after Oster et al. 1999.
 */
export function gypsumByDensity_kg_per_m2(input: {
  readonly factor: number;
  readonly depth_m: number;
  readonly bulkDensity_kg_per_m3: number;
  readonly cec_meq_per_100g: number;
  readonly espNowShare: number;
  readonly espGoalShare: number;
  readonly purityShare: number;
}): number {
  requirePositive('purityShare', input.purityShare, '');
  requireRange('depth_m', input.depth_m, 0, 2, 'm');
  requireRange('bulkDensity_kg_per_m3', input.bulkDensity_kg_per_m3, 50, 2200, 'kg/m³');
  const sodium = sodiumToReplace_meq_per_100g(input.cec_meq_per_100g, input.espNowShare, input.espGoalShare);
  // 8.6 t/ha is 0.86 kg/m2; density in Mg/m3 is kg/m3 over 1000
  return (0.86 * input.factor * input.depth_m * input.bulkDensity_kg_per_m3 * sodium) / (1000 * input.purityShare);
}
