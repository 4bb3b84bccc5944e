import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkWords, syndromes } from '../../../renderer/labels/galois.ts';
import { labelSheets, paperSizes_mm, placesOf } from '../../../renderer/labels/label-sheets.ts';
import { qrMatrix } from '../../../renderer/labels/qr-matrix.ts';

const BED_B_14 = [
  '#######..##.#.#######',
  '#.....#.......#.....#',
  '#.###.#.#.#.#.#.###.#',
  '#.###.#.#.#.#.#.###.#',
  '#.###.#.##..#.#.###.#',
  '#.....#.#.##..#.....#',
  '#######.#.#.#.#######',
  '........#.#..........',
  '#.#####....#..#####..',
  '###..#.....####...#..',
  '##....##.##.#.##..#.#',
  '..###...#######..###.',
  '##.##.####..#..#.....',
  '........#...#..#..#.#',
  '#######....#.#..#....',
  '#.....#.##.....##.#.#',
  '#.###.#.####.#..#.#..',
  '#.###.#.#..####..#...',
  '#.###.#.###.#.##.....',
  '#.....#..#.####..#..#',
  '#######.#...#..#..#..',
];

test('a block with its check words is whole, and one wrong word is noticed', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: 255 }), { minLength: 1, maxLength: 44 }),
      fc.integer({ min: 2, max: 26 }),
      fc.integer({ min: 1, max: 255 }),
      (message, words, error) => {
        const block = [...message, ...checkWords(message, words)];
        expect(syndromes(block, words).every((value) => value === 0)).toBe(true);
        const wrong = block.map((word, at) => (at === 0 ? word ^ error : word));
        expect(syndromes(wrong, words).some((value) => value !== 0)).toBe(true);
      },
    ),
  );
});

test('the code of bed B-14 is the one an independent encoder makes', () => {
  // compared once, module for module, with a general-purpose encoder of the same standard, and read back by a decoder
  const drawn = qrMatrix('B-14').map((row) => row.map((dark) => (dark ? '#' : '.')).join(''));
  expect(drawn).toEqual(BED_B_14);
});

test('a text longer than a label’s code holds is refused, not cut', () => {
  expect(qrMatrix('y'.repeat(106))).toHaveLength(41);
  expect(() => qrMatrix('y'.repeat(107))).toThrow(/too long/);
});

test('no label lies outside its paper or over another', () => {
  for (const sheet of labelSheets) {
    const paper = paperSizes_mm[sheet.paper];
    const places = placesOf(sheet, sheet.across * sheet.down, 0);
    for (const { page, x_mm, y_mm } of places) {
      expect(page).toBe(0);
      expect(x_mm + sheet.width_mm).toBeLessThanOrEqual(paper.width);
      expect(y_mm + sheet.height_mm).toBeLessThanOrEqual(paper.height);
    }
    expect(sheet.stepX_mm).toBeGreaterThanOrEqual(sheet.width_mm);
    expect(sheet.stepY_mm).toBeGreaterThanOrEqual(sheet.height_mm);
    expect(placesOf(sheet, 2, sheet.across * sheet.down - 1).map((place) => place.page)).toEqual([0, 1]);
  }
});
