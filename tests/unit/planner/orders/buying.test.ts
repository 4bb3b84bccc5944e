import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { loadPlan } from '../../../../planner/orders/loads.ts';
import { mulchVolume_L } from '../../../../planner/orders/mulch-volume.ts';
import { type FarmNeed, inTime, type NeedChoice, orderBy, pooledNeeds, purchaseNeeds } from '../../../../planner/orders/needs.ts';
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
const leads = ['straw', 'mix', 'chips'].flatMap((materialId) => [
  { supplierId: 'near', materialId, lead_days: 2 },
  { supplierId: 'far', materialId, lead_days: 30 },
]);
const given = (needs: readonly FarmNeed[], today = '2027-02-20') => ({
  needs,
  choices: new Map<string, NeedChoice>(),
  standIns: [{ materialId: 'straw', insteadId: 'chips', ratio: 0.8 }],
  leads,
  today: day(today),
  mustBeInTime: true,
});

describe('needs', () => {
  test('what is wanted soon is bought where it comes in time; what is late already, anywhere', () => {
    expect(inTime(leads, day('2027-02-20'), day('2027-03-01'))).toEqual(['near']);
    expect(orderBy(day('2027-03-01'), 30)).toBe('2027-01-30');
    expect(purchaseNeeds(given([need('a', 'straw', 5)]))[0]?.supplierIds).toEqual(['near']);
    expect(purchaseNeeds(given([need('a', 'straw', 5)], '2027-03-09'))[0]?.supplierIds).toBeUndefined();
  });

  test('the grower’s choice stands over the computed need; what is left out is gone', () => {
    const input = given([need('a', 'straw', 5), need('b', 'straw', 7)]);
    const choice = { amount: null, supplierId: null, left: false, wanted: null, standIns: true };
    input.choices.set('a', { ...choice, amount: 9, supplierId: 'far', standIns: false });
    input.choices.set('b', { ...choice, left: true });
    expect(purchaseNeeds(input)).toEqual([
      { id: 'a', amount: 9, materials: [{ materialId: 'straw', ratio: 1 }], supplierIds: ['far'] },
    ]);
  });

  test('another day than the computed one decides who is in time; a stand-in serves unless the need is kept from it', () => {
    const input = given([need('a', 'straw', 5)]);
    const both = [
      { materialId: 'straw', ratio: 1 },
      { materialId: 'chips', ratio: 0.8 },
    ];
    expect(purchaseNeeds(input)[0]?.materials).toEqual(both);
    const later = { amount: null, supplierId: null, left: false, wanted: day('2027-05-01'), standIns: false };
    input.choices.set('a', later);
    expect(purchaseNeeds(input)).toEqual([{ id: 'a', amount: 5, materials: both.slice(0, 1) }]);
  });

  test('an offer that takes longer than its supplier’s others is not in time', () => {
    const input = { ...given([need('a', 'straw', 5)]), standIns: [], leads: leads.map((each) => ({ ...each, lead_days: 30 })) };
    expect(purchaseNeeds({ ...input, today: day('2027-01-01') })[0]?.supplierIds).toBeUndefined();
    const one = leads.map((each) =>
      each.supplierId === 'near' && each.materialId === 'straw' ? { ...each, lead_days: 9 } : each,
    );
    expect(purchaseNeeds({ ...input, leads: one })[0]?.supplierIds).toEqual(['near']);
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
    seasonId: null as string | null,
  });
  const rows = seasonBudget(
    { seasonId: 's27', startDate: day('2027-01-01'), endDate: day('2027-12-31') },
    [
      spend('soil', '2027-03-02', 500, true),
      spend('soil', '2027-04-02', 300, false),
      spend('soil', '2026-04-02', 999, true),
      { ...spend('seed', '2026-11-25', 40, false), seasonId: 's27' },
      { ...spend('soil', '2027-05-01', 77, true), seasonId: 's28' },
    ],
    [
      { category: 'soil', month: null, amount_minor: 1000 },
      { category: 'seed', month: 3, amount_minor: 50 },
    ],
  );
  expect(rows.map((row) => row.category)).toEqual(['seed', 'soil']);
  expect(rows[1]).toMatchObject({ budget_minor: 1000, actual_minor: 500, committed_minor: 300, left_minor: 200 });
  const months = rows[1]?.months ?? [];
  expect(months.slice(3, 5)).toEqual([
    { month: 3, budget_minor: 0, actual_minor: 500, committed_minor: 0 },
    { month: 4, budget_minor: 0, actual_minor: 0, committed_minor: 300 },
  ]);
  expect(rows[0]?.months[3]).toMatchObject({ budget_minor: 50 });
  expect(rows[0]?.months[0]).toMatchObject({ month: 0, committed_minor: 40 });
});
