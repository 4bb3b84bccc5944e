import { requireRange } from '../errors.ts';

/** The site's zero: where x and y are 0 on the drawing. */
export type SiteOrigin = { readonly latitude_deg: number; readonly longitude_deg: number };

/** Metres per degree of latitude, and of longitude at the equator, as used on a small site. */
const M_PER_DEG_LATITUDE = 111_132;
const M_PER_DEG_LONGITUDE = 111_320;

/** Degrees are kept to seven decimals: a centimetre of latitude; more is noise. */
const PLACES = 1e7;

/**
 * Place on the drawing to degrees by a local tangent plane: lat = lat0 + y/111132, lon = lon0 + x/(111320 cos lat0).
 *
 *   x, y   metres to the east and north of the site's zero     within about 10 km
 *
 * Right to about 0.2 % at 47 degrees north; for a survey use a geodesy library.
 * Source: RFC 7946 for the form; metres per degree approximate (memory).
 * @throws InputError naming the field
 */
export function degreesOfPlace(
  origin: SiteOrigin,
  x_m: number,
  y_m: number,
): readonly [longitude_deg: number, latitude_deg: number] {
  const cos = cosine(origin);
  const round = (value: number): number => Math.round(value * PLACES) / PLACES;
  return [round(origin.longitude_deg + x_m / (M_PER_DEG_LONGITUDE * cos)), round(origin.latitude_deg + y_m / M_PER_DEG_LATITUDE)];
}

/** Degrees to a place on the drawing: the same the other way round. @throws InputError naming the field */
export function placeOfDegrees(
  origin: SiteOrigin,
  longitude_deg: number,
  latitude_deg: number,
): readonly [x_m: number, y_m: number] {
  const cos = cosine(origin);
  requireRange('longitude_deg', longitude_deg, -180, 180, '°');
  requireRange('latitude_deg', latitude_deg, -90, 90, '°');
  return [
    (longitude_deg - origin.longitude_deg) * M_PER_DEG_LONGITUDE * cos,
    (latitude_deg - origin.latitude_deg) * M_PER_DEG_LATITUDE,
  ];
}

function cosine({ latitude_deg }: SiteOrigin): number {
  requireRange('latitude_deg', latitude_deg, -85, 85, '°');
  return Math.cos((latitude_deg * Math.PI) / 180);
}
