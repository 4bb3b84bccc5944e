import { readFileSync } from 'node:fs';
import { dayOfYear, type IsoDate } from '../../../planner/calendar.ts';
import { dayLength_h, SUNRISE_deg } from '../../../planner/climate/day-length.ts';
import { extremesHeld, meanAgainstBase, singleSine } from '../../../planner/climate/degree-days.ts';
import { frostYears } from '../../../planner/climate/frost-dates.ts';
import { empiricalQuantile, meanAndSpread, mixedFrost, normalValue } from '../../../planner/climate/frost-quantiles.ts';
import { hargreaves_mm_per_day } from '../../../planner/climate/hargreaves.ts';
import { penmanMonteith } from '../../../planner/climate/penman-monteith.ts';
import {
  blackBody_MJ_per_m2,
  clearSky_MJ_per_m2,
  evaporated_mm,
  islandSunlight_MJ_per_m2,
  netLongwave_MJ_per_m2,
  netShortwave_MJ_per_m2,
  soilHeat_MJ_per_m2,
  soilHeatSoFar_MJ_per_m2,
  sunlightFromRange_MJ_per_m2,
  sunlightFromSunshine_MJ_per_m2,
} from '../../../planner/climate/radiation.ts';
import { type ReadDay, readWeather } from '../../../planner/climate/read-weather.ts';
import { referenceEt } from '../../../planner/climate/reference-et.ts';
import { highestSpell } from '../../../planner/climate/spells.ts';
import {
  daylight_h,
  decimalDegrees,
  declination_rad,
  distanceFactor,
  extraterrestrial_MJ_per_m2,
  sunsetAngle_rad,
} from '../../../planner/climate/sun.ts';
import {
  airPressure_kPa,
  dewPoint_C,
  leastHumidity_share,
  meanSaturation_kPa,
  psychrometric_kPa_per_K,
  saturationPressure_kPa,
  saturationSlope_kPa_per_K,
  vapourFromBothHumidities_kPa,
  vapourFromGreatestHumidity_kPa,
  vapourFromMeanHumidity_kPa,
  vapourFromPsychrometer_kPa,
} from '../../../planner/climate/vapour.ts';
import { longestDryRun, wetDry } from '../../../planner/climate/wet-dry.ts';
import { windAt2m_m_per_s } from '../../../planner/climate/wind.ts';
import { convert, radiansOf } from '../../../planner/units/convert.ts';
import { percentOf, shareOf } from '../case-units.ts';
import { forEach } from '../for-each.ts';
import type { CaseValues, Registry } from '../registry.ts';

type Numbers = Readonly<Record<string, number>>;

const record = new Map<string, readonly ReadDay[]>();

/** The shipped record that a case calls by the name of the open package it comes from. */
function daysOf(dataset: string): readonly ReadDay[] {
  const known = record.get(dataset);
  if (known !== undefined) return known;
  if (dataset !== 'seattle-weather') throw new Error(`No weather record is called ${dataset}.`);
  const text = readFileSync(new URL('../../../resources/weather/coast-47n-2012-2015.csv', import.meta.url), 'utf8');
  const read = readWeather(
    text
      .trim()
      .split(/\r?\n/)
      .map((line) => line.split(',')),
  );
  const days = read?.days ?? [];
  record.set(dataset, days);
  return days;
}

const inMonth = (days: readonly ReadDay[], month: number): readonly ReadDay[] =>
  days.filter((day) => Number(day.date.slice(5, 7)) === month);
const inYear = (days: readonly ReadDay[], year: number): readonly ReadDay[] =>
  days.filter((day) => Number(day.date.slice(0, 4)) === year);

function hargreavesOf(day: ReadDay, latitude_deg: number): number {
  return hargreaves_mm_per_day({
    tmax_C: day.tmax_C ?? Number.NaN,
    tmin_C: day.tmin_C ?? Number.NaN,
    extraterrestrial_MJ_per_m2: extraterrestrial_MJ_per_m2(latitude_deg, dayOfYear(day.date)),
  });
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const mean = (values: readonly number[]): number => meanAndSpread(values).mean;

/** Runs Penman-Monteith and names every printed step as the examples do. */
function steps(input: {
  readonly i: Numbers;
  readonly vapour_kPa: number;
  readonly wind2m_m_per_s: number;
  readonly sunlight_MJ_per_m2: number;
  readonly extraterrestrial_MJ_per_m2: number;
  readonly soilHeat_MJ_per_m2?: number;
}): CaseValues {
  const { i } = input;
  const s = penmanMonteith({
    tmax_C: i['tmax_C'] ?? Number.NaN,
    tmin_C: i['tmin_C'] ?? Number.NaN,
    elevation_m: i['elevation_m'] ?? Number.NaN,
    vapour_kPa: input.vapour_kPa,
    wind2m_m_per_s: input.wind2m_m_per_s,
    sunlight_MJ_per_m2: input.sunlight_MJ_per_m2,
    extraterrestrial_MJ_per_m2: input.extraterrestrial_MJ_per_m2,
    soilHeat_MJ_per_m2: input.soilHeat_MJ_per_m2 ?? 0,
  });
  return {
    slope_kPa_per_C: s.slope_kPa_per_K,
    pressure_kPa: s.pressure_kPa,
    psychrometric_kPa_per_C: s.psychrometric_kPa_per_K,
    es_kPa: s.saturation_kPa,
    ea_kPa: input.vapour_kPa,
    vpd_kPa: s.deficit_kPa,
    u2_m_s: input.wind2m_m_per_s,
    ra_MJ_m2_d: input.extraterrestrial_MJ_per_m2,
    rs_MJ_m2_d: input.sunlight_MJ_per_m2,
    rso_MJ_m2_d: s.clearSky_MJ_per_m2,
    rns_MJ_m2_d: s.netShortwave_MJ_per_m2,
    rnl_MJ_m2_d: s.netLongwave_MJ_per_m2,
    rn_MJ_m2_d: s.net_MJ_per_m2,
    g_MJ_m2_d: input.soilHeat_MJ_per_m2 ?? 0,
    eto_mm_d: s.eto_mm_per_day,
  };
}

const sunOf = (i: { readonly latitude_deg: number; readonly day_of_year: number }) => ({
  extraterrestrial_MJ_per_m2: extraterrestrial_MJ_per_m2(i.latitude_deg, i.day_of_year),
  daylight_h: daylight_h(i.latitude_deg, i.day_of_year),
});

type Humid = { readonly tmax_C: number; readonly tmin_C: number; readonly rhmax_pct: number; readonly rhmin_pct: number };
const shares = (i: Humid) => ({ ...i, rhmax_share: shareOf(i.rhmax_pct), rhmin_share: shareOf(i.rhmin_pct) });

type RangeDay = {
  readonly latitude_deg: number;
  readonly day_of_year: number;
  readonly tmax_C: number;
  readonly tmin_C: number;
  readonly k_rs: number;
  readonly elevation_m: number;
};

function fromRange(i: Omit<RangeDay, 'elevation_m'>): { readonly ra: number; readonly rs: number } {
  const ra = extraterrestrial_MJ_per_m2(i.latitude_deg, i.day_of_year);
  const rs = sunlightFromRange_MJ_per_m2({ tmax_C: i.tmax_C, tmin_C: i.tmin_C, krs: i.k_rs, extraterrestrial_MJ_per_m2: ra });
  return { ra, rs };
}

function reduced(i: RangeDay & { readonly u2_m_s: number }): CaseValues {
  const { ra, rs } = fromRange(i);
  return steps({
    i: i as unknown as Numbers,
    vapour_kPa: saturationPressure_kPa(i.tmin_C),
    wind2m_m_per_s: i.u2_m_s,
    sunlight_MJ_per_m2: Math.min(rs, clearSky_MJ_per_m2(ra, i.elevation_m)),
    extraterrestrial_MJ_per_m2: ra,
  });
}

const degreeDay = (i: { tmax: number; tmin: number; base: number; upper?: number | null }) => ({
  tmax_C: i.tmax,
  tmin_C: i.tmin,
  base_C: i.base,
  ...(typeof i.upper === 'number' ? { upper_C: i.upper } : {}),
});

const orNone = (value: string | number | null): string | number => value ?? 'none';

/** Reads a list of days of the year whose years without a freeze are empty, missing or `'none'`. */
function withFreeFrostYears(days: readonly unknown[], years: unknown): readonly (number | null)[] {
  const known = days.map((day) => (typeof day === 'number' ? day : null));
  const count = Array.isArray(years) ? years.length : typeof years === 'number' ? years : known.length;
  return [...known, ...Array.from({ length: Math.max(0, count - known.length) }, () => null)];
}

export const climate: Registry = {
  'water-demand.wd-atm-ex2': forEach((i: { elevation_m: number }) => {
    const pressure_kPa = airPressure_kPa(i.elevation_m);
    return { pressure_kPa, psychrometric_kPa_per_C: psychrometric_kPa_per_K(pressure_kPa) };
  }),
  'water-demand.wd-es-ex3': forEach((i: { tmax_C: number; tmin_C: number }) => ({
    e_tmax_kPa: saturationPressure_kPa(i.tmax_C),
    e_tmin_kPa: saturationPressure_kPa(i.tmin_C),
    es_kPa: meanSaturation_kPa(i.tmax_C, i.tmin_C),
    e_at_tmean_kPa: saturationPressure_kPa(mean([i.tmax_C, i.tmin_C])),
  })),
  'water-demand.wd-es-table': forEach((i: { temperature_C: number }) => ({ e_kPa: saturationPressure_kPa(i.temperature_C) })),
  'water-demand.wd-slope-table': forEach((i: { temperature_C: number }) => ({
    slope_kPa_per_C: saturationSlope_kPa_per_K(i.temperature_C),
  })),
  'water-demand.wd-ea-ex4': forEach((i: { a_psy_per_C: number; elevation_m: number; tdry_C: number; twet_C: number }) => {
    const pressure_kPa = airPressure_kPa(i.elevation_m);
    return {
      pressure_kPa,
      e_twet_kPa: saturationPressure_kPa(i.twet_C),
      ea_kPa: vapourFromPsychrometer_kPa({
        dry_C: i.tdry_C,
        wet_C: i.twet_C,
        pressure_kPa,
        coefficient_per_K: i.a_psy_per_C,
      }),
    };
  }),
  'water-demand.wd-ea-ex5': forEach((i: Humid) => {
    const h = shares(i);
    return {
      ea_eq17_kPa: vapourFromBothHumidities_kPa(h),
      ea_eq18_kPa: vapourFromGreatestHumidity_kPa(h.tmin_C, h.rhmax_share),
      ea_eq19_kPa: vapourFromMeanHumidity_kPa({ ...h, rhmean_share: mean([h.rhmax_share, h.rhmin_share]) }),
    };
  }),
  'water-demand.wd-vpd-ex6': forEach((i: Humid) => ({
    vpd_kPa: meanSaturation_kPa(i.tmax_C, i.tmin_C) - vapourFromBothHumidities_kPa(shares(i)),
  })),
  'water-demand.wd-tdew-inverse': forEach((i: { ea_kPa: number }) => ({ tdew_C: dewPoint_C(i.ea_kPa) })),
  'water-demand.wd-rhmin-ex20': forEach((i: { tdew_C: number; tmax_C: number }) => ({
    rhmin_pct: percentOf(leastHumidity_share(i.tdew_C, i.tmax_C)),
  })),
  'water-demand.wd-doy': forEach((i: { date: string }) => ({ day_of_year: dayOfYear(i.date as IsoDate) })),
  'water-demand.wd-latitude': forEach((i: { latitude_deg: number; latitude_min: number }) => {
    const latitude_decimal_deg = decimalDegrees(i.latitude_deg, i.latitude_min);
    return { latitude_decimal_deg, latitude_rad: radiansOf(latitude_decimal_deg) };
  }),
  'water-demand.wd-ra-ex8-9': forEach((i: { latitude_deg: number; day_of_year: number }) => ({
    dr: distanceFactor(i.day_of_year),
    declination_rad: declination_rad(i.day_of_year),
    sunset_angle_rad: sunsetAngle_rad(i.latitude_deg, i.day_of_year),
    ra_MJ_m2_d: extraterrestrial_MJ_per_m2(i.latitude_deg, i.day_of_year),
    daylight_h: daylight_h(i.latitude_deg, i.day_of_year),
  })),
  'water-demand.also-sun-ex19': forEach((i: { latitude_deg: number; day_of_year: number }) => ({
    dr: distanceFactor(i.day_of_year),
    declination_rad: declination_rad(i.day_of_year),
    latitude_rad: radiansOf(i.latitude_deg),
  })),
  'water-demand.wd-ra-48N': forEach((i: { latitude_deg: number; day_of_year: number }) => ({
    ra_MJ_m2_d: sunOf(i).extraterrestrial_MJ_per_m2,
    daylight_h: sunOf(i).daylight_h,
  })),
  'water-demand.wd-ra-polar': forEach((i: { latitude_deg: number; day_of_year: number }) => ({
    daylight_h: sunOf(i).daylight_h,
    ra_is_finite: Number.isFinite(sunOf(i).extraterrestrial_MJ_per_m2) ? 1 : 0,
  })),
  'water-demand.wd-rs-ex10': forEach(
    (i: { latitude_deg: number; day_of_year: number; sunshine_h_month: number; days_in_month: number }) => {
      const sun = sunOf(i);
      const rs = sunlightFromSunshine_MJ_per_m2({ ...sun, sunshine_h: i.sunshine_h_month / i.days_in_month });
      return {
        ra_MJ_m2_d: sun.extraterrestrial_MJ_per_m2,
        daylight_h: sun.daylight_h,
        rs_MJ_m2_d: rs,
        rs_mm_d: evaporated_mm(rs),
      };
    },
  ),
  'water-demand.wd-rnl-ex11': forEach(longwave),
  'water-demand.wd-rnl-clamp': forEach(longwave),
  'water-demand.wd-rn-ex12': forEach((i: { rs_MJ_m2_d: number; rnl_MJ_m2_d: number; albedo: number }) => {
    const rns = netShortwave_MJ_per_m2(i.rs_MJ_m2_d, i.albedo);
    const rn = rns - i.rnl_MJ_m2_d;
    return { rns_MJ_m2_d: rns, rn_MJ_m2_d: rn, rn_mm_d: evaporated_mm(rn) };
  }),
  'water-demand.wd-g-ex13': forEach((i: { t_prev_C: number; t_this_C: number; t_next_C: number }) => {
    const g = soilHeat_MJ_per_m2(i.t_prev_C, i.t_next_C);
    return { g_eq43_MJ_m2_d: g, g_eq43_mm_d: evaporated_mm(g), g_eq44_MJ_m2_d: soilHeatSoFar_MJ_per_m2(i.t_prev_C, i.t_this_C) };
  }),
  'water-demand.wd-wind-ex14': forEach((i: { wind_m_s: number; height_m: number }) => ({
    u2_m_s: windAt2m_m_per_s(i.wind_m_s, i.height_m),
  })),
  'water-demand.wd-rs-ex15': forEach((i: Omit<RangeDay, 'elevation_m'>) => {
    const { ra, rs } = fromRange(i);
    return { ra_MJ_m2_d: ra, rs_MJ_m2_d: rs, rs_mm_d: evaporated_mm(rs) };
  }),
  'water-demand.wd-rn-ex16': forEach((i: RangeDay & { ea_kPa: number }) => {
    const { ra, rs } = fromRange(i);
    const rso = clearSky_MJ_per_m2(ra, i.elevation_m);
    const sunlight_MJ_per_m2 = Math.min(rs, rso);
    const rns = netShortwave_MJ_per_m2(sunlight_MJ_per_m2);
    const rnl = netLongwave_MJ_per_m2({
      tmax_C: i.tmax_C,
      tmin_C: i.tmin_C,
      vapour_kPa: i.ea_kPa,
      sunlight_MJ_per_m2,
      clearSky_MJ_per_m2: rso,
    });
    return {
      ra_MJ_m2_d: ra,
      rs_MJ_m2_d: sunlight_MJ_per_m2,
      rso_MJ_m2_d: rso,
      rns_MJ_m2_d: rns,
      rnl_MJ_m2_d: rnl,
      rn_MJ_m2_d: rns - rnl,
      rn_mm_d: evaporated_mm(rns - rnl),
    };
  }),
  'water-demand.wd-rs-island': forEach((i: { ra_MJ_m2_d: number }) => ({ rs_MJ_m2_d: islandSunlight_MJ_per_m2(i.ra_MJ_m2_d) })),
  'water-demand.wd-eto-ex17': forEach(
    (
      i: Omit<RangeDay, 'k_rs'> & {
        ea_kPa: number;
        u2_m_s: number;
        sunshine_h: number;
        t_month_C: number;
        t_prev_month_C: number;
      },
    ) => {
      const sun = sunOf(i);
      return {
        daylight_h: sun.daylight_h,
        ...steps({
          i: i as unknown as Numbers,
          vapour_kPa: i.ea_kPa,
          wind2m_m_per_s: i.u2_m_s,
          sunlight_MJ_per_m2: sunlightFromSunshine_MJ_per_m2({ ...sun, sunshine_h: i.sunshine_h }),
          extraterrestrial_MJ_per_m2: sun.extraterrestrial_MJ_per_m2,
          soilHeat_MJ_per_m2: soilHeatSoFar_MJ_per_m2(i.t_prev_month_C, i.t_month_C),
        }),
      };
    },
  ),
  'water-demand.wd-eto-ex18': forEach((i: Omit<RangeDay, 'k_rs'> & Humid & { wind_km_h_at_10m: number; sunshine_h: number }) => {
    const sun = sunOf(i);
    return {
      daylight_h: sun.daylight_h,
      ...steps({
        i: i as unknown as Numbers,
        vapour_kPa: vapourFromBothHumidities_kPa(shares(i)),
        wind2m_m_per_s: windAt2m_m_per_s(convert(i.wind_km_h_at_10m, 'km_per_h', 'm_per_s'), 10),
        sunlight_MJ_per_m2: sunlightFromSunshine_MJ_per_m2({ ...sun, sunshine_h: i.sunshine_h }),
        extraterrestrial_MJ_per_m2: sun.extraterrestrial_MJ_per_m2,
      }),
    };
  }),
  'water-demand.wd-eto-ex20': forEach(reduced),
  'water-demand.wd-eto-ex20-wind': forEach(reduced),
  'water-demand.wd-harg-ex20': forEach((i: { tmax_C: number; tmin_C: number; ra_MJ_m2_d: number }) => ({
    eto_mm_d: hargreaves_mm_per_day({ tmax_C: i.tmax_C, tmin_C: i.tmin_C, extraterrestrial_MJ_per_m2: i.ra_MJ_m2_d }),
  })),
  'water-demand.wd-harg-mehta': forEach((i: { tmax_C: number; tmin_C: number; tmean_C: number; ra_MJ_m2_d: number }) => ({
    eto_mm_d: hargreaves_mm_per_day({ ...i, extraterrestrial_MJ_per_m2: i.ra_MJ_m2_d }),
  })),
  'water-demand.wd-daylength-seattle': forEach((i: { latitude_deg: number; day_of_year: number }) => ({
    // the page that the case comes from takes the declination of eq. 24
    day_length_h: dayLength_h(i.latitude_deg, i.day_of_year, SUNRISE_deg, declination_rad(i.day_of_year)),
    n_eq34_h: daylight_h(i.latitude_deg, i.day_of_year),
  })),
  'water-demand.wd-gdd-methods': forEach((i: { tmax: number; tmin: number; base: number; upper?: number | null }) => ({
    method1: meanAgainstBase(degreeDay(i)),
    method2: extremesHeld(degreeDay(i)),
    sine: singleSine(degreeDay(i)),
  })),
  'water-demand.wd-gdd-fahrenheit': forEach((i: { tmax: number; tmin: number; base: number; upper?: number | null }) => ({
    method2: extremesHeld(degreeDay(i)),
  })),
  'water-demand.wd-sea-harg-months': forEach((i: { dataset: string; latitude_deg: number; month: number }) => ({
    eto_mm_d: mean(inMonth(daysOf(i.dataset), i.month).map((day) => hargreavesOf(day, i.latitude_deg))),
  })),
  'water-demand.wd-sea-year': forEach((i: { dataset: string; latitude_deg: number; year: number }) => ({
    eto_mm_year: sum(inYear(daysOf(i.dataset), i.year).map((day) => hargreavesOf(day, i.latitude_deg))),
    rain_mm_year: sum(inYear(daysOf(i.dataset), i.year).map((day) => day.rain_mm ?? 0)),
  })),
  'water-demand.wd-sea-day': forEach((i: { latitude_deg: number; day_of_year: number; tmax_C: number; tmin_C: number }) => {
    const ra = sunOf(i).extraterrestrial_MJ_per_m2;
    return {
      ra_MJ_m2_d: ra,
      eto_mm_d: hargreaves_mm_per_day({ tmax_C: i.tmax_C, tmin_C: i.tmin_C, extraterrestrial_MJ_per_m2: ra }),
    };
  }),
  'water-demand.wd-sea-pm-reduced': forEach(
    (i: { dataset: string; latitude_deg: number; elevation_m: number; k_rs: number; month: number }) => ({
      eto_mm_d: mean(
        inMonth(daysOf(i.dataset), i.month).map((day) => {
          const et = referenceEt(day, {
            latitude_deg: i.latitude_deg,
            elevation_m: i.elevation_m,
            windHeight_m: 10,
            krs: i.k_rs,
          });
          return et.state === 'known' ? et.eto_mm_per_day : Number.NaN;
        }),
      ),
    }),
  ),
  'water-demand.wd-sea-frost-dates': forEach((i: { dataset: string; threshold_C: number; year: number }) => {
    const [found] = frostYears(inYear(daysOf(i.dataset), i.year), i.threshold_C);
    return { last_spring: orNone(found?.lastSpring ?? null), first_fall: orNone(found?.firstFall ?? null) };
  }),
  'water-demand.wd-frost-quantiles': (i: {
    last_spring_day_of_year: readonly number[];
    first_fall_day_of_year: readonly number[];
    quantile: number | readonly number[];
  }) => {
    const spring = meanAndSpread(i.last_spring_day_of_year);
    const fall = meanAndSpread(i.first_fall_day_of_year);
    const each = (of: (p: number) => number) => (typeof i.quantile === 'number' ? of(i.quantile) : i.quantile.map(of));
    return {
      spring_mean: spring.mean,
      spring_sd: spring.sd,
      fall_mean: fall.mean,
      fall_sd: fall.sd,
      spring_empirical: each((p) => empiricalQuantile(i.last_spring_day_of_year, p)),
      fall_empirical: each((p) => empiricalQuantile(i.first_fall_day_of_year, p)),
      spring_normal: each((p) => normalValue(spring.mean, spring.sd, p)),
      fall_normal: each((p) => normalValue(fall.mean, fall.sd, p)),
    };
  },
  'water-demand.also-frost-mixed': (i: {
    freeze_day_of_year: readonly unknown[];
    probability: number | readonly number[];
    years: unknown;
  }) => {
    const days = withFreeFrostYears(i.freeze_day_of_year, i.years);
    const of = (p: number) => mixedFrost('fall', days, p);
    const day = (p: number) => orNone(of(p).day);
    const { share, mean: middle, sd } = of(0.5);
    return {
      share_with_freeze: share,
      mean: middle,
      sd,
      day_of_year: typeof i.probability === 'number' ? day(i.probability) : i.probability.map(day),
    };
  },
  'water-demand.wd-sea-gdd': forEach((i: { dataset: string; base_C: number; year: number }) => {
    const days = inYear(daysOf(i.dataset), i.year).map((day) => ({
      tmax_C: day.tmax_C ?? Number.NaN,
      tmin_C: day.tmin_C ?? Number.NaN,
      base_C: i.base_C,
    }));
    return { method1: sum(days.map(meanAgainstBase)), method2: sum(days.map(extremesHeld)) };
  }),
  'water-demand.wd-sea-dry-run': forEach((i: { dataset: string; dry_below_mm: number; year: number }) => {
    const run = longestDryRun(inYear(daysOf(i.dataset), i.year), i.dry_below_mm);
    return { longest_run_days: run?.days ?? 0, first_day: orNone(run?.from ?? null), last_day: orNone(run?.to ?? null) };
  }),
  'water-demand.wd-sea-hot-week': forEach((i: { dataset: string; latitude_deg: number; window_days: number }) => {
    const days = daysOf(i.dataset);
    const warm = highestSpell(
      days.map((day) => ({ date: day.date, value: day.tmax_C })),
      i.window_days,
    );
    const thirsty = highestSpell(
      days.map((day) => ({ date: day.date, value: hargreavesOf(day, i.latitude_deg) })),
      i.window_days,
    );
    return {
      first_day_tmax: orNone(warm?.from ?? null),
      mean_tmax_C: warm?.mean,
      first_day_eto: orNone(thirsty?.from ?? null),
      mean_eto_mm_d: thirsty?.mean,
    };
  }),
  'water-demand.wd-sea-markov-jan': (i: { dataset: string; wet_from_mm: number; month: number | readonly number[] }) => {
    const one = (month: number) => {
      const found = wetDry(daysOf(i.dataset), month, i.wet_from_mm);
      return {
        wet_after_wet: [found.wetAfterWet, found.afterWet],
        wet_after_dry: [found.wetAfterDry, found.afterDry],
        p_wet_given_wet: orNone(found.pWetAfterWet),
        p_wet_given_dry: orNone(found.pWetAfterDry),
      };
    };
    if (typeof i.month === 'number') return one(i.month);
    const all = i.month.map(one);
    return {
      wet_after_wet: all.map((each) => each.wet_after_wet),
      wet_after_dry: all.map((each) => each.wet_after_dry),
      p_wet_given_wet: all.map((each) => each.p_wet_given_wet),
      p_wet_given_dry: all.map((each) => each.p_wet_given_dry),
    };
  },
};

function longwave(i: Numbers): CaseValues {
  const of = (name: string): number => i[name] ?? Number.NaN;
  return {
    sigma_tmax4_MJ_m2_d: blackBody_MJ_per_m2(of('tmax_C')),
    sigma_tmin4_MJ_m2_d: blackBody_MJ_per_m2(of('tmin_C')),
    rnl_MJ_m2_d: netLongwave_MJ_per_m2({
      tmax_C: of('tmax_C'),
      tmin_C: of('tmin_C'),
      vapour_kPa: of('ea_kPa'),
      sunlight_MJ_per_m2: of('rs_MJ_m2_d'),
      clearSky_MJ_per_m2: of('rso_MJ_m2_d'),
    }),
  };
}
