import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { dayLength_h } from '../../../../planner/climate/day-length.ts';
import { extremesHeld, meanAgainstBase, singleSine } from '../../../../planner/climate/degree-days.ts';
import { frostYears } from '../../../../planner/climate/frost-dates.ts';
import { chanceOfFrostAfter, frostDate, mixedFrost } from '../../../../planner/climate/frost-quantiles.ts';
import { normalQuantile } from '../../../../planner/climate/normal-quantile.ts';
import { daylight_h } from '../../../../planner/climate/sun.ts';
import { InputError } from '../../../../planner/errors.ts';

const place = fc.double({ min: -89, max: 89, noNaN: true });
const day = fc.integer({ min: 1, max: 366 });

describe('day length', () => {
  test('sunrise to sunset is never shorter than the geometric day', () => {
    fc.assert(fc.property(place, day, (lat, j) => dayLength_h(lat, j) >= daylight_h(lat, j) - 1e-9));
  });
  test('day here and day on the other half of the world make 24 hours of geometry', () => {
    fc.assert(fc.property(place, day, (lat, j) => Math.abs(daylight_h(lat, j) + daylight_h(-lat, j) - 24) < 1e-6));
  });
  test('a latitude beyond the pole is refused at its field', () => {
    expect(() => dayLength_h(91, 10)).toThrow(InputError);
    expect(() => dayLength_h(91, 10)).toThrow(/latitude_deg/);
  });
});

describe('growing degree days', () => {
  const anyDay = fc
    .tuple(fc.double({ min: -20, max: 45, noNaN: true }), fc.double({ min: 0, max: 25, noNaN: true }))
    .map(([tmin_C, range]) => ({ tmin_C, tmax_C: tmin_C + range, base_C: 10 }));
  test('holding the extremes first never gives less', () => {
    fc.assert(fc.property(anyDay, (d) => extremesHeld(d) >= meanAgainstBase(d) - 1e-9));
  });
  test('the sine lies between the two', () => {
    fc.assert(fc.property(anyDay, (d) => singleSine(d) >= meanAgainstBase(d) - 1e-9 && singleSine(d) <= extremesHeld(d) + 1e-9));
  });
  test('an upper limit below the base is refused', () => {
    expect(() => extremesHeld({ tmin_C: 1, tmax_C: 9, base_C: 10, upper_C: 5 })).toThrow(/upper limit/);
  });
});

describe('frost dates', () => {
  const at = (date: string, tmin_C: number | null) => ({ date: date as IsoDate, tmin_C });
  test('a year without a freeze has no date', () => {
    expect(frostYears([at('2013-01-04', 3), at('2013-12-04', null)])).toEqual([
      { year: 2013, lastSpring: null, firstFall: null },
    ]);
  });
  test('the greater the risk taken, the earlier the spring date and the later the fall date', () => {
    const days = [79, 63, 40, 63];
    const spring = [0.1, 0.5, 0.9].map((risk) => frostDate('spring', days, risk).day ?? 0);
    const fall = [0.1, 0.5, 0.9].map((risk) => frostDate('fall', [315, 325, 316, 327], risk).day ?? 0);
    expect(spring).toEqual([...spring].sort((a, b) => b - a));
    expect(fall).toEqual([...fall].sort((a, b) => a - b));
  });
  test('with twenty years the record itself gives the date', () => {
    const days = Array.from({ length: 21 }, (_, i) => 60 + i);
    expect(frostDate('spring', days, 0.1)).toMatchObject({ day: 78, method: 'record', years: 21 });
  });
  test('a freeze that comes in one year of four has no date at even odds', () => {
    expect(mixedFrost('fall', [310, null, null, null], 0.5).day).toBeNull();
  });
  test('the chance of frost never rises as spring goes on', () => {
    const days = [79, 63, null, 63];
    const chances = [30, 63, 70, 90].map((d) => chanceOfFrostAfter(days, d));
    expect(chances).toEqual([0.75, 0.25, 0.25, 0]);
  });
  test('the normal curve is even about its middle', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        (p) => Math.abs(normalQuantile(p) + normalQuantile(1 - p)) < 1e-8,
      ),
    );
    expect(normalQuantile(0.975)).toBeCloseTo(1.959964, 5);
  });
});
