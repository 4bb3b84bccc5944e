import { bedDose_kg } from '../../../planner/fertility/bed-dose.ts';
import { bufferLime } from '../../../planner/fertility/buffer-lime.ts';
import {
  gypsumByDensity_kg_per_m2,
  gypsumByMeq_kg_per_m2,
  sodiumToReplace_meq_per_100g,
} from '../../../planner/fertility/gypsum.ts';
import {
  effectiveNeutralisingShare,
  limeFinenessShare,
  limingMaterial_kg,
  pureNeutralisingShare,
} from '../../../planner/fertility/liming-material.ts';
import {
  type LimeSoilClass,
  limeCredit_kg_per_m2,
  mehlichAcidity_meq_per_100cm3,
  mehlichLime,
} from '../../../planner/fertility/mehlich-lime.ts';
import type { BufferLimeTable } from '../../../planner/fertility/soil-tables.ts';
import { freeLimeSulfur_kg_per_m2, type SulfurTexture, sulfurRate } from '../../../planner/fertility/sulfur.ts';
import { textureLime_kg_per_m2 } from '../../../planner/fertility/texture-lime.ts';
import { convert } from '../../../planner/units/convert.ts';
import type { Registry } from '../registry.ts';
import { overLists } from './over-lists.ts';
import { fromLbAcre, fromTonAcre, inArea, inches, percent, share, tables, toLbAcre, toTonAcre } from './soil-fertility-units.ts';

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

/** Lime, sulfur and gypsum. */
export const soilLime: Registry = {
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
};
