import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayNumber } from '../../../../../planner/calendar.ts';
import { evaluatePlan } from '../../../../../planner/season/optimise/evaluate.ts';
import { optimiseSeason } from '../../../../../planner/season/optimise/optimise.ts';
import { buildInstance } from '../../../../../planner/season/proposal/build-instance.ts';
import { plannedYield_per_m2 } from '../../../../../planner/season/proposal/crop-figures.ts';
import { explainMostBetter, explainPlanMargin, mostBetter_minor } from '../../../../../planner/season/proposal/explain-plan.ts';
import { bedWeeksOf_m2, figuresOfPlan } from '../../../../../planner/season/proposal/figures-of-plan.ts';
import { learnedHours, USUAL_HOURS } from '../../../../../planner/season/proposal/learned-hours.ts';
import { weekFrom, weekGrid, weekOfDay } from '../../../../../planner/season/proposal/week-grid.ts';
import { weekSupply_L } from '../../../../../planner/season/proposal/week-supply.ts';
import { spanUse_L_per_m2 } from '../../../../../planner/water/span-use.ts';
import { aFarmSeason } from '../../../../builders/a-farm-season.ts';
import { aPlanBed, aPlanting, aSpan, day } from '../../../../builders/a-plan.ts';

describe('a plan in figures', () => {
  test('the parts of the margin add up to it, and its working ends in it', () => {
    for (let seed = 1; seed <= 6; seed++) {
      const { instance } = buildInstance(aFarmSeason(seed));
      const { plan } = optimiseSeason(instance, { seed: 1, moves: 10, gapGoal: 0, solver: null, shouldStop: () => false });
      const outcome = evaluatePlan(instance, plan);
      const figures = figuresOfPlan(instance, outcome, outcome.bedWeeks_m2);
      const parts =
        figures.sales_minor - figures.missed_minor - figures.direct_minor - figures.wages_minor - figures.overhead_minor;
      expect(Math.abs(parts - figures.margin_minor)).toBeLessThanOrEqual(3);
      expect(explainPlanMargin(figures).result.value).toBe(figures.margin_minor);
      expect(figures.ordersMet_share).toBeGreaterThanOrEqual(0);
      expect(figures.ordersMet_share).toBeLessThanOrEqual(1);
    }
  });

  test('how much better is possible is never below nothing, and its working ends in it', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e7, max: 1e7 }), fc.integer({ min: -1e7, max: 1e7 }), (margin_minor, bound_minor) => {
        const input = { margin_minor, bound_minor };
        expect(mostBetter_minor(input)).toBe(Math.max(0, bound_minor - margin_minor));
        expect(explainMostBetter(input).result.value).toBe(mostBetter_minor(input));
      }),
    );
  });

  test('worked by hand: half of a bed of 6 m2 for 14 days is 6 m2-weeks', () => {
    const planting = aPlanting({ inBed: day('2027-05-03'), free: day('2027-05-17'), spans: [aSpan({ toShare: 0.5 })] });
    expect(bedWeeksOf_m2([planting], [aPlanBed({ area_m2: 6 })])).toBe(6);
  });
});

describe('figures that a proposal counts with', () => {
  test('caution lowers the yield by a quarter of the span for each deviation, never below nothing', () => {
    expect(plannedYield_per_m2({ low: 2, typical: 4, high: 6 }, 0)).toBe(4);
    expect(plannedYield_per_m2({ low: 2, typical: 4, high: 6 }, 1)).toBe(3);
    expect(plannedYield_per_m2({ low: 0, typical: 0.1, high: 8 }, 2)).toBe(0);
  });

  test('hours are sums of minutes over sums of area, bed-weeks and harvest; what is not on record is usual', () => {
    const hours = learnedHours([
      {
        area_m2: 2,
        weeks: 10,
        harvested: 12,
        minutes: [
          { task: 'sow', minutes: 30 },
          { task: 'weed', minutes: 60 },
        ],
      },
      {
        area_m2: 4,
        weeks: 5,
        harvested: 8,
        minutes: [
          { task: 'set out', minutes: 60 },
          { task: 'harvest', minutes: 120 },
        ],
      },
    ]);
    expect(hours).toEqual({
      plant_h_per_m2: 1.5 / 6,
      care_h_per_m2_week: 1 / 40,
      clear_h_per_m2: USUAL_HOURS.clear_h_per_m2,
      harvest_h_per_unit: 2 / 20,
    });
    expect(learnedHours([{ area_m2: 2, weeks: 10, harvested: 1, minutes: [] }])).toBeNull();
  });

  test('a line gives its larger flow over the hours it may run, or nothing is known', () => {
    expect(weekSupply_L({ tapFlow_L_per_min: null, pumpFlow_L_per_h: 500 }, 2)).toBe(7000);
    expect(weekSupply_L({ tapFlow_L_per_min: 10, pumpFlow_L_per_h: 500 }, 1)).toBe(4200);
    expect(weekSupply_L({ tapFlow_L_per_min: null, pumpFlow_L_per_h: null }, 2)).toBeNull();
  });

  test('weeks begin on Mondays: 1 January 2027 is a Friday, so the grid begins on 28 December', () => {
    const grid = weekGrid(day('2027-01-01'), day('2028-01-01'));
    expect(grid.firstMonday).toBe(dayNumber(day('2026-12-28')));
    expect(grid.weeks).toBe(53);
    expect(weekOfDay(grid, dayNumber(day('2027-01-03')))).toBe(0);
    expect(weekFrom(grid, dayNumber(day('2027-01-04')))).toBe(1);
    expect(weekFrom(grid, dayNumber(day('2027-01-05')))).toBe(2);
  });

  test('a flat coefficient of one uses what the air takes', () => {
    const curve = { stages_days: [10, 10, 10, 10], kcIni: 1, kcMid: 1, kcEnd: 1 } as const;
    expect(spanUse_L_per_m2(curve, 5, [4, 5, 6])).toBe(15);
    expect(spanUse_L_per_m2({ ...curve, kcIni: 0.5 }, 5, [4])).toBe(2);
  });
});
