import { describe, expect, test } from 'vitest';
import { addDays, type IsoDate } from '../../../../planner/calendar.ts';
import { afterTheStop } from '../../../../planner/irrigation/after-the-stop.ts';
import { basinRing_L, freeboard_m, minutesForBasins } from '../../../../planner/irrigation/basin-fill.ts';
import { daysWithSelfDischarge, explainUsableEnergy } from '../../../../planner/irrigation/battery.ts';
import { explainBedFlow } from '../../../../planner/irrigation/bed-flow-working.ts';
import { type LinePart, lineParts } from '../../../../planner/irrigation/line-parts.ts';
import { type LinePlan, levelOf, networkOf, supplyCurve } from '../../../../planner/irrigation/line-plan.ts';
import { rowsOfBeds, wizardLine } from '../../../../planner/irrigation/line-wizard.ts';
import { materialOfPart, type OfferedPart, partsToOrder, pricesOfParts } from '../../../../planner/irrigation/part-prices.ts';
import { explainPipeFriction } from '../../../../planner/irrigation/pipe-friction.ts';
import { idleHours_h, type PowerSetting, powerPlan } from '../../../../planner/irrigation/power-plan.ts';
import { dailyPower, explainDailyPower } from '../../../../planner/irrigation/power-use.ts';
import { monthLoads, programmeDays, runsOn } from '../../../../planner/irrigation/programme-water.ts';
import { mostFlow_m3_per_s, pumpHead, shutoffHead_m } from '../../../../planner/irrigation/pump-curve.ts';
import { firstFlush, rainKept, roofFlow_L_per_min } from '../../../../planner/irrigation/rain-catch.ts';
import { drawDown, explainDaysAway, refillDates, wholeRuns, worstSpells } from '../../../../planner/irrigation/reservoir.ts';
import { reservoirYears } from '../../../../planner/irrigation/reservoir-years.ts';
import { explainRunTime, runOfMinutes, runTime } from '../../../../planner/irrigation/run-time.ts';
import { catchOf_mL, flowOfCatch_L_per_h } from '../../../../planner/irrigation/setup-card.ts';
import { siphonLoss_L, siphonTest } from '../../../../planner/irrigation/siphon.ts';
import { eggToAdult_days, standing_h, standsTooLong } from '../../../../planner/irrigation/standing-water.ts';
import { interval, stagger } from '../../../../planner/irrigation/timer-programme.ts';
import { explainDistributionUniformity, ratingOf } from '../../../../planner/irrigation/uniformity.ts';
import { turnsFor } from '../../../../planner/irrigation/valve-calibration.ts';
import { aPlan } from '../../../builders/a-line.ts';
import { linesOf } from '../../../builders/working-lines.ts';

const day = (text: string) => text as IsoDate;

describe('a run of a line', () => {
  const wish = (id: string, flow_L_per_h: number, wanted_L: number, holds_L: number | null = null) => ({
    id,
    flow_L_per_h,
    wanted_L,
    holds_L,
  });
  const wishes = [wish('a', 60, 10), wish('b', 120, 30, 20), wish('dry', 0, 5), wish('rest', 0, 0)];
  test('lasts for the slowest bed; the others get more than they want, and some run over', () => {
    expect(runTime(wishes)).toEqual({
      run_min: 15,
      decides: 'b',
      rows: [
        { id: 'a', own_min: 10, given_L: 15, beyond_L: 5, over_L: 0 },
        { id: 'b', own_min: 15, given_L: 30, beyond_L: 0, over_L: 10 },
        { id: 'dry', own_min: null, given_L: 0, beyond_L: 0, over_L: 0 },
        { id: 'rest', own_min: null, given_L: 0, beyond_L: 0, over_L: 0 },
      ],
      total_L: 45,
      beyond_L: 5,
      over_L: 10,
      unserved: ['dry'],
    });
    expect(runOfMinutes(wishes, 4)).toMatchObject({ run_min: 4, decides: null, total_L: 12, beyond_L: 0 });
    expect(runTime([wish('a', 60, 10), wish('b', 60, 10)]).decides).toBe('a');
  });
  test('opens into the slowest bed and what all take', () => {
    const working = explainRunTime(wishes);
    expect(linesOf(working)).toEqual({ symbols: { V: '30 L', q: '120 L_per_h' }, steps: ['45 L', '5 L'], result: '15 min' });
    expect(working.notes).toEqual([expect.stringMatching(/^1 beds/)]);
    expect(working.sources).not.toEqual([]);
    expect(explainRunTime([])).toMatchObject({ symbols: [], notes: [], result: { value: 0 } });
  });
  test('fills rings of basins; a bag that takes up water asks for more', () => {
    const ring = { basinDiameter_m: 1, bagDiameter_m: 0.5, depth_m: 0.1, bagPorosity: 0 };
    expect(basinRing_L(ring)).toBeCloseTo(75 * (Math.PI / 4), 9);
    expect(basinRing_L({ ...ring, bagPorosity: 0.4 })).toBeCloseTo(85 * (Math.PI / 4), 9);
    expect(basinRing_L({ ...ring, bagDiameter_m: 0 })).toBeCloseTo(100 * (Math.PI / 4), 9);
    expect(minutesForBasins(4, 10, 60)).toBe(40);
    expect(freeboard_m(0.3, 0.8, 0.2)).toBeCloseTo(0.04, 12);
    expect([catchOf_mL(60), flowOfCatch_L_per_h(500), flowOfCatch_L_per_h(0)].map((each) => Number(each.toFixed(9)))).toEqual([
      500, 60, 0,
    ]);
  });
});

describe('a timer', () => {
  const need = (id: string, need_L_per_day: number, fill_L: number) => ({ id, need_L_per_day, fill_L });
  test('runs every so many whole days that the thirstiest fill lasts, or several times a day', () => {
    expect(interval([need('a', 4, 10), need('b', 1, 9), need('bare', 0, 0)])).toEqual({
      every_days: 2,
      runsPerDay: 1,
      decides: 'a',
    });
    expect(interval([need('a', 25, 10)])).toEqual({ every_days: 1, runsPerDay: 3, decides: 'a' });
    expect(interval([need('a', 20, 10)])).toEqual({ every_days: 1, runsPerDay: 2, decides: 'a' });
    expect(interval([need('a', 10, 10)])).toEqual({ every_days: 1, runsPerDay: 1, decides: 'a' });
    expect(interval([need('bare', 0, 0)])).toEqual({ every_days: 0, runsPerDay: 0, decides: null });
  });
  test('starts loads together as far as the power lets it, the rest after', () => {
    const load = (id: string, power_W: number, run_min: number) => ({ id, power_W, run_min });
    expect(stagger([load('a', 30, 10), load('b', 30, 10), load('c', 20, 15), load('d', 30, 5)], 50, 360)).toEqual([
      { id: 'a', start_min: 360, end_min: 370 },
      { id: 'b', start_min: 370, end_min: 380 },
      { id: 'c', start_min: 360, end_min: 375 },
      { id: 'd', start_min: 380, end_min: 385 },
    ]);
    // a long small load would meet a later large one: it waits
    expect(stagger([load('a', 10, 5), load('b', 50, 5), load('c', 20, 6)], 50)).toEqual([
      { id: 'a', start_min: 0, end_min: 5 },
      { id: 'b', start_min: 5, end_min: 10 },
      { id: 'c', start_min: 10, end_min: 16 },
    ]);
  });
  test('waters its zone in its month, and a mean day of the month takes its part', () => {
    const event = (every_days: number, run_min: number, zone: number, month = 6) => ({
      month,
      every_days,
      start: '06:00',
      run_min,
      zone,
    });
    const flows = [
      { zone: 1, total_L_per_h: 600 },
      { zone: 2, total_L_per_h: 300 },
    ];
    const events = [event(2, 10, 1), event(1, 5, 2), event(1, 60, 9, 7)];
    const june = Array.from({ length: 30 }, (_, at) => ({ date: addDays(day('2027-06-01'), at), rain_mm: at }));
    const days = programmeDays(events, flows, [...june, { date: day('2027-07-01'), rain_mm: 0 }]);
    expect(days.slice(0, 30).reduce((sum, each) => sum + each.need_L, 0)).toBeCloseTo(15 * 100 + 30 * 25, 9);
    expect(
      days
        .slice(0, 2)
        .map((each) => Number(each.need_L.toFixed(9)))
        .sort((a, b) => a - b),
    ).toEqual([125, 25].sort((a, b) => a - b));
    expect(days[4]?.rain_mm).toBe(4);
    expect(days[30]?.need_L).toBe(0);
    expect(runsOn({ month: 6, every_days: 1 }, day('2027-07-01'))).toBe(false);
    const [first, second] = monthLoads(events, flows);
    expect(first).toMatchObject({ month: 6, runsPerDay: 1.5, pump_min_per_day: 10 });
    expect(first?.water_L_per_day).toBeCloseTo(75, 9);
    expect(second).toEqual({ month: 7, runsPerDay: 1, pump_min_per_day: 60, water_L_per_day: 0 });
  });
});

describe('power', () => {
  const daily = {
    pump_W: 60,
    run_min: 30,
    runsPerDay: 2,
    controller_W: 1,
    inverterIdle_W: 5,
    inverterIdle_h: 4,
    inverterShare: 0.8,
  };
  test('of a day is pump, what the inverter loses, controller and idling', () => {
    expect(dailyPower(daily)).toEqual({
      pump_Wh: 60,
      inverterLoss_Wh: 15,
      controller_Wh: 24,
      idle_Wh: 20,
      total_Wh: 119,
      decides: 'pump',
    });
    expect(dailyPower({ ...daily, inverterIdle_h: 24 }).decides).toBe('inverter');
    expect(dailyPower({ ...daily, controller_W: 3 }).decides).toBe('controller');
    expect(dailyPower({ ...daily, pump_W: 0, controller_W: 0, inverterIdle_W: 0 })).toMatchObject({
      total_Wh: 0,
      decides: 'pump',
    });
    const working = explainDailyPower(daily);
    expect(linesOf(working)).toEqual({
      symbols: { P: '60 W', t: '30 min', n: '2', eff: '0.8 share', Pc: '1 W', Pi: '5 W', ti: '4 h' },
      steps: ['60 Wh', '15 Wh', '24 Wh', '20 Wh'],
      result: '119 Wh',
    });
    expect(working.notes).toEqual([]);
    expect(working.sources).not.toEqual([]);
    expect(explainDailyPower({ ...daily, controller_W: 3 }).notes[0]).toMatch(/controller/);
  });

  const power: PowerSetting = {
    kind: 'battery',
    battery: 'lead-acid',
    capacity_Wh: 1000,
    usableShare: null,
    inverterShare: 0.8,
    selfDischarge_share_per_month: 0,
    controller_W: 1,
    idle_W: 5,
    idleOff_h: 2,
    panel_W: 100,
    panelLossShare: 0.25,
    peakSun_h: 4,
  };
  const months = [
    { month: 7, runsPerDay: 2, pump_min_per_day: 60, water_L_per_day: 1 },
    { month: 8, runsPerDay: 0.5, pump_min_per_day: 30, water_L_per_day: 1 },
  ];
  const plan = (change: Partial<PowerSetting> = {}, of = months) =>
    powerPlan({ power: { ...power, ...change }, pump_W: 60, months: of, electricity_minor_per_kWh: 20 });

  test('of a season stands on its hardest month', () => {
    const found = plan();
    // July 60 + 15 + 24 + 20; August 30 + 7.5 + 24 + 5
    expect(found.months.map((month) => [month.month, month.day.total_Wh, month.panel_Wh])).toEqual([
      [7, 119, 300],
      [8, 66.5, 300],
    ]);
    expect(found.hardest?.month).toBe(7);
    // half of 1,000 Wh: four days of 119; a panel of 119 / (4 h x 0.75); three dark days at 12 V, 97 % through the cable
    expect(found).toMatchObject({ usable_Wh: 500, days: 4 });
    expect(found.neededPanel_W).toBeCloseTo(119 / 3, 9);
    expect(found.neededBattery_Ah).toBeCloseTo((119 * 3) / (12 * 0.5 * 0.97), 9);
    expect(found.season_kWh).toBeCloseTo((31 * (119 + 66.5)) / 1000, 9);
    expect(found.seasonCost_minor).toBeCloseTo(20 * found.season_kWh, 9);
  });
  test('from the mains has no inverter, battery or panel to count', () => {
    const mains = plan({ kind: 'mains', panel_W: null, peakSun_h: null });
    expect(mains.months[0]?.day.inverterLoss_Wh).toBe(0);
    expect(mains).toMatchObject({ usable_Wh: null, days: null, neededPanel_W: null });
    expect(mains.months[0]?.panel_Wh).toBeNull();
    expect(plan({ capacity_Wh: null })).toMatchObject({ usable_Wh: null, days: null });
    expect(plan({ usableShare: 0.7 }).usable_Wh).toBe(700);
    expect(plan({}, [])).toMatchObject({ hardest: null, days: null, neededPanel_W: null, neededBattery_Ah: null, season_kWh: 0 });
    expect(plan({}, [{ month: 7, runsPerDay: 0, pump_min_per_day: 0, water_L_per_day: 0 }]).months[0]?.input.run_min).toBe(0);
  });
  test('idles all day where the inverter never switches itself off, never longer than the day', () => {
    expect([idleHours_h(2, null), idleHours_h(2, 3), idleHours_h(20, 3)]).toEqual([24, 6, 24]);
  });
  test('of a battery shrinks on the shelf as well as by use', () => {
    expect(daysWithSelfDischarge(500, 100, 0)).toBe(5);
    expect(daysWithSelfDischarge(500, 100, 0.05)).toBe(4);
    expect(daysWithSelfDischarge(99, 100, 0)).toBe(0);
    expect(linesOf(explainUsableEnergy(1000, 0.5, 0.9))).toEqual({
      symbols: { C: '1000 Wh', u: '0.5 share', eff: '0.9 share' },
      steps: [],
      result: '450 Wh',
    });
  });
});

describe('a reservoir', () => {
  const days = (rain: readonly number[], need_L = 30) =>
    rain.map((rain_mm, at) => ({ date: addDays(day('2027-06-01'), at), rain_mm, need_L }));
  const tank = {
    capacity_L: 100,
    usableShare: 0.8,
    catchment: null,
    floatTopUp_L_per_day: 0,
    refilledByHand: false,
    start_L: 100,
  };
  test('is drawn down to its stop level and then falls short', () => {
    const found = drawDown({ ...tank, days: days([0, 0, 0, 0]) });
    expect(
      found.map(({ level_L, given_L, short_L }) => [level_L, given_L, short_L].map((each) => Number(each.toFixed(9)))),
    ).toEqual([
      [70, 30, 0],
      [40, 30, 0],
      [20, 20, 10],
      [20, 0, 30],
    ]);
  });
  test('filled by hand is filled on the day it would fall short, and not on a day without need', () => {
    const found = drawDown({ ...tank, refilledByHand: true, days: days([0, 0, 0, 0]) });
    expect(refillDates(found)).toEqual([{ date: '2027-06-03', refill_L: 60 }]);
    expect(found.map((each) => each.level_L)).toEqual([70, 40, 70, 40]);
    expect(refillDates(drawDown({ ...tank, start_L: 0, refilledByHand: true, days: days([0, 0], 0) }))).toEqual([]);
  });
  test('catches rain less what washes the roof after dry days, and runs over when full', () => {
    const catchment = { area_m2: 10, catchShare: 0.9, firstFlush_mm: 0.5, dryDays: 3 };
    const found = drawDown({ ...tank, start_L: 50, catchment, days: days([4, 4, 0, 0, 0, 4]) });
    // 36 L of 4 mm, 5 of them wash the roof on the first day and after three dry ones
    expect(found.map((each) => Number(each.caught_L.toFixed(9)))).toEqual([31, 36, 0, 0, 0, 31]);
    expect(found.map((each) => Number(each.level_L.toFixed(9)))).toEqual([51, 57, 27, 20, 20, 21]);
    const full = drawDown({ ...tank, catchment, days: days([4], 0) });
    expect(full[0]).toMatchObject({ overflow_L: 31, caught_L: 0, level_L: 100 });
  });
  test('with a float is topped up, never beyond its rim', () => {
    expect(drawDown({ ...tank, start_L: 50, floatTopUp_L_per_day: 10, days: days([0]) })[0]?.level_L).toBe(30);
    expect(drawDown({ ...tank, floatTopUp_L_per_day: 10, days: days([0], 0) })[0]?.level_L).toBe(100);
  });
  test('in the worst spell of a year lasts so many days from full', () => {
    const dry = days([0, 0, 0, 0, 0]);
    const hot = dry.map((each, at) => (at >= 3 ? { ...each, need_L: 90 } : each));
    expect(worstSpells(tank, [{ year: 2027, days: hot }])).toEqual([
      { year: 2027, worst: { year: 2027, from: '2027-06-04', days: 0 } },
    ]);
    expect(worstSpells(tank, [{ year: 2027, days: dry }])[0]?.worst).toEqual({ year: 2027, from: '2027-06-01', days: 2 });
    expect(worstSpells(tank, [{ year: 2027, days: days([0, 0]) }])[0]?.worst).toBeNull();
  });
  test('over years adds up each by itself', () => {
    const years = [...days([0, 0, 0]), { date: day('2028-06-01'), rain_mm: 0, need_L: 7 }];
    const found = reservoirYears({ ...tank, start_L: undefined } as never, years);
    expect(
      found.map(({ year, need_L, refills, shortest_days, shortestFrom }) => [year, need_L, refills, shortest_days, shortestFrom]),
    ).toEqual([
      [2027, 90, 1, 2, '2027-06-01'],
      [2028, 7, 0, null, null],
    ]);
    expect(reservoirYears(tank, [])).toEqual([]);
    // a full tank runs over with all that the roof brings: 36 L a day, 5 wash it
    const catchment = { area_m2: 10, catchShare: 0.9, firstFlush_mm: 0.5, dryDays: 3 };
    const [wet] = reservoirYears({ ...tank, catchment }, days([4, 4], 0));
    expect([wet?.caught_L, Number(wet?.overflow_L.toFixed(9)), wet?.days.length]).toEqual([0, 67, 2]);
  });
  test('carries beds for whole rounds', () => {
    const working = explainDaysAway({ usable_L: 100, beds: 3, fill_L: 10, fillsPerDay: 2 });
    expect(linesOf(working).symbols).toEqual({ U: '100 L', n: '3', V: '10 L', f: '2' });
    expect(linesOf(working).steps).toEqual(['30 L']);
    expect(working.result.value).toBeCloseTo(5 / 3, 12);
    expect(working.notes[0]).toMatch(/^Whole rounds: 3\./);
    expect(working.sources).not.toEqual([]);
    expect([wholeRuns(100, 0.9, 30), wholeRuns(100, 0.9, 31)]).toEqual([3, 2]);
  });
  test('keeps no more rain than it has room for', () => {
    const rain = { area_m2: 10, rain_mm: 10, catchShare: 0.9, firstFlush_mm: 1 };
    expect(rainKept({ ...rain, free_L: 50 })).toEqual({ collected_L: 50, overflow_L: 30 });
    expect(rainKept({ ...rain, rain_mm: 0.5, free_L: 50 })).toEqual({ collected_L: 0, overflow_L: 0 });
    expect(roofFlow_L_per_min(60, 10)).toBeCloseTo(10, 9);
    // 10 US gallons for 1,000 ft2 are 0.407 mm
    expect(firstFlush(100).depth_mm).toBeCloseTo(0.4075, 4);
    expect(firstFlush(100).volume_L).toBeCloseTo(40.75, 2);
  });
});

describe('standing water', () => {
  // the degree-day form of egg to adult: 350 F days above 45 F; 25 C are 77 F
  test('breeds faster in the warmth; after three days in the season it stands too long', () => {
    expect(eggToAdult_days(25)).toBeCloseTo(350 / 32, 9);
    expect(standing_h(10, 5)).toBe(48);
    expect([standsTooLong(72.1, 10.1), standsTooLong(72, 20), standsTooLong(100, 10)]).toEqual([true, false, false]);
  });
});

describe('evenness and valves', () => {
  test('the low quarter is a quarter of the beds, one at least', () => {
    const working = explainDistributionUniformity([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(linesOf(working)).toMatchObject({ symbols: { n: '8', k: '2' }, steps: ['4.5'] });
    expect(working.result.value).toBeCloseTo(1.5 / 4.5, 12);
    expect(working.sources).toHaveLength(2);
    expect(linesOf(explainDistributionUniformity([4, 2, 6])).symbols).toMatchObject({ k: '1' });
    expect([0.9, 0.8999, 0.8, 0.7999, 0.7, 0.6999].map(ratingOf)).toEqual(['excellent', 'good', 'good', 'fair', 'fair', 'poor']);
  });
  test('turns lie between readings by the logarithm of the loss', () => {
    const readings = [
      { turns: 2, lossK: 40 },
      { turns: 0, lossK: 10 },
      { turns: 1, lossK: 20 },
    ];
    expect(turnsFor(readings, 20 * Math.SQRT2)).toBeCloseTo(1.5, 9);
    expect([10, 20, 40].map((wanted) => turnsFor(readings, wanted))).toEqual([0, 1, 2]);
    expect([9, 41].map((wanted) => turnsFor(readings, wanted))).toEqual([null, null]);
    expect(
      turnsFor(
        readings.map((each) => ({ ...each, turns: 2 - each.turns })),
        20 * Math.SQRT2,
      ),
    ).toBeCloseTo(0.5, 9);
  });
  test('a line siphons to the higher of outlet and inlet', () => {
    const of = (outletElevation_m: number, inletElevation_m: number) =>
      siphonLoss_L({ reservoirArea_m2: 0.5, reservoirLevel_m: 0, outletElevation_m, inletElevation_m });
    expect([of(-0.1, -0.4), of(-0.4, -0.1), of(0.1, -1)].map((each) => Number(each.toFixed(9)))).toEqual([50, 50, 0]);
    expect(siphonTest({ outletElevation_m: -0.2, reservoirLevel_m: 0.3, vented: false })).toEqual({
      siphons: true,
      drivingHead_m: 0.5,
    });
    expect(siphonTest({ outletElevation_m: 0.3, reservoirLevel_m: 0.3, vented: false })).toEqual({
      siphons: false,
      drivingHead_m: 0,
    });
  });
});

describe('workings of the line', () => {
  test('of friction show the tube, its velocity, Reynolds number and factor', () => {
    const at = (reynolds: number) =>
      explainPipeFriction({
        flow_m3_per_s: (Math.PI / 4) * 1e-4 * reynolds * 1e-4,
        insideDiameter_m: 0.01,
        length_m: 10,
        roughness_m: 1.5e-6,
        viscosity_m2_per_s: 1e-6,
      });
    const working = at(1000);
    const { symbols } = linesOf(working);
    expect(symbols).toMatchObject({ D: '0.01 m', L: '10 m', nu: '0.000001 m2_per_s', eps: '0.0000015 m', g: '9.80665' });
    expect(symbols['Q']).toMatch(/ m3_per_s$/);
    // smooth flow: 64 / 1000; 0.064 x 1000 x 0.1^2 / (2 g)
    for (const [step, value] of [0.1, 1000, 0.064].entries()) expect(working.steps[step]?.result.value).toBeCloseTo(value, 9);
    expect(working.steps.map((step) => step.result.unit)).toEqual(['m_per_s', '', '']);
    expect(working.result.value).toBeCloseTo(0.64 / (2 * 9.80665), 9);
    expect(working.result.unit).toBe('m');
    expect(working.sources).toHaveLength(2);
    expect([1000, 3000, 9000].map((reynolds) => at(reynolds).notes.length)).toEqual([0, 1, 0]);
    expect([1000, 3000, 9000].map((reynolds) => at(reynolds).steps[2]?.text.slice(17, 24))).toEqual([
      'f = 64/',
      "Dunlop'",
      'f = 0.2',
    ]);
  });

  test('of a bed’s flow show head, valve, bore, height and water, and the way the head goes', () => {
    const working = explainBedFlow(aPlan(), 'outlet-1');
    if (working === undefined) throw new Error('the bed is on the line');
    const { symbols } = linesOf(working);
    expect(symbols).toMatchObject({ K: '16', D: '0.0127 m_short', z: '0.3 m' });
    expect(Object.keys(symbols)).toEqual(['h', 'K', 'D', 'z', 'nu']);
    expect(working.formula).toMatch(/^q = A/);
    expect(working.steps.map((step) => step.text)).toEqual(
      expect.arrayContaining([
        'lift from the water to the outlet',
        'friction in the main',
        'tees and fittings of the main',
        'the last run to the bed',
        'left for valve and end',
      ]),
    );
    expect(working.steps.find((step) => step.text === 'friction in the main')?.figures).toBe('12.7 mm inside');
    expect(working.steps.at(-1)?.result.unit).toBe('L_per_h');
    expect(working.sources).toHaveLength(2);
    expect(working.result.unit).toBe('L_per_h');
    const drip = aPlan();
    const dripping: LinePlan = {
      ...drip,
      outlets: drip.outlets.map((outlet) => ({
        ...outlet,
        kind: 'drip',
        emitters: 20,
        emitter_L_per_h: 2,
        emitterHead_m: 10,
        emitterExponent: 0.5,
      })),
    };
    expect(explainBedFlow(dripping, 'outlet-1')?.formula).toMatch(/^h = K/);
  });
});

describe('a drawn line', () => {
  const beds = rowsOfBeds({ rows: 2, bedsInRow: 2, spacing_m: 1, rowSpacing_m: 2 });
  const input = {
    source: { x_m: 0, y_m: 0 },
    beds,
    arrangement: 'comb' as const,
    mainDiameter_m: 0.019,
    lateralDiameter_m: 0.0127,
    lateral_m: 0.3,
    teeBore_m: 0.0095,
    slackShare: 0.1,
    outlet_m: 0.4,
    riser_m: 1.5,
  };
  test('as a comb has a head for each row, a tee and an end for each bed', () => {
    const line = wizardLine(input);
    expect(line.nodes.map(({ id, kind, x_m, y_m, elevation_m }) => [id, kind, x_m, y_m, elevation_m])).toEqual([
      ['source', 'source', 0, 0, 0],
      ['rim', 'tee', 0, 0, 0.4],
      ['head-0', 'tee', 0, 0, 0.4],
      ['tee-1', 'tee', 1, 0, 0.4],
      ['end-1', 'end', 1, 0.3, 0.4],
      ['tee-2', 'tee', 2, 0, 0.4],
      ['end-2', 'end', 2, 0.3, 0.4],
      ['head-1', 'tee', 0, 2, 0.4],
      ['tee-3', 'tee', 2, 2, 0.4],
      ['end-3', 'end', 2, 2.3, 0.4],
      ['tee-4', 'tee', 1, 2, 0.4],
      ['end-4', 'end', 1, 2.3, 0.4],
    ]);
    expect(line.nodes.map((node) => node.position)).toEqual(line.nodes.map((_, at) => at));
    expect(line.runs.map((run) => [run.id, Number(run.length_m.toFixed(9)), run.insideDiameter_m, run.teeBore_m])).toEqual([
      ['run-source-rim', 1.5, 0.019, null],
      ['run-rim-head-0', 0.05, 0.019, 0.0095],
      ['run-head-0-tee-1', 1.1, 0.019, 0.0095],
      ['run-tee-1-end-1', 0.33, 0.0127, null],
      ['run-tee-1-tee-2', 1.1, 0.019, 0.0095],
      ['run-tee-2-end-2', 0.33, 0.0127, null],
      ['run-head-0-head-1', 2.2, 0.019, 0.0095],
      ['run-head-1-tee-3', 2.2, 0.019, 0.0095],
      ['run-tee-3-end-3', 0.33, 0.0127, null],
      ['run-tee-3-tee-4', 1.1, 0.019, 0.0095],
      ['run-tee-4-end-4', 0.33, 0.0127, null],
    ]);
    expect(line.outlets[3]).toMatchObject({
      id: 'outlet-4',
      nodeId: 'end-4',
      kind: 'open-end',
      outlet_m: 0.4,
      bore_m: 0.0127,
      wantShare: 1,
      setK: null,
    });
  });
  test('as a snake goes on from bed to bed', () => {
    const line = wizardLine({ ...input, arrangement: 'snake' });
    expect(line.nodes).toHaveLength(2 + 8);
    expect(line.runs.find((run) => run.toNodeId === 'tee-3')?.fromNodeId).toBe('tee-2');
  });
  test('begins at the full or low water, at a height asked for, or at the tap', () => {
    const plan = aPlan();
    expect([levelOf(plan, 'full'), levelOf(plan, 'low'), levelOf(plan, { level_m: -0.1 })]).toEqual([0, -0.3, -0.1]);
    const tap: LinePlan = { ...plan, supply: { ...plan.supply, supply: 'tap', tapHead_m: null, tapFlow_L_per_min: 12 } };
    expect(levelOf(tap, 'low')).toBe(0);
    const curve = supplyCurve(tap);
    // 3 bar where nobody measured: 30.6 m; 12 L a minute when open
    expect(curve === null ? 0 : shutoffHead_m(curve)).toBeCloseTo(30.6, 1);
    expect(curve === null ? 0 : mostFlow_m3_per_s(curve)).toBeCloseTo(0.0002, 9);
    expect(supplyCurve({ ...plan, pump: null })).toBeNull();
    const two = supplyCurve({ ...plan, pump: plan.pump === null ? null : { ...plan.pump, count: 2 } });
    expect(two === null ? 0 : pumpHead(two, 0).head_m).toBeCloseTo(2.2, 9);
  });
  test('leaves beds filled by hand out of the tubing, and marks drowned and dripping ones', () => {
    const plan = aPlan();
    const kinds = plan.outlets.map((outlet, at) =>
      at === 0
        ? { ...outlet, kind: 'hand' as const }
        : at === 1
          ? { ...outlet, drowned: true, setK: 40 }
          : at === 2
            ? { ...outlet, kind: 'drip' as const, emitters: 20, emitter_L_per_h: 2, emitterHead_m: 10, emitterExponent: 0.4 }
            : outlet,
    );
    const network = networkOf({ ...plan, outlets: kinds });
    expect(network.outlets.map((outlet) => outlet.id)).toHaveLength(7);
    expect(network.outlets[0]).toMatchObject({ id: 'outlet-2', drowned: true, lossK: 41 });
    expect(network.outlets[1]).toMatchObject({
      emitters: { count: 20, flowEach_L_per_h: 2, atHead_m: 10, exponent: 0.4 },
      lossK: 15,
    });
    expect(network.outlets[2]).not.toHaveProperty('drowned');
    expect(network.outlets[2]).not.toHaveProperty('emitters');
  });
});

describe('parts of a line', () => {
  const list = (plan: LinePlan) =>
    lineParts(plan).map((part) => `${Number(part.amount.toFixed(6))} ${part.unit} ${part.what} ${part.size_m} ${part.toSize_m}`);
  test('are counted for one bore, a reservoir and a pump', () => {
    const plan = aPlan();
    const metres = plan.runs.reduce((sum, run) => sum + run.length_m, 0);
    expect(list(plan)).toEqual([
      `${Number(metres.toFixed(6))} m tube 0.0127 null`,
      '34 count clamp 0.0127 null',
      '7 count tee 0.0127 null',
      '8 count valve 0.0127 null',
      '1 count bulkhead 0.0127 null',
      '1 count strainer 0.0127 null',
      '1 count vent 0.0127 null',
      '1 count pump null null',
    ]);
  });
  test('of a wider main are reducing tees and one adapter; an end without outlet is plugged, a tap needs no bulkhead', () => {
    const wide = list(aPlan({ mainDiameter_m: 0.01905 }));
    expect(wide).toEqual(expect.arrayContaining(['7 count tee 0.01905 0.0127', '1 count adapter 0.01905 0.0127']));
    const plan = aPlan();
    const fewer = list({ ...plan, outlets: plan.outlets.slice(1) });
    expect(fewer).toEqual(expect.arrayContaining(['1 count plug 0.0127 null', '7 count valve 0.0127 null']));
    const byHand = list({
      ...plan,
      outlets: plan.outlets.map((outlet, at) => (at === 0 ? { ...outlet, kind: 'hand' as const } : outlet)),
    });
    expect(byHand.filter((line) => line.includes('plug'))).toEqual([]);
    const tap = list({ ...plan, pump: null, supply: { ...plan.supply, supply: 'tap' } });
    for (const what of ['bulkhead', 'strainer', 'vent', 'pump']) expect(tap.some((line) => line.includes(what))).toBe(false);
    const fall = list({ ...plan, pump: null });
    expect(fall.some((line) => line.includes('bulkhead'))).toBe(true);
    expect(fall.some((line) => line.includes('vent'))).toBe(false);
  });

  const offered = (materialId: string, name: string, change: Partial<OfferedPart> = {}): OfferedPart => ({
    materialId,
    name,
    kind: 'fitting',
    baseUnit: 'count',
    insideDiameter_m: null,
    boreDiameter_m: null,
    price_minor: null,
    ...change,
  });
  const tube = { kind: 'tubing', baseUnit: 'm' };
  test('have the prices of what the farm knows; usual bores without one stand beside', () => {
    const prices = pricesOfParts([
      offered('t', 'Tube, 1 in', { ...tube, insideDiameter_m: 0.0254, price_minor: 210 }),
      offered('drip', 'Drip tube', { ...tube, insideDiameter_m: 0.01, price_minor: 1 }),
      offered('roll', 'Tube by the roll', { ...tube, baseUnit: 'count', insideDiameter_m: 0.03, price_minor: 1 }),
      offered('a', 'Tee, barbed', { price_minor: 130.4 }),
      offered('b', 'Tee, slip', { price_minor: 120.6 }),
      offered('c', 'Elbow', { price_minor: 5 }),
      offered('d', 'Tee tube', { ...tube, price_minor: 1 }),
      offered('p', 'Pump', { kind: 'pump', price_minor: 3900 }),
    ]);
    expect(prices).toEqual({
      tubes: [0.0127, 0.01524, 0.01905, 0.0254, 0.0318].map((insideDiameter_m) => ({
        insideDiameter_m,
        price_minor_per_m: insideDiameter_m === 0.0254 ? 210 : null,
      })),
      tee_minor: 121,
      pump_minor: 3900,
    });
    expect(pricesOfParts([])).toMatchObject({ tee_minor: null, pump_minor: null });
  });
  test('are the material entered, else one by name and bore, else by name alone, but never a tube of another bore', () => {
    const part = (change: Partial<LinePart>): LinePart => ({
      what: 'tee',
      size_m: 0.0127,
      toSize_m: null,
      materialId: null,
      amount: 2,
      unit: 'count',
      why: 'w',
      ...change,
    });
    const shop = [
      offered('wide', 'Tee, 1 in', { boreDiameter_m: 0.0254 }),
      offered('half', 'Tee, 1/2 in', { boreDiameter_m: 0.0126 }),
      offered('tube', 'Tube', { ...tube, insideDiameter_m: 0.0127 }),
      offered('pump', 'Pump', { kind: 'pump' }),
    ];
    const found = (of: Partial<LinePart>, pump: string | null = null) => materialOfPart(part(of), shop, pump)?.materialId;
    expect([found({}), found({ size_m: 0.04 }), found({ size_m: null })]).toEqual(['half', 'wide', 'wide']);
    expect(found({ materialId: 'wide' })).toBe('wide');
    expect([found({ what: 'tube', unit: 'm' }), found({ what: 'tube', unit: 'm', size_m: 0.0254 })]).toEqual(['tube', undefined]);
    expect([found({ what: 'pump', size_m: null }), found({ what: 'pump' }, 'half'), found({ what: 'clamp' })]).toEqual([
      'pump',
      'half',
      undefined,
    ]);
    expect(partsToOrder([part({}), part({ amount: 3 }), part({ what: 'clamp' })], shop, null)).toEqual([
      { materialId: 'half', name: 'Tee, 1/2 in', amount: 5, why: 'w' },
    ]);
  });
});

describe('after the stop', () => {
  const low = (at: number, outlet_m: number): LinePlan => {
    const plan = aPlan();
    return { ...plan, outlets: plan.outlets.map((outlet, n) => (n === at ? { ...outlet, outlet_m } : outlet)) };
  };
  const open = { vented: false, ventHole_m: null, reservoirArea_m2: 0.5 };
  test('what runs on is told with how far it lies below the water, and what is lost', () => {
    const stop = afterTheStop({ plan: low(2, -0.2), ...open });
    expect(stop.runningOn.map(({ id, below_m }) => [id, below_m])).toEqual([['outlet-3', 0.2]]);
    expect(stop.total_L_per_h).toBeCloseTo(stop.runningOn[0]?.flow_L_per_h ?? -1, 9);
    expect(stop.lost_L).toBeCloseTo(100, 6);
    expect(stop.ventLeak_L_per_h).toBeNull();
    expect(afterTheStop({ plan: low(2, -0.2), ...open, reservoirArea_m2: null }).lost_L).toBeNull();
    // the inlet lies at -0.4: a lower outlet drains no further
    expect(afterTheStop({ plan: low(2, -0.6), ...open }).lost_L).toBeCloseTo(200, 6);
    expect(afterTheStop({ plan: aPlan(), ...open })).toMatchObject({ runningOn: [], lost_L: 0, total_L_per_h: 0 });
  });
  test('a vent belongs at the highest place that is no end; a crest too high breaks the siphon by itself', () => {
    const plan = low(2, -0.2);
    const raised = (elevation_m: number): LinePlan => ({
      ...plan,
      nodes: plan.nodes.map((node) =>
        node.id === 'tee-2' || node.id === 'end-5' ? { ...node, elevation_m: node.id === 'end-5' ? 99 : elevation_m } : node,
      ),
    });
    expect(afterTheStop({ plan: raised(2), ...open }).ventAt).toBe('Tee Bed 2');
    expect(afterTheStop({ plan: raised(8), ...open }).runningOn).toEqual([]);
  });
  test('only a drowned outlet above the lowest water drains back, and only without a vent', () => {
    const plan = low(2, -0.4);
    const drowned = { ...plan, outlets: plan.outlets.map((outlet, at) => ({ ...outlet, drowned: at === 2 || at === 3 })) };
    expect(afterTheStop({ plan: drowned, ...open }).drainBack).toEqual(['outlet-4']);
    expect(afterTheStop({ plan: drowned, ...open, vented: true }).drainBack).toEqual([]);
  });
});
