import { GREATEST_PATCH_KC } from './container-water.ts';
import { type CropCurve, kcAt, seasonDays } from './crop-curve.ts';

/** A crop on a part of a bed, from the day it takes the bed to the day it leaves. Days of the year, running on past 366. */
export type CropOnBed = {
  readonly from: number;
  /** Last day on the bed. */
  readonly to: number;
  readonly curve: CropCurve;
  readonly share: number;
  /** Area of the grown canopy over the area of its share of the bed, 1 or more. */
  readonly canopyFactor: number;
  readonly rootDepth_m: number;
  readonly p: number;
};

/** What covers the ground and the sun over the bed. */
export type BedCover = {
  /** Share by which a mulch lowers evaporation from bare ground. */
  readonly bareReduction: number;
  /** Factor on the reference: shade cloth below 1, an exposed place above. */
  readonly exposure: number;
};

/** A bed's year as the daily loop wants it; index 0 is 1 January, 366 entries. */
export type BedYear = {
  /** Litres used for each mm of the reference: sum of Kc and area. */
  readonly use_m2: Float64Array;
  readonly roots_m: Float64Array;
  readonly p: Float64Array;
  /** 1 where a crop stands. */
  readonly cropped: Uint8Array;
};

/** Bare ground against the reference, before mulch; it dries by the store's own stress. Common practice, no source. */
export const BARE_KC = 0.3;
/** Layer that dries from the surface, and the roots of a new planting. Source: FAO-56 eq. 73, 0.10 to 0.15 m. */
const SURFACE_M = 0.15;
/** Share of bare ground left free by the p of a bare surface. Common practice, no source. */
const BARE_P = 0.5;
const DAYS = 366;

/**
 * A bed's coefficients day by day through a year.
 *
 *   litres per mm = exposure (sum Kc A_crop + 0.3 (1 - mulch) A_bare),   never above 2.5 A
 *
 * The canopy grows from its share of the bed to its full width along the development stage; roots grow evenly from 0.15 m to
 * their depth by the middle stage. A planting that runs over New Year is carried into both ends.
 * Source: FAO-56 eq. 58, 66; limit chapter 10; canopy and root growth common practice, no source.
 */
export function bedYear(input: {
  readonly area_m2: number;
  readonly depth_m: number;
  readonly crops: readonly CropOnBed[];
  readonly cover: BedCover;
}): BedYear {
  const { area_m2, depth_m, crops, cover } = input;
  const use_m2 = new Float64Array(DAYS);
  const roots_m = new Float64Array(DAYS);
  const p = new Float64Array(DAYS);
  const cropped = new Uint8Array(DAYS);
  const taken = new Float64Array(DAYS);
  for (const crop of crops) {
    const [initial, development] = crop.curve.stages_days;
    const root_m = Math.max(Math.min(SURFACE_M, depth_m), Math.min(crop.rootDepth_m, depth_m));
    for (let day = crop.from; day <= crop.to; day += 1) {
      const at = (((day - 1) % DAYS) + DAYS) % DAYS;
      const age = day - crop.from + 1;
      const grown = development <= 0 ? 1 : Math.min(1, Math.max(0, (age - initial) / development));
      const rooted = Math.min(1, age / Math.max(1, initial + development));
      const area = crop.share * area_m2 * (1 + (crop.canopyFactor - 1) * grown);
      use_m2[at] = (use_m2[at] ?? 0) + kcAt(crop.curve, age) * area;
      taken[at] = (taken[at] ?? 0) + crop.share;
      const start_m = Math.min(SURFACE_M, depth_m);
      roots_m[at] = (roots_m[at] ?? 0) + crop.share * (start_m + (root_m - start_m) * rooted);
      p[at] = (p[at] ?? 0) + crop.share * crop.p;
      cropped[at] = 1;
    }
  }
  for (let at = 0; at < DAYS; at += 1) {
    const share = taken[at] ?? 0;
    const bare = Math.max(0, 1 - share);
    const all = (use_m2[at] ?? 0) + bare * area_m2 * BARE_KC * (1 - cover.bareReduction);
    use_m2[at] = Math.min(GREATEST_PATCH_KC * area_m2, all * cover.exposure);
    roots_m[at] = share > 0 ? (roots_m[at] ?? 0) / share : Math.min(SURFACE_M, depth_m);
    p[at] = share > 0 ? (p[at] ?? 0) / share : BARE_P;
  }
  return { use_m2, roots_m, p, cropped };
}

/** Stages of a planting brought to its days on the bed: the last day of the last stage is the day it leaves. */
export const stagesFor = (curve: CropCurve, days: number): CropCurve => {
  const whole = seasonDays(curve.stages_days);
  if (whole <= 0) return curve;
  const [a, b, c, d] = curve.stages_days;
  const by = Math.max(1, days) / whole;
  return { ...curve, stages_days: [a * by, b * by, c * by, d * by] };
};
