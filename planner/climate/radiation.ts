import { requireRange } from '../errors.ts';
import { saturation_kPa } from './vapour.ts';

/** Depth of water that 1 MJ m-2 evaporates, 0.408 mm (1 / 2.45 MJ kg-1, as printed). Source: FAO-56 eq. 20. */
export const MM_PER_MJ_PER_M2 = 0.408;
/** Stefan-Boltzmann constant for a day, MJ K-4 m-2. Source: FAO-56 eq. 39. */
const SIGMA = 4.903e-9;
/** FAO-56 eq. 39 takes 273.16, eq. 6 takes 273. */
const ZERO_C_IN_K = 273.16;
/** Share of sunlight that the reference grass throws back. Source: FAO-56 eq. 38. */
export const GRASS_ALBEDO = 0.23;
/** Coefficient of eq. 50, K^-0.5. Source: FAO-56 eq. 50. */
export const INLAND_KRS = 0.16;
export const COAST_KRS = 0.19;

/** A depth of evaporated water from an energy. Source: FAO-56 eq. 20. */
export const evaporated_mm = (energy_MJ_per_m2: number): number => MM_PER_MJ_PER_M2 * energy_MJ_per_m2;

/** Sunlight of a cloudless day, `(0.75 + 0.00002 z) Ra`. Source: FAO-56 eq. 37. */
export const clearSky_MJ_per_m2 = (extraterrestrial_MJ_per_m2: number, elevation_m: number): number =>
  (0.75 + 2e-5 * elevation_m) * extraterrestrial_MJ_per_m2;

/**
 * Sunlight from hours of sunshine, `(0.25 + 0.50 n/N) Ra`.
 * Source: FAO-56 eq. 35; checked with Example 10.
 */
export function sunlightFromSunshine_MJ_per_m2(input: {
  readonly sunshine_h: number;
  readonly daylight_h: number;
  readonly extraterrestrial_MJ_per_m2: number;
}): number {
  requireRange('sunshine_h', input.sunshine_h, 0, 24, 'h');
  const share = input.daylight_h <= 0 ? 0 : Math.min(1, input.sunshine_h / input.daylight_h);
  return (0.25 + 0.5 * share) * input.extraterrestrial_MJ_per_m2;
}

/**
 * Sunlight from the day's temperature range, `k sqrt(Tmax - Tmin) Ra`.
 *
 *   k   0.16 inland, 0.19 on a coast   K^-0.5
 *
 * Source: FAO-56 eq. 50; checked with Example 15. The caller holds it to the clear sky's.
 */
export const sunlightFromRange_MJ_per_m2 = (input: {
  readonly tmax_C: number;
  readonly tmin_C: number;
  readonly krs: number;
  readonly extraterrestrial_MJ_per_m2: number;
}): number => input.krs * Math.sqrt(Math.max(0, input.tmax_C - input.tmin_C)) * input.extraterrestrial_MJ_per_m2;

/** Sunlight of a month on a small island, `0.7 Ra - 4`; to 100 m elevation. Source: FAO-56 eq. 51. */
export const islandSunlight_MJ_per_m2 = (extraterrestrial_MJ_per_m2: number): number =>
  Math.max(0, 0.7 * extraterrestrial_MJ_per_m2 - 4);

/** Sunlight kept, `(1 - albedo) Rs`. Source: FAO-56 eq. 38. */
export const netShortwave_MJ_per_m2 = (sunlight_MJ_per_m2: number, albedo: number = GRASS_ALBEDO): number =>
  (1 - albedo) * sunlight_MJ_per_m2;

/** What a black surface of that temperature sends out in a day, `sigma T^4`. Source: FAO-56 table 2.8. */
export const blackBody_MJ_per_m2 = (temperature_C: number): number => SIGMA * (temperature_C + ZERO_C_IN_K) ** 4;

export type NetLongwaveInput = {
  readonly tmax_C: number;
  readonly tmin_C: number;
  readonly vapour_kPa: number;
  readonly sunlight_MJ_per_m2: number;
  readonly clearSky_MJ_per_m2: number;
};

/**
 * Warmth that the ground loses to the sky in a day.
 *
 *   Rnl = (s Tmax^4 + s Tmin^4)/2 (0.34 - 0.14 sqrt(ea)) (1.35 min(1, Rs/Rso) - 0.35)
 *
 * In polar night Rso is 0: cloud is then unknown and Rs/Rso taken as 1.
 * Source: FAO-56 eq. 39; checked with Example 11 (its 38.7 is a slip for 38.8).
 */
export function netLongwave_MJ_per_m2(input: NetLongwaveInput): number {
  const clear = input.clearSky_MJ_per_m2 <= 0 ? 1 : Math.min(1, input.sunlight_MJ_per_m2 / input.clearSky_MJ_per_m2);
  const sent = (blackBody_MJ_per_m2(input.tmax_C) + blackBody_MJ_per_m2(input.tmin_C)) / 2;
  return sent * (0.34 - 0.14 * Math.sqrt(Math.max(0, input.vapour_kPa))) * (1.35 * clear - 0.35);
}

/** Heat into the soil in a month whose neighbours are known, `0.07 (T(i+1) - T(i-1))`. Source: FAO-56 eq. 43. */
export const soilHeat_MJ_per_m2 = (before_C: number, after_C: number): number => 0.07 * (after_C - before_C);

/** Heat into the soil in a month when the next is unknown, `0.14 (T(i) - T(i-1))`. Source: FAO-56 eq. 44. */
export const soilHeatSoFar_MJ_per_m2 = (before_C: number, now_C: number): number => 0.14 * (now_C - before_C);

/** Vapour pressure of a day whose dew point is taken as its minimum temperature. Source: FAO-56 eq. 48. */
export const vapourFromMinimum_kPa = (tmin_C: number, dryPlace: boolean): number =>
  saturation_kPa(dryPlace ? tmin_C - 2 : tmin_C);
