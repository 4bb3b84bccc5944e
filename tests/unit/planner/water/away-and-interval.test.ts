import { describe, expect, test } from 'vitest';
import type { BedStore } from '../../../../planner/water/bed-store.ts';
import { bedYear } from '../../../../planner/water/bed-year.ts';
import { daysAway, explainDaysAway, lastingAt } from '../../../../planner/water/days-away.ts';
import { explainLineInterval, lineInterval } from '../../../../planner/water/watering-interval.ts';
import { weatherRun } from '../../../../planner/water/weather-run.ts';

const voice = { progress: () => undefined, shouldStop: () => false };
/** A bed that uses 5 L a day at 5 mm and may lose 20 L before its crop is short. */
const store: BedStore = {
  bedId: 'a',
  area_m2: 1,
  rain_m2: 1,
  wall_m2: 0,
  wallFactor: 0,
  depth_m: 0.25,
  availableShare: 0.16,
  free: null,
};
const year = bedYear({
  area_m2: 1,
  depth_m: 0.25,
  crops: [
    {
      from: 1,
      to: 366,
      curve: { stages_days: [0, 0, 366, 0], kcIni: 1, kcMid: 1, kcEnd: 1 },
      share: 1,
      canopyFactor: 1,
      rootDepth_m: 0.25,
      p: 0.5,
    },
  ],
  cover: { bareReduction: 0, exposure: 1 },
});
const rootsDown = { ...year, roots_m: year.roots_m.map(() => 0.25) };
const weather = weatherRun(
  [2014, 2015].flatMap((each) => Array.from({ length: 365 }, (_, yearDay) => ({ year: each, yearDay, eto_mm: 5, rain_mm: 0 }))),
);
const ask = {
  beds: [{ store, year: rootsDown, lineId: null }],
  supplies: [],
  weather,
  month: 7,
  confidence: 0.9,
  limit_days: 30,
};

describe('days away', () => {
  test('a bed with 20 L to spare and 5 L a day lasts through five days', () => {
    // short on the first day that begins with more than 20 L gone: the sixth, so five whole days
    const found = daysAway(ask, voice);
    expect(found.days).toBe(5);
    expect(found.beds[0]).toMatchObject({ days: 5, because: 'own-store', firstShare: 1 });
    expect(explainDaysAway(found, 0.9).result.value).toBe(found.days);
  });
  test('a line with water carries it on until its tank is empty', () => {
    const line = (usable_L: number) =>
      daysAway(
        {
          ...ask,
          beds: [{ store, year: rootsDown, lineId: 'l' }],
          supplies: [{ lineId: 'l', usable_L, capacity_L_per_day: 100 }],
        },
        voice,
      );
    expect(line(50)).toMatchObject({ days: 15 });
    expect(line(50).beds[0]?.because).toBe('line-empty');
    expect(line(1e9).beds[0]?.because).toBe('holds-out');
    expect(line(50).supplies[0]).toMatchObject({ lineId: 'l', beds: 1, firstBedId: 'a' });
  });
  test('a higher confidence never promises more days', () => {
    const days = [3, 9, 5, 7, 4, 12];
    const at = [0.5, 0.8, 0.9, 1].map((confidence) => lastingAt(days, confidence));
    expect(at).toEqual(at.toSorted((a, b) => b - a));
    expect(at.at(-1)).toBe(3);
  });
  test('a stop keeps the departures tried so far; entries out of range are refused', () => {
    let tries = 0;
    const shouldStop = (): boolean => {
      tries += 1;
      return tries > 3;
    };
    const found = daysAway(ask, { ...voice, shouldStop });
    expect(found.departures).toBe(3);
    expect(() => daysAway({ ...ask, month: 13 }, voice)).toThrow(/month/);
    expect(() => daysAway({ ...ask, confidence: 0.2 }, voice)).toThrow(/confidence/);
  });
});

describe('the interval of a line', () => {
  const input = { beds: [{ store, year: rootsDown }], weather, month: 7, confidence: 0.9, most_days: 21, standing_days: 3 };
  test('is what its shortest bed lasts, and the run gives back what is then missing', () => {
    const found = lineInterval(input);
    expect(found).toMatchObject({ days: 5, limitedBy: 'a' });
    expect(found.run_L).toBeCloseTo(25, 6);
    expect(explainLineInterval(found, { line: 'Line', bed: 'A', confidence: 0.9 }).result.value).toBe(5);
  });
  test('a thirstier bed shortens it', () => {
    const thirsty = { store: { ...store, bedId: 'b' }, year: { ...rootsDown, use_m2: rootsDown.use_m2.map((use) => use * 2) } };
    const found = lineInterval({ ...input, beds: [...input.beds, thirsty] });
    expect(found.limitedBy).toBe('b');
    expect(found.days ?? 0).toBeLessThan(5);
  });
  test('an open basin is filled only so far that no water outlasts the days set', () => {
    const free = { kind: 'basin' as const, capacity_L: 80, fill_L: 60, rise_mm_per_day: 10, open_m2: 0.2 };
    const basin = { store: { ...store, free }, year: rootsDown };
    for (const standing_days of [2, 4, 7]) {
      const row = lineInterval({ ...input, beds: [basin], standing_days }).beds[0];
      expect(row?.stands_days ?? 99).toBeLessThanOrEqual(standing_days);
      expect(row?.fill_L ?? 99).toBeLessThan(60);
      expect(row?.fill_L ?? 0).toBeGreaterThan(0);
    }
  });
  test('a month without a crop has no interval', () => {
    const bare = bedYear({ area_m2: 1, depth_m: 0.25, crops: [], cover: { bareReduction: 0, exposure: 1 } });
    expect(lineInterval({ ...input, beds: [{ store, year: bare }] })).toMatchObject({ days: null, limitedBy: null, run_L: 0 });
  });
});
