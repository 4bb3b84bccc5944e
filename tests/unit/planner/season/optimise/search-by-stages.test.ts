import { describe, expect, test } from 'vitest';
import { loadLpSolver } from '../../../../../api/jobs/milp/open-lp.ts';
import { evaluatePlan } from '../../../../../planner/season/optimise/evaluate.ts';
import { nameUnits } from '../../../../../planner/season/optimise/name-units.ts';
import { optimiseSeason, type SeasonProgress } from '../../../../../planner/season/optimise/optimise.ts';
import { compileSeason } from '../../../../../planner/season/optimise/problem.ts';
import { tinySeason } from '../../../../builders/tiny-season.ts';

const solver = await loadLpSolver(() => false);
const wishes = { seed: 1, moves: 60, gapGoal: 0, solver, shouldStop: () => false };
const seeds = Array.from({ length: 12 }, (_, at) => at + 1);
/** Twelve pieces of bed, six crops, five weeks to begin in: too many plans to look at, and quick to search. */
const midSeason = (seed: number) => tinySeason(seed, { units: 12, crops: 6, starts: 5 });

describe('the search over twelve seasons of twelve beds', () => {
  // the sums as they were when this was written, 117,566 after rounding and 126,154 after sixty moves; 3 % of room for another solver
  test.each([
    [0, 114_000],
    [60, 122_400],
  ])('after %i moves the plans come to %i at least, each sound and below its bound', (moves, least) => {
    let sum = 0;
    for (const seed of seeds) {
      const instance = midSeason(seed);
      const found = optimiseSeason(instance, { ...wishes, moves });
      const outcome = evaluatePlan(instance, found.plan);
      expect(outcome.faults).toEqual([]);
      expect(outcome.margin_minor).toBeCloseTo(found.margin_minor, 4);
      expect(found.margin_minor).toBeLessThanOrEqual((found.bound_minor ?? Number.NaN) + 1e-6);
      expect(found.gap).toBeCloseTo(((found.bound_minor ?? 0) - found.margin_minor) / Math.abs(found.bound_minor ?? 1), 9);
      sum += found.margin_minor;
    }
    expect(sum).toBeGreaterThanOrEqual(least);
  });

  test('tells its stages in order, the margin never falling; a plan is handed out only where it is better', () => {
    const told: SeasonProgress[] = [];
    const better: number[] = [];
    const instance = midSeason(8);
    const found = optimiseSeason(instance, {
      ...wishes,
      onProgress: (progress) => told.push(progress),
      onBetter: (plan, progress) => {
        better.push(progress.margin_minor);
        expect(evaluatePlan(instance, plan()).margin_minor).toBeCloseTo(progress.margin_minor, 4);
      },
    });
    expect([...new Set(told.map(({ stage }) => stage))]).toEqual(['greedy', 'local', 'bound', 'floor', 'dive', 'improve']);
    const margins = told.map(({ margin_minor }) => margin_minor);
    expect(margins).toEqual(margins.toSorted((a, b) => a - b));
    expect(better).toEqual(better.toSorted((a, b) => a - b));
    // the first two stages always hand out; of the later ones each margin once
    expect(new Set(better.slice(1)).size).toBe(better.length - 1);
    expect(told.filter(({ stage }) => stage === 'greedy' || stage === 'local').every(({ gap }) => gap === null)).toBe(true);
    expect(told.at(-1)?.margin_minor).toBeCloseTo(found.margin_minor, 6);
    expect([found.state, found.boundMissing]).toEqual(['effort-spent', '']);
  });

  test('a goal that the first plan meets ends the search; without a solver none can be met', () => {
    const instance = midSeason(1);
    const met = optimiseSeason(instance, { ...wishes, gapGoal: 10 });
    expect(met.state).toBe('within-goal');
    expect(met.margin_minor).toBeLessThan(optimiseSeason(instance, wishes).margin_minor);
    const alone = optimiseSeason(instance, { ...wishes, solver: null, gapGoal: 10 });
    expect([alone.state, alone.bound_minor, alone.gap, alone.duals]).toEqual(['effort-spent', null, null, null]);
    expect(alone.boundMissing).not.toBe('');
    expect(alone.margin_minor).toBeGreaterThan(alone.greedyMargin_minor);
  });

  test('stopped wherever it looks, it gives a sound plan and says so', () => {
    const instance = midSeason(5);
    const whole = optimiseSeason(instance, wishes).margin_minor;
    let last = Number.NEGATIVE_INFINITY;
    for (const after of [0, 1, 2, 5, 14, 20, 40]) {
      let asked = 0;
      const found = optimiseSeason(instance, {
        ...wishes,
        shouldStop: () => {
          asked += 1;
          return asked > after;
        },
      });
      expect(found.state).toBe('stopped');
      expect(asked).toBeGreaterThan(after);
      expect(evaluatePlan(instance, found.plan).faults).toEqual([]);
      expect(found.margin_minor).toBeGreaterThanOrEqual(Math.max(last, found.greedyMargin_minor) - 1e-6);
      expect(found.margin_minor).toBeLessThanOrEqual(whole + 1e-6);
      last = found.margin_minor;
      if (after === 0) expect(found.margin_minor).toBe(found.greedyMargin_minor);
    }
  });

  test('the same seed gives the same plan', () => {
    expect(optimiseSeason(midSeason(6), wishes)).toEqual(optimiseSeason(midSeason(6), wishes));
  });
});

describe('rows given to beds by name', () => {
  const season = tinySeason(1);
  /** Beds side by side, or as told; the crop of each. */
  const named = (
    rows: readonly (readonly number[])[],
    beds: readonly { area_m2?: number; block?: number; position?: number; bedId?: string }[],
  ) => {
    const units = beds.map((bed, at) => ({
      ...season.units[0],
      id: `${at}`,
      bedId: `${at}`,
      block: 0,
      position: at,
      part: 0,
      area_m2: 2,
      zone: 0,
      cropsFit: [0, 1],
      barredFamilies: [],
      fixed: [],
      seasonsSince: {},
      ...bed,
    }));
    const [one, two] = season.crops;
    if (one === undefined || two === undefined) throw new Error('no crops');
    const option = { ...one.options[0], startWeek: 0 } as (typeof one.options)[number];
    const crops = [one, two].map((crop, family) => ({ ...crop, family, options: [option] }));
    const problem = compileSeason({ ...season, units, crops });
    return nameUnits(problem, rows).map((row) => row.map((j) => problem.optionCrop[j]));
  };
  // the first two beds are alike, the third is smaller and has crop 0: of the first two the nearer takes crop 0 too
  test('a crop goes beside its like in the next bed', () => {
    expect(named([[0], [1], [0]], [{}, {}, { area_m2: 1 }])).toEqual([[1], [0], [0]]);
  });
  test('but not across a block, nor over a gap', () => {
    expect(named([[0], [1], [0]], [{}, {}, { area_m2: 1, block: 1 }])).toEqual([[0], [1], [0]]);
    expect(named([[0], [1], [0]], [{}, {}, { area_m2: 1, position: 5 }])).toEqual([[0], [1], [0]]);
  });
  test('parts of one bed count before neighbours', () => {
    // both neighbours of the pair have crop 0, the far one in the same bed
    const beds = [{ area_m2: 1 }, {}, {}, { area_m2: 1, bedId: '2' }];
    expect(named([[0], [0], [1], [0]], beds)).toEqual([[0], [1], [0], [0]]);
  });
});
