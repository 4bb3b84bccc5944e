import { refuse, requirePositive, requireRange } from '../errors.ts';
import { computed, entry, source, type Working } from '../working.ts';

/** Dissolved salts per conductivity, mg/L per dS/m. Source: FAO Irrigation and Drainage Paper 29, to 5 dS/m. */
const MG_PER_L_PER_DS_PER_M = 640;
/** Soil extract to water, at 15 to 20 % leaching: ECe = 1.5 ECw. Source: FAO-29 section 2.4 (from memory). */
export const EXTRACT_TO_WATER = 1.5;

export type SaltTolerance = {
  /** Salinity of the soil extract up to which the crop does not mind. */
  readonly threshold_dS_per_m: number;
  /** Share of the yield lost for each dS/m above it. */
  readonly slope_share_per_dS_per_m: number;
};

/** Share of the full yield in soil of that salinity, `1 - b (ECe - threshold)`. Source: FAO-56 eq. 89; Maas & Hoffman. */
export function yieldInSalt(tolerance: SaltTolerance, ece_dS_per_m: number): number {
  requireRange('ece_dS_per_m', ece_dS_per_m, 0, 100, 'dS/m');
  const over = ece_dS_per_m - tolerance.threshold_dS_per_m;
  return over <= 0 ? 1 : Math.max(0, 1 - tolerance.slope_share_per_dS_per_m * over);
}

/** Salinity of the soil extract at which a crop still gives that share of its yield. Source: FAO-29 Table 4, inverse of eq. 89. */
export function saltForYield_dS_per_m(tolerance: SaltTolerance, share: number): number {
  requireRange('share', share, 0, 1, '');
  requirePositive('slope_share_per_dS_per_m', tolerance.slope_share_per_dS_per_m, '');
  return tolerance.threshold_dS_per_m + (1 - share) / tolerance.slope_share_per_dS_per_m;
}

/** Water that keeps the soil extract there at usual leaching, `ECe/1.5`. Source: FAO-29 section 2.4. */
export const waterForExtract_dS_per_m = (ece_dS_per_m: number): number => ece_dS_per_m / EXTRACT_TO_WATER;

/** Stress by salt and drought together: `[1 - b (ECe - thr)/Ky] Ks`. Source: FAO-56 eq. 92. */
export function saltAndDroughtStress(input: {
  readonly tolerance: SaltTolerance;
  readonly ece_dS_per_m: number;
  readonly ky: number;
  readonly ks: number;
}): number {
  requirePositive('ky', input.ky, '');
  const lost = 1 - yieldInSalt(input.tolerance, input.ece_dS_per_m);
  return Math.max(0, 1 - lost / input.ky) * input.ks;
}

export type LeachingInput = { readonly ecw_dS_per_m: number; readonly ece_dS_per_m: number };

/**
 * Share of the water that must drain through so that salts do not build up.
 *
 *   LR = ECw / (5 ECe - ECw)
 *
 *   ECw   conductivity of the irrigation water                dS/m
 *   ECe   of the soil extract that the crop is to bear        dS/m
 *
 * Source: FAO-29 section 2.4 (Rhoades). The water may be too salty for any leaching to do.
 * @throws InputError when no share below 1 would do
 */
export function leachingShare({ ecw_dS_per_m, ece_dS_per_m }: LeachingInput): number {
  requireRange('ecw_dS_per_m', ecw_dS_per_m, 0, 50, 'dS/m');
  requirePositive('ece_dS_per_m', ece_dS_per_m, 'dS/m');
  const under = 5 * ece_dS_per_m - ecw_dS_per_m;
  const share = under <= 0 ? Number.POSITIVE_INFINITY : ecw_dS_per_m / under;
  if (share >= 1)
    refuse(
      'ecw_dS_per_m',
      'too-salty',
      `Water of ${ecw_dS_per_m} dS/m is too salty for a crop that bears ${ece_dS_per_m} dS/m: no leaching keeps up.`,
    );
  return share;
}

/** Water to give so that a use is met and a share drains, `ET/(1 - LR)`, over an application efficiency. Source: FAO-29 section 2.4. */
export function withLeaching_mm(et_mm: number, share: number, efficiencyShare = 1): number {
  requireRange('share', share, 0, 0.99, '');
  requireRange('efficiencyShare', efficiencyShare, 0.05, 1, '');
  return et_mm / (efficiencyShare * (1 - share));
}

/** Share of the use taken from each quarter of the root zone, from the top. Source: FAO-29 Table 3. */
const QUARTERS = [0.4, 0.3, 0.2, 0.1] as const;

/** Soil extract over water at a leaching share: half the mean of the soil water at the five boundaries of the quarters. Source: FAO-29 Table 3. */
export function concentrationFactor(leaching: number): number {
  requireRange('leaching', leaching, 0.01, 1, '');
  const usedAbove = [0, ...QUARTERS.map((_, at) => QUARTERS.slice(0, at + 1).reduce((sum, share) => sum + share, 0))];
  const boundaries = usedAbove.map((used) => 1 / (1 - used * (1 - leaching)));
  return boundaries.reduce((sum, each) => sum + each, 0) / boundaries.length / 2;
}

export type Restriction = 'none' | 'slight to moderate' | 'severe';

/** Restriction on use by the water's salinity: from 0.7 and above 3.0 dS/m. Source: FAO-29 Table 1. */
export function saltRestriction(ecw_dS_per_m: number): Restriction {
  requireRange('ecw_dS_per_m', ecw_dS_per_m, 0, 100, 'dS/m');
  if (ecw_dS_per_m < 0.7) return 'none';
  return ecw_dS_per_m <= 3 ? 'slight to moderate' : 'severe';
}

/** Dissolved salts, mg/L. Source: FAO-29, 640 for each dS/m. */
export const dissolved_mg_per_L = (ecw_dS_per_m: number): number => MG_PER_L_PER_DS_PER_M * ecw_dS_per_m;

/** Salts that water of that conductivity carries in, g. */
export const saltsCarried_g = (ecw_dS_per_m: number, water_L: number): number =>
  (dissolved_mg_per_L(ecw_dS_per_m) * water_L) / 1000;

/** Rise of the soil water's conductivity in a closed bed from which nothing drains. Source: salt balance. */
export function closedBedRise_dS_per_m(ecw_dS_per_m: number, water_L: number, soilWater_L: number): number {
  requirePositive('soilWater_L', soilWater_L, 'L');
  return (ecw_dS_per_m * water_L) / soilWater_L;
}

/** Soil water over soil extract. Source: FAO-29 (from memory). */
const SOIL_WATER_TO_EXTRACT = 2;

/**
 * Water that a closed bed may take in before its soil water passes twice the crop's threshold: then it is flushed from the top
 * until the overflow reads near the supply, and once a season anyway. Common practice, no source.
 * @returns infinity for water without salts
 */
export function waterBeforeFlush_L(input: {
  readonly ecw_dS_per_m: number;
  readonly soilWater_L: number;
  readonly threshold_dS_per_m: number;
}): number {
  const limit = SOIL_WATER_TO_EXTRACT * input.threshold_dS_per_m;
  if (input.ecw_dS_per_m <= 0) return Number.POSITIVE_INFINITY;
  return Math.max(0, ((limit - input.ecw_dS_per_m) * input.soilWater_L) / input.ecw_dS_per_m);
}

export function explainLeaching(input: LeachingInput): Working {
  const share = leachingShare(input);
  return {
    title: 'Leaching requirement',
    formula: 'LR = ECw / (5 ECe − ECw)',
    symbols: [
      {
        symbol: 'ECw',
        name: 'conductivity of the water',
        figure: { value: input.ecw_dS_per_m, unit: 'dS_per_m' },
        origin: entry('your water test'),
      },
      {
        symbol: 'ECe',
        name: 'soil extract the crop bears',
        figure: { value: input.ece_dS_per_m, unit: 'dS_per_m' },
        origin: source('Maas & Hoffman thresholds, crop library'),
      },
    ],
    steps: [
      {
        text: 'five times the extract less the water',
        figures: `5 × ${input.ece_dS_per_m} − ${input.ecw_dS_per_m}`,
        result: { value: 5 * input.ece_dS_per_m - input.ecw_dS_per_m, unit: 'dS_per_m' },
      },
    ],
    result: { value: share, unit: 'share' },
    sources: ['FAO Irrigation and Drainage Paper 29, section 2.4'],
    notes: [computed('Rain that drains through counts as leaching too; it is not in this figure.').text],
  };
}
