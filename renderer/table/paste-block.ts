import type { Reader } from '../../planner/units/reader.ts';
import { say } from '../words/say.ts';
import { type CellValue, type Column, canEdit } from './column.ts';
import { readCell } from './read-cell.ts';

export type Edit<Row> = { readonly row: Row; readonly key: string; readonly value: CellValue };

export type Pasted<Row> = { readonly edits: readonly Edit<Row>[]; readonly faults: readonly string[] };

const MOST_FAULTS = 20;

/**
 * Lays a block over the table from one cell on. It is checked whole: with one fault nothing is to be written, and each
 * fault names the row and column of the block.
 */
export function pasteBlock<Row>(
  block: readonly (readonly string[])[],
  place: {
    readonly rows: readonly Row[];
    readonly columns: readonly Column<Row>[];
    readonly row: number;
    readonly column: number;
  },
  reader: Reader,
): Pasted<Row> {
  const single = block.length === 1 && block[0]?.length === 1;
  const edits: Edit<Row>[] = [];
  const faults: string[] = [];
  const over = place.row + block.length - place.rows.length;
  if (over > 0)
    faults.push(
      say('The block has {block} rows; {over} of them would lie below the last row of the table.', { block: block.length, over }),
    );
  block.forEach((cells, down) => {
    const row = place.rows[place.row + down];
    if (row === undefined) return;
    cells.forEach((cell, along) => {
      const column = place.columns[place.column + along];
      const where = say('Row {down}', { down: down + 1 });
      if (column === undefined) {
        if (cell.trim() !== '') faults.push(say('{where}: "{cell}" would lie to the right of the last column.', { where, cell }));
        return;
      }
      if (!canEdit(column, row)) {
        if (single || cell.trim() !== '')
          faults.push(say("{where}: {column} can't be edited here.", { where, column: column.title }));
        return;
      }
      const read = readCell(column, cell, reader, 'pasted');
      if (read.ok) edits.push({ row, key: column.key, value: read.value });
      else faults.push(`${where}, ${read.message}`);
    });
  });
  if (faults.length <= MOST_FAULTS) return { edits: faults.length === 0 ? edits : [], faults };
  return {
    edits: [],
    faults: [...faults.slice(0, MOST_FAULTS), say('… and {faults} more.', { faults: faults.length - MOST_FAULTS })],
  };
}

/** The same value into one column of many rows, where it may be edited. */
export function fillColumn<Row>(column: Column<Row>, rows: readonly Row[], value: CellValue): readonly Edit<Row>[] {
  return rows.filter((row) => canEdit(column, row) && column.read(row) !== value).map((row) => ({ row, key: column.key, value }));
}
