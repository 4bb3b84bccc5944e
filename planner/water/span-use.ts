import { type CropCurve, kcAt } from './crop-curve.ts';

/**
 * Water that a square metre of a well-watered crop uses over some days of its time in the bed.
 *
 *   V = sum over days  Kc(i) ETo(i)
 *
 *   Kc(i)   coefficient on day i of the planting (1 for the first)   -
 *   ETo(i)  reference evapotranspiration of that day                 mm/day   0 to 20; 1 mm over 1 m2 is 1 L, exactly
 *
 * Not for a bed short of water. Rain is not taken off: it is the need in a dry week.
 * Source: FAO Irrigation and Drainage Paper 56 (1998), eq. 58.
 */
export function spanUse_L_per_m2(curve: CropCurve, fromDay: number, eto_mm_per_day: readonly number[]): number {
  return eto_mm_per_day.reduce((sum, eto, at) => sum + kcAt(curve, fromDay + at) * eto, 0);
}
