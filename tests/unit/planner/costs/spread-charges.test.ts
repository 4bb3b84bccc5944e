import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { earningRows } from '../../../../planner/costs/earning-rows.ts';
import { incomeByBed, incomeOfLot } from '../../../../planner/costs/income-by-bed.ts';
import { seasonCharge_minor } from '../../../../planner/costs/part-charge.ts';
import { explainEarning } from '../../../../planner/costs/per-measure.ts';
import { type Charge, type CostKind, type SpreadInput, spreadCharges } from '../../../../planner/costs/spread-charges.ts';

const kinds: readonly CostKind[] = [
  'parts',
  'fill',
  'inputs',
  'seed',
  'packing',
  'labour',
  'water',
  'power',
  'line-parts',
  'overhead',
];
const bedIds = ['b1', 'b2', 'b3', 'b4'];
const plantingIds = ['p1', 'p2', 'p3', 'p4', 'p5'];

const anyTarget: fc.Arbitrary<Charge['target']> = fc.oneof(
  fc.constantFrom(...plantingIds, 'gone').map((plantingId) => ({ to: 'planting' as const, plantingId })),
  fc.constantFrom(...bedIds, 'gone').map((bedId) => ({ to: 'bed' as const, bedId })),
  fc
    .array(fc.record({ bedId: fc.constantFrom(...bedIds), weight: fc.double({ min: 0, max: 9, noNaN: true }) }), { maxLength: 4 })
    .map((weights) => ({ to: 'beds' as const, weights })),
  fc.constantFrom('area', 'bed-days', 'plants', 'hours', 'income').map((key) => ({ to: 'all' as const, key })),
  fc.constant({ to: 'nobody' as const }),
);

const anyFarm: fc.Arbitrary<SpreadInput> = fc.record({
  beds: fc.constantFrom(bedIds, bedIds.slice(0, 1), []).chain((ids) =>
    fc.tuple(
      ...ids.map((bedId) =>
        fc.record({
          bedId: fc.constant(bedId),
          area_m2: fc.double({ min: 0, max: 20, noNaN: true }),
          fromDay: fc.integer({ min: 0, max: 200 }),
          toDay: fc.integer({ min: 150, max: 365 }),
        }),
      ),
    ),
  ),
  stays: fc.array(
    fc.record({
      plantingId: fc.constantFrom(...plantingIds),
      bedId: fc.constantFrom(...bedIds),
      area_m2: fc.double({ min: 0, max: 20, noNaN: true }),
      fromDay: fc.integer({ min: 0, max: 300 }),
      toDay: fc.integer({ min: 0, max: 365 }),
    }),
    { maxLength: 8 },
  ),
  plantings: fc.constant(plantingIds).chain((ids) =>
    fc.tuple(
      ...ids.map((plantingId) =>
        fc.record({
          plantingId: fc.constant(plantingId),
          plants: fc.nat(200),
          labour_h: fc.double({ min: 0, max: 50, noNaN: true }),
          income_minor: fc.integer({ min: -500, max: 90_000 }),
        }),
      ),
    ),
  ),
  charges: fc.array(
    fc.record({ kind: fc.constantFrom(...kinds), amount_minor: fc.integer({ min: -10_000, max: 500_000 }), target: anyTarget }),
    { maxLength: 30 },
  ),
});

const sumOf = (rows: readonly { readonly amount_minor: number }[]): number =>
  rows.reduce((sum, row) => sum + row.amount_minor, 0);

describe('costs of a season', () => {
  test('what is posted is what was spent, kind by kind, on any farm', () => {
    fc.assert(
      fc.property(anyFarm, (farm) => {
        const postings = spreadCharges(farm);
        for (const kind of kinds) {
          const of = (rows: readonly { readonly kind: CostKind; readonly amount_minor: number }[]) =>
            sumOf(rows.filter((row) => row.kind === kind));
          expect(of(postings)).toBe(of(farm.charges));
        }
      }),
      { numRuns: 300 },
    );
  });

  test('rows by bed and rows by planting add up to the same', () => {
    fc.assert(
      fc.property(anyFarm, (farm) => {
        const postings = spreadCharges(farm);
        const byBed = earningRows(postings, [], { of: (bedId) => bedId });
        const byPlanting = earningRows(postings, [], { of: (_, plantingId) => plantingId });
        const total = (rows: typeof byBed) => rows.reduce((sum, row) => sum + row.cost_minor, 0);
        expect(total(byBed)).toBe(sumOf(farm.charges));
        expect(total(byPlanting)).toBe(sumOf(farm.charges));
      }),
    );
  });

  const bed = (bedId: string, area_m2 = 10) => ({ bedId, area_m2, fromDay: 0, toDay: 100 });
  const stay = (plantingId: string, bedId: string, fromDay: number, toDay: number, area_m2 = 10) => ({
    plantingId,
    bedId,
    area_m2,
    fromDay,
    toDay,
  });
  const weights = plantingIds.map((plantingId) => ({ plantingId, plants: 1, labour_h: 1, income_minor: 1 }));

  test('a bed with two plantings in a year is shared by days; idle days stay with the bed', () => {
    const postings = spreadCharges({
      beds: [bed('b1')],
      stays: [stay('p1', 'b1', 0, 30), stay('p2', 'b1', 40, 90)],
      plantings: weights,
      charges: [{ kind: 'parts', amount_minor: 10_000, target: { to: 'bed', bedId: 'b1' } }],
    });
    expect(postings).toEqual([
      { kind: 'parts', bedId: 'b1', plantingId: 'p1', amount_minor: 3000 },
      { kind: 'parts', bedId: 'b1', plantingId: 'p2', amount_minor: 5000 },
      { kind: 'parts', bedId: 'b1', plantingId: null, amount_minor: 2000 },
    ]);
  });

  test('work for nobody and a key that nobody weighs under are kept apart, not lost', () => {
    const postings = spreadCharges({
      beds: [],
      stays: [],
      plantings: [{ plantingId: 'p1', plants: 0, labour_h: 0, income_minor: 0 }],
      charges: [
        { kind: 'labour', amount_minor: 500, target: { to: 'nobody' } },
        { kind: 'overhead', amount_minor: 700, target: { to: 'all', key: 'income' } },
      ],
    });
    expect(postings).toEqual([
      { kind: 'labour', bedId: null, plantingId: null, amount_minor: 500 },
      { kind: 'overhead', bedId: null, plantingId: null, amount_minor: 700 },
    ]);
  });

  test('margins do not depend on the order of the beds', () => {
    const farm = {
      beds: [bed('b1', 4), bed('b2', 8), bed('b3', 2)],
      stays: [stay('p1', 'b1', 0, 60, 4), stay('p2', 'b2', 10, 100, 8), stay('p3', 'b3', 0, 100, 2)],
      plantings: weights,
      charges: [
        { kind: 'overhead' as const, amount_minor: 14_000, target: { to: 'all' as const, key: 'area' as const } },
        { kind: 'water' as const, amount_minor: 2800, target: { to: 'all' as const, key: 'bed-days' as const } },
      ],
    };
    const rows = (of: SpreadInput) =>
      [...earningRows(spreadCharges(of), [], { of: (bedId) => bedId })].sort((a, b) => a.id.localeCompare(b.id));
    expect(rows({ ...farm, beds: [...farm.beds].reverse() })).toEqual(rows(farm));
  });
});

describe('income', () => {
  test('of a planting over several beds is shared to the minor unit', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -5000, max: 500_000 }),
        fc.array(fc.double({ min: 0.1, max: 20, noNaN: true }), { minLength: 1, maxLength: 9 }),
        (paid, areas) => {
          const stays = areas.map((area_m2, at) => ({ plantingId: 'p', bedId: `b${at}`, area_m2, fromDay: 0, toDay: 10 }));
          const shared = incomeByBed([{ plantingId: 'p', bedId: null, outletId: 'o', paid_minor: paid, sold_kg: 12 }], stays);
          expect(shared.reduce((sum, line) => sum + line.paid_minor, 0)).toBe(paid);
          expect(shared.reduce((sum, line) => sum + line.sold_kg, 0)).toBeCloseTo(12, 8);
        },
      ),
    );
  });

  test('of a mixed lot goes by weight, or evenly where a weight is missing', () => {
    const of = (weight_kg: number | null) => [
      { plantingId: 'p1', bedId: null, weight_kg: 3 },
      { plantingId: 'p2', bedId: null, weight_kg },
    ];
    expect(incomeOfLot(400, of(1)).map((each) => each.paid_minor)).toEqual([300, 100]);
    expect(incomeOfLot(400, of(null)).map((each) => each.paid_minor)).toEqual([200, 200]);
  });

  test('the working of a margin ends in it', () => {
    const [row] = earningRows(
      [{ kind: 'labour', bedId: 'b', plantingId: 'p', amount_minor: 300 }],
      [{ plantingId: 'p', bedId: 'b', outletId: null, paid_minor: 1000, sold_kg: 2 }],
      { of: (bedId) => bedId },
    );
    if (row === undefined) throw new Error('expected a row');
    expect(row).toMatchObject({ contribution_minor: 700, margin_minor: 700, labour_minor: 300 });
    expect(explainEarning({ ...row, name: 'b' }).result.value).toBe(row.margin_minor);
  });
});

describe('parts over their years', () => {
  const part = { purchase_minor: 8000, salvage_minor: 0, life_years: 8, from: '2024-04-01' as IsoDate, until: null };
  const season = { start: '2025-01-01' as IsoDate, end: '2025-12-31' as IsoDate };

  test('a part costs a year’s share in each full year, none after its life and none before it was built', () => {
    expect(seasonCharge_minor(part, season, 'straight-line', 0)).toBeCloseTo(1000, 9);
    expect(seasonCharge_minor(part, { start: '2034-01-01' as IsoDate, end: '2034-12-31' as IsoDate }, 'straight-line', 0)).toBe(
      0,
    );
    expect(seasonCharge_minor(part, { start: '2023-01-01' as IsoDate, end: '2023-12-31' as IsoDate }, 'straight-line', 0)).toBe(
      0,
    );
  });

  test('over its whole life it costs what was paid for it', () => {
    let sum = 0;
    for (let year = 2024; year <= 2033; year += 1)
      sum += seasonCharge_minor(part, { start: `${year}-01-01` as IsoDate, end: `${year}-12-31` as IsoDate }, 'straight-line', 0);
    // leap days are charged at 1/365 like any day and the year is capped: within two days' cost
    expect(Math.abs(sum - 8000)).toBeLessThan((2 * 1000) / 365 + 1e-6);
  });
});
