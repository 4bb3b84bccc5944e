import { describe } from 'vitest';
import { bedDose_kg, looseVolume_L, wholeScoops } from '../../../../planner/fertility/bed-dose.ts';
import { bufferLime } from '../../../../planner/fertility/buffer-lime.ts';
import { compostMix, heapCarbonToNitrogen, sampleMoistureShare } from '../../../../planner/fertility/compost-mix.ts';
import { combinedPart } from '../../../../planner/fertility/compost-plan.ts';
import {
  secondForCarbonNitrogen_kg,
  secondForMoisture_kg,
  twoCompostGoals,
} from '../../../../planner/fertility/compost-second-part.ts';
import { coverCropNitrogen } from '../../../../planner/fertility/cover-crop.ts';
import {
  gypsumByDensity_kg_per_m2,
  gypsumByMeq_kg_per_m2,
  sodiumToReplace_meq_per_100g,
} from '../../../../planner/fertility/gypsum.ts';
import {
  effectiveNeutralisingShare,
  limeFinenessShare,
  limingMaterial_kg,
} from '../../../../planner/fertility/liming-material.ts';
import { dressingNitrogen, materialFor_kg, rideAlong } from '../../../../planner/fertility/material-rate.ts';
import { measuredDose, measureFor } from '../../../../planner/fertility/measures.ts';
import { mediaSaltClass, saltyPartShare, sodiumAdsorption, sodiumClass } from '../../../../planner/fertility/media-salts.ts';
import {
  type LimeSoilClass,
  limeCredit_kg_per_m2,
  mehlichAcidity_meq_per_100cm3,
  mehlichLime,
} from '../../../../planner/fertility/mehlich-lime.ts';
import { bedBudget } from '../../../../planner/fertility/nutrient-budget.ts';
import { phosphate_kg, potash_kg } from '../../../../planner/fertility/nutrients.ts';
import { organicMatterNitrogen } from '../../../../planner/fertility/organic-matter-nitrogen.ts';
import { type PhPlanInput, phPlan } from '../../../../planner/fertility/ph-plan.ts';
import { classWord, phosphateBuildup, potashNeed_kg_per_m2 } from '../../../../planner/fertility/recommendation.ts';
import { releaseByYear } from '../../../../planner/fertility/release-years.ts';
import {
  dryMatterRemoval_kg,
  harvestedPart,
  harvestedPartOf,
  harvestRemoval,
  removalByUnit_kg,
  unitRemoval_kg,
} from '../../../../planner/fertility/removal.ts';
import { nitrogenBalance, waterNitrogen_kg_per_m2 } from '../../../../planner/fertility/seasonal-nitrogen.ts';
import { freeLimeSulfur_kg_per_m2, type SulfurTexture, sulfurRate } from '../../../../planner/fertility/sulfur.ts';
import { tankFillings, teaBatch } from '../../../../planner/fertility/tea-batch.ts';
import { potassiumCritical_mg_per_kg, testClass } from '../../../../planner/fertility/test-class.ts';
import { layerNutrient_kg_per_m2, testValue_mg_per_kg } from '../../../../planner/fertility/test-value.ts';
import { textureLime_kg_per_m2 } from '../../../../planner/fertility/texture-lime.ts';
import { testRefusals } from '../../../builders/faults-of.ts';
import { soilTables } from '../../../builders/soil-tables.ts';

describe('doses and measures', () => {
  testRefusals([
    ['rate_kg_per_m2 too-small (0 kg/m²)', () => bedDose_kg(-1, 1)],
    ['area_m2 too-large (1000000 m²)', () => bedDose_kg(1, 2_000_000)],
    ['depthRatio too-large (10)', () => bedDose_kg(1, 1, 11)],
    ['mass_kg too-small (0 kg)', () => looseVolume_L(-1, 500)],
    ['density_kg_per_m3 not-positive (0 kg/m³)', () => looseVolume_L(1, 0)],
    ['mass_kg too-small (0 kg)', () => wholeScoops(-1, 1, 'up')],
    ['scoop_kg not-positive (0 kg)', () => wholeScoops(1, 0, 'up')],
    ['step too-large (1)', () => wholeScoops(1, 1, 'up', 2)],
    ['volume_L too-small (0 L)', () => measureFor(-1, 0.25)],
    ['scoop_L not-positive (0 L)', () => measureFor(1, 0)],
    ['volume_L too-small (0 L)', () => measuredDose(-1, 0.25)],
    ['scoop_L not-positive (0 L)', () => measuredDose(1, 0)],
  ]);
});

describe('lime', () => {
  const table = soilTables.lime_sikora_oregon;
  const mehlich = { soilPh: 5, targetPh: 6, acidity_meq_per_100cm3: 1, credit_kg_per_m2: 0 };
  const credit = { lastLime_kg_per_m2: 1, monthsSince: 1, soilClass: 'mineral' as const };
  const tables = soilTables.lime_by_texture_to_ph_6_5;
  testRefusals([
    ['bufferPh too-large (9)', () => bufferLime({ table, bufferPh: 10, targetPh: 6 })],
    ['targetPh too-large (8)', () => bufferLime({ table, bufferPh: 6, targetPh: 9 })],
    ['soilPh too-small (2.5)', () => bufferLime({ table, bufferPh: 6, targetPh: 6, soilPh: 2 })],
    ['table empty', () => bufferLime({ table: { ...table, rows: [] }, bufferPh: 6, targetPh: 6 })],
    ['bufferPh too-small (3.5)', () => mehlichAcidity_meq_per_100cm3(3)],
    ['soilPh too-small (2.5)', () => mehlichLime({ ...mehlich, soilPh: 2 })],
    ['targetPh too-large (6.6)', () => mehlichLime({ ...mehlich, targetPh: 6.7 })],
    ['acidity_meq_per_100cm3 too-large (20 meq/100 cm³)', () => mehlichLime({ ...mehlich, acidity_meq_per_100cm3: 21 })],
    ['credit_kg_per_m2 too-small (0 kg/m²)', () => mehlichLime({ ...mehlich, credit_kg_per_m2: -1 })],
    ['soilPh too-large', () => mehlichLime({ ...mehlich, soilPh: 6.6 })],
    ['lastLime_kg_per_m2 too-large (10 kg/m²)', () => limeCredit_kg_per_m2({ ...credit, lastLime_kg_per_m2: 11 })],
    ['monthsSince too-small (0 months)', () => limeCredit_kg_per_m2({ ...credit, monthsSince: -1 })],
    ['soilClass unknown', () => limeCredit_kg_per_m2({ ...credit, soilClass: 'chalk' as LimeSoilClass })],
    ['pass20Share too-large (1)', () => limeFinenessShare({ pass20Share: 1.1, pass60Share: 0.5, pass100Share: 0.3 })],
    ['pass60Share too-large (0.8)', () => limeFinenessShare({ pass20Share: 0.8, pass60Share: 0.9, pass100Share: 0.3 })],
    ['pass100Share too-large (0.5)', () => limeFinenessShare({ pass20Share: 0.8, pass60Share: 0.5, pass100Share: 0.6 })],
    ['neutralisingShare too-large (2.5)', () => effectiveNeutralisingShare(3, 1)],
    ['finenessShare too-large (1)', () => effectiveNeutralisingShare(1, 1.1)],
    ['lime_kg too-small (0 kg)', () => limingMaterial_kg(-1, 1)],
    ['effectiveShare too-small (0.01)', () => limingMaterial_kg(1, 0)],
    ['soilPh too-small (2.5)', () => textureLime_kg_per_m2({ tables, soilPh: 2, texture: 'loam' })],
    ['texture unknown', () => textureLime_kg_per_m2({ tables, soilPh: 5, texture: 'peat' })],
  ]);
});

describe('a pH plan, sulfur and gypsum', () => {
  const plan: PhPlanInput = {
    tables: soilTables,
    kind: 'soil',
    soilPh: 5.4,
    bufferPh: null,
    bufferMethod: null,
    texture: 'loam',
    targetPh: 6.5,
    area_m2: 3,
    depth_m: 0.2,
    limeSince_kg_per_m2: 0,
    limeWorthShare: 1,
    sulfurShare: 0.9,
  };
  const sulfur = {
    toPh4_5: soilTables.sulfur_to_ph_4_5_lb_per_acre,
    toPh6_5: soilTables.sulfur_to_ph_6_5_lb_per_acre,
    soilPh: 7,
    targetPh: 6,
    texture: 'loam' as const,
  };
  const byMeq = { sodium_meq_per_100g: 1, depth_m: 0.3, perMeq30cm_kg_per_m2: 0.385, allowance: 1.25 };
  const byDensity = {
    factor: 1.2,
    depth_m: 0.3,
    bulkDensity_kg_per_m3: 1300,
    cec_meq_per_100g: 20,
    espNowShare: 0.2,
    espGoalShare: 0.1,
    purityShare: 0.9,
  };
  testRefusals([
    ['soilPh too-large (10.5)', () => phPlan({ ...plan, soilPh: 11 })],
    ['targetPh too-small (4.5)', () => phPlan({ ...plan, targetPh: 4.4 })],
    ['area_m2 too-small (0 m²)', () => phPlan({ ...plan, area_m2: -1 })],
    ['depth_m too-large (1.5 m)', () => phPlan({ ...plan, depth_m: 2 })],
    ['soilPh too-large (10.5)', () => sulfurRate({ ...sulfur, soilPh: 11 })],
    ['targetPh too-large (8.4)', () => sulfurRate({ ...sulfur, targetPh: 8.5 })],
    ['texture unknown', () => sulfurRate({ ...sulfur, texture: 'silt' as SulfurTexture })],
    ['calciteShare too-large (1)', () => freeLimeSulfur_kg_per_m2(2, 200)],
    ['soil_kg_per_m2 too-large (3000 kg/m²)', () => freeLimeSulfur_kg_per_m2(0.1, 3001)],
    ['cec_meq_per_100g too-large (200 meq/100 g)', () => sodiumToReplace_meq_per_100g(201, 0.2, 0.1)],
    ['espNowShare too-large (1)', () => sodiumToReplace_meq_per_100g(20, 2, 0.1)],
    ['espGoalShare too-small (0)', () => sodiumToReplace_meq_per_100g(20, 0.2, -0.1)],
    ['sodium_meq_per_100g too-small (0 meq/100 g)', () => gypsumByMeq_kg_per_m2({ ...byMeq, sodium_meq_per_100g: -1 })],
    ['depth_m too-large (2 m)', () => gypsumByMeq_kg_per_m2({ ...byMeq, depth_m: 3 })],
    ['allowance too-small (1)', () => gypsumByMeq_kg_per_m2({ ...byMeq, allowance: 0.9 })],
    ['purityShare not-positive (0)', () => gypsumByDensity_kg_per_m2({ ...byDensity, purityShare: 0 })],
    ['depth_m too-large (2 m)', () => gypsumByDensity_kg_per_m2({ ...byDensity, depth_m: 3 })],
    ['bulkDensity_kg_per_m3 too-small (50 kg/m³)', () => gypsumByDensity_kg_per_m2({ ...byDensity, bulkDensity_kg_per_m3: 1.3 })],
  ]);
});

describe('compost and tea', () => {
  const part = { part_kg: 10, moistureShare: 0.5, nShareOfDry: 0.02, carbonToNitrogen: 30 };
  const wetter = { first_kg: 1, firstMoistureShare: 0.3, secondMoistureShare: 0.8, goalShare: 0.5 };
  const three = [part, { ...part, moistureShare: 0.7 }, { ...part, carbonToNitrogen: 60 }] as const;
  const tea = { area_m2: 60, drench_L_per_m2: 1, teaParts: 1, waterParts: 4, compost_kg_per_L: 0.06 };
  testRefusals([
    ['parts.1.part_kg too-small (0 kg)', () => compostMix([part, { ...part, part_kg: -1 }])],
    ['parts.0.moistureShare too-large (1)', () => compostMix([{ ...part, moistureShare: 1.1 }])],
    ['parts.0.nShareOfDry too-large (0.6)', () => compostMix([{ ...part, nShareOfDry: 0.7 }])],
    ['parts.0.carbonToNitrogen too-large (2000)', () => compostMix([{ ...part, carbonToNitrogen: 2001 }])],
    ['parts not-positive (0 kg)', () => compostMix([{ ...part, part_kg: 0 }])],
    ['parts not-positive (0 kg N)', () => compostMix([{ ...part, nShareOfDry: 0 }])],
    ['parts not-positive (0 kg N)', () => heapCarbonToNitrogen([{ part_kg: 1, carbonShare: 0.4, nShare: 0 }])],
    ['wet_kg not-positive (0 kg)', () => sampleMoistureShare(0, 0)],
    ['dry_kg too-large (2 kg)', () => sampleMoistureShare(2, 3)],
    ['parts not-positive (0 kg N)', () => combinedPart([{ ...part, moistureShare: 1 }])],
    ['first_kg too-small (0 kg)', () => secondForMoisture_kg({ ...wetter, first_kg: -1 })],
    ['goalShare too-large (1)', () => secondForMoisture_kg({ ...wetter, goalShare: 1.5 })],
    ['goalShare out-of-reach', () => secondForMoisture_kg({ ...wetter, goalShare: 0.9 })],
    ['goalShare out-of-reach', () => secondForMoisture_kg({ ...wetter, goalShare: 0.8 })],
    ['first_kg too-small (0 kg)', () => secondForCarbonNitrogen_kg(-1, part, part, 30)],
    ['goalCarbonToNitrogen too-small (1)', () => secondForCarbonNitrogen_kg(1, part, part, 0)],
    ['goalCarbonToNitrogen out-of-reach', () => secondForCarbonNitrogen_kg(1, part, { ...part, carbonToNitrogen: 35 }, 40)],
    ['first_kg too-small (0 kg)', () => twoCompostGoals(-1, three, 0.6, 30)],
    ['goalMoistureShare too-large (1)', () => twoCompostGoals(1, three, 1.2, 30)],
    ['goalCarbonToNitrogen too-large (500)', () => twoCompostGoals(1, three, 0.6, 501)],
    ['area_m2 not-positive (0 m²)', () => teaBatch({ ...tea, area_m2: 0 })],
    ['drench_L_per_m2 not-positive (0 L/m²)', () => teaBatch({ ...tea, drench_L_per_m2: 0 })],
    ['teaParts not-positive (0)', () => teaBatch({ ...tea, teaParts: 0 })],
    ['waterParts too-large (1000)', () => teaBatch({ ...tea, waterParts: 1001 })],
    ['compost_kg_per_L too-large (1 kg/L)', () => teaBatch({ ...tea, compost_kg_per_L: 2 })],
    ['tea_L too-small (0 L)', () => tankFillings(-1, 20)],
    ['tank_L not-positive (0 L)', () => tankFillings(1, 0)],
  ]);
});

describe('needs and what meets them', () => {
  const ride = { nShare: 0.02, p2o5Share: 0.02, firstYearNShare: 0.2, needN_kg: 1, needP2O5_kg: 1 };
  const dressing = { dressing_kg: 1, moistureShare: 0.4, nShareOfDry: 0.02, availableShare: 0.2 };
  const matter = { organicMatterShare: 0.03, soil_kg_per_m2: 220, nShareOfOrganicMatter: 0.05, releasedShare: 0.02 };
  const buildup = {
    critical_mg_per_kg: 25,
    test_mg_per_kg: 10,
    perStep_kg_per_m2: 0.002,
    years: 4,
    removal_kg_per_m2: 0.01,
  };
  const potash = { critical_mg_per_kg: 100, test_mg_per_kg: 50, cec_meq_per_100g: 10, removal_kg_per_m2: 0.01 };
  const season = {
    need_kg_per_m2: 0.01,
    organicMatter_kg_per_m2: 0,
    dressings_kg_per_m2: 0,
    legumes_kg_per_m2: 0,
    water_kg_per_m2: 0,
  };
  testRefusals([
    ['need_kg too-small (0 kg)', () => materialFor_kg(-1, 0.1, 1)],
    ['contentShare not-positive (0)', () => materialFor_kg(1, 0, 1)],
    ['contentShare too-large (1)', () => materialFor_kg(1, 2, 1)],
    ['availableShare not-positive (0)', () => materialFor_kg(1, 0.1, 0)],
    ['availableShare too-large (1)', () => materialFor_kg(1, 0.1, 2)],
    ['contentShare not-positive (0)', () => rideAlong({ ...ride, p2o5Share: 0 })],
    ['dressing_kg too-small (0 kg)', () => dressingNitrogen({ ...dressing, dressing_kg: -1 })],
    ['moistureShare too-large (1)', () => dressingNitrogen({ ...dressing, moistureShare: 2 })],
    ['nShareOfDry too-large (1)', () => dressingNitrogen({ ...dressing, nShareOfDry: 2 })],
    ['availableShare too-large (1)', () => dressingNitrogen({ ...dressing, availableShare: 2 })],
    ['nShareOfDry too-large (0.1)', () => coverCropNitrogen(0.2)],
    ['organicMatterShare too-large (1)', () => organicMatterNitrogen({ ...matter, organicMatterShare: 3 })],
    ['soil_kg_per_m2 too-large (3000 kg/m²)', () => organicMatterNitrogen({ ...matter, soil_kg_per_m2: 3001 })],
    ['nShareOfOrganicMatter too-large (0.2)', () => organicMatterNitrogen({ ...matter, nShareOfOrganicMatter: 5 })],
    ['releasedShare too-large (0.2)', () => organicMatterNitrogen({ ...matter, releasedShare: 2 })],
    ['years too-small (1 years)', () => phosphateBuildup({ ...buildup, years: 0 })],
    ['test_mg_per_kg too-small (0 mg/kg)', () => phosphateBuildup({ ...buildup, test_mg_per_kg: -1 })],
    ['removal_kg_per_m2 too-large (1 kg/m²)', () => phosphateBuildup({ ...buildup, removal_kg_per_m2: 2 })],
    ['test_mg_per_kg too-small (0 mg/kg)', () => potashNeed_kg_per_m2({ ...potash, test_mg_per_kg: -1 })],
    ['cec_meq_per_100g too-large (200 meq/100 g)', () => potashNeed_kg_per_m2({ ...potash, cec_meq_per_100g: 201 })],
    ['class unknown', () => classWord('plenty')],
    ['phosphorus unknown', () => classWord('constructor', 'phosphorus')],
    ['organicN_kg.1 too-small (0 kg)', () => releaseByYear([1, -1], [0.5])],
    ['series.1 too-large (1)', () => releaseByYear([1], [0.5, 1.1])],
    ['area_m2 too-small (0 m²)', () => bedBudget(-1, [], [])],
    ['need_kg_per_m2 too-large (1 kg/m²)', () => nitrogenBalance({ ...season, need_kg_per_m2: 2 })],
    ['water_kg_per_m2 too-small (0 kg/m²)', () => nitrogenBalance({ ...season, water_kg_per_m2: -1 })],
    ['water_L_per_m2 too-large (10000 L/m²)', () => waterNitrogen_kg_per_m2(10_001, 1)],
    ['nitrateN_mg_per_L too-large (200 mg/L)', () => waterNitrogen_kg_per_m2(1, 201)],
    ['phosphorus_kg too-small (0 kg)', () => phosphate_kg(-1)],
    ['potassium_kg too-small (0 kg)', () => potash_kg(-1)],
  ]);
});

describe('figures of a laboratory and of a harvest', () => {
  const read = { nutrient: 'P', value: 50, unit: 'lb/acre', depth_m: 0.17, bulkDensity_kg_per_m3: 1300 } as const;
  const food = { protein_g_per_100g: 2, phosphorus_mg_per_100g: 40, potassium_mg_per_100g: 300 };
  const ions = { sodium_meq_per_L: 1, calcium_meq_per_L: 1, magnesium_meq_per_L: 1 };
  const salts = soilTables.ec_classes_media_ds_m;
  testRefusals([
    ['value too-small (0 lb/acre)', () => testValue_mg_per_kg({ ...read, value: -1 })],
    ['depth_m too-large (2 m)', () => testValue_mg_per_kg({ ...read, depth_m: 6 })],
    ['bulkDensity_kg_per_m3 too-small (50 kg/m³)', () => testValue_mg_per_kg({ ...read, bulkDensity_kg_per_m3: 1.3 })],
    ['unit other-dimension', () => testValue_mg_per_kg({ ...read, unit: 'meq/100g' })],
    ['value_mg_per_kg too-small (0 mg/kg)', () => layerNutrient_kg_per_m2(-1, 1300, 0.2)],
    ['bulkDensity_kg_per_m3 too-large (2200 kg/m³)', () => layerNutrient_kg_per_m2(1, 2300, 0.2)],
    ['depth_m too-large (2 m)', () => layerNutrient_kg_per_m2(1, 1300, 3)],
    ['P too-small (0 mg/kg)', () => testClass('olsen', 'P', -1)],
    ['cec_meq_per_100g too-large (200 meq/100 g)', () => potassiumCritical_mg_per_kg(201)],
    ['protein_g_per_100g too-large (60 g/100 g)', () => harvestedPart({ ...food, protein_g_per_100g: 61 })],
    ['phosphorus_mg_per_100g too-large (5000 mg/100 g)', () => harvestedPart({ ...food, phosphorus_mg_per_100g: 5001 })],
    ['potassium_mg_per_100g too-large (8000 mg/100 g)', () => harvestedPart({ ...food, potassium_mg_per_100g: 8001 })],
    ['proteinPerNitrogen too-small (4)', () => harvestedPart({ ...food, proteinPerNitrogen: 3 })],
    ['crop unknown', () => harvestedPartOf([], 'dandelion')],
    ['harvest_kg too-small (0 kg)', () => harvestRemoval(harvestedPart(food), -1)],
    ['harvest_kg too-small (0 kg)', () => dryMatterRemoval_kg(-1, 0.1, 0.1)],
    ['dryMatterShare too-large (1)', () => dryMatterRemoval_kg(1, 2, 0.1)],
    ['nutrientShareOfDry too-large (1)', () => dryMatterRemoval_kg(1, 0.1, 2)],
    ['units too-small (0)', () => unitRemoval_kg(-1, 0.1, 1)],
    ['each_kg too-small (0 kg)', () => unitRemoval_kg(1, -1, 1)],
    ['takenShare too-large (1)', () => unitRemoval_kg(1, 1, 2)],
    ['removed_kg too-small (0 kg)', () => removalByUnit_kg(-1, 1)],
    ['units not-positive (0)', () => removalByUnit_kg(1, 0)],
    ['ec_dS_per_m too-large (60 dS/m)', () => mediaSaltClass(salts, 'SME', 61)],
    ['method unknown', () => mediaSaltClass(salts, '1:5', 1)],
    ['base_dS_per_m too-small (0 dS/m)', () => saltyPartShare(-1, 8, 3)],
    ['part_dS_per_m too-large (60 dS/m)', () => saltyPartShare(1, 61, 3)],
    ['limit_dS_per_m not-positive (0 dS/m)', () => saltyPartShare(1, 8, 0)],
    ['sodium_meq_per_L too-small (0 meq/L)', () => sodiumAdsorption({ ...ions, sodium_meq_per_L: -1 })],
    ['calcium_meq_per_L too-large (2000 meq/L)', () => sodiumAdsorption({ ...ions, calcium_meq_per_L: 2001 })],
    ['magnesium_meq_per_L too-large (2000 meq/L)', () => sodiumAdsorption({ ...ions, magnesium_meq_per_L: 2001 })],
    [
      'calcium_meq_per_L not-positive (0 meq/L)',
      () => sodiumAdsorption({ ...ions, calcium_meq_per_L: 0, magnesium_meq_per_L: 0 }),
    ],
    ['sar too-large (500)', () => sodiumClass(soilTables.sar_classes, 501)],
  ]);
});
