import { describe, expect, test } from 'vitest';
import { airGap_m, airGapBritish_m } from '../../../../planner/irrigation/air-gap.ts';
import {
  type BasinRing,
  basinRing_L,
  freeboard_m,
  minutesFor,
  minutesForBasins,
} from '../../../../planner/irrigation/basin-fill.ts';
import {
  afterSelfDischarge_Wh,
  batterySize_Ah,
  daysFor,
  daysWithSelfDischarge,
  energyAboveReserve_Wh,
  hoursFor,
  panelSize_W,
  ratedUsable_Wh,
  usableEnergy_Wh,
} from '../../../../planner/irrigation/battery.ts';
import {
  barbK,
  enlargementK,
  equivalentLengthK,
  fittingLoss_m,
  intrudingBarb,
} from '../../../../planner/irrigation/fitting-loss.ts';
import {
  blasiusFactor,
  laminarFactor,
  smallTubeFactor,
  swameeJainFactor,
  transitionFactor,
} from '../../../../planner/irrigation/friction-factor.ts';
import { hazenWilliamsLoss_m } from '../../../../planner/irrigation/hazen-williams.ts';
import { headOfPressure_m, pressureOfHead_Pa } from '../../../../planner/irrigation/head-and-pressure.ts';
import { lineFaults } from '../../../../planner/irrigation/line-faults.ts';
import type { LineNetwork, LineOutlet, LineTube } from '../../../../planner/irrigation/line-network.ts';
import { rowsOfBeds } from '../../../../planner/irrigation/line-wizard.ts';
import { multipleOutletFactor, multipleOutletFactorShort } from '../../../../planner/irrigation/multiple-outlets.ts';
import { systemCoefficient_s2_per_m5 } from '../../../../planner/irrigation/operating-point.ts';
import {
  boreArea_m2,
  flowAtVelocity_m3_per_s,
  reynoldsNumber,
  squareLaw_s2_per_m5,
} from '../../../../planner/irrigation/pipe-flow.ts';
import { pipeFriction } from '../../../../planner/irrigation/pipe-friction.ts';
import { dailyPower, loadEnergy_Wh, runEnergy_Wh, seasonEnergy_Wh } from '../../../../planner/irrigation/power-use.ts';
import { programmeDays } from '../../../../planner/irrigation/programme-water.ts';
import { current_A, pumpEfficiency, tradePumpPower, waterPower_W } from '../../../../planner/irrigation/pump-power.ts';
import { atSpeed } from '../../../../planner/irrigation/pump-speed.ts';
import {
  firstFlush,
  rainCatch_L,
  rainCatchByTradeFactor_L,
  rainKept,
  roofFlow_L_per_min,
} from '../../../../planner/irrigation/rain-catch.ts';
import { daysAway, drawDown, wholeRuns, worstSpells } from '../../../../planner/irrigation/reservoir.ts';
import { runOfMinutes, runTime } from '../../../../planner/irrigation/run-time.ts';
import { flowOfCatch_L_per_h } from '../../../../planner/irrigation/setup-card.ts';
import { singleTubeFlow_m3_per_s, siphonLoss_L, siphonTest, ventLeak_m3_per_s } from '../../../../planner/irrigation/siphon.ts';
import { eggToAdult_days, standing_h } from '../../../../planner/irrigation/standing-water.ts';
import { interval, stagger } from '../../../../planner/irrigation/timer-programme.ts';
import {
  distributionUniformity,
  distributionUniformityOfMeans,
  emissionUniformity,
  flowRatioOfPressure,
  grossDepth_m,
} from '../../../../planner/irrigation/uniformity.ts';
import { turnsFor } from '../../../../planner/irrigation/valve-calibration.ts';
import { valveK, valvePressureLoss } from '../../../../planner/irrigation/valve-loss.ts';
import { dynamicViscosity_Pa_s, waterDensity_kg_per_m3 } from '../../../../planner/irrigation/water-properties.ts';
import { aSnake } from '../../../builders/a-line.ts';
import { refusal } from '../../../builders/faults-of.ts';

const ring: BasinRing = { basinDiameter_m: 1, bagDiameter_m: 0.5, depth_m: 0.1, bagPorosity: 0 };
const battery = { daily_Wh: 100, days: 3, volts_V: 12, depthOfDischarge: 0.5, inverterShare: 1, cableShare: 0.97 };
const length = { equivalentLength_m: 1, insideDiameter_m: 0.01, reynolds: 1000, roughness_m: 0 };
const hazen = { flow_m3_per_s: 1e-4, insideDiameter_m: 0.01, length_m: 10, coefficient: 150 };
const pipe = { flow_m3_per_s: 1e-4, insideDiameter_m: 0.01, length_m: 10, roughness_m: 1e-6, viscosity_m2_per_s: 1e-6 };
const rows = { rows: 2, bedsInRow: 3, spacing_m: 1, rowSpacing_m: 2 };
const power = {
  pump_W: 25,
  run_min: 10,
  runsPerDay: 1,
  controller_W: 1,
  inverterIdle_W: 1,
  inverterIdle_h: 24,
  inverterShare: 0.9,
};
const rain = { area_m2: 10, rain_mm: 10, catchShare: 0.9 };
const away = { usable_L: 100, beds: 2, fill_L: 10, fillsPerDay: 1 };
const tank = {
  capacity_L: 100,
  usableShare: 0.9,
  start_L: 50,
  days: [],
  catchment: null,
  floatTopUp_L_per_day: 0,
  refilledByHand: false,
};
const tube = { drivingHead_m: 1, length_m: 1, insideDiameter_m: 0.01, lossK: 1, roughness_m: 0, viscosity_m2_per_s: 1e-6 };
const emission = { manufacturingCv: 0.1, emittersPerPlant: 1, leastOverMeanFlow: 0.9 };
const turned = [
  { turns: 0, lossK: 10 },
  { turns: 1, lossK: 20 },
  { turns: 2, lossK: 40 },
];
const event = { month: 6, every_days: 2, start: '06:00', run_min: 10, zone: 1 };

describe('what cannot be meant is refused at its field, with its unit', () => {
  test.each<readonly [string, () => unknown]>([
    ['supplyDiameter_m not-positive m', () => airGap_m(0)],
    ['supplyInsideDiameter_m not-positive m', () => airGapBritish_m(0)],
    ['basinDiameter_m not-positive m', () => basinRing_L({ ...ring, basinDiameter_m: 0 })],
    ['bagDiameter_m too-small m', () => basinRing_L({ ...ring, bagDiameter_m: -1 })],
    ['bagDiameter_m wider-than-basin', () => basinRing_L({ ...ring, bagDiameter_m: 1.1 })],
    ['depth_m too-large m', () => basinRing_L({ ...ring, depth_m: 11 })],
    ['bagPorosity too-large', () => basinRing_L({ ...ring, bagPorosity: 1.1 })],
    ['volume_L too-small L', () => minutesFor(-1, 1)],
    ['flow_L_per_h not-positive L/h', () => minutesFor(1, 0)],
    ['basins too-small', () => minutesForBasins(-1, 1, 1)],
    ['wall_m too-large m', () => freeboard_m(11, 0.5, 0.1)],
    ['holeShare too-large', () => freeboard_m(1, 1.1, 0.1)],
    ['fillDepth_m too-small m', () => freeboard_m(1, 0.5, -0.1)],
    ['volts_V not-positive V', () => ratedUsable_Wh(0, 1, 1)],
    ['charge_Ah too-small Ah', () => ratedUsable_Wh(12, -1, 1)],
    ['usableShare too-large', () => ratedUsable_Wh(12, 1, 1.1)],
    ['capacity_Wh too-small Wh', () => usableEnergy_Wh(-1, 1)],
    ['usableShare too-small', () => usableEnergy_Wh(1, -0.1)],
    ['inverterShare not-positive', () => usableEnergy_Wh(1, 1, 0)],
    ['inverterShare too-large', () => usableEnergy_Wh(1, 1, 1.1)],
    ['reserveShare too-large', () => energyAboveReserve_Wh(1, 1.1, 1)],
    ['usable_Wh too-small Wh', () => hoursFor(-1, 1)],
    ['load_W not-positive W', () => hoursFor(1, 0)],
    ['start_Wh too-small Wh', () => afterSelfDischarge_Wh(-1, 0.1, 1)],
    ['selfDischarge_share_per_month too-large', () => afterSelfDischarge_Wh(1, 1.1, 1)],
    ['months too-small', () => afterSelfDischarge_Wh(1, 0.1, -1)],
    ['usable_Wh too-small Wh', () => daysFor(-1, 1)],
    ['daily_Wh not-positive Wh', () => daysFor(1, 0)],
    ['daily_Wh not-positive Wh', () => daysWithSelfDischarge(1, 0, 0)],
    ['daily_Wh too-small Wh', () => batterySize_Ah({ ...battery, daily_Wh: -1 })],
    ['days too-large d', () => batterySize_Ah({ ...battery, days: 366 })],
    ['depthOfDischarge not-positive', () => batterySize_Ah({ ...battery, depthOfDischarge: 0 })],
    ['daily_Wh too-small Wh', () => panelSize_W(-1, 4)],
    ['peakSun_h not-positive h', () => panelSize_W(1, 0)],
    ['lossShare not-positive', () => panelSize_W(1, 4, 0)],
    ['lossK too-small', () => fittingLoss_m(-1, 1)],
    ['equivalentLength_m too-small m', () => equivalentLengthK({ ...length, equivalentLength_m: -1 })],
    ['insideDiameter_m not-positive m', () => equivalentLengthK({ ...length, insideDiameter_m: 0 })],
    ['bore_m not-positive m', () => barbK(0, 0.01)],
    ['insideDiameter_m not-positive m', () => enlargementK(0.01, 0)],
    ['bore_m wider-than-tube', () => barbK(0.02, 0.01)],
    ['freeAreaShare not-positive', () => intrudingBarb(0)],
    ['freeAreaShare too-large', () => intrudingBarb(1.1)],
    ['reynolds not-positive', () => laminarFactor(0)],
    ['reynolds not-positive', () => swameeJainFactor(0, 0)],
    ['relativeRoughness too-large', () => swameeJainFactor(5000, 0.6)],
    ['reynolds not-positive', () => transitionFactor(0, 0)],
    ['relativeRoughness too-small', () => transitionFactor(3000, -0.1)],
    ['reynolds not-positive', () => blasiusFactor(0)],
    ['reynolds not-positive', () => smallTubeFactor(0)],
    ['flow_m3_per_s too-small m3/s', () => hazenWilliamsLoss_m({ ...hazen, flow_m3_per_s: -1 })],
    ['insideDiameter_m not-positive m', () => hazenWilliamsLoss_m({ ...hazen, insideDiameter_m: 0 })],
    ['length_m too-small m', () => hazenWilliamsLoss_m({ ...hazen, length_m: -1 })],
    ['coefficient too-small', () => hazenWilliamsLoss_m({ ...hazen, coefficient: 9 })],
    ['density_kg_per_m3 not-positive kg/m3', () => headOfPressure_m(1, 0)],
    ['density_kg_per_m3 not-positive kg/m3', () => pressureOfHead_Pa(1, 0)],
    ['rows too-small', () => rowsOfBeds({ ...rows, rows: 0 })],
    ['bedsInRow too-large', () => rowsOfBeds({ ...rows, bedsInRow: 1001 })],
    ['spacing_m not-positive m', () => rowsOfBeds({ ...rows, spacing_m: 0 })],
    ['rowSpacing_m not-positive m', () => rowsOfBeds({ ...rows, rowSpacing_m: 0 })],
    ['outlets not-whole', () => multipleOutletFactor(1.5, 1.8)],
    ['flowExponent too-large', () => multipleOutletFactor(2, 3.1)],
    ['outlets too-small', () => multipleOutletFactorShort(0, 1.8)],
    ['flowExponent too-small', () => multipleOutletFactorShort(2, 0.9)],
    [
      'atFlow_m3_per_s not-positive m3/s',
      () => systemCoefficient_s2_per_m5({ ...pipe, atFlow_m3_per_s: 0, fittingK: 0 } as never),
    ],
    ['insideDiameter_m not-positive m', () => boreArea_m2(0)],
    ['velocity_m_per_s too-small m/s', () => flowAtVelocity_m3_per_s(-1, 0.01)],
    ['viscosity_m2_per_s not-positive m2/s', () => reynoldsNumber(1e-4, 0.01, 0)],
    ['lossK too-small', () => squareLaw_s2_per_m5(-1, 0.01)],
    ['flow_m3_per_s too-small m3/s', () => pipeFriction({ ...pipe, flow_m3_per_s: -1 })],
    ['length_m too-small m', () => pipeFriction({ ...pipe, length_m: -1 })],
    ['roughness_m too-large m', () => pipeFriction({ ...pipe, roughness_m: 0.02 })],
    ['insideDiameter_m not-positive m', () => pipeFriction({ ...pipe, insideDiameter_m: 0 })],
    ['power_W too-small W', () => loadEnergy_Wh(-1, 1)],
    ['hours_h too-small h', () => loadEnergy_Wh(1, -1)],
    ['run_min too-small min', () => runEnergy_Wh(1, -1, 1)],
    ['runs too-small', () => runEnergy_Wh(1, 1, -1)],
    ['days too-small d', () => seasonEnergy_Wh(1, 1, 1, -1)],
    ['inverterShare not-positive', () => dailyPower({ ...power, inverterShare: 0 })],
    ['inverterShare too-large', () => dailyPower({ ...power, inverterShare: 1.1 })],
    ['inverterIdle_h too-large h', () => dailyPower({ ...power, inverterIdle_h: 25 })],
    ['events.0.month too-large', () => programmeDays([{ ...event, month: 13 }], [], [])],
    ['events.1.every_days too-small days', () => programmeDays([event, { ...event, every_days: 0 }], [], [])],
    ['flow_m3_per_s too-small m3/s', () => waterPower_W(-1, 1, 1000)],
    ['head_m too-small m', () => waterPower_W(1, -1, 1000)],
    ['density_kg_per_m3 not-positive kg/m3', () => waterPower_W(1, 1, 0)],
    ['electric_W not-positive W', () => pumpEfficiency(1, 0)],
    ['efficiency not-positive', () => tradePumpPower(1, 1, 0)],
    ['efficiency too-large', () => tradePumpPower(1, 1, 1.1)],
    ['power_W too-small W', () => current_A(-1, 12)],
    ['volts_V not-positive V', () => current_A(1, 0)],
    ['speedRatio too-large', () => atSpeed(11)],
    ['area_m2 too-small m2', () => rainCatch_L({ ...rain, area_m2: -1 })],
    ['rain_mm too-small mm', () => rainCatch_L({ ...rain, rain_mm: -1 })],
    ['catchShare too-large', () => rainCatch_L({ ...rain, catchShare: 1.1 })],
    ['factor_us_gal_per_ft2_in too-large gal/ft2/in', () => rainCatchByTradeFactor_L({ ...rain, factor_us_gal_per_ft2_in: 1.1 })],
    ['area_m2 too-small m2', () => firstFlush(-1)],
    ['us_gal_per_1000_ft2 too-small gal/1000 ft2', () => firstFlush(1, -1)],
    ['area_m2 too-small m2', () => roofFlow_L_per_min(-1, 1)],
    ['intensity_mm_per_h too-small mm/h', () => roofFlow_L_per_min(1, -1)],
    ['firstFlush_mm too-small mm', () => rainKept({ ...rain, firstFlush_mm: -1, free_L: 1 })],
    ['free_L too-small L', () => rainKept({ ...rain, firstFlush_mm: 0, free_L: -1 })],
    ['usable_L too-small L', () => daysAway({ ...away, usable_L: -1 })],
    ['beds not-positive', () => daysAway({ ...away, beds: 0 })],
    ['fill_L not-positive', () => daysAway({ ...away, fill_L: 0 })],
    ['fillsPerDay not-positive', () => daysAway({ ...away, fillsPerDay: 0 })],
    ['capacity_L too-small L', () => wholeRuns(-1, 1, 1)],
    ['usableShare too-large', () => wholeRuns(1, 1.1, 1)],
    ['run_L not-positive L', () => wholeRuns(1, 1, 0)],
    ['capacity_L not-positive L', () => drawDown({ ...tank, capacity_L: 0 })],
    ['usableShare too-large', () => drawDown({ ...tank, usableShare: 1.1 })],
    ['start_L too-large L', () => drawDown({ ...tank, start_L: 101 })],
    ['floatTopUp_L_per_day too-small L/day', () => drawDown({ ...tank, floatTopUp_L_per_day: -1 })],
    ['days.0.need_L too-small L', () => drawDown({ ...tank, days: [{ date: '2027-06-01' as never, need_L: -1, rain_mm: 0 }] })],
    ['years too-few', () => worstSpells(tank, [])],
    ['wishes.0.wanted_L too-small L', () => runTime([{ id: 'a', flow_L_per_h: 1, wanted_L: -1, holds_L: null }])],
    ['run_min too-small min', () => runOfMinutes([], -1)],
    ['time_s not-positive', () => flowOfCatch_L_per_h(100, 0)],
    ['caught_mL too-small', () => flowOfCatch_L_per_h(-1)],
    ['outletElevation_m too-small m', () => siphonTest({ outletElevation_m: -1001, reservoirLevel_m: 0, vented: false })],
    ['reservoirLevel_m too-large m', () => siphonTest({ outletElevation_m: 0, reservoirLevel_m: 9001, vented: false })],
    [
      'reservoirArea_m2 too-small m2',
      () => siphonLoss_L({ reservoirArea_m2: -1, reservoirLevel_m: 0, outletElevation_m: 0, inletElevation_m: 0 }),
    ],
    ['drivingHead_m too-small m', () => singleTubeFlow_m3_per_s({ ...tube, drivingHead_m: -1 })],
    ['length_m not-positive m', () => singleTubeFlow_m3_per_s({ ...tube, length_m: 0 })],
    ['head_m too-small m', () => ventLeak_m3_per_s(0.001, -1)],
    ['dischargeCoefficient too-large', () => ventLeak_m3_per_s(0.001, 1, 1.1)],
    ['temperature_C too-small C', () => eggToAdult_days(9)],
    ['volume_L too-small L', () => standing_h(-1, 1)],
    ['use_L_per_day too-small L/day', () => standing_h(1, 0)],
    ['needs.0.need_L_per_day too-small L/day', () => interval([{ id: 'a', need_L_per_day: -1, fill_L: 1 }])],
    ['needs.0.fill_L not-positive L', () => interval([{ id: 'a', need_L_per_day: 1, fill_L: 0 }])],
    ['limit_W not-positive W', () => stagger([], 0)],
    ['loads.0.run_min too-small min', () => stagger([{ id: 'a', run_min: -1, power_W: 1 }], 10)],
    ['loads.0.power_W beyond-the-power', () => stagger([{ id: 'a', run_min: 1, power_W: 11 }], 10)],
    ['values too-few', () => distributionUniformity([])],
    ['values.1 too-small', () => distributionUniformity([1, -1])],
    ['meanOfLowQuarter too-small', () => distributionUniformityOfMeans(-1, 1)],
    ['meanOfAll not-positive', () => distributionUniformityOfMeans(0, 0)],
    ['manufacturingCv too-large', () => emissionUniformity({ ...emission, manufacturingCv: 0.6 })],
    ['emittersPerPlant not-whole', () => emissionUniformity({ ...emission, emittersPerPlant: 1.5 })],
    ['leastOverMeanFlow too-large', () => emissionUniformity({ ...emission, leastOverMeanFlow: 1.1 })],
    ['netDepth_m too-small m', () => grossDepth_m(-1, 1)],
    ['uniformity not-positive', () => grossDepth_m(1, 0)],
    ['uniformity too-large', () => grossDepth_m(1, 1.1)],
    ['pressureRatio too-small', () => flowRatioOfPressure(-1, 0.5)],
    ['outletExponent too-large', () => flowRatioOfPressure(1, 2.1)],
    ['wantedK not-positive', () => turnsFor(turned, 0)],
    ['readings too-few', () => turnsFor(turned.slice(1), 15)],
    [
      'readings.0.turns too-large',
      () =>
        turnsFor(
          turned.map((each) => ({ ...each, turns: 101 })),
          15,
        ),
    ],
    [
      'readings.0.lossK not-positive',
      () =>
        turnsFor(
          turned.map((each) => ({ ...each, lossK: 0 })),
          15,
        ),
    ],
    ['readings not-one-way', () => turnsFor([...turned, { turns: 3, lossK: 40 }], 15)],
    ['flowCoefficient_us not-positive gal/min/psi^0.5', () => valveK(0, 0.01)],
    ['bore_m not-positive m', () => valveK(1, 0)],
    ['flowCoefficient_us not-positive gal/min/psi^0.5', () => valvePressureLoss(0, 1e-4)],
    ['flow_m3_per_s too-small m3/s', () => valvePressureLoss(1, -1)],
    ['temperature_C too-large C', () => waterDensity_kg_per_m3(61)],
    ['temperature_C too-small C', () => dynamicViscosity_Pa_s(-1)],
  ])('%s', (said, call) => {
    expect(refusal(call)).toBe(said);
  });
});

describe('a line that cannot be is told at its place', () => {
  const line = aSnake({ beds: 2 });
  const said = (change: Partial<LineNetwork>) => lineFaults({ ...line, ...change }).map(({ path, code }) => `${path} ${code}`);
  const withTube = (change: Partial<LineTube>) =>
    said({ tubes: line.tubes.map((tube, at) => (at === 1 ? { ...tube, ...change } : tube)) });
  const withOutlet = (change: Partial<LineOutlet>) =>
    said({ outlets: line.outlets.map((outlet, at) => (at === 1 ? { ...outlet, ...change } : outlet)) });
  const emitters = { count: 10, flowEach_L_per_h: 2, atHead_m: 10, exponent: 0.5 };

  test.each<readonly [string, () => readonly string[]]>([
    ['tubes.1.length_m not-positive', () => withTube({ length_m: 0 })],
    ['tubes.1.length_m not-positive', () => withTube({ length_m: Number.NaN })],
    ['tubes.1.length_m too-large', () => withTube({ length_m: 10_001 })],
    ['tubes.1.insideDiameter_m not-positive', () => withTube({ insideDiameter_m: 0, roughness_m: 0 }).slice(0, 1)],
    ['tubes.1.insideDiameter_m too-large', () => withTube({ insideDiameter_m: 0.6 })],
    ['tubes.1.roughness_m out-of-range', () => withTube({ roughness_m: -1 })],
    ['tubes.1.roughness_m out-of-range', () => withTube({ roughness_m: 0.0127 / 4 })],
    ['tubes.1.fittingK out-of-range', () => withTube({ fittingK: -1 })],
    ['tubes.1.to loop', () => withTube({ to: 'PUMP' })],
    ['outlets.1.outlet_m not-a-number', () => withOutlet({ outlet_m: Number.NaN })],
    ['outlets.1.bore_m not-positive', () => withOutlet({ bore_m: 0 })],
    ['outlets.1.bore_m wider-than-tube', () => withOutlet({ bore_m: 0.02 })],
    ['outlets.1.node not-on-the-line', () => withOutlet({ node: 'nowhere' })],
    ['outlets.1.lossK not-positive', () => withOutlet({ lossK: 0 })],
    ['outlets.1.lossK not-positive', () => withOutlet({ lossK: -1, emitters })],
    ['outlets.1.emitters.count not-whole', () => withOutlet({ emitters: { ...emitters, count: 1.5 } })],
    ['outlets.1.emitters.count not-whole', () => withOutlet({ emitters: { ...emitters, count: 0 } })],
    ['outlets.1.emitters.flowEach_L_per_h not-positive', () => withOutlet({ emitters: { ...emitters, flowEach_L_per_h: 0 } })],
    ['outlets.1.emitters.atHead_m not-positive', () => withOutlet({ emitters: { ...emitters, atHead_m: 0 } })],
    ['outlets.1.emitters.exponent out-of-range', () => withOutlet({ emitters: { ...emitters, exponent: 0.04 } })],
    ['outlets.1.emitters.exponent out-of-range', () => withOutlet({ emitters: { ...emitters, exponent: 1.1 } })],
    ['level_m not-a-number', () => said({ level_m: Number.NaN })],
    ['viscosity_m2_per_s not-positive', () => said({ viscosity_m2_per_s: 0 })],
    ['outlets too-few', () => said({ outlets: [] })],
    ['tubes too-few', () => said({ tubes: [], outlets: [] }).slice(0, 1)],
    ['outlets.1.id twice', () => withOutlet({ id: 'bed 1' })],
    ['tubes.1.id twice', () => withTube({ id: 'riser' })],
  ])('%s', (told, faults) => {
    expect(faults()).toContain(told);
  });

  test('a ring, a run that ends where it begins and one the source does not reach', () => {
    expect(withTube({ from: 'T1', to: 'T1' })).toContain('tubes.1.to loop');
    expect(said({ tubes: [...line.tubes, { ...(line.tubes[0] as LineTube), id: 'second', to: 'T1' }] })).toEqual([
      'tubes.5.to loop',
    ]);
    expect(said({ tubes: [...line.tubes, { ...(line.tubes[0] as LineTube), id: 'apart', from: 'X', to: 'Y' }] })).toEqual([
      'tubes.5.from not-connected',
    ]);
  });

  test('as it is, and at the ends of what makes sense, it has none', () => {
    expect(said({})).toEqual([]);
    expect(withOutlet({ lossK: 0, emitters: { ...emitters, exponent: 1 } })).toEqual([]);
    expect(withOutlet({ emitters: { ...emitters, exponent: 0.05, count: 1 } })).toEqual([]);
    expect(withTube({ length_m: 10_000, fittingK: 0, roughness_m: 0 })).toEqual([]);
  });
});
