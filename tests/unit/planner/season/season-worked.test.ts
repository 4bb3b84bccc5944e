import { describe, expect, test } from 'vitest';
import { addDays, dateOfDay, dayNumber, daysBetween, type IsoDate } from '../../../../planner/calendar.ts';
import { benchByWeek } from '../../../../planner/season/bench.ts';
import { checkPlan } from '../../../../planner/season/check-plan.ts';
import { balanceByWeek } from '../../../../planner/season/demand.ts';
import { classWhenPlanted, springWindow } from '../../../../planner/season/frost-windows.ts';
import { whatFits } from '../../../../planner/season/gap-suggestions.ts';
import {
  clockOf,
  dayClock,
  dayLengthClock,
  dayReaching,
  dayToStart,
  madeBetween,
} from '../../../../planner/season/growth-clock.ts';
import { harvestRange } from '../../../../planner/season/harvest-range.ts';
import { harvestByWeek, harvestForm } from '../../../../planner/season/harvest-spread.ts';
import { heatClock, heatRecord } from '../../../../planner/season/heat-record.ts';
import { calibratedHeat_C_days, learnedFrom, restsOn } from '../../../../planner/season/learned.ts';
import { maturityOf, timingOf } from '../../../../planner/season/maturity.ts';
import { clashesOf, gapsOf, occupancy, type Stay } from '../../../../planner/season/occupancy.ts';
import { datesAround } from '../../../../planner/season/planting-dates.ts';
import { plantsOnSpan } from '../../../../planner/season/plants-on-span.ts';
import { comparePlans, type PresentSpan, type ProposedPlanting } from '../../../../planner/season/proposal/compare-plans.ts';
import { plannedYield_per_m2 } from '../../../../planner/season/proposal/crop-figures.ts';
import { learnedHours, USUAL_HOURS } from '../../../../planner/season/proposal/learned-hours.ts';
import { weekFrom, weekGrid, weekOfDay } from '../../../../planner/season/proposal/week-grid.ts';
import { weekSupply_L } from '../../../../planner/season/proposal/week-supply.ts';
import { type Course, replan } from '../../../../planner/season/replan.ts';
import { diseaseOfName, gapOfFamily_years, mayReturn } from '../../../../planner/season/rotation.ts';
import { shortDays } from '../../../../planner/season/short-days.ts';
import { sowingsByHeat, sowingsEvery } from '../../../../planner/season/succession.ts';
import { inWeek, type TaskPlanting, tasksOf } from '../../../../planner/season/tasks.ts';
import { trayNeed, usualCell_L, usualTray } from '../../../../planner/season/trays.ts';
import { aCrop, aPlan, aPlanBed, aPlanting, aSpan, day, someRules } from '../../../builders/a-plan.ts';

describe('the growth clock', () => {
  const clock = clockOf(100, [2, 0, 3, 5]);
  test('adds up what each day makes', () => {
    expect([...clock.made]).toEqual([0, 2, 2, 5, 10]);
    expect(madeBetween(clock, 100, 104)).toBe(10);
    expect(madeBetween(clock, 101, 103)).toBe(3);
    expect(madeBetween(clock, 0, 102)).toBe(2);
    expect(madeBetween(clock, 103, 999)).toBe(5);
  });
  test('finds the first day on which enough was made, and the last on which it can begin', () => {
    expect([2, 2.5, 5, 10, 10.1].map((need) => dayReaching(clock, 100, need))).toEqual([101, 103, 103, 104, null]);
    expect(dayReaching(clock, 103, 5)).toBe(104);
    expect(dayReaching(clock, 999, 1)).toBeNull();
    expect([5, 8, 10, 10.1].map((need) => dayToStart(clock, 104, need))).toEqual([103, 102, 100, null]);
  });
  test('of day length counts the days that are long enough', () => {
    expect([...dayLengthClock(0, [9.9, 10, 12]).made]).toEqual([0, 0, 1, 2]);
    expect([...dayClock(5, 3).made]).toEqual([0, 1, 2, 3]);
  });
});

describe('a harvest by week', () => {
  const spread = (form: 'even' | 'at-once' | 'peak', first: string, last: string) =>
    harvestByWeek({ firstHarvest: day(first), lastHarvest: day(last), form, total: { low: 50, typical: 100, high: 200 } });
  test('spread evenly follows the days of each week', () => {
    // 2027-06-07 is a Monday
    expect(spread('even', '2027-06-07', '2027-06-20')).toEqual([
      { week: '2027-06-07', low: 25, typical: 50, high: 100 },
      { week: '2027-06-14', low: 25, typical: 50, high: 100 },
    ]);
    expect(spread('even', '2027-06-10', '2027-06-13').map((week) => week.week)).toEqual(['2027-06-07']);
    expect(spread('even', '2027-06-13', '2027-06-14').map((week) => week.typical)).toEqual([50, 50]);
  });
  test('of a crop cut at once is in within two weeks, however long it may stand', () => {
    expect(spread('at-once', '2027-06-07', '2027-08-01').map((week) => week.typical)).toEqual([50, 50]);
    expect(spread('at-once', '2027-06-07', '2027-06-13').map((week) => week.typical)).toEqual([100]);
  });
  test('with a peak rises to two fifths of its time and falls after', () => {
    const weeks = spread('peak', '2027-06-07', '2027-07-11').map((week) => week.typical);
    // five weeks: x^2 / 0.4 up to 0.4, 1 - (1 - x)^2 / 0.6 after
    for (const [at, typical] of [10, 30, 33 + 1 / 3, 20, 6 + 2 / 3].entries()) expect(weeks[at]).toBeCloseTo(typical, 9);
  });
  test('has its form by the kind of crop and the length of its window', () => {
    expect([14, 15].map((days) => harvestForm('nightshade', days))).toEqual(['at-once', 'peak']);
    expect([21, 22].map((days) => harvestForm('brassica', days))).toEqual(['at-once', 'even']);
    expect(harvestForm('salad', 21)).toBe('even');
  });
});

test('what is wanted and expected meets week by week, crop by crop, unit by unit', () => {
  const wanted = (cropId: string, unit: string, from: string, to: string) => ({
    cropId,
    unit,
    from: day(from),
    to: day(to),
    perWeek: 5,
  });
  const rows = balanceByWeek(
    [
      wanted('kale', 'kg', '2027-06-09', '2027-06-14'),
      wanted('beet', 'kg', '2027-06-07', '2027-06-07'),
      wanted('kale', 'bunch', '2027-06-07', '2027-06-07'),
    ],
    [
      { cropId: 'kale', unit: 'kg', weeks: [{ week: day('2027-06-14'), low: 1, typical: 2, high: 3 }] },
      { cropId: 'kale', unit: 'kg', weeks: [{ week: day('2027-06-14'), low: 10, typical: 20, high: 30 }] },
    ],
  );
  expect(rows).toEqual([
    { cropId: 'beet', unit: 'kg', week: '2027-06-07', wanted: 5, low: 0, typical: 0, high: 0, over: -5 },
    { cropId: 'kale', unit: 'bunch', week: '2027-06-07', wanted: 5, low: 0, typical: 0, high: 0, over: -5 },
    { cropId: 'kale', unit: 'kg', week: '2027-06-07', wanted: 5, low: 0, typical: 0, high: 0, over: -5 },
    { cropId: 'kale', unit: 'kg', week: '2027-06-14', wanted: 5, low: 11, typical: 22, high: 33, over: 17 },
  ]);
});

test('the bench is what stands on its fullest day, and who', () => {
  const tray = (plantingId: string, from: string, to: string) => ({ plantingId, from: day(from), to: day(to), bench_m2: 0.5 });
  expect(benchByWeek([tray('b', '2027-03-08', '2027-03-10'), tray('a', '2027-03-07', '2027-03-09')])).toEqual([
    { week: '2027-03-01', bench_m2: 0.5, plantingIds: ['a'] },
    { week: '2027-03-08', bench_m2: 1, plantingIds: ['a', 'b'] },
  ]);
});

describe('early and late', () => {
  const start = dayNumber(day('2027-01-01'));
  const every = (heat: number) =>
    clockOf(
      start,
      Array.from({ length: 300 }, () => heat),
    );
  const input = {
    inBed: day('2027-05-01'),
    likely: day('2027-07-10'),
    toHarvest: { early_days: 75, likely_days: 70, late_days: 65 },
    normals: every(10),
    years: [every(10), every(10), every(10)],
  };
  test('never cross the likely date', () => {
    expect(harvestRange({ ...input, normals: null })).toMatchObject({ early: '2027-07-10', late: '2027-07-10', years: 0 });
    expect(harvestRange(input)).toMatchObject({ from: 'weather-record', early: '2027-07-10', late: '2027-07-10', years: 3 });
  });
  test('without heat, or where too few years ripen it, are those of the varieties', () => {
    expect(harvestRange({ ...input, normals: every(0) }).from).toBe('varieties');
    expect(harvestRange({ ...input, years: [every(10), every(10), every(1)] }).from).toBe('varieties');
  });
});

describe('heat on record', () => {
  const rule = { method: 'mean-against-base', base_C: 10, upper_C: null } as const;
  /** Day n of a year has n degrees over the base. */
  const year = (of: number, days = 365, from = 0) =>
    Array.from({ length: days }, (_, at) => {
      const date = addDays(`${of}-01-01` as IsoDate, at + from);
      return { date, tmin_C: 10 + at + from + 1, tmax_C: 10 + at + from + 1 };
    });
  test('keeps 29 February free in other years, and gives it the day before', () => {
    const record = heatRecord(year(2025), rule);
    // 28 February is day 59, 1 March day 60 of a common year and place 61 of a leap year
    expect([57, 58, 59, 60, 61].map((at) => record?.normals_C_days[at])).toEqual([58, 59, 59, 60, 61]);
    expect(record?.normals_C_days).toHaveLength(366);
    expect(record?.normals_C_days[365]).toBe(365);
    const clock = heatClock(record?.normals_C_days ?? [], 0, [day('2027-02-28'), day('2027-03-01'), day('2028-02-29')]);
    expect([...clock.made]).toEqual([0, 59, 119, 178]);
  });
  test('is the mean of its years, each of them kept that has at most twenty gaps', () => {
    const record = heatRecord(
      [...year(2026, 340), ...year(2025).map((each) => ({ ...each, tmin_C: each.tmin_C + 4, tmax_C: each.tmax_C + 4 }))],
      rule,
    );
    expect(record?.normals_C_days[0]).toBe(3);
    expect(record?.normals_C_days[360]).toBe(364);
    expect([...(record?.years.keys() ?? [])]).toEqual([2025]);
    expect([...(heatRecord([...year(2025), ...year(2024, 346)], rule)?.years.keys() ?? [])]).toEqual([2024, 2025]);
    expect(heatRecord(year(2025, 344), rule)).toBeNull();
    expect(heatRecord(year(2025, 345), rule)).not.toBeNull();
  });
});

describe('what was learned', () => {
  const seen = {
    cropId: 'kale',
    varietyId: null as string | null,
    method: 'direct' as 'direct' | 'transplant',
    unit: 'kg',
    area_m2: 2,
    wentIn: day('2026-04-01') as IsoDate | null,
    firstPicked: day('2026-06-01') as IsoDate | null,
    lastPicked: day('2026-06-21') as IsoDate | null,
    harvested: 6 as number | null,
  };
  test('is told by crop, variety, way of planting and unit, in order', () => {
    const found = learnedFrom([
      { ...seen, method: 'transplant' },
      { ...seen, varietyId: 'red' },
      seen,
      { ...seen, unit: 'bunch' },
      { ...seen, cropId: 'beet' },
    ]);
    expect(found.map((each) => [each.cropId, each.varietyId, each.method, each.unit])).toEqual([
      ['beet', null, 'direct', 'kg'],
      ['kale', null, 'direct', 'bunch'],
      ['kale', null, 'direct', 'kg'],
      ['kale', null, 'transplant', 'kg'],
      ['kale', 'red', 'direct', 'kg'],
    ]);
  });
  test('leaves out what was not written down or cannot be', () => {
    const of = (change: Partial<typeof seen>) => learnedFrom([{ ...seen, ...change }])[0];
    expect(of({})).toMatchObject({ toHarvest_days: { mean: 61 }, window_days: { mean: 20 }, yield_per_m2: { mean: 3 } });
    expect(of({ wentIn: null })).toMatchObject({ toHarvest_days: null, window_days: { mean: 20 }, yield_per_m2: null });
    expect(of({ firstPicked: null })).toMatchObject({ toHarvest_days: null, window_days: null });
    expect(of({ wentIn: day('2026-06-01') })?.toHarvest_days).toBeNull();
    expect(of({ lastPicked: day('2026-05-31') })?.window_days).toBeNull();
    expect(of({ lastPicked: day('2026-06-01') })?.window_days?.mean).toBe(0);
    expect(of({ area_m2: 0 })?.yield_per_m2).toBeNull();
  });
  test('says what it rests on', () => {
    const one = { least: 1, mean: 1, most: 1, plantings: 1, years: 1 };
    expect([restsOn(one), restsOn({ ...one, plantings: 3, years: 2 })]).toEqual([
      '1 planting in 1 year',
      '3 plantings in 2 years',
    ]);
    expect(calibratedHeat_C_days([600, 700, 800])).toBe(700);
  });
});

describe('days to maturity', () => {
  const facts = (known: Readonly<Record<string, number | string>>) =>
    new Map(
      Object.entries(known).map(([name, value]) => [
        name,
        {
          name,
          varietyId: null,
          number: typeof value === 'number' ? value : null,
          words: typeof value === 'string' ? value : null,
          origin: 'own' as const,
          source: 'own',
          ofVariety: false,
        },
      ]),
    );
  const kale = {
    maturity_min_days: 50,
    maturity_max_days: 61,
    weeks_indoors_min: 4,
    weeks_indoors_max: 6,
    harvest_window_days: 40,
  };
  test('counted from seed are shorter for a transplant by its time indoors', () => {
    expect(maturityOf({ maturity_days: 60, countedFrom: 'seed', indoors_days: 20 })).toEqual({
      inBed_days: 40,
      fromSeed_days: 60,
    });
    expect(maturityOf({ maturity_days: 60, countedFrom: 'transplant', indoors_days: 20 })).toEqual({
      inBed_days: 60,
      fromSeed_days: 80,
    });
    expect(timingOf(facts({ ...kale, days_counted_from: 'seed' }), 'transplant', 'Kale')).toEqual({
      method: 'transplant',
      indoors_days: 35,
      potOn_days: null,
      toHarvest: { early_days: 15, likely_days: 21, late_days: 26 },
      window_days: 40,
      turnover_days: 3,
    });
    expect(timingOf(facts({ ...kale, days_counted_from: 'seed' }), 'direct', 'Kale', 5)).toMatchObject({
      indoors_days: 0,
      toHarvest: { early_days: 50, likely_days: 56, late_days: 61 },
      turnover_days: 5,
    });
  });
  test('counted from setting out are longer for a sowing by the time indoors', () => {
    const counted = facts({ ...kale, days_counted_from: 'transplant' });
    expect(timingOf(counted, 'transplant', 'Kale').toHarvest).toEqual({ early_days: 50, likely_days: 56, late_days: 61 });
    expect(timingOf(counted, 'direct', 'Kale').toHarvest).toEqual({ early_days: 85, likely_days: 91, late_days: 96 });
  });
  test('of one figure have no range, and one figure of weeks stands for both', () => {
    const { maturity_max_days: _, weeks_indoors_min: __, ...one } = kale;
    expect(timingOf(facts({ ...one, days_counted_from: 'planting' }), 'set', 'Kale')).toMatchObject({
      indoors_days: 0,
      toHarvest: { early_days: 50, likely_days: 50, late_days: 50 },
    });
    expect(timingOf(facts({ ...one, days_counted_from: 'transplant' }), 'transplant', 'Kale').indoors_days).toBe(42);
    const { weeks_indoors_max: ___, ...least } = kale;
    expect(timingOf(facts({ ...least, days_counted_from: 'transplant' }), 'transplant', 'Kale').indoors_days).toBe(28);
  });
});

describe('beds in time', () => {
  const stay = (plantingId: string, from_day: number, to_day: number, fromShare = 0, toShare = 1): Stay => ({
    plantingId,
    bedId: 'b',
    fromShare,
    toShare,
    from_day,
    to_day,
  });
  test('two stays clash in the days and the piece both want', () => {
    expect(clashesOf([stay('q', 5, 20, 0.5, 1), stay('p', 0, 10, 0, 0.75)])).toEqual([
      { bedId: 'b', first: 'p', second: 'q', from_day: 5, to_day: 10, share: 0.25 },
    ]);
    expect(clashesOf([stay('p', 0, 20), stay('q', 5, 10)])[0]?.to_day).toBe(10);
    expect(clashesOf([stay('p', 0, 20), stay('p', 5, 10)])).toEqual([]);
    expect(clashesOf([stay('p', 0, 20), { ...stay('q', 5, 10), bedId: 'c' }])).toEqual([]);
    expect(clashesOf([stay('p', 0, 20), stay('q', 5, 5)])).toEqual([]);
    expect(clashesOf([stay('p', 0, 20), stay('q', 20, 25)])).toEqual([]);
  });
  test('gaps shorter than asked for are none; the other half of a bed leaves them be', () => {
    const span = { bedId: 'b', fromShare: 0, toShare: 0.5 };
    const stays = [stay('p', 10, 20), stay('q', 25, 30), stay('r', 0, 50, 0.5, 1), { ...stay('s', 0, 50), bedId: 'c' }];
    expect(gapsOf(stays, span, { from_day: 0, to_day: 40 }, 6)).toEqual([
      { from_day: 0, to_day: 10 },
      { from_day: 30, to_day: 40 },
    ]);
    expect(gapsOf(stays, span, { from_day: 0, to_day: 40 }, 5)).toHaveLength(3);
    expect(gapsOf(stays, span, { from_day: 12, to_day: 18 })).toEqual([]);
  });
  test('a planting keeps its bed for growth, harvest and turnover', () => {
    expect(occupancy({ inBed: day('2027-05-01'), toHarvest_days: 60, window_days: 10, turnover_days: 3 })).toEqual({
      firstHarvest: '2027-06-30',
      lastHarvest: '2027-07-10',
      free: '2027-07-13',
    });
  });
  test('seedlings go to a larger pot only between sowing and setting out', () => {
    const timing = {
      method: 'transplant' as const,
      indoors_days: 30,
      potOn_days: 14 as number | null,
      toHarvest: { early_days: 1, likely_days: 1, late_days: 1 },
      window_days: 5,
      turnover_days: 2,
    };
    const dates = datesAround(timing, 1000, 1060);
    expect(dates).toEqual({
      sow: dateOfDay(970),
      potOn: dateOfDay(984),
      inBed: dateOfDay(1000),
      firstHarvest: dateOfDay(1060),
      lastHarvest: dateOfDay(1065),
      free: dateOfDay(1067),
    });
    expect(datesAround({ ...timing, potOn_days: 30 }, 1000, 1060).potOn).toBeNull();
    expect(datesAround({ ...timing, method: 'set' }, 1000, 1060)).toMatchObject({ sow: null, potOn: null });
  });
  test('a whole rectangle holds what its outline holds, a third of it a third, a point nothing', () => {
    const outline = { shape: 'rectangle' as const, length_m: 3, width_m: 1 };
    const of = (fromShare: number, toShare: number, spacing_m = 0.25) =>
      plantsOnSpan({ outline, fromShare, toShare, spacing: { pattern: 'square', spacing_m } });
    expect([of(0, 1), of(0, 1 / 3), of(1 / 3, 1), of(0.5, 0.5)]).toEqual([48, 16, 32, 0]);
    expect(
      plantsOnSpan({ outline, fromShare: 0, toShare: 1, spacing: { pattern: 'square', spacing_m: 0.25 }, edgeMargin_m: 0 }),
    ).toBe(65);
  });
});

describe('the checker', () => {
  const codes = (...parts: Parameters<typeof aPlan>) => checkPlan(aPlan(...parts)).map(({ code, weight }) => `${code} ${weight}`);
  const span = (change: Parameters<typeof aSpan>[0]) => codes({ plantings: [aPlanting({ spans: [aSpan(change)] })] });
  test('bars pieces beyond the bed and more plants than fit, as many as fit are none', () => {
    for (const change of [{ fromShare: -0.1 }, { toShare: 1.1 }, { fromShare: 0.5, toShare: 0.5 }])
      expect(span(change)).toContain('bad-share clash');
    expect(span({ plants: 120 })).toEqual([]);
    expect(span({ plants: 500, mostPlants: null })).toEqual([]);
  });
  test('takes a bed only while it stands', () => {
    const { inBed, free } = aPlanting();
    const bed = (change: Parameters<typeof aPlanBed>[0]) => codes({ beds: [aPlanBed(change)] });
    expect(bed({ built: inBed, retired: free })).toEqual([]);
    expect(bed({ built: addDays(inBed, 1) })).toEqual(['no-such-bed clash']);
    expect(bed({ retired: addDays(free, -1) })).toEqual(['no-such-bed clash']);
  });
  test('looks at soil, support and sun', () => {
    const with_ = (bed: Parameters<typeof aPlanBed>[0], crop: Parameters<typeof aCrop>[0]) =>
      codes({ beds: [aPlanBed(bed)], plantings: [aPlanting({ crop: aCrop(crop) })] });
    expect(with_({ soilDepth_m: 0.2 }, {})).toEqual([]);
    expect(with_({ soilDepth_m: 0 }, { soilDepth_m: null })).toEqual([]);
    expect(with_({ hasTrellis: true }, { needsTrellis: true })).toEqual([]);
    expect(with_({ sun: 'light-shade' }, {})).toEqual(['too-little-sun risk']);
    expect(with_({ sun: 'light-shade' }, { bearsShade: true })).toEqual([]);
    expect(with_({ sun: 'shade' }, { bearsShade: true })).toEqual(['too-little-sun barred']);
  });
  test('counts the years of a family, the grower’s own before the usual three', () => {
    const back = (last: number, gapYears: Record<string, number> = {}) =>
      codes({ beds: [aPlanBed({ lastYearOf: { Apiaceae: last } })], rules: someRules({ gapYears }) });
    expect([back(2024), back(2025)]).toEqual([[], ['rotation-years barred']]);
    expect([back(2025, { Apiaceae: 2 }), back(2024, { Apiaceae: 4 })]).toEqual([[], ['rotation-years barred']]);
    expect([gapOfFamily_years('Poaceae'), gapOfFamily_years('Apiaceae')]).toEqual([1, 3]);
    expect(mayReturn(2027, null, 9)).toBe(true);
  });
  test('sees rotation within the season whatever the order of the list, on the same piece only', () => {
    const first = aPlanting();
    const later = aPlanting({ id: 'p2', inBed: first.free });
    expect(codes({ plantings: [later, first] })).toEqual(['rotation-season barred']);
    const left = aPlanting({ spans: [aSpan({ toShare: 0.5 })] });
    const right = aPlanting({ id: 'p2', inBed: first.free, spans: [aSpan({ fromShare: 0.5 })] });
    expect(codes({ plantings: [left, right] })).toEqual([]);
    expect(codes({ plantings: [first, later], rules: someRules({ gapYears: { Apiaceae: 0 } }) })).toEqual([]);
    const other = aPlanting({ id: 'p2', crop: aCrop({ cropId: 'parsnip' }), inBed: first.free });
    expect(codes({ plantings: [first, other], rules: someRules({ mayRepeatCrop: true }) })).toEqual(['rotation-season barred']);
  });
  test('sees dates out of order or outside the season, and what has no bed', () => {
    const of = (change: Parameters<typeof aPlanting>[0]) => codes({ plantings: [aPlanting(change)] });
    const { inBed } = aPlanting();
    expect(of({ sow: addDays(inBed, 1) })).toEqual(['dates-out-of-order clash']);
    expect(of({ lastHarvest: addDays(inBed, 69) })).toEqual(['dates-out-of-order clash']);
    expect(of({ free: addDays(inBed, 97) })).toEqual(['dates-out-of-order clash']);
    expect(of({ firstHarvest: inBed, lastHarvest: inBed, free: inBed })).toEqual(['dates-out-of-order clash']);
    expect(of({ spans: [] })).toEqual(['unplaced note']);
    const edge = (date: string) => codes({ plantings: [aPlanting({ inBed: day(date), crop: aCrop({ hardiness: null }) })] });
    expect([edge('2027-01-01'), edge('2028-01-01')]).toEqual([[], ['outside-season clash']]);
  });
  test('waits for frost by the class of the crop, not under cover and not before autumn of its own year', () => {
    const of = (hardiness: 'hardy' | 'half-hardy' | 'tender' | 'very-tender', inBed: string, covered = false) =>
      codes({
        beds: [aPlanBed({ isCovered: covered })],
        plantings: [aPlanting({ crop: aCrop({ hardiness }), inBed: day(inBed) })],
      });
    // last frost 10 April: half-hardy from 27 March, very tender two weeks after it
    expect([of('half-hardy', '2027-03-27'), of('half-hardy', '2027-03-26')]).toEqual([[], ['frost-spring risk']]);
    expect([of('hardy', '2027-03-13'), of('hardy', '2027-03-12')]).toEqual([[], ['frost-spring risk']]);
    expect(of('half-hardy', '2027-03-26', true)).toEqual([]);
    expect(springWindow('very-tender', day('2027-04-10'))).toEqual({ earliest: '2027-04-24', latest: '2027-04-24' });
    expect([classWhenPlanted('cucumber', 'tender', true), classWhenPlanted('cucumber', 'tender', false)]).toEqual([
      'very-tender',
      'tender',
    ]);
    // first frost 5 November, hard frost 25 November: ninety-eight days to the last harvest
    expect([of('tender', '2027-07-30'), of('tender', '2027-07-31')]).toEqual([[], ['frost-autumn risk']]);
    expect([of('half-hardy', '2027-08-19'), of('half-hardy', '2027-08-20')]).toEqual([[], ['frost-autumn risk']]);
    expect(of('hardy', '2027-08-25')).toEqual([]);
  });
  test('tells warmth by class, where the record knows it', () => {
    const warmFrom = { hardy: day('2027-03-01'), 'half-hardy': day('2027-06-01'), tender: null, 'very-tender': null };
    expect(codes({ rules: someRules({ warmFrom }) })).toEqual(['too-cool risk']);
    expect(codes({ rules: someRules({ warmFrom: { ...warmFrom, 'half-hardy': day('2027-05-10') } }) })).toEqual([]);
  });
  test('lists by planting, bed and kind', () => {
    const bad = (id: string) =>
      aPlanting({ id, crop: aCrop({ family: id, needsTrellis: true }), spans: [aSpan({ bedId: `bed-${id}`, plants: 500 })] });
    const beds = ['b', 'a'].map((id) => aPlanBed({ id: `bed-${id}` }));
    expect(
      checkPlan(aPlan({ beds, plantings: [bad('b'), bad('a')] })).map(({ plantingId, code }) => `${plantingId} ${code}`),
    ).toEqual(['a no-trellis', 'a too-many-plants', 'b no-trellis', 'b too-many-plants']);
  });
});

test('what fits a gap leaves out what is barred there or does not ripen, the most wanted first', () => {
  const timing = {
    method: 'direct' as const,
    indoors_days: 0,
    potOn_days: null,
    toHarvest: { early_days: 40, likely_days: 40, late_days: 40 },
    window_days: 7,
    turnover_days: 3,
  };
  const candidate = (cropId: string, stillWanted: number, change: Parameters<typeof aCrop>[0] = {}, likely_days = 40) => ({
    crop: aCrop({ cropId, family: cropId, hardiness: null, ...change }),
    timing: { ...timing, toHarvest: { ...timing.toHarvest, likely_days } },
    stillWanted,
  });
  const found = whatFits({
    bed: aPlanBed(),
    fromShare: 0,
    toShare: 1,
    gap: { from_day: dayNumber(day('2027-05-01')), to_day: dayNumber(day('2027-06-20')) },
    candidates: [
      candidate('a', 0),
      candidate('b', 0, {}, 30),
      candidate('c', 9),
      candidate('climber', 9, { needsTrellis: true }),
      candidate('again', 9, { family: 'Fabaceae' }),
      candidate('slow', 9, {}, 41),
    ],
    rules: someRules(),
    clock: dayClock(dayNumber(day('2027-01-01')), 500),
    others: [
      aPlanting({
        id: 'bean',
        crop: aCrop({ cropId: 'bean', family: 'Fabaceae' }),
        inBed: day('2027-01-10'),
        free: day('2027-05-01'),
        firstHarvest: day('2027-03-01'),
        lastHarvest: day('2027-04-01'),
      }),
    ],
  });
  // 1 May and 40 + 7 + 3 days are just 20 June
  expect(found.map((each) => [each.cropId, each.days, each.dates.free])).toEqual([
    ['c', 50, '2027-06-20'],
    ['a', 50, '2027-06-20'],
    ['b', 40, '2027-06-10'],
  ]);
});

describe('what happened', () => {
  const course: Course = {
    id: 'p',
    clockKey: 'plain',
    need: 60,
    indoors_days: 30,
    window_days: 20,
    turnover_days: 3,
    sow: day('2027-04-01'),
    inBed: day('2027-05-01'),
    sown: null,
    wentIn: null,
    firstPicked: null,
    lastPicked: null,
    cleared: null,
    pinned: false,
  };
  const of = (change: Partial<Course>, clocks = new Map([['plain', dayClock(dayNumber(day('2027-01-01')), 200)]])) =>
    replan([{ ...course, ...change }], clocks)[0];
  test('is told with whether the crop still ripens', () => {
    expect(of({})).toMatchObject({ ripens: true, sow: '2027-04-01' });
    // the clock ends on 20 July
    expect(of({ wentIn: day('2027-06-01') })).toMatchObject({ ripens: false, firstHarvest: '2027-07-31' });
    expect(of({ wentIn: day('2027-06-01'), firstPicked: day('2027-07-25') })).toMatchObject({
      ripens: true,
      firstHarvest: '2027-07-25',
    });
    expect(of({ need: 59.2 }, new Map())).toMatchObject({ ripens: false, firstHarvest: '2027-06-30' });
  });
  test('never ends before it began', () => {
    expect(of({ lastPicked: day('2027-06-01') })?.lastHarvest).toBe('2027-06-30');
    expect(of({ lastPicked: day('2027-07-04') })).toMatchObject({ lastHarvest: '2027-07-04', free: '2027-07-07' });
    expect(of({ cleared: day('2027-05-01') })?.free).toBe('2027-05-02');
    expect(of({ sown: day('2027-04-03') })?.sow).toBe('2027-04-03');
  });
});

test('a disease is known by its name, where the name tells one', () => {
  expect(diseaseOfName('Clubroot')?.least_years).toBe(7);
  expect(diseaseOfName('verticillium wilt')?.disease).toBe('verticillium wilt of eggplant');
  expect(diseaseOfName('rust')).toBeUndefined();
  expect(diseaseOfName('brassicas')).toBeUndefined();
});

test('days are short from autumn to early spring, nowhere near the equator', () => {
  const { underFrom, backOn } = shortDays({ latitude_deg: 47.6, year: 2027 });
  // ten hours of daylight at 47.6 N: the sun stands at -14.4 degrees then, about 1 November and 10 February (an almanac, from memory)
  expect(Math.abs(daysBetween(day('2027-11-01'), underFrom ?? day('2027-01-01')))).toBeLessThanOrEqual(3);
  expect(Math.abs(daysBetween(day('2027-02-10'), backOn ?? day('2027-12-31')))).toBeLessThanOrEqual(3);
  expect(shortDays({ latitude_deg: 0, year: 2027 })).toEqual({ underFrom: null, backOn: null });
});

test('successions keep their interval to the last day, and by heat one a day at most', () => {
  expect(sowingsEvery({ first: day('2027-04-01'), notAfter: day('2027-04-15'), interval_days: 7 })).toEqual([
    '2027-04-01',
    '2027-04-08',
    '2027-04-15',
  ]);
  expect(sowingsEvery({ first: day('2027-04-01'), notAfter: day('2027-04-14'), interval_days: 7 })).toHaveLength(2);
  // ten degrees on every day: seven days between harvests are seven between sowings
  const heat = clockOf(
    dayNumber(day('2027-01-01')),
    Array.from({ length: 200 }, () => 10),
  );
  const sowings = sowingsByHeat({ first: day('2027-04-01'), notAfter: day('2027-04-20'), heat, need_C_days: 300, gap_days: 7 });
  expect(sowings).toEqual(['2027-04-01', '2027-04-08', '2027-04-15']);
  // the clock ends on 20 July: what would not ripen by then is sown no more
  expect(sowingsByHeat({ first: day('2027-07-01'), notAfter: day('2027-07-19'), heat, need_C_days: 300, gap_days: 7 })).toEqual([
    '2027-07-01',
  ]);
});

describe('tasks of a planting', () => {
  const planting: TaskPlanting = {
    id: 'p1',
    cropName: 'Kale',
    number: 2,
    method: 'transplant',
    places: 'A-1',
    bedId: 'bed-1',
    plants: 40,
    trays: 2,
    sow: day('2027-03-15'),
    potOn: day('2027-03-30'),
    inBed: day('2027-04-20'),
    firstHarvest: day('2027-06-20'),
    lastHarvest: day('2027-06-27'),
    free: day('2027-07-03'),
    sown: null,
    wentIn: null,
    lastPicked: null,
    cleared: null,
  };
  const of = (change: Partial<TaskPlanting>) =>
    tasksOf({ ...planting, ...change }).map(({ key, due, title }) => `${key} ${due} ${title}`);
  test('say what, when, where and how many', () => {
    expect(of({})).toEqual([
      'p1/sow-indoors 2027-03-15 Sow Kale no. 2 indoors, 2 trays',
      'p1/pot-on 2027-03-30 Pot on Kale no. 2',
      'p1/set-out 2027-04-20 Set out Kale no. 2 in A-1, 40 plants',
      'p1/harvest/2027-06-20 2027-06-20 Harvest Kale no. 2 in A-1',
      'p1/harvest/2027-06-27 2027-06-27 Harvest Kale no. 2 in A-1',
      'p1/clear 2027-06-28 Clear Kale no. 2 from A-1',
    ]);
    expect(of({ number: 1, trays: 1 })[0]).toBe('p1/sow-indoors 2027-03-15 Sow Kale indoors, 1 tray');
    expect(of({ number: 1, trays: null })[0]).toBe('p1/sow-indoors 2027-03-15 Sow Kale indoors');
    expect(of({ method: 'direct', potOn: null })[0]).toBe('p1/sow 2027-04-20 Sow Kale no. 2 in A-1, 40 plants');
    expect(of({ method: 'set', potOn: null })[0]).toBe('p1/set-out 2027-04-20 Plant Kale no. 2 in A-1, 40 plants');
  });
  test('are gone once done', () => {
    const kinds = (change: Partial<TaskPlanting>) => tasksOf({ ...planting, ...change }).map(({ kind }) => kind);
    expect(kinds({ sown: day('2027-03-16') })[0]).toBe('pot-on');
    expect(kinds({ wentIn: day('2027-04-20') })).toEqual(['harvest', 'harvest', 'clear']);
    expect(kinds({ wentIn: day('2027-04-20'), lastPicked: day('2027-06-25') })).toEqual(['clear']);
    expect(tasksOf({ ...planting, lastPicked: day('2027-06-25') }).at(-1)?.due).toBe('2027-06-25');
    expect(tasksOf({ ...planting, free: day('2027-06-27') }).at(-1)?.due).toBe('2027-06-27');
    expect(kinds({ cleared: day('2027-06-01') })).toEqual([]);
  });
  test('belong to the week of their day, Monday to Sunday', () => {
    expect(['2027-06-06', '2027-06-07', '2027-06-13', '2027-06-14'].map((due) => inWeek(day(due), day('2027-06-07')))).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });
});

test('trays of one kind take bench and mix, a tenth more than their cells hold', () => {
  expect(trayNeed({ cells: 144, cellsPerTray: 72 })).toEqual({ trays: 2, bench_m2: 2 * 0.508 * 0.254, mix_L: 144 * 0.05 * 1.1 });
  expect(trayNeed({ cells: 145, cellsPerTray: 72, cell_L: 0.1 })).toMatchObject({ trays: 3, mix_L: 145 * 0.1 * 1.1 });
  expect([50, 60, 72, 288, 999].map(usualCell_L)).toEqual([0.0925, 0.05, 0.05, 0.0065, 0.0065]);
  expect(['broccoli', 'lettuce-leaf', 'cucumber', 'kale'].map(usualTray)).toEqual([72, 128, 72, 72]);
});

describe('figures of a proposal', () => {
  test('weeks begin on the Monday of the start and cover the end', () => {
    const grid = weekGrid(day('2027-06-09'), day('2027-06-22'));
    expect(grid).toEqual({ firstMonday: dayNumber(day('2027-06-07')), weeks: 3 });
    expect(weekGrid(day('2027-06-07'), day('2027-06-07')).weeks).toBe(1);
    const sunday = dayNumber(day('2027-06-13'));
    expect([weekOfDay(grid, sunday), weekOfDay(grid, sunday + 1), weekFrom(grid, sunday), weekFrom(grid, sunday + 1)]).toEqual([
      0, 1, 1, 1,
    ]);
  });
  test('water of a week is what the stronger source gives in its hours', () => {
    expect(weekSupply_L({ tapFlow_L_per_min: 10, pumpFlow_L_per_h: 500 }, 2)).toBe(7 * 2 * 600);
    expect(weekSupply_L({ tapFlow_L_per_min: null, pumpFlow_L_per_h: 500 }, 2)).toBe(7000);
    expect(weekSupply_L({ tapFlow_L_per_min: null, pumpFlow_L_per_h: null }, 2)).toBeNull();
  });
  test('a cautious plan counts on less where the yield varies more', () => {
    expect(plannedYield_per_m2({ low: 2, typical: 4, high: 6 }, 0.5)).toBe(3.5);
    expect(plannedYield_per_m2({ low: 2, typical: 4, high: 6 }, 0)).toBe(4);
    expect(plannedYield_per_m2({ low: 0, typical: 1, high: 20 }, 1)).toBe(0);
  });
  test('hours are learned by ground, ground and weeks, and amount; the usual where nothing was written down', () => {
    expect(learnedHours([{ area_m2: 5, weeks: 4, harvested: 10, minutes: [] }])).toBeNull();
    const found = learnedHours([
      {
        area_m2: 5,
        weeks: 4,
        harvested: 10,
        minutes: [
          { task: 'sow', minutes: 60 },
          { task: 'weed', minutes: 120 },
          { task: 'clear', minutes: 60 },
          { task: 'harvest', minutes: 90 },
          { task: 'wash', minutes: 30 },
        ],
      },
      { area_m2: 5, weeks: 12, harvested: 0, minutes: [{ task: 'plant', minutes: 60 }] },
    ]);
    expect(found).toEqual({ plant_h_per_m2: 0.2, care_h_per_m2_week: 2 / 80, clear_h_per_m2: 0.1, harvest_h_per_unit: 0.2 });
    expect(learnedHours([{ area_m2: 5, weeks: 4, harvested: 0, minutes: [{ task: 'harvest', minutes: 60 }] }])).toEqual(
      USUAL_HOURS,
    );
  });
  test('a proposal is told as what stays, shifts, moves, is new or goes', () => {
    const present = (plantingId: string, cropId: string, bedId: string, inBed: string, toShare = 1): PresentSpan => ({
      plantingId,
      cropId,
      bedId,
      fromShare: 0,
      toShare,
      inBed: day(inBed),
      free: addDays(day(inBed), 60),
    });
    const proposed = (cropId: string, bedId: string, inBed: string): ProposedPlanting => ({
      key: `${cropId} ${bedId} ${inBed}`,
      cropId,
      bedId,
      fromShare: 0,
      toShare: 1,
      area_m2: 1,
      dates: {
        sow: null,
        potOn: null,
        inBed: day(inBed),
        firstHarvest: day(inBed),
        lastHarvest: day(inBed),
        free: addDays(day(inBed), 60),
      },
    });
    const moves = comparePlans(
      [
        present('p1', 'kale', 'a', '2027-05-01'),
        present('p2', 'beet', 'a', '2027-05-01'),
        present('p3', 'leek', 'a', '2027-05-01', 0.5),
        present('p4', 'chard', 'a', '2027-05-01'),
        present('p5', 'carrot', 'a', '2027-05-01'),
        present('p6', 'kale', 'a', '2027-08-01'),
      ],
      [
        proposed('kale', 'a', '2027-05-08'),
        proposed('beet', 'a', '2027-05-09'),
        proposed('leek', 'a', '2027-05-01'),
        proposed('chard', 'b', '2027-04-28'),
        proposed('onion', 'a', '2027-04-28'),
        proposed('kale', 'a', '2027-08-01'),
      ],
    );
    expect(
      moves.map((move) => [move.kind, 'present' in move ? move.present.plantingId : null, 'days' in move ? move.days : null]),
    ).toEqual([
      ['stays', 'p1', 7],
      ['shifts', 'p2', 8],
      ['shifts', 'p3', 0],
      ['stays', 'p6', 0],
      ['moves', 'p4', -3],
      ['new', null, null],
      ['goes', 'p5', null],
    ]);
  });
});
