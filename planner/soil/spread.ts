import { requirePositive, requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';

/** Area that a volume covers at a depth: A = V/d. @throws InputError naming the field */
export function areaCovered_m2(volume_L: number, depth_m: number): number {
  requireRange('volume_L', volume_L, 0, 1e9, 'L');
  requirePositive('depth_m', depth_m, 'm');
  return convert(volume_L, 'L', 'm3') / depth_m;
}

/** Volume that covers an area to a depth: V = A d. @throws InputError naming the field */
export function volumeToCover_L(area_m2: number, depth_m: number): number {
  requireRange('area_m2', area_m2, 0, 1e9, 'm2');
  requireRange('depth_m', depth_m, 0, 10, 'm');
  return convert(area_m2 * depth_m, 'm3', 'L');
}

/** Side of a square of an area. */
export const squareSide_m = (area_m2: number): number => Math.sqrt(area_m2);
