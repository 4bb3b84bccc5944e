import { requirePositive, requireRange } from '../errors.ts';
import { ROW_PITCH_STAGGERED } from './lattice.ts';
import type { Point } from './outline.ts';
import { pointsOnLength } from './plants-in-row.ts';

export type RectangleLatticeInput = {
  readonly length_m: number;
  readonly width_m: number;
  readonly spacing_m: number;
  /** The same on all sides; half a spacing unless told. */
  readonly edgeMargin_m?: number;
};

export type RectangleLattice = {
  readonly plants: number;
  readonly rowsAlong: 'length' | 'width';
  readonly points_m: readonly Point[];
};

/**
 * Plants of a square lattice in a rectangular bed: the points of both sides multiplied.
 * Source: counting; checked with Colorado State University Extension GardenNotes 713 (24 ft of carrots at 3 in is a block
 * of 3 x 2 ft, 96 plants).
 * @throws InputError naming the field
 */
export function squareInRectangle(input: RectangleLatticeInput): RectangleLattice {
  const inner = requireInner(input);
  const along = pointsOnLength(inner.length_m, input.spacing_m);
  const rows = pointsOnLength(inner.width_m, input.spacing_m);
  return {
    plants: along * rows,
    rowsAlong: 'length',
    points_m: rowsOf(along, along, rows, input.spacing_m, input.spacing_m, false),
  };
}

/**
 * Plants of a staggered lattice in a rectangular bed with rows along the one side or the other, whichever holds more
 * (along the length when equal).
 *
 *   k = floor((b - 2 e)/(s sqrt(3)/2)) + 1 rows; n1 = floor((a - 2 e)/s) + 1 plants in a full row,
 *   n2 = floor((a - 2 e - s/2)/s) + 1 in a shifted one;  N = ceil(k/2) n1 + floor(k/2) n2
 *
 *   a, b   side along and across the rows    m
 *   s, e   spacing, edge margin              m
 *
 * In some beds the square lattice holds as many or more: compare before choosing.
 * Source: counting.
 * @throws InputError naming the field
 */
export function staggeredInRectangle(input: RectangleLatticeInput): RectangleLattice {
  const inner = requireInner(input);
  const along = staggeredRows(inner.length_m, inner.width_m, input.spacing_m);
  const across = staggeredRows(inner.width_m, inner.length_m, input.spacing_m);
  const best = across.plants > along.plants ? across : along;
  const pitch_m = input.spacing_m * ROW_PITCH_STAGGERED;
  const points = rowsOf(best.full, best.shifted, best.rows, input.spacing_m, pitch_m, true);
  return best === along
    ? { plants: best.plants, rowsAlong: 'length', points_m: points }
    : { plants: best.plants, rowsAlong: 'width', points_m: points.map(([x, y]): Point => [y, x]) };
}

function staggeredRows(along_m: number, across_m: number, spacing_m: number) {
  const full = pointsOnLength(along_m, spacing_m);
  const shifted = full === 0 ? 0 : pointsOnLength(along_m - spacing_m / 2, spacing_m);
  const rows = full === 0 ? 0 : pointsOnLength(across_m, spacing_m * ROW_PITCH_STAGGERED);
  return { full, shifted, rows, plants: Math.ceil(rows / 2) * full + Math.floor(rows / 2) * shifted };
}

/** The points of the rows, the whole in the middle of the bed. */
function rowsOf(
  full: number,
  shifted: number,
  rows: number,
  spacing_m: number,
  pitch_m: number,
  stagger: boolean,
): readonly Point[] {
  const reach_m = Math.max(full - 1, rows > 1 && stagger ? shifted - 0.5 : 0) * spacing_m;
  const points: Point[] = [];
  for (let row = 0; row < rows; row += 1) {
    const isShifted = stagger && row % 2 === 1;
    for (let at = 0; at < (isShifted ? shifted : full); at += 1)
      points.push([(at + (isShifted ? 0.5 : 0)) * spacing_m - reach_m / 2, (row - (rows - 1) / 2) * pitch_m]);
  }
  return points;
}

function requireInner(input: RectangleLatticeInput): { readonly length_m: number; readonly width_m: number } {
  requirePositive('length_m', input.length_m, 'm');
  requirePositive('width_m', input.width_m, 'm');
  requirePositive('spacing_m', input.spacing_m, 'm');
  const margin_m = input.edgeMargin_m ?? input.spacing_m / 2;
  requireRange('edgeMargin_m', margin_m, 0, 100, 'm');
  return { length_m: input.length_m - 2 * margin_m, width_m: input.width_m - 2 * margin_m };
}
