import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, type IsoDate } from '../../../../planner/calendar.ts';
import { basinRing_L, freeboard_m, minutesFor } from '../../../../planner/irrigation/basin-fill.ts';
import { monthLoads, programmeDays, runsOn, runWater_L } from '../../../../planner/irrigation/programme-water.ts';
import {
  firstFlush,
  rainCatch_L,
  rainCatchByTradeFactor_L,
  rainKept,
  roofFlow_L_per_min,
} from '../../../../planner/irrigation/rain-catch.ts';
import {
  daysAway,
  drawDown,
  explainDaysAway,
  refillDates,
  wholeRuns,
  worstSpells,
} from '../../../../planner/irrigation/reservoir.ts';
import { reservoirYears } from '../../../../planner/irrigation/reservoir-years.ts';
import { explainRunTime, runOfMinutes, runTime } from '../../../../planner/irrigation/run-time.ts';
import { eggToAdult_days, standing_h, standsTooLong } from '../../../../planner/irrigation/standing-water.ts';
import { interval, stagger } from '../../../../planner/irrigation/timer-programme.ts';
import { numbersFrom } from '../../../builders/random-line.ts';

const start = '2024-06-01' as IsoDate;
const span = (days: number, need_L: number, rain = (_: number) => 0) =>
  Array.from({ length: days }, (_, at) => ({ date: addDays(start, at), need_L, rain_mm: rain(at) }));

describe('one run', () => {
  const wishes = [
    { id: 'near', flow_L_per_h: 120, wanted_L: 8, holds_L: 10 },
    { id: 'far', flow_L_per_h: 40, wanted_L: 8, holds_L: 10 },
    { id: 'dry', flow_L_per_h: 0, wanted_L: 8, holds_L: 10 },
  ];
  test('lasts until the slowest bed is filled, and tells what runs over and who gets nothing', () => {
    const run = runTime(wishes);
    expect(run.run_min).toBeCloseTo(12, 12);
    expect(run.decides).toBe('far');
    expect(run.rows[0]?.given_L).toBeCloseTo(24, 12);
    expect(run.rows[0]?.over_L).toBeCloseTo(14, 12);
    expect(run.beyond_L).toBeCloseTo(16, 12);
    expect(run.unserved).toEqual(['dry']);
    expect(explainRunTime(wishes).result.value).toBe(run.run_min);
  });
  test('of half the minutes gives half the water', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 100, noNaN: true }), (minutes) => {
        expect(2 * runOfMinutes(wishes, minutes / 2).total_L).toBeCloseTo(runOfMinutes(wishes, minutes).total_L, 6);
      }),
    );
  });
  test('refuses water that is less than nothing at its bed', () => {
    expect(() => runTime([{ id: 'a', flow_L_per_h: 1, wanted_L: -1, holds_L: null }])).toThrowError(/wishes.0.wanted_L/);
  });
  test('a basin narrower than its bag, and a flow of nothing, are refused', () => {
    expect(() => basinRing_L({ basinDiameter_m: 0.5, bagDiameter_m: 0.6, depth_m: 0.05, bagPorosity: 0 })).toThrowError(/wider/);
    expect(() => minutesFor(1, 0)).toThrowError(/flow/);
    expect(freeboard_m(0.1, 0.5, 0.08)).toBeLessThan(0);
  });
});

describe('the timer', () => {
  test('runs by the bed whose fill lasts shortest, several times a day where it lasts less than one', () => {
    expect(
      interval([
        { id: 'a', need_L_per_day: 2, fill_L: 9 },
        { id: 'b', need_L_per_day: 3, fill_L: 9 },
      ]),
    ).toEqual({ every_days: 3, runsPerDay: 1, decides: 'b' });
    expect(interval([{ id: 'a', need_L_per_day: 20, fill_L: 9 }])).toEqual({ every_days: 1, runsPerDay: 3, decides: 'a' });
    expect(interval([{ id: 'a', need_L_per_day: 0, fill_L: 0 }])).toEqual({ every_days: 0, runsPerDay: 0, decides: null });
    expect(() => interval([{ id: 'a', need_L_per_day: 1, fill_L: 0 }])).toThrowError(/needs.0.fill_L/);
  });
  test('never draws more at once than the power gives, and wastes no minute it could use', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ run_min: fc.integer({ min: 1, max: 40 }), power_W: fc.integer({ min: 1, max: 30 }) }), {
          minLength: 1,
          maxLength: 12,
        }),
        fc.integer({ min: 30, max: 70 }),
        (loads, limit_W) => {
          const slots = stagger(
            loads.map((load, at) => ({ ...load, id: String(at) })),
            limit_W,
          );
          for (let minute = 0; minute < 600; minute += 1) {
            const drawn = slots.reduce(
              (sum, slot, at) => (slot.start_min <= minute && minute < slot.end_min ? sum + (loads[at]?.power_W ?? 0) : sum),
              0,
            );
            expect(drawn).toBeLessThanOrEqual(limit_W);
          }
          expect(Math.min(...slots.map((slot) => slot.start_min))).toBe(0);
        },
      ),
      { numRuns: 60 },
    );
    expect(() => stagger([{ id: 'a', run_min: 1, power_W: 100 }], 50)).toThrowError(/100 W, more than the 50 W/);
  });
  test('an event runs on every n-th day of its month and no other', () => {
    const days = Array.from({ length: 61 }, (_, at) => addDays('2024-07-01' as IsoDate, at));
    const ran = days.filter((date) => runsOn({ month: 7, every_days: 3 }, date));
    expect(ran.every((date) => date.startsWith('2024-07'))).toBe(true);
    expect(ran.length).toBeGreaterThanOrEqual(10);
    expect(ran.length).toBeLessThanOrEqual(11);
  });
  test('its water is flow times minutes, and a mean day is one run over its interval', () => {
    const events = [{ month: 6, every_days: 2, start: '05:00', run_min: 15, zone: 1 }];
    const flows = [{ zone: 1, total_L_per_h: 400 }];
    expect(runWater_L(events[0] as (typeof events)[number], flows)).toBeCloseTo(100, 9);
    const days = programmeDays(
      events,
      flows,
      Array.from({ length: 30 }, (_, at) => ({ date: addDays(start, at), rain_mm: 0 })),
    );
    expect(days.reduce((sum, day) => sum + day.need_L, 0)).toBeCloseTo(1500, 6);
    expect(monthLoads(events, flows)[0]).toMatchObject({ month: 6, runsPerDay: 0.5, pump_min_per_day: 7.5 });
    expect(() => programmeDays([{ month: 13, every_days: 1, start: '', run_min: 1, zone: 1 }], flows, [])).toThrowError(
      /events.0.month/,
    );
  });
});

describe('the reservoir', () => {
  const tank = { capacity_L: 400, usableShare: 0.9, catchment: null, floatTopUp_L_per_day: 0 };
  test('loses what is given and gains what is caught, to the litre', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
        const next = numbersFrom(seed);
        const catchment = { area_m2: 20, catchShare: 0.9, firstFlush_mm: 0.4, dryDays: 3 };
        const days = span(60, 0).map((day) => ({ ...day, need_L: 60 * next(), rain_mm: next() < 0.3 ? 15 * next() : 0 }));
        const run = drawDown({ ...tank, catchment, start_L: 200, days, refilledByHand: seed % 2 === 0 });
        let level = 200;
        for (const day of run) {
          level += day.caught_L + day.refill_L - day.given_L;
          expect(day.level_L).toBeCloseTo(level, 6);
          expect(day.level_L).toBeGreaterThanOrEqual(39.999);
          expect(day.level_L).toBeLessThanOrEqual(400.001);
          expect(day.given_L + day.short_L).toBeCloseTo(days.find((each) => each.date === day.date)?.need_L ?? 0, 6);
        }
      }),
      { numRuns: 40 },
    );
  });
  test('is filled on the day a run would fall short, and not before', () => {
    const run = drawDown({ ...tank, start_L: 400, days: span(10, 100), refilledByHand: true });
    expect(refillDates(run).map((refill) => refill.date)).toEqual(['2024-06-04', '2024-06-07', '2024-06-10']);
    expect(run.every((day) => day.short_L === 0)).toBe(true);
  });
  test('a float that brings the need keeps it full', () => {
    const run = drawDown({ ...tank, floatTopUp_L_per_day: 100, start_L: 400, days: span(20, 100), refilledByHand: false });
    expect(run.at(-1)?.level_L).toBeCloseTo(300, 9);
    expect(run.every((day) => day.short_L === 0)).toBe(true);
  });
  test('the worst spell of a year is the shortest time from full to the first short run', () => {
    const days = span(30, 0).map((day, at) => ({ ...day, need_L: at >= 10 && at < 15 ? 150 : 20 }));
    const [year] = worstSpells(tank, [{ year: 2024, days }]);
    expect(year?.worst).toMatchObject({ days: 2, from: '2024-06-11' });
    const summary = reservoirYears(tank, days)[0];
    expect(summary?.shortest_days).toBe(2);
    expect(summary?.need_L).toBe(days.reduce((sum, day) => sum + day.need_L, 0));
  });
  test('days away by hand, with the same figure in the working', () => {
    const input = { usable_L: 400, beds: 8, fill_L: 8.3, fillsPerDay: 1 };
    expect(explainDaysAway(input).result.value).toBe(daysAway(input).days);
    expect(() => daysAway({ ...input, beds: 0 })).toThrowError(/beds/);
    expect(() => wholeRuns(100, 1.5, 1)).toThrowError(/usableShare/);
    expect(() => drawDown({ ...tank, start_L: 500, days: [], refilledByHand: false })).toThrowError(/start_L/);
  });
});

describe('rain and standing water', () => {
  test('half the roof gives half the rain; the exact factor and the trade’s 0.623 agree', () => {
    expect(2 * rainCatch_L({ area_m2: 10, rain_mm: 5, catchShare: 0.9 })).toBe(
      rainCatch_L({ area_m2: 20, rain_mm: 5, catchShare: 0.9 }),
    );
    const roof = { area_m2: 100, rain_mm: 10, catchShare: 1 };
    expect(rainCatchByTradeFactor_L({ ...roof, factor_us_gal_per_ft2_in: 0.6234 }) / rainCatch_L(roof)).toBeCloseTo(1, 3);
  });
  test('a rain below the first flush leaves nothing, and nothing is made or lost', () => {
    expect(rainKept({ area_m2: 40, rain_mm: 0.3, catchShare: 0.9, firstFlush_mm: 0.41, free_L: 300 })).toEqual({
      collected_L: 0,
      overflow_L: 0,
    });
    const kept = rainKept({ area_m2: 40, rain_mm: 12, catchShare: 0.9, firstFlush_mm: 0.41, free_L: 100 });
    expect(kept.collected_L + kept.overflow_L).toBeCloseTo(40 * 12 * 0.9 - 0.41 * 40, 9);
    expect(firstFlush(100).depth_mm).toBeCloseTo(0.407, 3);
    expect(roofFlow_L_per_min(60, 60)).toBeCloseTo(60, 9);
    expect(() => rainCatch_L({ area_m2: 1, rain_mm: 1, catchShare: 1.2 })).toThrowError(/catchShare/);
  });
  test('warmer water turns out mosquitoes sooner; 72 hours in the season is too long', () => {
    expect(eggToAdult_days(30)).toBeLessThan(eggToAdult_days(20));
    expect(standing_h(9, 3)).toBe(72);
    expect(standsTooLong(72, 20)).toBe(false);
    expect(standsTooLong(73, 20)).toBe(true);
    expect(standsTooLong(200, 8)).toBe(false);
    expect(() => eggToAdult_days(5)).toThrowError(/temperature_C/);
  });
});
