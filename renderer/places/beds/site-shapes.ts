import type { Point } from '../../../planner/beds/outline.ts';
import { M_PER_FOOT, M_PER_INCH } from '../../../planner/units/constants.ts';
import type { UnitSystem } from '../../../planner/units/system.ts';
import type { BedRow, Lie } from './bed-types.ts';
import { type Camera, localRing, type Size, scaleOf } from './site-view.ts';

/** The colours of the site drawing and the tokens they come from. */
export const siteInks = {
  paper: 'paper-raised',
  ink: 'ink',
  soft: 'ink-soft',
  accent: 'accent',
  stop: 'stop',
  soil: 'soil',
  mix: 'mix',
  wood: 'wood',
  water: 'water',
  gridLine: 'grid-line',
  gridStrong: 'grid-line-strong',
} as const;

export type SiteInkName = keyof typeof siteInks;

type Line = { readonly ink: SiteInkName; readonly width_px: number; readonly dash?: readonly number[] };
type Wash = { readonly ink: SiteInkName; readonly share: number };

/** One thing of the site drawing, in pixels. The window paints these, and a sheet of paper is drawn from the same. */
export type SiteShape =
  | {
      readonly kind: 'line';
      readonly points: readonly (readonly [number, number])[];
      readonly closed: boolean;
      readonly line: Line;
    }
  | {
      readonly kind: 'squares';
      readonly xs: readonly number[];
      readonly ys: readonly number[];
      readonly size: Size;
      readonly ink: SiteInkName;
    }
  | {
      /** A bed's outline in metres about its middle, with where that lies and how it is turned. */
      readonly kind: 'bed';
      readonly ring: readonly Point[];
      readonly x: number;
      readonly y: number;
      readonly turn_deg: number;
      readonly perMetre: number;
      readonly washes: readonly Wash[];
      readonly line: Line;
    }
  | { readonly kind: 'dot'; readonly x: number; readonly y: number; readonly radius: number; readonly ink: SiteInkName }
  | {
      readonly kind: 'text';
      readonly x: number;
      readonly y: number;
      readonly text: string;
      /** Said instead where `text` is wider than the room there is. */
      readonly short?: { readonly text: string; readonly room_px: number };
      readonly size_px: number;
      readonly ink: SiteInkName;
      readonly at: 'middle' | 'above';
    };

export type SiteView = { readonly camera: Camera; readonly size: Size };

/** Sides of the squares of the paper, in whole units of the reader. */
const squares_m: Readonly<Record<UnitSystem, readonly number[]>> = {
  metric: [0.1, 0.5, 1, 5, 10, 50, 100, 500],
  us: [3 * M_PER_INCH, ...[1, 5, 10, 50, 100, 500, 1000].map((feet) => feet * M_PER_FOOT)],
};
const LEAST_SQUARE_PX = 11;

/** Squared paper to scale: the finest squares that stay apart, every fifth line stronger. */
export function paperShapes({ camera, size }: SiteView, system: UnitSystem): readonly SiteShape[] {
  const steps_m = squares_m[system];
  const step_m = steps_m.find((step) => step * camera.perMetre >= LEAST_SQUARE_PX) ?? steps_m.at(-1) ?? 1;
  const scale = scaleOf(camera, size);
  const from = scale.back({ x: 0, y: size.height });
  const to = scale.back({ x: size.width, y: 0 });
  const lines = (first_m: number, last_m: number, strong: boolean, at: (m: number) => number): readonly number[] => {
    const found: number[] = [];
    for (let line = Math.ceil(first_m / step_m); line * step_m <= last_m; line += 1)
      if ((line % 5 === 0) === strong) found.push(Math.round(at(line * step_m)) + 0.5);
    return found;
  };
  return [false, true].map((strong) => ({
    kind: 'squares',
    xs: lines(from.x_m, to.x_m, strong, scale.x),
    ys: lines(from.y_m, to.y_m, strong, scale.y),
    size,
    ink: strong ? 'gridStrong' : 'gridLine',
  }));
}

export function outlineShapes({ camera, size }: SiteView, outline_m: readonly Point[]): readonly SiteShape[] {
  const scale = scaleOf(camera, size);
  const points = outline_m.map(([x, y]) => [scale.x(x), scale.y(y)] as const);
  return [{ kind: 'line', points, closed: true, line: { ink: 'soft', width_px: 1.2, dash: [9, 3, 2, 3] } }];
}

/** What a bed is filled with on the drawing, by how it is built and watered. */
export type BedTint = 'water' | 'wood' | 'soil' | 'mix';

export function tintOf(bed: Pick<BedRow, 'watering' | 'kind'>): BedTint {
  if (bed.watering === 'reservoir' || bed.watering === 'basin') return 'water';
  if (bed.kind === 'mound') return 'wood';
  return bed.kind === 'in-ground' ? 'soil' : 'mix';
}

/** How strong each is: they also differ in grey. */
export const tintShares: Readonly<Record<BedTint, number>> = { mix: 0.08, water: 0.3, wood: 0.24, soil: 0.46 };
/** Room for a code inside its bed, in pixels. */
const LABEL_PX = 30;

/** Beds as they lie, with their codes where there is room; those outside the drawing are left out. */
export function bedShapes(
  { camera, size }: SiteView,
  beds: readonly BedRow[],
  lieOf: (bed: BedRow) => Lie,
  isChosen: (bed: BedRow) => boolean,
): readonly SiteShape[] {
  const scale = scaleOf(camera, size);
  const { perMetre } = camera;
  const shapes: SiteShape[] = [];
  const labels: SiteShape[] = [];
  const size_px = Math.max(LEAST_TYPE_PX, Math.min(13, perMetre * 0.35));
  for (const bed of beds) {
    const lie = lieOf(bed);
    const [x, y] = [scale.x(lie.x_m), scale.y(lie.y_m)];
    const reach = (Math.hypot(bed.length_m, bed.width_m) / 2) * perMetre;
    if (x + reach < 0 || x - reach > size.width || y + reach < 0 || y - reach > size.height) continue;
    const chosen = isChosen(bed);
    const tint = tintOf(bed);
    shapes.push({
      kind: 'bed',
      ring: localRing(bed.outline),
      x,
      y,
      turn_deg: lie.turn_deg,
      perMetre,
      washes: [{ ink: 'paper', share: 1 }, chosen ? { ink: 'accent', share: 0.45 } : { ink: tint, share: tintShares[tint] }],
      line: {
        ink: bed.isOverLimit || bed.fault !== null ? 'stop' : chosen ? 'accent' : 'ink',
        width_px: chosen ? 2 : 1,
      },
    });
    if (carriesCode(bed, perMetre)) labels.push({ kind: 'text', x, y, text: bed.code, size_px, ink: 'ink', at: 'middle' });
  }
  return [...shapes, ...labels];
}

/** 7 points: smaller type is not read on paper. */
const LEAST_TYPE_PX = 9.5;

/** Whether a bed is drawn large enough for its code. */
export const carriesCode = (bed: BedRow, perMetre: number): boolean =>
  Math.min(bed.length_m, 2 * bed.width_m) * perMetre >= LABEL_PX;

/** The order of beds along the tubing as a line through their middles. */
export function orderShapes(
  { camera, size }: SiteView,
  beds: readonly BedRow[],
  lieOf: (bed: BedRow) => Lie,
): readonly SiteShape[] {
  const scale = scaleOf(camera, size);
  const points = beds.map((bed) => {
    const lie = lieOf(bed);
    return [scale.x(lie.x_m), scale.y(lie.y_m)] as const;
  });
  return [
    { kind: 'line', points, closed: false, line: { ink: 'water', width_px: 2 } },
    ...points.flatMap(([x, y], at): readonly SiteShape[] => [
      { kind: 'dot', x, y, radius: 8, ink: 'water' },
      { kind: 'text', x, y, text: String(at + 1), size_px: 10, ink: 'paper', at: 'middle' },
    ]),
  ];
}

/** Beds drawn smaller than this carry no code; their block's name stands above them instead. */
const BLOCK_PX = 13;

/** Names of blocks above their beds while the beds are too small for their codes; only their code where there is no room. */
export function blockShapes(
  { camera, size }: SiteView,
  beds: readonly BedRow[],
  names: ReadonlyMap<string, string>,
): readonly SiteShape[] {
  const scale = scaleOf(camera, size);
  return [...Map.groupBy(beds, (bed) => bed.blockId)].flatMap(([blockId, rows]): readonly SiteShape[] => {
    const first = rows[0];
    if (first === undefined || first.width_m * camera.perMetre > BLOCK_PX) return [];
    const west = rows.reduce((least, bed) => Math.min(least, bed.x_m - bed.length_m / 2), Number.POSITIVE_INFINITY);
    const east = rows.reduce((most, bed) => Math.max(most, bed.x_m + bed.length_m / 2), Number.NEGATIVE_INFINITY);
    const north = rows.reduce((most, bed) => Math.max(most, bed.y_m + bed.width_m / 2), Number.NEGATIVE_INFINITY);
    const text = names.get(blockId) ?? first.block;
    const short = { text: first.block, room_px: scale.length(east - west) };
    return [{ kind: 'text', x: scale.x(west), y: scale.y(north) - 5, text, short, size_px: 12, ink: 'soft', at: 'above' }];
  });
}
