import type { PrintedTable } from './printed-document.ts';

export type TableSize = { readonly font_pt: number; readonly widths_pt: readonly number[] };

const WIDEST_CELL = 44;
const PADDING_PT = 8;
/** Width of a character as a share of the size of the type: a bold figure of Roboto is 0.57 wide, words a little less. */
const CHARACTER_SHARE = 0.6;
const sizes_pt = [8.5, 7.5, 6.5, 5.5] as const;

/** How wide each column wants to be at a size of type: its longest cell, within reason. */
function wanted_pt(table: PrintedTable, font_pt: number): readonly number[] {
  return table.head.map(({ title }, at) => {
    const words = title.split(/\s+/).map((word) => word.length + 1);
    const cells = [...table.rows, table.totals ?? []].map((row) => row[at]?.length ?? 0);
    const characters = Math.min(
      WIDEST_CELL,
      cells.reduce((most, length) => Math.max(most, length), Math.max(3, ...words)),
    );
    return characters * font_pt * CHARACTER_SHARE + PADDING_PT;
  });
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** Whether a table asks for the long side of the paper. */
export const isWide = (table: PrintedTable, room_pt: number): boolean =>
  table.shares === undefined && sumOf(wanted_pt(table, sizes_pt[0])) > room_pt;

/** The largest type at which all columns fit beside each other; where none does, the columns share the room and their words wrap. */
export function tableSize(table: PrintedTable, room_pt: number): TableSize {
  if (table.shares !== undefined)
    return { font_pt: sizes_pt[0], widths_pt: table.shares.map((share) => Math.max(2, share * room_pt - PADDING_PT)) };
  for (const font_pt of sizes_pt) {
    const widths = wanted_pt(table, font_pt);
    if (sumOf(widths) <= room_pt) return { font_pt, widths_pt: widths.map((width) => width - PADDING_PT) };
  }
  const font_pt = sizes_pt[sizes_pt.length - 1] ?? 5.5;
  const widths = wanted_pt(table, font_pt);
  const share = room_pt / sumOf(widths);
  return { font_pt, widths_pt: widths.map((width) => Math.max(2, width * share - PADDING_PT)) };
}
