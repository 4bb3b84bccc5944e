import { stringify } from 'csv-stringify/sync';
import type { ReportTable } from './section.ts';

/** A table as CSV for spreadsheets: UTF-8 with mark, CRLF, canonical units in the heads, text that looks like a formula disarmed. */
export function csvOf(table: ReportTable): string {
  return stringify([table.columns.map((column) => column.name), ...table.rows.map((row) => [...row])], {
    bom: true,
    escape_formulas: true,
    record_delimiter: 'windows',
  });
}
