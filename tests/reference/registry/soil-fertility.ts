import { readFileSync } from 'node:fs';
import { loadMilpSolver } from '../../../api/jobs/milp/highs.ts';
import { loadLpSolver } from '../../../api/jobs/milp/open-lp.ts';
import { bedDose_kg, looseVolume_L } from '../../../planner/fertility/bed-dose.ts';
import { bufferLime } from '../../../planner/fertility/buffer-lime.ts';
import { compostMix, heapCarbonToNitrogen, sampleMoistureShare } from '../../../planner/fertility/compost-mix.ts';
import {
  secondForCarbonNitrogen_kg,
  secondForMoisture_kg,
  twoCompostGoals,
} from '../../../planner/fertility/compost-second-part.ts';
import { coverCropNitrogen } from '../../../planner/fertility/cover-crop.ts';
import {
  gypsumByDensity_kg_per_m2,
  gypsumByMeq_kg_per_m2,
  sodiumToReplace_meq_per_100g,
} from '../../../planner/fertility/gypsum.ts';
import { HEAT_BAND_C, HEAT_BAND_F, type HeatDay, type HeatMethod, heatRule } from '../../../planner/fertility/heat-rule.ts';
import {
  type BlendMaterial,
  type BlendProblem,
  leastCostBlend,
  wholeMeasureBlend,
} from '../../../planner/fertility/least-cost-blend.ts';
import {
  effectiveNeutralisingShare,
  limeFinenessShare,
  limingMaterial_kg,
  pureNeutralisingShare,
} from '../../../planner/fertility/liming-material.ts';
import { manureInterval } from '../../../planner/fertility/manure-interval.ts';
import { dressingNitrogen, materialFor_kg, rideAlong } from '../../../planner/fertility/material-rate.ts';
import {
  mediaSaltClass,
  milliequivalents,
  saltyPartShare,
  sodiumAdsorption,
  sodiumClass,
} from '../../../planner/fertility/media-salts.ts';
import {
  type LimeSoilClass,
  limeCredit_kg_per_m2,
  mehlichAcidity_meq_per_100cm3,
  mehlichLime,
} from '../../../planner/fertility/mehlich-lime.ts';
import { phosphate_kg, potash_kg } from '../../../planner/fertility/nutrients.ts';
import { organicMatterNitrogen } from '../../../planner/fertility/organic-matter-nitrogen.ts';
import { classWord, phosphateBuildup, potashNeed_kg_per_m2, threeClassRates } from '../../../planner/fertility/recommendation.ts';
import { releaseByYear } from '../../../planner/fertility/release-years.ts';
import {
  dryMatterRemoval_kg,
  harvestedPart,
  harvestedPartOf,
  harvestRemoval,
  removalByUnit_kg,
  unitRemoval_kg,
} from '../../../planner/fertility/removal.ts';
import { nitrogenBalance } from '../../../planner/fertility/seasonal-nitrogen.ts';
import type { BufferLimeTable, SoilTables } from '../../../planner/fertility/soil-tables.ts';
import { freeLimeSulfur_kg_per_m2, type SulfurTexture, sulfurRate } from '../../../planner/fertility/sulfur.ts';
import { teaBatch } from '../../../planner/fertility/tea-batch.ts';
import { potassiumCritical_mg_per_kg } from '../../../planner/fertility/test-class.ts';
import { layerNutrient_kg_per_m2 } from '../../../planner/fertility/test-value.ts';
import { textureLime_kg_per_m2 } from '../../../planner/fertility/texture-lime.ts';
import { celsiusOf, convert, type UnitSymbol } from '../../../planner/units/convert.ts';
import type { CaseValues, Registry } from '../registry.ts';
import { overLists } from './over-lists.ts';

const tables = JSON.parse(readFileSync(new URL('../../../resources/soil-tables.json', import.meta.url), 'utf8')) as SoilTables;
const lp = await loadLpSolver(() => false);
const milp = await loadMilpSolver();

const inches = (value: number) => convert(value, 'in', 'm');
const share = (percent: number) => convert(percent, 'mg', 'kg') * 10_000;
const percent = (of: number) => of / share(1);
const fromLbAcre = (rate: number) => convert(rate, 'lb_per_acre', 'kg_per_m2');
const toLbAcre = (rate: number) => convert(rate, 'kg_per_m2', 'lb_per_acre');
const fromTonAcre = (rate: number) => convert(rate, 'us_ton_per_acre', 'kg_per_m2');
const toTonAcre = (rate: number) => convert(rate, 'kg_per_m2', 'us_ton_per_acre');
const inArea = (rate_kg_per_m2: number, area: number, unit: UnitSymbol, mass: UnitSymbol) =>
  convert(bedDose_kg(rate_kg_per_m2, convert(area, unit, 'm2')), 'kg', mass);

const sikora: BufferLimeTable = tables.lime_sikora_oregon;
type Buffer = { sikora_buffer_ph: number; target_ph: number };
const sikoraLime = (i: Buffer) => bufferLime({ table: sikora, bufferPh: i.sikora_buffer_ph, targetPh: i.target_ph });
const depthRatio = (depth_in: number, table_m: number) => inches(depth_in) / table_m;

type Sieve = { pass_20_mesh_pct: number; pass_60_mesh_pct: number; pass_100_mesh_pct: number; cce_pct: number };
const fineness = (i: Sieve) =>
  limeFinenessShare({
    pass20Share: share(i.pass_20_mesh_pct),
    pass60Share: share(i.pass_60_mesh_pct),
    pass100Share: share(i.pass_100_mesh_pct),
  });
const worth = (i: Sieve) => effectiveNeutralisingShare(share(i.cce_pct), fineness(i));

type Acid = { soil_ph: number; target_ph: number; texture: string };
const sulfur = (i: Acid) =>
  sulfurRate({
    toPh4_5: tables.sulfur_to_ph_4_5_lb_per_acre,
    toPh6_5: tables.sulfur_to_ph_6_5_lb_per_acre,
    soilPh: i.soil_ph,
    targetPh: i.target_ph,
    texture: i.texture as SulfurTexture,
  }).sulfur_kg_per_m2;

const removal = (crop: string, harvest_kg: number) =>
  harvestRemoval(harvestedPartOf(tables.removal_by_harvested_part.rows, crop), harvest_kg);
const removalIn = (crop: string, harvest: number, from: UnitSymbol, to: UnitSymbol, suffix: string) => {
  const gone = removal(crop, convert(harvest, from, 'kg'));
  return {
    [`N_${suffix}`]: convert(gone.n_kg, 'kg', to),
    [`P2O5_${suffix}`]: convert(gone.p2o5_kg, 'kg', to),
    [`K2O_${suffix}`]: convert(gone.k2o_kg, 'kg', to),
  };
};

type Dressing = {
  compost_lb_per_acre: number;
  compost_moisture_fraction: number;
  compost_N_fraction_dry: number;
  compost_available_fraction: number;
};
const dressing = (i: Dressing) =>
  dressingNitrogen({
    dressing_kg: fromLbAcre(i.compost_lb_per_acre),
    moistureShare: i.compost_moisture_fraction,
    nShareOfDry: i.compost_N_fraction_dry,
    availableShare: i.compost_available_fraction,
  });

const smallAreas = (i: { rate_lb_per_acre: number }) => {
  const rate = fromLbAcre(i.rate_lb_per_acre);
  return {
    lb_per_100_ft2: inArea(rate, 100, 'ft2', 'lb'),
    lb_per_1000_ft2: inArea(rate, 1000, 'ft2', 'lb'),
    oz_per_100_ft2: inArea(rate, 100, 'ft2', 'oz'),
    oz_per_1000_ft2: inArea(rate, 1000, 'ft2', 'oz'),
  };
};

type Amounts = Readonly<Record<string, number>>;
type ByName<T> = Readonly<Record<string, T>>;
const suffixed = (amounts: Amounts, suffix: string) =>
  Object.fromEntries(Object.entries(amounts).map(([name, amount]) => [`${name}_${suffix}`, amount]));
const materialsOf = (price: Amounts, contents: ByName<Amounts>, most: Amounts = {}): readonly BlendMaterial[] =>
  Object.entries(price).map(([name, each]) => {
    const cap = most[name];
    return { name, price: each, contents: contents[name] ?? {}, ...(cap === undefined ? {} : { most: cap }) };
  });
const blend = (problem: BlendProblem, unit: string): CaseValues => {
  const found = leastCostBlend(problem, lp);
  if (found.state === 'cannot-be-met') return { status: 'Infeasible', clash: found.clash };
  const prices = Object.fromEntries(
    found.binding
      .filter((each) => each.limit === 'minimum')
      .map((each) => [`shadow_price_${each.of}_per_${unit === 'kg' ? 'g' : unit}`, each.price]),
  );
  return {
    status: 'Optimal',
    cost: found.cost,
    ...suffixed(found.brings, unit === 'kg' ? 'g' : unit),
    ...suffixed(found.amounts, unit),
    ...prices,
  };
};
type KgBlend = {
  price_per_kg: Amounts;
  available_g_per_kg: ByName<Amounts>;
  minimum_g: Amounts;
  maximum_g?: Amounts;
  maximum_kg?: Amounts;
};
const kgBlend = (i: KgBlend) =>
  blend(
    {
      materials: materialsOf(i.price_per_kg, i.available_g_per_kg, i.maximum_kg),
      minimum: i.minimum_g,
      ...(i.maximum_g === undefined ? {} : { maximum: i.maximum_g }),
    },
    'kg',
  );
type FractionBlend = {
  price_per_lb: Amounts;
  fraction: ByName<Amounts>;
  minimum_lb: Amounts;
  max_total_lb?: number;
  budget?: number;
};
const fractionBlend = (i: FractionBlend) =>
  blend(
    {
      materials: materialsOf(i.price_per_lb, i.fraction),
      minimum: i.minimum_lb,
      ...(i.max_total_lb === undefined ? {} : { mostTotal: i.max_total_lb }),
      ...(i.budget === undefined ? {} : { budget: i.budget }),
    },
    'lb',
  );

const heatMethod = (method: string): HeatMethod =>
  /windrow|turned/.test(method) ? 'turned-windrow' : /static/.test(method) ? 'static-aerated' : 'in-vessel';

type SarMeq = { Na_meq_l: number; Ca_meq_l: number; Mg_meq_l: number };
const sarOf = (sar: number) => ({ sar, class: sodiumClass(tables.sar_classes, sar) });
const sarMeq = (i: SarMeq) =>
  sarOf(sodiumAdsorption({ sodium_meq_per_L: i.Na_meq_l, calcium_meq_per_L: i.Ca_meq_l, magnesium_meq_per_L: i.Mg_meq_l }));

/** Lime, sulfur, soil tests, nutrients, compost, salts and blends. */
export const soilFertility: Registry = {
  'soil.lime-01': overLists((i: Buffer) => ({ lime_ton_per_acre: toTonAcre(sikoraLime(i).lime_kg_per_m2) })),
  'soil.lime-02': overLists((i: Buffer & { area_ft2: number; depth_in: number }) => {
    const { lime_kg_per_m2, tableDepth_m } = sikoraLime(i);
    const bed_kg = bedDose_kg(lime_kg_per_m2, convert(i.area_ft2, 'ft2', 'm2'), depthRatio(i.depth_in, tableDepth_m));
    return { lime_ton_per_acre: toTonAcre(lime_kg_per_m2), lime_kg_bed: bed_kg, lime_lb_bed: convert(bed_kg, 'kg', 'lb') };
  }),
  'soil.lime-03': overLists((i: Buffer & { depth_in: number }) => {
    const { lime_kg_per_m2, tableDepth_m } = sikoraLime(i);
    return {
      lime_ton_per_acre_6in: toTonAcre(lime_kg_per_m2),
      lime_ton_per_acre: toTonAcre(bedDose_kg(lime_kg_per_m2, 1, depthRatio(i.depth_in, tableDepth_m))),
    };
  }),
  'soil.lime-04': overLists((i: { buffer_ph: number }) => ({ acidity_meq_100cm3: mehlichAcidity_meq_per_100cm3(i.buffer_ph) })),
  'soil.lime-05': overLists(
    (i: { soil_ph: number; target_ph: number; acidity_meq_100cm3: number; residual_credit_ton_per_acre: number }) => {
      const { factor, lime_kg_per_m2 } = mehlichLime({
        soilPh: i.soil_ph,
        targetPh: i.target_ph,
        acidity_meq_per_100cm3: i.acidity_meq_100cm3,
        credit_kg_per_m2: fromTonAcre(i.residual_credit_ton_per_acre),
      });
      return { factor, lime_ton_per_acre: toTonAcre(lime_kg_per_m2) };
    },
  ),
  'soil.lime-06': overLists((i: { last_lime_ton_per_acre: number; months_since: number; soil_class: LimeSoilClass }) => ({
    credit_ton_per_acre: toTonAcre(
      limeCredit_kg_per_m2({
        lastLime_kg_per_m2: fromTonAcre(i.last_lime_ton_per_acre),
        monthsSince: i.months_since,
        soilClass: i.soil_class,
      }),
    ),
  })),
  'soil.lime-07': overLists((i: { recommended_lb: number; cce_pct: number }) => ({
    required_lb: convert(limingMaterial_kg(convert(i.recommended_lb, 'lb', 'kg'), share(i.cce_pct)), 'kg', 'lb'),
  })),
  'soil.lime-08': overLists((i: Sieve) => ({ fineness_pct: percent(fineness(i)), env_pct: percent(worth(i)) })),
  'soil.lime-09': overLists((i: { cce_pct: number; fineness_fraction: number; target_t_pure: number }) => {
    const effective = effectiveNeutralisingShare(share(i.cce_pct), i.fineness_fraction);
    return {
      ecce_pct: percent(effective),
      rate_t: convert(limingMaterial_kg(convert(i.target_t_pure, 't', 'kg'), effective), 'kg', 't'),
    };
  }),
  'soil.lime-10': overLists((i: { compounds: string }) => ({ cce_pct: percent(pureNeutralisingShare(i.compounds)) })),
  'soil.lime-11': overLists((i: { soil_ph: number; texture: string; area_ft2: number }) => ({
    lime_lb: inArea(
      textureLime_kg_per_m2({ tables: tables.lime_by_texture_to_ph_6_5, soilPh: i.soil_ph, texture: i.texture }),
      i.area_ft2,
      'ft2',
      'lb',
    ),
  })),
  'soil.lime-12': overLists((i: { lime_recommended_lb: number; ash_cce_low_pct: number; ash_cce_high_pct: number }) => {
    const ash = (pct: number) => convert(limingMaterial_kg(convert(i.lime_recommended_lb, 'lb', 'kg'), share(pct)), 'kg', 'lb');
    return { ash_low_lb: ash(i.ash_cce_high_pct), ash_high_lb: ash(i.ash_cce_low_pct) };
  }),
  'soil.also-lime-01': overLists((i: Buffer) => {
    const { lime_kg_per_m2 } = sikoraLime(i);
    return { lime_kg_per_m2, lime_ton_per_acre: toTonAcre(lime_kg_per_m2) };
  }),
  'soil.also-lime-03': overLists(
    (i: { buffer_ph: number; soil_ph: number; target_ph: number; residual_credit_ton_per_acre: number }) => {
      const acidity_meq_per_100cm3 = mehlichAcidity_meq_per_100cm3(i.buffer_ph);
      const { lime_kg_per_m2 } = mehlichLime({
        soilPh: i.soil_ph,
        targetPh: i.target_ph,
        acidity_meq_per_100cm3,
        credit_kg_per_m2: fromTonAcre(i.residual_credit_ton_per_acre),
      });
      return { acidity_meq_100cm3: acidity_meq_per_100cm3, lime_ton_per_acre: toTonAcre(lime_kg_per_m2) };
    },
  ),
  'soil.also-lime-04': overLists((i: Sieve) => ({
    fineness_pct: percent(fineness(i)),
    env_pct: percent(worth(i)),
    rate_ton_for_2_ton_100: convert(limingMaterial_kg(convert(2, 'us_ton', 'kg'), worth(i)), 'kg', 'us_ton'),
  })),
  'soil.sulf-01': overLists((i: Acid & { area_ft2: number }) => ({
    sulfur_lb_per_acre: toLbAcre(sulfur(i)),
    sulfur_lb: inArea(sulfur(i), i.area_ft2, 'ft2', 'lb'),
  })),
  'soil.also-sulf-01': overLists((i: Acid) => ({
    sulfur_lb_per_acre: toLbAcre(sulfur(i)),
    sulfur_g_per_m2: convert(sulfur(i), 'kg_per_m2', 'g_per_m2'),
  })),
  'soil.sulf-02': overLists((i: { caco3_pct: number; soil_mass_lb_per_acre: number }) => {
    const soil = fromLbAcre(i.soil_mass_lb_per_acre);
    return {
      caco3_lb_per_acre: toLbAcre(share(i.caco3_pct) * soil),
      sulfur_lb_per_acre: toLbAcre(freeLimeSulfur_kg_per_m2(share(i.caco3_pct), soil)),
    };
  }),
  'soil.sulf-03': overLists((i: { rate_g_per_m2: number }) => ({
    rate_oz_per_yd2: inArea(convert(i.rate_g_per_m2, 'g_per_m2', 'kg_per_m2'), 9, 'ft2', 'oz'),
  })),
  'soil.gyp-01': overLists(
    (i: {
      esp_now_pct: number;
      esp_goal_pct: number;
      cec_meq_100g: number;
      depth_cm: number;
      gypsum_t_per_ha_30cm_per_meq: number;
      safety_factor: number;
    }) => {
      const sodium = sodiumToReplace_meq_per_100g(i.cec_meq_100g, share(i.esp_now_pct), share(i.esp_goal_pct));
      const gypsum = (allowance: number) =>
        convert(
          gypsumByMeq_kg_per_m2({
            sodium_meq_per_100g: sodium,
            depth_m: convert(i.depth_cm, 'cm', 'm'),
            perMeq30cm_kg_per_m2: convert(convert(i.gypsum_t_per_ha_30cm_per_meq, 't', 'kg'), 'kg_per_ha', 'kg_per_m2'),
            allowance,
          }),
          'kg_per_m2',
          'kg_per_ha',
        );
      return {
        na_to_replace_meq_100g: sodium,
        gypsum_t_ha: convert(gypsum(1), 'kg', 't'),
        field_gypsum_t_ha: convert(gypsum(i.safety_factor), 'kg', 't'),
      };
    },
  ),
  'soil.gyp-02': overLists(
    (i: {
      factor_f: number;
      depth_m: number;
      bulk_density_mg_m3: number;
      cec_cmolc_kg: number;
      esp_now_pct: number;
      esp_goal_pct: number;
      purity_pct: number;
    }) => {
      const rate = gypsumByDensity_kg_per_m2({
        factor: i.factor_f,
        depth_m: i.depth_m,
        bulkDensity_kg_per_m3: convert(i.bulk_density_mg_m3, 't', 'kg'),
        cec_meq_per_100g: i.cec_cmolc_kg,
        espNowShare: share(i.esp_now_pct),
        espGoalShare: share(i.esp_goal_pct),
        purityShare: share(i.purity_pct),
      });
      return { gypsum_mg_ha: convert(convert(rate, 'kg_per_m2', 'kg_per_ha'), 'kg', 't') };
    },
  ),
  'soil.nut-01': overLists((i: { P_kg: number; K_kg: number }) => ({ P2O5_kg: phosphate_kg(i.P_kg), K2O_kg: potash_kg(i.K_kg) })),
  'soil.nut-02': overLists(
    (i: { yield_ton_per_acre: number; N_lb_per_acre: number; P_lb_per_acre: number; K_lb_per_acre: number }) => ({
      P2O5_lb_per_acre: phosphate_kg(i.P_lb_per_acre),
      K2O_lb_per_acre: potash_kg(i.K_lb_per_acre),
      N_lb_per_ton: removalByUnit_kg(i.N_lb_per_acre, i.yield_ton_per_acre),
    }),
  ),
  'soil.nut-03': overLists((i: { ppm: number; depth_in: number; bulk_density_g_cm3: number }) => {
    const rate = layerNutrient_kg_per_m2(i.ppm, convert(i.bulk_density_g_cm3, 't', 'kg'), inches(i.depth_in));
    return { lb_per_acre: toLbAcre(rate), g_per_m2: convert(rate, 'kg_per_m2', 'g_per_m2') };
  }),
  'soil.nut-04': overLists((i: { ppm: number; depth_m: number; bulk_density_g_cm3: number; area_m2: number }) => {
    const rate = layerNutrient_kg_per_m2(i.ppm, convert(i.bulk_density_g_cm3, 't', 'kg'), i.depth_m);
    return { g_per_m2: convert(rate, 'kg_per_m2', 'g_per_m2'), g_bed: convert(bedDose_kg(rate, i.area_m2), 'kg', 'g') };
  }),
  'soil.nut-05': overLists((i: { yield_ton: number; dm_pct: number; P2O5_pct_dm: number }) => {
    const gone = (tons: number) =>
      convert(dryMatterRemoval_kg(convert(tons, 'us_ton', 'kg'), share(i.dm_pct), share(i.P2O5_pct_dm)), 'kg', 'lb');
    return { P2O5_lb: gone(i.yield_ton), P2O5_lb_per_ton: gone(1) };
  }),
  'soil.nut-06': overLists(
    (i: {
      yield_bu_per_acre: number;
      K2O_lb_per_bu: number;
      stover_K2O_lb_per_bu: number;
      stover_recovered_fraction: number;
    }) => ({
      grain_K2O_lb_per_acre: unitRemoval_kg(i.yield_bu_per_acre, i.K2O_lb_per_bu, 1),
      stover_K2O_lb_per_acre: unitRemoval_kg(i.yield_bu_per_acre, i.stover_K2O_lb_per_bu, i.stover_recovered_fraction),
    }),
  ),
  'soil.nut-07': overLists(
    (i: { yield_kg: number; protein_g_100g: number; P_mg_100g: number; K_mg_100g: number; n_factor: number }) => {
      const part = harvestedPart({
        protein_g_per_100g: i.protein_g_100g,
        phosphorus_mg_per_100g: i.P_mg_100g,
        potassium_mg_per_100g: i.K_mg_100g,
        proteinPerNitrogen: i.n_factor,
      });
      const { n_kg, p2o5_kg, k2o_kg } = harvestRemoval(part, i.yield_kg);
      return { N_kg: n_kg, P2O5_kg: p2o5_kg, K2O_kg: k2o_kg };
    },
  ),
  'soil.nut-08': overLists((i: { crop: string; yield_ton_per_acre: number }) =>
    removalIn(i.crop, i.yield_ton_per_acre, 'us_ton', 'lb', 'lb_per_acre'),
  ),
  'soil.nut-09': overLists((i: { crop: string; yield_kg: number }) => removalIn(i.crop, i.yield_kg, 'kg', 'kg', 'kg')),
  'soil.also-nut-02': overLists((i: { crop: string; yield_kg: number }) => removalIn(i.crop, i.yield_kg, 'kg', 'g', 'g')),
  'soil.nut-10': overLists((i: { crop: string; P_class: string; K_class: string }) => {
    const row = tables.fertilizer_by_class_florida_lb_per_acre.rows.find((each) => each.crop === i.crop);
    if (row === undefined) throw new Error(`no rates for ${i.crop}`);
    const rates = threeClassRates(row, classWord(i.P_class, 'P_class'), classWord(i.K_class, 'K_class'));
    return {
      target_ph: row.target_ph,
      N_lb_per_acre: toLbAcre(rates.n_kg_per_m2),
      P2O5_lb_per_acre: toLbAcre(rates.p2o5_kg_per_m2),
      K2O_lb_per_acre: toLbAcre(rates.k2o_kg_per_m2),
    };
  }),
  'soil.nut-12': overLists(
    (i: { critical_ppm: number; test_ppm: number; lb_P2O5_per_ppm: number; years: number; removal_P2O5_lb_per_acre: number }) => {
      const { buildup_kg_per_m2, need_kg_per_m2 } = phosphateBuildup({
        critical_mg_per_kg: i.critical_ppm,
        test_mg_per_kg: i.test_ppm,
        perStep_kg_per_m2: fromLbAcre(i.lb_P2O5_per_ppm),
        years: i.years,
        removal_kg_per_m2: fromLbAcre(i.removal_P2O5_lb_per_acre),
      });
      return { buildup_lb_per_acre: toLbAcre(buildup_kg_per_m2), P2O5_lb_per_acre: toLbAcre(need_kg_per_m2) };
    },
  ),
  'soil.nut-13': (i: { cec_meq_100g: number | readonly number[]; test_ppm: number; removal_K2O_lb_per_acre: number }) => {
    const need = (cec: number) =>
      toLbAcre(
        potashNeed_kg_per_m2({
          critical_mg_per_kg: potassiumCritical_mg_per_kg(cec),
          test_mg_per_kg: i.test_ppm,
          cec_meq_per_100g: cec,
          removal_kg_per_m2: fromLbAcre(i.removal_K2O_lb_per_acre),
        }),
      );
    const each = typeof i.cec_meq_100g === 'number' ? [i.cec_meq_100g] : i.cec_meq_100g;
    const critical = each.map(potassiumCritical_mg_per_kg);
    return {
      critical_ppm: typeof i.cec_meq_100g === 'number' ? critical[0] : critical,
      K2O_lb_per_acre_at_cec_16: need(16),
      ...Object.fromEntries(each.map((cec) => [`K2O_lb_per_acre_at_cec_${cec}`, need(cec)])),
    };
  },
  'soil.nut-14': overLists(smallAreas),
  'soil.also-nut-04': overLists(smallAreas),
  'soil.nut-15': overLists((i: { N_lb: number; materials_N_pct: number }) => ({
    material_lb: convert(materialFor_kg(convert(i.N_lb, 'lb', 'kg'), share(i.materials_N_pct), 1), 'kg', 'lb'),
  })),
  'soil.nut-16': overLists((i: { rate_lb_per_acre: number; area_ft2: number; density_kg_m3: number }) => {
    const mass_kg = bedDose_kg(fromLbAcre(i.rate_lb_per_acre), convert(i.area_ft2, 'ft2', 'm2'));
    const volume_L = looseVolume_L(mass_kg, i.density_kg_m3);
    return {
      mass_g: convert(mass_kg, 'kg', 'g'),
      volume_ml: convert(volume_L, 'L', 'mL'),
      tbsp_us: convert(volume_L, 'L', 'us_tbsp'),
      cups_us: convert(volume_L, 'L', 'us_cup'),
    };
  }),
  'soil.nut-17': overLists((i: { N_pct: number; rate_ton_per_acre: number }) => {
    const nitrogen = (tons: number) => convert(dryMatterRemoval_kg(convert(tons, 'us_ton', 'kg'), 1, share(i.N_pct)), 'kg', 'lb');
    return { N_lb_per_ton: nitrogen(1), N_lb_per_acre: nitrogen(i.rate_ton_per_acre) };
  }),
  'soil.nut-18': overLists(
    (
      i: Dressing & {
        crop_need_N_lb_per_acre: number;
        enr_lb_per_acre: number;
        enr_use_fraction: number;
        legume_N_lb_per_acre: number;
        legume_available_fraction: number;
      },
    ) => {
      const compost = dressing(i);
      const taken = (amount_lb: number, available: number) =>
        dressingNitrogen({ dressing_kg: fromLbAcre(amount_lb), moistureShare: 0, nShareOfDry: 1, availableShare: available })
          .available_kg;
      const organicMatter = taken(i.enr_lb_per_acre, i.enr_use_fraction);
      const legumes = taken(i.legume_N_lb_per_acre, i.legume_available_fraction);
      const { supply_kg_per_m2, balance_kg_per_m2 } = nitrogenBalance({
        need_kg_per_m2: fromLbAcre(i.crop_need_N_lb_per_acre),
        organicMatter_kg_per_m2: organicMatter,
        dressings_kg_per_m2: compost.available_kg,
        legumes_kg_per_m2: legumes,
        water_kg_per_m2: 0,
      });
      return {
        som_N: toLbAcre(organicMatter),
        compost_total_N: toLbAcre(compost.total_kg),
        compost_available_N: toLbAcre(compost.available_kg),
        legume_N: toLbAcre(legumes),
        supply_N: toLbAcre(supply_kg_per_m2),
        balance_N: toLbAcre(balance_kg_per_m2),
      };
    },
  ),
  'soil.nut-19': overLists((i: Dressing) => ({
    compost_total_N_lb: toLbAcre(dressing(i).total_kg),
    compost_available_N_lb: toLbAcre(dressing(i).available_kg),
  })),
  'soil.nut-20': overLists((i: { N_pct_dm: number; dry_matter_ton_per_acre: number }) => coverCrop(i)),
  'soil.nut-21': overLists((i: { N_pct_dm: number; dry_matter_ton_per_acre: number }) => coverCrop(i)),
  'soil.nut-22': overLists(
    (i: { om_pct: number; soil_mass_lb_per_acre: number; N_fraction_of_om: number; annual_rate: number }) => {
      const { held_kg_per_m2, released_kg_per_m2 } = organicMatterNitrogen({
        organicMatterShare: share(i.om_pct),
        soil_kg_per_m2: fromLbAcre(i.soil_mass_lb_per_acre),
        nShareOfOrganicMatter: i.N_fraction_of_om,
        releasedShare: i.annual_rate,
      });
      return { om_N_lb_per_acre: toLbAcre(held_kg_per_m2), release_lb_per_acre: toLbAcre(released_kg_per_m2) };
    },
  ),
  'soil.nut-23': (i: { organic_N_g_per_year: readonly number[]; decay_series: readonly number[] }) => ({
    available_N_g: releaseByYear(i.organic_N_g_per_year, i.decay_series),
  }),
  'soil.nut-24': overLists((i: { total_N_lb: number; three_year_fraction: number }) => ({
    available_N_lb: dressingNitrogen({
      dressing_kg: i.total_N_lb,
      moistureShare: 0,
      nShareOfDry: 1,
      availableShare: i.three_year_fraction,
    }).available_kg,
  })),
  'soil.nut-25': (i: {
    N_pct: number;
    P2O5_pct: number;
    K2O_pct: number;
    first_year_N_fraction: number;
    need: { N_g: number; P2O5_g: number };
  }) => {
    const ride = rideAlong({
      nShare: share(i.N_pct),
      p2o5Share: share(i.P2O5_pct),
      firstYearNShare: i.first_year_N_fraction,
      needN_kg: convert(i.need.N_g, 'g', 'kg'),
      needP2O5_kg: convert(i.need.P2O5_g, 'g', 'kg'),
    });
    return {
      rate_g_by_N: convert(ride.byNitrogen_kg, 'kg', 'g'),
      P2O5_g: convert(ride.phosphate_kg, 'kg', 'g'),
      P_excess_ratio: ride.phosphateTimesNeed,
      rate_g_by_P: convert(ride.byPhosphate_kg, 'kg', 'g'),
    };
  },
  'soil.comp-01': overLists((i: { wet_g: number; dry_g: number }) => ({
    moisture_pct: percent(sampleMoistureShare(convert(i.wet_g, 'g', 'kg'), convert(i.dry_g, 'g', 'kg'))),
  })),
  'soil.comp-02': overLists((i: { q1_kg: number; m1_pct: number; m2_pct: number; goal_pct: number }) => ({
    q2_kg: secondForMoisture_kg({
      first_kg: i.q1_kg,
      firstMoistureShare: share(i.m1_pct),
      secondMoistureShare: share(i.m2_pct),
      goalShare: share(i.goal_pct),
    }),
  })),
  'soil.comp-03': (i: { parts: readonly { mass_lb: number; C_pct: number; N_pct: number }[] }) => {
    const heap = heapCarbonToNitrogen(
      i.parts.map((p) => ({ part_kg: convert(p.mass_lb, 'lb', 'kg'), carbonShare: share(p.C_pct), nShare: share(p.N_pct) })),
    );
    return {
      carbon_lb: convert(heap.carbon_kg, 'kg', 'lb'),
      nitrogen_lb: convert(heap.nitrogen_kg, 'kg', 'lb'),
      c_to_n: heap.carbonToNitrogen,
    };
  },
  'soil.comp-04': overLists(
    (i: {
      q1_kg: number;
      N1_pct: number;
      C1_pct: number;
      m1_pct: number;
      N2_pct: number;
      C2_pct: number;
      m2_pct: number;
      goal_c_to_n: number;
    }) => ({
      q2_kg: secondForCarbonNitrogen_kg(
        i.q1_kg,
        { moistureShare: share(i.m1_pct), nShareOfDry: share(i.N1_pct), carbonToNitrogen: i.C1_pct / i.N1_pct },
        { moistureShare: share(i.m2_pct), nShareOfDry: share(i.N2_pct), carbonToNitrogen: i.C2_pct / i.N2_pct },
        i.goal_c_to_n,
      ),
    }),
  ),
  'soil.comp-05': (i: {
    parts: readonly {
      volume_us_gal: number;
      density_lb_per_gal: number;
      moisture_pct: number;
      N_pct_dry: number;
      c_to_n: number;
    }[];
  }) => {
    const mix = compostMix(
      i.parts.map((p) => ({
        part_kg: convert(p.volume_us_gal * p.density_lb_per_gal, 'lb', 'kg'),
        moistureShare: share(p.moisture_pct),
        nShareOfDry: share(p.N_pct_dry),
        carbonToNitrogen: p.c_to_n,
      })),
    );
    return { moisture_pct: percent(mix.moistureShare), c_to_n: mix.carbonToNitrogen };
  },
  'soil.comp-06': overLists((i: Readonly<Record<string, number>>) => {
    const part = (n: number) => ({
      moistureShare: share(i[`m${n}_pct`] ?? Number.NaN),
      nShareOfDry: share(i[`N${n}_pct_dry`] ?? Number.NaN),
      carbonToNitrogen: i[`cn${n}`] ?? Number.NaN,
    });
    const found = twoCompostGoals(
      i['q1_kg'] ?? Number.NaN,
      [part(1), part(2), part(3)],
      share(i['goal_moisture_pct'] ?? Number.NaN),
      i['goal_c_to_n'] ?? Number.NaN,
    );
    return { feasible: found.feasible, q2_kg: found.second_kg, q3_kg: found.third_kg };
  }),
  'soil.comp-07': (i: { method: string; log: readonly { day: number; temp_c: number }[]; turns_at_heat?: number }) => heat(i),
  'soil.comp-08': (i: { method: string; log: readonly { day: number; temp_c: number }[]; turns_at_heat?: number }) => heat(i),
  'soil.comp-09': overLists((i: { incorporated_date: string; edible_part_touches_soil: boolean }) => {
    const { interval_days, firstHarvest } = manureInterval(i.incorporated_date, i.edible_part_touches_soil);
    return { interval_days, first_harvest_date: firstHarvest };
  }),
  'costs.manure-120': overLists((i: { incorporated_iso: string; ediblePartTouchesSoil: boolean }) => ({
    earliestHarvest_iso: manureInterval(i.incorporated_iso, i.ediblePartTouchesSoil).firstHarvest,
  })),
  'costs.compost-turned-pass': (i: HeatLog) => heatRecord(i),
  'costs.compost-static': (i: HeatLog) => heatRecord(i),
  'soil.comp-11': overLists(
    (i: {
      area_ft2: number;
      drench_us_gal_per_100_ft2: number;
      tea_parts: number;
      water_parts: number;
      compost_lb_per_gal_tea: number;
    }) => {
      const batch = teaBatch({
        area_m2: convert(i.area_ft2, 'ft2', 'm2'),
        drench_L_per_m2: convert(i.drench_us_gal_per_100_ft2, 'us_gal', 'L') / convert(100, 'ft2', 'm2'),
        teaParts: i.tea_parts,
        waterParts: i.water_parts,
        compost_kg_per_L: convert(i.compost_lb_per_gal_tea, 'lb', 'kg') / convert(1, 'us_gal', 'L'),
      });
      return {
        drench_us_gal: convert(batch.drench_L, 'L', 'us_gal'),
        tea_us_gal: convert(batch.tea_L, 'L', 'us_gal'),
        water_us_gal: convert(batch.water_L, 'L', 'us_gal'),
        compost_lb: convert(batch.compost_kg, 'kg', 'lb'),
      };
    },
  ),
  'soil.comp-12': overLists((i: { P_pct: number; K_pct: number }) => ({
    P2O5_pct: phosphate_kg(i.P_pct),
    K2O_pct: potash_kg(i.K_pct),
  })),
  'soil.salt-01': overLists(sarMeq),
  'soil.also-salt-01': overLists(sarMeq),
  'soil.salt-02': overLists((i: { Na_mg_l: number; Ca_mg_l: number; Mg_mg_l: number }) =>
    sarOf(
      sodiumAdsorption(
        milliequivalents({ sodium_mg_per_L: i.Na_mg_l, calcium_mg_per_L: i.Ca_mg_l, magnesium_mg_per_L: i.Mg_mg_l }),
      ),
    ),
  ),
  'soil.salt-03': (i: { readings: readonly { method: string; ec_ds_m: number }[] }) => ({
    classes: i.readings.map((each) => mediaSaltClass(tables.ec_classes_media_ds_m, each.method, each.ec_ds_m)),
  }),
  'soil.salt-04': overLists((i: { base_ec_ds_m: number; compost_ec_ds_m: number; limit_ec_ds_m: number }) => ({
    max_fraction: saltyPartShare(i.base_ec_ds_m, i.compost_ec_ds_m, i.limit_ec_ds_m),
  })),
  'soil.blend-01': (i: { cost_per_lb: Amounts; oz_per_lb: ByName<Amounts>; minimum_oz: Amounts }) =>
    blend({ materials: materialsOf(i.cost_per_lb, i.oz_per_lb), minimum: i.minimum_oz }, 'lb'),
  'soil.blend-02': (i: {
    order_lb: number;
    price_per_100_lb: Amounts;
    analysis_pct: ByName<readonly number[]>;
    minimum_pct: readonly number[];
  }) => {
    const names = ['N', 'P2O5', 'K2O'];
    const named = (values: readonly number[]) => Object.fromEntries(names.map((name, at) => [name, share(values[at] ?? 0)]));
    const price = Object.fromEntries(Object.entries(i.price_per_100_lb).map(([name, of100]) => [name, of100 / 100]));
    const contents = Object.fromEntries(Object.entries(i.analysis_pct).map(([name, values]) => [name, named(values)]));
    const minimum = Object.fromEntries(Object.entries(named(i.minimum_pct)).map(([name, least]) => [name, least * i.order_lb]));
    return blend({ materials: materialsOf(price, contents), minimum, total: i.order_lb }, 'lb');
  },
  'soil.blend-03': fractionBlend,
  'soil.blend-04': fractionBlend,
  'soil.blend-05': kgBlend,
  'soil.blend-06': kgBlend,
  'soil.also-blend-01': kgBlend,
  'soil.blend-07': (i: { scoop_price_cents: Amounts; available_g_per_scoop: ByName<Amounts>; minimum_g: Amounts }) => {
    const found = wholeMeasureBlend(
      { materials: materialsOf(i.scoop_price_cents, i.available_g_per_scoop), minimum: i.minimum_g },
      milp,
      lp,
    );
    if (found.state === 'cannot-be-met') return { status: 'Infeasible' };
    return {
      status: 'Optimal',
      cost_cents: found.cost,
      ...suffixed(found.amounts, 'scoops'),
      ...suffixed(found.brings, 'g'),
    };
  },
};

function coverCrop(i: { N_pct_dm: number; dry_matter_ton_per_acre: number }) {
  const { availableShare, warning } = coverCropNitrogen(share(i.N_pct_dm));
  const lb = (tons: number) => convert(convert(tons, 'us_ton', 'kg') * availableShare, 'kg', 'lb');
  return { pan_lb_per_ton: lb(1), pan_lb_per_acre: lb(i.dry_matter_ton_per_acre), warning };
}

function heat(i: { method: string; log: readonly { day: number; temp_c: number }[]; turns_at_heat?: number }) {
  const log: HeatDay[] = i.log.map((each) => ({ day: each.day, temperature_C: each.temp_c }));
  const rule = heatRule({ method: heatMethod(i.method), log, turnings: i.turns_at_heat ?? 0, band: HEAT_BAND_C });
  return { days_in_band: rule.daysInBand, passes: rule.met };
}

type HeatLog = {
  method: string;
  dailyTemperature_F: readonly (number | null)[];
  turnedOnDayIndex?: readonly number[];
};

function heatRecord(i: HeatLog) {
  const rule = heatRule({
    method: heatMethod(i.method),
    log: i.dailyTemperature_F.map((reading, day) => ({ day, temperature_C: reading === null ? null : celsiusOf(reading) })),
    turnings: i.turnedOnDayIndex?.length ?? 0,
    band: HEAT_BAND_F,
  });
  return {
    daysInRange: rule.daysInBand,
    longestRunInRange_days: rule.longestRun_days,
    turnings: rule.turnings,
    meetsTimeTemperature: rule.met,
  };
}
