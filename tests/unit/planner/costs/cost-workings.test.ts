import { expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { explainShare } from '../../../../planner/costs/allocate.ts';
import { explainBreakEvenPrice } from '../../../../planner/costs/break-even.ts';
import { explainCapitalRecovery } from '../../../../planner/costs/capital-recovery.ts';
import { explainChance } from '../../../../planner/costs/chance.ts';
import { explainStraightLine } from '../../../../planner/costs/depreciation.ts';
import { explainBudget } from '../../../../planner/costs/enterprise-budget.ts';
import { explainSeasonCharge, seasonCharge_minor } from '../../../../planner/costs/part-charge.ts';
import { explainEarning } from '../../../../planner/costs/per-measure.ts';
import { explainMargin } from '../../../../planner/costs/returns.ts';
import { explainRevenueVariance } from '../../../../planner/costs/variance.ts';
import { explainYield } from '../../../../planner/costs/yield-against.ts';
import { linesOf } from '../../../builders/working-lines.ts';

// What a reader is shown when a figure of the Costs place is opened: every symbol with its own value and unit, and the steps between.

test('a share of a common cost shows the cost, its weight and all weights', () => {
  expect(linesOf(explainShare(900, [1, 3, 5], 1, 'm2'))).toEqual({
    symbols: { C: '900 minor', w: '3 m2', W: '9 m2' },
    steps: [],
    result: '300 minor',
  });
  expect(linesOf(explainShare(900, [1], 4, 'h')).symbols).toMatchObject({ w: '0 h' });
});

test('a break-even price shows cost and sales', () => {
  const working = explainBreakEvenPrice(1000, 8, 'bunch');
  expect(linesOf(working)).toEqual({ symbols: { C: '1000 minor', Q: '8 bunch' }, steps: [], result: '125 minor' });
  expect(working.symbols[1]?.origin.text).toBe('your sales');
});

// University of Maryland Extension, The DIRTI-5: 30,000 to 10,000 over 10 years is 2,000 a year
test('the straight line shows price, salvage and life', () => {
  const { symbols, steps, result } = linesOf(
    explainStraightLine({ purchase_minor: 3_000_000, salvage_minor: 1_000_000, life_years: 10 }),
  );
  expect(symbols).toEqual({ P: '3000000 minor', S: '1000000 minor', n: '10 years' });
  expect(steps).toEqual(['2000000 minor']);
  expect(result).toBe('200000 minor');
});

test('capital recovery shows its factor on the way', () => {
  const working = explainCapitalRecovery({ purchase_minor: 1000, salvage_minor: 0, life_years: 2 }, 0.1);
  // (1.1^2 x 0.1) / (1.1^2 - 1) = 0.121 / 0.21
  expect(working.steps[0]?.result.value).toBeCloseTo(0.121 / 0.21, 12);
  expect(working.steps[0]?.figures).toBe('i = 0.1, n = 2');
  expect(linesOf(working).symbols).toEqual({ P: '1000 minor', S: '0 minor', n: '2 years', i: '0.1 share' });
});

test('the net return of a budget shows gross, the three kinds of cost and the return over variable cost', () => {
  const working = explainBudget({
    receipts: [{ item: 'tomatoes', quantity: 10, price_minor_per_unit: 1000 }],
    variable: [{ item: 'lime', quantity: 0.33, price_minor_per_unit: 4000, printed_minor: 1300 }],
    operatingInterest_minor: 200,
    fixed: [{ item: 'land', printed_minor: 500 }],
    managementFee: { share: 0.1, leftOut_minor: 0 },
  });
  expect(linesOf(working)).toEqual({
    symbols: { G: '10000 minor', V: '1500 minor', F: '500 minor', M: '200 minor' },
    steps: ['8500 minor', '2200 minor'],
    result: '7800 minor',
  });
  expect(working.steps.map((step) => step.figures)).toEqual(['10000 - 1500', '1500 + 500 + 200']);
  expect(working.notes).toEqual([expect.stringMatching(/^lime:/)]);
});

test('a margin shows income and the four kinds of cost', () => {
  const working = explainEarning({
    name: 'A-01',
    income_minor: 1000,
    direct_minor: 300,
    bed_minor: 100,
    water_minor: 50,
    lineParts_minor: 20,
    overhead_minor: 25,
    margin_minor: 525,
  });
  expect(linesOf(working)).toEqual({
    symbols: { I: '1000 minor', D: '300 minor', B: '100 minor', W: '50 minor', O: '25 minor' },
    steps: ['30 minor', '475 minor'],
    result: '525 minor',
  });
  expect(working.steps.map((step) => step.figures)).toEqual(['50 - 20', '300 + 100 + 50 + 25']);
  expect(linesOf(explainMargin(1000, 300)).symbols).toEqual({ G: '1000 minor', V: '300 minor' });
});

test('income against plan shows what ground, yield and price each did', () => {
  const plan = { area_m2: 10, yield_kg_per_m2: 2, price_minor_per_kg: 300 };
  const actual = { area_m2: 8, yield_kg_per_m2: 3, price_minor_per_kg: 250 };
  expect(linesOf(explainRevenueVariance(plan, actual))).toEqual({
    symbols: { Ap: '10 m2', Aa: '8 m2', Yp: '2 kg_per_m2', Ya: '3 kg_per_m2', pp: '300 minor', pa: '250 minor' },
    // (8 - 10) 2 x 300, 8 (3 - 2) 300, 8 x 3 (250 - 300)
    steps: ['-1200 minor', '2400 minor', '-1200 minor'],
    result: '0 minor',
  });
});

test('a yield shows the harvest, its ground and, where there is a plan, what was expected', () => {
  const row = { name: 'Kale', harvested: 12, unit: 'kg', area_m2: 6, expected: 15 };
  expect(linesOf(explainYield(row))).toEqual({
    symbols: { H: '12 kg', A: '6 m2', E: '15 kg' },
    steps: [],
    result: '2 kg_per_m2',
  });
  expect(Object.keys(linesOf(explainYield({ ...row, expected: null })).symbols)).toEqual(['H', 'A']);
  expect(linesOf(explainYield({ ...row, area_m2: 0 })).result).toBe('0 kg_per_m2');
});

test('the chance of covering its cost shows both ranges, what stays and what follows, and the spread of the net', () => {
  const same = (value: number) => ({ low: value, typical: value, high: value });
  const sure = explainChance(
    {
      sold: same(100),
      price_minor_per_unit: same(250),
      fixed_minor: 15_000,
      following_minor_per_unit: 20,
      correlation: 0,
      draws: 10,
      seed: 3,
    },
    'kg',
  );
  expect(linesOf(sure)).toEqual({
    symbols: {
      'Q low': '100 kg',
      Q: '100 kg',
      'Q high': '100 kg',
      'p low': '250 minor',
      p: '250 minor',
      'p high': '250 minor',
      F: '15000 minor',
      v: '20 minor',
    },
    // 100 (250 - 20) - 15,000 in every draw
    steps: ['8000 minor', '8000 minor', '8000 minor'],
    result: '1 share',
  });
});

test('a part’s season is its year by the days it stood within its life, and the working ends in the charge', () => {
  const part = {
    purchase_minor: 7300,
    salvage_minor: 0,
    life_years: 2,
    from: '2026-12-02' as IsoDate,
    until: null,
  };
  const season = { start: '2026-01-01' as IsoDate, end: '2026-12-31' as IsoDate };
  for (const method of ['straight-line', 'capital-recovery'] as const) {
    const working = explainSeasonCharge('Pump', part, season, method, 0.05);
    expect(working.result.value).toBe(seasonCharge_minor(part, season, method, 0.05));
    expect(working.symbols[1]?.figure).toEqual({ value: 30, unit: 'days' });
    expect(working.symbols[0]?.figure.value).toBe(working.parts?.[0]?.result.value);
  }
  // 7,300 over two years is 3,650 a year, 10 a day: 30 days from December 2 on
  expect(seasonCharge_minor(part, season, 'straight-line', 0)).toBeCloseTo(300, 9);
});

test('every working of the place names what it rests on', () => {
  const asset = { purchase_minor: 1000, salvage_minor: 0, life_years: 2 };
  for (const { sources } of [
    explainShare(900, [1], 0, 'm2'),
    explainBreakEvenPrice(1000, 8, 'bunch'),
    explainStraightLine(asset),
    explainCapitalRecovery(asset, 0.1),
    explainMargin(1, 1),
    explainYield({ name: 'Kale', harvested: 1, unit: 'kg', area_m2: 1, expected: null }),
    explainEarning({
      name: 'A-01',
      income_minor: 1,
      direct_minor: 0,
      bed_minor: 0,
      water_minor: 0,
      lineParts_minor: 0,
      overhead_minor: 0,
      margin_minor: 1,
    }),
  ])
    expect(sources.join()).not.toBe('');
});
