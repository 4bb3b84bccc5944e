import { stringify } from 'csv-stringify/sync';
import type { Cell, ReportTable } from './section.ts';

/** A table as CSV for spreadsheets: UTF-8 with mark, CRLF, canonical units in the heads, text that looks like a formula disarmed. */
export function csvOf(table: ReportTable): string {
  return stringify([table.columns.map((column) => column.name), ...table.rows.map((row) => row.map(plain))], {
    bom: true,
    escape_formulas: true,
    record_delimiter: 'windows',
  });
}

const plain = (cell: Cell): string | number | null => (cell !== null && typeof cell === 'object' ? cell.amount : cell);
