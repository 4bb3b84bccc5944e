import type { BedSize } from './bed-history.ts';
import { type BedRow, sampleDesigns } from './designs.ts';

/** Rough sizes for the generator's own use: enough to invent amounts from. The program computes them exactly in `planner/beds`. */
export function sampleBedSizes(beds: readonly BedRow[]): ReadonlyMap<string, BedSize> {
  const byDesign = new Map(
    sampleDesigns.map(({ design }) => {
      const { length_m, width_m, outline } = design;
      const round = (Math.PI / 4) * length_m * width_m;
      const oval = (length_m - width_m) * width_m + (Math.PI / 4) * width_m ** 2;
      const area_m2 = outline === 'rectangle' ? length_m * width_m : outline === 'oval' ? oval : round;
      const depth_m = design.fillDepth_m;
      const fullness = outline === 'half-ellipsoid' ? 2 / 3 : 1;
      return [design.id, { area_m2, depth_m, volume_L: area_m2 * depth_m * fullness * 1000 }] as const;
    }),
  );
  return new Map(
    beds.flatMap((bed) => {
      const size = byDesign.get(bed.designId);
      return size === undefined ? [] : [[bed.id, size] as const];
    }),
  );
}
