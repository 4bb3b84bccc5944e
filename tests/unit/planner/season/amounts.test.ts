import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays } from '../../../../planner/calendar.ts';
import { benchByWeek } from '../../../../planner/season/bench.ts';
import { areaForDemand_m2, balanceByWeek, explainAreaForDemand } from '../../../../planner/season/demand.ts';
import { clockOf } from '../../../../planner/season/growth-clock.ts';
import { harvestByWeek } from '../../../../planner/season/harvest-spread.ts';
import { learnedFrom, restsOn } from '../../../../planner/season/learned.ts';
import { explainSeedNeed, seedNeed } from '../../../../planner/season/seed-need.ts';
import { ripenTogether, sowingsByHeat, sowingsEvery } from '../../../../planner/season/succession.ts';
import { type TaskPlanting, tasksOf } from '../../../../planner/season/tasks.ts';
import { explainTrays, trayNeed } from '../../../../planner/season/trays.ts';
import { printQuantity } from '../../../../planner/units/print.ts';
import { day } from '../../../builders/a-plan.ts';

describe('seed, trays and bench', () => {
  const anyNeed = fc.record({
    plants: fc.integer({ min: 0, max: 5000 }),
    germination_share: fc.double({ min: 0.3, max: 1, noNaN: true }),
    emergence_share: fc.double({ min: 0.5, max: 1, noNaN: true }),
    seedsPerHole: fc.integer({ min: 1, max: 4 }),
    overage_share: fc.double({ min: 0, max: 0.3, noNaN: true }),
  });
  test('there are never fewer seeds than plants, and the working says the same', () => {
    fc.assert(
      fc.property(anyNeed, (input) => {
        const need = seedNeed(input);
        expect(need.seeds).toBeGreaterThanOrEqual(input.plants);
        const { result } = explainSeedNeed(input);
        expect(result.value).toBe(need.seeds);
        expect(printQuantity(result.value, result.unit, 'us', {})).toMatch(/ seeds$/);
      }),
    );
  });
  test('trays hold every cell', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9000 }), fc.constantFrom(50, 72, 98, 128, 200, 288), (cells, cellsPerTray) => {
        const { trays } = trayNeed({ cells, cellsPerTray });
        expect(trays * cellsPerTray).toBeGreaterThanOrEqual(cells);
        expect((trays - 1) * cellsPerTray).toBeLessThan(Math.max(1, cells));
        expect(explainTrays({ cells, cellsPerTray }).result.value).toBe(trays);
      }),
    );
  });
  test('germination of nothing is refused', () => {
    expect(() => seedNeed({ plants: 1, germination_share: 0, emergence_share: 1, seedsPerHole: 1, overage_share: 0 })).toThrow(
      /germination_share/,
    );
  });
  test('the fullest day of a week is what the bench must hold', () => {
    const weeks = benchByWeek([
      { plantingId: 'a', from: day('2027-03-01'), to: day('2027-03-10'), bench_m2: 0.5 },
      { plantingId: 'b', from: day('2027-03-10'), to: day('2027-03-20'), bench_m2: 0.7 },
    ]);
    expect(weeks.map(({ bench_m2 }) => bench_m2)).toEqual([0.5, 0.7, 0.7]);
  });
});

describe('harvest and demand by week', () => {
  test('the weeks of a harvest add up to the whole', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 120 }),
        fc.constantFrom('even' as const, 'at-once' as const, 'peak' as const),
        fc.double({ min: 0, max: 1000, noNaN: true }),
        (days, form, typical) => {
          const firstHarvest = day('2027-06-09');
          const weeks = harvestByWeek({
            firstHarvest,
            lastHarvest: addDays(firstHarvest, days),
            form,
            total: { low: typical / 2, typical, high: typical * 2 },
          });
          expect(weeks.reduce((sum, week) => sum + week.typical, 0)).toBeCloseTo(typical, 6);
          expect(weeks.every((week) => week.low <= week.typical && week.typical <= week.high)).toBe(true);
        },
      ),
    );
  });
  test('what is wanted and not grown is a shortfall', () => {
    const rows = balanceByWeek(
      [{ cropId: 'kale', unit: 'kg', from: day('2027-06-07'), to: day('2027-06-20'), perWeek: 5 }],
      [{ cropId: 'kale', unit: 'kg', weeks: [{ week: day('2027-06-07'), low: 4, typical: 6, high: 8 }] }],
    );
    expect(rows.map(({ week, over }) => [week, over])).toEqual([
      ['2027-06-07', 1],
      ['2027-06-14', -5],
    ]);
  });
  test('twice the demand needs twice the bed', () => {
    const input = { demand: 10, loss_share: 0.1, yield_per_m2: 2.9 };
    expect(areaForDemand_m2({ ...input, demand: 20 })).toBeCloseTo(2 * areaForDemand_m2(input), 9);
    expect(explainAreaForDemand(input).result.value).toBe(areaForDemand_m2(input));
  });
});

describe('successions', () => {
  test('summer gaps by heat are shorter than spring gaps', () => {
    const heat = clockOf(
      0,
      Array.from({ length: 400 }, (_, at) => Math.max(0, 15 * Math.sin((Math.PI * at) / 365))),
    );
    const sowings = sowingsByHeat({
      first: day('1970-03-20'),
      notAfter: day('1970-07-01'),
      heat,
      need_C_days: 600,
      gap_days: 14,
    });
    expect(sowings.length).toBeGreaterThan(5);
    const first = Date.parse(sowings[1] ?? '') - Date.parse(sowings[0] ?? '');
    const last = Date.parse(sowings.at(-1) ?? '') - Date.parse(sowings.at(-2) ?? '');
    expect(first).toBeGreaterThan(last);
  });
  test('a last sowing before the first is refused', () => {
    expect(() => sowingsEvery({ first: day('2027-05-01'), notAfter: day('2027-04-01'), interval_days: 14 })).toThrow(
      /before the first/,
    );
  });
  test('sowings that ripen within three days are flagged', () => {
    expect(ripenTogether([day('2027-06-01'), day('2027-06-04'), day('2027-06-20')])).toEqual([1]);
  });
});

describe('work and records', () => {
  const planting: TaskPlanting = {
    id: 'p1',
    cropName: 'Kale',
    number: 1,
    method: 'transplant',
    places: 'A-1',
    bedId: 'bed-1',
    plants: 40,
    trays: 1,
    sow: day('2027-03-15'),
    potOn: null,
    inBed: day('2027-04-20'),
    firstHarvest: day('2027-06-20'),
    lastHarvest: day('2027-07-10'),
    free: day('2027-07-13'),
    sown: null,
    wentIn: null,
    lastPicked: null,
    cleared: null,
  };
  test('a planting asks for sowing, setting out, a harvest a week and clearing', () => {
    expect(tasksOf(planting).map(({ kind }) => kind)).toEqual([
      'sow-indoors',
      'set-out',
      'harvest',
      'harvest',
      'harvest',
      'clear',
    ]);
  });
  test('what has happened asks for nothing more', () => {
    expect(tasksOf({ ...planting, wentIn: day('2027-04-22') }).map(({ kind }) => kind)).toEqual([
      'harvest',
      'harvest',
      'harvest',
      'clear',
    ]);
    expect(tasksOf({ ...planting, cleared: day('2027-07-01') })).toEqual([]);
  });
  test('what is learned says what it rests on and leaves out what was not written down', () => {
    const seen = {
      cropId: 'kale',
      varietyId: null,
      method: 'transplant' as const,
      unit: 'kg',
      area_m2: 2,
      lastPicked: null,
    };
    const [kale] = learnedFrom([
      { ...seen, wentIn: day('2025-04-20'), firstPicked: day('2025-06-14'), harvested: 6 },
      { ...seen, wentIn: day('2026-04-20'), firstPicked: day('2026-06-24'), harvested: null },
    ]);
    expect(kale?.toHarvest_days).toMatchObject({ mean: 60, least: 55, most: 65, plantings: 2, years: 2 });
    expect(kale?.yield_per_m2).toMatchObject({ mean: 3, plantings: 1 });
    expect(kale?.toHarvest_days && restsOn(kale.toHarvest_days)).toBe('2 plantings in 2 years');
  });
});
