import { describe, expect, test } from 'vitest';
import { loadLpSolver } from '../../../../../api/jobs/milp/open-lp.ts';
import { InputError } from '../../../../../planner/errors.ts';
import { evaluatePlan } from '../../../../../planner/season/optimise/evaluate.ts';
import { withGoal } from '../../../../../planner/season/optimise/goals.ts';
import type { SeasonInstance } from '../../../../../planner/season/optimise/instance.ts';
import { optimiseSeason } from '../../../../../planner/season/optimise/optimise.ts';
import { shadowValues } from '../../../../../planner/season/optimise/shadow-values.ts';
import { remedies, unmetOrders } from '../../../../../planner/season/optimise/unmet.ts';
import { whatIf } from '../../../../../planner/season/optimise/what-if.ts';
import { tinySeason } from '../../../../builders/tiny-season.ts';

const solver = await loadLpSolver(() => false);
const solve = (instance: SeasonInstance) =>
  optimiseSeason(instance, { seed: 1, moves: 300, gapGoal: 0, solver, shouldStop: () => false });
const farm = tinySeason(3, { units: 8, crops: 5, starts: 5 });

describe('goals', () => {
  test('a plan made for any goal keeps the limits of the season itself, and none earns more than the plan for margin', () => {
    const most = solve(farm);
    for (const aim of ['fewest-beds', 'fewest-hours', 'steady'] as const)
      for (const weight of ['a-little', 'clearly', 'above-all'] as const) {
        const outcome = evaluatePlan(farm, solve(withGoal(farm, { aim, weight })).plan);
        expect(outcome.faults).toEqual([]);
        expect(outcome.margin_minor).toBeLessThanOrEqual((most.bound_minor ?? 0) + 1e-6);
      }
  });

  test('each goal judges its own plan at least as good as the plan for margin, and orders come first where beds are spared', () => {
    const margin = solve(farm).plan;
    for (const aim of ['fewest-beds', 'fewest-hours', 'steady'] as const) {
      const season = withGoal(farm, { aim, weight: 'above-all' });
      const own = solve(season).plan;
      expect(evaluatePlan(season, own).margin_minor).toBeGreaterThanOrEqual(evaluatePlan(season, margin).margin_minor - 1e-6);
      if (aim === 'steady') continue;
      const short = (plan: typeof margin) =>
        evaluatePlan(farm, plan).crops.reduce((sum, crop) => sum + crop.contract - crop.contractSold, 0);
      expect(short(own)).toBeLessThanOrEqual(short(margin) + 1e-6);
    }
  });
});

describe('what if', () => {
  const base = solve(farm).margin_minor;
  test('more water, hours or beds never prove worse; a dearer hour never better', () => {
    const bound = (change: Parameters<typeof whatIf>[1]) => solve(whatIf(farm, change)).bound_minor ?? 0;
    expect(bound({ kind: 'water', zone: null, factor: 2 })).toBeGreaterThanOrEqual(base - 1e-6);
    expect(bound({ kind: 'labour', factor: 1.5 })).toBeGreaterThanOrEqual(base - 1e-6);
    expect(bound({ kind: 'beds', unit: 0, count: 3 })).toBeGreaterThanOrEqual(base - 1e-6);
    expect(solve(whatIf(farm, { kind: 'wage', wage_minor_per_h: 2000 })).margin_minor).toBeLessThanOrEqual(
      (solve(farm).bound_minor ?? 0) + 1e-6,
    );
  });
  test('a crop left out is not planted', () => {
    const found = solve(whatIf(farm, { kind: 'without', crop: 1 }));
    expect(found.plan.flat().some(({ crop }) => crop === 1)).toBe(false);
  });
  test('what is not there is refused with its field', () => {
    expect(() => whatIf(farm, { kind: 'without', crop: 99 })).toThrow(InputError);
    expect(() => whatIf(farm, { kind: 'beds', unit: 99, count: 2 })).toThrow(/no such bed/);
    expect(() => whatIf(farm, { kind: 'beds', unit: 0, count: 0 })).toThrow(/count/);
    expect(() => whatIf(farm, { kind: 'water', zone: null, factor: -1 })).toThrow(/factor/);
  });
});

describe('orders that fall short', () => {
  /** Every order is for a hundred times what the beds can give. */
  const wanting: SeasonInstance = {
    ...farm,
    crops: farm.crops.map((crop) => ({
      ...crop,
      demand: crop.demand.map((week) => ({ ...week, contract: week.contract * 100 })),
    })),
  };
  test('each is listed with its weeks, amount and penalty, which add up to the plan', () => {
    const outcome = evaluatePlan(wanting, solve(wanting).plan);
    const unmet = unmetOrders(wanting, outcome);
    expect(unmet.length).toBeGreaterThan(0);
    expect(unmet.reduce((sum, { penalty_minor }) => sum + penalty_minor, 0)).toBeCloseTo(outcome.penalty_minor, 4);
    for (const order of unmet) {
      expect(order.amount).toBeLessThanOrEqual(order.wanted + 1e-9);
      expect(order.tooEarly).toBeLessThanOrEqual(order.amount + 1e-9);
    }
  });
  test('ten more beds help where beds are what is wanting, and no remedy makes it worse', () => {
    const plenty = {
      ...wanting,
      labourCap_h: wanting.labourCap_h.map(() => Infinity),
      waterCap_L: wanting.waterCap_L.map((cap) => cap.map(() => Infinity)),
      benchCap_m2: wanting.benchCap_m2.map(() => Infinity),
    };
    const found = remedies(plenty, solver, () => false);
    if (found === null) throw new Error('not solved');
    expect(found.leastShort).toBeGreaterThan(0);
    const by = Object.fromEntries(found.remedies.map(({ change, fallsBy }) => [change.kind, fallsBy]));
    expect(by['beds']).toBeGreaterThan(0.01);
    expect(by['labour']).toBeCloseTo(0, 6);
    expect(by['water']).toBeCloseTo(0, 6);
  });
});

test('shadow values are never negative, and an hour that is never short is worth nothing', () => {
  const free = { ...farm, labourCap_h: farm.labourCap_h.map(() => 1e6) };
  const { duals } = solve(free);
  if (duals === null) throw new Error('no prices');
  const values = shadowValues(free, duals);
  expect(values.labour_minor_per_h.every((value) => value === 0)).toBe(true);
  expect(Math.min(...values.bed_minor_per_m2)).toBeGreaterThanOrEqual(-1e-6);
  expect(Math.max(...values.bed_minor_per_m2)).toBeGreaterThan(0);
});
