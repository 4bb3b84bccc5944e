import { requireRange } from '../errors.ts';
import { radiansOf } from '../units/convert.ts';

/** Solar constant, 0.0820 MJ m-2 min-1. Source: FAO-56 eq. 21. */
const SOLAR_CONSTANT_MJ_PER_M2_MIN = 0.082;
const MINUTES_PER_DAY = 1440;

/** Inverse relative distance from the earth to the sun, `1 + 0.033 cos(2 pi J / 365)`. Source: FAO-56 eq. 23. */
export const distanceFactor = (dayOfYear: number): number => 1 + 0.033 * Math.cos((2 * Math.PI * dayOfYear) / 365);

/** The sun's declination, `0.409 sin(2 pi J / 365 - 1.39)`. Source: FAO-56 eq. 24. */
export const declination_rad = (dayOfYear: number): number => 0.409 * Math.sin((2 * Math.PI * dayOfYear) / 365 - 1.39);

/**
 * Angle from noon to sunset, `arccos(-tan(lat) tan(decl))`; pi in polar day, 0 in polar night.
 * Source: FAO-56 eq. 25.
 */
export function sunsetAngle_rad(latitude_deg: number, dayOfYear: number): number {
  requirePlaceAndDay(latitude_deg, dayOfYear);
  const x = -Math.tan(radiansOf(latitude_deg)) * Math.tan(declination_rad(dayOfYear));
  return Math.acos(Math.min(1, Math.max(-1, x)));
}

/**
 * Declination by a series of seven terms, within 0.04 degree (0.1 with leap years). Eq. 24 lags up to 1.5 degrees in autumn,
 * which is 10 minutes of day length at 48 N: dates that hang on day length take this one.
 *
 *   decl = 0.006918 - 0.399912 cos x + 0.070257 sin x - 0.006758 cos 2x + 0.000907 sin 2x - 0.002697 cos 3x + 0.00148 sin 3x
 *
 *   x = 2 pi (J - 1/2)/365, the middle of the day
 *
 * Source: Spencer 1971 (from memory); checked against a solar position library.
 */
export function seriesDeclination_rad(dayOfYear: number): number {
  const x = (2 * Math.PI * (dayOfYear - 0.5)) / 365;
  return (
    0.006918 -
    0.399912 * Math.cos(x) +
    0.070257 * Math.sin(x) -
    0.006758 * Math.cos(2 * x) +
    0.000907 * Math.sin(2 * x) -
    0.002697 * Math.cos(3 * x) +
    0.00148 * Math.sin(3 * x)
  );
}

/**
 * Sunlight on a level square metre at the top of the air in a day.
 *
 *   Ra = (1440 / pi) 0.0820 dr (ws sin(lat) sin(decl) + cos(lat) cos(decl) sin(ws))
 *
 *   dr, decl, ws   distance factor, declination, sunset angle of the day; declination by eq. 24 unless given
 *   lat            latitude          degrees   -90 to 90, south negative
 *   J              day of the year   -         1 to 366
 *
 * With eq. 24 up to 5 % low in October and November at 48 N, within 1 % from April to August.
 * Source: FAO-56 eq. 21; checked with Examples 8 and 15 and table 2.6.
 * @throws InputError naming the field
 */
export function extraterrestrial_MJ_per_m2(
  latitude_deg: number,
  dayOfYear: number,
  decl: number = declination_rad(dayOfYear),
): number {
  requirePlaceAndDay(latitude_deg, dayOfYear);
  const latitude_rad = radiansOf(latitude_deg);
  const ws = Math.acos(Math.min(1, Math.max(-1, -Math.tan(latitude_rad) * Math.tan(decl))));
  const shape = ws * Math.sin(latitude_rad) * Math.sin(decl) + Math.cos(latitude_rad) * Math.cos(decl) * Math.sin(ws);
  return Math.max(0, (MINUTES_PER_DAY / Math.PI) * SOLAR_CONSTANT_MJ_PER_M2_MIN * distanceFactor(dayOfYear) * shape);
}

/**
 * Daylight hours of geometry, `24 ws / pi`: the sun's centre above a flat horizon, without the air's bending.
 * For the time from sunrise to sunset see `day-length.ts`.
 * Source: FAO-56 eq. 34; checked with Example 9 and table 2.7.
 */
export const daylight_h = (latitude_deg: number, dayOfYear: number): number =>
  (24 / Math.PI) * sunsetAngle_rad(latitude_deg, dayOfYear);

/** Sine of the sun's height at noon, `sin(lat) sin(decl) + cos(lat) cos(decl)`. Source: FAO-56 eq. 97. */
export function noonHeightSine(latitude_deg: number, dayOfYear: number): number {
  requirePlaceAndDay(latitude_deg, dayOfYear);
  const latitude_rad = radiansOf(latitude_deg);
  const decl = declination_rad(dayOfYear);
  return Math.sin(latitude_rad) * Math.sin(decl) + Math.cos(latitude_rad) * Math.cos(decl);
}

/** Degrees and minutes to decimal degrees; a minus on the degrees stands for both. Source: FAO-56 eq. 22. */
export function decimalDegrees(degrees: number, minutes: number): number {
  requireRange('degrees', degrees, -180, 180, 'degrees');
  requireRange('minutes', minutes, 0, 60, 'minutes');
  const south = degrees < 0 || Object.is(degrees, -0);
  return south ? degrees - minutes / 60 : degrees + minutes / 60;
}

export function requirePlaceAndDay(latitude_deg: number, dayOfYear: number): void {
  requireRange('latitude_deg', latitude_deg, -90, 90, 'degrees');
  requireRange('dayOfYear', dayOfYear, 1, 366, '');
}
