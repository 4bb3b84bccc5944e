import { radiansOf } from '../units/convert.ts';
import { requirePlaceAndDay, seriesDeclination_rad } from './sun.ts';

/** Sun's centre below the horizon when its upper rim is seen to rise: 34' of bending and 16' of radius. */
export const SUNRISE_deg = -0.833;
/** Sun's centre at the end of civil twilight. */
export const CIVIL_TWILIGHT_deg = -6;

/**
 * Hours from sunrise to sunset, or between other heights of the sun.
 *
 *   D = (24 / pi) arccos((sin a0 - sin(lat) sin(decl)) / (cos(lat) cos(decl)))
 *
 *   a0   height of the sun's centre at rise and set   degrees   -0.833; civil twilight -6
 *
 * 24 in polar day, 0 in polar night. Flat horizon; within 4 minutes of a solar position library at 47.6 N (the calendar's drift).
 * Source: spherical astronomy; checked with the almanac of 2012 for 47.6 N.
 * @param decl declination, radians; by the series of seven terms unless given
 * @throws InputError naming the field
 */
export function dayLength_h(
  latitude_deg: number,
  dayOfYear: number,
  height_deg: number = SUNRISE_deg,
  decl: number = seriesDeclination_rad(dayOfYear),
): number {
  requirePlaceAndDay(latitude_deg, dayOfYear);
  const latitude_rad = radiansOf(latitude_deg);
  const level = Math.cos(latitude_rad) * Math.cos(decl);
  const above = Math.sin(radiansOf(height_deg)) - Math.sin(latitude_rad) * Math.sin(decl);
  if (Math.abs(level) < 1e-12) return above < 0 ? 24 : 0;
  return (24 / Math.PI) * Math.acos(Math.min(1, Math.max(-1, above / level)));
}
