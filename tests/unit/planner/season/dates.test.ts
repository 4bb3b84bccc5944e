import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, dayNumber, daysBetween } from '../../../../planner/calendar.ts';
import { InputError } from '../../../../planner/errors.ts';
import { countBack, explainCountBack, latestSowing } from '../../../../planner/season/frost-windows.ts';
import { clockOf, dayClock, dayLengthClock, dayReaching, dayToStart } from '../../../../planner/season/growth-clock.ts';
import { explainHarvestRange, harvestRange } from '../../../../planner/season/harvest-range.ts';
import type { Timing } from '../../../../planner/season/maturity.ts';
import { moved, stretchedEnd, stretchedStart } from '../../../../planner/season/move-planting.ts';
import { carriedOver } from '../../../../planner/season/next-season.ts';
import { explainPlantingDates, plantingDates } from '../../../../planner/season/planting-dates.ts';
import { daylightFrom_h } from '../../../../planner/season/short-days.ts';
import { day } from '../../../builders/a-plan.ts';

const timing: Timing = {
  method: 'transplant',
  indoors_days: 35,
  potOn_days: 14,
  toHarvest: { early_days: 60, likely_days: 70, late_days: 80 },
  window_days: 28,
  turnover_days: 3,
};
const start = day('2027-01-01');
const clock = dayClock(dayNumber(start), 730);
const pathOf = (run: () => unknown): string | undefined => {
  try {
    run();
  } catch (error) {
    if (error instanceof InputError) return error.faults[0]?.code;
    throw error;
  }
  return undefined;
};

describe('the dates of a planting', () => {
  test('forwards from sowing and backwards from harvest meet', () => {
    fc.assert(
      fc.property(fc.integer({ min: 40, max: 400 }), (at) => {
        const forwards = plantingDates({ timing, anchor: { at: 'sow', date: addDays(start, at) }, clock });
        const back = plantingDates({ timing, anchor: { at: 'first-harvest', date: forwards.firstHarvest }, clock });
        expect(back).toEqual(forwards);
      }),
    );
  });

  test('dates come in order whatever the lengths', () => {
    fc.assert(
      fc.property(
        fc.record({
          indoors_days: fc.integer({ min: 0, max: 90 }),
          likely: fc.integer({ min: 1, max: 200 }),
          window_days: fc.integer({ min: 0, max: 120 }),
          turnover_days: fc.integer({ min: 0, max: 14 }),
        }),
        ({ likely, ...rest }) => {
          const made = plantingDates({
            timing: { ...timing, ...rest, toHarvest: { early_days: likely, likely_days: likely, late_days: likely } },
            anchor: { at: 'in-bed', date: day('2027-05-01') },
            clock,
          });
          const order = [made.sow, made.inBed, made.firstHarvest, made.lastHarvest, made.free];
          expect([...order].sort()).toEqual(order);
        },
      ),
    );
  });

  test('a short day adds nothing: an autumn crop waits for the light', () => {
    const days = Array.from({ length: 500 }, (_, at) => ((210 + at) % 365) + 1);
    const slow = dayLengthClock(dayNumber(day('2027-07-30')), daylightFrom_h(47.6, days));
    const inBed = dayNumber(day('2027-09-15'));
    const ripe = dayReaching(slow, inBed, 70) ?? 0;
    expect(ripe - inBed).toBeGreaterThan(150);
    expect(dayReaching(slow, dayNumber(day('2027-08-01')), 70)).toBe(dayNumber(day('2027-10-10')));
    expect(dayToStart(slow, ripe, 70)).toBeGreaterThanOrEqual(inBed);
  });

  test('a crop that never ripens is refused, not guessed', () => {
    const cold = clockOf(
      dayNumber(start),
      Array.from({ length: 365 }, () => 0.1),
    );
    expect(pathOf(() => plantingDates({ timing, anchor: { at: 'in-bed', date: start }, clock: cold }))).toBe('never-ripe');
    expect(pathOf(() => plantingDates({ timing, anchor: { at: 'first-harvest', date: start }, clock }))).toBe('too-early');
    const set = { ...timing, method: 'set' as const };
    expect(pathOf(() => plantingDates({ timing: set, anchor: { at: 'sow', date: start }, clock }))).toBe('no-sowing');
  });

  test('the working ends in the same number of days', () => {
    const input = { timing, anchor: { at: 'in-bed' as const, date: day('2027-05-01') }, clock };
    expect(explainPlantingDates(input).result.value).toBe(70);
  });
});

describe('early, likely and late', () => {
  const input = {
    inBed: day('2027-05-01'),
    likely: day('2027-07-10'),
    toHarvest: timing.toHarvest,
    normals: clockOf(
      dayNumber(start),
      Array.from({ length: 400 }, () => 10),
    ),
    years: [8, 9, 10, 11, 12].map((heat) =>
      clockOf(
        dayNumber(start),
        Array.from({ length: 400 }, () => heat),
      ),
    ),
  };
  test('cool and warm years give the range', () => {
    const range = harvestRange(input);
    expect(range.from).toBe('weather-record');
    expect(range.years).toBe(5);
    expect(range.early < range.likely && range.likely < range.late).toBe(true);
    // 700 degree days: 59 days at 12 a day, 88 at 8; the 10 % and 90 % places of five years lie between
    expect(daysBetween(input.inBed, range.early)).toBe(61);
    expect(daysBetween(input.inBed, range.late)).toBe(84);
  });
  test('without a record, early and late varieties give it', () => {
    expect(harvestRange({ ...input, years: [] })).toMatchObject({
      from: 'varieties',
      early: day('2027-06-30'),
      late: day('2027-07-20'),
    });
  });
  test('the working ends in the likely date', () => {
    expect(explainHarvestRange(input).result.value).toBe(70);
  });
});

describe('counting back from frost', () => {
  const input = {
    firstFrost: day('2027-10-19'),
    maturity_days: 55,
    seedToTransplant_days: 0,
    harvest_days: 14,
    fallFactor_days: 14,
    isTender: true,
  };
  test('a tender crop is sown two weeks earlier', () => {
    expect(daysBetween(countBack(input).sow, countBack({ ...input, isTender: false }).sow)).toBe(14);
    expect(explainCountBack(input).result.value).toBe(countBack(input).back_days);
  });
  test('a date before the season is refused with both dates', () => {
    expect(pathOf(() => latestSowing(input, day('2027-09-01')))).toBe('before-season');
  });
});

describe('moving a planting', () => {
  const dates = plantingDates({ timing, anchor: { at: 'in-bed', date: day('2027-05-01') }, clock });
  test('there and back is where it was, and every length stays', () => {
    fc.assert(
      fc.property(fc.integer({ min: -200, max: 200 }), (days) => {
        const there = moved(dates, days);
        expect(moved(there, -days)).toEqual(dates);
        expect(daysBetween(there.inBed, there.free)).toBe(daysBetween(dates.inBed, dates.free));
      }),
    );
  });
  test('an end before the harvest and a start after it are refused', () => {
    expect(pathOf(() => stretchedEnd(dates, -60))).toBe('dates-out-of-order');
    expect(pathOf(() => stretchedStart(dates, 80))).toBe('dates-out-of-order');
  });
  test('the next season keeps the day and takes what was learned', () => {
    const next = carriedOver(dates, 1, { toHarvest_days: 63.4, window_days: null });
    expect(next.inBed).toBe('2028-05-01');
    expect(daysBetween(next.inBed, next.firstHarvest)).toBe(63);
    expect(daysBetween(next.firstHarvest, next.lastHarvest)).toBe(28);
    const leap = carriedOver({ ...dates, inBed: day('2028-02-29') }, 1, { toHarvest_days: null, window_days: null });
    expect(leap.inBed).toBe('2029-02-28');
  });
});
