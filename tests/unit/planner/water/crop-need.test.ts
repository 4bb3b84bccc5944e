import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { bedYear, stagesFor } from '../../../../planner/water/bed-year.ts';
import { cropCoefficient, kcAt, type StageDays, scaledStages, seasonDays } from '../../../../planner/water/crop-curve.ts';
import { bareReductionOf, cropOnBed } from '../../../../planner/water/crop-on-bed.ts';
import { cropRow, cropRows } from '../../../../planner/water/crop-rows.ts';
import { cropWater } from '../../../../planner/water/crop-water.ts';
import {
  adjustedKc,
  adjustedKcEnd,
  initialKc,
  mixedKc,
  underOrganic,
  underPlastic,
  underShade_mm_per_day,
} from '../../../../planner/water/kc-adjustments.ts';
import { effectiveCover, fullBasalKc, sparseKc } from '../../../../planner/water/plant-density.ts';
import { stageRow, stageRows, stageRowsOf } from '../../../../planner/water/stage-rows.ts';
import { dryingDays, dryingShare, exposedWetShare } from '../../../../planner/water/surface-evaporation.ts';

const amount = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const stages = fc.tuple(amount(1, 60), amount(1, 60), amount(1, 60), amount(1, 60)) as fc.Arbitrary<StageDays>;
const curve = { stages_days: [25, 25, 30, 20] as const, kcIni: 0.15, kcMid: 1.19, kcEnd: 0.35 };

describe('the curve of a crop', () => {
  test('stays between its least and its greatest coefficient on every day', () => {
    fc.assert(
      fc.property(stages, amount(0.1, 1), amount(0.5, 1.3), amount(0.2, 1.2), amount(1, 400), (s, kcIni, kcMid, kcEnd, day) => {
        const kc = cropCoefficient({ stages_days: s, kcIni, kcMid, kcEnd }, day);
        expect(kc).toBeGreaterThanOrEqual(Math.min(kcIni, kcMid, kcEnd) - 1e-9);
        expect(kc).toBeLessThanOrEqual(Math.max(kcIni, kcMid, kcEnd) + 1e-9);
      }),
    );
  });
  test('has no jump between one day and the next that its slope does not explain', () => {
    const steps = Array.from({ length: 110 }, (_, at) => Math.abs(kcAt(curve, at + 1) - kcAt(curve, at)));
    expect(Math.max(...steps)).toBeLessThanOrEqual(1.04 / 20 + 1e-9);
  });
  test('scaled to a planting’s days keeps the shares of its stages', () => {
    fc.assert(
      fc.property(stages, amount(20, 300), (s, total) => {
        const scaled = scaledStages(s, total);
        expect(seasonDays(scaled)).toBeCloseTo(total, 6);
        scaled.forEach((days, at) => {
          expect(days / total).toBeCloseTo((s[at] ?? 0) / seasonDays(s), 9);
        });
      }),
    );
    expect(seasonDays(stagesFor(curve, 60).stages_days)).toBeCloseTo(60, 9);
  });
  test('a stage below zero and a coefficient beyond reason are refused at their field', () => {
    expect(() => cropCoefficient({ ...curve, stages_days: [-1, 1, 1, 1] }, 3)).toThrow(/stages_days.0/);
    expect(() => cropCoefficient({ ...curve, kcMid: 3 }, 3)).toThrow(/kcMid/);
    expect(() => scaledStages([0, 0, 0, 0], 30)).toThrow(/at least one day/);
  });
});

describe('what changes a coefficient', () => {
  const air = { wind2m_m_per_s: 2, rhmin_share: 0.45, height_m: 0.4 };
  test('in the air of the printed table it stays as printed; drier and windier it rises', () => {
    expect(adjustedKc(1.05, air)).toBeCloseTo(1.05, 9);
    expect(adjustedKc(1.05, { ...air, rhmin_share: 0.2, wind2m_m_per_s: 4 })).toBeGreaterThan(1.1);
    expect(adjustedKcEnd(0.35, { ...air, rhmin_share: 0.2 })).toBe(0.35);
    expect(() => adjustedKc(1, { ...air, rhmin_share: 45 })).toThrow(/rhmin_share/);
  });
  test('mulch never raises it', () => {
    fc.assert(
      fc.property(amount(0.2, 1.3), amount(0, 1), amount(0, 1), amount(0, 0.5), (kc, kcb, cover, cut) => {
        expect(underOrganic(kc, Math.min(kc, kcb), cover)).toBeLessThanOrEqual(kc);
        expect(underPlastic(kc, cut)).toBeLessThanOrEqual(kc);
      }),
    );
    expect(() => underPlastic(1, 0.9)).toThrow(/reductionShare/);
    expect(() => underOrganic(1, 0.9, 2)).toThrow(/coverShare/);
    expect(bareReductionOf('none')).toBe(0);
    expect(bareReductionOf('plastic')).toBeGreaterThan(bareReductionOf('organic'));
  });
  test('shade cloth takes off less than its share, since the wind’s part stays', () => {
    expect(underShade_mm_per_day(6, 0.4)).toBeGreaterThan(6 * 0.6);
    expect(underShade_mm_per_day(6, 0)).toBe(6);
  });
  test('crops in one bed: the mix lies between the least and the greatest', () => {
    const crops = [
      { share: 0.3, height_m: 2, kc: 1.2 },
      { share: 0.7, height_m: 0.4, kc: 0.8 },
    ];
    expect(mixedKc(crops)).toBeGreaterThan(0.8);
    expect(mixedKc(crops)).toBeLessThan(1.2);
    expect(() => mixedKc([])).toThrow(/At least one crop/);
  });
  test('a light and a heavy wetting bound what lies between; drip wets a part', () => {
    const kc = (wetting_mm: number, wettedShare = 1) => initialKc({ wetting_mm, wettedShare, kcLight: 0.5, kcHeavy: 0.7 });
    expect(kc(4).kcBed).toBe(0.5);
    expect(kc(60).kcBed).toBe(0.7);
    expect(kc(12, 0.4)).toMatchObject({ wettedPart_mm: 30 });
    expect(() => kc(10, 0)).toThrow(/wettedShare/);
  });
  test('the fuller the ground is covered, the more a crop uses, up to its full coefficient', () => {
    const full = fullBasalKc(null, { ...air, height_m: 1 });
    const at = (coverShare: number) =>
      sparseKc({
        kcMin: 0.15,
        kcFull: full,
        coverShare,
        effectiveCoverShare: effectiveCover({ coverShare, noonHeightSine: 0.9, heightToWidth: null }),
        height_m: 1,
      });
    expect(at(0)).toBeCloseTo(0.15, 9);
    expect(at(0.3)).toBeLessThan(at(0.6));
    expect(at(1)).toBeCloseTo(full, 9);
    expect(() => effectiveCover({ coverShare: 2, noonHeightSine: 1, heightToWidth: 1 })).toThrow(/coverShare/);
  });
  test('a drying surface never gives more than it holds, and ever less', () => {
    const days = dryingDays({
      eto_mm_per_day: Array.from({ length: 40 }, () => 5),
      kcb: 0.15,
      kcMax: 1.2,
      rew_mm: 8,
      tew_mm: 18,
    });
    expect(days.at(-1)?.evaporated_mm).toBeLessThanOrEqual(18);
    const kr = days.map((day) => day.kr);
    expect(kr).toEqual(kr.toSorted((a, b) => b - a));
    expect(dryingShare(30, 8, 18)).toBe(0);
    expect(exposedWetShare(0.995, 1)).toBe(0.01);
    expect(() => dryingDays({ eto_mm_per_day: [5], kcb: 0.15, kcMax: 1.2, rew_mm: 20, tew_mm: 18 })).toThrow(/rew_mm/);
  });
});

describe('the printed tables', () => {
  test('each crop’s figures are in the range that a crop can have', () => {
    expect(cropRows).toHaveLength(41);
    for (const row of cropRows) {
      expect(row.roots_m[0]).toBeLessThanOrEqual(row.roots_m[1]);
      expect(row.p).toBeGreaterThanOrEqual(0.2);
      expect(row.p).toBeLessThanOrEqual(0.65);
    }
    expect(cropRow('LETTUCE')?.kcMid).toBe(1);
    expect(cropRow('moon fern')).toBeUndefined();
  });
  test('stages add up to the printed total, but for the two rows that are printed otherwise', () => {
    const off = stageRows
      .filter((row) => seasonDays(row.stages_days) !== row.total_days)
      .map((row) => `${row.crop} ${row.region}`);
    expect(off).toEqual(['cowpea Mediterranean', 'sweet corn Idaho']);
  });
  test('a set is found whatever the order of its words', () => {
    expect(stageRow('squash, zucchini', 'May/June, Europe and Mediterranean')?.total_days).toBe(90);
    expect(stageRowsOf('pea, fresh').length).toBe(3);
    expect(stageRow('lettuce', 'April, Moon')).toBeUndefined();
  });
  test('a crop without figures stands on a printed row, which is named; the grower’s own go before it', () => {
    const nothing = {
      cropId: 'kale',
      group: 'brassica',
      kcIni: null,
      kcMid: null,
      kcEnd: null,
      stages_days: null,
      rootDepth_m: null,
      height_m: null,
      p: null,
      saltThreshold_dS_per_m: null,
      saltSlope_share_per_dS_per_m: null,
    };
    expect(cropWater(nothing)).toMatchObject({ like: 'cabbage', kcMid: 1.05, rootDepth_m: 0.5 });
    expect(cropWater({ ...nothing, kcMid: 0.8 })).toMatchObject({ kcMid: 0.8 });
    expect(cropWater({ ...nothing, cropId: 'x', group: 'unheard-of' }).like).toBe('lettuce');
  });
});

describe('a planting on a bed', () => {
  const water = cropWater({
    cropId: 'tomato',
    group: 'nightshade',
    kcIni: 0.6,
    kcMid: 1.15,
    kcEnd: 0.8,
    stages_days: [30, 40, 45, 30],
    rootDepth_m: 0.7,
    height_m: 0.6,
    p: 0.4,
    saltThreshold_dS_per_m: null,
    saltSlope_share_per_dS_per_m: null,
  });
  const span = {
    inBedDate: '2027-05-20' as IsoDate,
    clearDate: '2027-09-30' as IsoDate,
    share: 1,
    canopy_m2: 1.5,
    crop: water,
  };
  test('has its stages on its own dates', () => {
    const placed = cropOnBed(span, { area_m2: 0.5, mulch: 'none', air: null });
    expect(placed.from).toBe(140);
    expect(seasonDays(placed.curve.stages_days)).toBeCloseTo(placed.to - placed.from + 1, 9);
    expect(placed.canopyFactor).toBe(2);
  });
  test('a bed never uses more than two and a half times the reference on its surface', () => {
    const placed = cropOnBed({ ...span, canopy_m2: 50 }, { area_m2: 0.5, mulch: 'none', air: null });
    const year = bedYear({ area_m2: 0.5, depth_m: 0.3, crops: [placed, placed], cover: { bareReduction: 0, exposure: 1.5 } });
    expect(Math.max(...year.use_m2)).toBeLessThanOrEqual(2.5 * 0.5 + 1e-9);
    expect(Math.max(...year.roots_m)).toBeLessThanOrEqual(0.3 + 1e-9);
  });
  test('two halves of a bed use what the whole uses', () => {
    const around = { area_m2: 4, mulch: 'organic' as const, air: null };
    const cover = { bareReduction: 0.5, exposure: 1 };
    const half = cropOnBed({ ...span, share: 0.5, canopy_m2: null }, around);
    const whole = cropOnBed({ ...span, canopy_m2: null }, around);
    const two = bedYear({ area_m2: 4, depth_m: 0.3, crops: [half, half], cover });
    const one = bedYear({ area_m2: 4, depth_m: 0.3, crops: [whole], cover });
    two.use_m2.forEach((use, day) => {
      expect(use).toBeCloseTo(one.use_m2[day] ?? 0, 9);
    });
  });
  test('a planting over New Year stands at both ends of the year', () => {
    const winter = cropOnBed(
      { ...span, inBedDate: '2027-10-20' as IsoDate, clearDate: '2028-03-10' as IsoDate },
      { area_m2: 1, mulch: 'none', air: null },
    );
    const { cropped } = bedYear({ area_m2: 1, depth_m: 0.3, crops: [winter], cover: { bareReduction: 0, exposure: 1 } });
    expect(cropped[10]).toBe(1);
    expect(cropped[360]).toBe(1);
    expect(cropped[200]).toBe(0);
  });
});
