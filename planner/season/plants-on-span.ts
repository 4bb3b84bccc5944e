import { extentOf } from '../beds/extent.ts';
import type { Outline } from '../beds/outline.ts';
import { type PlantCount, plantsInBed, type Spacing } from '../beds/plant-count.ts';
import { requireRange } from '../errors.ts';

export type SpanInput = {
  readonly outline: Outline;
  readonly fromShare: number;
  readonly toShare: number;
  readonly spacing: Spacing;
  /** Half the spacing unless told. */
  readonly edgeMargin_m?: number;
};

/**
 * Exact plants on a piece of a bed. A piece of a rectangle is a shorter rectangle with its own margins; of any other
 * outline it is the plants of the whole whose place lies within the piece, so that pieces add up to the whole.
 * @throws InputError naming the field
 */
export function plantsOnSpan({ outline, fromShare, toShare, spacing, edgeMargin_m }: SpanInput): number {
  requireRange('fromShare', fromShare, 0, 1, '');
  requireRange('toShare', toShare, fromShare, 1, '');
  const margin = edgeMargin_m === undefined ? {} : { edgeMargin_m };
  const whole = fromShare <= 0 && toShare >= 1;
  if (whole) return plantsInBed({ outline, spacing, ...margin }).plants;
  if (toShare - fromShare <= 0) return 0;
  if (outline.shape === 'rectangle') {
    const piece = { ...outline, length_m: outline.length_m * (toShare - fromShare) };
    return plantsInBed({ outline: piece, spacing, ...margin }).plants;
  }
  return pointsBetween(plantsInBed({ outline, spacing, ...margin }), outline, fromShare, toShare);
}

function pointsBetween(count: PlantCount, outline: Outline, fromShare: number, toShare: number): number {
  const [from_m, to_m] = extentAlong(outline);
  const least = from_m + fromShare * (to_m - from_m);
  const most = from_m + toShare * (to_m - from_m);
  return count.points_m.filter(([x]) => x >= least && (x < most || toShare >= 1)).length;
}

/** The polygon has its own place; every other outline is centred on its middle. */
function extentAlong(outline: Outline): readonly [number, number] {
  const half_m = extentOf(outline).length_m / 2;
  if (outline.shape !== 'polygon') return [-half_m, half_m];
  const least_m = Math.min(...outline.vertices_m.map(([x]) => x));
  return [least_m, least_m + 2 * half_m];
}
