import { describe } from 'vitest';
import { dayLength_h } from '../../../../planner/climate/day-length.ts';
import { extremesHeld } from '../../../../planner/climate/degree-days.ts';
import { chanceOfFrostAfter, empiricalQuantile, meanAndSpread, mixedFrost } from '../../../../planner/climate/frost-quantiles.ts';
import { hargreaves_mm_per_day } from '../../../../planner/climate/hargreaves.ts';
import { noaaDate, noaaFixedLine, noaaLine, noaaReading } from '../../../../planner/climate/noaa-reading.ts';
import { normalQuantile } from '../../../../planner/climate/normal-quantile.ts';
import { penmanMonteith } from '../../../../planner/climate/penman-monteith.ts';
import { plainColumns, readPlainRow } from '../../../../planner/climate/plain-weather.ts';
import { sunlightFromSunshine_MJ_per_m2 } from '../../../../planner/climate/radiation.ts';
import { referenceEt } from '../../../../planner/climate/reference-et.ts';
import { highestSpell } from '../../../../planner/climate/spells.ts';
import { decimalDegrees, extraterrestrial_MJ_per_m2, noonHeightSine, sunsetAngle_rad } from '../../../../planner/climate/sun.ts';
import {
  airPressure_kPa,
  dewPoint_C,
  saturationPressure_kPa,
  vapourFromBothHumidities_kPa,
  vapourFromGreatestHumidity_kPa,
  vapourFromMeanHumidity_kPa,
  vapourFromPsychrometer_kPa,
} from '../../../../planner/climate/vapour.ts';
import { windAt2m_m_per_s } from '../../../../planner/climate/wind.ts';
import { aWeatherDay } from '../../../builders/a-weather-day.ts';
import { testRefusals } from '../../../builders/faults-of.ts';

describe('sun and day', () => {
  testRefusals([
    ['latitude_deg too-large (90 degrees)', () => dayLength_h(91, 10)],
    ['dayOfYear too-small (1)', () => dayLength_h(47, 0)],
    ['latitude_deg too-small (-90 degrees)', () => sunsetAngle_rad(-91, 10)],
    ['dayOfYear too-large (366)', () => extraterrestrial_MJ_per_m2(47, 367)],
    ['latitude_deg too-large (90 degrees)', () => noonHeightSine(91, 10)],
    ['degrees too-large (180 degrees)', () => decimalDegrees(181, 0)],
    ['minutes too-large (60 minutes)', () => decimalDegrees(10, 61)],
    [
      'sunshine_h too-large (24 h)',
      () => sunlightFromSunshine_MJ_per_m2({ sunshine_h: 25, daylight_h: 12, extraterrestrial_MJ_per_m2: 30 }),
    ],
  ]);
});

describe('air, wind and evaporation', () => {
  const humid = { tmax_C: 25, tmin_C: 15 };
  const hot = { tmax_C: 25, tmin_C: 15, extraterrestrial_MJ_per_m2: 30 };
  const full = { ...hot, vapour_kPa: 1.4, wind2m_m_per_s: 2, sunlight_MJ_per_m2: 20, elevation_m: 100 };
  const place = { latitude_deg: 47.6, elevation_m: 10, windHeight_m: 2, krs: 0.16 };
  const day = aWeatherDay('2024-07-01', {});
  testRefusals([
    ['elevation_m too-large (9000 m)', () => airPressure_kPa(9001)],
    ['temperature_C too-large (60 C)', () => saturationPressure_kPa(61)],
    [
      'wet_C too-large',
      () => vapourFromPsychrometer_kPa({ dry_C: 20, wet_C: 21, pressure_kPa: 100, coefficient_per_K: 0.000662 }),
    ],
    ['rhmax_share too-large (1)', () => vapourFromBothHumidities_kPa({ ...humid, rhmax_share: 1.1, rhmin_share: 0.5 })],
    ['rhmin_share too-large (0.8)', () => vapourFromBothHumidities_kPa({ ...humid, rhmax_share: 0.8, rhmin_share: 0.9 })],
    ['rhmax_share too-large (1)', () => vapourFromGreatestHumidity_kPa(15, 1.1)],
    ['rhmean_share too-small (0)', () => vapourFromMeanHumidity_kPa({ ...humid, rhmean_share: -0.1 })],
    ['vapour_kPa too-small (0.0001 kPa)', () => dewPoint_C(0)],
    ['wind_m_per_s too-large (60 m/s)', () => windAt2m_m_per_s(61, 10)],
    ['height_m too-small (0.1 m)', () => windAt2m_m_per_s(3, 0)],
    ['tmax_C too-large (60 C)', () => hargreaves_mm_per_day({ ...hot, tmax_C: 61 })],
    ['tmin_C too-large (25 C)', () => hargreaves_mm_per_day({ ...hot, tmin_C: 26 })],
    ['extraterrestrial_MJ_per_m2 too-large (50 MJ/m2)', () => hargreaves_mm_per_day({ ...hot, extraterrestrial_MJ_per_m2: 51 })],
    ['tmax_C too-small (-90 C)', () => penmanMonteith({ ...full, tmax_C: -91 })],
    ['tmin_C too-large (25 C)', () => penmanMonteith({ ...full, tmin_C: 26 })],
    ['vapour_kPa too-small (0 kPa)', () => penmanMonteith({ ...full, vapour_kPa: -1 })],
    ['sunlight_MJ_per_m2 too-large (50 MJ/m2)', () => penmanMonteith({ ...full, sunlight_MJ_per_m2: 51 })],
    ['latitude_deg too-large (90 degrees)', () => referenceEt(day, { ...place, latitude_deg: 91 })],
    ['elevation_m too-small (-430 m)', () => referenceEt(day, { ...place, elevation_m: -500 })],
  ]);
});

describe('records', () => {
  const row = (cells: readonly string[]) => {
    const columns = plainColumns(['date', 'tmax_c']);
    if (columns === undefined) throw new Error('these columns are understood');
    return readPlainRow(columns, cells);
  };
  testRefusals([
    ['upper_C too-small', () => extremesHeld({ tmin_C: 1, tmax_C: 9, base_C: 10, upper_C: 9.9 })],
    ['p too-large (1)', () => empiricalQuantile([1], 1.1)],
    ['values too-few', () => empiricalQuantile([], 0.5)],
    ['values too-few', () => meanAndSpread([])],
    ['p too-small (0)', () => mixedFrost('spring', [60], -0.1)],
    ['values too-few', () => mixedFrost('spring', [null], 0.5)],
    ['days too-few', () => chanceOfFrostAfter([], 60)],
    ['p too-small (1e-12)', () => normalQuantile(0)],
    ['window_days not-whole', () => highestSpell([], 1.5)],
    ['window_days too-small (1)', () => highestSpell([], 0)],
    ['days too-few', () => highestSpell([], 7)],
    ['value not-a-number', () => noaaReading({ element: 'TMAX', value: 'warm' })],
    ['date not-a-date', () => noaaDate('20240230')],
    ['station other-shape', () => noaaLine(['USW00024233', '20240709', 'TMAX'])],
    ['station other-shape', () => noaaLine(['USW0002423', '20240709', 'TMAX', '1'])],
    ['station other-shape', () => noaaLine(['xUSW00024233', '20240709', 'TMAX', '1'])],
    ['station other-shape', () => noaaLine(['USW000242334', '20240709', 'TMAX', '1'])],
    ['line other-shape', () => noaaFixedLine('short')],
    ['date not-a-date', () => row(['', '20'])],
  ]);
});
