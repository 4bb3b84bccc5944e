import { type Placed, turnedBox } from '../../../planner/beds/arrange.ts';
import { extentOf as extentOfOutline, ringOf } from '../../../planner/beds/extent.ts';
import type { Outline, Point } from '../../../planner/beds/outline.ts';
import { isInPolygon } from '../../../planner/beds/polygon.ts';
import type { Extent_m, Scale } from '../../draw/scale.ts';
import type { BedRow, Lie } from './bed-types.ts';

/** What part of the site is seen: its middle, and pixels to a metre. */
export type Camera = { readonly x_m: number; readonly y_m: number; readonly perMetre: number };
export type Size = { readonly width: number; readonly height: number };

const NEAREST = 400;
const FARTHEST = 0.5;

export function scaleOf(camera: Camera, size: Size): Scale {
  const { perMetre } = camera;
  return {
    perMetre,
    width: size.width,
    height: size.height,
    x: (x_m) => size.width / 2 + (x_m - camera.x_m) * perMetre,
    y: (y_m) => size.height / 2 - (y_m - camera.y_m) * perMetre,
    length: (length_m) => length_m * perMetre,
    back: ({ x, y }) => ({
      x_m: camera.x_m + (x - size.width / 2) / perMetre,
      y_m: camera.y_m - (y - size.height / 2) / perMetre,
    }),
  };
}

/** A camera that shows an extent whole, with a margin in pixels. */
export function cameraFor(extent: Extent_m, size: Size, margin = 44): Camera {
  const across_m = Math.max(extent.maxX_m - extent.minX_m, 0.5);
  const up_m = Math.max(extent.maxY_m - extent.minY_m, 0.5);
  const perMetre = Math.min((size.width - 2 * margin) / across_m, (size.height - 2 * margin) / up_m);
  return {
    x_m: (extent.minX_m + extent.maxX_m) / 2,
    y_m: (extent.minY_m + extent.maxY_m) / 2,
    perMetre: Math.max(FARTHEST, Math.min(NEAREST, perMetre)),
  };
}

/** Nearer or farther about a place that stays under the pointer. */
export function zoomedCamera(camera: Camera, factor: number, about: { readonly x_m: number; readonly y_m: number }): Camera {
  const perMetre = Math.max(FARTHEST, Math.min(NEAREST, camera.perMetre * factor));
  const by = camera.perMetre / perMetre;
  return { perMetre, x_m: about.x_m + (camera.x_m - about.x_m) * by, y_m: about.y_m + (camera.y_m - about.y_m) * by };
}

const rings = new WeakMap<Outline, readonly Point[]>();

/** The ring of an outline about the bed's middle, made once. */
export function localRing(outline: Outline): readonly Point[] {
  const known = rings.get(outline);
  if (known !== undefined) return known;
  const made = ringOf(outline);
  rings.set(outline, made);
  return made;
}

/** The box a bed takes up as it lies. */
export function placedBed(bed: Pick<BedRow, 'bedId' | 'outline'>, lie: Lie): Placed {
  const { length_m, width_m } = extentOfOutline(bed.outline);
  return { bedId: bed.bedId, x_m: lie.x_m, y_m: lie.y_m, ...turnedBox(length_m, width_m, lie.turn_deg) };
}

/** The topmost bed at a place, with a little reach so that a small bed can be hit. */
export function bedAt(
  beds: readonly BedRow[],
  lieOf: (bed: BedRow) => Lie,
  x_m: number,
  y_m: number,
  reach_m: number,
): BedRow | undefined {
  return beds.findLast((bed) => {
    const lie = lieOf(bed);
    const box = placedBed(bed, lie);
    if (Math.abs(x_m - lie.x_m) > box.halfX_m + reach_m || Math.abs(y_m - lie.y_m) > box.halfY_m + reach_m) return false;
    const angle = (-lie.turn_deg * Math.PI) / 180;
    const [dx, dy] = [x_m - lie.x_m, y_m - lie.y_m];
    const local: Point = [dx * Math.cos(angle) - dy * Math.sin(angle), dx * Math.sin(angle) + dy * Math.cos(angle)];
    return isInPolygon(local, localRing(bed.outline), reach_m);
  });
}

/** The extent of all beds and the site outline. */
export function siteExtent(beds: readonly BedRow[], outline_m: readonly Point[] | null): Extent_m {
  const boxes = beds.map((bed) => placedBed(bed, bed));
  const xs = [...boxes.flatMap((box) => [box.x_m - box.halfX_m, box.x_m + box.halfX_m]), ...(outline_m ?? []).map(([x]) => x)];
  const ys = [...boxes.flatMap((box) => [box.y_m - box.halfY_m, box.y_m + box.halfY_m]), ...(outline_m ?? []).map(([, y]) => y)];
  if (xs.length === 0) return { minX_m: 0, minY_m: 0, maxX_m: 20, maxY_m: 15 };
  const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const most = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  return { minX_m: least(xs), minY_m: least(ys), maxX_m: most(xs), maxY_m: most(ys) };
}

/** The free way between the boxes of two beds; 0 when they touch or overlap. */
export function gapBetween_m(a: Placed, b: Placed): number {
  const x = Math.max(0, Math.abs(a.x_m - b.x_m) - a.halfX_m - b.halfX_m);
  const y = Math.max(0, Math.abs(a.y_m - b.y_m) - a.halfY_m - b.halfY_m);
  return Math.hypot(x, y);
}

/** A lie moved by metres and turned about a middle. */
export function turnedAbout(lie: Lie, middle: { readonly x_m: number; readonly y_m: number }, by_deg: number): Lie {
  const angle = (by_deg * Math.PI) / 180;
  const [dx, dy] = [lie.x_m - middle.x_m, lie.y_m - middle.y_m];
  return {
    x_m: middle.x_m + dx * Math.cos(angle) - dy * Math.sin(angle),
    y_m: middle.y_m + dx * Math.sin(angle) + dy * Math.cos(angle),
    turn_deg: normalTurn(lie.turn_deg + by_deg),
  };
}

/** A turn between -180 and 180 degrees. */
export const normalTurn = (turn_deg: number): number => ((((turn_deg + 180) % 360) + 360) % 360) - 180;

/** The middle of the box around beds as they lie. */
export function middleOf(boxes: readonly Placed[]): { readonly x_m: number; readonly y_m: number } {
  const xs = boxes.flatMap((box) => [box.x_m - box.halfX_m, box.x_m + box.halfX_m]);
  const ys = boxes.flatMap((box) => [box.y_m - box.halfY_m, box.y_m + box.halfY_m]);
  return { x_m: (Math.min(...xs) + Math.max(...xs)) / 2, y_m: (Math.min(...ys) + Math.max(...ys)) / 2 };
}
