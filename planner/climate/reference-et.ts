import { dayOfYear } from '../calendar.ts';
import { requireRange } from '../errors.ts';
import type { Working } from '../working.ts';
import { explainHargreaves, type HargreavesInput, hargreaves_mm_per_day } from './hargreaves.ts';
import { explainPenmanMonteith, type PenmanMonteithInput, penmanMonteith } from './penman-monteith.ts';
import { clearSky_MJ_per_m2, sunlightFromRange_MJ_per_m2, vapourFromMinimum_kPa } from './radiation.ts';
import { extraterrestrial_MJ_per_m2 } from './sun.ts';
import { saturation_kPa, vapourFromGreatestHumidity_kPa } from './vapour.ts';
import type { StationPlace, WeatherDay } from './weather-day.ts';
import { USUAL_WIND_M_PER_S, windAt2m_m_per_s } from './wind.ts';

export type EtoMethod = 'penman-monteith' | 'temperatures-only';

/** What was taken in place of a measurement. */
export type Assumed = 'humidity-from-minimum' | 'radiation-from-range' | 'wind-usual';

export const assumedSays: Readonly<Record<Assumed, string>> = {
  'humidity-from-minimum': 'No humidity on record: the dew point is taken as the night’s minimum (FAO-56 eq. 48).',
  'radiation-from-range': 'No sunlight on record: estimated from the day’s temperature range (FAO-56 eq. 50).',
  'wind-usual': 'No wind on record: 2 m/s is taken (FAO-56, text at eq. 47).',
};

export type ReferenceEt =
  | { readonly state: 'known'; readonly eto_mm_per_day: number; readonly method: EtoMethod; readonly assumed: readonly Assumed[] }
  | { readonly state: 'no-temperature' };

type Chosen =
  | { readonly kind: 'full'; readonly input: PenmanMonteithInput; readonly assumed: readonly Assumed[] }
  | { readonly kind: 'temperatures'; readonly input: HargreavesInput }
  | { readonly kind: 'none' };

function vapour_kPa(day: WeatherDay, tmin_C: number, tmax_C: number): number | null {
  if (day.dewPoint_C !== null) return saturation_kPa(day.dewPoint_C);
  if (day.rhmax_share !== null && day.rhmin_share !== null)
    return (saturation_kPa(tmin_C) * day.rhmax_share + saturation_kPa(tmax_C) * day.rhmin_share) / 2;
  return day.rhmax_share === null ? null : vapourFromGreatestHumidity_kPa(tmin_C, day.rhmax_share);
}

function choose(day: WeatherDay, place: StationPlace): Chosen {
  requireRange('latitude_deg', place.latitude_deg, -90, 90, 'degrees');
  requireRange('elevation_m', place.elevation_m, -430, 9000, 'm');
  if (day.tmax_C === null || day.tmin_C === null || day.tmax_C < day.tmin_C) return { kind: 'none' };
  const { tmax_C, tmin_C } = day;
  const ra = extraterrestrial_MJ_per_m2(place.latitude_deg, dayOfYear(day.date));
  const known_kPa = vapour_kPa(day, tmin_C, tmax_C);
  if (known_kPa === null && day.radiation_MJ_per_m2 === null && day.wind_m_per_s === null)
    return { kind: 'temperatures', input: { tmax_C, tmin_C, extraterrestrial_MJ_per_m2: ra } };
  const assumed: Assumed[] = [];
  if (known_kPa === null) assumed.push('humidity-from-minimum');
  if (day.radiation_MJ_per_m2 === null) assumed.push('radiation-from-range');
  if (day.wind_m_per_s === null) assumed.push('wind-usual');
  const guessed = sunlightFromRange_MJ_per_m2({ tmax_C, tmin_C, krs: place.krs, extraterrestrial_MJ_per_m2: ra });
  const input = {
    tmax_C,
    tmin_C,
    vapour_kPa: known_kPa ?? vapourFromMinimum_kPa(tmin_C, place.dry ?? false),
    wind2m_m_per_s: day.wind_m_per_s === null ? USUAL_WIND_M_PER_S : windAt2m_m_per_s(day.wind_m_per_s, place.windHeight_m),
    sunlight_MJ_per_m2: day.radiation_MJ_per_m2 ?? Math.min(guessed, clearSky_MJ_per_m2(ra, place.elevation_m)),
    extraterrestrial_MJ_per_m2: ra,
    elevation_m: place.elevation_m,
  };
  return { kind: 'full', input, assumed };
}

/**
 * Reference evapotranspiration of a day by the best method that the day's data allow, and what it rests on.
 *
 *   humidity, sunlight or wind known:  Penman-Monteith, the rest estimated (dew point = Tmin, eq. 50, 2 m/s)
 *   only temperatures:                 Hargreaves
 *
 * Source: FAO-56 chapter 3, "missing climatic data".
 * @throws InputError for a latitude or elevation out of range
 */
export function referenceEt(day: WeatherDay, place: StationPlace): ReferenceEt {
  const chosen = choose(day, place);
  if (chosen.kind === 'none') return { state: 'no-temperature' };
  if (chosen.kind === 'temperatures')
    return { state: 'known', eto_mm_per_day: hargreaves_mm_per_day(chosen.input), method: 'temperatures-only', assumed: [] };
  const { eto_mm_per_day } = penmanMonteith(chosen.input);
  return { state: 'known', eto_mm_per_day, method: 'penman-monteith', assumed: chosen.assumed };
}

/** How {@link referenceEt} came to its figure; null for a day without temperatures. */
export function explainReferenceEt(day: WeatherDay, place: StationPlace): Working | null {
  const chosen = choose(day, place);
  if (chosen.kind === 'none') return null;
  if (chosen.kind === 'temperatures') return explainHargreaves(chosen.input);
  return explainPenmanMonteith(
    chosen.input,
    chosen.assumed.map((each) => assumedSays[each]),
  );
}
