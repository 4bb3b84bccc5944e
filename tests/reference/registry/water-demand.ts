import { noonHeightSine } from '../../../planner/climate/sun.ts';
import { convert } from '../../../planner/units/convert.ts';
import {
  drainedColumnShare,
  gardnerCoefficient,
  type Retention,
  supplyHeight_cm,
  tubeRise_mm,
} from '../../../planner/water/capillary-rise.ts';
import {
  containerDays,
  leachateShare,
  overArea_L,
  poreSpace_share,
  reservoirStore_L,
  roundUse_L_per_day,
  toApply_L,
} from '../../../planner/water/container-water.ts';
import { cropCoefficient, meanCoefficient, type StageDays, seasonDays } from '../../../planner/water/crop-curve.ts';
import { type CropRow, cropRow } from '../../../planner/water/crop-rows.ts';
import {
  countedRain_mm,
  dailyRain_mm,
  dependableRain_mm,
  scsRain_mm,
  storageFactor,
  tr21Rain_mm,
} from '../../../planner/water/effective-rain.ts';
import {
  adjustedKc,
  adjustedKcEnd,
  initialKc,
  mixedKc,
  organicReduction,
  underOrganic,
  underPlastic,
} from '../../../planner/water/kc-adjustments.ts';
import { effectiveCover, fullBasalKc, sparseKc } from '../../../planner/water/plant-density.ts';
import { dryDays, schedule } from '../../../planner/water/root-zone-days.ts';
import {
  closedBedRise_dS_per_m,
  concentrationFactor,
  dissolved_mg_per_L,
  leachingShare,
  saltForYield_dS_per_m,
  saltRestriction,
  saltsCarried_g,
  waterForExtract_dS_per_m,
  withLeaching_mm,
  yieldInSalt,
} from '../../../planner/water/salts.ts';
import { adjustedP, readilyAvailable_mm, stressShare, totalAvailable_mm } from '../../../planner/water/soil-store.ts';
import { stageRow, stageRowsOf } from '../../../planner/water/stage-rows.ts';
import {
  coverFromKcb,
  dryingDays,
  evaporationKc,
  exposedWetShare,
  greatestKc,
} from '../../../planner/water/surface-evaporation.ts';
import { stressFromYield, yieldShare } from '../../../planner/water/yield-response.ts';
import { percentOf, shareOf } from '../case-units.ts';
import { forEach } from '../for-each.ts';
import type { CaseValues, Registry } from '../registry.ts';

type Air = { readonly u2_m_s: number; readonly rhmin_pct: number; readonly height_m: number };
const air = (i: Air) => ({ wind2m_m_per_s: i.u2_m_s, rhmin_share: shareOf(i.rhmin_pct), height_m: i.height_m });

type Curve = {
  readonly stage_days: readonly number[];
  readonly kc_ini: number;
  readonly kc_mid: number;
  readonly kc_end: number;
};
const curve = (i: Curve) => ({
  stages_days: i.stage_days as unknown as StageDays,
  kcIni: i.kc_ini,
  kcMid: i.kc_mid,
  kcEnd: i.kc_end,
});

function row(crop: string): CropRow {
  const found = cropRow(crop);
  if (found === undefined) throw new Error(`No row for ${crop}.`);
  return found;
}

/** One value for each of `count` days from a plain value or a list. */
const daily = (value: number | readonly number[], count: number): readonly number[] =>
  typeof value === 'number' ? Array.from({ length: count }, () => value) : value;

function density(i: Air & Record<string, number | null | undefined>): CaseValues {
  const of = (name: string): number => i[name] ?? Number.NaN;
  const coverShare = of('fraction_cover');
  const fc_eff = effectiveCover({
    coverShare,
    noonHeightSine: noonHeightSine(of('latitude_deg'), of('day_of_year')),
    heightToWidth: i['height_width_ratio'] ?? null,
  });
  const kcb_full = fullBasalKc(i['kcb_mid_table'] ?? null, air(i));
  const kcb = sparseKc({
    kcMin: of('kc_min'),
    kcFull: kcb_full,
    coverShare,
    effectiveCoverShare: fc_eff,
    height_m: i.height_m,
  });
  return { fc_eff, kcb_full, kcb };
}

type SoilWater = { readonly theta_fc: number; readonly theta_wp: number; readonly root_depth_m: number; readonly p: number };

function store(i: SoilWater): CaseValues {
  const water = { fieldCapacityShare: i.theta_fc, wiltingShare: i.theta_wp };
  const taw_mm = totalAvailable_mm({ ...water, rootDepth_m: i.root_depth_m });
  return {
    available_mm_per_m: totalAvailable_mm({ ...water, rootDepth_m: 1 }),
    taw_mm,
    raw_mm: readilyAvailable_mm(taw_mm, i.p),
  };
}

const retention = (i: Record<string, number>): Retention => ({
  residualShare: i['theta_r'] ?? Number.NaN,
  saturatedShare: i['theta_s'] ?? Number.NaN,
  alpha_per_cm: i['alpha_per_cm'] ?? Number.NaN,
  n: i['n'] ?? Number.NaN,
  conductivity_cm_per_day: i['ks_cm_d'] ?? Number.NaN,
});

const tolerance = (i: { threshold_dS_m: number; slope_pct_per_dS_m: number }) => ({
  threshold_dS_per_m: i.threshold_dS_m,
  slope_share_per_dS_per_m: shareOf(i.slope_pct_per_dS_m),
});

/** Answers that do not depend on the list stand alone, as the case has them: the first of equal values. */
const single = (answer: CaseValues, name: string): CaseValues => {
  const value = answer[name];
  return Array.isArray(value) && value.every((each) => each === value[0]) ? { ...answer, [name]: value[0] } : answer;
};

export const demand: Registry = {
  'water-demand.wd-kc-ex27a': forEach((i: Air & { kc_table: number }) => ({ kc: adjustedKc(i.kc_table, air(i)) })),
  'water-demand.wd-kc-box15': forEach((i: Air & { kc_table: number; kc_end_table: number }) => ({
    kc_mid: adjustedKc(i.kc_table, air(i)),
    kc_end: adjustedKcEnd(i.kc_end_table, air(i)),
  })),
  'water-demand.wd-kc-ex28': forEach((i: Curve & { day: number }) => ({ kc: cropCoefficient(curve(i), i.day) }), ['stage_days']),
  'water-demand.wd-kc-fig36': (i: Curve & { eto_mm_d: readonly number[] }) => {
    const length = seasonDays(curve(i).stages_days) / i.eto_mm_d.length;
    const kc = i.eto_mm_d.map((_, at) => meanCoefficient(curve(i), at * length + 1, (at + 1) * length));
    return { kc, etc_mm_d: i.eto_mm_d.map((eto, at) => eto * (kc[at] ?? Number.NaN)) };
  },
  'water-demand.wd-kcini-ex24': forEach((i: { kc_ini: number; eto_mm_d: number }) => ({ etc_mm_d: i.kc_ini * i.eto_mm_d })),
  'water-demand.wd-kcini-ex25': forEach(
    (i: { infiltration_mm: number; kc_ini_light: number; kc_ini_heavy: number; eto_mm_d: number }) => {
      const { kcBed } = initialKc({
        wetting_mm: i.infiltration_mm,
        kcLight: i.kc_ini_light,
        kcHeavy: i.kc_ini_heavy,
        wettedShare: 1,
      });
      return { kc_ini: kcBed, etc_mm_d: kcBed * i.eto_mm_d };
    },
  ),
  'water-demand.also-kcini-ex26': forEach(
    (i: {
      irrigation_mm_over_field: number;
      fraction_wetted: number;
      kc_ini_light: number;
      kc_ini_heavy: number;
      eto_mm_d: number;
    }) => {
      const found = initialKc({
        wetting_mm: i.irrigation_mm_over_field,
        kcLight: i.kc_ini_light,
        kcHeavy: i.kc_ini_heavy,
        wettedShare: i.fraction_wetted,
      });
      return {
        infiltration_in_wetted_mm: found.wettedPart_mm,
        kc_ini_wetted: found.kcWetted,
        kc_ini_field: found.kcBed,
        etc_mm_d: found.kcBed * i.eto_mm_d,
      };
    },
  ),
  'water-demand.wd-mulch-ex45': forEach((i: { kc_mid: number; kc_end: number; reduction_fraction: number }) => ({
    kc_mid: underPlastic(i.kc_mid, i.reduction_fraction),
    kc_end: underPlastic(i.kc_end, i.reduction_fraction),
  })),
  'water-demand.wd-mulch-organic': forEach((i: { cover_fraction: number; kc_ini: number; kc_mid: number; kcb_mid: number }) => ({
    evaporation_reduction: organicReduction(i.cover_fraction),
    kc_ini: underOrganic(i.kc_ini, 0, i.cover_fraction),
    kc_mid: underOrganic(i.kc_mid, i.kcb_mid, i.cover_fraction),
  })),
  'water-demand.wd-density-ex41': forEach(density),
  'water-demand.also-density-ex42': forEach(density),
  'water-demand.also-intercrop-ex46': (i: {
    fraction: readonly number[];
    height_m: readonly number[];
    kc: readonly number[];
  }) => ({
    kc_field: mixedKc(i.fraction.map((share, at) => ({ share, height_m: i.height_m[at] ?? 0, kc: i.kc[at] ?? 0 }))),
  }),
  'water-demand.wd-dual-ex32': forEach((i: Air & { kcb: number; kc_min: number; fraction_wetted: number; kr: number }) => {
    const kc_max = greatestKc(i.kcb, air(i));
    const fraction_cover = coverFromKcb(i.kcb, i.kc_min, kc_max, i.height_m);
    const few = exposedWetShare(fraction_cover, i.fraction_wetted);
    const ke = evaporationKc(i.kr, kc_max, i.kcb, few);
    return { kc_max, fraction_cover, few, ke, kc: i.kcb + ke };
  }),
  'water-demand.wd-bare-ex31': (i: {
    days: number;
    eto_mm_d: number | readonly number[];
    kcb: number;
    kc_max: number;
    rew_mm: number;
    tew_mm: number;
  }) => {
    const days = dryingDays({
      eto_mm_per_day: daily(i.eto_mm_d, i.days),
      kcb: i.kcb,
      kcMax: i.kc_max,
      rew_mm: i.rew_mm,
      tew_mm: i.tew_mm,
    });
    return {
      kr: days.map((day) => day.kr),
      etc_mm_d: days.map((day) => day.etc_mm),
      depletion_end_mm: days.map((day) => day.evaporated_mm),
    };
  },
  'water-demand.wd-row-lettuce': forEach((i: { crop: string; stage_set: string }) => {
    const found = row(i.crop);
    const set = stageRow(i.crop, i.stage_set);
    if (set === undefined)
      throw new Error(`No stages "${i.stage_set}" for ${i.crop}: ${stageRowsOf(i.crop).map((s) => `${s.planted}, ${s.region}`)}`);
    return {
      kc_ini: found.kcIni,
      kc_mid: found.kcMid,
      kc_end: found.kcEnd,
      height_m: found.height_m,
      root_depth_m: found.roots_m,
      depletion_fraction: found.p,
      stage_days: set.stages_days,
      season_days: set.total_days,
    };
  }),
  'water-demand.also-row-three': forEach((i: { crop: string }) => {
    const found = row(i.crop);
    return {
      kc_ini: found.kcIni,
      kc_mid: found.kcMid,
      kc_end: found.kcEnd,
      height_m: found.height_m,
      root_depth_min_m: found.roots_m[0],
      root_depth_max_m: found.roots_m[1],
      depletion_fraction: found.p,
    };
  }),
  'water-demand.wd-taw-ex36-loamysand': (i: never) => single(forEach(store)(i, ''), 'available_mm_per_m'),
  'water-demand.also-taw-ex36-maize': forEach(store),
  'water-demand.wd-p-adjust': forEach((i: { p_table: number; etc_mm_d: number }) => ({ p: adjustedP(i.p_table, i.etc_mm_d) })),
  'water-demand.wd-ks-points': (i: never) =>
    single(
      forEach((one: { taw_mm: number; p: number; depletion_mm: number }) => ({
        raw_mm: readilyAvailable_mm(one.taw_mm, one.p),
        ks: stressShare(one.depletion_mm, one.taw_mm, one.p),
      }))(i, ''),
      'raw_mm',
    ),
  'water-demand.wd-schedule-ex38': (i: {
    theta_fc: number;
    theta_wp: number;
    p: number;
    root_depth_first_m: number;
    root_depth_last_m: number;
    start_depletion_mm: number;
    eto_mm_d: readonly number[];
    kc: readonly number[];
    rain_mm: readonly number[];
    given_irrigation_day1_mm?: number | null;
  }) => {
    const last = Math.max(1, i.eto_mm_d.length - 1);
    const etc_mm_d = i.eto_mm_d.map((eto, at) => eto * (i.kc[at] ?? Number.NaN));
    const days = schedule({
      p: i.p,
      start_mm: i.start_depletion_mm,
      first_mm: i.given_irrigation_day1_mm ?? null,
      days: etc_mm_d.map((etc_mm, at) => ({
        etc_mm,
        rain_mm: i.rain_mm[at] ?? 0,
        available_mm: totalAvailable_mm({
          fieldCapacityShare: i.theta_fc,
          wiltingShare: i.theta_wp,
          rootDepth_m: i.root_depth_first_m + ((i.root_depth_last_m - i.root_depth_first_m) * at) / last,
        }),
      })),
    });
    return {
      etc_mm_d,
      irrigation_mm: days.map((day) => day.given_mm),
      deep_percolation_mm: days.map((day) => day.drained_mm),
      depletion_end_mm: days.map((day) => day.depletion_mm),
    };
  },
  'water-demand.also-stress-ex37': (i: {
    days: number;
    eto_mm_d: number | readonly number[];
    kc: number | readonly number[];
    p: number;
    start_depletion_mm: number;
    taw_mm: number;
  }) => {
    const kc = daily(i.kc, i.days);
    const days = dryDays({
      etc_mm: daily(i.eto_mm_d, i.days).map((eto, at) => eto * (kc[at] ?? Number.NaN)),
      available_mm: i.taw_mm,
      p: i.p,
      start_mm: i.start_depletion_mm,
    });
    return {
      ks: days.map((day) => day.ks),
      etc_adj_mm_d: days.map((day) => day.used_mm),
      depletion_end_mm: days.map((day) => day.depletion_mm),
    };
  },
  'water-demand.wd-yield-response': forEach((i: { ky: number; et_ratio: number }) => ({
    relative_yield: yieldShare(i.ky, i.et_ratio),
  })),
  'water-demand.also-yield-ex44': forEach((i: { ky: number; yield_actual_kg_ha: number; yield_max_kg_ha: number }) => ({
    ks: stressFromYield(i.ky, i.yield_actual_kg_ha, i.yield_max_kg_ha),
  })),
  'water-demand.wd-salt-yield': forEach((i: { ece_dS_m: number; threshold_dS_m: number; slope_pct_per_dS_m: number }) => ({
    relative_yield: yieldInSalt(tolerance(i), i.ece_dS_m),
  })),
  'water-demand.wd-salt-tomato': forEach((i: { yield_pct: number; threshold_dS_m: number; slope_pct_per_dS_m: number }) => {
    const ece_dS_m = saltForYield_dS_per_m(tolerance(i), shareOf(i.yield_pct));
    return { ece_dS_m, ecw_dS_m: waterForExtract_dS_per_m(ece_dS_m) };
  }),
  'water-demand.wd-lr-maize': forEach((i: { ecw_dS_m: number; ece_dS_m: number; et_mm_season: number }) => {
    const lr = leachingShare({ ecw_dS_per_m: i.ecw_dS_m, ece_dS_per_m: i.ece_dS_m });
    return { lr, applied_mm: withLeaching_mm(i.et_mm_season, lr) };
  }),
  'water-demand.also-lr-lettuce': forEach(
    (i: { ecw_dS_m: number; ece_dS_m: number; et_mm_d: number; application_efficiency: number }) => {
      const lr = leachingShare({ ecw_dS_per_m: i.ecw_dS_m, ece_dS_per_m: i.ece_dS_m });
      return { lr, gross_mm_d: withLeaching_mm(i.et_mm_d, lr, i.application_efficiency) };
    },
  ),
  'water-demand.wd-salt-concentration': forEach((i: { leaching_fraction: number }) => ({
    factor: concentrationFactor(i.leaching_fraction),
  })),
  'water-demand.wd-salt-class': forEach((i: { ecw_dS_m: number }) => ({ restriction: saltRestriction(i.ecw_dS_m) })),
  'water-demand.wd-salt-tds': forEach((i: { ecw_dS_m: number }) => ({ tds_mg_L: dissolved_mg_per_L(i.ecw_dS_m) })),
  'water-demand.wd-rain-scs': (i: never, what) =>
    forEach((one: { rain_mm_month: number }) => ({
      effective_mm: /dependable/i.test(what) ? dependableRain_mm(one.rain_mm_month) : scsRain_mm(one.rain_mm_month),
    }))(i, what),
  'water-demand.also-rain-forms': forEach((i: { rain_mm_month: number }) => ({
    scs_mm: scsRain_mm(i.rain_mm_month),
    dependable_mm: dependableRain_mm(i.rain_mm_month),
  })),
  'water-demand.wd-rain-tr21-in': (i: never) =>
    single(
      forEach((one: { rain_in_month: number; etc_in_month: number; storage_in: number }) => {
        const [rain_mm, etc_mm, storage_mm] = [one.rain_in_month, one.etc_in_month, one.storage_in].map((each) =>
          convert(each, 'in', 'mm'),
        ) as [number, number, number];
        return {
          effective_in: convert(tr21Rain_mm(rain_mm, etc_mm, storage_mm), 'mm', 'in'),
          storage_factor: storageFactor(storage_mm),
        };
      })(i, ''),
      'storage_factor',
    ),
  'water-demand.wd-rain-tr21-mm100': forEach((i: { rain_mm_month: number; etc_mm_month: number }) => ({
    effective_mm: tr21Rain_mm(i.rain_mm_month, i.etc_mm_month),
  })),
  'water-demand.wd-rain-storage-factor': forEach((i: { storage_mm: number }) => ({ factor: storageFactor(i.storage_mm) })),
  'water-demand.wd-rain-daily': forEach((i: { rain_in_day: number }) => ({
    effective_in: convert(dailyRain_mm(convert(i.rain_in_day, 'in', 'mm')), 'mm', 'in'),
  })),
  'water-demand.wd-rain-ignore': forEach((i: { rain_mm: number; eto_mm_d: number }) => ({
    counted_mm: countedRain_mm(i.rain_mm, i.eto_mm_d),
  })),
  'water-demand.wd-units-depth': forEach((i: { depth_mm: number; area_m2: number; depth_in: number; area_ft2: number }) => ({
    volume_L: overArea_L(i.depth_mm, i.area_m2),
    volume_gal_us: convert(overArea_L(convert(i.depth_in, 'in', 'mm'), convert(i.area_ft2, 'ft2', 'm2')), 'L', 'us_gal'),
  })),
  'water-demand.wd-pot-porosity': forEach((i: { air_space_pct: number; container_capacity_pct: number }) => ({
    total_porosity_pct: percentOf(poreSpace_share(shareOf(i.air_space_pct), shareOf(i.container_capacity_pct))),
  })),
  'water-demand.wd-pot-area-basis': forEach(
    (i: { eto_mm_d: number; kc: number; canopy_diameter_m: number; rim_diameter_m: number }) => ({
      canopy_L_d: roundUse_L_per_day(i.eto_mm_d, i.kc, i.canopy_diameter_m),
      rim_L_d: roundUse_L_per_day(i.eto_mm_d, i.kc, i.rim_diameter_m),
    }),
  ),
  'water-demand.wd-pot-days': forEach(
    (i: { mix_L: number; available_water_fraction: number; depletion_allowed: number; use_L_d: number }) =>
      containerDays({
        mix_L: i.mix_L,
        availableShare: i.available_water_fraction,
        depletionShare: i.depletion_allowed,
        use_L_per_day: i.use_L_d,
      }),
  ),
  'water-demand.wd-pot-leaching': forEach(
    (i: { applied_L: number; leachate_L: number; use_L: number; target_fraction: number }) => ({
      leaching_fraction: leachateShare(i.leachate_L, i.applied_L),
      to_apply_L: toApply_L(i.use_L, i.target_fraction),
    }),
  ),
  'water-demand.wd-cap-tube': forEach(
    (i: { radius_mm: number; surface_tension_N_m: number; density_kg_m3: number; g_m_s2: number }) => ({
      rise_mm: tubeRise_mm({
        radius_mm: i.radius_mm,
        tension_N_per_m: i.surface_tension_N_m,
        density_kg_per_m3: i.density_kg_m3,
        gravity_m_per_s2: i.g_m_s2,
      }),
    }),
  ),
  'water-demand.wd-cap-gardner': forEach((i: { n: number }) => ({ coefficient: gardnerCoefficient(i.n) })),
  'water-demand.wd-cap-height-sand': forEach((i: Record<string, number>) => ({
    max_height_cm: supplyHeight_cm(retention(i), i['flow_mm_d'] ?? Number.NaN),
  })),
  'water-demand.wd-cap-container': forEach((i: Record<string, number>) => ({
    container_capacity: drainedColumnShare(retention(i), i['height_cm'] ?? Number.NaN),
  })),
  'water-demand.wd-reservoir-days': forEach(
    (i: { length_m: number; width_m: number; reservoir_depth_mm: number; void_fraction: number; etc_mm_d: number }) => {
      const area_m2 = i.length_m * i.width_m;
      const use_L_d = overArea_L(i.etc_mm_d, area_m2);
      const { store_L, days } = containerDays({
        mix_L: reservoirStore_L(area_m2, i.reservoir_depth_mm, i.void_fraction),
        availableShare: 1,
        depletionShare: 1,
        use_L_per_day: use_L_d,
      });
      return { store_L, use_L_d, days };
    },
  ),
  'water-demand.wd-reservoir-salt': forEach((i: { ecw_dS_m: number; water_in_L: number; soil_water_L: number }) => ({
    salt_g: saltsCarried_g(i.ecw_dS_m, i.water_in_L),
    ec_rise_dS_m: closedBedRise_dS_per_m(i.ecw_dS_m, i.water_in_L, i.soil_water_L),
  })),
};
