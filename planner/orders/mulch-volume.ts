import { requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';

/** Loose volume of a mulch: `area x depth`. @throws InputError naming the field */
export function mulchVolume_L(area_m2: number, depth_m: number): number {
  requireRange('area_m2', area_m2, 0, Infinity, 'm2');
  requireRange('depth_m', depth_m, 0, 1, 'm');
  return convert(area_m2 * depth_m, 'm3', 'L');
}
