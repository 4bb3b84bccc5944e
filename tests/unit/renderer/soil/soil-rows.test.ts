import { describe, expect, test } from 'vitest';
import { chartBars, partNames } from '../../../../renderer/places/soil/budget-bars.ts';
import { measureText } from '../../../../renderer/places/soil/dose-cards.ts';
import type { BudgetRow } from '../../../../renderer/places/soil/soil-types.ts';

const row = (at: number, block: string): BudgetRow => ({
  bedId: `b${at}`,
  code: `${block}-${at}`,
  block,
  area_m2: 2,
  crops: 'Kale',
  testDate: null,
  phosphorusClass: '',
  potassiumClass: '',
  needN_kg: 0.02,
  needP2O5_kg: 0,
  needK2O_kg: 0,
  supplyN_kg: 0.008,
  supplyP2O5_kg: 0,
  supplyK2O_kg: 0,
  feedN_kg: 0.012,
  feedP2O5_kg: 0,
  feedK2O_kg: 0,
  surplus: '',
  parts: [{ kind: 'organic-matter', n_kg: 0.008, p2o5_kg: 0, k2o_kg: 0 }],
});

describe('bars of the budget', () => {
  test('supply and what is still to feed make up the need, grams to the square metre', () => {
    const { by, rows } = chartBars([row(1, 'A')], 'N');
    expect(by).toBe('bed');
    const bar = rows[0];
    expect((bar?.parts[0] ?? 0) + (bar?.feed_g_per_m2 ?? 0)).toBeCloseTo(bar?.need_g_per_m2 ?? Number.NaN, 9);
    expect(partNames(rows).map(([, name]) => name)).toEqual(['Organic matter']);
  });
  test('many beds are drawn block by block; beds without planting not at all', () => {
    const many = Array.from({ length: 60 }, (_, at) => row(at, at < 30 ? 'A' : 'B'));
    expect(chartBars(many, 'N')).toMatchObject({ by: 'block', rows: [{ name: 'A' }, { name: 'B' }] });
    expect(chartBars([{ ...row(1, 'A'), crops: '' }], 'N').rows).toEqual([]);
  });
});

describe('measures as read aloud', () => {
  const text = (scoops: number, spoons: number, teaspoons: number) =>
    measureText({ measure: { scoops, spoons, teaspoons, volume_L: 0 } });
  test.each([
    [2.5, 1, 0, '2½ scoops + 1 spoon'],
    [0.75, 0, 2, '¾ scoop + 2 teaspoons'],
    [0, 0, 0.5, '½ teaspoon'],
    [1, 3, 1, '1 scoop + 3 spoons + 1 teaspoon'],
  ])('%s scoops, %s spoons, %s teaspoons', (scoops, spoons, teaspoons, words) => {
    expect(text(scoops, spoons, teaspoons)).toBe(words);
  });
  test('without a density it is weighed', () => {
    expect(measureText({ measure: null })).toMatch(/weigh/);
  });
});
