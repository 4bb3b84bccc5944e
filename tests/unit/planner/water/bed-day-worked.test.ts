import { describe, expect, test } from 'vitest';
import { type BedDayInput, type BedWaterState, emptyDay, fullBed, waterBed } from '../../../../planner/water/bed-day.ts';
import { missing_L, monthOf, runBed, traceBed, type Watering } from '../../../../planner/water/bed-run.ts';
import type { BedStore, FreeStore } from '../../../../planner/water/bed-store.ts';
import { type BedYear, bedYear, stagesFor } from '../../../../planner/water/bed-year.ts';
import { stressYears } from '../../../../planner/water/stress-years.ts';
import { weatherRun } from '../../../../planner/water/weather-run.ts';

// A bed of 2 m2 and 0.3 m with 20 % of available water: 40 L for each 0.1 m. Worked by hand after FAO-56 eq. 82 to 86.
const bed: BedStore = {
  bedId: 'b',
  area_m2: 2,
  rain_m2: 2,
  wall_m2: 0,
  wallFactor: 0,
  depth_m: 0.3,
  availableShare: 0.2,
  free: null,
};
/** A day of 5 mm on a closed crop of Kc 1: 10 L; p holds as printed at 5 mm a day. Roots of 0.15 m reach 60 L, 24 of them freely. */
const day: BedDayInput = { eto_mm: 5, rain_mm: 0, use_m2: 2, roots_m: 0.15, p: 0.4, top_L: 0, below_L: 0 };

function through(change: { bed?: Partial<BedStore>; day?: Partial<BedDayInput>; state?: Partial<BedWaterState> }) {
  const store = { ...bed, ...change.bed };
  const state = { ...fullBed(store, 0.15), ...change.state };
  const out = emptyDay();
  waterBed(store, state, { ...day, ...change.day }, out);
  return { out, state };
}

describe('a day of a bed', () => {
  test('that is full: the crop uses what it wants', () => {
    const { out, state } = through({});
    expect(out).toMatchObject({ used_L: 10, wanted_L: 10, ks: 1, drained_L: 0, rain_L: 0 });
    expect(state).toMatchObject({ rooted_L: 10, below_L: 0 });
  });

  test('that lost more than p of its water: the crop uses less, in proportion to what is left', () => {
    // (60 - 42) / (60 - 24) is a half
    const { out, state } = through({ state: { rooted_L: 42 } });
    expect(out.ks).toBeCloseTo(0.5, 9);
    expect(out.used_L).toBeCloseTo(5, 9);
    expect(state.rooted_L).toBeCloseTo(47, 9);
    expect(through({ state: { rooted_L: 24 } }).out.ks).toBe(1);
    expect(through({ state: { rooted_L: 60 } }).out).toMatchObject({ ks: 0, used_L: 0 });
  });

  test('that is hot: the crop may take a smaller share without stress, but never less than a tenth', () => {
    // FAO-56 Table 22, note: p + 0.04 (5 - ETc). At 10 mm 0.2, so 12 L of 60: (60 - 36) / (60 - 12) is a half
    expect(through({ day: { eto_mm: 10 }, state: { rooted_L: 36 } }).out.ks).toBeCloseTo(0.5, 9);
    // at 20 mm a tenth, 6 L: (60 - 33) / (60 - 6) is a half; at no use at all at most 0.8
    expect(through({ day: { eto_mm: 20 }, state: { rooted_L: 33 } }).out.ks).toBeCloseTo(0.5, 9);
    expect(through({ day: { eto_mm: 0.1, p: 0.75 }, state: { rooted_L: 54 } }).out.ks).toBeCloseTo(0.5, 9);
  });

  test('without use has no stress', () => {
    expect(through({ day: { use_m2: 0 }, state: { rooted_L: 60 } }).out).toMatchObject({ ks: 1, used_L: 0, wanted_L: 0 });
  });

  test('with a wall in the wind: the wall adds to the use', () => {
    expect(through({ bed: { wall_m2: 4, wallFactor: 0.25 } }).out.wanted_L).toBe(15);
  });

  test('of light rain: less than a fifth of the reference does not reach the soil', () => {
    expect(through({ day: { rain_mm: 0.9 }, state: { rooted_L: 20 } })).toMatchObject({
      out: { rain_L: 1.8, intercepted_L: 1.8 },
      state: { rooted_L: 30 },
    });
    expect(through({ day: { rain_mm: 1 }, state: { rooted_L: 20 } })).toMatchObject({
      out: { rain_L: 2, intercepted_L: 0 },
      state: { rooted_L: 28 },
    });
  });

  test('of heavy rain: first the roots, then below them, the rest drains', () => {
    const { out, state } = through({ day: { rain_mm: 10 }, state: { rooted_L: 12, below_L: 3 } });
    expect(out.drained_L).toBe(5);
    expect(state).toMatchObject({ rooted_L: 10, below_L: 0 });
    // water given on the surface goes the same way, water given below runs off where nothing holds it
    expect(through({ day: { top_L: 20 }, state: { rooted_L: 12, below_L: 3 } }).out.drained_L).toBe(5);
    expect(through({ day: { below_L: 7 } }).out.drained_L).toBe(7);
  });

  test('on which roots grow: they take over what is missing in their new layer, and give it back when they go', () => {
    const grown = through({ day: { roots_m: 0.2, use_m2: 0 }, state: { below_L: 30 } }).state;
    expect(grown.rooted_L).toBeCloseTo(10, 9);
    expect(grown.below_L).toBeCloseTo(20, 9);
    expect(grown.roots_m).toBe(0.2);
    const gone = through({ day: { use_m2: 0 }, state: { roots_m: 0.2, rooted_L: 20, below_L: 1 } }).state;
    expect(gone.rooted_L).toBeCloseTo(15, 9);
    expect(gone.below_L).toBeCloseTo(6, 9);
  });
});

describe('free water under a bed', () => {
  const free: FreeStore = { kind: 'reservoir', capacity_L: 50, fill_L: 40, rise_mm_per_day: 8, open_m2: 0 };

  test('rises to what is missing, below first, as far as soil and reservoir let it', () => {
    const rise = (state: Partial<BedWaterState>, change: Partial<FreeStore> = {}) => {
      const found = through({ bed: { free: { ...free, ...change } }, day: { use_m2: 0 }, state: { free_L: 40, ...state } });
      return [found.out.risen_L, found.state.rooted_L, found.state.below_L, found.state.free_L];
    };
    expect(rise({ rooted_L: 10, below_L: 4 })).toEqual([14, 0, 0, 26]);
    // 8 mm on 2 m2 are 16 L
    expect(rise({ rooted_L: 20, below_L: 4 })).toEqual([16, 8, 0, 24]);
    expect(rise({ rooted_L: 1, below_L: 30 })).toEqual([16, 1, 14, 24]);
    expect(rise({ rooted_L: 20, below_L: 4, free_L: 5 })).toEqual([5, 19, 0, 0]);
  });

  test('takes what drains, and overflows at its rim', () => {
    const { out, state } = through({ bed: { free }, day: { rain_mm: 10, use_m2: 0 }, state: { free_L: 40, rooted_L: 2 } });
    // 20 L of rain, 2 into the soil, 18 into 40: 8 over the rim of 50
    expect(out).toMatchObject({ overflow_L: 8, drained_L: 0, rain_L: 20, evaporated_L: 0 });
    expect(state).toMatchObject({ free_L: 50, rooted_L: 0 });
    expect(through({ bed: { free }, day: { below_L: 6, use_m2: 0 }, state: { free_L: 40 } }).state.free_L).toBe(46);
  });

  test('in an open basin catches rain and evaporates, but not under a cover', () => {
    const basin = { ...free, kind: 'basin' as const, open_m2: 0.5 };
    const wet = through({ bed: { free: basin }, day: { rain_mm: 4, use_m2: 0 }, state: { free_L: 20 } });
    // 8 L through the soil, 2 on the open water; 1.05 x 5 mm x 0.5 m2 evaporate (FAO-56 Table 12, open water)
    expect(wet.out.rain_L).toBe(10);
    expect(wet.out.evaporated_L).toBeCloseTo(2.625, 9);
    expect(wet.state.free_L).toBeCloseTo(27.375, 9);
    const covered = through({ bed: { free: basin, rain_m2: 0 }, day: { rain_mm: 4, use_m2: 0 }, state: { free_L: 20 } });
    expect(covered.out.rain_L).toBe(0);
    expect(covered.state.free_L).toBeCloseTo(17.375, 9);
    expect(through({ bed: { free: basin }, day: { use_m2: 0 }, state: { free_L: 1 } }).out.evaporated_L).toBe(1);
  });

  test('belongs to what is missing, as far as it is usually filled', () => {
    const state = { rooted_L: 3, below_L: 2, free_L: 30, roots_m: 0.15 };
    expect(missing_L({ ...bed, free }, state)).toBe(15);
    expect(missing_L({ ...bed, free }, { ...state, free_L: 45 })).toBe(5);
    expect(missing_L(bed, state)).toBe(5);
  });
});

describe('watering', () => {
  const days = (rain_mm: readonly number[]) =>
    weatherRun(rain_mm.map((rain, at) => ({ year: 2015, yearDay: at, eto_mm: 5, rain_mm: rain })));
  const flat = (cropped: 0 | 1): BedYear => ({
    use_m2: new Float64Array(366).fill(2),
    roots_m: new Float64Array(366).fill(0.15),
    p: new Float64Array(366).fill(0.4),
    cropped: new Uint8Array(366).fill(cropped),
  });
  const given = (watering: Watering, rain_mm: readonly number[], store: BedStore = bed, cropped: 0 | 1 = 1) => {
    const each: number[] = [];
    runBed(store, flat(cropped), days(rain_mm), watering, (_, __, ___, given_L) => each.push(given_L));
    return each;
  };

  test('by hand each day gives back what is missing, less the rain that counts', () => {
    expect(given({ kind: 'kept-full' }, [0, 0, 3, 0.9, 20])).toEqual([0, 10, 4, 10, 0]);
    expect(given({ kind: 'kept-full' }, [0, 0], bed, 0)).toEqual([0, 0]);
    expect(given({ kind: 'rain-only' }, [0, 0, 0])).toEqual([0, 0, 0]);
  });

  test('when due waits until the day would take more than the share that is free to take', () => {
    // 24 L are free: after two days 20 are gone, and a third day of 10 would pass 24
    expect(given({ kind: 'when-due' }, [0, 0, 0, 0, 0])).toEqual([0, 0, 20, 0, 20]);
    expect(given({ kind: 'when-due' }, [0, 0, 0], bed, 0)).toEqual([0, 0, 0]);
  });

  test('when due lets a basin run dry first', () => {
    const basin = { ...bed, free: { kind: 'basin' as const, capacity_L: 30, fill_L: 25, rise_mm_per_day: 20, open_m2: 0 } };
    // 25 L of basin carry days one to three; then 20 missing and the fill of 25
    const found = given({ kind: 'when-due' }, [0, 0, 0, 0, 0, 0, 0, 0], basin);
    expect(found.slice(0, 4)).toEqual([0, 0, 0, 0]);
    expect(found.find((each) => each > 0)).toBeGreaterThan(25);
  });

  test('by a timer is the same amount on every so many days of its months', () => {
    const months = Array.from({ length: 12 }, (_, month) => (month === 0 ? { every_days: 3, amount_L: 12 } : null));
    expect(given({ kind: 'timer', months }, [0, 0, 0, 0])).toEqual([12, 0, 0, 12]);
    const winter = weatherRun([30, 31, 33].map((yearDay) => ({ year: 2015, yearDay, eto_mm: 5, rain_mm: 0 })));
    const each: number[] = [];
    runBed(bed, flat(1), winter, { kind: 'timer', months }, (_, __, ___, given_L) => each.push(given_L));
    // 31 January is day 30; February has no programme
    expect(each).toEqual([12, 0, 0]);
  });

  test('months of the year day, 1 January first, with a leap day', () => {
    expect([0, 30, 31, 59, 60, 334, 335, 365].map(monthOf)).toEqual([0, 0, 1, 1, 2, 10, 11, 11]);
  });

  test('a run adds up its days, counts those short of water and tells the worst', () => {
    const totals = runBed(bed, flat(1), days([0, 0, 0, 0, 0]), { kind: 'rain-only' });
    // 10 L a day while 24 of 60 are free; from 30 missing on (60 - missing) / 36
    const used = [10, 10, 10, 10 * (30 / 36)];
    const fourth = 30 + 10 * (30 / 36);
    used.push(10 * ((60 - fourth) / 36));
    expect(totals.used_L).toBeCloseTo(
      used.reduce((sum, each) => sum + each, 0),
      9,
    );
    expect(totals).toMatchObject({ wanted_L: 50, stressDays: 2, given_L: 0, rain_L: 0 });
    expect(totals.lowestKs).toBeCloseTo((60 - fourth) / 36, 9);
    expect(runBed(bed, flat(0), days([0, 0, 0, 0, 0]), { kind: 'rain-only' })).toMatchObject({ stressDays: 0, lowestKs: 1 });
    expect(runBed(bed, flat(1), days([30, 0.5]), { kind: 'rain-only' })).toMatchObject({
      rain_L: 61,
      drained_L: 60,
      intercepted_L: 1,
    });
  });

  test('a trace has each day of the run: missing, allowed, given, used and lost', () => {
    const { days: traced, totals } = traceBed(bed, flat(1), days([0, 0, 20, 0]), { kind: 'kept-full' });
    expect([...traced.missing_L]).toEqual([10, 10, 10, 10]);
    for (const allowed of traced.allowed_L) expect(allowed).toBeCloseTo(24, 9);
    expect([...traced.given_L]).toEqual([0, 10, 0, 10]);
    expect([...traced.used_L]).toEqual([10, 10, 10, 10]);
    expect([...traced.lost_L]).toEqual([0, 0, 30, 0]);
    expect([...traced.ks]).toEqual([1, 1, 1, 1]);
    expect([...traced.free_L]).toEqual([0, 0, 0, 0]);
    expect(totals).toMatchObject({ given_L: 20, drained_L: 30 });
  });

  test('the figures of years are the means of their runs', () => {
    const dry = weatherRun(Array.from({ length: 12 }, (_, at) => ({ year: 2013, yearDay: 25 + at, eto_mm: 5, rain_mm: 0 })));
    const wet = weatherRun(Array.from({ length: 12 }, (_, at) => ({ year: 2012, yearDay: 25 + at, eto_mm: 5, rain_mm: 10 })));
    const watering: Watering = { kind: 'timer', months: Array.from({ length: 12 }, () => ({ every_days: 30, amount_L: 6 })) };
    const runs = [wet, dry].map((run) => runBed(bed, flat(1), run, watering));
    const mean = (of: (run: (typeof runs)[number]) => number) => runs.reduce((sum, run) => sum + of(run), 0) / 2;
    const told: [number, number][] = [];
    const found = stressYears([{ store: bed, year: flat(1), watering }], [wet, dry], {
      progress: (done, of) => told.push([done, of]),
      shouldStop: () => false,
    });
    expect(found.years).toEqual([2012, 2013]);
    expect(told).toEqual([
      [0, 1],
      [1, 1],
    ]);
    expect(found.beds[0]).toMatchObject({
      bedId: 'b',
      worstYear: 2013,
      worstYear_days: runs[1]?.stressDays,
      days_per_year: mean((run) => run.stressDays),
      lost_L_per_year: mean((run) => run.drained_L + run.overflow_L),
      given_L_per_year: mean((run) => run.given_L),
      metShare: mean((run) => run.used_L) / mean((run) => run.wanted_L),
    });
    // short in January and February of the one year; a crop stands all year
    expect(found.beds[0]?.chance.slice(0, 3)).toEqual([0.5, 0.5, 0]);
    expect(found.stopped).toBe(false);
    const none = stressYears([{ store: bed, year: flat(1), watering }], [], {
      progress: () => undefined,
      shouldStop: () => false,
    });
    expect(none.beds[0]).toMatchObject({ days_per_year: 0, worstYear_days: 0, metShare: 1 });
  });
});

describe('a year of a bed', () => {
  const curve = { stages_days: [20, 30, 30, 20] as const, kcIni: 0.5, kcMid: 1.1, kcEnd: 0.8 };
  const crop = { from: 1, to: 100, curve, share: 0.5, canopyFactor: 2, rootDepth_m: 0.45, p: 0.3 };
  const year = bedYear({ area_m2: 4, depth_m: 0.5, crops: [crop], cover: { bareReduction: 0.5, exposure: 1.2 } });

  test('takes the crop on its canopy and the rest as mulched bare ground, times the exposure', () => {
    // bare half 2 m2 x 0.3 x 0.5 is 0.3; day 1 0.5 x 2 m2; day 35 0.8 x 3 m2; day 60 1.1 x 4 m2; bare afterwards 0.6
    expect([0, 34, 59, 100].map((at) => year.use_m2[at] ?? 0).map((use) => use.toFixed(9))).toEqual(
      [1.3, 2.7, 4.7, 0.6].map((each) => (each * 1.2).toFixed(9)),
    );
  });

  test('has roots that grow to their depth by the middle stage, then stay', () => {
    expect([0, 24, 49, 80, 100].map((at) => (year.roots_m[at] ?? 0).toFixed(9))).toEqual(
      [0.15 + 0.3 / 50, 0.3, 0.45, 0.45, 0.15].map((each) => each.toFixed(9)),
    );
    expect([50, 100].map((at) => year.p[at])).toEqual([0.3, 0.5]);
    expect([0, 99, 100].map((at) => year.cropped[at])).toEqual([1, 1, 0]);
  });

  test('has, under two crops, roots and p between theirs by the ground each takes', () => {
    const two = bedYear({
      area_m2: 4,
      depth_m: 0.5,
      crops: [crop, { ...crop, share: 0.25, canopyFactor: 1, rootDepth_m: 0.15, p: 0.6 }],
      cover: { bareReduction: 0, exposure: 1 },
    });
    expect(two.roots_m[60]).toBeCloseTo((0.5 * 0.45 + 0.25 * 0.15) / 0.75, 9);
    expect(two.p[60]).toBeCloseTo((0.5 * 0.3 + 0.25 * 0.6) / 0.75, 9);
    expect(two.use_m2[59]).toBeCloseTo(1.1 * 4 + 1.1 * 1 + 0.25 * 4 * 0.3, 9);
  });

  test('of a shallow bed has roots no deeper than the bed', () => {
    const shallow = bedYear({ area_m2: 4, depth_m: 0.1, crops: [crop], cover: { bareReduction: 0, exposure: 1 } });
    expect([0, 60, 200].map((at) => shallow.roots_m[at])).toEqual([0.1, 0.1, 0.1]);
  });

  test('brings the stages of a crop to the length of its planting', () => {
    expect(stagesFor(curve, 50).stages_days).toEqual([10, 15, 15, 10]);
    expect(stagesFor(curve, 0).stages_days).toEqual([0.2, 0.3, 0.3, 0.2]);
    const none = { ...curve, stages_days: [0, 0, 0, 0] as const };
    expect(stagesFor(none, 50)).toBe(none);
  });
});
