import { requireRange } from '../errors.ts';
import { type AirOverCrop, airTerm } from './kc-adjustments.ts';

export type DensityInput = {
  /** Share of the ground shaded when the sun is overhead. */
  readonly coverShare: number;
  readonly noonHeightSine: number;
  /** Height to width of a row across the sun; null for round single plants. */
  readonly heightToWidth: number | null;
};

/**
 * Share of the ground that plants shade at noon.
 *
 *   rows:  fc (1 + HWR/tan(eta));   round plants:  fc/sin(eta);   at most 1
 *
 *   eta   height of the sun at noon
 *
 * Source: FAO-56 chapter 9, eq. 98 to 97; checked with Examples 41 and 42.
 * @throws InputError naming the field
 */
export function effectiveCover({ coverShare, noonHeightSine, heightToWidth }: DensityInput): number {
  requireRange('coverShare', coverShare, 0, 1, '');
  requireRange('noonHeightSine', noonHeightSine, 0.01, 1, '');
  if (heightToWidth === null) return Math.min(1, coverShare / noonHeightSine);
  requireRange('heightToWidth', heightToWidth, 0, 20, '');
  const tangent = noonHeightSine / Math.sqrt(Math.max(1e-9, 1 - noonHeightSine ** 2));
  return Math.min(1, coverShare * (1 + heightToWidth / tangent));
}

/** Least basal coefficient of bare ground. Source: FAO-56 eq. 98. */
export const KC_MIN = 0.15;

/**
 * Basal coefficient at full cover: the table's, or `1.0 + 0.1 h` to 1.20 where there is none, in the air of the place.
 * Source: FAO-56 eq. 99, 100.
 */
export const fullBasalKc = (kcbTable: number | null, air: AirOverCrop): number =>
  (kcbTable ?? Math.min(1.2, 1 + 0.1 * air.height_m)) + airTerm(air);

/**
 * Basal coefficient of sparse or small plants.
 *
 *   Kcb = Kcmin + (Kcb full - Kcmin) min(1, 2 fc, fceff^(1/(1 + h)))
 *
 * Source: FAO-56 eq. 98; checked with Examples 41 and 42.
 */
export function sparseKc(input: {
  readonly kcMin: number;
  readonly kcFull: number;
  readonly coverShare: number;
  readonly effectiveCoverShare: number;
  readonly height_m: number;
}): number {
  const share = Math.min(1, 2 * input.coverShare, input.effectiveCoverShare ** (1 / (1 + input.height_m)));
  return input.kcMin + (input.kcFull - input.kcMin) * share;
}
