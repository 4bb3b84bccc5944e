import { describe, expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import {
  type HarvestEntry,
  type HarvestFacts,
  harvestFaults,
  leftOfLot,
  lotFaults,
} from '../../../../planner/costs/harvest-check.ts';
import { lineHours_h } from '../../../../planner/costs/line-hours.ts';
import { postingsByOutlet } from '../../../../planner/costs/postings-by-outlet.ts';
import { missingTimes, standardTimes } from '../../../../planner/costs/standard-times.ts';
import { explainYield, harvestWeeks, yieldPer_m2, yieldStanding } from '../../../../planner/costs/yield-against.ts';

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
  test('that can be is taken', () => {
    expect(codes({})).toEqual([]);
  });

  test('before the planting, in the future, of nothing, or in a unit of unknown weight is refused at its field', () => {
    expect(codes({ date: day('2026-04-09') })).toEqual(['date:too-early']);
    expect(codes({ date: day('2026-07-02') })).toEqual(['date:too-late']);
    expect(codes({ amount: 0, unit: 'crate', net_kg: null })).toEqual(['amount:not-positive', 'unit:no-weight']);
    expect(codes({ unit: 'stem', net_kg: null }, { yieldUnit: 'stem' })).toEqual([]);
  });

  test('of ten times the record, or after clearing, is asked about once', () => {
    expect(codes({ amount: 40 })).toEqual([]);
    expect(codes({ amount: 41 })).toEqual(['amount:confirm']);
    expect(codes({ amount: 41, confirmed: true })).toEqual([]);
    expect(codes({ date: day('2026-06-20') }, { cleared: day('2026-06-10') })).toEqual(['date:confirm']);
  });

  test('a lot gives no more than it holds; a refund always goes', () => {
    expect(leftOfLot(5, [2, 1.5])).toBe(1.5);
    expect(lotFaults('lines.0.amount', 'KALE-1', 1.5, 1.5, 'kg')).toEqual([]);
    expect(lotFaults('lines.0.amount', 'KALE-1', 1.6, 1.5, 'kg')[0]?.code).toBe('more-than-lot');
    expect(lotFaults('lines.0.amount', 'KALE-1', -1, 0, 'kg')).toEqual([]);
  });
});

describe('yields', () => {
  test('weeks without a pick within the window are shown as missing', () => {
    const weeks = harvestWeeks([
      { date: day('2026-06-03'), amount: 2 },
      { date: day('2026-06-05'), amount: 1 },
      { date: day('2026-06-17'), amount: 4 },
    ]);
    expect(weeks.map((week) => [week.monday, week.amount, week.missing])).toEqual([
      ['2026-06-01', 3, false],
      ['2026-06-08', 0, true],
      ['2026-06-15', 4, false],
    ]);
    expect(harvestWeeks([])).toEqual([]);
  });

  test('stand below, within or above their range, and the working ends in the yield of a m2', () => {
    expect([1, 3, 9].map((amount) => yieldStanding(amount, 2, 5))).toEqual(['below', 'within', 'above']);
    expect(yieldStanding(1, null, 5)).toBe('unknown');
    expect(explainYield({ name: 'Kale 1', harvested: 12, unit: 'kg', area_m2: 6, expected: null }).result.value).toBe(
      yieldPer_m2(12, 6),
    );
  });
});

describe('standard times', () => {
  test('are the farm’s own medians where it logged, else the usual ones', () => {
    const own = standardTimes([1, 2, 9].map((labour_min) => ({ task: 'weed', labour_min, area_m2: 1, harvested: 0 })));
    expect(own.find((time) => time.task === 'weed')).toMatchObject({ min_per_m2: 2, own: true });
    expect(own.find((time) => time.task === 'clear')?.own).toBe(false);
  });

  test('fill in only what nobody logged: a sowing is not set out, and what stands is not cleared', () => {
    const planting = { direct: true, area_m2: 10, harvested: 4, cleared: false };
    expect(missingTimes(planting, new Set(['weed']), standardTimes([])).map((time) => time.task)).toEqual(['sow', 'harvest']);
  });
});

test('a line runs by its timer: days of the month over the rhythm', () => {
  const june = [{ month: 6, every_days: 3, run_min: 30 }];
  expect(lineHours_h(june, day('2026-01-01'), day('2026-12-31'))).toBeCloseTo(5, 9);
  expect(() => lineHours_h([{ month: 6, every_days: 0, run_min: 30 }], day('2026-01-01'), day('2026-01-02'))).toThrow(
    'every_days',
  );
});

test('costs by outlet add up, and what earned nothing has no outlet', () => {
  const found = postingsByOutlet(
    [
      { kind: 'labour', bedId: 'b', plantingId: 'p', amount_minor: 1001 },
      { kind: 'labour', bedId: 'b', plantingId: 'lost', amount_minor: 70 },
    ],
    [
      { plantingId: 'p', bedId: 'b', outletId: 'stall', paid_minor: 300, sold_kg: 1 },
      { plantingId: 'p', bedId: 'b', outletId: 'boxes', paid_minor: 100, sold_kg: 1 },
    ],
  );
  expect(found.postings.map((posting) => [posting.bedId, posting.amount_minor])).toEqual([
    ['stall', 751],
    ['boxes', 250],
    [null, 70],
  ]);
});
