import { requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';

/** Part of a month's rain that serves a crop, mm. SCS short form: `P (125 - 0.2 P)/125` to 250 mm, `125 + 0.1 P` above. Source: USDA SCS as simplified by FAO. */
export function scsRain_mm(rain_mm: number): number {
  requireRange('rain_mm', rain_mm, 0, 20_000, 'mm');
  return rain_mm <= 250 ? (rain_mm * (125 - 0.2 * rain_mm)) / 125 : 125 + 0.1 * rain_mm;
}

/** Part of a month's rain to be counted on, mm: `0.6 P - 10` to 70 mm, `0.8 P - 24` above, not below 0. Source: FAO/AGLW. */
export function dependableRain_mm(rain_mm: number): number {
  requireRange('rain_mm', rain_mm, 0, 20_000, 'mm');
  return rain_mm <= 70 ? Math.max(0, 0.6 * rain_mm - 10) : 0.8 * rain_mm - 24;
}

/** Net depth of one irrigation for which the storage factor is 1. */
export const USUAL_STORAGE_MM = 75;

/** Storage factor of TR-21, D in inches: `0.531747 + 0.295164 D - 0.057697 D^2 + 0.003804 D^3`. Source: NEH 623 chapter 2. */
export function storageFactor(storage_mm: number): number {
  requireRange('storage_mm', storage_mm, 0, 400, 'mm');
  const d = convert(storage_mm, 'mm', 'in');
  return 0.531747 + 0.295164 * d - 0.057697 * d ** 2 + 0.003804 * d ** 3;
}

/**
 * Part of a month's rain that serves a crop, by TR-21.
 *
 *   Pe = SF (0.70917 P^0.82416 - 0.11556) 10^(0.02426 ETc),   P, ETc, Pe in inches
 *
 * Not above the rain nor the use, not below 0. The millimetre constants in circulation belong to another form of it.
 * Source: USDA SCS TR-21 (1967, rev. 1970), NEH 623 chapter 2.
 * @throws InputError naming the field
 */
export function tr21Rain_mm(rain_mm: number, etc_mm: number, storage_mm: number = USUAL_STORAGE_MM): number {
  requireRange('rain_mm', rain_mm, 0, 20_000, 'mm');
  requireRange('etc_mm', etc_mm, 0, 2000, 'mm');
  const p = convert(rain_mm, 'mm', 'in');
  const etc = convert(etc_mm, 'mm', 'in');
  const effective = storageFactor(storage_mm) * (0.70917 * p ** 0.82416 - 0.11556) * 10 ** (0.02426 * etc);
  return convert(Math.max(0, Math.min(effective, p, etc)), 'in', 'mm');
}

/**
 * Part of a day's rain that serves a crop: the first 0.1 in is lost, then all to 1 in, two thirds of the second inch, nothing
 * above. Source: Texas A&M University.
 */
export function dailyRain_mm(rain_mm: number): number {
  requireRange('rain_mm', rain_mm, 0, 2000, 'mm');
  const inch = convert(1, 'in', 'mm');
  const first = Math.max(0, Math.min(rain_mm, inch) - 0.1 * inch);
  const second = (2 / 3) * Math.max(0, Math.min(rain_mm, 2 * inch) - inch);
  return first + second;
}

/** Rain below a fifth of the day's ETo dries off the leaves and is not counted. Source: FAO-56, text at eq. 85. */
export const countedRain_mm = (rain_mm: number, eto_mm: number): number => (rain_mm < 0.2 * eto_mm ? 0 : rain_mm);
