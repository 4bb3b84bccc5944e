import type { PrintedPart } from '../../api/print/printed-document.ts';
import type { Reader } from '../../planner/units/reader.ts';
import { cellText, headUnit } from './cell-text.ts';
import { type Column, isNumeric } from './column.ts';
import { totalOf } from './totals.ts';

/** A table as it is printed: the shown columns and rows in their order, in the reader's units, with the totals. */
export function printedTable<Row>(columns: readonly Column<Row>[], rows: readonly Row[], reader: Reader): PrintedPart {
  const hasTotals = columns.some((column) => column.total !== undefined);
  return {
    kind: 'table',
    head: columns.map((column) => {
      const unit = headUnit(column, reader);
      return { title: unit === '' ? column.title : `${column.title} (${unit})`, side: isNumeric(column) ? 'right' : 'left' };
    }),
    rows: rows.map((row) => columns.map((column) => cellText(column, column.read(row), reader))),
    totals: hasTotals
      ? columns.map((column) => {
          const total = totalOf(column, rows);
          return total === undefined ? '' : `${column.total === 'mean' ? 'mean ' : ''}${cellText(column, total, reader)}`;
        })
      : null,
  };
}
