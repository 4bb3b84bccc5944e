import { requirePositive, requireRange } from '../errors.ts';
import { type Lattice, ROW_PITCH_STAGGERED } from './lattice.ts';
import type { Point } from './outline.ts';
import { ON_THE_LIMIT } from './plants-in-row.ts';

export type DiscLatticeInput = {
  readonly diameter_m: number;
  readonly spacing_m: number;
  /** Distance of the outermost plants from the edge; half a spacing unless told. */
  readonly edgeMargin_m?: number;
  readonly lattice: Lattice;
};

export type DiscLattice = { readonly plants: number; readonly points_m: readonly Point[] };

/**
 * The most plants that a lattice can have in a round bed, over every way of laying it, with the layout itself.
 *
 * The count of lattice points in a disc of radius R changes only where its edge passes through points. So the best
 * centre is a lattice point, or one of the two places at distance R from two lattice points at most 2 R apart. These are
 * tried, one of each symmetric set.
 *
 * Source: counting; checked with a brute-force table for a bed 80 cm across.
 * @throws InputError naming the field
 */
export function bestInDisc(input: DiscLatticeInput): DiscLattice {
  const reach = reachInSpacings(input);
  if (reach < 0) return { plants: 0, points_m: [] };
  let best: Point = [0, 0];
  let most = countRound(best, reach, input.lattice);
  for (const centre of candidateCentres(reach, input.lattice)) {
    const count = countRound(centre, reach, input.lattice);
    if (count > most) {
      most = count;
      best = centre;
    }
  }
  return layoutRound(best, reach, input);
}

/** The same with a plant in the middle of the bed, as a round bed is often laid out. @throws InputError */
export function centredInDisc(input: DiscLatticeInput): DiscLattice {
  const reach = reachInSpacings(input);
  return reach < 0 ? { plants: 0, points_m: [] } : layoutRound([0, 0], reach, input);
}

/** Radius left for plants, in spacings; below zero when the margin takes all. */
function reachInSpacings(input: DiscLatticeInput): number {
  requirePositive('diameter_m', input.diameter_m, 'm');
  requirePositive('spacing_m', input.spacing_m, 'm');
  const margin_m = input.edgeMargin_m ?? input.spacing_m / 2;
  requireRange('edgeMargin_m', margin_m, 0, 100, 'm');
  const reach = (input.diameter_m / 2 - margin_m) / input.spacing_m;
  if (reach < 0 && reach > -ON_THE_LIMIT) return 0;
  if (reach > MOST_REACH)
    requireRange('spacing_m', input.spacing_m, (input.diameter_m / 2 - margin_m) / MOST_REACH, Number.MAX_VALUE, 'm');
  return reach;
}

/** Bounds the search: some 60,000 plants in one round bed. */
const MOST_REACH = 130;

const pitchOf = (lattice: Lattice): number => (lattice === 'square' ? 1 : ROW_PITCH_STAGGERED);
const shiftOf = (lattice: Lattice, row: number): number => (lattice === 'staggered' && row % 2 !== 0 ? 0.5 : 0);

/** Calls back each row of lattice points within a disc: its height, and the first and last step along it. */
function rowsRound(
  [cx, cy]: Point,
  reach: number,
  lattice: Lattice,
  each: (y: number, shift: number, from: number, to: number) => void,
): void {
  const pitch = pitchOf(lattice);
  const r = reach + ON_THE_LIMIT;
  for (let row = Math.ceil((cy - r) / pitch); row * pitch <= cy + r; row += 1) {
    const y = row * pitch;
    const half = Math.sqrt(Math.max(0, r * r - (y - cy) ** 2));
    const shift = shiftOf(lattice, row);
    each(y, shift, Math.ceil(cx - half - shift), Math.floor(cx + half - shift));
  }
}

function countRound(centre: Point, reach: number, lattice: Lattice): number {
  let count = 0;
  rowsRound(centre, reach, lattice, (_, __, from, to) => {
    if (to >= from) count += to - from + 1;
  });
  return count;
}

function layoutRound(centre: Point, reach: number, input: DiscLatticeInput): DiscLattice {
  const points: Point[] = [];
  rowsRound(centre, reach, input.lattice, (y, shift, from, to) => {
    for (let at = from; at <= to; at += 1)
      points.push([(at + shift - centre[0]) * input.spacing_m, (y - centre[1]) * input.spacing_m]);
  });
  return { plants: points.length, points_m: points };
}

/** Centres at distance `reach` from the origin and from a second lattice point, one wedge of the lattice's symmetry. */
function* candidateCentres(reach: number, lattice: Lattice): Generator<Point> {
  const pitch = pitchOf(lattice);
  const steepest = lattice === 'square' ? 1 : 1 / Math.sqrt(3);
  for (let row = 0; row * pitch <= 2 * reach + ON_THE_LIMIT; row += 1) {
    const y = row * pitch;
    for (let at = 0; at <= 2 * reach + 1; at += 1) {
      const x = at + shiftOf(lattice, row);
      if ((x === 0 && y === 0) || y > x * steepest + ON_THE_LIMIT) continue;
      const half2 = (x * x + y * y) / 4;
      const away2 = reach * reach - half2;
      if (away2 < -ON_THE_LIMIT) continue;
      const t = Math.sqrt(Math.max(0, away2) / (4 * half2));
      yield [x / 2 - y * t, y / 2 + x * t];
      yield [x / 2 + y * t, y / 2 - x * t];
    }
  }
}
