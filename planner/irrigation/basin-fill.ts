import { refuse, requirePositive, requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';
import { boreArea_m2 } from './pipe-flow.ts';

export type BasinRing = {
  readonly basinDiameter_m: number;
  readonly bagDiameter_m: number;
  readonly depth_m: number;
  /** Share of the bag's foot that fills with water too: 0 when the bag keeps dry, the mix's open pores otherwise. */
  readonly bagPorosity: number;
};

/**
 * Water to fill the ring between a round basin and the round bag in it.
 *
 *   V = pi/4 [(D2 - d2) + n d2] h
 *
 *   D   basin's inside diameter   m
 *   d   bag's diameter            m    0 to D
 *   h   depth of water            m
 *   n   open pores of the foot    -    0 to 1
 *
 * Water the bag drinks during the fill is not counted.
 * Source: geometry; 30 in round 24 in, 2 in deep, is 8.34 L.
 * @throws InputError when the bag is wider than the basin
 */
export function basinRing_L(ring: BasinRing): number {
  requirePositive('basinDiameter_m', ring.basinDiameter_m, 'm');
  requireRange('bagDiameter_m', ring.bagDiameter_m, 0, 100, 'm');
  requireRange('depth_m', ring.depth_m, 0, 10, 'm');
  requireRange('bagPorosity', ring.bagPorosity, 0, 1, '');
  if (ring.bagDiameter_m > ring.basinDiameter_m)
    refuse('bagDiameter_m', 'wider-than-basin', 'bagDiameter_m: the bag is wider than its basin.');
  const bag_m2 = ring.bagDiameter_m === 0 ? 0 : boreArea_m2(ring.bagDiameter_m);
  const ring_m2 = boreArea_m2(ring.basinDiameter_m) - bag_m2;
  return convert((ring_m2 + ring.bagPorosity * bag_m2) * ring.depth_m, 'm3', 'L');
}

/** Minutes a flow needs for a volume. @throws InputError when nothing flows */
export function minutesFor(volume_L: number, flow_L_per_h: number): number {
  requireRange('volume_L', volume_L, 0, 1e9, 'L');
  requirePositive('flow_L_per_h', flow_L_per_h, 'L/h');
  return volume_L / convert(flow_L_per_h, 'L_per_h', 'L_per_min');
}

/** Least minutes to fill equal basins with one flow shared among them. @throws InputError when nothing flows */
export function minutesForBasins(basins: number, volumeEach_L: number, flow_L_per_h: number): number {
  requireRange('basins', basins, 0, 100_000, '');
  return minutesFor(basins * volumeEach_L, flow_L_per_h);
}

/**
 * Height from the water to an overflow hole in a basin's wall, wall x share - depth. Below zero the fill runs over.
 * @throws InputError naming the field
 */
export function freeboard_m(wall_m: number, holeShare: number, fillDepth_m: number): number {
  requireRange('wall_m', wall_m, 0, 10, 'm');
  requireRange('holeShare', holeShare, 0, 1, '');
  requireRange('fillDepth_m', fillDepth_m, 0, 10, 'm');
  return wall_m * holeShare - fillDepth_m;
}
