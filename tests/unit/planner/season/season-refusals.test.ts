import { describe, expect, test } from 'vitest';
import { benchByWeek } from '../../../../planner/season/bench.ts';
import { areaForDemand_m2, plantsForArea } from '../../../../planner/season/demand.ts';
import { autumnDays, countBack, latestSowing, sowIndoors } from '../../../../planner/season/frost-windows.ts';
import { clockOf, dayClock, dayLengthClock } from '../../../../planner/season/growth-clock.ts';
import { harvestByWeek } from '../../../../planner/season/harvest-spread.ts';
import { daysToHeat, meanHeat, singleSineCut } from '../../../../planner/season/heat.ts';
import { calibratedHeat_C_days } from '../../../../planner/season/learned.ts';
import { frostAtRisk } from '../../../../planner/season/manual-frost.ts';
import { maturityOf } from '../../../../planner/season/maturity.ts';
import { stretchedEnd, stretchedStart } from '../../../../planner/season/move-planting.ts';
import { carriedOver } from '../../../../planner/season/next-season.ts';
import { gapsOf, occupancy } from '../../../../planner/season/occupancy.ts';
import { offsetGain } from '../../../../planner/season/offset-gain.ts';
import { plantingDates } from '../../../../planner/season/planting-dates.ts';
import { plantsOnSpan } from '../../../../planner/season/plants-on-span.ts';
import { weekSupply_L } from '../../../../planner/season/proposal/week-supply.ts';
import { mayReturn } from '../../../../planner/season/rotation.ts';
import {
  bulkRate_g_per_m2,
  pureLiveSeed_share,
  seedMass_g,
  seedNeed,
  stationSuccess_share,
} from '../../../../planner/season/seed-need.ts';
import { intervalByWindow_days, sowingsByHeat, sowingsEvery } from '../../../../planner/season/succession.ts';
import { benchSpace_m2, cellsOfTray, trayNeed } from '../../../../planner/season/trays.ts';
import { day } from '../../../builders/a-plan.ts';
import { refusal } from '../../../builders/faults-of.ts';

const range = { early_days: 60, likely_days: 70, late_days: 80 };
const timing = {
  method: 'transplant' as const,
  indoors_days: 35,
  potOn_days: 14,
  toHarvest: range,
  window_days: 28,
  turnover_days: 3,
};
const start = day('2027-01-01');
const clock = dayClock(20_819, 365); // 20,819 days from 1970-01-01 are 1 January 2027
const dates = (change: Partial<typeof timing>, need?: number) => () =>
  plantingDates({
    timing: { ...timing, ...change },
    anchor: { at: 'in-bed', date: start },
    clock,
    ...(need === undefined ? {} : { need }),
  });
const back = {
  firstFrost: day('2027-10-19'),
  maturity_days: 55,
  seedToTransplant_days: 0,
  harvest_days: 14,
  fallFactor_days: 14,
  isTender: false,
};
const seed = { plants: 10, germination_share: 0.9, emergence_share: 0.9, seedsPerHole: 1, overage_share: 0.1 };
const stay = { inBed: start, toHarvest_days: 60, window_days: 14, turnover_days: 3 };
const heat = { first: start, notAfter: day('2027-06-01'), heat: clock, need_C_days: 100, gap_days: 7 };
const outline = { shape: 'rectangle' as const, length_m: 3, width_m: 1 };
const spacing = { pattern: 'square' as const, spacing_m: 0.3 };
const span = (fromShare: number, toShare: number) => () => plantsOnSpan({ outline, fromShare, toShare, spacing });
const movable = {
  sow: null,
  potOn: null,
  inBed: start,
  firstHarvest: day('2027-03-01'),
  lastHarvest: day('2027-03-10'),
  free: day('2027-03-12'),
};
const nothing = { toHarvest_days: null, window_days: null };

describe('what cannot be meant is refused at its field, with its unit', () => {
  test.each<readonly [string, () => unknown]>([
    [
      'to dates-out-of-order',
      () => benchByWeek([{ plantingId: 'a', from: day('2027-03-02'), to: day('2027-03-01'), bench_m2: 1 }]),
    ],
    ['demand too-small', () => areaForDemand_m2({ demand: -1, loss_share: 0, yield_per_m2: 1 })],
    ['loss_share too-large', () => areaForDemand_m2({ demand: 1, loss_share: 1, yield_per_m2: 1 })],
    ['yield_per_m2 not-positive', () => areaForDemand_m2({ demand: 1, loss_share: 0, yield_per_m2: 0 })],
    ['area_m2 too-small m2', () => plantsForArea(-1, 0.3, 'square')],
    ['weeks.min too-small weeks', () => sowIndoors(start, { min: -1, max: 2 })],
    ['weeks.max too-small weeks', () => sowIndoors(start, { min: 3, max: 2 })],
    ['maturity_days too-small days', () => autumnDays(0)],
    ['fallFactor_days too-large days', () => autumnDays(50, 121)],
    ['seedToTransplant_days too-small days', () => countBack({ ...back, seedToTransplant_days: -1 })],
    ['harvest_days too-large days', () => countBack({ ...back, harvest_days: 366 })],
    ['date before-season', () => latestSowing(back, day('2027-08-01'))],
    ['perDay.1 not-a-number', () => clockOf(0, [1, -1])],
    ['threshold_h too-large h', () => dayLengthClock(0, [], 25)],
    [
      'lastHarvest dates-out-of-order',
      () =>
        harvestByWeek({
          firstHarvest: day('2027-06-02'),
          lastHarvest: day('2027-06-01'),
          form: 'even',
          total: { low: 1, typical: 1, high: 1 },
        }),
    ],
    [
      'total.typical too-small',
      () => harvestByWeek({ firstHarvest: start, lastHarvest: start, form: 'even', total: { low: 0, typical: -1, high: 0 } }),
    ],
    ['tmin_C too-large', () => singleSineCut({ tmin_C: 20, tmax_C: 10, base_C: 5 })],
    ['upper_C too-small', () => singleSineCut({ tmin_C: 10, tmax_C: 20, base_C: 10, upper_C: 9 })],
    ['need_C_days too-small C days', () => daysToHeat(-1, 5)],
    ['perDay_C_days never-ripe', () => daysToHeat(100, 0)],
    ['days too-small days', () => meanHeat(100, 0, 10)],
    ['sums_C_days not-known', () => calibratedHeat_C_days([])],
    ['risk too-large', () => frostAtRisk('spring', { early: 1, median: 2, late: 3 }, 0.6)],
    ['maturity_days too-small days', () => maturityOf({ maturity_days: 0, countedFrom: 'planting', indoors_days: 0 })],
    ['indoors_days too-large days', () => maturityOf({ maturity_days: 30, countedFrom: 'seed', indoors_days: 30 })],
    ['indoors_days too-large days', () => maturityOf({ maturity_days: 30, countedFrom: 'planting', indoors_days: 366 })],
    ['lastHarvest dates-out-of-order', () => stretchedEnd(movable, -10)],
    ['inBed dates-out-of-order', () => stretchedStart(movable, 59)],
    ['years too-small', () => carriedOver(movable, 0, nothing)],
    ['toHarvest_days too-small', () => occupancy({ ...stay, toHarvest_days: 0 })],
    ['window_days not-whole', () => occupancy({ ...stay, window_days: 1.5 })],
    ['turnover_days too-large', () => occupancy({ ...stay, turnover_days: 366 })],
    ['span.toShare too-small', () => gapsOf([], { bedId: 'b', fromShare: 0.5, toShare: 0.4 }, { from_day: 0, to_day: 1 })],
    ['spacings_m not-known', () => offsetGain(outline, [])],
    ['need too-small', dates({}, 0)],
    ['window_days too-small days', dates({ window_days: -1 })],
    ['turnover_days too-large days', dates({ turnover_days: 366 })],
    ['date never-ripe', dates({}, 400)],
    ['date too-early', () => plantingDates({ timing, anchor: { at: 'first-harvest', date: start }, clock })],
    [
      'anchor no-sowing',
      () => plantingDates({ timing: { ...timing, method: 'set' }, anchor: { at: 'sow', date: start }, clock }),
    ],
    ['fromShare too-small', span(-0.1, 1)],
    ['toShare too-small', span(0.5, 0.4)],
    ['toShare too-large', span(0.5, 1.1)],
    ['run_h_per_day too-large h', () => weekSupply_L({ tapFlow_L_per_min: 1, pumpFlow_L_per_h: 1 }, 25)],
    ['gap_years too-small', () => mayReturn(2027, 2026, -1)],
    ['plants not-whole', () => seedNeed({ ...seed, plants: 1.5 })],
    ['overage_share too-large', () => seedNeed({ ...seed, overage_share: 3.1 })],
    ['germination_share too-small', () => stationSuccess_share(0, 1, 1)],
    ['emergence_share too-large', () => stationSuccess_share(1, 1.1, 1)],
    ['seedsPerHole too-large', () => stationSuccess_share(1, 1, 21)],
    ['seeds too-small', () => seedMass_g(-1, 100)],
    ['seeds_per_g too-small seeds/g', () => seedMass_g(1, 0)],
    ['purity_share too-small', () => pureLiveSeed_share(0, 1)],
    ['germination_share too-large', () => pureLiveSeed_share(1, 1.1)],
    ['rate_g_per_m2 too-small g/m2', () => bulkRate_g_per_m2(-1, 1)],
    ['pureLiveSeed too-small', () => bulkRate_g_per_m2(1, 0)],
    ['interval_days too-small', () => sowingsEvery({ first: start, notAfter: start, interval_days: 0 })],
    ['notAfter dates-out-of-order', () => sowingsEvery({ first: start, notAfter: day('2026-12-31'), interval_days: 7 })],
    ['interval_days too-small', () => sowingsEvery({ first: start, notAfter: day('2027-12-31'), interval_days: 3 })],
    ['window_days too-small', () => intervalByWindow_days(0, 0)],
    ['overlap_days too-large', () => intervalByWindow_days(10, 10)],
    ['need_C_days too-small C days', () => sowingsByHeat({ ...heat, need_C_days: 0 })],
    ['gap_days too-large', () => sowingsByHeat({ ...heat, gap_days: 121 })],
    ['notAfter dates-out-of-order', () => sowingsByHeat({ ...heat, notAfter: day('2026-12-31') })],
    ['cellsAcross too-large', () => cellsOfTray(41)],
    ['cells too-small', () => trayNeed({ cells: -1, cellsPerTray: 72 })],
    ['cellsPerTray too-small', () => trayNeed({ cells: 1, cellsPerTray: 0 })],
    ['cell_L not-positive L', () => trayNeed({ cells: 1, cellsPerTray: 72, cell_L: 0 })],
    ['trays too-small', () => benchSpace_m2(-1)],
  ])('%s', (said, call) => {
    expect(refusal(call)).toBe(said);
  });
});

test('the ends of what makes sense are taken', () => {
  for (const call of [
    () => benchByWeek([{ plantingId: 'a', from: start, to: start, bench_m2: 1 }]),
    () => latestSowing(back, countBack(back).sow),
    () => clockOf(0, [0]),
    () => harvestByWeek({ firstHarvest: start, lastHarvest: start, form: 'even', total: { low: 0, typical: 0, high: 0 } }),
    () => singleSineCut({ tmin_C: 10, tmax_C: 10, base_C: 10, upper_C: 10 }),
    () => maturityOf({ maturity_days: 30, countedFrom: 'seed', indoors_days: 29 }),
    () => stretchedEnd(movable, -9),
    () => stretchedStart(movable, 58),
    () => sowingsEvery({ first: start, notAfter: start, interval_days: 1 }),
    () => sowingsByHeat({ ...heat, notAfter: start }),
  ])
    expect(refusal(call)).toBe('taken');
});
