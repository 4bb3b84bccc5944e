import { bedDose_kg, looseVolume_L } from '../../../planner/fertility/bed-dose.ts';
import { coverCropNitrogen } from '../../../planner/fertility/cover-crop.ts';
import { dressingNitrogen, materialFor_kg, rideAlong } from '../../../planner/fertility/material-rate.ts';
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
import { potassiumCritical_mg_per_kg } from '../../../planner/fertility/test-class.ts';
import { layerNutrient_kg_per_m2 } from '../../../planner/fertility/test-value.ts';
import { convert, type UnitSymbol } from '../../../planner/units/convert.ts';
import type { Registry } from '../registry.ts';
import { overLists } from './over-lists.ts';
import { fromLbAcre, inArea, inches, share, tables, toLbAcre } from './soil-fertility-units.ts';

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

/** Soil tests, rates, removal, release and credits. */
export const soilNutrients: Registry = {
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
};

function coverCrop(i: { N_pct_dm: number; dry_matter_ton_per_acre: number }) {
  const { availableShare, warning } = coverCropNitrogen(share(i.N_pct_dm));
  const lb = (tons: number) => convert(convert(tons, 'us_ton', 'kg') * availableShare, 'kg', 'lb');
  return { pan_lb_per_ton: lb(1), pan_lb_per_acre: lb(i.dry_matter_ton_per_acre), warning };
}
