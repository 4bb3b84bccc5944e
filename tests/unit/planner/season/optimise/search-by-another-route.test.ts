import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestPath, brokenRule } from '../../../../../planner/season/optimise/best-path.ts';
import { bestResponse } from '../../../../../planner/season/optimise/best-response.ts';
import { greedyPlan, improveUnit, largestFirst, localPlan } from '../../../../../planner/season/optimise/construct.ts';
import { enumerateSeason } from '../../../../../planner/season/optimise/enumerate.ts';
import { evaluatePlan, type PlanOutcome, unitFaults } from '../../../../../planner/season/optimise/evaluate.ts';
import { createGenerator } from '../../../../../planner/season/optimise/generator.ts';
import type { SeasonInstance } from '../../../../../planner/season/optimise/instance.ts';
import { compileSeason, planOf, type SeasonProblem } from '../../../../../planner/season/optimise/problem.ts';
import { createSearchState, type SearchState } from '../../../../../planner/season/optimise/search-state.ts';
import { tinySeason } from '../../../../builders/tiny-season.ts';

/** Rows of one unit's options in the order they begin, none overlapping, up to three of them; the empty row first. */
function rowsOf(problem: SeasonProblem, unit: number): readonly (readonly number[])[] {
  const { instance, optionStart, optionEnd, optionCrop, optionAt } = problem;
  const asPlan = (row: readonly number[]) => row.map((j) => ({ crop: optionCrop[j] ?? -1, option: optionAt[j] ?? -1 }));
  const options = Array.from(optionStart.keys()).sort((a, b) => (optionStart[a] ?? 0) - (optionStart[b] ?? 0) || a - b);
  const apart = (row: readonly number[], j: number) => row.every((i) => (optionEnd[i] ?? 0) <= (optionStart[j] ?? 0));
  const grow = (rows: readonly (readonly number[])[]) =>
    rows.flatMap((row) => options.filter((j) => row.at(-1) !== j && apart(row, j)).map((j) => [...row, j]));
  const ones = options.map((j) => [j]);
  const twos = grow(ones);
  const the = instance.units[unit];
  if (the === undefined) throw new Error('no such unit');
  return [[], ...ones, ...twos, ...grow(twos)].filter((row) => unitFaults(instance, the, asPlan(row)).length === 0);
}

const anySeason = fc.integer({ min: 1, max: 400 }).map((seed) => tinySeason(seed));
const share = fc.double({ min: 0, max: 0.999999, noNaN: true });
const pick = <T>(list: readonly T[], at: number): T => list[Math.floor(at * list.length)] as T;

/** What stands anyway, so that limits are met half way. */
const withStanding = (instance: SeasonInstance): SeasonInstance => ({
  ...instance,
  standing: {
    harvest: instance.crops.map((_, c) => Array.from({ length: instance.weeks }, (__, week) => (week % 5 === c ? 1 : 0))),
    labour_h: Array.from({ length: instance.weeks }, (_, week) => (week === 4 ? 9 : 0.1)),
    water_L: instance.waterCap_L.map(() => Array.from({ length: instance.weeks }, (_, week) => (week % 2) * 5)),
    bench_m2: Array.from({ length: instance.weeks }, () => 0.05),
    cropsGrown: [0],
    cost_minor: 123,
  },
});

const limits = new Set(['hours', 'water', 'bench', 'crops']);
const breaks = (outcome: PlanOutcome) => outcome.faults.some(({ code }) => limits.has(code));

/** A season with rows put into its units, and what the plan comes to by the evaluation that shares nothing with the search. */
const planted = fc.tuple(anySeason, fc.boolean(), fc.tuple(share, share, share)).map(([season, stands, shares]) => {
  const instance = stands ? withStanding(season) : season;
  const problem = compileSeason(instance);
  return { instance, problem, rows: shares.map((at, unit) => pick(rowsOf(problem, unit), at)) };
});
const stateOf = (problem: SeasonProblem, rows: readonly (readonly number[])[]): SearchState => {
  const state = createSearchState(problem);
  rows.forEach((row, unit) => {
    state.put(unit, row);
  });
  return state;
};

describe('the search’s own book-keeping', () => {
  test('earns what the plan earns, or nothing where a limit is broken; emptied it is as at first', () => {
    let sound = 0;
    fc.assert(
      fc.property(planted, ({ instance, problem, rows }) => {
        const state = stateOf(problem, rows);
        const outcome = evaluatePlan(instance, planOf(problem, rows));
        const grown = new Set([...rows.flat().map((j) => problem.optionCrop[j]), ...(instance.standing?.cropsGrown ?? [])]);
        expect(state.cropsGrown()).toBe(grown.size);
        if (breaks(outcome)) expect(state.margin_minor()).toBe(Number.NEGATIVE_INFINITY);
        else {
          sound += 1;
          expect(state.margin_minor()).toBeCloseTo(outcome.margin_minor, 6);
        }
        expect(rows.map((_, unit) => state.take(unit))).toEqual(rows);
        expect(state.sequences.every((row) => row.length === 0)).toBe(true);
        expect(state.margin_minor()).toBeCloseTo(createSearchState(problem).margin_minor(), 6);
      }),
      { numRuns: 60 },
    );
    expect(sound).toBeGreaterThan(5);
  });
  test('one planting more adds the income and the overtime that the plans differ by, and is endless where a limit would break', () => {
    let [added, broken] = [0, 0];
    fc.assert(
      fc.property(planted, share, ({ instance, problem, rows }, at) => {
        const kept = rows.map((row, unit) => (unit === 0 ? [] : row));
        const single = rowsOf(problem, 0).filter((row) => row.length === 1);
        const before = evaluatePlan(instance, planOf(problem, kept));
        fc.pre(single.length > 0 && !breaks(before));
        const [j = -1] = pick(single, at);
        const after = evaluatePlan(instance, planOf(problem, [[j], ...kept.slice(1)]));
        const state = stateOf(problem, kept);
        const group = problem.groups[problem.groupOfUnit[0] ?? 0];
        if (group === undefined) throw new Error('a unit without a group');
        const income = (outcome: PlanOutcome) => outcome.revenue_minor - outcome.penalty_minor - outcome.steadiness_minor;
        for (let again = 0; again < 2; again += 1)
          expect(state.addedRevenue_minor(j, group.area_m2, group.areaAt)).toBeCloseTo(income(after) - income(before), 6);
        const load = state.addedLoad_minor(j, group.area_m2, group.zone, null, 1);
        if (after.faults.some(({ code }) => code !== 'crops')) {
          broken += 1;
          expect(load).toBe(Infinity);
        } else {
          added += 1;
          expect(load).toBeCloseTo(after.overtime_minor - before.overtime_minor, 6);
        }
      }),
      { numRuns: 60 },
    );
    expect(Math.min(added, broken)).toBeGreaterThan(3);
  });
  test('at prices a planting’s load is at least what its hours, litres and bench space cost by them', () => {
    const problem = compileSeason(tinySeason(3));
    const { weeks, groups } = problem;
    const even = (value: number) => new Float64Array(weeks).fill(value);
    const state = createSearchState(problem);
    const prices = { labour: even(10), water: [even(2), even(3)], bench: even(100) };
    const [group] = groups;
    if (group === undefined) throw new Error('no units');
    const sum = (list: Iterable<number> = []) => [...list].reduce((total, each) => total + each, 0);
    for (const j of group.options) {
      const free = state.addedLoad_minor(j, group.area_m2, group.zone, null, 1);
      if (free === Infinity) continue;
      const priced =
        group.area_m2 *
        (10 * sum(problem.optionLabour_h[j]) +
          (group.zone === 0 ? 2 : 3) * sum(problem.optionWater_L[j]) +
          100 * sum(problem.optionBench_m2[j]));
      expect(state.addedLoad_minor(j, group.area_m2, group.zone, prices, 1)).toBeCloseTo(Math.max(free, priced), 6);
      expect(state.addedLoad_minor(j, group.area_m2, group.zone, prices, 0.5)).toBeCloseTo(Math.max(free, priced / 2), 6);
    }
  });
});

describe('the best row of a piece of bed', () => {
  test('at any values is the best of all rows that keep its rules', () => {
    fc.assert(
      fc.property(
        anySeason,
        fc.integer({ min: 0, max: 2 }),
        fc.array(fc.integer({ min: -30, max: 99 }), { minLength: 8, maxLength: 8 }),
        (instance, unit, worths) => {
          const problem = compileSeason(instance);
          const group = problem.groups[problem.groupOfUnit[unit] ?? 0];
          if (group === undefined) throw new Error('a unit without a group');
          const worth = (j: number) => worths[j] ?? 0;
          const found = bestPath(problem, group, Float64Array.from(group.options, worth));
          const rows = rowsOf(problem, unit);
          const worthOf = (row: readonly number[]) => row.reduce((sum, j) => sum + worth(j), 0);
          expect(found.value).toBe(Math.max(...rows.map(worthOf)));
          expect(worthOf(found.sequence)).toBe(found.value);
          expect(rows).toContainEqual([...found.sequence]);
        },
      ),
      { numRuns: 100 },
    );
  });
  test('a rule is broken where the plan’s check says so', () => {
    fc.assert(
      fc.property(anySeason, fc.integer({ min: 0, max: 2 }), share, share, (instance, unit, a, b) => {
        const problem = compileSeason(instance);
        const group = problem.groups[problem.groupOfUnit[unit] ?? 0];
        const the = instance.units[unit];
        if (group === undefined || the === undefined || group.options.length === 0) return;
        const [i, j] = [pick([...group.options], a), pick([...group.options], b)].sort(
          (x, y) => (problem.optionStart[x] ?? 0) - (problem.optionStart[y] ?? 0),
        );
        if (i === undefined || j === undefined || (problem.optionEnd[i] ?? 0) > (problem.optionStart[j] ?? 0)) return;
        const [row = []] = planOf(problem, [[i, j]]);
        expect(brokenRule(problem, group, [i, j]) !== -1).toBe(
          unitFaults(instance, the, row).some(({ code }) => code === 'family-rule'),
        );
        expect(brokenRule(problem, group, [])).toBe(-1);
      }),
      { numRuns: 100 },
    );
  });
});

describe('building a plan', () => {
  test('each step keeps every limit and never earns less: filled, improved bed by bed, swept', () => {
    for (let seed = 1; seed <= 8; seed += 1) {
      const instance = seed % 3 === 0 ? withStanding(tinySeason(seed)) : tinySeason(seed);
      const problem = compileSeason(instance);
      const state = createSearchState(problem);
      const empty = state.margin_minor();
      greedyPlan(state);
      const filled = state.margin_minor();
      expect(filled).toBeGreaterThanOrEqual(empty - 1e-6);
      for (const unit of state.sequences.keys()) {
        const before = state.margin_minor();
        const rise = improveUnit(state, unit, before);
        expect(rise).toBeGreaterThanOrEqual(0);
        expect(state.margin_minor()).toBeCloseTo(before + rise, 6);
      }
      const improved = state.margin_minor();
      localPlan(state, createGenerator(seed), { shouldStop: () => false });
      expect(state.margin_minor()).toBeGreaterThanOrEqual(improved - 1e-6);
      const outcome = evaluatePlan(instance, planOf(problem, state.sequences));
      expect(outcome.faults).toEqual([]);
      expect(outcome.margin_minor).toBeCloseTo(state.margin_minor(), 6);
      expect(outcome.margin_minor).toBeLessThanOrEqual(enumerateSeason({ ...instance }).best_minor + 1e-6);
      // swept until no bed can be improved alone
      for (const unit of state.sequences.keys()) expect(improveUnit(state, unit, state.margin_minor())).toBe(0);
    }
  });
  test('with one bed alone and one planting to it, the response is the best there is', () => {
    for (let seed = 1; seed <= 12; seed += 1) {
      const instance = tinySeason(seed, { units: 1, starts: 1, crops: 3 });
      const state = createSearchState(compileSeason(instance));
      state.put(0, bestResponse(state, 0));
      localPlan(state, createGenerator(1), { shouldStop: () => false });
      const margin = state.margin_minor();
      expect(margin).toBeGreaterThanOrEqual(0 + createSearchState(state.problem).margin_minor() - 1e-6);
      expect(margin).toBeLessThanOrEqual(enumerateSeason(instance).best_minor + 1e-6);
    }
  });
  test('a stop is heeded at the next bed; larger beds come first, then the first by number', () => {
    const state = createSearchState(compileSeason(tinySeason(5, { units: 6 })));
    let asked = 0;
    localPlan(state, createGenerator(1), {
      shouldStop: () => {
        asked += 1;
        return true;
      },
    });
    expect(asked).toBe(1);
    const area = (unit: number) => state.problem.instance.units[unit]?.area_m2 ?? 0;
    const order = largestFirst(state, [5, 4, 3, 2, 1, 0]);
    expect(order).toEqual([0, 1, 2, 3, 4, 5].sort((a, b) => area(b) - area(a) || a - b));
  });
  test('the same seed shuffles alike, every number within its bound', () => {
    const [one, two] = [createGenerator(7), createGenerator(7)];
    const list = Array.from({ length: 20 }, (_, at) => at);
    expect(one.shuffle([...list])).toEqual(two.shuffle([...list]));
    expect([...one.shuffle([...list])].sort((a, b) => a - b)).toEqual(list);
    const drawn = new Set(Array.from({ length: 200 }, () => one.below(4)));
    expect([...drawn].sort()).toEqual([0, 1, 2, 3]);
  });
});
