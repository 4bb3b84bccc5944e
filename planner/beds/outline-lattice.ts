import { cornersOf } from './extent.ts';
import { type Room, roomWithin } from './inside.ts';
import { type Lattice, ROW_PITCH_STAGGERED } from './lattice.ts';
import type { Outline, Point } from './outline.ts';
import { corner } from './polygon.ts';

export type OutlineLatticeInput = {
  readonly outline: Outline;
  readonly lattice: Lattice;
  readonly spacing_m: number;
  readonly edgeMargin_m: number;
};

export type LatticeLayout = { readonly plants: number; readonly points_m: readonly Point[]; readonly turn_deg: number };

/** A lattice laid on the ground: its turn, and where in its cell the middle of the bed lies (0 to 1 both ways). */
type Laying = { readonly turn_rad: number; readonly u: number; readonly v: number };

/** Tests of single points that a search may take: about a tenth of a second. */
const WORK = 1_500_000;
const FINEST_GRID = 60;
const COARSEST_GRID = 6;
/** From here on the edge is a small part of the bed, and one laying is as good as another to a few in a thousand. */
const MANY_PLANTS = 4000;

/**
 * The most plants that a lattice has in an outline of any shape, with the layout.
 *
 * Every offset of a grid over one cell of the lattice is counted, with rows along the bed, across it and along each of its
 * straight sides; the best is then refined by ever smaller moves. A grid of 60 x 60 offsets found the exact best in all
 * of twenty round beds checked; in beds with many hundred plants the grid is coarser, and the answer may be a plant or two
 * short of the best.
 * Source: counting.
 */
export function bestInOutline(input: OutlineLatticeInput): LatticeLayout {
  const room = roomWithin(input.outline, input.edgeMargin_m);
  const turns = turnsFor(input.outline, input.lattice);
  const box_m2 = (room.to_m[0] - room.from_m[0]) * (room.to_m[1] - room.from_m[1]);
  const cells = Math.max(1, box_m2 / (input.spacing_m ** 2 * pitch(input.lattice)));
  const affordable = Math.floor(Math.sqrt(WORK / (cells * turns.length * Math.max(1, cornersOf(input.outline).length / 4))));
  const grid = Math.max(cells > MANY_PLANTS ? 1 : COARSEST_GRID, Math.min(FINEST_GRID, affordable));
  let best: Laying = { turn_rad: 0, u: 0, v: 0 };
  let most = countOf(room, input, best);
  const consider = (laying: Laying): void => {
    const count = countOf(room, input, laying);
    if (count > most) {
      most = count;
      best = laying;
    }
  };
  for (const turn_rad of turns) {
    for (let i = 0; i < grid; i += 1) for (let j = 0; j < grid; j += 1) consider({ turn_rad, u: i / grid, v: j / grid });
  }
  for (let step = 1 / (2 * grid); step > 1 / (16 * grid); step /= 2) {
    for (const [du, dv] of around) consider({ ...best, u: best.u + du * step, v: best.v + dv * step });
  }
  return layoutOf(room, input, best);
}

/** The lattice with a plant in the middle of the bed and rows along it. */
export function centredInOutline(input: OutlineLatticeInput): LatticeLayout {
  return layoutOf(roomWithin(input.outline, input.edgeMargin_m), input, { turn_rad: 0, u: 0, v: 0 });
}

const around: readonly Point[] = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
];

const pitch = (lattice: Lattice): number => (lattice === 'square' ? 1 : ROW_PITCH_STAGGERED);

/** Turns worth a try: along, across and along each straight side; a lattice repeats after 90 or 60 degrees. */
function turnsFor(outline: Outline, lattice: Lattice): readonly number[] {
  const repeat = lattice === 'square' ? Math.PI / 2 : Math.PI / 3;
  const sides = cornersOf(outline);
  const directions = sides.map((a, at) => {
    const b = corner(sides, at + 1);
    return Math.atan2(b[1] - a[1], b[0] - a[0]);
  });
  const turns: number[] = [];
  for (const direction of [0, Math.PI / 2, ...directions].slice(0, 8)) {
    const turn = ((direction % repeat) + repeat) % repeat;
    const isNew = turns.every((each) => Math.min(Math.abs(each - turn), repeat - Math.abs(each - turn)) > 1e-6);
    if (isNew) turns.push(turn);
  }
  return turns;
}

function eachPoint(room: Room, input: OutlineLatticeInput, laying: Laying, found: (x_m: number, y_m: number) => void): void {
  const s = input.spacing_m;
  const rowPitch_m = s * pitch(input.lattice);
  const cos = Math.cos(laying.turn_rad);
  const sin = Math.sin(laying.turn_rad);
  const [mx, my] = [(room.from_m[0] + room.to_m[0]) / 2, (room.from_m[1] + room.to_m[1]) / 2];
  const halfX = (room.to_m[0] - room.from_m[0]) / 2;
  const halfY = (room.to_m[1] - room.from_m[1]) / 2;
  const alongReach = Math.abs(halfX * cos) + Math.abs(halfY * sin);
  const acrossReach = Math.abs(halfX * sin) + Math.abs(halfY * cos);
  // over two rows a staggered lattice repeats: v runs over both
  const v0 = laying.v * (input.lattice === 'square' ? 1 : 2);
  for (let row = Math.ceil(-acrossReach / rowPitch_m - v0); (row + v0) * rowPitch_m <= acrossReach; row += 1) {
    const across = (row + v0) * rowPitch_m;
    const u0 = laying.u + (input.lattice === 'staggered' && row % 2 !== 0 ? 0.5 : 0);
    for (let at = Math.ceil(-alongReach / s - u0); (at + u0) * s <= alongReach; at += 1) {
      const along = (at + u0) * s;
      const x = mx + along * cos - across * sin;
      const y = my + along * sin + across * cos;
      if (room.contains(x, y)) found(x, y);
    }
  }
}

function countOf(room: Room, input: OutlineLatticeInput, laying: Laying): number {
  let count = 0;
  eachPoint(room, input, laying, () => {
    count += 1;
  });
  return count;
}

function layoutOf(room: Room, input: OutlineLatticeInput, laying: Laying): LatticeLayout {
  const points_m: Point[] = [];
  eachPoint(room, input, laying, (x, y) => {
    points_m.push([x, y]);
  });
  return { plants: points_m.length, points_m, turn_deg: (laying.turn_rad * 180) / Math.PI };
}
