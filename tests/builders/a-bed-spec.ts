import type { BedSpec } from '../../planner/beds/bed-spec.ts';

/** A framed box 2 m by 1 m, 0.4 m deep, filled to the rim and watered from above, changed as told. */
export const aBedSpec = (changes: Partial<BedSpec> = {}): BedSpec => ({
  kind: 'framed',
  outline: 'rectangle',
  length_m: 2,
  width_m: 1,
  bottomLength_m: null,
  bottomWidth_m: null,
  polygon_m: null,
  depth_m: 0.4,
  fillDepth_m: 0.4,
  topWidth_m: null,
  watering: 'top',
  basinLength_m: null,
  basinWidth_m: null,
  basinDepth_m: null,
  basinFill_m: null,
  reservoirDepth_m: null,
  overflow_m: null,
  reservoirVoid_share: null,
  ...changes,
});
