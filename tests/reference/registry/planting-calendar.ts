import { daysBetween, type IsoDate, parseIsoDate } from '../../../planner/calendar.ts';
import { degreeDays } from '../../../planner/climate/degree-days.ts';
import { isHardinessClass } from '../../../planner/crops/hardiness.ts';
import { autumnDays, countBack, sowIndoors, springWindow } from '../../../planner/season/frost-windows.ts';
import { daysToHeat, meanHeat, singleSineCut } from '../../../planner/season/heat.ts';
import { maturityOf } from '../../../planner/season/maturity.ts';
import { occupancy } from '../../../planner/season/occupancy.ts';
import { planningDay_h, shortDays } from '../../../planner/season/short-days.ts';
import { publishedIntervals, sowingsEvery } from '../../../planner/season/succession.ts';
import {
  celsiusOf,
  celsiusStepsOf as differenceC,
  fahrenheitStepsOf as differenceF,
  fahrenheitOf,
} from '../../../planner/units/convert.ts';
import { forEach } from '../for-each.ts';
import type { CaseValues, Registry } from '../registry.ts';
import { libraryCrop } from './crop-library.ts';

type Inputs = Readonly<Record<string, number | string | boolean>>;
const each = (answer: (inputs: Inputs) => CaseValues) => forEach<Inputs>(answer);
const number = (value: Inputs[string] | undefined): number => (typeof value === 'number' ? value : Number.NaN);
const date = (value: Inputs[string] | undefined): IsoDate => parseIsoDate(String(value));

const day = (i: Inputs) => ({
  tmax_C: celsiusOf(number(i['tmax_F'])),
  tmin_C: celsiusOf(number(i['tmin_F'])),
  base_C: celsiusOf(number(i['base_F'])),
});
const dayWithUpper = (i: Inputs) => ({ ...day(i), upper_C: celsiusOf(number(i['upper_F'])) });

const countedBack = each((i) => {
  const { back_days, sow } = countBack({
    firstFrost: date(i['first_frost_date']),
    maturity_days: number(i['days_to_maturity']),
    seedToTransplant_days: number(i['days_seed_to_transplant'] ?? 0),
    harvest_days: number(i['harvest_period_days']),
    fallFactor_days: number(i['fall_factor_days']),
    isTender: i['frost_tender'] === true,
  });
  return { days_back: back_days, sow_date: sow };
});

const NEAREST_TENTH = 0.1;

export const plantingCalendar: Registry = {
  'planting.pl-sow-indoors': each((i) => {
    const { from, to } = sowIndoors(date(i['plant_out_date']), { min: number(i['weeks_min']), max: number(i['weeks_max']) });
    return { sow_from: from, sow_to: to };
  }),
  'planting.pl-spring-window': each((i) => {
    const hardiness = String(i['class_']);
    if (!isHardinessClass(hardiness)) throw new Error(`no class ${hardiness}`);
    const { earliest, latest } = springWindow(hardiness, date(i['last_frost_date']));
    return { earliest, latest_of_window: latest };
  }),
  'planting.pl-fall-factor': each((i) => ({
    days: autumnDays(number(i['days_to_maturity']), number(i['fall_factor_days'])),
  })),
  'planting.pl-fall-countback': countedBack,
  'planting.pl-fall-broccoli-letter': countedBack,
  'planting.pl-succession-dates': each((i) => {
    const sowings = sowingsEvery({
      first: date(i['first_sowing']),
      notAfter: date(i['last_sowing_not_after']),
      interval_days: number(i['interval_days']),
    });
    return { sowings, count: sowings.length };
  }),
  'planting.also-succession': each((i) => {
    const { sow } = countBack({
      firstFrost: date(i['first_frost_date']),
      maturity_days: number(i['days_to_maturity']),
      seedToTransplant_days: 0,
      harvest_days: number(i['harvest_period_days']),
      fallFactor_days: number(i['fall_factor_days']),
      isTender: false,
    });
    const sowings = sowingsEvery({ first: date(i['first_sowing']), notAfter: sow, interval_days: number(i['interval_days']) });
    return { last_sowing_not_after: sow, count: sowings.length };
  }),
  'planting.pl-succession-intervals': each((i) => {
    const found = publishedIntervals[libraryCrop(String(i['crop'])).id];
    return { interval_min: found?.[0] ?? null, interval_max: found?.[1] ?? null };
  }),
  'planting.pl-daylength-fao9': each((i) => ({
    daylight_h: planningDay_h(number(i['latitude_deg']), number(i['day_of_year']), 0),
  })),
  'planting.pl-daylength-solstice': ((i: {
    readonly latitude_deg: number | readonly number[];
    readonly day_of_year: number;
    readonly horizon_deg: readonly [number, number];
  }) => {
    const of = (horizon_deg: number) =>
      Array.isArray(i.latitude_deg)
        ? i.latitude_deg.map((latitude: number) => planningDay_h(latitude, i.day_of_year, horizon_deg))
        : planningDay_h(i.latitude_deg as number, i.day_of_year, horizon_deg);
    return { geometric_h: of(i.horizon_deg[0]), civil_h: of(i.horizon_deg[1]) };
  }) as Registry[string],
  'planting.pl-ten-hour-day': each((i) => {
    const place = {
      latitude_deg: number(i['latitude_deg']),
      year: number(i['year']),
      threshold_h: number(i['threshold_h']),
    };
    const geometric = shortDays({ ...place, height_deg: 0 });
    const almanac = shortDays(place);
    return {
      geometric_under_from: geometric.underFrom,
      geometric_back_on: geometric.backOn,
      civil_under_from: almanac.underFrom,
      civil_back_on: almanac.backOn,
    };
  }),
  'planting.pl-gdd-average': each((i) => ({ gdd_F: differenceF(degreeDays('mean-against-base', day(i))) })),
  'planting.pl-gdd-clamped': each((i) => ({ gdd_F: differenceF(degreeDays('extremes-held', dayWithUpper(i))) })),
  'planting.also-gdd': each((i) => ({
    average_F: differenceF(degreeDays('mean-against-base', day(i))),
    clamped_F: differenceF(degreeDays('extremes-held', dayWithUpper(i))),
    sine_F: differenceF(singleSineCut(dayWithUpper(i))),
  })),
  'planting.pl-gdd-sine': each((i) => ({
    gdd_C: singleSineCut({
      tmax_C: number(i['tmax_C']),
      tmin_C: number(i['tmin_C']),
      base_C: number(i['base_C']),
      ...(i['upper_C'] === undefined || i['upper_C'] === null ? {} : { upper_C: number(i['upper_C']) }),
    }),
  })),
  'planting.pl-gdd-sweet-corn': each((i) => {
    const perDay_C_days = degreeDays('extremes-held', dayWithUpper(i));
    return {
      gdd_per_day_F: Number(differenceF(perDay_C_days).toPrecision(12)),
      days: daysToHeat(differenceC(number(i['required_gdd_F'])), perDay_C_days),
    };
  }),
  'planting.pl-gdd-pea': each((i) => {
    const days = daysBetween(date(i['start']), date(i['reached']));
    const mean = meanHeat(differenceC(number(i['required_gdd_F'])), days, celsiusOf(number(i['base_F'])));
    return { days, mean_gdd_per_day_F: differenceF(mean.perDay_C_days), mean_temperature_F: fahrenheitOf(mean.mean_C) };
  }),
  'planting.pl-gdd-convert': each((i) => ({ gdd_C: differenceC(number(i['gdd_F'])) })),
  'planting.pl-occupancy': each((i) => {
    const transplanted = occupancy({
      inBed: date(i['transplant_out'] ?? i['sown']),
      toHarvest_days: number(i['days_to_maturity_from_transplant'] ?? i['days_to_maturity_from_seed']),
      window_days: number(i['harvest_window_days']),
      turnover_days: number(i['turnover_days']),
    });
    return {
      first_harvest: transplanted.firstHarvest,
      last_harvest: transplanted.lastHarvest,
      bed_free: transplanted.free,
    };
  }),
  'planting.pl-dtm-basis': each((i) => {
    const counted = String(i['counted_from']);
    const known = maturityOf({
      maturity_days: number(i['days_to_maturity']),
      countedFrom: counted === 'transplant' || counted === 'planting' ? counted : 'seed',
      indoors_days: 7 * number(i['weeks_indoors']),
    });
    return { bed_days_to_harvest: known.inBed_days, total_days_from_seed: known.fromSeed_days };
  }),
  'planting.pl-hardiness-temperature': each((i) => ({
    temperature_C: Math.round(celsiusOf(number(i['temperature_F'])) / NEAREST_TENTH) * NEAREST_TENTH,
  })),
};
