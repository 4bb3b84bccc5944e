import { refuse, requirePositive, requireRange } from '../errors.ts';
import { plainArea_m2 } from './footprint.ts';
import type { Outline } from './outline.ts';
import { perimeter_m } from './perimeter.ts';

/**
 * Least radius of a round container, in radii of the circles, that holds 1, 2, 3 ... equal circles (best known).
 * Source: Graham, Lubachevsky, Nurmela and Östergård 1998 and Fodor 1999-2003, to 20 as printed; beyond 20 from memory.
 */
const packingRadius: readonly number[] = [
  1, 2, 2.154, 2.414, 2.701, 3, 3, 3.304, 3.613, 3.813, 3.923, 4.029, 4.236, 4.328, 4.521, 4.615, 4.792, 4.863, 4.863, 5.122,
  5.252, 5.439, 5.545, 5.651, 5.752, 5.828, 5.906, 6.014, 6.138, 6.197, 6.291, 6.429, 6.486, 6.61, 6.697, 6.746, 6.758, 6.961,
  7.057, 7.123, 7.26, 7.346, 7.419, 7.498, 7.572, 7.65, 7.724, 7.791, 7.886, 7.947, 8.027, 8.084, 8.179, 8.203, 8.211, 8.383,
  8.447, 8.524, 8.592, 8.646, 8.661, 8.829, 8.892, 8.961, 9.017,
];

/** Least container radius, in circle radii, for a count of circles. @throws InputError beyond the table */
export function packingRadiusRatio(circles: number): number {
  requireRange('circles', circles, 1, packingRadius.length, '');
  return packingRadius[circles - 1] ?? refuse('circles', 'not-whole', 'A whole number of circles is needed.');
}

/**
 * Most circles of one size that are known to fit in a round container: an upper bound for the plants of any layout.
 * @param ratio container diameter over circle diameter: D/s with half a spacing of margin, D/s + 1 with none
 * @returns undefined beyond the table
 * @throws InputError naming the field
 */
export function mostCircles(ratio: number): number | undefined {
  requirePositive('ratio', ratio, '');
  const last = packingRadius[packingRadius.length - 1] ?? 0;
  if (ratio >= last) return undefined;
  return packingRadius.findLastIndex((least) => least <= ratio + 1e-9) + 1;
}

/**
 * Upper bound for points at least a spacing apart in a convex outline, from its area A and perimeter P.
 *
 *   N <= 2 A/(sqrt(3) s2) + P/(2 s) + 1
 *
 * The margin is left out of account: with a margin the bound is only looser. Not for an outline with a bay.
 * Source: Oler 1961, a finite packing inequality (memory).
 * @throws InputError naming the field
 */
export function packingBound(outline: Outline, spacing_m: number): number {
  requirePositive('spacing_m', spacing_m, 'm');
  return Math.floor(
    (2 * plainArea_m2(outline)) / (Math.sqrt(3) * spacing_m ** 2) + perimeter_m(outline) / (2 * spacing_m) + 1 + 1e-9,
  );
}
