import { describe, expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import type { BedStore } from '../../../../planner/water/bed-store.ts';
import type { BedYear } from '../../../../planner/water/bed-year.ts';
import {
  overArea_L,
  reservoirStore_L,
  roundUse_L_per_day,
  wallLoss_L_per_day,
} from '../../../../planner/water/container-water.ts';
import { bareReductionOf, cropOnBed, type PlantedSpan, type SpanAround } from '../../../../planner/water/crop-on-bed.ts';
import { cropWater } from '../../../../planner/water/crop-water.ts';
import { daysAway } from '../../../../planner/water/days-away.ts';
import { handRound } from '../../../../planner/water/hand-rounds.ts';
import { mixedKc, underShade_mm_per_day } from '../../../../planner/water/kc-adjustments.ts';
import { spanUse_L_per_m2 } from '../../../../planner/water/span-use.ts';
import { storeOfBed } from '../../../../planner/water/store-of-bed.ts';
import { lineInterval } from '../../../../planner/water/watering-interval.ts';
import { partOfRun, weatherRun } from '../../../../planner/water/weather-run.ts';

const silent = { progress: () => undefined, shouldStop: () => false };
/** 40 L, half of them free to take at 5 mm a day. */
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
const flat = (use_m2: number, cropped: 0 | 1 = 1): BedYear => ({
  use_m2: new Float64Array(366).fill(use_m2),
  roots_m: new Float64Array(366).fill(0.25),
  p: new Float64Array(366).fill(0.5),
  cropped: new Uint8Array(366).fill(cropped),
});
const years = (...eto_mm: readonly number[]) =>
  weatherRun(
    eto_mm.flatMap((eto, at) =>
      Array.from({ length: 365 }, (_, yearDay) => ({ year: 2014 + at, yearDay, eto_mm: eto, rain_mm: 0 })),
    ),
  );
const bed = (bedId: string, lineId: string | null, cropped: 0 | 1 = 1) => ({
  store: { ...store, bedId },
  year: flat(1, cropped),
  lineId,
});
const ask = { beds: [bed('a', null)], supplies: [], weather: years(5), month: 7, confidence: 0.9, limit_days: 30 };
const supply = (lineId: string, usable_L: number, capacity_L_per_day = 100) => ({ lineId, usable_L, capacity_L_per_day });

describe('days away', () => {
  test('behind a line that brings less than its beds use, end by the line', () => {
    // 5 L used and 2 given back a day: 3 more missing each day, above 20 on the morning of the eighth
    const found = daysAway({ ...ask, beds: [bed('a', 'x')], supplies: [supply('x', 1e9, 2)] }, silent);
    expect(found.beds[0]).toMatchObject({ days: 7, because: 'line-too-weak' });
  });

  test('two beds empty a tank in half the days', () => {
    // 10 L a day from the second day on: five days of 50 L, then the 15 L that are left free in each bed and the morning after
    const found = daysAway({ ...ask, beds: [bed('a', 'x'), bed('b', 'x')], supplies: [supply('x', 50)] }, silent);
    expect(found.beds.map(({ days, because }) => [days, because])).toEqual([
      [10, 'line-empty'],
      [10, 'line-empty'],
    ]);
    expect(found.beds.map((each) => each.firstShare)).toEqual([1, 1]);
  });

  test('are told for each line and for the beds on none, with the bed that is first', () => {
    const beds = [bed('c', null), bed('b', 'y'), bed('a', 'x'), bed('bare', null, 0)];
    const found = daysAway({ ...ask, beds, supplies: [supply('x', 50), supply('y', 1e9)] }, silent);
    expect(found.supplies).toEqual([
      { lineId: 'x', beds: 1, days: 15, median_days: 15, firstBedId: 'a' },
      { lineId: 'y', beds: 1, days: 30, median_days: 30, firstBedId: null },
      { lineId: null, beds: 2, days: 5, median_days: 5, firstBedId: 'c' },
    ]);
    expect(found.beds.map(({ bedId, days, firstShare, because }) => [bedId, days, firstShare, because])).toEqual([
      ['c', 5, 1, 'own-store'],
      ['b', 30, 0, 'holds-out'],
      ['a', 15, 0, 'line-empty'],
      ['bare', 30, 0, 'no-crop'],
    ]);
    expect(found.days).toBe(5);
  });

  test('look at every year of the record and tell the worst', () => {
    // at 10 mm a day the crop may take 0.3 of 40 L: short on the third morning. Every third day of July: 10 departures a year
    const told: string[] = [];
    const both = { ...ask, weather: years(5, 10) };
    const found = daysAway(both, { ...silent, progress: (done, of) => told.push(`${done}/${of}`) });
    expect(found).toMatchObject({ departures: 20, days: 2, median_days: 5, worst_days: 2, worstYear: 2015 });
    expect([told[0], told.at(-1), told.length]).toEqual(['0/20', '20/20', 21]);
    expect(daysAway({ ...both, confidence: 0.5 }, silent).days).toBe(5);
  });

  test('without a record of the month are none', () => {
    expect(daysAway({ ...ask, weather: weatherRun([]) }, silent)).toMatchObject({
      departures: 0,
      days: 0,
      worst_days: 0,
      worstYear: 0,
    });
  });
});

describe('the interval of a line', () => {
  const input = {
    beds: [{ store, year: flat(1) }],
    weather: years(5, 10),
    month: 7,
    confidence: 1,
    most_days: 21,
    standing_days: 3,
  };
  test('at full confidence is that of the hot year, and the run what the hot year lacks', () => {
    expect(lineInterval(input)).toMatchObject({ days: 2, run_L: 20, limitedBy: 'a' });
    const half = lineInterval({ ...input, confidence: 0.5 });
    expect(half.days).toBe(5);
    expect(half.run_L).toBeCloseTo(25, 9);
  });
  test('is no longer than asked for, and of two like beds the first by name decides', () => {
    const beds = ['b', 'a'].map((bedId) => ({ store: { ...store, bedId }, year: flat(1) }));
    expect(lineInterval({ ...input, beds, weather: years(5), most_days: 3 })).toMatchObject({
      days: 3,
      run_L: 30,
      limitedBy: 'a',
    });
  });
  test('leaves out beds without a crop in the month', () => {
    const beds = [...input.beds, { store: { ...store, bedId: 'bare' }, year: flat(1, 0) }];
    expect(lineInterval({ ...input, beds }).beds.map((each) => each.bedId)).toEqual(['a']);
  });
  test('of a closed reservoir tells no standing water', () => {
    const free = { kind: 'reservoir' as const, capacity_L: 30, fill_L: 20, rise_mm_per_day: 10, open_m2: 0 };
    expect(lineInterval({ ...input, beds: [{ store: { ...store, free }, year: flat(1) }] }).beds[0]).toMatchObject({
      stands_days: null,
      fill_L: null,
    });
  });
  test('of an open basin tells how long its water stands', () => {
    // 20 L and 5 mm a day on the bed, 1.05 x 5 mm x 0.2 m2 from the open water: down to a twentieth of it within four days
    const free = { kind: 'basin' as const, capacity_L: 30, fill_L: 20, rise_mm_per_day: 10, open_m2: 0.2 };
    const row = lineInterval({
      ...input,
      weather: years(5),
      standing_days: 7,
      beds: [{ store: { ...store, free }, year: flat(1) }],
    });
    expect(row.beds[0]).toMatchObject({ stands_days: 4, fill_L: 20 });
  });
});

test('a part of a run has its own days and no others', () => {
  const part = partOfRun(years(5, 10), 364, 366);
  expect([[...part.year], [...part.yearDay], [...part.eto_mm], [...part.rain_mm]]).toEqual([
    [2014, 2015],
    [364, 0],
    [5, 10],
    [0, 0],
  ]);
});

test('a round by hand goes in half cans, two at a walk, past beds that need none', () => {
  const round = handRound(
    [
      { bedId: 'a', need_L: 12 },
      { bedId: 'b', need_L: 0 },
      { bedId: 'c', need_L: 20 },
    ],
    10,
  );
  expect(round).toEqual({
    beds: [
      { bedId: 'a', need_L: 12, cans: 1.5 },
      { bedId: 'c', need_L: 20, cans: 2 },
    ],
    cans: 3.5,
    walks: 2,
    water_L: 35,
  });
});

test('litres of round beds, walls, reservoirs and shaded ground', () => {
  expect(roundUse_L_per_day(6, 0.5, 2)).toBeCloseTo(3 * Math.PI, 9);
  expect(wallLoss_L_per_day(5, 2)).toBeCloseTo(3, 9);
  expect(reservoirStore_L(2, 100, 0.4)).toBe(80);
  expect(overArea_L(5, 2)).toBe(10);
  expect(underShade_mm_per_day(8, 0.5)).toBe(5);
  // FAO-56 eq. 104: weighted by share and height
  expect(
    mixedKc([
      { share: 0.5, height_m: 2, kc: 1.2 },
      { share: 0.5, height_m: 1, kc: 0.6 },
    ]),
  ).toBeCloseTo(1, 9);
  const curve = { stages_days: [1, 2, 1, 0] as const, kcIni: 0.5, kcMid: 1, kcEnd: 0.8 };
  expect(spanUse_L_per_m2(curve, 1, [4, 4, 4, 4, 4])).toBeCloseTo(4 * (0.5 + 0.75 + 1 + 1 + 0.8), 9);
});

describe('the store of a bed', () => {
  const shape = {
    bedId: 'a',
    area_m2: 2,
    fillDepth_m: 0.3,
    inGround: false,
    covered: false,
    fabricWall_m2: 1,
    wallFactor: 0.3,
    availableShare: 0.2,
    free: { kind: 'basin' as const, capacity_L: 30, fill_L: 20, open_m2: 0.1 },
  };
  test('is its fill, and open ground below where it has no floor; rain only where it is open', () => {
    expect(storeOfBed(shape, 12)).toEqual({
      bedId: 'a',
      area_m2: 2,
      rain_m2: 2,
      wall_m2: 1,
      wallFactor: 0.3,
      depth_m: 0.3,
      availableShare: 0.2,
      free: { kind: 'basin', capacity_L: 30, fill_L: 20, rise_mm_per_day: 12, open_m2: 0.1 },
    });
    expect(storeOfBed({ ...shape, inGround: true, fillDepth_m: 0.7, free: null }, 12)).toMatchObject({
      depth_m: 0.7,
      free: null,
    });
  });
});

describe('a crop’s figures on a bed', () => {
  const crop = cropWater({
    cropId: 'tomato',
    group: 'nightshade',
    kcIni: 0.6,
    kcMid: 1.15,
    kcEnd: 0.8,
    stages_days: [30, 40, 45, 30],
    rootDepth_m: 0.7,
    height_m: 0.6,
    p: 0.4,
    saltThreshold_dS_per_m: 2.5,
    saltSlope_share_per_dS_per_m: 0.09,
  });
  const span: PlantedSpan = {
    inBedDate: '2027-05-20' as IsoDate,
    clearDate: '2027-09-30' as IsoDate,
    share: 0.5,
    canopy_m2: null,
    crop,
  };
  const around: SpanAround = { area_m2: 2, mulch: 'none', air: null };
  const kc = (change: Partial<SpanAround>, of = span) => {
    const { kcIni, kcMid, kcEnd } = cropOnBed(of, { ...around, ...change }).curve;
    return [kcIni, kcMid, kcEnd].map((each) => Number(each.toFixed(6)));
  };

  test('that the farm knows are its own, and stand on no printed row', () => {
    expect(crop).toMatchObject({ like: null, height_m: 0.6, rootDepth_m: 0.7, p: 0.4, saltThreshold_dS_per_m: 2.5 });
    // FAO-56 Table 17: Kcb mid 1.10 against Kc mid 1.15
    expect(crop.kcbMid).toBeCloseTo(1.1, 9);
  });

  test('under plastic fall by a fifth, from a tenth at the start; under straw by half of what the ground evaporates', () => {
    expect(kc({})).toEqual([0.6, 1.15, 0.8]);
    expect(kc({ mulch: 'plastic' })).toEqual([0.1, 0.92, 0.64]);
    expect(kc({ mulch: 'organic' })).toEqual([0.3, 1.125, 0.775]);
    expect((['none', 'organic', 'plastic'] as const).map(bareReductionOf)).toEqual([0, 0.5, 0.8]);
  });

  test('rise in dry wind, but not the end of a crop that dries on the plant', () => {
    // FAO-56 eq. 62: 0.04 (3 - 2) - 0.004 (30 - 45) is 0.1, times (0.6 / 3)^0.3
    const term = 0.1 * 0.2 ** 0.3;
    const air = { wind2m_m_per_s: 3, rhmin_share: 0.3 };
    expect(kc({ air })).toEqual([0.6, 1.15 + term, 0.8 + term].map((each) => Number(each.toFixed(6))));
    expect(kc({ air }, { ...span, crop: { ...crop, kcEnd: 0.35 } })[2]).toBe(0.35);
  });

  test('spread over the bed no wider than twice its own share, never less', () => {
    const wide = (canopy_m2: number | null, share = 0.5) => cropOnBed({ ...span, canopy_m2, share }, around).canopyFactor;
    expect([wide(1.5), wide(9), wide(0.2), wide(null), wide(1, 0)]).toEqual([1.5, 2, 1, 1, 1]);
  });

  test('stand from the day it takes the bed to the day before it is cleared, one day at least', () => {
    const of = (clearDate: string) => cropOnBed({ ...span, clearDate: clearDate as IsoDate }, around);
    expect([of('2027-05-30').from, of('2027-05-30').to]).toEqual([140, 149]);
    expect([of('2027-05-20').from, of('2027-05-20').to]).toEqual([140, 140]);
  });
});
