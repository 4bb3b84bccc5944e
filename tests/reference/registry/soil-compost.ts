import { compostMix, heapCarbonToNitrogen, sampleMoistureShare } from '../../../planner/fertility/compost-mix.ts';
import {
  secondForCarbonNitrogen_kg,
  secondForMoisture_kg,
  twoCompostGoals,
} from '../../../planner/fertility/compost-second-part.ts';
import { HEAT_BAND_C, HEAT_BAND_F, type HeatDay, type HeatMethod, heatRule } from '../../../planner/fertility/heat-rule.ts';
import { manureInterval } from '../../../planner/fertility/manure-interval.ts';
import {
  mediaSaltClass,
  milliequivalents,
  saltyPartShare,
  sodiumAdsorption,
  sodiumClass,
} from '../../../planner/fertility/media-salts.ts';
import { phosphate_kg, potash_kg } from '../../../planner/fertility/nutrients.ts';
import { teaBatch } from '../../../planner/fertility/tea-batch.ts';
import { celsiusOf, convert } from '../../../planner/units/convert.ts';
import type { Registry } from '../registry.ts';
import { overLists } from './over-lists.ts';
import { percent, share, tables } from './soil-fertility-units.ts';

const heatMethod = (method: string): HeatMethod =>
  /windrow|turned/.test(method) ? 'turned-windrow' : /static/.test(method) ? 'static-aerated' : 'in-vessel';

type SarMeq = { Na_meq_l: number; Ca_meq_l: number; Mg_meq_l: number };
const sarOf = (sar: number) => ({ sar, class: sodiumClass(tables.sar_classes, sar) });
const sarMeq = (i: SarMeq) =>
  sarOf(sodiumAdsorption({ sodium_meq_per_L: i.Na_meq_l, calcium_meq_per_L: i.Ca_meq_l, magnesium_meq_per_L: i.Mg_meq_l }));

/** Compost, manure, tea and salts. */
export const soilCompost: Registry = {
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
};

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
