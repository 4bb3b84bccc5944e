import { currencyPlaces, printMinorForEntry } from '../../planner/units/print-money.ts';
import type { Reader } from '../../planner/units/reader.ts';
import { say } from '../words/say.ts';
import type { CellValue, Column } from './column.ts';

const isNothing = (value: CellValue): value is null | undefined | '' => value === null || value === undefined || value === '';

/** The text of a cell as it stands in the table: units are in the head, so that figures align. */
export function cellText<Row>(column: Column<Row>, value: CellValue, reader: Reader): string {
  if (isNothing(value)) return '';
  switch (column.kind) {
    case 'quantity':
      return typeof value === 'number' ? reader.number(value, column.unit, column.digits) : String(value);
    case 'money':
      return typeof value === 'number' ? reader.number(value, 'minor') : String(value);
    case 'share':
      return typeof value === 'number' ? reader.number(value, 'share', column.digits ?? 3) : String(value);
    case 'count':
      return typeof value === 'number' ? reader.number(value, 'count') : String(value);
    case 'date':
      return reader.date(String(value));
    case 'choice':
      return column.choices.find((known) => known.value === value)?.text ?? String(value);
    case 'flag':
      return value === true ? say('yes') : '';
    case 'text':
      return String(value);
  }
}

/** The unit beside a column's title, or ''. */
export function headUnit<Row>(column: Column<Row>, reader: Reader): string {
  if (column.kind === 'quantity' || column.kind === 'money' || column.kind === 'share') return reader.sign(column.unit);
  return '';
}

/** What an editor is filled with: exact enough that leaving it as it is changes nothing. */
export function entryText<Row>(column: Column<Row>, value: CellValue, reader: Reader): string {
  if (isNothing(value)) return '';
  if (typeof value === 'number') {
    if (column.kind === 'quantity' || column.kind === 'share') return reader.entry(value, column.unit);
    if (column.kind === 'money') return printMinorForEntry(value, currencyPlaces(reader.currency), reader.locale);
    return reader.entry(value, '');
  }
  return typeof value === 'boolean' ? (value ? say('yes') : say('no')) : String(value);
}

/** What a cell is in a file for other programs: plain numbers in the unit of the head, ISO dates. */
export function fileValue<Row>(column: Column<Row>, value: CellValue, reader: Reader): string | number {
  if (isNothing(value)) return '';
  if (typeof value === 'number') {
    if (column.kind === 'money') return value / 10 ** currencyPlaces(reader.currency);
    if (column.unit !== '') return Number(reader.scale(value, column.unit).toPrecision(7));
    return value;
  }
  if (column.kind === 'choice' || column.kind === 'flag') return cellText(column, value, reader);
  return String(value);
}

/** A block of cells as text for a spreadsheet of the reader's country. */
export const spreadsheetText = (block: readonly (readonly (string | number)[])[], reader: Reader): string[][] =>
  block.map((cells) => cells.map((cell) => (typeof cell === 'number' ? reader.entry(cell, '') : cell)));

const inOrder = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** Order of two cells of one column; `B-2` comes before `B-14`. Empty cells are put last by the table itself. */
export function compareCells<Row>(column: Column<Row>, a: CellValue, b: CellValue): number {
  if (typeof a === 'number' && typeof b === 'number') return a - b;
  if (typeof a === 'boolean' && typeof b === 'boolean') return Number(b) - Number(a);
  if (column.kind === 'choice') {
    const at = (value: CellValue) => column.choices.findIndex((known) => known.value === value);
    return at(a) - at(b);
  }
  return inOrder.compare(String(a ?? ''), String(b ?? ''));
}
