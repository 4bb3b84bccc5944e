import { dateOfDay, type IsoDate } from '../../../planner/calendar.ts';
import type { Room } from '../../print/paper.ts';
import type { BoardLine } from './board-lines.ts';
import { type TimeScale, timeScale } from './time-scale.ts';

/** Sizes of the board on paper, in pixels: high enough for type of 7 points and more. */
export const SHEET_PX = { name: 74, head: 40, bed: 27, block: 20, key: 62 } as const;

const LEAST_WEEK_PX = 15;
const WEEK = 7;

/** One sheet of the board: some of its lines through some of its weeks. */
export type BoardSheet = {
  readonly lines: readonly BoardLine[];
  readonly scale: TimeScale;
  readonly height_px: number;
};

const heightOf = (line: BoardLine): number => (line.kind === 'block' ? SHEET_PX.block : SHEET_PX.bed);

/**
 * The board laid out on sheets: whole beds down and whole weeks across, as few sheets across as the weeks need to stay
 * readable, all as wide as the paper. A block that goes on has its heading again on the next sheet.
 */
export function boardSheets(lines: readonly BoardLine[], start: IsoDate, end: IsoDate, room: Room): readonly BoardSheet[] {
  const whole = timeScale(start, end, WEEK);
  const weeks = (whole.last - whole.first) / WEEK;
  const wide = room.width - SHEET_PX.name - 1;
  const across = Math.max(1, Math.ceil((weeks * LEAST_WEEK_PX) / wide));
  const perSheet = Math.ceil(weeks / across);
  const day_px = wide / perSheet / WEEK;
  const pieces = piecesOf(lines, room.height - SHEET_PX.head - SHEET_PX.key);
  return pieces.flatMap((piece) =>
    Array.from({ length: across }, (_, at) => ({
      lines: piece,
      scale: partOf(whole, day_px, at * perSheet, Math.min(weeks, (at + 1) * perSheet)),
      height_px: piece.reduce((sum, line) => sum + heightOf(line), 0),
    })),
  );
}

function partOf(whole: TimeScale, day_px: number, fromWeek: number, toWeek: number): TimeScale {
  const first = whole.first + fromWeek * WEEK;
  const shift_px = fromWeek * WEEK * day_px;
  return {
    first,
    last: whole.first + toWeek * WEEK,
    day_px,
    width_px: (toWeek - fromWeek) * WEEK * day_px,
    x: (date) => whole.x(date) * day_px - shift_px,
    dayAt: (x_px) => first + Math.floor(x_px / day_px),
  };
}

function piecesOf(lines: readonly BoardLine[], room_px: number): readonly (readonly BoardLine[])[] {
  const pieces: BoardLine[][] = [];
  let piece: BoardLine[] = [];
  let taken_px = 0;
  let block: BoardLine | undefined;
  const close = (): void => {
    // a heading goes with its first bed
    const left = piece.at(-1)?.kind === 'block' ? piece.pop() : undefined;
    if (piece.length > 0) pieces.push(piece);
    piece = left === undefined ? [] : [left];
    taken_px = left === undefined ? 0 : heightOf(left);
  };
  for (const line of lines) {
    if (line.kind === 'block') block = line;
    if (taken_px + heightOf(line) > room_px) {
      close();
      if (piece.length === 0 && line.kind === 'bed' && block !== undefined) {
        piece.push(block);
        taken_px += heightOf(block);
      }
    }
    piece.push(line);
    taken_px += heightOf(line);
  }
  close();
  if (piece.length > 0) pieces.push(piece);
  return pieces;
}

/** First and last bed and week of a sheet, to find it among the others. */
export function sheetEnds({ lines, scale }: BoardSheet): {
  readonly beds: readonly string[];
  readonly from: IsoDate;
  readonly to: IsoDate;
} {
  const beds = lines.flatMap((line) => (line.kind === 'bed' ? [line.bed.code] : []));
  const ends = beds.length < 2 ? beds : [beds[0] ?? '', beds.at(-1) ?? ''];
  return { beds: ends, from: dateOfDay(scale.first), to: dateOfDay(scale.last - 1) };
}
