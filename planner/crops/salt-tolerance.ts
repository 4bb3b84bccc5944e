import { requireRange } from '../errors.ts';

export type SaltInput = {
  /** Of the saturation extract of the root zone. */
  readonly ece_dS_per_m: number;
  readonly threshold_dS_per_m: number;
  readonly slope_share_per_dS_per_m: number;
};

/**
 * Yield that salt leaves, as a share of the yield without.
 *
 *   Y = 1 - b (ECe - a), held between 0 and 1
 *
 *   ECe   salinity of the saturation extract   dS/m         0 to 50
 *   a     threshold of the crop                dS/m         0 to 20
 *   b     loss for each dS/m beyond            1/(dS/m)     0 to 1
 *
 * Thresholds differ between editions; young plants bear less.
 * Source: Maas & Hoffman, in FAO Irrigation and Drainage Paper 61, annex 1; tables of the US Salinity Laboratory, Maas 1990.
 * @throws InputError naming the field
 */
export function relativeYield_share(input: SaltInput): number {
  requireRange('ece_dS_per_m', input.ece_dS_per_m, 0, 50, 'dS/m');
  requireRange('threshold_dS_per_m', input.threshold_dS_per_m, 0, 20, 'dS/m');
  requireRange('slope_share_per_dS_per_m', input.slope_share_per_dS_per_m, 0, 1, '1/(dS/m)');
  const beyond = Math.max(0, input.ece_dS_per_m - input.threshold_dS_per_m);
  return Math.min(1, Math.max(0, 1 - input.slope_share_per_dS_per_m * beyond));
}
