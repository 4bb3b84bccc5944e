import { beforeAll, describe, expect, test } from 'vitest';
import { loadMilpSolver } from '../../../../api/jobs/milp/highs.ts';
import { loadLpSolver } from '../../../../api/jobs/milp/open-lp.ts';
import { bedDoses } from '../../../../planner/fertility/bed-doses.ts';
import { type BedNeed, groupBeds } from '../../../../planner/fertility/bed-groups.ts';
import { type FarmBlendInput, type FeedMaterial, neededRange } from '../../../../planner/fertility/farm-blend.ts';
import {
  type BlendProblem,
  brokenLimits,
  leastCostBlend,
  wholeMeasureBlend,
} from '../../../../planner/fertility/least-cost-blend.ts';
import { noNutrients } from '../../../../planner/fertility/nutrients.ts';
import { solveFarmBlend } from '../../../../planner/fertility/solve-farm-blend.ts';
import type { LpSolver } from '../../../../planner/lp.ts';
import type { MilpSolver } from '../../../../planner/milp.ts';
import { refusals } from '../../../builders/faults-of.ts';

let solvers: { lp: LpSolver; milp: MilpSolver };
beforeAll(async () => {
  solvers = { lp: await loadLpSolver(() => false), milp: await loadMilpSolver() };
});

const bed = (bedId: string, area_m2: number, N: number, P2O5 = 0): BedNeed => ({
  bedId,
  area_m2,
  need: { ...noNutrients, N, P2O5 },
});
const material = (materialId: string, N: number, price_minor: number | null, more: Partial<FeedMaterial> = {}): FeedMaterial => ({
  materialId,
  name: `the ${materialId}`,
  available: { ...noNutrients, N },
  stock_kg: 0,
  offers: price_minor === null ? [] : [{ offerId: `${materialId}-bag`, package_kg: 10, price_minor }],
  maxRate_kg_per_m2: 5,
  density_kg_per_m3: null,
  ...more,
});
const oneGroup = (beds: readonly BedNeed[]): FarmBlendInput['groups'] => [
  { beds, area_m2: beds.reduce((sum, each) => sum + each.area_m2, 0), need: noNutrients },
];
const input = (beds: readonly BedNeed[], materials: readonly FeedMaterial[], toleranceShare = 0): FarmBlendInput => ({
  groups: oneGroup(beds),
  materials,
  nutrients: ['N'],
  toleranceShare,
});
/** Doses in grams, by bed and material. */
const grams = (given: FarmBlendInput, rates: readonly number[], supply: readonly number[] = [99, 99]) =>
  bedDoses(given, [rates], supply.slice(0, given.materials.length), 0.25).map((fed) =>
    Object.fromEntries(fed.doses.map((dose) => [dose.materialId, Math.round(1000 * dose.dose_kg)])),
  );
const half = material('meal', 0.5, 1000);

describe('the range of a need', () => {
  test('is the need less and more the tolerance, and a gram to the square metre; a gram needed is no need', () => {
    expect(neededRange(0.1, 10, 0.1)).toEqual({ least_kg: 0.1 * 0.9, most_kg: 0.1 * 1.1 + 0.01 });
    expect(neededRange(0.01, 10, 0.1).least_kg).toBe(0);
    expect(neededRange(0.0101, 10, 0).least_kg).toBe(0.0101);
  });
});

describe('doses in whole measures', () => {
  test('weighed to 5 g, up or down, whichever meets the need', () => {
    // 10 g of N are 20 g; a bed may have 1 g more
    expect(grams(input([bed('a', 1, 0.01)], [half]), [0.0213])).toEqual([{ meal: 20 }]);
    expect(grams(input([bed('a', 1, 0.01)], [half]), [0.0187])).toEqual([{ meal: 20 }]);
  });
  test('of two that meet it the cheaper, and of two materials the cheaper is rounded up', () => {
    expect(grams(input([bed('a', 1, 0.02)], [half], 0.5), [0.0413])).toEqual([{ meal: 40 }]);
    const dear = material('dear', 0.5, 2000);
    expect(grams(input([bed('a', 1, 0.0075)], [dear, half]), [0.009, 0.009])).toEqual([{ dear: 5, meal: 10 }]);
    expect(grams(input([bed('a', 1, 0.0075)], [half, dear]), [0.009, 0.009])).toEqual([{ dear: 5, meal: 10 }]);
    const bigBag = material('bulk', 0.5, null, { offers: [{ offerId: 'b', package_kg: 100, price_minor: 2000 }] });
    expect(grams(input([bed('a', 1, 0.0075)], [half, bigBag]), [0.009, 0.009])).toEqual([{ bulk: 10, meal: 5 }]);
  });
  test('what no one sells is spared', () => {
    const own = material('own', 0.5, null, { stock_kg: 5 });
    expect(grams(input([bed('a', 1, 0.0075)], [own, half]), [0.009, 0.009])).toEqual([{ own: 5, meal: 10 }]);
  });
  test('a bed that differs from its group goes on in single measures to its own need, up, down and to nothing', () => {
    const beds = [bed('a', 1, 0.01), bed('b', 1, 0.02), bed('c', 1, 0.005), bed('d', 1, 0)];
    expect(grams(input(beds, [half]), [0.02])).toEqual([{ meal: 20 }, { meal: 40 }, { meal: 10 }, {}]);
  });
  test('no measure goes beyond the rate of a material, neither rounded up nor to come nearer', () => {
    const held = { ...half, maxRate_kg_per_m2: 0.024 };
    expect(grams(input([bed('a', 1, 0.04)], [held]), [0.024])).toEqual([{ meal: 20 }]);
    expect(grams(input([bed('a', 2, 0.04)], [held]), [0.024])).toEqual([{ meal: 45 }]);
    expect(grams(input([bed('a', 1, 0.04)], [{ ...half, maxRate_kg_per_m2: 0.025 }]), [0.024])).toEqual([{ meal: 25 }]);
  });
  test('only what the group is given is changed', () => {
    expect(grams(input([bed('a', 1, 0.02)], [half, material('other', 0.5, 10)]), [0.02, 0])).toEqual([{ meal: 40 }]);
  });
  test('with a density in scoops: 0.6 kg of 600 kg/m3 is a litre, four scoops of 150 g', () => {
    const loose = material('meal', 0.5, 1000, { density_kg_per_m3: 600 });
    expect(grams(input([bed('a', 1, 0.28)], [loose], 0.1), [0.6])).toEqual([{ meal: 600 }]);
    // a third of a litre in quarter scoops of 37.5 g: five bring 94 g of 100, six 112; a fifth in spoons of 9 g
    expect(grams(input([bed('a', 1, 0.1)], [loose]), [0.2])).toEqual([{ meal: 188 }]);
    expect(grams(input([bed('a', 1, 0.06)], [loose]), [0.12])).toEqual([{ meal: 117 }]);
  });
  test('no more than there is: the bed that has most by area steps down first, of equals the first by name', () => {
    const two = input([bed('b', 2, 0.015), bed('a', 1, 0.015)], [half]);
    expect(grams(two, [0.03], [0.06])).toEqual([{ meal: 30 }, { meal: 30 }]);
    expect(grams(two, [0.03], [0.055])).toEqual([{ meal: 30 }, { meal: 25 }]);
    expect(grams(two, [0.03], [0.05])).toEqual([{ meal: 25 }, { meal: 25 }]);
    expect(grams(two, [0.03], [0])).toEqual([{}, {}]);
    const equal = input([bed('b', 1, 0.015), bed('a', 1, 0.015)], [half]);
    expect(grams(equal, [0.03], [0.055])).toEqual([{ meal: 30 }, { meal: 25 }]);
    const third = input([bed('b', 1, 0.015), bed('c', 1, 0.015), bed('a', 1, 0.015)], [half]);
    expect(grams(third, [0.03], [0.085])).toEqual([{ meal: 30 }, { meal: 30 }, { meal: 25 }]);
  });
  test('a bed counts as met at the ends of its range, under below and over above', () => {
    const standing = (need: number, rate: number, supply = 99) => {
      const [fed] = bedDoses(input([bed('a', 1, need)], [half]), [[rate]], [supply], 0.25);
      return fed?.standing['N'];
    };
    expect(standing(0.01, 0.02)).toBe('met');
    expect(standing(0.01, 0.02, 0.015)).toBe('under');
    // 5 g steps of all nitrogen: 0.0035 kg wanted, 0.005 brought, 1 g more than may be
    const [over] = bedDoses(input([bed('a', 1, 0.0035)], [material('urea', 1, 1)]), [[0.004]], [99], 0.25);
    expect(over?.standing['N']).toBe('over');
    expect(over?.brings.N).toBeCloseTo(0.005, 12);
    expect(over?.need.N).toBe(0.0035);
  });
  test('a supply is wanted for each material', () => {
    const given = input([bed('a', 1, 0.01)], [half]);
    expect(refusals(() => bedDoses(given, [[0.02]], [], 0.25))).toEqual(['supply_kg other-count']);
  });
});

describe('groups of beds', () => {
  test('needs by area within half a gram fall together; a bed without area is left out', () => {
    const groups = groupBeds([bed('c', 2, 0.02), bed('a', 4, 0.0402), bed('b', 1, 0.012), bed('d', 0, 0.01)]);
    expect(groups.map((group) => group.beds.map((each) => each.bedId))).toEqual([['a', 'c'], ['b']]);
    expect(groups[0]?.area_m2).toBe(6);
    expect(groups[0]?.need.N).toBeCloseTo(0.0602, 12);
    expect(groupBeds([])).toEqual([]);
  });
  test('every nutrient tells beds apart', () => {
    expect(groupBeds([bed('a', 1, 0.02), bed('b', 1, 0.02, 0.01)])).toHaveLength(2);
    expect(groupBeds([bed('a', 1, 0.0005, 0.006), bed('b', 1, 0.0055, 0.001)])).toHaveLength(2);
  });
});

describe('the farm’s blend by hand', () => {
  const meal: FeedMaterial = { ...material('meal', 0.1, 3000), density_kg_per_m3: 600 };
  const heard: { doing: number[]; best: string[] } = { doing: [], best: [] };
  const voice = {
    doing: (share: number) => void heard.doing.push(share),
    best: (blend: { readonly state: string }) => void heard.best.push(blend.state),
    shouldStop: () => false,
  };
  const blendOf = (beds: readonly BedNeed[], materials: readonly FeedMaterial[], nutrients = ['N', 'P2O5'] as const) => {
    const outcome = solveFarmBlend({ groups: groupBeds(beds), materials, nutrients, toleranceShare: 0.1 }, 0.25, solvers, voice);
    if (outcome.state !== 'found') throw new Error(outcome.because);
    return outcome.blend;
  };
  test('100 g of N from a meal of a tenth: about a kilogram, a bag of ten, the stock first', () => {
    heard.doing.length = 0;
    heard.best.length = 0;
    const blend = blendOf([bed('a', 10, 0.1)], [{ ...meal, stock_kg: 0.5 }]);
    expect(blend.packages).toEqual([
      { materialId: 'meal', name: 'the meal', offerId: 'meal-bag', packages: 1, bought_kg: 10, cost_minor: 3000 },
    ]);
    const used_kg = blend.beds[0]?.doses[0]?.dose_kg ?? 0;
    expect(used_kg).toBeGreaterThanOrEqual(0.9 - 1e-9);
    expect(used_kg).toBeLessThanOrEqual(1.2);
    expect(blend.materials).toEqual([
      { materialId: 'meal', name: 'the meal', used_kg, fromStock_kg: 0.5, bought_kg: 10, left_kg: 10.5 - used_kg },
    ]);
    expect([blend.state, blend.cost_minor, blend.groups, blend.missing]).toEqual(['best', 3000, 1, []]);
    expect(blend.leastMiss).toBeCloseTo(0, 9);
    expect(heard.doing).toEqual(heard.doing.toSorted((x, y) => x - y));
    expect(heard.best).toContain('best-so-far');
  });
  test('more bags where one does not reach, and none of what is not used', () => {
    const blend = blendOf([bed('a', 100, 1.9)], [meal, material('other', 0, 10)]);
    expect(blend.packages.map((each) => [each.materialId, each.packages, each.cost_minor])).toEqual([['meal', 2, 6000]]);
    expect(blend.materials.map((each) => each.materialId)).toEqual(['meal']);
  });
  test('the price of a limit: a gram of N takes 10 g of a meal at 300 a kg, 3 minor units', () => {
    const blend = blendOf([bed('a', 10, 0.1), bed('b', 20, 0.2)], [meal]);
    expect(blend.prices.map((each) => [each.nutrient, each.limit, each.beds])).toEqual([['N', 'least', 2]]);
    expect(blend.prices[0]?.price_minor_per_g).toBeCloseTo(3, 3);
  });
  // cheap pellets bring N and P2O5 alike; 30 g more P2O5 would put 1 kg of pellets in place of 150 g of meal
  test('a limit from above has a price below zero: what one gram more would save', () => {
    const pellet = material('pellet', 0.015, 200, { available: { ...noNutrients, N: 0.015, P2O5: 0.03 } });
    const { prices } = blendOf([bed('a', 10, 0.1, 0.005)], [meal, pellet]);
    const most = prices.find((each) => each.limit === 'most');
    expect(most?.nutrient).toBe('P2O5');
    expect(most?.price_minor_per_g).toBeCloseTo(-(0.15 * 300 - 20) / 30, 3);
  });
  test('no bed is given more of a material than its rate allows; what is missing is told in kilograms', () => {
    const blend = blendOf([bed('a', 10, 0.1)], [{ ...meal, maxRate_kg_per_m2: 0.05 }]);
    const brings = blend.beds[0]?.brings.N ?? 0;
    expect(brings).toBeLessThanOrEqual(0.05 + 1e-9);
    expect(blend.missing).toEqual([{ nutrient: 'N', standing: 'under', beds: 1, miss_kg: 0.1 - brings }]);
    // groups are held to 95 %, half the tolerance: 95 g less 50 g is 45 % of the need; 1e-6 is the solver's own room
    expect(blend.leastMiss).toBeCloseTo(0.45, 5);
  });
  test('a solver that finds nothing, or stops early, is told', () => {
    const given = { ...input([bed('a', 10, 0.1)], [meal]), toleranceShare: 0.1 };
    const failing: LpSolver = () => ({
      addColumns: () => undefined,
      addRows: () => undefined,
      setColumnBounds: () => undefined,
      solve: () => ({ state: 'no-solution', because: 'infeasible' }),
      close: () => undefined,
    });
    const of = (with_: typeof solvers) => solveFarmBlend(given, 0.25, with_, voice);
    const noMilp: MilpSolver = () => ({ state: 'no-solution', because: 'stopped-before-any' });
    const [unmet, unpacked] = [of({ ...solvers, lp: failing }), of({ ...solvers, milp: noMilp })];
    if (unmet.state === 'found' || unpacked.state === 'found') throw new Error('neither has a plan');
    expect(unmet.because).not.toBe(unpacked.because);
    const early: MilpSolver = (model, wishes) => {
      expect(wishes?.shouldStop).toBe(voice.shouldStop);
      const answer = solvers.milp(model, wishes);
      return answer.state === 'no-solution' ? answer : { ...answer, state: 'stopped' };
    };
    const stopped = of({ ...solvers, milp: early });
    expect(stopped.state === 'found' && stopped.blend.state).toBe('best-so-far');
  });
});

describe('a blend of one batch by hand', () => {
  const meal = { name: 'meal', price: 300, contents: { N: 90 } };
  const pellet = { name: 'pellet', price: 30, contents: { N: 15, P2O5: 30 } };
  const found = (problem: BlendProblem) => {
    const blend = leastCostBlend(problem, solvers.lp);
    if (blend.state !== 'found') throw new Error('should be feasible');
    return blend;
  };
  const rounded = (amounts: Readonly<Record<string, number>>) =>
    Object.fromEntries(Object.entries(amounts).map(([name, amount]) => [name, Number(amount.toFixed(6))]));
  test('what is had, what it brings and costs, and which limits hold it', () => {
    // a pellet's N costs 2 a gram, a meal's 3.33; 1 kg of pellets is all that is had, 45 of 60 g come from meal
    const blend = found({ materials: [meal, { ...pellet, most: 1 }], minimum: { N: 60 } });
    expect(rounded(blend.amounts)).toEqual({ meal: 0.5, pellet: 1 });
    expect(rounded(blend.brings)).toEqual({ N: 60, P2O5: 30 });
    expect(blend.cost).toBeCloseTo(180, 6);
    expect(blend.binding.map(({ limit, of, price }) => [limit, of, Number(price.toFixed(3))])).toEqual([
      ['minimum', 'N', 3.333],
      ['most', 'pellet', -20],
    ]);
  });
  test('a total, a most in all and a budget each bind', () => {
    const limits = (problem: Partial<BlendProblem>) => {
      const blend = found({ materials: [meal, pellet], minimum: {}, ...problem });
      return [rounded(blend.amounts), blend.binding.map(({ limit, of }) => `${limit} ${of}`)];
    };
    expect(limits({ total: 2 })).toEqual([{ meal: 0, pellet: 2 }, ['total ']]);
    // 1 kg may be 30 g short of N with pellets alone: x meal and 1 - x pellets, 75 x + 15 = 60
    expect(limits({ minimum: { N: 60 }, mostTotal: 1 })).toEqual([{ meal: 0.6, pellet: 0.4 }, ['minimum N', 'mostTotal ']]);
    // 90 g of N for 180: all pellets would cost 180, so nothing dearer is to be had
    expect(limits({ minimum: { N: 90 }, budget: 200 })[0]).toEqual({ meal: 0, pellet: 6 });
    expect(limits({ minimum: { N: 60 }, maximum: { P2O5: 30 } })[0]).toEqual({ meal: 0.5, pellet: 1 });
  });
  test('of two of one price the lighter', () => {
    const weak = { name: 'weak', price: 150, contents: { N: 45 } };
    expect(rounded(found({ materials: [weak, meal], minimum: { N: 90 } }).amounts)).toEqual({ weak: 0, meal: 1 });
  });
  test('limits that clash are named with the share by which they give way', () => {
    // 60 g of N from pellets bring 120 g P2O5; at 20 g of it N is at 10 g, five sixths short, and that is the cheaper miss
    const clash = leastCostBlend({ materials: [pellet], minimum: { N: 60 }, maximum: { P2O5: 20 } }, solvers.lp);
    if (clash.state === 'found') throw new Error('cannot be met');
    expect(clash.clash.map(({ limit, of, missedShare }) => [limit, of, Number(missedShare.toFixed(4))])).toEqual([
      ['minimum', 'N', 0.8333],
    ]);
  });
  test('whole measures: the next whole one, checked by plain arithmetic; none where none fits', () => {
    const whole = wholeMeasureBlend({ materials: [meal], minimum: { N: 100 } }, solvers.milp, solvers.lp);
    expect(whole).toEqual({ state: 'found', cost: 600, amounts: { meal: 2 }, brings: { N: 180 }, binding: [] });
    const none = wholeMeasureBlend({ materials: [meal], minimum: { N: 100 }, budget: 500 }, solvers.milp, solvers.lp);
    expect(none.state).toBe('cannot-be-met');
    const wrong: MilpSolver = () => ({
      state: 'optimal',
      values: Float64Array.of(1),
      objective: 0,
      bound: 0,
      gap: 0,
    });
    const checked = wholeMeasureBlend({ materials: [meal], minimum: { N: 100 } }, wrong, solvers.lp);
    expect(checked).toEqual({ state: 'cannot-be-met', clash: [{ limit: 'minimum', of: 'N', missedShare: 0.1 }] });
  });
  test('a limit is broken by its share, from below and from above', () => {
    const problem = { materials: [meal, pellet], minimum: { N: 100 }, maximum: { P2O5: 20 }, budget: 100, total: 1 };
    const broken = brokenLimits(problem, { meal: 0, pellet: 1 }).map(
      ({ limit, of, missedShare }) => `${limit} ${of} ${missedShare.toFixed(3)}`,
    );
    expect(broken).toEqual(['minimum N 0.850', 'maximum P2O5 0.500']);
    expect(brokenLimits(problem, {}).map(({ limit }) => limit)).toEqual(['minimum', 'total']);
  });
  test('a content below zero, or none, is refused at its place', () => {
    const of = (contents: Record<string, number>, price = 1) =>
      refusals(() => leastCostBlend({ materials: [meal, { name: 'a', price, contents }], minimum: { N: 1 } }, solvers.lp));
    expect(of({ N: -1 })).toEqual(['materials.1.contents.N too-small']);
    expect(of({ N: Number.NaN })).toEqual(['materials.1.contents.N too-small']);
    expect(of({ N: 1 }, Number.NaN)).toEqual(['materials.1.price too-small']);
    const even: BlendProblem = { materials: [meal], minimum: { N: 90 }, maximum: { N: 90 } };
    expect(found(even).cost).toBeCloseTo(300, 6);
    expect(refusals(() => found({ ...even, maximum: { N: 89 } }))).toEqual(['maximum.N too-small']);
    expect(refusals(() => found({ ...even, materials: [] }))).toEqual(['materials empty']);
  });
});
