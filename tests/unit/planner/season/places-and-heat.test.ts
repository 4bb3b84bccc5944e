import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Outline } from '../../../../planner/beds/outline.ts';
import { addDays, dayNumber, type IsoDate } from '../../../../planner/calendar.ts';
import { InputError } from '../../../../planner/errors.ts';
import { whatFits } from '../../../../planner/season/gap-suggestions.ts';
import { dayClock } from '../../../../planner/season/growth-clock.ts';
import { daysToHeat, heatOfDay, singleSineCut } from '../../../../planner/season/heat.ts';
import { heatRecord } from '../../../../planner/season/heat-record.ts';
import { frostAtRisk } from '../../../../planner/season/manual-frost.ts';
import { maturityOf } from '../../../../planner/season/maturity.ts';
import { gapsOf, type Stay } from '../../../../planner/season/occupancy.ts';
import { plantsOnSpan } from '../../../../planner/season/plants-on-span.ts';
import { type Course, replan } from '../../../../planner/season/replan.ts';
import { warmFrom } from '../../../../planner/season/warm-from.ts';
import { aCrop, aPlanBed, day, someRules } from '../../../builders/a-plan.ts';

const fieldOf = (run: () => unknown): string | undefined => {
  try {
    run();
  } catch (error) {
    if (error instanceof InputError) return error.faults[0]?.path;
    throw error;
  }
  return undefined;
};

describe('plants on a piece of a bed', () => {
  const spacing = { pattern: 'square', spacing_m: 0.4 } as const;
  const outlines: readonly Outline[] = [
    { shape: 'round', diameter_m: 1.2 },
    { shape: 'hexagon', acrossFlats_m: 1.5 },
    {
      shape: 'polygon',
      vertices_m: [
        [0, 0],
        [3, 0],
        [3, 1],
        [0, 1.5],
      ],
    },
  ];
  test('the pieces of a round, oval or crooked bed add up to the whole', () => {
    for (const outline of outlines) {
      const whole = plantsOnSpan({ outline, fromShare: 0, toShare: 1, spacing });
      const thirds = [0, 1, 2].map((at) => plantsOnSpan({ outline, fromShare: at / 3, toShare: (at + 1) / 3, spacing }));
      expect(thirds.reduce((sum, each) => sum + each, 0)).toBe(whole);
    }
  });
  test('half a rectangle holds no more than half its whole', () => {
    const outline: Outline = { shape: 'rectangle', length_m: 3.2, width_m: 0.8 };
    const whole = plantsOnSpan({ outline, fromShare: 0, toShare: 1, spacing });
    expect(plantsOnSpan({ outline, fromShare: 0, toShare: 0.5, spacing })).toBe(whole / 2);
    expect(fieldOf(() => plantsOnSpan({ outline, fromShare: 0.6, toShare: 0.2, spacing }))).toBe('toShare');
  });
});

describe('gaps', () => {
  test('gaps and stays together fill the whole time, and never overlap', () => {
    const anyStay = fc.record({ start: fc.integer({ min: 0, max: 300 }), length: fc.integer({ min: 1, max: 90 }) });
    fc.assert(
      fc.property(fc.array(anyStay, { maxLength: 8 }), (made) => {
        const stays = made.map(
          ({ start, length }, at): Stay => ({
            plantingId: `p${at}`,
            bedId: 'b',
            fromShare: 0,
            toShare: 1,
            from_day: start,
            to_day: start + length,
          }),
        );
        const gaps = gapsOf(stays, { bedId: 'b', fromShare: 0, toShare: 1 }, { from_day: 0, to_day: 365 });
        const free = new Set(
          gaps.flatMap((gap) => Array.from({ length: gap.to_day - gap.from_day }, (_, at) => gap.from_day + at)),
        );
        for (let at = 0; at < 365; at += 1) {
          const taken = stays.some((stay) => at >= stay.from_day && at < stay.to_day);
          expect(free.has(at)).toBe(!taken);
        }
      }),
    );
  });
  test('what fits is free again before the gap ends, and waits for frost and warmth', () => {
    const candidate = (cropId: string, hardiness: 'hardy' | 'tender', stillWanted: number) => ({
      crop: aCrop({ cropId, family: cropId, hardiness }),
      timing: {
        method: 'direct' as const,
        indoors_days: 0,
        potOn_days: null,
        toHarvest: { early_days: 50, likely_days: 55, late_days: 60 },
        window_days: 14,
        turnover_days: 3,
      },
      stillWanted,
    });
    const fits = whatFits({
      bed: aPlanBed(),
      fromShare: 0,
      toShare: 1,
      gap: { from_day: dayNumber(day('2027-03-20')), to_day: dayNumber(day('2027-07-15')) },
      candidates: [candidate('kale', 'hardy', 0), candidate('bean-bush', 'tender', 5)],
      rules: someRules({
        warmFrom: { hardy: day('2027-01-01'), 'half-hardy': null, tender: day('2027-04-20'), 'very-tender': null },
      }),
      clock: dayClock(dayNumber(day('2027-01-01')), 500),
      others: [],
    });
    expect(fits.map((each) => each.cropId)).toEqual(['bean-bush', 'kale']);
    expect(fits[0]?.dates.inBed).toBe('2027-04-24');
    expect(fits[1]?.dates.inBed).toBe('2027-03-20');
    for (const each of fits) expect(each.dates.free <= '2027-07-15').toBe(true);
  });
});

describe('heat', () => {
  const year = (tmin_C: number, tmax_C: number) =>
    Array.from({ length: 365 }, (_, at) => ({ date: addDays('2025-01-01' as IsoDate, at), tmin_C, tmax_C }));
  const rule = { method: 'mean-against-base', base_C: 10, upper_C: null } as const;
  test('a place of steady days has that heat every day, whatever is missing', () => {
    const days = year(10, 20).map((each, at) => (at % 40 === 3 ? { ...each, tmax_C: null } : each));
    const record = heatRecord(days, rule);
    expect(record?.normals_C_days.every((heat) => heat === 5)).toBe(true);
    expect(record?.years.size).toBe(1);
    expect(heatRecord(year(10, 20).slice(0, 200), rule)).toBeNull();
  });
  test('an upper limit never adds heat, and a day of crossed extremes is refused', () => {
    fc.assert(
      fc.property(fc.double({ min: -10, max: 40, noNaN: true }), fc.double({ min: 0, max: 20, noNaN: true }), (tmin_C, range) => {
        const input = { tmin_C, tmax_C: tmin_C + range, base_C: 10 };
        expect(singleSineCut({ ...input, upper_C: 30 })).toBeLessThanOrEqual(singleSineCut(input) + 1e-9);
      }),
    );
    expect(fieldOf(() => singleSineCut({ tmin_C: 20, tmax_C: 10, base_C: 5 }))).toBe('tmin_C');
  });
  test('heat that never comes is refused', () => {
    expect(heatOfDay({ tmin_C: null, tmax_C: 20 }, rule)).toBeNull();
    expect(fieldOf(() => daysToHeat(800, 0))).toBe('perDay_C_days');
    expect(fieldOf(() => daysToHeat(-1, 5))).toBe('need_C_days');
  });
  test('days grow warm enough for tender crops after they do for hardy ones', () => {
    const warming = Array.from({ length: 365 }, (_, at) => ({
      date: addDays('2025-01-01' as IsoDate, at),
      tmin_C: 0,
      tmax_C: 15 - 15 * Math.cos((2 * Math.PI * at) / 365),
    }));
    const from = warmFrom(warming, 2027);
    expect(from?.hardy?.slice(0, 4)).toBe('2027');
    expect((from?.hardy ?? '') < (from?.tender ?? '')).toBe(true);
    expect(warmFrom(warming.slice(0, 100), 2027)).toBeNull();
  });
});

describe('frost dates entered by hand', () => {
  const entered = { early: 80, median: 100, late: 120 };
  test('half the years give the median, one in ten the late date of spring and the early one of fall', () => {
    expect(frostAtRisk('spring', entered, 0.5)).toBeCloseTo(100, 9);
    expect(frostAtRisk('spring', entered, 0.1)).toBeCloseTo(120, 6);
    expect(frostAtRisk('fall', entered, 0.1)).toBeCloseTo(80, 6);
    expect(frostAtRisk('fall', { early: null, median: null, late: null }, 0.1)).toBeNull();
    expect(fieldOf(() => frostAtRisk('spring', entered, 0.9))).toBe('risk');
  });
});

describe('what happened moves what comes after', () => {
  const course: Course = {
    id: 'p',
    clockKey: 'plain',
    need: 60,
    indoors_days: 30,
    window_days: 20,
    turnover_days: 3,
    sow: day('2027-04-01'),
    inBed: day('2027-05-01'),
    sown: null,
    wentIn: null,
    firstPicked: null,
    lastPicked: null,
    cleared: null,
    pinned: false,
  };
  const clocks = new Map([['plain', dayClock(dayNumber(day('2027-01-01')), 600)]]);
  const replanned = (change: Partial<Course>) => replan([{ ...course, ...change }], clocks)[0];
  test('with nothing done the plan stands', () => {
    expect(replanned({})).toMatchObject({
      inBed: '2027-05-01',
      firstHarvest: '2027-06-30',
      lastHarvest: '2027-07-20',
      free: '2027-07-23',
    });
  });
  test('late sowing, late setting out, a late first picking each move the rest by as much', () => {
    expect(replanned({ sown: day('2027-04-06') })).toMatchObject({ inBed: '2027-05-06', firstHarvest: '2027-07-05' });
    expect(replanned({ sown: day('2027-04-06'), pinned: true })).toMatchObject({ inBed: '2027-05-01' });
    expect(replanned({ wentIn: day('2027-05-11') })).toMatchObject({ firstHarvest: '2027-07-10', free: '2027-08-02' });
    expect(replanned({ firstPicked: day('2027-07-02') })).toMatchObject({ inBed: '2027-05-01', lastHarvest: '2027-07-22' });
    expect(replanned({ cleared: day('2027-07-10') })).toMatchObject({ free: '2027-07-10' });
  });
  test('a raising longer than the crop itself is refused', () => {
    expect(fieldOf(() => maturityOf({ maturity_days: 30, countedFrom: 'seed', indoors_days: 40 }))).toBe('indoors_days');
  });
});
