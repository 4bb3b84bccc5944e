import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { loadPlan } from '../../../../planner/orders/loads.ts';
import { mulchVolume_L } from '../../../../planner/orders/mulch-volume.ts';
import { type FarmNeed, inTime, orderBy, pooledNeeds, purchaseNeeds } from '../../../../planner/orders/needs.ts';
import { landedCost, type ReceiptLine, sentBack } from '../../../../planner/orders/receipt.ts';
import { seasonBudget } from '../../../../planner/orders/season-budget.ts';

const day = (text: string) => text as IsoDate;
const need = (key: string, materialId: string, amount: number, wanted = '2027-03-01'): FarmNeed => ({
  key,
  source: 'mulch',
  materialId,
  amount,
  reason: key,
  wanted: day(wanted),
});
const suppliers = [
  { supplierId: 'near', lead_days: 2 },
  { supplierId: 'far', lead_days: 30 },
];
const given = (needs: readonly FarmNeed[], today = '2027-02-20') => ({
  needs,
  choices: new Map<string, { amount: number | null; supplierId: string | null; left: boolean }>(),
  standIns: [],
  suppliers,
  today: day(today),
  mustBeInTime: true,
});

describe('needs', () => {
  test('what is wanted soon is bought where it comes in time; what is late already, anywhere', () => {
    expect(inTime(suppliers, day('2027-02-20'), day('2027-03-01'))).toEqual(['near']);
    expect(orderBy(day('2027-03-01'), 30)).toBe('2027-01-30');
    expect(purchaseNeeds(given([need('a', 'straw', 5)]))[0]?.supplierIds).toEqual(['near']);
    expect(purchaseNeeds(given([need('a', 'straw', 5)], '2027-03-09'))[0]?.supplierIds).toBeUndefined();
  });

  test('the grower’s choice stands over the computed need; what is left out is gone', () => {
    const input = given([need('a', 'straw', 5), need('b', 'straw', 7)]);
    input.choices.set('a', { amount: 9, supplierId: 'far', left: false });
    input.choices.set('b', { amount: null, supplierId: null, left: true });
    expect(purchaseNeeds(input)).toEqual([
      { id: 'a', amount: 9, materials: [{ materialId: 'straw', ratio: 1 }], supplierIds: ['far'] },
    ]);
  });

  test('pooling like needs keeps their sum', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom('straw', 'mix'), fc.integer({ min: 1, max: 900 })), { maxLength: 20 }),
        (draws) => {
          const needs = purchaseNeeds(given(draws.map(([material, amount], at) => need(`n${at}`, material, amount))));
          const { pooled } = pooledNeeds(needs);
          expect(pooled.length).toBeLessThanOrEqual(2);
          expect(pooled.reduce((sum, each) => sum + each.amount, 0)).toBe(draws.reduce((sum, [, amount]) => sum + amount, 0));
        },
      ),
    );
  });

  test('a mulch is ground by depth', () => {
    expect(mulchVolume_L(2.88, 0.04)).toBeCloseTo(115.2, 9);
    expect(() => mulchVolume_L(1, 2)).toThrow('depth_m');
  });
});

describe('a delivery', () => {
  const line = (lineId: string, now: number, price_minor = 100): ReceiptLine => ({
    lineId,
    ordered: 10,
    received: 0,
    returned: 0,
    packageAmount: 50,
    price_minor,
    now,
  });

  test('enters the stock at what was paid in all, to the minor unit', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 10 }), fc.integer({ min: 0, max: 9999 })), { minLength: 1, maxLength: 8 }),
        fc.nat(20_000),
        (draws, charges) => {
          const lines = draws.map(([now, price], at) => line(`l${at}`, now, price));
          const goods = lines.reduce((sum, each) => sum + each.now * each.price_minor, 0);
          if (lines.every((each) => each.now === 0)) return;
          expect(landedCost(lines, charges).reduce((sum, each) => sum + each.value_minor, 0)).toBe(goods + charges);
        },
      ),
    );
  });

  test('of more than was ordered, or of nothing, is refused; so is sending back what never came', () => {
    expect(() => landedCost([line('a', 11)], 0)).toThrow('too many');
    expect(() => landedCost([line('a', 0)], 0)).toThrow('Nothing was received');
    expect(() => sentBack(line('a', 1))).toThrow('Only 0 can go back');
    expect(sentBack({ ...line('a', 2), received: 5 })).toEqual({ lineId: 'a', amount: 100, value_minor: 200 });
  });

  test('takes as many journeys as weight or volume asks for, and one at least', () => {
    const freight = [
      { weight_kg: 900, volume_L: 1000 },
      { weight_kg: null, volume_L: 800 },
    ];
    expect(loadPlan(freight, { carries_kg: 650, holds_L: 1500 })).toEqual({
      weight_kg: 900,
      volume_L: 1800,
      unknown: 1,
      trips: 2,
      by: 'weight',
    });
    expect(loadPlan([{ weight_kg: null, volume_L: null }], { carries_kg: 650, holds_L: null }).trips).toBe(1);
    expect(loadPlan(freight, { carries_kg: null, holds_L: null }).trips).toBeNull();
  });
});

test('a budget’s rows hold every spending of the year and no other', () => {
  const spend = (category: string, date: string, amount_minor: number, received: boolean) => ({
    category,
    date: day(date),
    amount_minor,
    received,
  });
  const rows = seasonBudget(
    2027,
    [spend('soil', '2027-03-02', 500, true), spend('soil', '2027-04-02', 300, false), spend('soil', '2026-04-02', 999, true)],
    [
      { category: 'soil', month: null, amount_minor: 1000 },
      { category: 'seed', month: 3, amount_minor: 50 },
    ],
  );
  expect(rows.map((row) => row.category)).toEqual(['seed', 'soil']);
  expect(rows[1]).toMatchObject({ budget_minor: 1000, actual_minor: 500, committed_minor: 300, left_minor: 200 });
  expect(rows[1]?.months_minor.slice(2, 4)).toEqual([500, 300]);
});
