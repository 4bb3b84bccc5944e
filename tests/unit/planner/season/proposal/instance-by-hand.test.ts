import { describe, expect, test } from 'vitest';
import { addDays, dayNumber } from '../../../../../planner/calendar.ts';
import { dayClock } from '../../../../../planner/season/growth-clock.ts';
import type { PlanOutcome } from '../../../../../planner/season/optimise/evaluate.ts';
import { buildInstance, presentInstance } from '../../../../../planner/season/proposal/build-instance.ts';
import { freeSpans, planKey, proposedPlantings } from '../../../../../planner/season/proposal/compare-plans.ts';
import type { CropFigures } from '../../../../../planner/season/proposal/crop-figures.ts';
import { explainMostBetter, explainPlanMargin } from '../../../../../planner/season/proposal/explain-plan.ts';
import type { FarmSeason, PresentPlanting, SeasonBed } from '../../../../../planner/season/proposal/farm-season.ts';
import { figuresOfPlan } from '../../../../../planner/season/proposal/figures-of-plan.ts';
import { optionOfDates, withinSeason } from '../../../../../planner/season/proposal/option-of-dates.ts';
import { ruledOut } from '../../../../../planner/season/proposal/ruled-out.ts';
import { weekGrid } from '../../../../../planner/season/proposal/week-grid.ts';
import { weeklyEto_mm_per_day } from '../../../../../planner/season/proposal/weekly-eto.ts';
import { aCrop, aPlanBed, aPlanting, aSpan, day, someRules } from '../../../../builders/a-plan.ts';
import { aWeatherDay } from '../../../../builders/a-weather-day.ts';
import { asRead } from '../../../../builders/as-read.ts';

// ten weeks from Monday 1 March 2027; carrots two weeks indoors, three to the first of two weeks of harvest, free a day later
const start = day('2027-03-01');
const carrot: CropFigures = {
  needs: aCrop({ hardiness: null }),
  timing: {
    method: 'transplant',
    indoors_days: 14,
    potOn_days: null,
    toHarvest: { early_days: 20, likely_days: 21, late_days: 22 },
    window_days: 13,
    turnover_days: 1,
  },
  form: 'even',
  unit: 'kg',
  yield_per_m2: { low: 10, typical: 14, high: 18 },
  hours: { plant_h_per_m2: 0.1, care_h_per_m2_week: 0.01, clear_h_per_m2: 0.05, harvest_h_per_unit: 0.02 },
  direct_minor_per_m2: 120,
  bench_m2_per_m2: 0.03,
  shelf_weeks: 1,
  overhead_minor: 700,
  orders: [
    { kind: 'standing', from: day('2027-03-31'), to: day('2027-04-12'), perWeek: 2, price_minor: 400, penalty_minor: 100 },
    { kind: 'standing', from: day('2027-04-05'), to: day('2027-04-11'), perWeek: 6, price_minor: 200, penalty_minor: 20 },
    { kind: 'market', from: day('2027-04-12'), to: day('2027-04-18'), perWeek: 3, price_minor: 150, penalty_minor: 0 },
    { kind: 'market', from: day('2027-04-12'), to: day('2027-04-18'), perWeek: 1, price_minor: 300, penalty_minor: 0 },
  ],
};
const bedA: SeasonBed = { ...aPlanBed({ id: 'a', code: 'A-1', area_m2: 4 }), block: 2, position: 5, zone: 0, splitAt: [0.5] };
const bedB: SeasonBed = { ...bedA, id: 'b', code: 'B-1', area_m2: 6, splitAt: [], zone: 1, position: 6 };
/** In the bed from Wednesday of the second week to Wednesday of the fourth. */
const standing: PresentPlanting = {
  ...aPlanting({
    id: 's',
    crop: carrot.needs,
    sow: day('2027-02-24'),
    inBed: day('2027-03-10'),
    firstHarvest: day('2027-03-15'),
    lastHarvest: day('2027-03-21'),
    free: day('2027-03-24'),
    spans: [aSpan({ bedId: 'a', fromShare: 0.25, toShare: 0.5 })],
  }),
  isFree: false,
};
const farm: FarmSeason = {
  rules: someRules({ start, end: day('2027-05-10') }),
  today: day('2027-03-08'),
  beds: [bedA, bedB],
  plantings: [],
  crops: [carrot],
  clock: dayClock(dayNumber(start), 200),
  waterUse: (_, inBed, __, monday) => 10 + (monday - inBed) / 7,
  zoneNames: ['line', 'none'],
  wage_minor_per_h: 1800,
  labour_h_per_week: 6,
  overtimeMost_h: 2,
  overtimePremium_minor_per_h: 900,
  water_L_per_week: [300, Infinity],
  bench_m2: 0.6,
  mostCrops: null,
  caution: 0,
};
const rounded = (list: readonly number[] = []) => list.map((each) => Number(each.toFixed(6)));

describe('a farm’s season as weeks', () => {
  test('its limits, one figure for every week', () => {
    const { instance, grid } = buildInstance(farm);
    const all = (value: number) => new Array<number>(10).fill(value);
    expect(grid).toEqual({ firstMonday: dayNumber(start), weeks: 10 });
    expect(instance).toMatchObject({
      weeks: 10,
      wage_minor_per_h: 1800,
      labourCap_h: all(6),
      overtimeMost_h: 2,
      overtimePremium_minor_per_h: 900,
      waterCap_L: [all(300), all(Infinity)],
      benchCap_m2: all(0.6),
      mostCrops: 1,
    });
    expect(buildInstance({ ...farm, mostCrops: 3 }).instance.mostCrops).toBe(3);
    expect(instance.crops[0]).toMatchObject({
      name: 'Carrot',
      family: 0,
      shelf_weeks: 1,
      overhead_minor: 700,
      steadiness_minor: 0,
    });
  });
  test('options begin where sowing is not yet past and end where the bed is free within the season', () => {
    const { instance, dates, leftOut } = buildInstance(farm);
    expect(leftOut).toEqual([]);
    expect(instance.crops[0]?.options.map((option) => option.startWeek)).toEqual([3, 4, 5]);
    expect(dates[0]?.map(({ sow, inBed, firstHarvest, free }) => [sow, inBed, firstHarvest, free])[0]).toEqual([
      '2027-03-08',
      '2027-03-22',
      '2027-04-12',
      '2027-04-26',
    ]);
    const sown = buildInstance({ ...farm, crops: [{ ...carrot, timing: { ...carrot.timing, method: 'set' } }] });
    expect(sown.instance.crops[0]?.options.map((option) => option.startWeek)).toEqual([1, 2, 3, 4, 5]);
    const early = buildInstance({
      ...farm,
      today: day('2027-01-04'),
      crops: [{ ...carrot, timing: { ...carrot.timing, method: 'set' } }],
    });
    expect(early.instance.crops[0]?.options[0]?.startWeek).toBe(0);
  });
  test('an option by the square metre and week: harvest, hours, water, bench, costs', () => {
    const [option] = buildInstance(farm).instance.crops[0]?.options ?? [];
    expect(rounded(option?.harvest_per_m2)).toEqual([0, 0, 0, 7, 7]);
    expect(rounded(option?.labour_h_per_m2)).toEqual([0.11, 0.01, 0.01, 0.15, 0.2]);
    expect(option?.water_L_per_m2).toEqual([10, 11, 12, 13, 14]);
    expect(option?.bench_m2_per_m2).toEqual([0.03, 0.03]);
    expect(option?.cost_minor_per_m2).toBe(120);
  });
  test('what is asked for: standing orders by their mean, markets from dear to cheap, a week that an order touches in full', () => {
    expect(buildInstance(farm).instance.crops[0]?.demand).toEqual([
      { week: 4, contract: 2, contractPrice_minor: 400, penalty_minor: 100, tiers: [] },
      { week: 5, contract: 8, contractPrice_minor: 250, penalty_minor: 40, tiers: [] },
      {
        week: 6,
        contract: 2,
        contractPrice_minor: 400,
        penalty_minor: 100,
        tiers: [
          { cap: 1, price_minor: 300 },
          { cap: 3, price_minor: 150 },
        ],
      },
    ]);
    const market = carrot.orders.slice(2);
    expect(buildInstance({ ...farm, crops: [{ ...carrot, orders: market }] }).instance.crops[0]?.demand).toMatchObject([
      { week: 6, contract: 0, contractPrice_minor: 0, penalty_minor: 0 },
    ]);
  });
  test('a crop of which nothing can be proposed is named with its own reason', () => {
    const because = (change: Partial<CropFigures>, rules: Partial<FarmSeason['rules']> = {}) =>
      buildInstance({ ...farm, rules: { ...farm.rules, ...rules }, crops: [{ ...carrot, ...change }] }).leftOut[0]?.because;
    const frost = { lastFrost: day('2027-08-01') };
    const slow = { ...carrot.timing, window_days: 60 };
    const never = { ...carrot.timing, toHarvest: { ...carrot.timing.toHarvest, likely_days: 900 } };
    const reasons = [
      because({ orders: [] }),
      because({ needs: aCrop({ hardiness: 'tender' }) }, frost),
      because({ timing: slow }),
    ];
    expect(new Set(reasons).size).toBe(3);
    expect(reasons).not.toContain(undefined);
    expect(because({ timing: never })).toBe(reasons[2]);
    // some weeks free of frost are enough; nobody asking comes first
    expect(because({ needs: aCrop({ hardiness: 'tender' }) }, { lastFrost: day('2027-04-01') })).toBeUndefined();
    expect(because({ orders: [], timing: never })).toBe(reasons[0]);
    expect(buildInstance({ ...farm, crops: [{ ...carrot, orders: [] }] }).leftOut[0]?.cropId).toBe('carrot');
  });
  test('a fault in the crop’s own figures is not taken for a crop that never ripens', () => {
    const wrong = { ...carrot, timing: { ...carrot.timing, turnover_days: -1 } };
    expect(() => buildInstance({ ...farm, crops: [wrong] })).toThrow(/turnover_days/);
  });
});

describe('beds as pieces', () => {
  const built = () => buildInstance({ ...farm, plantings: [standing] });
  test('a bed is cut where it is split and where a planting that stands begins and ends', () => {
    expect(built().pieces).toEqual([
      { bedId: 'a', fromShare: 0, toShare: 0.25, area_m2: 1 },
      { bedId: 'a', fromShare: 0.25, toShare: 0.5, area_m2: 1 },
      { bedId: 'a', fromShare: 0.5, toShare: 1, area_m2: 2 },
      { bedId: 'b', fromShare: 0, toShare: 1, area_m2: 6 },
    ]);
    expect(
      built().instance.units.map(({ id, part, zone, block, position, area_m2 }) => [id, part, zone, block, position, area_m2]),
    ).toEqual([
      ['A-1 0-25', 0, 0, 2, 5, 1],
      ['A-1 25-50', 1, 0, 2, 5, 1],
      ['A-1 50-100', 2, 0, 2, 5, 2],
      ['B-1 0-100', 0, 1, 2, 6, 6],
    ]);
    const outside = buildInstance({ ...farm, beds: [{ ...bedA, splitAt: [-0.5, 0.5, 0.5 + 1e-9, 1.5] }] });
    expect(outside.pieces.map((piece) => piece.toShare)).toEqual([0.5, 1]);
    // what may be moved cuts nothing
    expect(buildInstance({ ...farm, plantings: [{ ...standing, isFree: true }] }).pieces).toHaveLength(3);
  });
  test('what stands takes the weeks it touches, of its own piece alone', () => {
    expect(built().instance.units.map((unit) => unit.fixed)).toEqual([
      [],
      [{ fromWeek: 1, toWeek: 4, family: 0, crop: 0 }],
      [],
      [],
    ]);
    const stranger = { ...standing, crop: aCrop({ cropId: 'vine', family: 'Vitaceae' }) };
    expect(buildInstance({ ...farm, plantings: [stranger] }).instance.units[1]?.fixed).toEqual([
      { fromWeek: 1, toWeek: 4, family: null, crop: null },
    ]);
  });
  test('weeks before a bed is built and after it is retired are taken; where whole weeks touch, the later begins when the earlier ends', () => {
    const fixed = (change: Partial<SeasonBed>, plantings: readonly PresentPlanting[] = []) =>
      buildInstance({ ...farm, plantings, beds: [{ ...bedB, ...change }] }).instance.units[0]?.fixed.map(
        ({ fromWeek, toWeek }) => [fromWeek, toWeek],
      );
    expect(fixed({ built: day('2027-03-17') })).toEqual([[0, 3]]);
    expect(fixed({ built: day('2027-03-01') })).toEqual([]);
    expect(fixed({ retired: day('2027-04-21') })).toEqual([[7, 10]]);
    expect(fixed({ retired: day('2027-06-01') })).toEqual([]);
    const at = (id: string, inBed: string, free: string): PresentPlanting => ({
      ...standing,
      id,
      inBed: day(inBed),
      free: day(free),
      spans: [aSpan({ bedId: 'b' })],
    });
    const later = at('late', '2027-03-24', '2027-04-07');
    expect(fixed({}, [later, at('early', '2027-03-10', '2027-03-24')])).toEqual([
      [1, 4],
      [4, 6],
    ]);
    expect(fixed({}, [at('within', '2027-03-10', '2027-03-17'), at('whole', '2027-03-08', '2027-03-22')])).toEqual([[1, 3]]);
    expect(fixed({}, [at('before', '2027-02-10', '2027-03-10')])).toEqual([[0, 2]]);
    expect(fixed({}, [at('after', '2027-05-05', '2027-06-10')])).toEqual([[9, 10]]);
  });
  test('a crop fits by depth, sun and support', () => {
    const fits = (needs: Partial<CropFigures['needs']>, bed: Partial<SeasonBed> = {}) =>
      buildInstance({ ...farm, beds: [{ ...bedB, ...bed }], crops: [{ ...carrot, needs: { ...carrot.needs, ...needs } }] })
        .instance.units[0]?.cropsFit.length === 1;
    expect([fits({ soilDepth_m: 0.4 }), fits({ soilDepth_m: 0.41 }), fits({ soilDepth_m: null })]).toEqual([true, false, true]);
    const light = { sun: 'light-shade' } as const;
    expect([fits({}, light), fits({ bearsShade: true }, light), fits({ bearsShade: true }, { sun: 'shade' })]).toEqual([
      false,
      true,
      false,
    ]);
    expect([fits({ needsTrellis: true }), fits({ needsTrellis: true }, { hasTrellis: true })]).toEqual([false, true]);
  });
  test('a family that stood there too lately is barred, and how long ago is kept', () => {
    const unit = (lastYear: number | null, gapYears: Record<string, number> = {}) =>
      buildInstance({
        ...farm,
        rules: { ...farm.rules, gapYears },
        beds: [{ ...bedB, lastYearOf: lastYear === null ? {} : { Apiaceae: lastYear } }],
      }).instance.units[0];
    expect([unit(2025)?.barredFamilies, unit(2024)?.barredFamilies, unit(null)?.barredFamilies]).toEqual([[0], [], []]);
    expect(unit(2025, { Apiaceae: 2 })?.barredFamilies).toEqual([]);
    expect([unit(2025)?.seasonsSince, unit(2027)?.seasonsSince, unit(null)?.seasonsSince]).toEqual([{ 0: 2 }, { 0: 1 }, {}]);
  });
  test('within the season a family comes once, one crop may follow itself where the grower says so, and one without a gap is free', () => {
    const rule = (gapYears: Record<string, number>, mayRepeatCrop = false) =>
      buildInstance({ ...farm, rules: { ...farm.rules, gapYears, mayRepeatCrop } }).instance.families;
    expect(rule({})).toEqual([{ name: 'Apiaceae', inSeason: 'once' }]);
    expect(rule({}, true)).toEqual([{ name: 'Apiaceae', inSeason: 'one-crop' }]);
    expect(rule({ Apiaceae: 0 }, true)).toEqual([{ name: 'Apiaceae', inSeason: 'free' }]);
  });
});

describe('what stands anyway', () => {
  const half = { ...standing, spans: [aSpan({ bedId: 'b', fromShare: 0.5, toShare: 1 })] };
  const load = (plantings: readonly PresentPlanting[]) => buildInstance({ ...farm, plantings }).instance.standing;
  test('brings and takes by week of 3 m2: harvest, hours, water of its own zone, bench before, direct costs', () => {
    const found = load([half]);
    expect(rounded(found?.harvest[0])).toEqual([0, 0, 42, 0, 0, 0, 0, 0, 0, 0]);
    expect(rounded(found?.labour_h)).toEqual([0, 0.33, 0.87, 0.18, 0, 0, 0, 0, 0, 0]);
    expect(rounded(found?.water_L[0])).toEqual(new Array(10).fill(0));
    // Mondays lie two days before the day in the bed
    expect(rounded(found?.water_L[1]?.slice(0, 5))).toEqual(
      rounded([0, 3 * (10 - 2 / 7), 3 * (10 + 5 / 7), 3 * (10 + 12 / 7), 0]),
    );
    expect(rounded(found?.bench_m2)).toEqual([0.09, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
    expect([found?.cost_minor, found?.cropsGrown]).toEqual([360, [0]]);
  });
  test('two beds are the sum of each; a crop without figures and a bed that is not there bring nothing', () => {
    const inA = { ...standing, id: 't', spans: [aSpan({ bedId: 'a', toShare: 0.5 })] };
    const [one, other, both] = [load([half]), load([inA]), load([half, inA])];
    expect(both?.cost_minor).toBe((one?.cost_minor ?? 0) + (other?.cost_minor ?? 0));
    expect(rounded(both?.harvest[0])).toEqual(rounded(one?.harvest[0]?.map((each, w) => each + (other?.harvest[0]?.[w] ?? 0))));
    const nothing = { cost_minor: 0, cropsGrown: [] };
    expect(load([{ ...half, crop: aCrop({ cropId: 'vine' }) }])).toMatchObject(nothing);
    expect(load([{ ...half, spans: [aSpan({ bedId: 'gone' })] }])?.cost_minor).toBe(0);
    const before = {
      ...half,
      inBed: day('2027-01-04'),
      firstHarvest: day('2027-01-11'),
      lastHarvest: day('2027-01-17'),
      free: day('2027-01-18'),
    };
    expect(load([before])).toMatchObject(nothing);
  });
  test('what was planted before the season counts from its first week on', () => {
    const early = {
      ...half,
      sow: null,
      inBed: day('2027-02-22'),
      firstHarvest: day('2027-03-01'),
      lastHarvest: day('2027-03-07'),
      free: day('2027-03-08'),
    };
    const found = load([early]);
    expect(rounded(found?.harvest[0])[0]).toBe(42);
    expect(rounded(found?.bench_m2)).toEqual(new Array(10).fill(0));
    expect(found?.water_L[1]?.[0]).toBeCloseTo(3 * 11, 9);
  });
  test('the present plan is all standing: nothing is left to propose', () => {
    const built = buildInstance(farm);
    const present = presentInstance(farm, built, [{ ...half, isFree: true }]);
    expect([present.units, present.weeks, present.standing?.cost_minor]).toEqual([[], 10, 360]);
  });
  test('an option is cut to the season; wholly outside it is none', () => {
    const whole = optionOfDates(
      carrot,
      { ...half, inBed: day('2027-02-22') },
      weekGrid(start, day('2027-05-10')),
      0,
      farm.waterUse,
    );
    expect([whole.startWeek, whole.harvest_per_m2.length]).toEqual([-1, 5]);
    const cut = withinSeason(whole, 3);
    expect([cut?.startWeek, cut?.harvest_per_m2.length, cut?.labour_h_per_m2.length, cut?.water_L_per_m2.length]).toEqual([
      0, 3, 3, 3,
    ]);
    expect(cut?.water_L_per_m2).toEqual(whole.water_L_per_m2.slice(1, 4));
    expect(withinSeason({ ...whole, startWeek: -5 }, 3)).toBeNull();
    expect(withinSeason({ ...whole, startWeek: 3 }, 3)).toBeNull();
    expect(withinSeason({ ...whole, startWeek: 2 }, 3)?.harvest_per_m2).toHaveLength(1);
  });
  test('a crop sown in place takes no bench; harvest after the bed is free falls in its last week; no bed is taken for less than a week', () => {
    const grid = weekGrid(start, day('2027-05-10'));
    const direct = optionOfDates(carrot, { ...half, sow: null }, grid, 1, farm.waterUse);
    expect(direct.bench_m2_per_m2).toEqual([]);
    expect(rounded(direct.harvest_per_m2)).toEqual([0, 12, 0]);
    expect(optionOfDates({ ...carrot, bench_m2_per_m2: 0 }, half, grid, 0, farm.waterUse).bench_m2_per_m2).toEqual([]);
    const outOfOrder = optionOfDates(carrot, { ...half, sow: addDays(half.inBed, 10) }, grid, 0, farm.waterUse);
    expect(outOfOrder).toEqual({ ...optionOfDates(carrot, half, grid, 0, farm.waterUse), bench_m2_per_m2: [] });
    const long = optionOfDates(carrot, { ...half, lastHarvest: addDays(half.firstHarvest, 27) }, grid, 0, farm.waterUse);
    expect(rounded(long.harvest_per_m2)).toEqual([0, 3.5, 10.5]);
    const short = optionOfDates(
      carrot,
      { ...half, firstHarvest: half.inBed, lastHarvest: half.inBed, free: half.inBed },
      grid,
      0,
      farm.waterUse,
    );
    expect(rounded(short.labour_h_per_m2)).toEqual([0.01 + 0.02 * 14 + 0.1 + 0.05]);
  });
});

describe('a plan by name', () => {
  test('a planting has its piece, crop and dates; what the plan’s numbers do not name is left out', () => {
    const built = buildInstance(farm);
    const key = planKey(farm, built);
    expect(key.cropIds).toEqual(['carrot']);
    const [first, ...rest] = proposedPlantings(key, [
      [],
      [
        { crop: 0, option: 1 },
        { crop: 0, option: 9 },
        { crop: 4, option: 0 },
      ],
    ]);
    expect(first).toEqual({
      key: 'a:500:2027-03-29',
      cropId: 'carrot',
      bedId: 'a',
      fromShare: 0.5,
      toShare: 1,
      area_m2: 2,
      dates: built.dates[0]?.[1],
    });
    expect(rest).toEqual([]);
    expect(proposedPlantings(key, [[], [], [], [{ crop: 0, option: 0 }]])).toEqual([]);
  });
  test('only what is free can be changed, span by span', () => {
    const spans = [aSpan({ bedId: 'a', fromShare: 0.25 }), aSpan({ bedId: 'b' })];
    expect(freeSpans([standing, { ...standing, isFree: true, spans }])).toEqual([
      { plantingId: 's', cropId: 'carrot', bedId: 'a', fromShare: 0.25, toShare: 1, inBed: '2027-03-10', free: '2027-03-24' },
      { plantingId: 's', cropId: 'carrot', bedId: 'b', fromShare: 0, toShare: 1, inBed: '2027-03-10', free: '2027-03-24' },
    ]);
  });
  test('what rules beds out is counted by its own cause, a bed under several', () => {
    const beds = [
      bedB,
      { ...bedB, soilDepth_m: 0.1 },
      { ...bedB, soilDepth_m: 0.1, sun: 'shade' as const },
      { ...bedB, sun: 'light-shade' as const },
      { ...bedB, lastYearOf: { Apiaceae: 2026 } },
      { ...bedB, hasTrellis: true },
    ];
    const of = (needs: Partial<CropFigures['needs']>) =>
      ruledOut({ ...farm, beds, crops: [{ ...carrot, needs: { ...carrot.needs, ...needs } }] })[0];
    expect(of({})).toEqual({ cropId: 'carrot', beds: 6, fit: 2, tooShallow: 2, tooDark: 2, noSupport: 0, resting: 1 });
    expect(of({ needsTrellis: true })).toMatchObject({ fit: 1, noSupport: 5 });
    expect(of({ bearsShade: true, soilDepth_m: null })).toMatchObject({ fit: 4, tooShallow: 0, tooDark: 1 });
    expect(of({ soilDepth_m: 0.4 })).toMatchObject({ tooShallow: 2 });
  });
});

describe('a plan in figures by hand', () => {
  const season = () => buildInstance(farm).instance;
  const outcome: PlanOutcome = {
    margin_minor: 1000.4,
    revenue_minor: 5000.4,
    penalty_minor: 200.4,
    direct_minor: 600.4,
    wage_minor: 2000.3,
    overtime_minor: 100.3,
    overhead_minor: 700.4,
    steadiness_minor: 0,
    labour_h: [5, 8, 6, 0, 0, 0, 0, 0, 0, 0],
    water_L: [[10, 20], [5]],
    bench_m2: [],
    bedWeeks_m2: 0,
    faults: [],
    crops: [
      {
        crop: 0,
        area_m2: 2,
        harvest: [0, 7, 7],
        sales: [
          { week: 4, amount: 2, price_minor: 400, sold: 'contract' },
          { week: 6, amount: 1, price_minor: 300, sold: 'market' },
        ],
        short: [{ week: 5, amount: 3 }],
        contract: 12,
        contractSold: 9,
        revenue_minor: 1100.4,
      } as unknown as PlanOutcome['crops'][number],
    ],
  };
  test('each part rounded once; overtime is what lies over the cap; orders met by their worth', () => {
    const figures = figuresOfPlan(season(), outcome, 44);
    // orders worth 2 x 500, 8 x 290 and 2 x 500; 3 of the second missed, 870
    expect(figures).toMatchObject({
      margin_minor: 1000,
      sales_minor: 5000,
      missed_minor: 200,
      direct_minor: 600,
      wages_minor: 2101,
      overhead_minor: 700,
      hours_h: 19,
      overtime_h: 2,
      water_L: 35,
      bedWeeks_m2: 44,
      crops: 1,
      labour_h_by_week: outcome.labour_h,
      water_L_by_week: outcome.water_L,
      byCrop: [{ crop: 0, area_m2: 2, harvest: 14, sold: 3, ordered: 12, delivered: 9, sales_minor: 1100 }],
    });
    expect(figures.ordersMet_share).toBeCloseTo(1 - 870 / 4320, 12);
    expect(figures.labourCap_h_by_week[0]).toBe(6);
    expect(figures.waterCap_L_by_week.map((cap) => cap[0])).toEqual([300, null]);
    expect(asRead(explainPlanMargin(figures))).toEqual([
      'sales = 5000 minor (computed)',
      'wages = 2101 minor (computed)',
      'direct = 600 minor (entry)',
      'overhead = 700 minor (entry)',
      'missed = 200 minor (entry)',
      'sales - wages - direct - overhead - missed -> 1000 minor',
      'result 1000 minor, notes 2',
    ]);
  });
  test('without orders all of them are met; a crop without harvest is not grown', () => {
    const instance = season();
    const none = { ...instance, crops: instance.crops.map((crop) => ({ ...crop, demand: [] })), labourCap_h: [Infinity] };
    const crops = outcome.crops.map((crop) => ({ ...crop, short: [], harvest: [0, 0] }));
    const figures = figuresOfPlan(none, { ...outcome, crops }, 0);
    expect([figures.ordersMet_share, figures.crops, figures.labourCap_h_by_week]).toEqual([1, 0, [null]]);
  });
  test('how much better a plan could be, each figure a whole one', () => {
    expect(asRead(explainMostBetter({ margin_minor: 1000.4, bound_minor: 1200.6 }))).toEqual([
      'bound = 1201 minor (computed)',
      'plan = 1000 minor (computed)',
      'bound - plan -> 200 minor',
      'result 200 minor, notes 1',
    ]);
  });
  test('evapotranspiration by week of the year, the last days in the last week, nothing where nothing is known', () => {
    const place = { latitude_deg: 47.6, elevation_m: 10, windHeight_m: 2, krs: 0.16 };
    const of = (text: string, tmax_C: number | null) => aWeatherDay(text, { tmax_C });
    const weeks = weeklyEto_mm_per_day(
      [of('2024-01-07', 15), of('2023-01-07', 25), of('2024-01-08', null), of('2024-12-31', 12), of('2023-12-31', 12)],
      place,
    );
    expect(weeks).toHaveLength(53);
    const [only] = weeklyEto_mm_per_day([of('2024-01-07', 15)], place);
    const [other] = weeklyEto_mm_per_day([of('2023-01-07', 25)], place);
    expect(weeks[0]).toBeCloseTo(((only ?? 0) + (other ?? 0)) / 2, 12);
    expect(weeks.flatMap((each, week) => (each === null ? [] : [week]))).toEqual([0, 52]);
  });
});
