import { describe, expect, test } from 'vitest';
import { checkInstance } from '../../../../../planner/season/optimise/check-instance.ts';
import { evaluatePlan, unitFaults } from '../../../../../planner/season/optimise/evaluate.ts';
import { withGoal } from '../../../../../planner/season/optimise/goals.ts';
import type {
  PlannedPlanting,
  PlantingUnit,
  SeasonCrop,
  SeasonInstance,
} from '../../../../../planner/season/optimise/instance.ts';
import { createMarket, steadinessCost_minor, weekRevenue_minor } from '../../../../../planner/season/optimise/market.ts';
import { nameUnits } from '../../../../../planner/season/optimise/name-units.ts';
import { optionWorth, priceGroups, sequenceValue_minor } from '../../../../../planner/season/optimise/pricing.ts';
import { compileSeason, planOf, sequencesOf, standingCost_minor } from '../../../../../planner/season/optimise/problem.ts';
import { soldByWeek } from '../../../../../planner/season/optimise/revenue.ts';
import { shadowValues } from '../../../../../planner/season/optimise/shadow-values.ts';
import { bestSales } from '../../../../../planner/season/optimise/transport.ts';
import { remedyChanges, shortByChoice_share, unmetOrders } from '../../../../../planner/season/optimise/unmet.ts';
import { whatIf } from '../../../../../planner/season/optimise/what-if.ts';
import { refusals } from '../../../../builders/faults-of.ts';

const WEEKS = 6;
const all = (value: number) => new Array<number>(WEEKS).fill(value);
const option = (startWeek: number, harvest_per_m2: readonly number[] = [0, 2]): SeasonCrop['options'][number] => ({
  startWeek,
  harvest_per_m2,
  labour_h_per_m2: harvest_per_m2.map((_, k) => (k === 0 ? 1 : 0.5)),
  water_L_per_m2: harvest_per_m2.map((_, k) => 10 * (k + 1)),
  bench_m2_per_m2: startWeek > 0 ? [0.1] : [],
  cost_minor_per_m2: 50,
});
const crop = (change: Partial<SeasonCrop> = {}): SeasonCrop => ({
  name: 'kale',
  family: 0,
  shelf_weeks: 0,
  overhead_minor: 300,
  steadiness_minor: 10,
  options: [option(1), option(3)],
  demand: [
    {
      week: 2,
      contract: 3,
      contractPrice_minor: 400,
      penalty_minor: 100,
      tiers: [
        { cap: 2, price_minor: 300 },
        { cap: 5, price_minor: 200 },
      ],
    },
    { week: 3, contract: 1, contractPrice_minor: 400, penalty_minor: 100, tiers: [] },
  ],
  ...change,
});
const unit = (change: Partial<PlantingUnit> = {}): PlantingUnit => ({
  id: 'A',
  bedId: 'A',
  block: 0,
  position: 0,
  part: 0,
  area_m2: 2,
  zone: 0,
  cropsFit: [0, 1],
  barredFamilies: [],
  fixed: [],
  seasonsSince: {},
  ...change,
});
const season = (change: Partial<SeasonInstance> = {}): SeasonInstance => ({
  weeks: WEEKS,
  families: (['once', 'one-crop', 'not-back-to-back', 'free'] as const).map((inSeason) => ({ name: inSeason, inSeason })),
  units: [unit(), unit({ id: 'B', bedId: 'B', area_m2: 1, zone: 1, position: 1 })],
  crops: [crop(), crop({ name: 'beet', family: 3, overhead_minor: 0, demand: [] })],
  wage_minor_per_h: 1000,
  labourCap_h: all(1.5),
  overtimeMost_h: 0.5,
  overtimePremium_minor_per_h: 200,
  waterCap_L: [all(40), all(40)],
  benchCap_m2: all(0.2),
  mostCrops: 2,
  standing: null,
  ...change,
});
const kale: PlannedPlanting = { crop: 0, option: 0 };
const standing = {
  harvest: [[0, 0, 0, 1, 0, 0], all(0)],
  labour_h: [0, 3, 0, 0, 0, 0],
  water_L: [[0, 0, 50, 0, 0, 0], all(0)],
  bench_m2: [0.5, 0, 0, 0, 0, 0],
  cropsGrown: [1],
  cost_minor: 70,
};

describe('what a plan comes to', () => {
  // 2 m2 of kale: 4 kg in week 2, 3 to the order at 400, 1 to the market at 300; 1 kg of week 3 is missed
  test('by hand: sales, what is missed, costs, hours, overtime, the jump between weeks of demand', () => {
    const outcome = evaluatePlan(season(), [[kale], []]);
    expect(outcome).toMatchObject({
      revenue_minor: 1500,
      penalty_minor: 100,
      direct_minor: 100,
      wage_minor: 3000,
      overhead_minor: 300,
      steadiness_minor: 40,
      labour_h: [0, 2, 1, 0, 0, 0],
      water_L: [[0, 20, 40, 0, 0, 0], all(0)],
      bench_m2: [0.2, 0, 0, 0, 0, 0],
      bedWeeks_m2: 4,
      faults: [],
    });
    expect(outcome.overtime_minor).toBeCloseTo(100, 9);
    expect(outcome.margin_minor).toBeCloseTo(1500 - 100 - 100 - 3000 - 100 - 300 - 40, 9);
    expect(outcome.crops[0]).toEqual({
      crop: 0,
      area_m2: 2,
      harvest: [0, 0, 4, 0, 0, 0],
      sales: [
        { week: 2, contract: true, price_minor: 400, amount: 3 },
        { week: 2, contract: false, price_minor: 300, amount: 1 },
      ],
      contract: 4,
      contractSold: 3,
      short: [{ week: 3, amount: 1, penalty_minor: 100 }],
      revenue_minor: 1500,
      penalty_minor: 100,
    });
    expect(outcome.crops[1]).toMatchObject({ crop: 1, area_m2: 0, harvest: all(0), sales: [], short: [] });
  });
  test('each limit that is passed is told with its week and by how much; to the limit itself is none', () => {
    const faults = (change: Partial<SeasonInstance>) =>
      evaluatePlan(season(change), [[kale], []]).faults.map(({ code, where, week, by }) => [
        code,
        where,
        week,
        Number(by.toFixed(6)),
      ]);
    expect(faults({})).toEqual([]);
    expect(faults({ overtimeMost_h: 0.4 })).toEqual([['hours', 'all beds', 1, 0.1]]);
    expect(faults({ waterCap_L: [all(39), all(0)] })).toEqual([['water', 'line 0', 2, 1]]);
    expect(faults({ benchCap_m2: all(0.1) })).toEqual([['bench', 'bench', 0, 0.1]]);
    expect(faults({ mostCrops: 0 })).toEqual([['crops', 'all beds', null, 1]]);
  });
  test('what stands anyway counts in all of it, and passes no limit by itself', () => {
    const outcome = evaluatePlan(season({ standing }), []);
    expect(outcome.faults).toEqual([]);
    expect(outcome).toMatchObject({
      revenue_minor: 400,
      penalty_minor: 300,
      direct_minor: 70,
      wage_minor: 3000,
      overtime_minor: 300,
      overhead_minor: 0,
      steadiness_minor: 10,
      labour_h: standing.labour_h,
      water_L: standing.water_L,
      bench_m2: standing.bench_m2,
      bedWeeks_m2: 0,
    });
    const both = evaluatePlan(season({ standing }), [[kale], []]);
    expect(both.faults.map(({ code, week }) => [code, week])).toEqual([
      ['bench', 0],
      ['hours', 1],
      ['water', 2],
    ]);
    expect(both.crops[0]?.harvest).toEqual([0, 0, 4, 1, 0, 0]);
    expect([both.direct_minor, both.overhead_minor]).toEqual([170, 300]);
    expect(standingCost_minor(season({ standing }))).toBe(3070);
    expect(standingCost_minor(season())).toBe(0);
  });
  test('a planting that does not exist is a fault and counts for nothing', () => {
    const outcome = evaluatePlan(season(), [[{ crop: 0, option: 9 }], [{ crop: 7, option: 0 }]]);
    expect(outcome.faults.map(({ code, where, week }) => [code, where, week])).toEqual([
      ['does-not-fit', 'A', null],
      ['does-not-fit', 'B', null],
    ]);
    expect(outcome.bedWeeks_m2).toBe(0);
  });
  test('every rule of one piece of bed, each with its week', () => {
    const of = (plantings: readonly PlannedPlanting[], change: Partial<PlantingUnit> = {}, family = 0) => {
      const crops = [
        crop({ family, options: [option(0), option(1), option(2), option(4)] }),
        crop({ family: 3, options: [option(2)] }),
        crop({ family }),
      ];
      return unitFaults(season({ crops }), unit({ cropsFit: [0, 1, 2], ...change }), plantings).map(
        ({ code, week }) => `${code} ${week}`,
      );
    };
    const at = (o: number, c = 0) => ({ crop: c, option: o });
    const fixed = (family: number | null, fromWeek: number, toWeek: number, c: number | null = null) => ({
      fixed: [{ fromWeek, toWeek, family, crop: c }],
    });
    expect(of([at(0)])).toEqual([]);
    expect(of([at(0)], { cropsFit: [1] })).toEqual(['does-not-fit 0']);
    expect(of([at(1)], { barredFamilies: [0] })).toEqual(['history 1']);
    expect(of([at(1), at(0, 1)])).toEqual(['overlap 2']);
    expect(of([at(0), at(0, 1)])).toEqual([]);
    expect(of([at(1)], fixed(null, 2, 4))).toEqual(['taken 2']);
    expect(of([at(2)], fixed(null, 1, 3))).toEqual(['taken 2']);
    expect(of([at(2)], fixed(null, 0, 2))).toEqual([]);
    // once: not a second time, neither after a planting nor beside what stands
    expect(of([at(0), at(2)])).toEqual(['family-rule 2']);
    expect(of([at(2), at(0)])).toEqual(['family-rule 2']);
    expect(of([at(2)], fixed(0, 0, 1))).toEqual(['family-rule 2']);
    expect(of([at(0)], fixed(0, 4, 6))).toEqual(['family-rule 4']);
    expect(of([at(2)], fixed(2, 0, 1))).toEqual([]);
    // one crop: the same again, no other of its family
    expect(of([at(0), at(2)], {}, 1)).toEqual([]);
    expect(of([at(0), { crop: 2, option: 1 }], {}, 1)).toEqual(['family-rule 3']);
    expect(of([at(2)], fixed(1, 0, 1), 1)).toEqual(['family-rule 2']);
    expect(of([at(2)], fixed(1, 0, 1, 0), 1)).toEqual([]);
    // not back to back: another family between is enough
    expect(of([at(0), at(3)], {}, 2)).toEqual(['family-rule 4']);
    expect(of([at(0), at(0, 1), at(3)], {}, 2)).toEqual([]);
    expect(of([at(2)], fixed(2, 0, 1), 2)).toEqual(['family-rule 2']);
    expect(of([at(0), at(2)], {}, 3)).toEqual([]);
    // two that stand anyway are nobody's fault
    const two = { fixed: [...fixed(0, 0, 2).fixed, ...fixed(0, 1, 3).fixed] };
    expect(of([], two)).toEqual([]);
  });
});

describe('what falls short', () => {
  const short = season({
    crops: [
      crop(),
      crop({
        name: 'beet',
        family: 3,
        demand: [{ week: 1, contract: 5, contractPrice_minor: 10, penalty_minor: 90, tiers: [] }],
      }),
    ],
    units: [unit(), unit({ id: 'B', barredFamilies: [0], area_m2: 3 }), unit({ id: 'C', cropsFit: [0], area_m2: 5 })],
  });
  test('dearest first, with what no plan can change', () => {
    expect(unmetOrders(short, evaluatePlan(short, [[], [], []]))).toEqual([
      { crop: 1, weeks: [1], amount: 5, wanted: 5, penalty_minor: 450, firstHarvestWeek: 2, tooEarly: 5, fittingArea_m2: 5 },
      { crop: 0, weeks: [2, 3], amount: 4, wanted: 4, penalty_minor: 400, firstHarvestWeek: 2, tooEarly: 0, fittingArea_m2: 7 },
    ]);
    const never = { ...short, crops: short.crops.map((each) => ({ ...each, options: [] })) };
    expect(unmetOrders(never, evaluatePlan(never, [])).map((each) => [each.firstHarvestWeek, each.tooEarly])).toEqual([
      [null, 5],
      [null, 4],
    ]);
    expect(unmetOrders(season(), evaluatePlan(season({ crops: [crop({ demand: [] })] }), []))).toEqual([]);
  });
  test('remedies: half as much again of hours and water, no history, ten more of the largest bed, any bed', () => {
    expect(remedyChanges(short)).toEqual([
      { kind: 'labour', factor: 1.5 },
      { kind: 'water', zone: null, factor: 1.5 },
      { kind: 'no-history' },
      { kind: 'beds', unit: 2, count: 10 },
      { kind: 'any-bed' },
    ]);
    expect(remedyChanges(season({ units: [] })).map(({ kind }) => kind)).not.toContain('beds');
  });
  test('what is short by choice: all of it where nothing need be, none where nothing is', () => {
    expect(shortByChoice_share(short, [[], [], []], 0)).toBe(1);
    expect(shortByChoice_share(short, [[], [], []], 1e12)).toBe(0);
    const met = season({ crops: [crop({ demand: [] })] });
    expect(shortByChoice_share(met, [], 0)).toBe(0);
    const least = evaluatePlan(withGoal(short, { aim: 'fewest-beds', weight: 'above-all' }), [[], [], []]).penalty_minor;
    expect(shortByChoice_share(short, [[], [], []], least / 4)).toBeCloseTo(0.75, 9);
  });
});

describe('one thing different', () => {
  const farm = season();
  test('price, wage, water, hours: of the crop or line named alone', () => {
    const dear = whatIf(farm, { kind: 'price', crop: 0, factor: 2 });
    expect(dear.crops[0]?.demand[0]).toMatchObject({
      contractPrice_minor: 800,
      penalty_minor: 100,
      tiers: [
        { cap: 2, price_minor: 600 },
        { cap: 5, price_minor: 400 },
      ],
    });
    expect(dear.crops[1]).toBe(farm.crops[1]);
    expect(whatIf(farm, { kind: 'wage', wage_minor_per_h: 7 })).toEqual({ ...farm, wage_minor_per_h: 7 });
    expect(whatIf(farm, { kind: 'water', zone: 1, factor: 2 }).waterCap_L).toEqual([all(40), all(80)]);
    expect(whatIf(farm, { kind: 'water', zone: null, factor: 0.5 }).waterCap_L).toEqual([all(20), all(20)]);
    expect(whatIf(farm, { kind: 'labour', factor: 2 })).toEqual({ ...farm, labourCap_h: all(3) });
  });
  test('more beds are like their model but fresh; a crop left out has no options; history and fit are lifted', () => {
    const model = season({
      units: [unit({ barredFamilies: [1], fixed: [{ fromWeek: 0, toWeek: 1, family: 0 }], seasonsSince: { 0: 2 } })],
    });
    const more = whatIf(model, { kind: 'beds', unit: 0, count: 2 }).units;
    const fresh = { barredFamilies: [], fixed: [], seasonsSince: {} };
    expect(more).toEqual([
      model.units[0],
      unit({ ...fresh, id: 'A more 1', bedId: 'A more 1', position: 1 }),
      unit({ ...fresh, id: 'A more 2', bedId: 'A more 2', position: 2 }),
    ]);
    expect(whatIf(farm, { kind: 'without', crop: 0 }).crops.map((each) => each.options.length)).toEqual([0, 2]);
    expect(whatIf(model, { kind: 'no-history' }).units[0]).toEqual({ ...model.units[0], barredFamilies: [] });
    const narrow = season({ units: [unit({ cropsFit: [] })] });
    expect(whatIf(narrow, { kind: 'any-bed' }).units[0]?.cropsFit).toEqual([0, 1]);
  });
  test('what will not do is refused at its field', () => {
    expect(
      [
        () => whatIf(farm, { kind: 'price', crop: 9, factor: 1 }),
        () => whatIf(farm, { kind: 'price', crop: 0, factor: 101 }),
        () => whatIf(farm, { kind: 'wage', wage_minor_per_h: -1 }),
        () => whatIf(farm, { kind: 'water', zone: 0, factor: -1 }),
        () => whatIf(farm, { kind: 'labour', factor: -1 }),
        () => whatIf(farm, { kind: 'beds', unit: 0, count: 501 }),
        () => whatIf(farm, { kind: 'beds', unit: 9, count: 1 }),
        () => whatIf(farm, { kind: 'without', crop: 9 }),
      ].flatMap(refusals),
    ).toEqual([
      'crop no-such-crop',
      'factor too-large (100)',
      'wage_minor_per_h too-small (0)',
      'factor too-small (0)',
      'factor too-small (0)',
      'count too-large (500)',
      'unit no-such-bed',
      'crop no-such-crop',
    ]);
  });
});

describe('goals written into prices', () => {
  const farm = season();
  test('margin leaves the season as it is; steadiness charges a share of the dearest price', () => {
    expect(withGoal(farm, { aim: 'most-margin', weight: 'clearly' })).toBe(farm);
    const charge = (weight: 'a-little' | 'clearly' | 'above-all') =>
      withGoal(farm, { aim: 'steady', weight }).crops.map((each) => Math.round(each.steadiness_minor));
    expect([charge('a-little'), charge('clearly'), charge('above-all')]).toEqual([
      [40, 0],
      [120, 0],
      [400, 0],
    ]);
    const market = season({ crops: [crop({ demand: crop().demand.map((week) => ({ ...week, contract: 0 })) })] });
    expect(withGoal(market, { aim: 'steady', weight: 'above-all' }).crops[0]?.steadiness_minor).toBe(300);
  });
  test('fewest hours: an hour counts one and a half or three wages; above all only the orders are left, by their effort', () => {
    expect(withGoal(farm, { aim: 'fewest-hours', weight: 'a-little' })).toEqual({ ...farm, wage_minor_per_h: 1500 });
    expect(withGoal(farm, { aim: 'fewest-hours', weight: 'clearly' }).wage_minor_per_h).toBe(3000);
    const orders = withGoal(farm, { aim: 'fewest-hours', weight: 'above-all' });
    expect(orders).toMatchObject({ wage_minor_per_h: 0, overtimePremium_minor_per_h: 0, labourCap_h: farm.labourCap_h });
    // 1.5 h for 2 kg: 75 a kg; the least that counts is 100, fifty times that outweighs it
    expect(orders.crops[0]).toMatchObject({ overhead_minor: 0, steadiness_minor: 0 });
    expect(orders.crops[0]?.options.map((each) => each.cost_minor_per_m2)).toEqual([150, 150]);
    expect(orders.crops[0]?.demand).toEqual([
      { week: 2, contract: 3, contractPrice_minor: 0, penalty_minor: 5000, tiers: [] },
      { week: 3, contract: 1, contractPrice_minor: 0, penalty_minor: 5000, tiers: [] },
    ]);
    const poor = season({ crops: [crop({ options: [option(1, [0, 0.5])] })] });
    expect(withGoal(poor, { aim: 'fewest-hours', weight: 'above-all' }).crops[0]?.demand[0]?.penalty_minor).toBe(50 * 300);
  });
  test('fewest beds: a charge on each week of bed, of what such a week sells for; above all by weeks of bed', () => {
    const orders = withGoal(farm, { aim: 'fewest-beds', weight: 'above-all' });
    expect(orders.crops[0]?.options[0]?.cost_minor_per_m2).toBe(200);
    const cheap = season({
      wage_minor_per_h: 0,
      crops: [crop({ options: [option(1)], overhead_minor: 0 }), crop({ demand: [], options: [] })],
    });
    const charged = (weight: 'a-little' | 'clearly') =>
      (withGoal(cheap, { aim: 'fewest-beds', weight }).crops[0]?.options[0]?.cost_minor_per_m2 ?? 0) - 50;
    expect(charged('a-little')).toBeGreaterThan(0);
    expect(charged('clearly')).toBeCloseTo(3 * charged('a-little'), 9);
    // a first plan sells 1,500 from 4 m2-weeks, the young plants of one bed filling the bench; a tenth of that for two weeks
    const selling = evaluatePlan(cheap, [[kale], []]);
    expect(charged('a-little')).toBeCloseTo((0.1 * selling.revenue_minor * 2) / selling.bedWeeks_m2, 6);
    const nothing = season({ crops: [crop({ demand: [] }), crop({ demand: [], options: [] })] });
    expect(withGoal(nothing, { aim: 'fewest-beds', weight: 'clearly' }).crops[0]?.options[0]?.cost_minor_per_m2).toBe(50);
  });
});

describe('the season laid out', () => {
  test('units alike in all that constrains them are one group; options by the week they begin', () => {
    const problem = compileSeason(
      season({
        units: [
          unit(),
          unit({ id: 'C' }),
          unit({ id: 'D', area_m2: 3 }),
          unit({ id: 'E', zone: 1 }),
          unit({ id: 'F', cropsFit: [1] }),
        ],
      }),
    );
    expect(problem.groups.map((group) => [...group.units])).toEqual([[0, 1], [2], [3], [4]]);
    expect([...problem.groupOfUnit]).toEqual([0, 0, 1, 2, 3]);
    expect([problem.areaCount, problem.groups.map((group) => group.areaAt)]).toEqual([2, [1, 0, 1, 1]]);
    expect([...(problem.groups[0]?.options ?? [])]).toEqual([0, 2, 1, 3]);
    expect([...(problem.groups[0]?.starts ?? [])]).toEqual([0, 0, 2, 2, 4, 4, 4]);
    expect([...(problem.groups[3]?.options ?? [])]).toEqual([2, 3]);
    expect([...problem.optionCrop, ...problem.optionAt, ...problem.optionEnd]).toEqual([0, 0, 1, 1, 0, 1, 0, 1, 3, 5, 3, 5]);
    expect([...problem.optionFirstHarvest]).toEqual([1, 1, 1, 1]);
    // 50 and one and a half hours
    expect([...problem.optionCost_minor]).toEqual([1550, 1550, 1550, 1550]);
    expect(planOf(problem, [[0, 3]])).toEqual([
      [
        { crop: 0, option: 0 },
        { crop: 1, option: 1 },
      ],
    ]);
    expect(
      sequencesOf(problem, [
        [
          { crop: 1, option: 1 },
          { crop: 0, option: 0 },
        ],
      ]),
    ).toEqual([[0, 3]]);
  });
  test('what stands keeps out options over its weeks, and its family by the family’s rule', () => {
    const options = (family: number | null, cropOfSpan: number | null, ofCrop: number, fromWeek = 0) => {
      const fixed = [{ fromWeek, toWeek: fromWeek + 1, family, crop: cropOfSpan }];
      const problem = compileSeason(season({ crops: [crop({ family: ofCrop })], units: [unit({ cropsFit: [0], fixed })] }));
      return [...(problem.groups[0]?.options ?? [])];
    };
    expect(options(null, null, 0)).toEqual([0, 1]);
    expect(options(null, null, 0, 2)).toEqual([1]);
    expect(options(0, null, 0)).toEqual([]);
    expect(options(1, null, 1)).toEqual([]);
    expect(options(1, 0, 1)).toEqual([0, 1]);
    expect(options(1, null, 3)).toEqual([0, 1]);
    expect(options(2, null, 2)).toEqual([0, 1]);
    const [group] = compileSeason(season({ units: [unit({ fixed: [{ fromWeek: 2, toWeek: 4, family: 2 }] })] })).groups;
    expect([...(group?.fixedTo ?? [])]).toEqual([-1, -1, 4, -1, -1, -1]);
    expect([...(group?.fixedFamily ?? [])]).toEqual([-1, -1, 2, -1, -1, -1]);
    expect([...(group?.guardedFamily ?? [])]).toEqual([-1, -1, 2, -1, -1, -1]);
  });
  test('a market: levels dearest first, penalties, weeks of demand and their pairs', () => {
    const market = createMarket(crop(), WEEKS);
    expect(market.levels.map((level) => [level.worth_minor, [...level.cap]])).toEqual([
      [500, [0, 0, 3, 1, 0, 0]],
      [300, [0, 0, 2, 0, 0, 0]],
      [200, [0, 0, 5, 0, 0, 0]],
    ]);
    expect(market.penalties_minor).toBe(400);
    expect([...(market.weekSteps[2] ?? [])]).toEqual([500, 3, 300, 2, 200, 5]);
    expect([[...market.isDemandWeek], [...market.steadyPair]]).toEqual([
      [0, 0, 1, 1, 0, 0],
      [0, 0, 0, 1, 0, 0],
    ]);
    expect([weekRevenue_minor(market, 2, 4), weekRevenue_minor(market, 2, 99), weekRevenue_minor(market, 0, 4)]).toEqual([
      1800,
      1500 + 600 + 1000,
      0,
    ]);
    expect(steadinessCost_minor(market, Float64Array.of(9, 9, 4, 1, 0, 9))).toBe(30);
    expect(steadinessCost_minor({ ...market, steadiness_minor: 0 }, Float64Array.of(9, 9, 4, 1, 0, 9))).toBe(0);
    expect(createMarket(crop({ shelf_weeks: 99 }), WEEKS).shelf_weeks).toBe(WEEKS);
    const free = crop({
      demand: [{ week: 0, contract: 0, contractPrice_minor: 9, penalty_minor: 9, tiers: [{ cap: 1, price_minor: 0 }] }],
    });
    expect(createMarket(free, WEEKS).levels).toEqual([]);
  });
  // 5 kg of week 1 keep one week; week 2 wants 3 + 2, week 1 would pay 250 for 4, and 1 kg of week 2 comes on top
  test('what keeps is sold where it is worth most, older harvest making room', () => {
    const keeps = crop({
      shelf_weeks: 1,
      demand: [
        { week: 1, contract: 0, contractPrice_minor: 0, penalty_minor: 0, tiers: [{ cap: 4, price_minor: 250 }] },
        ...crop().demand.slice(0, 1),
      ],
    });
    const harvest = [0, 5, 1, 0, 0, 0];
    expect(bestSales(keeps, harvest)).toEqual([
      { week: 2, contract: true, price_minor: 400, amount: 3 },
      { week: 2, contract: false, price_minor: 300, amount: 2 },
      { week: 1, contract: false, price_minor: 250, amount: 1 },
    ]);
    expect([...soldByWeek(createMarket(keeps, WEEKS), Float64Array.from(harvest))]).toEqual([0, 1, 5, 0, 0, 0]);
    expect(bestSales({ ...keeps, shelf_weeks: 0 }, harvest).map(({ week, amount }) => [week, amount])).toEqual([
      [2, 1],
      [1, 4],
    ]);
  });
  test('one crop lies together: rows are handed out so that neighbours carry the same, parts of one bed above all', () => {
    const units = [0, 1, 2, 3].map((position) => unit({ id: `${position}`, bedId: `${position}`, position }));
    const problem = compileSeason(season({ units, mostCrops: 2 }));
    const crops = (sequences: readonly (readonly number[])[]) => sequences.map((row) => row.map((j) => problem.optionCrop[j]));
    const named = crops(nameUnits(problem, [[0], [2], [0], [2]]));
    expect(named.slice(0, 2)).toEqual([named[0], named[0]]);
    expect(named.slice(2)).toEqual([named[2], named[2]]);
    // a family long absent from one bed goes there: kale (family 0) was in the first two beds last year
    const since = compileSeason(
      season({ units: units.map((each, at) => ({ ...each, block: at, seasonsSince: at < 3 ? { 0: 1 } : {} })) }),
    );
    const rows = nameUnits(since, [[0], [], [], []]);
    expect(rows.map((row) => row.length)).toEqual([0, 0, 0, 1]);
  });
  const prices = (harvest: (c: number, week: number) => number) => ({
    group: Float64Array.of(0),
    harvest: Float64Array.from({ length: 2 * WEEKS }, (_, at) => harvest(Math.floor(at / WEEKS), at % WEEKS)),
    labour: Float64Array.of(0, 100, 0, 0, 0, 0),
    water: [Float64Array.from(all(0)), Float64Array.of(0, 0, 2, 0, 0, 0)],
    bench: Float64Array.of(1000, 0, 0, 0, 0, 0),
  });
  // kale of week 1 at 2,000 a kg: 4,000 less 1,550 of costs and wage, 100 for an hour, in zone 1 also 20 L at 2, and 0.1 m2 of bench at 1,000
  test('what an option is worth at prices, and a row of them on its area', () => {
    const problem = compileSeason(season());
    const dear = prices((c, week) => (c === 0 && week === 2 ? 2000 : 0));
    expect([...optionWorth(problem, dear, 0, new Set())]).toEqual([4000 - 1550 - 100 - 100, -1550, -1550 - 100 - 100, -1550]);
    expect(optionWorth(problem, dear, 1, new Set())[0]).toBe(2250 - 40);
    expect([...optionWorth(problem, dear, 0, new Set([0]))].slice(0, 2)).toEqual([0, 0]);
    const priced = priceGroups(problem, dear);
    expect(priced.map(({ column, value_minor }) => [column.group, [...column.sequence], value_minor])).toEqual([
      [0, [0], 4500],
      [1, [0], 2210],
    ]);
    for (const { column, value_minor } of priced) expect(sequenceValue_minor(problem, dear, column)).toBe(value_minor);
    expect(sequenceValue_minor(problem, dear, { group: 0, sequence: [0, 3] })).toBe(2 * (2250 - 1550));
    expect(priceGroups(problem, dear, new Set([0])).map(({ value_minor }) => value_minor)).toEqual([0, 0]);
  });
  test('shadow values: those of the limits as they are, and of a week of bed what its loss would cost', () => {
    const free = season({
      units: [unit({ fixed: [{ fromWeek: 5, toWeek: 6, family: null }] }), unit({ id: 'B', area_m2: 3, cropsFit: [] })],
    });
    // weeks 1 and 2 are worth 2,250 a m2, weeks 3 and 4 450: on 2 of 5 m2 that are free then
    const dear = prices((c, week) => (c === 0 && week === 2 ? 2000 : c === 1 && week === 4 ? 1000 : 0));
    const values = shadowValues(free, dear);
    expect(values).toMatchObject({
      labour_minor_per_h: [...dear.labour],
      water_minor_per_L: dear.water.map((line) => [...line]),
      bench_minor_per_m2: [...dear.bench],
    });
    expect(values.bed_minor_per_m2).toEqual([0, 900, 900, 180, 180, 0]);
  });
});

describe('a season that cannot be computed on', () => {
  const of = (change: Partial<SeasonInstance>) => refusals(() => checkInstance(season(change)));
  const ofCrop = (change: Partial<SeasonCrop>) => of({ crops: [crop(change)] });
  const ofUnit = (change: Partial<PlantingUnit>) => of({ units: [unit(change)] });
  const week = (change: Partial<SeasonCrop['demand'][number]>) => ({
    week: 2,
    contract: 1,
    contractPrice_minor: 1,
    penalty_minor: 0,
    tiers: [],
    ...change,
  });
  test('each number, limit and piece of bed at its field', () => {
    expect(of({})).toEqual([]);
    expect(of({ weeks: 0, labourCap_h: [], benchCap_m2: [], waterCap_L: [[], []], crops: [], units: [] })).toEqual([
      'weeks not-whole',
    ]);
    expect(of({ weeks: 521, labourCap_h: [], benchCap_m2: [], waterCap_L: [], crops: [], units: [] })).toEqual([
      'weeks not-whole',
      'labourCap_h wrong-length',
      'benchCap_m2 wrong-length',
    ]);
    expect(of({ wage_minor_per_h: -1, overtimeMost_h: Number.NaN, overtimePremium_minor_per_h: -1 })).toEqual([
      'wage_minor_per_h too-small',
      'overtimeMost_h not-a-number',
      'overtimePremium_minor_per_h too-small',
    ]);
    expect(of({ labourCap_h: [0, 1, -1, 1, 1, 1], benchCap_m2: all(Infinity) })).toEqual(['labourCap_h.2 too-small']);
    expect(of({ waterCap_L: [all(1), [1]] })).toEqual(['waterCap_L.1 wrong-length']);
    expect(ofUnit({ area_m2: 0 })).toEqual(['units.0.area_m2 not-positive']);
    expect(ofUnit({ zone: 2 })).toEqual(['units.0.zone no-such-zone']);
    const span = (fromWeek: number, toWeek: number) => ({ fromWeek, toWeek, family: null });
    expect(ofUnit({ fixed: [span(0, 2), span(2, 6)] })).toEqual([]);
    expect(ofUnit({ fixed: [span(-1, 2), span(1, 7), span(3, 3)] })).toEqual([
      'units.0.fixed.0 out-of-season',
      'units.0.fixed.1 out-of-season',
      'units.0.fixed.1 overlap',
      'units.0.fixed.2 out-of-season',
      'units.0.fixed.2 overlap',
    ]);
  });
  test('each figure of a crop', () => {
    expect(ofCrop({ family: 9 })).toEqual(['crops.0.family no-such-family']);
    expect(ofCrop({ shelf_weeks: -1, overhead_minor: -1, steadiness_minor: -1 })).toEqual([
      'crops.0.shelf_weeks too-small',
      'crops.0.overhead_minor too-small',
      'crops.0.steadiness_minor too-small',
    ]);
    expect(ofCrop({ options: [option(4)] })).toEqual([]);
    expect(ofCrop({ options: [option(0), option(5), option(-1), option(0, [])] })).toEqual([
      'crops.0.options.1.startWeek out-of-season',
      'crops.0.options.2.startWeek out-of-season',
      'crops.0.options.3.startWeek out-of-season',
    ]);
    expect(
      ofCrop({
        options: [
          { ...option(0), labour_h_per_m2: [1] },
          { ...option(0), water_L_per_m2: [1, 1, 1] },
        ],
      }),
    ).toEqual(['crops.0.options.0 wrong-length', 'crops.0.options.1 wrong-length']);
    expect(
      ofCrop({
        options: [
          { ...option(0, [0, -1]) },
          { ...option(0), labour_h_per_m2: [-1, 1] },
          { ...option(0), water_L_per_m2: [1, -1] },
          { ...option(0), bench_m2_per_m2: [-1] },
          { ...option(0), cost_minor_per_m2: Number.NaN },
          { ...option(0), cost_minor_per_m2: -5 },
        ],
      }),
    ).toEqual([
      'crops.0.options.0 too-small',
      'crops.0.options.1 too-small',
      'crops.0.options.2 too-small',
      'crops.0.options.3 too-small',
      'crops.0.options.4.cost_minor_per_m2 not-a-number',
    ]);
    expect(ofCrop({ demand: [week({ week: 0 }), week({ week: 5 })] })).toEqual([]);
    expect(ofCrop({ demand: [week({ week: 0.5 }), week({ week: 2 }), week({ week: 2 }), week({ week: 6 })] })).toEqual([
      'crops.0.demand.0.week out-of-season',
      'crops.0.demand.2.week out-of-season',
      'crops.0.demand.3.week out-of-season',
    ]);
    expect(
      ofCrop({
        demand: [
          week({
            contract: -1,
            penalty_minor: -1,
            tiers: [
              { cap: -1, price_minor: 5 },
              { cap: 1, price_minor: 5 },
              { cap: 1, price_minor: 6 },
            ],
          }),
        ],
      }),
    ).toEqual([
      'crops.0.demand.0.contract too-small',
      'crops.0.demand.0.penalty_minor too-small',
      'crops.0.demand.0.tiers.0.cap too-small',
      'crops.0.demand.0.tiers.2.price_minor rising-price',
    ]);
  });
});
