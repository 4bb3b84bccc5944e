import { requirePositive } from '../errors.ts';
import { M_PER_INCH } from '../units/constants.ts';

/**
 * Least air gap between a filling pipe and the rim below it: twice the supply's diameter, never under 1 in.
 * The local code and the water supplier decide; this is what several print.
 * Source: municipal ordinances after the model plumbing codes (Texas, Illinois).
 * @throws InputError on a pipe without a bore
 */
export function airGap_m(supplyDiameter_m: number): number {
  requirePositive('supplyDiameter_m', supplyDiameter_m, 'm');
  return Math.max(M_PER_INCH, 2 * supplyDiameter_m);
}

/**
 * The British form: the greater of 20 mm and twice the inside diameter.
 * Source: UK Water Regulations guidance, definition of an air gap.
 * @throws InputError on a pipe without a bore
 */
export function airGapBritish_m(supplyInsideDiameter_m: number): number {
  requirePositive('supplyInsideDiameter_m', supplyInsideDiameter_m, 'm');
  return Math.max(0.02, 2 * supplyInsideDiameter_m);
}
