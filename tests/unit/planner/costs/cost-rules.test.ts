import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { allocate_minor, explainShare, shareByArea } from '../../../../planner/costs/allocate.ts';
import {
  breakEvenPrice_minor,
  breakEvenYield,
  explainBreakEvenPrice,
  stayingCost_minor,
} from '../../../../planner/costs/break-even.ts';
import {
  capitalRecovery_minor_per_year,
  capitalRecoveryFactor,
  explainCapitalRecovery,
  yearlyCharges,
} from '../../../../planner/costs/capital-recovery.ts';
import {
  bookValues_minor,
  explainStraightLine,
  partYear,
  straightLine_minor_per_year,
} from '../../../../planner/costs/depreciation.ts';
import { budgetTotals, explainBudget } from '../../../../planner/costs/enterprise-budget.ts';
import { averageInterest_minor } from '../../../../planner/costs/operating-interest.ts';
import { explainMargin, grossMargin_minor, marginRates } from '../../../../planner/costs/returns.ts';
import { explainRevenueVariance, revenueVariance } from '../../../../planner/costs/variance.ts';
import { InputError } from '../../../../planner/errors.ts';

const faultOf = (run: () => unknown): string => {
  try {
    run();
  } catch (error) {
    if (error instanceof InputError) return error.faults[0]?.path ?? '';
    throw error;
  }
  return 'nothing refused';
};

const anyAsset = fc
  .record({
    purchase_minor: fc.integer({ min: 1, max: 5_000_000 }),
    kept: fc.double({ min: 0, max: 1, noNaN: true }),
    life_years: fc.integer({ min: 1, max: 40 }),
  })
  .map(({ purchase_minor, kept, life_years }) => ({
    purchase_minor,
    salvage_minor: Math.floor(purchase_minor * kept),
    life_years,
  }));
const anyRate = fc.double({ min: 0, max: 0.3, noNaN: true });

describe('cost of parts', () => {
  test('capital recovery equals depreciation and interest on the books, levelled', () => {
    fc.assert(
      fc.property(anyAsset, anyRate, (asset, rate) => {
        const levelled = yearlyCharges(asset, rate).levelled_minor_per_year;
        expect(levelled / capitalRecovery_minor_per_year(asset, rate)).toBeCloseTo(1, 8);
      }),
    );
  });

  test('without interest capital recovery is the straight line', () => {
    fc.assert(
      fc.property(anyAsset, (asset) => {
        expect(capitalRecovery_minor_per_year(asset, 0)).toBeCloseTo(straightLine_minor_per_year(asset), 6);
      }),
    );
  });

  test('a very small rate goes over into one over the life', () => {
    expect(capitalRecoveryFactor(1e-12, 8)).toBeCloseTo(0.125, 10);
  });

  test('a part ends at its salvage value', () => {
    fc.assert(
      fc.property(anyAsset, (asset) => {
        expect(bookValues_minor(asset).at(-1)).toBeCloseTo(asset.salvage_minor, 4);
      }),
    );
  });

  test('a whole year of days carries a whole year of cost', () => {
    const asset = { purchase_minor: 18_000, salvage_minor: 0, life_years: 6 };
    expect(partYear(asset, '2025-01-01' as IsoDate, '2025-12-31' as IsoDate)).toEqual({ days: 365, charge_minor: 3000 });
  });

  test('a life of nothing, a salvage above the price and dates the wrong way round are refused at the field', () => {
    expect(faultOf(() => straightLine_minor_per_year({ purchase_minor: 1, salvage_minor: 0, life_years: 0 }))).toBe('life_years');
    expect(faultOf(() => straightLine_minor_per_year({ purchase_minor: 1, salvage_minor: 2, life_years: 1 }))).toBe(
      'salvage_minor',
    );
    expect(faultOf(() => capitalRecoveryFactor(1.5, 5))).toBe('interest_share_per_year');
    const asset = { purchase_minor: 1, salvage_minor: 0, life_years: 1 };
    expect(faultOf(() => partYear(asset, '2025-02-02' as IsoDate, '2025-02-01' as IsoDate))).toBe('until');
  });

  test('the workings end in the same figures', () => {
    const asset = { purchase_minor: 10_000, salvage_minor: 1000, life_years: 4 };
    expect(explainStraightLine(asset).result.value).toBe(straightLine_minor_per_year(asset));
    expect(explainCapitalRecovery(asset, 0.1).result.value).toBe(capitalRecovery_minor_per_year(asset, 0.1));
  });
});

describe('shared costs', () => {
  test('parts add up to the whole, whatever the weights', () => {
    const anyWeights = fc.array(fc.double({ min: 0, max: 1e6, noNaN: true }), { maxLength: 40 });
    fc.assert(
      fc.property(fc.integer({ min: -1e7, max: 1e9 }), anyWeights, (amount, weights) => {
        const { parts_minor, unallocated_minor } = allocate_minor(amount, weights);
        expect(parts_minor.reduce((sum, part) => sum + part, 0) + unallocated_minor).toBe(amount);
      }),
    );
  });

  test('no share is further than one minor unit from its exact value', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e9 }),
        fc.array(fc.integer({ min: 1, max: 999 }), { minLength: 1, maxLength: 30 }),
        (amount, weights) => {
          const whole = weights.reduce((sum, each) => sum + each, 0);
          allocate_minor(amount, weights).parts_minor.forEach((part, at) => {
            expect(Math.abs(part - (amount * (weights[at] ?? 0)) / whole)).toBeLessThan(1);
          });
        },
      ),
    );
  });

  test('shares that do not add up to one, and a negative weight, are refused', () => {
    expect(faultOf(() => shareByArea(100, [{ share: 0.5, area_m2: 1 }]))).toBe('share');
    expect(faultOf(() => allocate_minor(100, [1, -1]))).toBe('weights.1');
  });

  test('the working of a share ends in the share', () => {
    expect(explainShare(100, [1, 1, 1], 0, 'm2').result.value).toBe(34);
  });
});

describe('budgets, break-even and variance', () => {
  const budget = {
    receipts: [{ item: 'tomatoes', quantity: 1500, price_minor_per_unit: 2400 }],
    variable: [{ item: 'cases', quantity: 1500, price_minor_per_unit: 170, printed_minor: 255_000 }],
    operatingInterest_minor: 0,
    fixed: [{ item: 'land', printed_minor: 5000 }],
  };

  test('the working of the net return ends in it', () => {
    expect(explainBudget(budget).result.value).toBe(budgetTotals(budget).net_minor);
  });

  test('a printed total that is not price times quantity is told', () => {
    const odd = { ...budget, variable: [{ item: 'lime', quantity: 0.33, price_minor_per_unit: 4000, printed_minor: 1300 }] };
    expect(budgetTotals(odd).differing).toEqual([{ item: 'lime', printed_minor: 1300, product_minor: 1320 }]);
  });

  test('at the break-even yield nothing is earned and nothing lost', () => {
    const input = { fixed_minor: 1_026_500, price_minor_per_unit: 2400, following_minor_per_unit: 170, sellingShare: 0.03 };
    const found = breakEvenYield(input);
    if (found.state !== 'found') throw new Error('expected one');
    const kept = found.amount * (2400 * 0.97 - 170);
    expect(kept).toBeCloseTo(1_026_500, 4);
  });

  test('where each unit costs what it brings there is no break-even', () => {
    expect(
      breakEvenYield({ fixed_minor: 100, price_minor_per_unit: 100, following_minor_per_unit: 100, sellingShare: 0 }).state,
    ).toBe('no-break-even');
  });

  test('nothing sold has no break-even price', () => {
    expect(faultOf(() => breakEvenPrice_minor(100, 0))).toBe('sold');
    expect(explainBreakEvenPrice(100, 4, 'kg').result.value).toBe(25);
    expect(stayingCost_minor(1000, 2, 100)).toBe(800);
  });

  test('the causes add up to the difference from the plan', () => {
    const stand = fc.record({
      area_m2: fc.double({ min: 0, max: 500, noNaN: true }),
      yield_kg_per_m2: fc.double({ min: 0, max: 12, noNaN: true }),
      price_minor_per_kg: fc.integer({ min: 0, max: 5000 }),
    });
    fc.assert(
      fc.property(stand, stand, (plan, actual) => {
        const found = revenueVariance(plan, actual);
        expect(found.sum_minor).toBeCloseTo(found.actual_minor - found.plan_minor, 3);
        expect(explainRevenueVariance(plan, actual).result.value).toBe(found.sum_minor);
      }),
    );
  });

  test('margins by bed-week fall as the stand takes longer', () => {
    const stand = { gross_minor: 21_250, variable_minor: 6840, bedArea_m2: 9.3, beds: 1, occupied_days: 63 };
    expect(marginRates({ ...stand, occupied_days: 126 }).margin_minor_per_bed_week).toBeCloseTo(
      marginRates(stand).margin_minor_per_bed_week / 2,
      8,
    );
    expect(marginRates({ ...stand, gross_minor: 0 }).marginShare).toBeNull();
    expect(explainMargin(100, 30).result.value).toBe(grossMargin_minor(100, 30));
    expect(faultOf(() => marginRates({ ...stand, beds: 0 }))).toBe('beds');
  });

  test('interest is a whole number of minor units', () => {
    expect(averageInterest_minor({ cost_minor: 273_949, interest_share_per_year: 0.1, months: 6, outstandingShare: 0.5 })).toBe(
      6849,
    );
  });
});
