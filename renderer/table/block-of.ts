import type { Reader } from '../../planner/units/reader.ts';
import { fileValue, headUnit } from './cell-text.ts';
import type { Column } from './column.ts';

/** Head and rows as plain cells for other programs: the clipboard, CSV and workbook files. */
export function blockOf<Row>(
  columns: readonly Column<Row>[],
  rows: readonly Row[],
  reader: Reader,
): readonly (readonly (string | number)[])[] {
  const head = columns.map((column) => {
    const unit = headUnit(column, reader);
    return unit === '' ? column.title : `${column.title} (${unit})`;
  });
  return [head, ...rows.map((row) => columns.map((column) => fileValue(column, column.read(row), reader)))];
}
