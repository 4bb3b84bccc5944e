import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { compostMix } from '../../../../planner/fertility/compost-mix.ts';
import { secondForMoisture_kg, twoCompostGoals } from '../../../../planner/fertility/compost-second-part.ts';
import { HEAT_BAND_C, heatRule } from '../../../../planner/fertility/heat-rule.ts';
import { manureConflict, manureInterval } from '../../../../planner/fertility/manure-interval.ts';
import { explainTeaBatch, tankFillings, teaBatch } from '../../../../planner/fertility/tea-batch.ts';
import { faultPaths } from '../../../builders/faults-of.ts';

const part = fc.record({
  part_kg: fc.double({ min: 0.1, max: 500, noNaN: true }),
  moistureShare: fc.double({ min: 0.05, max: 0.9, noNaN: true }),
  nShareOfDry: fc.double({ min: 0.002, max: 0.08, noNaN: true }),
  carbonToNitrogen: fc.double({ min: 5, max: 500, noNaN: true }),
});

describe('a mix', () => {
  test('lies between its parts, in moisture and in C:N', () => {
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 5 }), (parts) => {
        const mix = compostMix(parts);
        const within = (value: number, of: readonly number[]) => {
          expect(value).toBeGreaterThanOrEqual(Math.min(...of) - 1e-9);
          expect(value).toBeLessThanOrEqual(Math.max(...of) + 1e-6);
        };
        within(
          mix.moistureShare,
          parts.map((p) => p.moistureShare),
        );
        within(
          mix.carbonToNitrogen,
          parts.map((p) => p.carbonToNitrogen),
        );
      }),
    );
  });
  test('the third-material solution meets both goals when mixed', () => {
    const goals = [
      { moistureShare: 0.82, nShareOfDry: 0.04, carbonToNitrogen: 17 },
      { moistureShare: 0.38, nShareOfDry: 0.009, carbonToNitrogen: 54 },
      { moistureShare: 0.37, nShareOfDry: 0.027, carbonToNitrogen: 14 },
    ] as const;
    const found = twoCompostGoals(100, goals, 0.6, 30);
    if (!found.feasible) throw new Error('should be feasible');
    const mix = compostMix([
      { ...goals[0], part_kg: 100 },
      { ...goals[1], part_kg: found.second_kg },
      { ...goals[2], part_kg: found.third_kg },
    ]);
    expect(mix.moistureShare).toBeCloseTo(0.6, 9);
    expect(mix.carbonToNitrogen).toBeCloseTo(30, 6);
  });
  test('two materials of one moisture have no single answer', () => {
    const same = { moistureShare: 0.6, nShareOfDry: 0.02, carbonToNitrogen: 30 };
    expect(twoCompostGoals(10, [same, same, same], 0.6, 30).feasible).toBe(false);
  });
  test('a goal outside the two materials is refused', () => {
    expect(
      faultPaths(() => secondForMoisture_kg({ first_kg: 1, firstMoistureShare: 0.5, secondMoistureShare: 0.4, goalShare: 0.6 })),
    ).toEqual(['goalShare']);
  });
});

describe('the heat rule', () => {
  const days = (count: number, temperature_C: number) => Array.from({ length: count }, (_, day) => ({ day, temperature_C }));
  test('fourteen days, or four turnings, do not meet it; a day without a reading does not count', () => {
    const windrow = { method: 'turned-windrow', band: HEAT_BAND_C } as const;
    expect(heatRule({ ...windrow, log: days(15, 60), turnings: 5 }).met).toBe(true);
    expect(heatRule({ ...windrow, log: days(14, 60), turnings: 5 }).met).toBe(false);
    expect(heatRule({ ...windrow, log: days(15, 60), turnings: 4 }).met).toBe(false);
    expect(heatRule({ ...windrow, log: [...days(14, 60), { day: 14, temperature_C: null }], turnings: 5 }).met).toBe(false);
    expect(heatRule({ ...windrow, log: days(20, 80), turnings: 9 }).daysInBand).toBe(0);
  });
  test('a vessel wants three days in a row', () => {
    const log = [0, 1, 3, 5].map((day) => ({ day, temperature_C: 60 }));
    const rule = heatRule({ method: 'in-vessel', log, turnings: 0, band: HEAT_BAND_C });
    expect([rule.daysInBand, rule.longestRun_days, rule.met]).toEqual([4, 2, false]);
  });
  test('a reading no heap can have is refused at its line', () => {
    const log = [{ day: 0, temperature_C: 140 }];
    expect(faultPaths(() => heatRule({ method: 'in-vessel', log, turnings: 0, band: HEAT_BAND_C }))).toEqual([
      'log.0.temperature_C',
    ]);
  });
});

describe('raw manure', () => {
  test('a harvest on the last day of the interval clashes, on the day after it does not', () => {
    const { firstHarvest } = manureInterval('2026-03-01', true);
    expect(manureConflict('2026-03-01', true, firstHarvest)).toBeNull();
    expect(manureConflict('2026-03-01', true, '2026-06-28' as IsoDate)?.daysShort).toBe(1);
  });
  test('a date that is none is refused', () => {
    expect(faultPaths(() => manureInterval('2026-02-30', true))).toEqual(['incorporatedDate']);
  });
});

describe('a tea batch', () => {
  const input = { area_m2: 60, drench_L_per_m2: 1, teaParts: 1, waterParts: 4, compost_kg_per_L: 0.06 };
  test('tea and water are the drench', () => {
    const batch = teaBatch(input);
    expect(batch.tea_L + batch.water_L).toBeCloseTo(batch.drench_L, 12);
  });
  test('its working ends in the same number', () => {
    expect(explainTeaBatch(input).result.value).toBe(teaBatch(input).tea_L);
  });
  test('a full tank is one filling', () => {
    expect([tankFillings(20, 20), tankFillings(20.1, 20), tankFillings(0, 20)]).toEqual([1, 2, 0]);
  });
  test('no beds, no batch: refused at the field', () => {
    expect(faultPaths(() => teaBatch({ ...input, area_m2: 0 }))).toEqual(['area_m2']);
  });
});
