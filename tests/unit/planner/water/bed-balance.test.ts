import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError } from '../../../../planner/errors.ts';
import { type BedDayInput, emptyDay, fullBed, waterBed } from '../../../../planner/water/bed-day.ts';
import { bedUse_L_per_day, explainBedUse } from '../../../../planner/water/bed-demand.ts';
import { runBed, type Watering } from '../../../../planner/water/bed-run.ts';
import type { BedStore } from '../../../../planner/water/bed-store.ts';
import { bedYear, type CropOnBed } from '../../../../planner/water/bed-year.ts';
import { stressYears } from '../../../../planner/water/stress-years.ts';
import { type RunDay, weatherRun } from '../../../../planner/water/weather-run.ts';

const amount = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const anyStore: fc.Arbitrary<BedStore> = fc.record({
  bedId: fc.constant('bed'),
  area_m2: amount(0.1, 20),
  rain_m2: amount(0, 20),
  wall_m2: amount(0, 5),
  wallFactor: amount(0, 0.5),
  depth_m: amount(0.1, 1),
  availableShare: amount(0.05, 0.5),
  free: fc.option(
    fc
      .record({
        kind: fc.constantFrom('basin' as const, 'reservoir' as const),
        capacity_L: amount(0, 200),
        fillShare: amount(0, 1),
        rise_mm_per_day: amount(0, 30),
        open_m2: amount(0, 1),
      })
      .map(({ fillShare, ...store }) => ({ ...store, fill_L: fillShare * store.capacity_L })),
    { nil: null },
  ),
});

const anyCrop: fc.Arbitrary<CropOnBed> = fc
  .record({
    from: fc.integer({ min: 1, max: 300 }),
    days: fc.integer({ min: 20, max: 150 }),
    root: amount(0.1, 1.2),
    p: amount(0.2, 0.6),
    share: amount(0.2, 1),
    canopyFactor: amount(1, 2),
  })
  .map(({ from, days, root, ...rest }) => ({
    ...rest,
    from,
    to: from + days,
    rootDepth_m: root,
    curve: { stages_days: [days / 4, days / 4, days / 4, days / 4] as const, kcIni: 0.5, kcMid: 1.1, kcEnd: 0.8 },
  }));

const anyDays: fc.Arbitrary<readonly RunDay[]> = fc
  .array(fc.tuple(amount(0, 9), fc.oneof(fc.constant(0), amount(0, 60))), { minLength: 30, maxLength: 120 })
  .map((days) => days.map(([eto_mm, rain_mm], at) => ({ year: 2014, yearDay: (90 + at) % 366, eto_mm, rain_mm })));

const yearOf = (store: BedStore, crop: CropOnBed) =>
  bedYear({ area_m2: store.area_m2, depth_m: store.depth_m, crops: [crop], cover: { bareReduction: 0.1, exposure: 1 } });

const waterings: readonly Watering[] = [
  { kind: 'rain-only' },
  { kind: 'kept-full' },
  { kind: 'when-due' },
  { kind: 'timer', months: Array.from({ length: 12 }, () => ({ every_days: 3, amount_L: 12 })) },
];

describe('the water of a bed', () => {
  test('what comes in is used, lost or kept, to a millionth of a litre on every day', () => {
    fc.assert(
      fc.property(anyStore, anyCrop, anyDays, fc.constantFrom(...waterings), (store, crop, days, watering) => {
        const start = { soil_L: 0, free_L: store.free?.fill_L ?? 0 };
        let before = start.free_L - start.soil_L;
        runBed(store, yearOf(store, crop), weatherRun(days), watering, (_, day, state, given_L) => {
          const now = state.free_L - state.rooted_L - state.below_L;
          const gone = day.used_L + day.evaporated_L + day.drained_L + day.overflow_L + day.intercepted_L;
          expect(Math.abs(now - before - (day.rain_L + given_L - gone))).toBeLessThan(1e-6);
          before = now;
        });
      }),
      { numRuns: 150 },
    );
  });

  test('what is missing stays between nothing and all that the soil holds', () => {
    fc.assert(
      fc.property(anyStore, anyCrop, anyDays, fc.constantFrom(...waterings), (store, crop, days, watering) => {
        const all_L = 1000 * store.availableShare * store.depth_m * store.area_m2;
        runBed(store, yearOf(store, crop), weatherRun(days), watering, (_, __, state) => {
          expect(state.rooted_L).toBeGreaterThanOrEqual(-1e-9);
          expect(state.below_L).toBeGreaterThanOrEqual(-1e-9);
          expect(state.rooted_L + state.below_L).toBeLessThanOrEqual(all_L + 1e-6);
          expect(state.free_L).toBeGreaterThanOrEqual(0);
          expect(state.free_L).toBeLessThanOrEqual((store.free?.capacity_L ?? 0) + 1e-9);
        });
      }),
      { numRuns: 150 },
    );
  });

  test('more rain never means more water to give to a bed that is kept full', () => {
    fc.assert(
      fc.property(anyStore, anyCrop, anyDays, fc.nat(29), amount(0, 40), (store, crop, days, at, more) => {
        const open = { ...store, rain_m2: store.area_m2 };
        const wet = days.map((day, index) => (index === at ? { ...day, rain_mm: day.rain_mm + more } : day));
        const given = (run: readonly RunDay[]) =>
          runBed(open, yearOf(open, crop), weatherRun(run), { kind: 'kept-full' }).given_L;
        expect(given(wet)).toBeLessThanOrEqual(given(days) + 1e-6);
      }),
      { numRuns: 150 },
    );
  });

  test('a bed kept full of water never goes short while a day’s use is within its store', () => {
    const store: BedStore = {
      bedId: 'b',
      area_m2: 2,
      rain_m2: 2,
      wall_m2: 0,
      wallFactor: 0,
      depth_m: 0.3,
      availableShare: 0.2,
      free: null,
    };
    const crop: CropOnBed = {
      from: 60,
      to: 200,
      curve: { stages_days: [30, 40, 40, 30], kcIni: 0.6, kcMid: 1.15, kcEnd: 0.8 },
      share: 1,
      canopyFactor: 1,
      rootDepth_m: 0.5,
      p: 0.4,
    };
    const days = Array.from({ length: 90 }, (_, at) => ({ year: 2015, yearDay: 90 + at, eto_mm: 7, rain_mm: 0 }));
    const year = yearOf(store, crop);
    expect(runBed(store, year, weatherRun(days), { kind: 'kept-full' }).stressDays).toBe(0);
    expect(runBed(store, year, weatherRun(days), { kind: 'rain-only' }).stressDays).toBeGreaterThan(60);
    expect(runBed(store, year, weatherRun(days), { kind: 'when-due' }).stressDays).toBe(0);
  });

  test('a reservoir below keeps the soil moist only as far as it can rise', () => {
    const free = { kind: 'reservoir' as const, capacity_L: 60, fill_L: 60, rise_mm_per_day: 8, open_m2: 0 };
    const base: BedStore = {
      bedId: 'r',
      area_m2: 0.8,
      rain_m2: 0,
      wall_m2: 0,
      wallFactor: 0,
      depth_m: 0.3,
      availableShare: 0.25,
      free,
    };
    const crop: CropOnBed = {
      from: 1,
      to: 366,
      curve: { stages_days: [0, 0, 366, 0], kcIni: 1, kcMid: 1, kcEnd: 1 },
      share: 1,
      canopyFactor: 1,
      rootDepth_m: 0.3,
      p: 0.4,
    };
    const days = weatherRun(Array.from({ length: 40 }, (_, at) => ({ year: 2015, yearDay: at, eto_mm: 5, rain_mm: 0 })));
    const stress = (store: BedStore) => runBed(store, yearOf(store, crop), days, { kind: 'rain-only' }).stressDays;
    expect(stress({ ...base, free: { ...free, rise_mm_per_day: 0 } })).toBeGreaterThan(stress(base));
  });

  test('a store without depth is refused at its field', () => {
    const store = { bedId: 'x', area_m2: 1, rain_m2: 1, wall_m2: 0, wallFactor: 0, depth_m: 0, availableShare: 0.2, free: null };
    const none = bedYear({ area_m2: 1, depth_m: 1, crops: [], cover: { bareReduction: 0, exposure: 1 } });
    expect(() => runBed(store, none, weatherRun([]), { kind: 'rain-only' })).toThrow(InputError);
    expect(() => runBed(store, none, weatherRun([]), { kind: 'rain-only' })).toThrow(/depth_m/);
  });

  test('the working of the use ends in the use', () => {
    fc.assert(
      fc.property(anyStore, anyCrop, amount(0, 10), fc.nat(365), (store, crop, eto, yearDay) => {
        const input = { store, year: yearOf(store, crop), yearDay, eto_mm_per_day: eto };
        expect(explainBedUse({ ...input, code: 'B-1' }).result.value).toBe(bedUse_L_per_day(input));
      }),
      { numRuns: 40 },
    );
  });

  test('a full day of rain leaves a full bed', () => {
    fc.assert(
      fc.property(anyStore, (store) => {
        const state = { ...fullBed(store, store.depth_m), rooted_L: 1 };
        const day: BedDayInput = {
          eto_mm: 0,
          rain_mm: 2000,
          use_m2: 1,
          roots_m: store.depth_m,
          p: 0.4,
          top_L: 10,
          below_L: 0,
        };
        waterBed(store, state, day, emptyDay());
        expect(state.rooted_L).toBeCloseTo(0, 9);
      }),
    );
  });
});

describe('years of record', () => {
  test('the chance of stress counts years, and a stop leaves what was done', () => {
    const store: BedStore = {
      bedId: 'a',
      area_m2: 1,
      rain_m2: 1,
      wall_m2: 0,
      wallFactor: 0,
      depth_m: 0.3,
      availableShare: 0.15,
      free: null,
    };
    const crop: CropOnBed = {
      from: 120,
      to: 240,
      curve: { stages_days: [30, 30, 30, 30], kcIni: 0.5, kcMid: 1.1, kcEnd: 0.9 },
      share: 1,
      canopyFactor: 1,
      rootDepth_m: 0.4,
      p: 0.4,
    };
    const days = (year: number, rain_mm: number) =>
      weatherRun(Array.from({ length: 365 }, (_, yearDay) => ({ year, yearDay, eto_mm: 5, rain_mm })));
    const bed = { store, year: yearOf(store, crop), watering: { kind: 'rain-only' } as const };
    const voice = { progress: () => undefined, shouldStop: () => false };
    const found = stressYears([bed], [days(2012, 20), days(2013, 0)], voice);
    expect(found.beds[0]?.chance[6]).toBe(0.5);
    expect(found.beds[0]?.chance[0]).toBeNull();
    expect(found.beds[0]?.worstYear).toBe(2013);
    const stopped = stressYears([bed], [days(2013, 0)], { ...voice, shouldStop: () => true });
    expect(stopped).toMatchObject({ stopped: true, beds: [] });
  });
});
