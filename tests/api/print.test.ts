import { afterAll, beforeAll, expect, test } from 'vitest';
import { printedPdf } from '../../api/print/printed-pdf.ts';
import { ctxOf } from '../../api/procedure.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';
import { pageCount, pdfPages, pdfText } from '../builders/read-pdf.ts';

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

const drawing = (label: string, more: object = {}) => ({
  kind: 'drawing',
  width_px: 600,
  height_px: 300,
  across: false,
  shapes: [
    { tag: 'rect', attributes: { x: '0', y: '0', width: '80', height: '40', stroke: '#000000' }, hatch: 0 },
    {
      tag: 'g',
      attributes: {},
      window: { x: 0, y: 0, width: 600, height: 300 },
      shapes: [{ tag: 'text', attributes: { x: '300', y: '100', 'font-size': '12', 'text-anchor': 'middle' }, text: label }],
    },
  ],
  hatches: [{ width: 6, height: 6, shapes: [{ tag: 'path', attributes: { d: 'M0 6 6 0', stroke: '#000000' } }] }],
  ...more,
});
const heading = (text: string) => ({ kind: 'heading', level: 1, text });

test('a drawing stands under its heading at its true size, hatched and cut off at its window', async () => {
  const pdf = await print([heading('Layers'), drawing('loam')]);
  const [page, ...others] = pdfPages(pdf);
  expect(others).toEqual([]);
  const [title, word] = ['Layers', 'loam'].map((text) => page?.texts.find((each) => each.text === text));
  // 12 pixels are 9 points; the middle of the word is 300 pixels from the margin of half an inch
  expect(word?.size_pt).toBeCloseTo(9, 5);
  expect(((word?.x_pt ?? 0) + (word?.end.x_pt ?? 0)) / 2).toBeCloseTo(36 + 225, 1);
  expect(title?.y_pt).toBeLessThan(word?.y_pt ?? 0);
  expect(Buffer.from(pdf).toString('latin1')).toContain('/PatternType 1');
});

test('a drawing larger than the page is made to fit, one that lies across turns its page and its heading', async () => {
  const pdf = await print([
    drawing('first'),
    heading('Second'),
    drawing('second', { width_px: 2000, across: true }),
    heading('Third'),
    drawing('third'),
  ]);
  const pages = pdfPages(pdf);
  expect(pages.map(({ width_pt, height_pt }) => width_pt > height_pt)).toEqual([false, true, false]);
  expect(pages.map(({ texts }) => texts.map(({ text }) => text).filter((text) => /second|third|first/i.test(text)))).toEqual([
    ['first'],
    ['Second', 'second'],
    ['Third', 'third'],
  ]);
  const second = pages[1]?.texts.find(({ text }) => text === 'second');
  expect(second?.end.x_pt).toBeLessThan(841.89 - 36);
  expect(second?.size_pt).toBeLessThan(9);
});

test('a page that fills drawing after drawing has no empty sheet between them', async () => {
  const whole = (label: string) => [heading(label), drawing(label, { width_px: 690, height_px: 940 })];
  const pdf = await print(['one', 'two', 'three'].flatMap(whole));
  expect(pageCount(pdf)).toBe(3);
});

test('cautions and names with their values are printed; a table without a head has no empty line', async () => {
  const side = 'left';
  const pdf = await print([
    { kind: 'caution', severity: 'stop', title: 'Stop: Electricity near water', texts: ['A licensed electrician.'] },
    {
      kind: 'table',
      head: [
        { title: '', side },
        { title: '', side },
      ],
      rows: [['Depth', '9 in']],
      totals: null,
      shares: [0.4, 0.6],
    },
  ]);
  const text = pdfText(pdf).replace(/\s+/g, ' ');
  for (const said of ['Electricity near water', 'licensed electrician', 'Depth', '9 in']) expect(text).toContain(said);
});

test('a drawing can name nothing outside its own list of shapes', async () => {
  const naming = (attributes: object) => print([drawing('x', { shapes: [{ tag: 'rect', attributes }] })]);
  await expect(naming({ fill: 'url(#other)' })).rejects.toThrow('refers to nothing outside itself');
  await expect(naming({ transform: 'https://example.invalid' })).rejects.toThrow('refers to nothing outside itself');
  await expect(naming({ href: 'x' })).rejects.toThrow();
  await expect(print([drawing('x', { shapes: [{ tag: 'image', attributes: {} }] })])).rejects.toThrow();
});
