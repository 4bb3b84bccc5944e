import { inflateRawSync } from 'node:zlib';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { writeCsv } from '../../../renderer/table/csv.ts';
import { filterRows } from '../../../renderer/table/filter-rows.ts';
import { readDate } from '../../../renderer/table/read-date.ts';
import { readTsv, writeTsv } from '../../../renderer/table/tsv.ts';
import { columnName, workbookFiles } from '../../../renderer/table/workbook.ts';
import { crc32, zipOf } from '../../../renderer/table/zip.ts';

const cells = fc.array(fc.array(fc.string(), { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 5 });

test('a block copied and pasted back is the same block', () => {
  fc.assert(
    fc.property(cells, (block) => {
      const plain = block.map((row) => row.map((cell) => cell.replaceAll('\r', '')));
      expect(readTsv(writeTsv(plain))).toEqual(plain);
    }),
  );
});

test('a spreadsheet’s block with a last line break has no empty row', () => {
  expect(readTsv('a\tb\r\nc\td\r\n')).toEqual([
    ['a', 'b'],
    ['c', 'd'],
  ]);
});

test('CSV is read back by another reader, and no text becomes a formula', () => {
  fc.assert(
    fc.property(cells, (block) => {
      const head = block.map((row) => row.map((cell) => `x${cell}`));
      const width = Math.max(...head.map((row) => row.length));
      const square = head.map((row) => [...row, ...Array.from({ length: width - row.length }, () => 'x')]);
      expect(parse(writeCsv(square), { bom: true, record_delimiter: '\r\n' })).toEqual(square);
    }),
  );
  expect(writeCsv([['=1+1', '-2', -2]])).toBe("\uFEFF'=1+1,'-2,-2\r\n");
});

test('every typed word must be in a row; quotation marks hold words together, a minus leaves out', () => {
  const rows = ['B-14 Tomato Solanaceae', 'B-15 Pepper Solanaceae', 'C-1 Épinard'];
  const found = (typed: string) => filterRows(rows, typed, (row) => row);
  expect(found('solan b-1')).toEqual(rows.slice(0, 2));
  expect(found('solan -pepper')).toEqual([rows[0]]);
  expect(found('"b-15 pepper"')).toEqual([rows[1]]);
  expect(found('epinard')).toEqual([rows[2]]);
  expect(found('  ')).toEqual(rows);
});

test('dates are read in the ways that leave no doubt', () => {
  expect(readDate('2026-3-9')).toBe('2026-03-09');
  expect(readDate('9 Mar 2026')).toBe('2026-03-09');
  expect(readDate('March 9, 2026')).toBe('2026-03-09');
  expect(readDate('3/9/2026')).toBeUndefined();
});

test('the check value of CRC-32 over the digits 1 to 9 is cbf43926', () => {
  // the check value given for this polynomial in the catalogue of parametrised CRC algorithms (from memory)
  expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
});

test('an archive lists its files with their bytes', () => {
  const bytes = Buffer.from(zipOf({ 'a.txt': 'one', 'folder/b.txt': 'zwei ü' }));
  const end = bytes.length - 22;
  expect(bytes.readUInt32LE(end)).toBe(0x06054b50);
  expect(bytes.readUInt16LE(end + 10)).toBe(2);
  let at = bytes.readUInt32LE(end + 16);
  const found: Record<string, string> = {};
  for (let file = 0; file < 2; file += 1) {
    expect(bytes.readUInt32LE(at)).toBe(0x02014b50);
    const [method, size, nameSize, offset] = [
      bytes.readUInt16LE(at + 10),
      bytes.readUInt32LE(at + 20),
      bytes.readUInt16LE(at + 28),
      bytes.readUInt32LE(at + 42),
    ];
    const name = bytes.toString('utf8', at + 46, at + 46 + nameSize);
    const body = bytes.subarray(offset + 30 + nameSize, offset + 30 + nameSize + size);
    found[name] = (method === 0 ? body : inflateRawSync(body)).toString('utf8');
    expect(crc32(body)).toBe(bytes.readUInt32LE(at + 16));
    at += 46 + nameSize;
  }
  expect(found).toEqual({ 'a.txt': 'one', 'folder/b.txt': 'zwei ü' });
});

test('a workbook holds numbers as numbers and text as text, named by place', () => {
  const sheet = workbookFiles('Beds: all/now', [
    ['Bed', 'Depth (cm)'],
    ['B & "14"', 30.5],
  ])['xl/worksheets/sheet1.xml'];
  expect(sheet).toContain('<c r="B2"><v>30.5</v></c>');
  expect(sheet).toContain('<c r="A2" t="inlineStr"><is><t xml:space="preserve">B &amp; &quot;14&quot;</t></is></c>');
  expect([0, 25, 26, 701, 702].map(columnName)).toEqual(['A', 'Z', 'AA', 'ZZ', 'AAA']);
});
