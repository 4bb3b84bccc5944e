import { mapNutrients, type NutrientMasses } from './nutrients.ts';

/** What is known of a material's nutrients, shares of its mass as handled. `null` is not known and counts as none. */
export type MaterialContent = {
  readonly nShare: number | null;
  readonly p2o5Share: number | null;
  readonly k2oShare: number | null;
  readonly caShare: number | null;
  readonly mgShare: number | null;
  readonly sShare: number | null;
  readonly firstYearNShare: number | null;
  readonly isMineral: boolean;
};

/** Share of the phosphate of organic materials within reach in the first year; the rest in the second. Common practice, no source. */
export const ORGANIC_PHOSPHATE_FIRST_YEAR = 0.8;

/**
 * Share of each nutrient of a material within the crop's reach so many years after it was put on.
 *
 *   N      by the release series            P2O5   organic: 0.8, then 0.2; mineral: all at once
 *   K2O    all at once                      Ca, Mg, S   counted whole, in the first year
 *
 * Source: common practice, no source; the series with `seriesFor`.
 */
export function reachableShares(content: MaterialContent, series: readonly number[], yearsAfter: number): NutrientMasses {
  const first = yearsAfter === 0 ? 1 : 0;
  const phosphate = content.isMineral
    ? first
    : yearsAfter === 0
      ? ORGANIC_PHOSPHATE_FIRST_YEAR
      : yearsAfter === 1
        ? 1 - ORGANIC_PHOSPHATE_FIRST_YEAR
        : 0;
  const share: NutrientMasses = { N: series[yearsAfter] ?? 0, P2O5: phosphate, K2O: first, Ca: first, Mg: first, S: first };
  const whole: NutrientMasses = {
    N: content.nShare ?? 0,
    P2O5: content.p2o5Share ?? 0,
    K2O: content.k2oShare ?? 0,
    Ca: content.caShare ?? 0,
    Mg: content.mgShare ?? 0,
    S: content.sShare ?? 0,
  };
  return mapNutrients((name) => whole[name] * share[name]);
}

/** Whether an analysis can be: no share below nothing and together no more than the whole. */
export function analysisFault(shares: readonly (number | null)[]): string | null {
  const known = shares.filter((share) => share !== null);
  if (known.some((share) => share < 0)) return 'An analysis cannot be below zero.';
  const sum = known.reduce((total, share) => total + share, 0);
  return sum > 1 ? `The analysis adds up to ${Math.round(sum * 100)} %: more than the material itself.` : null;
}
