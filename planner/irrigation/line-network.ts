import type { PumpCurve } from './pump-curve.ts';

/** A length of tube from one place to the next. `fittingK` is the sum of its fittings on its own velocity. */
export type LineTube = {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly length_m: number;
  readonly insideDiameter_m: number;
  readonly roughness_m: number;
  readonly fittingK: number;
};

/** Drip emitters or tape behind one outlet: what one gives at one head, and how that grows with head, q ~ h^x. */
export type EmitterGroup = {
  readonly count: number;
  readonly flowEach_L_per_h: number;
  readonly atHead_m: number;
  readonly exponent: number;
};

/**
 * Where water leaves to a bed. `lossK` is valve and exit together, on the velocity in `bore_m`.
 * `outlet_m` is the height of the open end, or of the water over a drowned one: only a drowned end can run back.
 */
export type LineOutlet = {
  readonly id: string;
  readonly node: string;
  readonly outlet_m: number;
  readonly bore_m: number;
  readonly lossK: number;
  readonly drowned?: boolean;
  readonly emitters?: EmitterGroup;
};

/**
 * One source and the tree of tubes behind it. `level_m` is the water's height in the reservoir (or of the tap), the
 * curve is that of the pump (or the tap's own falling head), none where the line runs by its fall alone.
 */
export type LineNetwork = {
  readonly source: string;
  readonly level_m: number;
  readonly pump: PumpCurve | null;
  readonly viscosity_m2_per_s: number;
  readonly tubes: readonly LineTube[];
  readonly outlets: readonly LineOutlet[];
};
