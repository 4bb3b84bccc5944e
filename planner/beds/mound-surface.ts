import { requirePositive } from '../errors.ts';

/** Exponent of the ellipsoid-surface approximation. */
const P = 1.6075;

/**
 * Curved surface of a half-ellipsoid mound, for mulch and netting.
 *
 *   S = 2 pi (((ab)^p + (ac)^p + (bc)^p)/3)^(1/p), p = 1.6075
 *
 *   a, b   half length, half width   m
 *   c      height                    m
 *
 * The error is at most 1.1 %; a half-sphere comes out exact.
 * Source: Thomsen's form of the ellipsoid surface, from memory.
 * @throws InputError naming the field
 */
export function moundSurface_m2(mound: {
  readonly length_m: number;
  readonly width_m: number;
  readonly height_m: number;
}): number {
  requirePositive('length_m', mound.length_m, 'm');
  requirePositive('width_m', mound.width_m, 'm');
  requirePositive('height_m', mound.height_m, 'm');
  const a = mound.length_m / 2;
  const b = mound.width_m / 2;
  const c = mound.height_m;
  return 2 * Math.PI * (((a * b) ** P + (a * c) ** P + (b * c) ** P) / 3) ** (1 / P);
}
