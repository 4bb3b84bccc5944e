import { expect, test } from 'vitest';
import { readerOf } from '../../../planner/units/reader.ts';
import { cellText, entryText, fileValue, spreadsheetText } from '../../../renderer/table/cell-text.ts';
import { money, quantity } from '../../../renderer/table/column.ts';
import { pasteBlock } from '../../../renderer/table/paste-block.ts';
import { readCell } from '../../../renderer/table/read-cell.ts';

type Row = { readonly id: string; readonly fill_L: number; readonly cost_minor: number };
const fill = quantity<Row>('fill_L', 'Fill', { edit: true, digits: 6 });
const cost = money<Row>('cost_minor', 'Cost', { edit: true });
const rows: readonly Row[] = [{ id: 'a', fill_L: 0, cost_minor: 0 }];
const german = readerOf({ system: 'metric', currency: 'EUR', locale: 'de-DE' });

test('a table shows and edits numbers as the country writes them, and files keep the point', () => {
  expect(cellText(fill, 1234.5, german)).toBe('1.234,5');
  expect(cellText(cost, 123_450, german)).toBe('1.234,50');
  expect(entryText(cost, 123_450, german)).toBe('1234,50');
  expect(fileValue(fill, 1234.5, german)).toBe(1234.5);
  expect(fileValue(cost, 123_450, german)).toBe(1234.5);
  expect(spreadsheetText([[1234.5, 'B-1']], german)).toEqual([['1234,5', 'B-1']]);
});

test('a currency without parts has none in the table or the file', () => {
  const yen = readerOf({ system: 'metric', currency: 'JPY', locale: 'ja-JP' });
  expect(cellText(cost, 123_450, yen)).toBe('123,450');
  expect(fileValue(cost, 123_450, yen)).toBe(123_450);
});

test('a block from a spreadsheet of that country is read as it is written there', () => {
  const pasted = pasteBlock([['1.234', '1.234,50 €']], { rows, columns: [fill, cost], row: 0, column: 0 }, german);
  expect(pasted.faults).toEqual([]);
  expect(pasted.edits.map((edit) => edit.value)).toEqual([1234, 123_450]);
});

test('typed by hand, a point that may mean two things is refused and explained', () => {
  for (const column of [fill, cost]) {
    expect(readCell(column, '1.234', german)).toMatchObject({ ok: false, message: expect.stringContaining('"1.234" may mean') });
    expect(readCell(column, '1,5', german)).toMatchObject({ ok: true });
  }
  expect(readCell(cost, '1.5', german)).toEqual({ ok: true, value: 150 });
});
