import { type BedSpec, basinOfBed, formOfBed } from '../../../planner/beds/bed-spec.ts';
import { extentOf } from '../../../planner/beds/extent.ts';
import { type BedForm, outlineAt } from '../../../planner/beds/form.ts';

export type Edge = { readonly height_m: number; readonly half_m: number };

/** Half the width across a bed at a height above its floor: the section through its middle, across its length. */
export function halfWidth_m(form: BedForm, height_m: number): number {
  return extentOf(outlineAt(form, Math.min(height_m, form.depth_m))).width_m / 2;
}

const STEPS = 24;

/** The edge of the section between two heights, from below upwards; straight walls need two points, mounds many. */
export function edgeOf(form: BedForm, from_m: number, to_m: number): readonly Edge[] {
  const curved = form.solid !== 'straight' && form.solid !== 'tapered' && form.solid !== 'ridge';
  const steps = curved ? STEPS : 1;
  return Array.from({ length: steps + 1 }, (_, at) => {
    const height_m = curved ? roundedHeight(form.depth_m, from_m, to_m, at / steps) : from_m + ((to_m - from_m) * at) / steps;
    return { height_m, half_m: halfWidth_m(form, height_m) };
  });
}

/** Steps that lie closer together near the crown, where a mound turns over. */
function roundedHeight(crown_m: number, from_m: number, to_m: number, share: number): number {
  const angle = (height_m: number): number => Math.asin(Math.min(1, height_m / crown_m));
  return crown_m * Math.sin(angle(from_m) + (angle(to_m) - angle(from_m)) * share);
}

export type Section = {
  readonly form: BedForm;
  readonly basin: BedForm | undefined;
  /** Half of the widest thing drawn. */
  readonly half_m: number;
  /** Height of the tallest thing drawn. */
  readonly top_m: number;
};

/** What the cross-section shows. A basin or bed stands on the ground; a bed in the ground lies below it. */
export function sectionOf(spec: BedSpec, mulchDepth_m: number): Section {
  const form = formOfBed(spec);
  const basin = basinOfBed(spec);
  const halves = [halfWidth_m(form, 0), halfWidth_m(form, form.depth_m), basin === undefined ? 0 : halfWidth_m(basin, 0)];
  return {
    form,
    basin,
    half_m: Math.max(...halves),
    top_m: Math.max(form.depth_m, spec.fillDepth_m + mulchDepth_m, basin?.depth_m ?? 0),
  };
}
