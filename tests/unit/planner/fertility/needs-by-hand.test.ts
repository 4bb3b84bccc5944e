import { describe, expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { compostMix, heapCarbonToNitrogen, sampleMoistureShare } from '../../../../planner/fertility/compost-mix.ts';
import { COMPOST_GOALS, combinedPart, goalReading, suggestParts } from '../../../../planner/fertility/compost-plan.ts';
import { secondForMoisture_kg, twoCompostGoals } from '../../../../planner/fertility/compost-second-part.ts';
import { coverCropNitrogen } from '../../../../planner/fertility/cover-crop.ts';
import { cropRates } from '../../../../planner/fertility/crop-rates.ts';
import { sodiumToReplace_meq_per_100g } from '../../../../planner/fertility/gypsum.ts';
import { HEAT_BAND_C, HEAT_BAND_F, type HeatMethod, heatRule } from '../../../../planner/fertility/heat-rule.ts';
import { manureConflict, manureInterval, touchesSoil } from '../../../../planner/fertility/manure-interval.ts';
import { analysisFault, type MaterialContent, reachableShares } from '../../../../planner/fertility/material-content.ts';
import { rideAlong } from '../../../../planner/fertility/material-rate.ts';
import { bedBudget, type PlantingNeed, surplusNutrients } from '../../../../planner/fertility/nutrient-budget.ts';
import {
  addNutrients,
  type NutrientMasses,
  noNutrients,
  phosphate_kg,
  potash_kg,
} from '../../../../planner/fertility/nutrients.ts';
import {
  classWord,
  fourClassRates,
  phosphateBuildup,
  potashNeed_kg_per_m2,
  threeClassRates,
} from '../../../../planner/fertility/recommendation.ts';
import { releaseByYear, releasedShare, seriesFor } from '../../../../planner/fertility/release-years.ts';
import { harvestedPart, harvestedPartOf, harvestRemoval, unitRemoval_kg } from '../../../../planner/fertility/removal.ts';
import { nitrogenBalance } from '../../../../planner/fertility/seasonal-nitrogen.ts';
import type { ClassRatesRow } from '../../../../planner/fertility/soil-tables.ts';
import { teaBatch } from '../../../../planner/fertility/tea-batch.ts';
import { convert } from '../../../../planner/units/convert.ts';
import { soilTables } from '../../../builders/soil-tables.ts';

const lbPerAcre = (rate: number) => convert(rate, 'kg_per_m2', 'lb_per_acre');
const inLb = (rates: { n_kg_per_m2: number; p2o5_kg_per_m2: number; k2o_kg_per_m2: number }) =>
  [rates.n_kg_per_m2, rates.p2o5_kg_per_m2, rates.k2o_kg_per_m2].map((rate) => Number(lbPerAcre(rate).toFixed(6)));

describe('rates of a crop', () => {
  const row = (crop: string, least: number): ClassRatesRow => ({
    crop,
    N_min: least,
    N_max: least + 20,
    P2O5: [4, 3, 2, 1],
    K2O: [40, 30, 20, 10],
  });
  const rows = [row('cabbage', 100), row('kale', 60), row('lettuce', 40)];
  test('its own row before that of its kin, the middle of the nitrogen range, each nutrient by its own class', () => {
    expect(inLb(cropRates(rows, 'kale', 'medium', 'very-high'))).toEqual([70, 3, 10]);
    const kin = cropRates(rows, 'collards', 'very-low', 'high');
    expect(inLb(kin)).toEqual([110, 4, 20]);
    expect(kin.source).toMatch(/row cabbage/);
    expect(kin.standing).toBe('memory');
  });
  test('a crop that no table knows: 80-60-60, phosphate and potash by class', () => {
    const of = (phosphorus: Parameters<typeof cropRates>[2], potassium: Parameters<typeof cropRates>[3]) =>
      inLb(cropRates(rows, 'zinnia', phosphorus, potassium));
    expect(of('low', 'medium')).toEqual([80, 60, 45]);
    expect(of('high', 'very-high')).toEqual([80, 24, 0]);
    expect(of('very-low', 'low')).toEqual([80, 60, 60]);
  });
  test('a cover crop is fed nothing at all', () => {
    const fed = cropRates(rows, 'buckwheat', 'low', 'low');
    expect(inLb(fed)).toEqual([0, 0, 0]);
    expect(fed.standing).toBe('practice');
  });
  test('three classes and four, and the words for them', () => {
    const florida = {
      crop: 'any',
      target_ph: 6.5,
      N: 200,
      P2O5: { low: 150, med: 100, high: 0 },
      K2O: { low: 9, med: 8, high: 7 },
    };
    expect(inLb(threeClassRates(florida, 'very-low', 'low'))).toEqual([200, 150, 9]);
    expect(inLb(threeClassRates(florida, 'medium', 'medium'))).toEqual([200, 100, 8]);
    expect(inLb(threeClassRates(florida, 'high', 'very-high'))).toEqual([200, 0, 7]);
    expect(inLb(threeClassRates({ ...florida, P2O5: {}, K2O: {} }, 'low', 'low'))).toEqual([200, 0, 0]);
    expect(inLb(fourClassRates(row('any', 10), 'low', 'medium'))).toEqual([20, 4, 30]);
    expect(inLb(fourClassRates({ ...row('any', 10), P2O5: [], K2O: [] }, 'low', 'medium'))).toEqual([20, 0, 0]);
    expect(['Med', ' Very  Low ', 'very_high', 'High', 'low', 'medium'].map((word) => classWord(word))).toEqual([
      'medium',
      'very-low',
      'very-high',
      'high',
      'low',
      'medium',
    ]);
  });
  test('buildup ends at the critical level; removal and the margin stay', () => {
    const phosphorus = { critical_mg_per_kg: 25, perStep_kg_per_m2: 0.002, years: 4, removal_kg_per_m2: 0.01 };
    const low = phosphateBuildup({ ...phosphorus, test_mg_per_kg: 15 });
    expect(low.buildup_kg_per_m2).toBeCloseTo(0.005, 12);
    expect(low.need_kg_per_m2).toBeCloseTo(0.015, 12);
    expect(phosphateBuildup({ ...phosphorus, test_mg_per_kg: 30 })).toEqual({ buildup_kg_per_m2: 0, need_kg_per_m2: 0.01 });
    const potash = { critical_mg_per_kg: 100, cec_meq_per_100g: 10, removal_kg_per_m2: 0 };
    expect(lbPerAcre(potashNeed_kg_per_m2({ ...potash, test_mg_per_kg: 60 }))).toBeCloseTo(40 * 1.5 + 20, 9);
    expect(lbPerAcre(potashNeed_kg_per_m2({ ...potash, test_mg_per_kg: 160 }))).toBeCloseTo(20, 9);
  });
});

describe('the budget', () => {
  const planting = (p: number, area_m2: number, by: PlantingNeed['by']): PlantingNeed => ({
    name: 'a',
    basis: 'test',
    area_m2,
    by,
    need: { ...noNutrients, N: p, P2O5: p },
  });
  test('two plantings on half the bed each are fed both; removal comes on top', () => {
    const halves = [planting(0.03, 2, 'rate'), planting(0.05, 2, 'rate')];
    expect(bedBudget(4, halves, []).need.P2O5).toBeCloseTo(0.08, 12);
    expect(bedBudget(4, [...halves, planting(0.01, 4, 'removal')], []).need.P2O5).toBeCloseTo(0.09, 12);
    expect(bedBudget(4, [planting(0.03, 0, 'rate')], []).need).toMatchObject({ N: 0.03, P2O5: 0 });
  });
  test('a surplus is flagged above 2 g and above twice the need', () => {
    const of = (supply: number, need: number) => {
      const masses = (amount: number): NutrientMasses => ({ ...noNutrients, K2O: amount });
      const none = masses(0);
      return surplusNutrients({ need: masses(need), supply: masses(supply), toFeed: none, surplus: masses(supply - need) });
    };
    expect(of(0.041, 0.02)).toEqual(['K2O']);
    expect(of(0.04, 0.02)).toEqual([]);
    expect(of(0.002, 0)).toEqual([]);
    expect(of(0.0021, 0)).toEqual(['K2O']);
  });
  test('every nutrient is added to its own kind', () => {
    const masses = { N: 1, P2O5: 2, K2O: 3, Ca: 4, Mg: 5, S: 6 };
    expect(addNutrients(masses, masses)).toEqual({ N: 2, P2O5: 4, K2O: 6, Ca: 8, Mg: 10, S: 12 });
    expect(phosphate_kg(10)).toBeCloseTo(22.914, 9);
    expect(potash_kg(10)).toBeCloseTo(12.046, 9);
  });
  test('supply is every part of it', () => {
    const balance = nitrogenBalance({
      need_kg_per_m2: 0.02,
      organicMatter_kg_per_m2: 0.001,
      dressings_kg_per_m2: 0.002,
      legumes_kg_per_m2: 0.004,
      water_kg_per_m2: 0.008,
    });
    expect(balance.supply_kg_per_m2).toBeCloseTo(0.015, 12);
    expect(balance.balance_kg_per_m2).toBeCloseTo(-0.005, 12);
  });
});

describe('what materials bring', () => {
  const content: MaterialContent = {
    nShare: 0.1,
    p2o5Share: 0.05,
    k2oShare: 0.04,
    caShare: 0.03,
    mgShare: 0.02,
    sShare: 0.01,
    firstYearNShare: 0.6,
    isMineral: false,
  };
  const at = (given: MaterialContent, year: number) =>
    Object.values(reachableShares(given, [0.6, 0.1], year)).map((share) => Number(share.toFixed(9)));
  test('organic: nitrogen by its series, phosphate 80 then 20 %, the rest in the first year', () => {
    expect([0, 1, 2].map((year) => at(content, year))).toEqual([
      [0.06, 0.04, 0.04, 0.03, 0.02, 0.01],
      [0.01, 0.01, 0, 0, 0, 0],
      [0, 0, 0, 0, 0, 0],
    ]);
  });
  test('mineral phosphate comes at once; what is not known counts as none', () => {
    expect([0, 1].map((year) => at({ ...content, isMineral: true }, year)[1])).toEqual([0.05, 0]);
    const nothing = { nShare: null, p2o5Share: null, k2oShare: null, caShare: null, mgShare: null, sShare: null };
    expect(at({ ...content, ...nothing }, 0)).toEqual([0, 0, 0, 0, 0, 0]);
  });
  test('an analysis of the whole itself is none too much; one share below zero is', () => {
    expect(analysisFault([0.6, 0.4, null])).toBeNull();
    expect(analysisFault([0.6, -0.1])).not.toBeNull();
    expect(analysisFault([0.6, 0.41])).not.toBeNull();
    expect(analysisFault([])).toBeNull();
  });
  test('a series by origin and first year, the listed later years behind it, never more than is left', () => {
    const table = {
      'manure-cattle': [0.3, 0.1],
      'animal-meal': [0.7, 0.2, 0.09],
      'plant-meal': [0.5, 0.3],
      'compost-poultry': [0.2, 0.4],
      'compost-stable': [0.1, 0.5],
    };
    const of = (firstYearNShare: number | null, animalOrigin = 'none') =>
      seriesFor(table, { kind: 'organic', animalOrigin, firstYearNShare }).map((share) => Number(share.toFixed(9)));
    expect(of(null)).toEqual([]);
    expect(of(0.9, 'raw')).toEqual([0.9, 0.1]);
    expect(of(0.65)).toEqual([0.65, 0.2, 0.09]);
    expect(of(0.75)).toEqual([0.75, 0.2, 0.05]);
    expect(of(0.45)).toEqual([0.45, 0.3]);
    expect(of(0.16)).toEqual([0.16, 0.4]);
    expect(of(0.15)).toEqual([0.15, 0.5]);
    expect(of(0.95)).toEqual([0.95]);
    expect(seriesFor({}, { kind: 'organic', animalOrigin: 'raw', firstYearNShare: 0.3 })).toEqual([0.3]);
  });
  test('each year frees of every dressing so far by its age', () => {
    expect(releaseByYear([10, 0, 20], [0.5, 0.2])).toEqual([5, 2, 10]);
    expect([-1, 0, 1, 2].map((year) => releasedShare([0.5, 0.2], year))).toEqual([0, 0.5, 0.2, 0]);
  });
  test('a cover crop: 17.5 lb a ton for each percent over 1.5, held at 35 (Oregon State PNW 636)', () => {
    const lb = (share: number) => coverCropNitrogen(share).availableShare * 2000;
    expect(lb(0.025)).toBeCloseTo(17.5, 9);
    expect(lb(0.05)).toBeCloseTo(35, 9);
    expect([0.015, 0.035].map((share) => coverCropNitrogen(share).warning)).toEqual([null, null]);
  });
  test('the phosphate that rides along, and nothing to compare it with where none is needed', () => {
    const input = { nShare: 0.02, p2o5Share: 0.03, firstYearNShare: 0.25, needN_kg: 0.1, needP2O5_kg: 0.12 };
    const ride = rideAlong(input);
    expect(ride.byNitrogen_kg).toBeCloseTo(20, 9);
    expect(ride.byPhosphate_kg).toBeCloseTo(4, 9);
    expect(ride.phosphate_kg).toBeCloseTo(0.6, 9);
    expect(ride.phosphateTimesNeed).toBeCloseTo(5, 9);
    expect(rideAlong({ ...input, needP2O5_kg: 0 }).phosphateTimesNeed).toBeNull();
  });
  test('a crop is known by its name in the table or its key in the library', () => {
    const rows = [
      {
        crop: 'spinach',
        crops_csv_id: 'spinach-baby',
        ndb: '',
        water_pct: 91,
        refuse_pct: null,
        protein_g_per_100g: 6.25,
        P_mg_per_100g: 100,
        K_mg_per_100g: 1000,
        Ca_g_per_kg: 1,
        Mg_g_per_kg: 1,
      },
    ];
    const part = harvestedPartOf(rows, 'spinach-baby');
    expect(part).toEqual(harvestedPartOf(rows, 'spinach'));
    const { n_kg, p2o5_kg, k2o_kg } = harvestRemoval(part, 100);
    expect([n_kg, p2o5_kg, k2o_kg].map((kg) => Number(kg.toFixed(9)))).toEqual([1, 0.22914, 1.2046]);
    const wheat = harvestedPart({
      protein_g_per_100g: 5.7,
      phosphorus_mg_per_100g: 0,
      potassium_mg_per_100g: 0,
      proteinPerNitrogen: 5.7,
    });
    expect(wheat.nShare).toBeCloseTo(0.01, 12);
    expect(unitRemoval_kg(10, 0.5, 0.4)).toBe(2);
  });
  test('sodium below its goal is none to replace', () => {
    expect(sodiumToReplace_meq_per_100g(20, 0.2, 0.05)).toBeCloseTo(3, 12);
    expect(sodiumToReplace_meq_per_100g(20, 0.05, 0.2)).toBe(0);
  });
});

describe('a heap', () => {
  const wet = { part_kg: 100, moistureShare: 0.8, nShareOfDry: 0.04, carbonToNitrogen: 15 };
  const dry = { part_kg: 50, moistureShare: 0.2, nShareOfDry: 0.01, carbonToNitrogen: 60 };
  test('reads against its goals, both ends of each included', () => {
    const of = (value: number) => goalReading(value, COMPOST_GOALS.carbonToNitrogen);
    expect([19.9, 20, 24.9, 25, 35, 35.1, 40, 40.1].map(of)).toEqual([
      'too-low',
      'acceptable',
      'acceptable',
      'best',
      'best',
      'acceptable',
      'acceptable',
      'too-high',
    ]);
  });
  test('several parts as one bring the same moisture, nitrogen and carbon', () => {
    const one = combinedPart([wet, dry]);
    expect(one.part_kg).toBe(150);
    expect(one.moistureShare).toBeCloseTo(0.6, 12);
    expect(one.nShareOfDry).toBeCloseTo(1.2 / 60, 12);
    expect(one.carbonToNitrogen).toBeCloseTo(30, 9);
    expect(compostMix([one])).toEqual({ mix_kg: 150, moistureShare: one.moistureShare, carbonToNitrogen: one.carbonToNitrogen });
  });
  test('two further materials meet both goals, or it is said why they cannot', () => {
    const grass = { moistureShare: 0.82, nShareOfDry: 0.04, carbonToNitrogen: 17 };
    const leaves = { moistureShare: 0.38, nShareOfDry: 0.009, carbonToNitrogen: 54 };
    const litter = { moistureShare: 0.37, nShareOfDry: 0.027, carbonToNitrogen: 14 };
    const found = suggestParts(
      [
        { ...grass, part_kg: 60 },
        { ...grass, part_kg: 40 },
      ],
      leaves,
      litter,
      0.6,
      30,
    );
    if (found.state !== 'found') throw new Error(found.because);
    expect(found.mix.moistureShare).toBeCloseTo(0.6, 9);
    expect(found.mix.carbonToNitrogen).toBeCloseTo(30, 6);
    expect(found.mix.mix_kg).toBeCloseTo(100 + found.second_kg + found.third_kg, 9);
    const negative = suggestParts([{ ...grass, part_kg: 100 }], leaves, litter, 0.9, 30);
    const alike = suggestParts([{ ...grass, part_kg: 100 }], leaves, leaves, 0.6, 30);
    if (negative.state === 'found' || alike.state === 'found') throw new Error('neither can be met');
    expect(negative.because).not.toBe(alike.because);
  });
  test('the equations’ own masses are told even where one is below zero', () => {
    const at = (moistureShare: number, carbonToNitrogen: number) => ({ moistureShare, nShareOfDry: 0.02, carbonToNitrogen });
    // goal 0.5 and 30; the second brings only water, the third only carbon, and both too much of it already
    const found = twoCompostGoals(10, [at(0.6, 30), at(0.7, 30), at(0.5, 60)], 0.5, 30);
    expect(found).toMatchObject({ feasible: false, because: 'negative-mass' });
    expect(found.second_kg).toBeCloseTo(-5, 9);
    expect(found.third_kg).toBeCloseTo(0, 9);
    expect(twoCompostGoals(10, [at(0.6, 30), at(0.4, 30), at(0.5, 60)], 0.5, 30)).toMatchObject({ feasible: true });
    expect(twoCompostGoals(10, [at(0.6, 30), at(0.5, 30), at(0.5, 30)], 0.5, 30)).toEqual({
      feasible: false,
      second_kg: null,
      third_kg: null,
      because: 'no-single-answer',
    });
  });
  test('a goal that the first meets alone takes none of the second', () => {
    expect(secondForMoisture_kg({ first_kg: 5, firstMoistureShare: 0.5, secondMoistureShare: 0.8, goalShare: 0.5 })).toBe(0);
  });
  test('carbon and nitrogen by mass as handled; moisture by drying', () => {
    const heap = heapCarbonToNitrogen([
      { part_kg: 10, carbonShare: 0.4, nShare: 0.01 },
      { part_kg: 5, carbonShare: 0.2, nShare: 0.02 },
    ]);
    expect(heap.carbon_kg).toBeCloseTo(5, 12);
    expect(heap.nitrogen_kg).toBeCloseTo(0.2, 12);
    expect(heap.carbonToNitrogen).toBeCloseTo(25, 9);
    expect(sampleMoistureShare(2, 0.5)).toBe(0.75);
  });
  test('the heat rule counts the ends of the band, and each day once (7 CFR 205.203)', () => {
    const rule = (method: HeatMethod, temperatures: readonly number[], turnings = 0) =>
      heatRule({
        method,
        turnings,
        band: HEAT_BAND_C,
        log: temperatures.flatMap((temperature_C, day) => [
          { day, temperature_C },
          { day, temperature_C },
        ]),
      });
    expect(rule('static-aerated', [54.9, 55, 60, 77, 77.1])).toEqual({
      daysInBand: 3,
      longestRun_days: 3,
      wanted_days: 3,
      turnings: 0,
      wantedTurnings: 0,
      met: true,
    });
    expect(rule('in-vessel', [60, 60]).met).toBe(false);
    expect(rule('turned-windrow', [60], 2)).toMatchObject({ wanted_days: 15, wantedTurnings: 5, turnings: 2, met: false });
    expect([HEAT_BAND_F.least_C, HEAT_BAND_F.most_C].map((c) => Number(c.toFixed(2)))).toEqual([55, 76.67]);
  });
});

describe('raw manure and tea', () => {
  test('120 days where the crop touches soil, else 90 (7 CFR 205.203(c)(1))', () => {
    expect(manureInterval('2026-03-01', true)).toEqual({ interval_days: 120, firstHarvest: '2026-06-29' });
    expect(manureInterval('2026-03-01', false)).toEqual({ interval_days: 90, firstHarvest: '2026-05-30' });
    expect(manureConflict('2026-03-01', false, '2026-05-20' as IsoDate)).toEqual({
      firstHarvest: '2026-05-30',
      interval_days: 90,
      daysShort: 10,
    });
  });
  test('only a trellised crop of a group off the ground is held off the soil', () => {
    expect([touchesSoil('fruit', true), touchesSoil('fruit', false), touchesSoil('Leafy greens', true)]).toEqual([
      false,
      true,
      true,
    ]);
  });
  test('undiluted tea is the whole drench; two parts to three are two fifths', () => {
    const input = { area_m2: 10, drench_L_per_m2: 0.5, teaParts: 1, waterParts: 0, compost_kg_per_L: 0.06 };
    expect(teaBatch(input)).toEqual({ drench_L: 5, tea_L: 5, water_L: 0, compost_kg: 5 * 0.06 });
    expect(teaBatch({ ...input, teaParts: 2, waterParts: 3 })).toMatchObject({ tea_L: 2, water_L: 3 });
  });
  test('the shipped salt tables have as many bounds as classes', () => {
    const { classes, ...methods } = soilTables.ec_classes_media_ds_m.upper_bounds;
    for (const bounds of Object.values(methods)) expect(bounds).toHaveLength(classes.length);
  });
});
