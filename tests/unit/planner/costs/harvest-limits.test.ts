import { describe, expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { type HarvestEntry, type HarvestFacts, harvestFaults, lotFaults } from '../../../../planner/costs/harvest-check.ts';
import { postingsByOutlet } from '../../../../planner/costs/postings-by-outlet.ts';
import { missingTimes, standardTimes } from '../../../../planner/costs/standard-times.ts';
import { yieldPer_m2, yieldStanding } from '../../../../planner/costs/yield-against.ts';

const day = (text: string) => text as IsoDate;
const facts: HarvestFacts = { name: 'Kale 1', inBed: day('2026-04-10'), cleared: null, yieldUnit: 'kg', record: 4, expected: 30 };
const entry: HarvestEntry = {
  date: day('2026-06-01'),
  amount: 3,
  unit: 'kg',
  net_kg: 1,
  culls_kg: 0,
  labour_min: null,
  confirmed: false,
};
const codes = (change: Partial<HarvestEntry>, of: Partial<HarvestFacts> = {}) =>
  harvestFaults({ ...entry, ...change }, { ...facts, ...of }, day('2026-07-01')).map((fault) => `${fault.path}:${fault.code}`);

describe('a harvest entry', () => {
  test('on the day of planting, of clearing or today is taken; so are no culls and no time', () => {
    expect(codes({ date: day('2026-04-10') })).toEqual([]);
    expect(codes({ date: day('2026-07-01') })).toEqual([]);
    expect(codes({ date: day('2026-06-10') }, { cleared: day('2026-06-10') })).toEqual([]);
    expect(codes({ labour_min: 0 })).toEqual([]);
    expect(codes({ unit: 'crate', net_kg: 2 })).toEqual([]);
  });

  test('with time or culls below nothing, or an amount that is no number, is refused', () => {
    expect(codes({ labour_min: -1 })).toEqual(['labour_min:too-small']);
    expect(codes({ culls_kg: -1 })).toEqual(['culls_kg:too-small']);
    expect(codes({ amount: Number.NaN })).toEqual(['amount:not-positive']);
  });

  test('the first of its crop is asked about above ten times what the planting should give in all', () => {
    expect(codes({ amount: 300 }, { record: null })).toEqual([]);
    expect(codes({ amount: 301 }, { record: null })).toEqual(['amount:confirm']);
    expect(codes({ amount: 301 }, { record: null, expected: null })).toEqual([]);
    // counted in another unit than the plan, the plan says nothing; where there is a record, the record speaks
    expect(codes({ amount: 301, unit: 'bunch' }, { record: null })).toEqual([]);
    expect(codes({ amount: 39 }, { expected: 1 })).toEqual([]);
    expect(codes({ date: day('2026-06-20'), confirmed: true }, { cleared: day('2026-06-10') })).toEqual([]);
  });

  test('of more than a lot holds is told what is left', () => {
    expect(lotFaults('lines.0.amount', 'KALE-1', 1.6, 1.5, 'kg')).toEqual([
      { path: 'lines.0.amount', code: 'more-than-lot', message: 'Lot KALE-1 has 1.5 kg left; 1.6 is more than that.' },
    ]);
    expect(lotFaults('lines.0.amount', 'KALE-1', 1, -2, 'kg')[0]?.message).toMatch('has 0 kg left');
  });
});

test('a yield at either end of its range lies within it; half a range says nothing', () => {
  expect([2, 5].map((amount) => yieldStanding(amount, 2, 5))).toEqual(['within', 'within']);
  expect(yieldStanding(1, 2, null)).toBe('unknown');
  expect(yieldPer_m2(12, 0)).toBeNull();
});

describe('standard times', () => {
  const log = (task: string, labour_min: number, area_m2: number, harvested: number) => ({
    task,
    labour_min,
    area_m2,
    harvested,
  });

  test('of the harvest go by what came in, the others by ground; what stood on no ground tells nothing', () => {
    const found = standardTimes([
      log('harvest', 10, 1, 5),
      log('harvest', 30, 2, 10),
      log('harvest', 90, 1, 0),
      log('sow', 40, 0, 9),
    ]);
    // 2 and 3 min a unit: the upper of two
    expect(found.find((time) => time.task === 'harvest')).toEqual({ task: 'harvest', min_per_m2: 0, min_per_unit: 3, own: true });
    expect(found.find((time) => time.task === 'sow')?.own).toBe(false);
  });

  test('fill in a minute at least for what was done, and nothing for what was not', () => {
    const set = { direct: false, area_m2: 10, harvested: 4, cleared: true };
    expect(missingTimes(set, new Set(), standardTimes([]))).toEqual([
      { task: 'set out', labour_min: 70 },
      { task: 'weed', labour_min: 40 },
      { task: 'harvest', labour_min: 12 },
      { task: 'clear', labour_min: 30 },
    ]);
    const tiny = { direct: true, area_m2: 0.01, harvested: 0, cleared: false };
    expect(missingTimes(tiny, new Set(), standardTimes([]))).toEqual([
      { task: 'sow', labour_min: 1 },
      { task: 'weed', labour_min: 1 },
    ]);
  });
});

describe('costs by outlet', () => {
  const cost = [{ kind: 'labour' as const, bedId: 'b', plantingId: 'p', amount_minor: 900 }];
  const sale = (outletId: string | null, paid_minor: number, plantingId: string | null = 'p') => ({
    plantingId,
    bedId: 'b',
    outletId,
    paid_minor,
    sold_kg: 1,
  });
  const of = (...sales: ReturnType<typeof sale>[]) =>
    postingsByOutlet(cost, sales).postings.map((posting) => [posting.bedId, posting.amount_minor]);

  test('go by all that an outlet paid; what had no outlet, no planting or was a refund takes none', () => {
    expect(of(sale('stall', 100), sale('boxes', 100), sale('stall', 100))).toEqual([
      ['stall', 600],
      ['boxes', 300],
    ]);
    expect(of(sale('stall', 100), sale(null, 100), sale('boxes', -50), sale('boxes', 80, null))).toEqual([['stall', 900]]);
    expect(of(sale(null, 100))).toEqual([[null, 900]]);
  });

  test('leave what belongs to no planting without outlet, and lay incomes on theirs', () => {
    const found = postingsByOutlet([{ kind: 'water', bedId: 'b', plantingId: null, amount_minor: 5 }], [sale('stall', 100)]);
    expect(found.postings).toEqual([{ kind: 'water', bedId: null, plantingId: null, amount_minor: 5 }]);
    expect(found.incomes.map((income) => income.bedId)).toEqual(['stall']);
  });
});
