import { requirePositive, requireRange } from '../errors.ts';

/** Yield response where a crop has none of its own. Source: FAO-33; near 1 for many crops. */
export const USUAL_KY = 1;

/** Share of the full yield when a share of the full use was met, `1 - Ky (1 - ET/ETc)`, not below 0. Source: FAO-56 eq. 90. */
export function yieldShare(ky: number, etShare: number): number {
  requireRange('ky', ky, 0, 3, '');
  requireRange('etShare', etShare, 0, 1, '');
  return Math.max(0, 1 - ky * (1 - etShare));
}

/** Mean stress of a season from a yield, `1 - (1 - Ya/Ym)/Ky`. Source: FAO-56 eq. 103; checked with Example 44. */
export function stressFromYield(ky: number, yield_kg: number, fullYield_kg: number): number {
  requirePositive('ky', ky, '');
  requirePositive('fullYield_kg', fullYield_kg, 'kg');
  requireRange('yield_kg', yield_kg, 0, fullYield_kg, 'kg');
  return Math.max(0, 1 - (1 - yield_kg / fullYield_kg) / ky);
}
