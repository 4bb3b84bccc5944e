import { describe, expect, test, vi } from 'vitest';
import { loadLpSolver } from '../../../../../api/jobs/milp/open-lp.ts';
import { evaluatePlan } from '../../../../../planner/season/optimise/evaluate.ts';
import { gapOf, optimiseSeason } from '../../../../../planner/season/optimise/optimise.ts';
import { compileSeason, sequencesOf } from '../../../../../planner/season/optimise/problem.ts';
import { createSearchState } from '../../../../../planner/season/optimise/search-state.ts';
import { knownPlan, publishedSeasons, seasonOf } from '../../../../builders/published-season.ts';

// A search limited by moves takes as long as the machine needs.
vi.setConfig({ testTimeout: 300_000 });
const solver = await loadLpSolver(() => false);
const [small, medium, large] = publishedSeasons();

describe('the season instances that come with their best known plan and proven bound', () => {
  test('the known plan of 60 beds earns what its file says, by the search and by the evaluator', () => {
    if (small === undefined) throw new Error('no instance');
    const instance = seasonOf(small);
    const outcome = evaluatePlan(instance, knownPlan(small));
    // The file prints hundredths of its money unit; here money is in hundredths.
    expect(Math.abs(outcome.margin_minor - small.bestKnown * 100)).toBeLessThan(1);
    expect(outcome.faults).toEqual([]);
    const problem = compileSeason(instance);
    const state = createSearchState(problem);
    sequencesOf(problem, knownPlan(small)).forEach((sequence, unit) => {
      state.put(unit, sequence);
    });
    expect(state.margin_minor()).toBeCloseTo(outcome.margin_minor, 3);
  });

  const sizes = [
    { season: small, moves: 600, gap: 0.025 },
    { season: medium, moves: 300, gap: 0.01 },
    { season: large, moves: 60, gap: 0.01 },
  ];
  test.each(sizes)('a plan within $gap of the proven bound, limited by moves and not by the clock', ({ season, moves, gap }) => {
    if (season === undefined) throw new Error('no instance');
    const instance = seasonOf(season);
    const told: number[] = [];
    const found = optimiseSeason(instance, {
      seed: 1,
      moves,
      gapGoal: 0.001,
      solver,
      shouldStop: () => false,
      onBetter: (_, progress) => told.push(progress.margin_minor),
    });
    const outcome = evaluatePlan(instance, found.plan);
    expect(outcome.faults).toEqual([]);
    expect(Math.abs(outcome.margin_minor - found.margin_minor)).toBeLessThan(1);
    expect(found.gap ?? 1).toBeLessThan(gap);
    expect(gapOf(season.provenUpperBound * 100, found.margin_minor)).toBeLessThan(gap);
    // Our bound is proven apart from the file's: neither may lie below a plan the other knows of.
    expect(found.bound_minor ?? 0).toBeGreaterThanOrEqual(season.bestKnown * 100 - 1);
    expect(found.margin_minor).toBeLessThanOrEqual(season.provenUpperBound * 100 + 1);
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(found.margin_minor).toBeGreaterThanOrEqual(found.greedyMargin_minor);
  });

  test('the same seed gives the same plan, and a stop before the first move still gives one', () => {
    if (small === undefined) throw new Error('no instance');
    const instance = seasonOf(small);
    const wishes = { seed: 7, moves: 40, gapGoal: 0, solver: null, shouldStop: () => false };
    expect(optimiseSeason(instance, wishes).plan).toEqual(optimiseSeason(instance, wishes).plan);
    const stopped = optimiseSeason(instance, { ...wishes, solver, shouldStop: () => true });
    expect(stopped.state).toBe('stopped');
    expect(stopped.margin_minor).toBe(stopped.greedyMargin_minor);
    expect(evaluatePlan(instance, stopped.plan).faults).toEqual([]);
  });
});
