import { describe, expect, test } from 'vitest';
import { breakEvenBeds, labourShare } from '../../../../planner/costs/break-even.ts';
import { chanceOfCover, tornado } from '../../../../planner/costs/chance.ts';
import { priceRange, standOf, yieldRange } from '../../../../planner/costs/stand-figures.ts';
import { costVariance } from '../../../../planner/costs/variance.ts';

const input = {
  sold: { low: 60, typical: 100, high: 140 },
  price_minor_per_unit: { low: 200, typical: 250, high: 300 },
  fixed_minor: 15_000,
  following_minor_per_unit: 20,
  correlation: 0,
  draws: 40_000,
  seed: 7,
};
const always = (value: number) => ({ low: value, typical: value, high: value });

describe('the chance of covering its cost', () => {
  test('has a tenth of the draws below its low end, a tenth above its high end, half below the middle', () => {
    const found = chanceOfCover({
      ...input,
      price_minor_per_unit: always(250),
      following_minor_per_unit: 0,
      fixed_minor: 25_000,
    });
    // a triangle 60 - 100 - 140: a tenth lies below 60 + sqrt(0.1 x 80 x 40). Of 40,000 draws the standard error of that place is
    // sqrt(0.1 x 0.9 / 40,000) / density = 0.13; 250 a unit and five of them are 160
    const tenth = 60 + Math.sqrt(0.1 * 80 * 40);
    expect(Math.abs(found.p10_minor - (250 * tenth - 25_000))).toBeLessThan(160);
    expect(Math.abs(found.p90_minor - (250 * (200 - tenth) - 25_000))).toBeLessThan(160);
    expect(Math.abs(found.median_minor)).toBeLessThan(160);
    expect(Math.abs(found.covers_share - 0.5)).toBeLessThan(0.0125);
  });

  test('spreads more where a good yield and a good price come together', () => {
    const spread = (correlation: number) => {
      const { p10_minor, p90_minor } = chanceOfCover({ ...input, correlation });
      return p90_minor - p10_minor;
    };
    expect(spread(1)).toBeGreaterThan(spread(0.5));
    expect(spread(0.5)).toBeGreaterThan(spread(0));
    expect(spread(0)).toBeGreaterThan(spread(-0.5));
  });

  test('is all where the net comes to nothing exactly', () => {
    const even = { ...input, sold: always(100), price_minor_per_unit: always(170), draws: 10 };
    expect(chanceOfCover(even)).toMatchObject({ covers_share: 1, mean_minor: 0, p10_minor: 0, p90_minor: 0 });
  });
});

test('what matters most: one thing at its ends, the others as usual; a cost that is high lowers the net', () => {
  // 100 sold at 250 - 20, less 15,000, is 8,000
  const bars = tornado({
    sold: input.sold,
    price_minor_per_unit: input.price_minor_per_unit,
    fixed_minor: { low: 14_000, typical: 15_000, high: 16_000 },
    following_minor_per_unit: { low: 10, typical: 20, high: 40 },
  });
  expect(bars).toEqual([
    { cause: 'Yield', low_minor: -1200, high_minor: 17_200, swing_minor: 18_400 },
    { cause: 'Price', low_minor: 3000, high_minor: 13_000, swing_minor: 10_000 },
    { cause: 'Cost of each unit', low_minor: 6000, high_minor: 9000, swing_minor: 3000 },
    { cause: 'Cost that stays', low_minor: 7000, high_minor: 9000, swing_minor: 2000 },
  ]);
});

describe('ranges of a stand', () => {
  test('of its yield: the planned one, else a third either way; the usual value always lies within', () => {
    expect(yieldRange({ low: 20, typical: 30, high: 50 }, 99)).toEqual({ low: 20, typical: 30, high: 50 });
    const around = yieldRange({ low: null, typical: null, high: null }, 30);
    expect(around.typical).toBe(30);
    expect(around.low).toBeCloseTo(20, 9);
    expect(around.high).toBeCloseTo(40, 9);
    expect(yieldRange({ low: 40, typical: 30, high: 25 }, 1)).toEqual({ low: 30, typical: 30, high: 30 });
  });

  test('of its price: the farm’s own where prices differ, else a fifth either way', () => {
    expect(priceRange([300, 200, 0, 260], 999)).toEqual({ low: 200, typical: 260, high: 300 });
    for (const own of [[], [250], [250, 250], [0, -5]])
      expect(priceRange(own, 250)).toEqual({ low: 200, typical: 250, high: 300 });
  });

  test('without ground there is no yield, without harvest no price', () => {
    expect(standOf(5, 20, 6000)).toEqual({ area_m2: 5, yield_kg_per_m2: 4, price_minor_per_kg: 300 });
    expect(standOf(0, 20, 6000)).toMatchObject({ yield_kg_per_m2: 0, price_minor_per_kg: 300 });
    expect(standOf(5, 0, 6000)).toMatchObject({ yield_kg_per_m2: 0, price_minor_per_kg: 0 });
  });
});

test('a cost is off its plan by the quantity at the planned price and the price at the quantity used', () => {
  const plan = { amount: 10, price_minor_per_unit: 100 };
  expect(costVariance(plan, { amount: 13, price_minor_per_unit: 120 })).toEqual({
    quantity_minor: 300,
    price_minor: 260,
    sum_minor: 560,
  });
});

test('beds that cover the overhead, and the share of labour', () => {
  expect(breakEvenBeds(900, 300)).toEqual({ state: 'found', amount: 3 });
  expect(breakEvenBeds(900, 0).state).toBe('no-break-even');
  expect(labourShare([100, 50], 600)).toEqual({ labour_minor: 150, share: 0.25 });
});
