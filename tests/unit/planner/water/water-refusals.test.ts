import { describe, expect, test } from 'vitest';
import { runBed } from '../../../../planner/water/bed-run.ts';
import type { BedStore } from '../../../../planner/water/bed-store.ts';
import { bedYear } from '../../../../planner/water/bed-year.ts';
import {
  drainedColumnShare,
  gardnerCoefficient,
  supplyAt_mm_per_day,
  supplyHeight_cm,
  tubeRise_mm,
} from '../../../../planner/water/capillary-rise.ts';
import {
  areaUse_L_per_day,
  containerDays,
  leachateShare,
  poreSpace_share,
  roundUse_L_per_day,
  toApply_L,
  wallLoss_L_per_day,
} from '../../../../planner/water/container-water.ts';
import { cropCoefficient, meanCoefficient, scaledStages } from '../../../../planner/water/crop-curve.ts';
import { daysAway } from '../../../../planner/water/days-away.ts';
import {
  dailyRain_mm,
  dependableRain_mm,
  scsRain_mm,
  storageFactor,
  tr21Rain_mm,
} from '../../../../planner/water/effective-rain.ts';
import { handRound } from '../../../../planner/water/hand-rounds.ts';
import {
  adjustedKc,
  initialKc,
  mixedKc,
  organicReduction,
  underPlastic,
  underShade_mm_per_day,
} from '../../../../planner/water/kc-adjustments.ts';
import { effectiveCover } from '../../../../planner/water/plant-density.ts';
import { schedule } from '../../../../planner/water/root-zone-days.ts';
import {
  closedBedRise_dS_per_m,
  concentrationFactor,
  leachingShare,
  saltAndDroughtStress,
  saltForYield_dS_per_m,
  saltRestriction,
  withLeaching_mm,
  yieldInSalt,
} from '../../../../planner/water/salts.ts';
import { totalAvailable_mm } from '../../../../planner/water/soil-store.ts';
import { dryingDays } from '../../../../planner/water/surface-evaporation.ts';
import { lineInterval } from '../../../../planner/water/watering-interval.ts';
import { weatherRun } from '../../../../planner/water/weather-run.ts';
import { stressFromYield, yieldShare } from '../../../../planner/water/yield-response.ts';
import { refusal } from '../../../builders/faults-of.ts';

const bare = bedYear({ area_m2: 1, depth_m: 1, crops: [], cover: { bareReduction: 0, exposure: 1 } });
const weather = weatherRun([]);
const free = { kind: 'basin' as const, capacity_L: 50, fill_L: 40, rise_mm_per_day: 10, open_m2: 0.1 };
const bed: BedStore = {
  bedId: 'b',
  area_m2: 1,
  rain_m2: 1,
  wall_m2: 0,
  wallFactor: 0,
  depth_m: 0.3,
  availableShare: 0.2,
  free,
};
const run = (change: Partial<BedStore>) => () => runBed({ ...bed, ...change }, bare, weather, { kind: 'rain-only' });
const tube = { radius_mm: 0.1, tension_N_per_m: 0.0728, density_kg_per_m3: 998.2, gravity_m_per_s2: 9.81 };
const loam = { residualShare: 0.078, saturatedShare: 0.43, alpha_per_cm: 0.036, n: 1.56, conductivity_cm_per_day: 24.96 };
const container = { mix_L: 40, availableShare: 0.25, depletionShare: 0.5, use_L_per_day: 2 };
const curve = { stages_days: [10, 20, 30, 10] as const, kcIni: 0.5, kcMid: 1.1, kcEnd: 0.9 };
const air = { wind2m_m_per_s: 2, rhmin_share: 0.45, height_m: 0.5 };
const wetting = { wetting_mm: 20, kcLight: 0.5, kcHeavy: 0.8, wettedShare: 1 };
const cover = { coverShare: 0.5, noonHeightSine: 0.9, heightToWidth: 1 };
const tolerance = { threshold_dS_per_m: 1.3, slope_share_per_dS_per_m: 0.13 };
const soil = { fieldCapacityShare: 0.3, wiltingShare: 0.1, rootDepth_m: 0.5 };
const away = { beds: [], supplies: [], weather, month: 7, confidence: 0.9, limit_days: 30 };
const interval = { beds: [], weather, month: 7, confidence: 0.9, most_days: 21, standing_days: 3 };
const drying = { eto_mm_per_day: [5], kcb: 0.5, kcMax: 1.2, rew_mm: 8, tew_mm: 20 };

describe('what cannot be meant is refused at its field, with its unit', () => {
  test.each<readonly [string, () => unknown]>([
    ['area_m2 too-small m2', run({ area_m2: 0 })],
    ['rain_m2 too-small m2', run({ rain_m2: -1 })],
    ['wall_m2 too-small m2', run({ wall_m2: -1 })],
    ['wallFactor too-large', run({ wallFactor: 0.6 })],
    ['depth_m too-small m', run({ depth_m: 0 })],
    ['availableShare too-large', run({ availableShare: 1 })],
    ['free.capacity_L too-small L', run({ free: { ...free, capacity_L: -1 } })],
    ['free.fill_L too-large L', run({ free: { ...free, fill_L: 51 } })],
    ['free.rise_mm_per_day too-small mm/day', run({ free: { ...free, rise_mm_per_day: -1 } })],
    ['free.open_m2 too-small', run({ free: { ...free, open_m2: -0.1 } })],
    ['radius_mm not-positive mm', () => tubeRise_mm({ ...tube, radius_mm: 0 })],
    ['n too-small', () => gardnerCoefficient(1)],
    ['flow_mm_per_day not-positive mm/day', () => supplyHeight_cm(loam, 0)],
    ['n too-small', () => supplyHeight_cm({ ...loam, n: 1 }, 5)],
    ['conductivity_cm_per_day not-positive cm/day', () => supplyHeight_cm({ ...loam, conductivity_cm_per_day: 0 }, 5)],
    ['height_cm too-small cm', () => supplyAt_mm_per_day(loam, -1)],
    ['height_cm not-positive cm', () => drainedColumnShare(loam, 0)],
    ['air_share too-large', () => poreSpace_share(1.1, 0)],
    ['capacity_share too-large', () => poreSpace_share(0.6, 0.5)],
    ['eto_mm_per_day too-large mm/day', () => roundUse_L_per_day(21, 1, 1)],
    ['kc too-large', () => roundUse_L_per_day(5, 2.6, 1)],
    ['diameter_m too-small m', () => roundUse_L_per_day(5, 1, -1)],
    ['etc_mm_per_day too-large mm/day', () => areaUse_L_per_day(51, 1)],
    ['area_m2 too-small m2', () => areaUse_L_per_day(5, -1)],
    ['factor too-large', () => wallLoss_L_per_day(5, 1, 0.6)],
    ['wall_m2 too-small m2', () => wallLoss_L_per_day(5, -1)],
    ['mix_L too-small L', () => containerDays({ ...container, mix_L: -1 })],
    ['availableShare too-large', () => containerDays({ ...container, availableShare: 1.1 })],
    ['depletionShare too-large', () => containerDays({ ...container, depletionShare: 1.1 })],
    ['use_L_per_day not-positive L/day', () => containerDays({ ...container, use_L_per_day: 0 })],
    ['applied_L not-positive L', () => leachateShare(0, 0)],
    ['leachate_L too-large', () => leachateShare(3, 2)],
    ['leaching too-large', () => toApply_L(1, 0.95)],
    ['stages_days.1 too-small days', () => cropCoefficient({ ...curve, stages_days: [1, -1, 1, 1] }, 1)],
    ['kcIni too-large', () => cropCoefficient({ ...curve, kcIni: 2.6 }, 1)],
    ['kcMid too-small', () => meanCoefficient({ ...curve, kcMid: -0.1 }, 1, 2)],
    ['kcEnd too-large', () => cropCoefficient({ ...curve, kcEnd: 2.6 }, 1)],
    ['total_days too-small days', () => scaledStages(curve.stages_days, 0)],
    ['stages_days too-small', () => scaledStages([0, 0, 0, 0], 90)],
    ['month too-large', () => daysAway({ ...away, month: 13 }, { progress: () => undefined, shouldStop: () => false })],
    [
      'confidence too-small',
      () => daysAway({ ...away, confidence: 0.4 }, { progress: () => undefined, shouldStop: () => false }),
    ],
    [
      'limit_days not-whole',
      () => daysAway({ ...away, limit_days: 1.5 }, { progress: () => undefined, shouldStop: () => false }),
    ],
    ['rain_mm too-small mm', () => scsRain_mm(-1)],
    ['rain_mm too-small mm', () => dependableRain_mm(-1)],
    ['storage_mm too-large mm', () => storageFactor(401)],
    ['rain_mm too-small mm', () => tr21Rain_mm(-1, 1)],
    ['etc_mm too-small mm', () => tr21Rain_mm(1, -1)],
    ['rain_mm too-large mm', () => dailyRain_mm(2001)],
    ['can_L not-positive L', () => handRound([], 0)],
    ['need_L too-small L', () => handRound([{ bedId: 'b', need_L: -1 }], 10)],
    ['kcTable too-large', () => adjustedKc(2.6, air)],
    ['rhmin_share too-large', () => adjustedKc(1, { ...air, rhmin_share: 1.1 })],
    ['height_m too-small m', () => adjustedKc(1, { ...air, height_m: -1 })],
    ['wetting_mm too-small mm', () => initialKc({ ...wetting, wetting_mm: -1 })],
    ['wettedShare too-small', () => initialKc({ ...wetting, wettedShare: 0 })],
    ['reductionShare too-large', () => underPlastic(1, 0.6)],
    ['coverShare too-large', () => organicReduction(1.1)],
    ['shadeShare too-large', () => underShade_mm_per_day(5, 1)],
    ['crops too-small', () => mixedKc([])],
    ['coverShare too-large', () => effectiveCover({ ...cover, coverShare: 1.1 })],
    ['noonHeightSine too-small', () => effectiveCover({ ...cover, noonHeightSine: 0 })],
    ['heightToWidth too-small', () => effectiveCover({ ...cover, heightToWidth: -1 })],
    ['p too-large', () => schedule({ days: [], p: 1.1, start_mm: 0, first_mm: null })],
    ['start_mm too-small mm', () => schedule({ days: [], p: 0.5, start_mm: -1, first_mm: null })],
    ['ece_dS_per_m too-small dS/m', () => yieldInSalt(tolerance, -1)],
    ['share too-large', () => saltForYield_dS_per_m(tolerance, 1.1)],
    ['slope_share_per_dS_per_m not-positive', () => saltForYield_dS_per_m({ ...tolerance, slope_share_per_dS_per_m: 0 }, 0.5)],
    ['ky not-positive', () => saltAndDroughtStress({ tolerance, ece_dS_per_m: 1, ky: 0, ks: 1 })],
    ['ecw_dS_per_m too-large dS/m', () => leachingShare({ ecw_dS_per_m: 51, ece_dS_per_m: 60 })],
    ['ece_dS_per_m not-positive dS/m', () => leachingShare({ ecw_dS_per_m: 1, ece_dS_per_m: 0 })],
    ['ecw_dS_per_m too-salty', () => leachingShare({ ecw_dS_per_m: 10, ece_dS_per_m: 2 })],
    ['share too-large', () => withLeaching_mm(100, 1)],
    ['efficiencyShare too-small', () => withLeaching_mm(100, 0.1, 0)],
    ['leaching too-small', () => concentrationFactor(0)],
    ['ecw_dS_per_m too-small dS/m', () => saltRestriction(-1)],
    ['soilWater_L not-positive L', () => closedBedRise_dS_per_m(1, 1, 0)],
    ['fieldCapacityShare too-large', () => totalAvailable_mm({ ...soil, fieldCapacityShare: 1.1 })],
    ['wiltingShare too-large', () => totalAvailable_mm({ ...soil, wiltingShare: 0.4 })],
    ['rootDepth_m too-large m', () => totalAvailable_mm({ ...soil, rootDepth_m: 6 })],
    ['tew_mm too-small mm', () => dryingDays({ ...drying, tew_mm: 0 })],
    ['rew_mm too-large mm', () => dryingDays({ ...drying, rew_mm: 21 })],
    ['month too-small', () => lineInterval({ ...interval, month: 0 })],
    ['confidence too-large', () => lineInterval({ ...interval, confidence: 1.1 })],
    ['most_days too-large', () => lineInterval({ ...interval, most_days: 61 })],
    ['standing_days too-small', () => lineInterval({ ...interval, standing_days: 0 })],
    ['ky too-large', () => yieldShare(4, 1)],
    ['etShare too-large', () => yieldShare(1, 1.1)],
    ['ky not-positive', () => stressFromYield(0, 1, 1)],
    ['fullYield_kg not-positive kg', () => stressFromYield(1, 0, 0)],
    ['yield_kg too-large kg', () => stressFromYield(1, 2, 1)],
  ])('%s', (said, call) => {
    expect(refusal(call)).toBe(said);
  });
});

test('the ends of what makes sense are taken', () => {
  for (const call of [
    run({}),
    run({ free: null }),
    run({ free: { ...free, open_m2: 0 } }),
    () => leachateShare(2, 2),
    () => poreSpace_share(0.6, 0.4),
    () => scaledStages(curve.stages_days, 1),
    () => dryingDays({ ...drying, rew_mm: 20 }),
    () => effectiveCover({ ...cover, noonHeightSine: 1 }),
  ])
    expect(refusal(call)).toBe('taken');
});
