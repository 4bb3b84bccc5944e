import { describe, expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { capitalRecovery_minor_per_year } from '../../../../planner/costs/capital-recovery.ts';
import { earningRows, NOBODY } from '../../../../planner/costs/earning-rows.ts';
import { incomeByBed, incomeOfLot } from '../../../../planner/costs/income-by-bed.ts';
import { seasonCharge_minor } from '../../../../planner/costs/part-charge.ts';
import { type Charge, type CostKind, type SpreadInput, spreadCharges } from '../../../../planner/costs/spread-charges.ts';

const bed = (bedId: string, area_m2 = 10) => ({ bedId, area_m2, fromDay: 0, toDay: 100 });
const stay = (plantingId: string, bedId: string, fromDay: number, toDay: number, area_m2 = 10) => ({
  plantingId,
  bedId,
  area_m2,
  fromDay,
  toDay,
});
/** Where 900 come to rest: bed, planting, amount. */
const spent = (farm: Partial<SpreadInput>, target: Charge['target']) =>
  spreadCharges({
    beds: [],
    stays: [],
    plantings: [],
    ...farm,
    charges: [{ kind: 'inputs', amount_minor: 900, target }],
  }).map((posting) => [posting.bedId, posting.plantingId, posting.amount_minor]);

describe('a cost comes to rest', () => {
  const planting = { to: 'planting' as const, plantingId: 'p1' };

  test('of a planting over two beds: by ground and time', () => {
    const farm = { beds: [bed('b1'), bed('b2')], stays: [stay('p1', 'b1', 0, 60, 2), stay('p1', 'b2', 0, 30, 8)] };
    expect(spent(farm, planting)).toEqual([
      ['b1', 'p1', 300],
      ['b2', 'p1', 600],
    ]);
  });

  test('of a planting that stood no day in the season: by ground; where it stood in one bed, that one', () => {
    const beds = [bed('b1'), bed('b2')];
    const before = [stay('p1', 'b1', -90, -10, 2), stay('p1', 'b2', -90, -10, 8)];
    expect(spent({ beds, stays: before }, planting)).toEqual([
      ['b1', 'p1', 180],
      ['b2', 'p1', 720],
    ]);
    expect(spent({ beds, stays: [stay('p1', 'b1', 0, 60, 2), stay('p1', 'b2', -50, -10, 8)] }, planting)).toEqual([
      ['b1', 'p1', 900],
    ]);
    expect(spent({ beds }, planting)).toEqual([[null, 'p1', 900]]);
  });

  test('whose bed and planting are both known: there', () => {
    const farm = { beds: [bed('b1')], stays: [stay('p2', 'b1', 0, 50)] };
    expect(spent(farm, { to: 'planting-in-bed', plantingId: 'p1', bedId: 'b1' })).toEqual([['b1', 'p1', 900]]);
  });

  test('of several beds: by the weights given, then on their plantings', () => {
    const weights = [
      { bedId: 'b1', weight: 2 },
      { bedId: 'b2', weight: 1 },
    ];
    const farm = { beds: [bed('b1'), bed('b2')], stays: [stay('p1', 'b1', 0, 100)] };
    expect(spent(farm, { to: 'beds', weights })).toEqual([
      ['b1', 'p1', 600],
      ['b2', null, 300],
    ]);
    expect(spent(farm, { to: 'bed', bedId: 'sold' })).toEqual([['sold', null, 900]]);
  });

  test.each([
    ['area', [300, 600]],
    ['bed-days', [600, 300]],
    ['plants', [600, 300]],
    ['hours', [800, 100]],
    // refunds above the sales weigh nothing
    ['income', [900]],
  ] as const)('of all, by %s', (key, amounts) => {
    const farm = {
      beds: [bed('b1', 10), { ...bed('b2', 20), toDay: 25 }],
      stays: [stay('p1', 'b1', 0, 100, 10), stay('p2', 'b2', 0, 25, 20)],
      plantings: [
        { plantingId: 'p1', plants: 200, labour_h: 8, income_minor: -50 },
        { plantingId: 'p2', plants: 100, labour_h: 1, income_minor: 700 },
      ],
    };
    expect(spent(farm, { to: 'all', key }).map(([, , amount]) => amount)).toEqual(amounts);
  });

  test('together with its like in the same place; what cancels is gone', () => {
    const of = (...amounts: number[]) =>
      spreadCharges({
        beds: [],
        stays: [],
        plantings: [],
        charges: amounts.map((amount_minor) => ({ kind: 'water', amount_minor, target: { to: 'nobody' } })),
      });
    expect(of(300, 200)).toEqual([{ kind: 'water', bedId: null, plantingId: null, amount_minor: 500 }]);
    expect(of(300, -300)).toEqual([]);
  });
});

test('each kind of cost has its column', () => {
  const kinds: readonly CostKind[] = [
    'parts',
    'fill',
    'inputs',
    'seed',
    'packing',
    'labour',
    'water',
    'power',
    'overhead',
    'stock-loss',
    'line-parts',
  ];
  const rows = earningRows(
    // one more nought for each kind
    kinds.map((kind, at) => ({ kind, bedId: 'b', plantingId: null, amount_minor: 10 ** at })),
    [{ plantingId: null, bedId: 'b', outletId: null, paid_minor: 5e9, sold_kg: 3 }],
    { of: (bedId) => bedId },
  );
  expect(rows).toEqual([
    {
      id: 'b',
      income_minor: 5_000_000_000,
      bed_minor: 11,
      direct_minor: 111_100,
      labour_minor: 100_000,
      water_minor: 10_011_000_000,
      lineParts_minor: 10_000_000_000,
      overhead_minor: 1_100_000_000,
      cost_minor: 11_111_111_111,
      contribution_minor: 4_999_888_900,
      margin_minor: -6_111_111_111,
      sold_kg: 3,
    },
  ]);
});

test('what belongs to no group has a row of its own', () => {
  const rows = earningRows(
    [{ kind: 'water', bedId: null, plantingId: null, amount_minor: 5 }],
    [{ plantingId: null, bedId: null, outletId: null, paid_minor: 9, sold_kg: 0 }],
    { of: (bedId) => bedId },
  );
  expect(rows).toMatchObject([{ id: NOBODY, income_minor: 9, water_minor: 5, margin_minor: 4 }]);
});

describe('income', () => {
  const stays = [stay('p', 'b1', 0, 10, 1), stay('p', 'b2', 0, 10, 3), stay('q', 'b3', 0, 10, 0)];
  const of = (plantingId: string | null, bedId: string | null) =>
    incomeByBed([{ plantingId, bedId, outletId: 'o', paid_minor: 400, sold_kg: 8 }], stays).map((each) => [
      each.bedId,
      each.paid_minor,
      each.sold_kg,
    ]);

  test('of a planting goes to its beds by ground; where the bed is known, there', () => {
    expect(of('p', null)).toEqual([
      ['b1', 100, 2],
      ['b2', 300, 6],
    ]);
    expect(of('p', 'b2')).toEqual([['b2', 400, 8]]);
  });

  test('of nobody, or of a planting without ground, stays without bed', () => {
    for (const nowhere of ['q', 'gone', null]) expect(of(nowhere, null)).toEqual([[null, 400, 8]]);
  });

  test('of a lot in which one harvest weighs nothing goes evenly', () => {
    const lot = [
      { plantingId: 'p1', bedId: 'b1', weight_kg: 3 },
      { plantingId: 'p2', bedId: null, weight_kg: 0 },
    ];
    expect(incomeOfLot(400, lot)).toEqual([
      { plantingId: 'p1', bedId: 'b1', paid_minor: 200 },
      { plantingId: 'p2', bedId: null, paid_minor: 200 },
    ]);
  });
});

describe('a part of a bed', () => {
  const part = { purchase_minor: 8000, salvage_minor: 0, life_years: 8 };
  const season = { start: '2025-01-01' as IsoDate, end: '2025-12-31' as IsoDate };
  const of = (from: string, until: string | null) =>
    seasonCharge_minor({ ...part, from: from as IsoDate, until: until as IsoDate | null }, season, 'straight-line', 0);

  test('that came or went within the season pays for its days, the day it went out not counted', () => {
    expect(of('2025-12-31', null)).toBeCloseTo(1000 / 365, 9);
    expect(of('2024-04-01', '2025-01-11')).toBeCloseTo(10_000 / 365, 9);
    expect(of('2024-04-01', '2025-01-01')).toBe(0);
  });

  test('costs interest on top where the farm charges it', () => {
    const whole = { ...part, from: '2024-04-01' as IsoDate, until: null };
    expect(seasonCharge_minor(whole, season, 'capital-recovery', 0.1)).toBeCloseTo(capitalRecovery_minor_per_year(part, 0.1), 6);
  });
});
