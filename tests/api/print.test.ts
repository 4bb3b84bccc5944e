import { afterAll, beforeAll, expect, test } from 'vitest';
import { printedPdf } from '../../api/print/printed-pdf.ts';
import { ctxOf } from '../../api/procedure.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';
import { pageCount, pdfText } from '../builders/read-pdf.ts';

let t: TestProgram;
beforeAll(() => {
  t = aProgram({ beds: 4, years: 0 });
});
afterAll(() => t.end());

const print = async (parts: readonly object[], more: object = {}): Promise<Uint8Array> => {
  const { body } = await printedPdf(ctxOf(t.door), { title: 'Beds', paper: 'a4', seasonId: null, parts, ...more });
  if (!(body instanceof Uint8Array)) throw new Error('A PDF is bytes.');
  return body;
};

test('a table has its head, every row and the totals, over as many pages as it needs, with farm and page numbers on each', async () => {
  const rows = Array.from({ length: 150 }, (_, at) => [`Z-${at + 1}`, `${at + 1000}`]);
  const head = [
    { title: 'Bed', side: 'left' },
    { title: 'Soil', side: 'right' },
  ];
  const pdf = await print([{ kind: 'table', head, rows, totals: ['150 beds', '161175'] }]);
  const text = pdfText(pdf).replace(/[\s?]+/g, ' ');
  for (const [code = '', soil = ''] of rows) {
    expect(text).toContain(`${code} `);
    expect(text).toContain(soil);
  }
  expect(text).toContain('161175');
  const pages = pageCount(pdf);
  expect(pages).toBeGreaterThan(2);
  expect(text.split('Saltgrass').length - 1).toBe(pages);
  expect(text.split('Soil').length - 1).toBe(pages);
});

test('as many pages as sheets of labels, at the size of the paper, with nothing else on them', async () => {
  const sheet = (label: string) => ({
    kind: 'sheet',
    width_px: 816,
    height_px: 1056,
    shapes: [{ tag: 'text', attributes: { x: '40', y: '40', 'font-size': '12', fill: '#000000' }, text: label }],
  });
  for (const count of [1, 2, 5]) {
    const pdf = await print(
      Array.from({ length: count }, (_, at) => sheet(`L${at + 1}`)),
      { paper: 'letter' },
    );
    expect(pageCount(pdf)).toBe(count);
    expect(Buffer.from(pdf).toString('latin1')).toContain('/MediaBox [0 0 612 792]');
    expect(pdfText(pdf)).not.toContain('Saltgrass');
  }
});

test('what cannot be printed is refused with its reason', async () => {
  await expect(print([])).rejects.toThrow('There is nothing here to print.');
  await expect(print([{ kind: 'sheet', width_px: 90_000, height_px: 10, shapes: [] }])).rejects.toThrow('too large to print');
});
