import { describe, expect, test } from 'vitest';
import { loadLpSolver } from '../../../../../api/jobs/milp/open-lp.ts';
import { enumerateSeason } from '../../../../../planner/season/optimise/enumerate.ts';
import { evaluatePlan } from '../../../../../planner/season/optimise/evaluate.ts';
import { optimiseSeason } from '../../../../../planner/season/optimise/optimise.ts';
import { tinySeason } from '../../../../builders/tiny-season.ts';

const solver = await loadLpSolver(() => false);
const wishes = { seed: 1, moves: 300, gapGoal: 0, solver, shouldStop: () => false };

describe('tiny seasons against every plan looked at one by one', () => {
  test.each(Array.from({ length: 24 }, (_, at) => at + 1))(
    'season %i: the best plan is found and the bound is never below it',
    (seed) => {
      const instance = tinySeason(seed);
      const all = enumerateSeason(instance);
      const found = optimiseSeason(instance, wishes);
      const outcome = evaluatePlan(instance, found.plan);
      expect(outcome.faults).toEqual([]);
      expect(outcome.margin_minor).toBeCloseTo(found.margin_minor, 4);
      expect(found.margin_minor).toBeCloseTo(all.best_minor, 4);
      expect(found.bound_minor ?? Number.NaN).toBeGreaterThanOrEqual(all.best_minor - 1e-4);
      expect(found.margin_minor).toBeGreaterThanOrEqual(found.greedyMargin_minor - 1e-6);
    },
  );

  test('the search alone, without a linear solver, keeps every rule and shows no bound', () => {
    for (let seed = 30; seed < 40; seed++) {
      const instance = tinySeason(seed, { units: 6, crops: 6, starts: 6 });
      const found = optimiseSeason(instance, { ...wishes, solver: null });
      const outcome = evaluatePlan(instance, found.plan);
      expect(outcome.faults).toEqual([]);
      expect(outcome.margin_minor).toBeCloseTo(found.margin_minor, 4);
      expect(found.bound_minor).toBeNull();
    }
  });
});
