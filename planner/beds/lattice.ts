import { requirePositive } from '../errors.ts';

/** Equal distances in both directions, or every second row shifted by half a spacing (triangles with equal sides). */
export type Lattice = 'square' | 'staggered';

export const ROW_PITCH_STAGGERED = Math.sqrt(3) / 2;

/**
 * Distance between rows of a lattice: the spacing itself, or sqrt(3)/2 of it when staggered (a handbook for growers
 * rounds it to 0.87).
 * @throws InputError naming the field
 */
export function rowPitch_m(lattice: Lattice, spacing_m: number): number {
  requirePositive('spacing_m', spacing_m, 'm');
  return lattice === 'square' ? spacing_m : spacing_m * ROW_PITCH_STAGGERED;
}

/**
 * Plants for each square metre of a bed without edges: 1/s2 square, 2/(sqrt(3) s2) staggered (1.1547 times as many).
 * For estimates only: a bed has edges, so count its points.
 * @throws InputError naming the field
 */
export function unboundedDensity_per_m2(lattice: Lattice, spacing_m: number): number {
  requirePositive('spacing_m', spacing_m, 'm');
  return 1 / (spacing_m * rowPitch_m(lattice, spacing_m));
}

/** How many more plants a staggered lattice has than a square one, without edges. */
export const STAGGERED_TO_SQUARE = 2 / Math.sqrt(3);

/** Plants over an area at a spacing in the row and a row distance, without edges: A/(a b). @throws InputError */
export function plantsForArea(area_m2: number, inRow_m: number, rowSpacing_m: number): number {
  requirePositive('area_m2', area_m2, 'm2');
  requirePositive('inRow_m', inRow_m, 'm');
  requirePositive('rowSpacing_m', rowSpacing_m, 'm');
  return area_m2 / (inRow_m * rowSpacing_m);
}
