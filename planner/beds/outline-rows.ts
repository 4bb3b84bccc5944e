import { type Room, roomWithin } from './inside.ts';
import type { Outline, Point } from './outline.ts';
import { ON_THE_LIMIT, wholeSteps } from './plants-in-row.ts';

export type OutlineRowsInput = {
  readonly outline: Outline;
  readonly rowSpacing_m: number;
  readonly inRow_m: number;
  readonly edgeMargin_m: number;
};

export type RowsLayout = { readonly plants: number; readonly rows: number; readonly points_m: readonly Point[] };

const OFFSETS = 40;
const SAMPLES = 400;

/**
 * Plants in rows along a bed of any outline: each row is cut where the outline (less its margin) cuts it, and each piece
 * takes floor(length/spacing) + 1 plants. The rows are shifted together over one row distance for the most plants.
 * The ends of a piece are found to a four-hundredth of the bed's length and then by halving.
 * Source: counting.
 */
export function rowsInOutline(input: OutlineRowsInput): RowsLayout {
  const room = roomWithin(input.outline, input.edgeMargin_m);
  let best: RowsLayout = { plants: 0, rows: 0, points_m: [] };
  for (const offset of offsetsFor(input.outline.shape !== 'polygon')) {
    const tried = rowsAt(room, input, offset);
    if (tried.plants > best.plants) best = tried;
  }
  return best;
}

/** Rows centred on the bed's middle line, or two beside it, come first: equal counts keep the even layout. */
function offsetsFor(symmetric: boolean): readonly number[] {
  const all = Array.from({ length: OFFSETS }, (_, at) => at / OFFSETS);
  return symmetric ? [0, 0.5, ...all] : all;
}

function rowsAt(room: Room, input: OutlineRowsInput, offset: number): RowsLayout {
  const points_m: Point[] = [];
  let rows = 0;
  const middle = (room.from_m[1] + room.to_m[1]) / 2;
  const reach = (room.to_m[1] - room.from_m[1]) / 2;
  for (
    let row = Math.ceil(-reach / input.rowSpacing_m - offset - ON_THE_LIMIT);
    (row + offset) * input.rowSpacing_m <= reach + ON_THE_LIMIT;
    row += 1
  ) {
    const y = middle + (row + offset) * input.rowSpacing_m;
    const pieces = piecesOfRow(room, y);
    if (pieces.length > 0) rows += 1;
    for (const [from, to] of pieces) {
      const count = wholeSteps(to - from, input.inRow_m) + 1;
      const spare = (to - from - (count - 1) * input.inRow_m) / 2;
      for (let at = 0; at < count; at += 1) points_m.push([from + spare + at * input.inRow_m, y]);
    }
  }
  return { plants: points_m.length, rows, points_m };
}

/** The stretches of a row that lie inside the room. */
function piecesOfRow(room: Room, y: number): readonly (readonly [number, number])[] {
  const length = room.to_m[0] - room.from_m[0];
  const xAt = (at: number): number => room.from_m[0] + (length * at) / SAMPLES;
  const pieces: (readonly [number, number])[] = [];
  let start: number | undefined;
  for (let at = 0; at <= SAMPLES; at += 1) {
    const isIn = room.contains(xAt(at), y);
    if (isIn && start === undefined) start = at === 0 ? xAt(0) : edge(room, y, xAt(at), xAt(at - 1));
    if (!isIn && start !== undefined) {
      pieces.push([start, edge(room, y, xAt(at - 1), xAt(at))]);
      start = undefined;
    }
  }
  if (start !== undefined) pieces.push([start, xAt(SAMPLES)]);
  return pieces;
}

/** The place between an inside and an outside point where the room ends. */
function edge(room: Room, y: number, inside: number, outside: number): number {
  let [a, b] = [inside, outside];
  for (let turn = 0; turn < 40; turn += 1) {
    const middle = (a + b) / 2;
    if (room.contains(middle, y)) a = middle;
    else b = middle;
  }
  return a;
}
