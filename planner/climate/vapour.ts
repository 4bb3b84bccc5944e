import { refuse, requireRange } from '../errors.ts';

/**
 * Mean air pressure at an elevation.
 *
 *   P = 101.3 ((293 - 0.0065 z) / 293)^5.26
 *
 *   P   pressure                  kPa
 *   z   elevation above the sea   m     -430 to 9000
 *
 * Source: FAO Irrigation and Drainage Paper 56 (1998), eq. 7; checked with its Example 2 and Annex 2, table 2.1.
 * @throws InputError naming the field
 */
export function airPressure_kPa(elevation_m: number): number {
  requireRange('elevation_m', elevation_m, -430, 9000, 'm');
  return 101.3 * ((293 - 0.0065 * elevation_m) / 293) ** 5.26;
}

/**
 * Psychrometric constant, `0.000665 P`, in kPa per degree.
 * Source: FAO-56 eq. 8.
 */
export const psychrometric_kPa_per_K = (pressure_kPa: number): number => 0.000665 * pressure_kPa;

/**
 * Saturation vapour pressure over water.
 *
 *   e(T) = 0.6108 exp(17.27 T / (T + 237.3))
 *
 *   T   air temperature   C   -90 to 60
 *
 * Never at a mean of two temperatures where a mean pressure is meant: the curve bends.
 * Source: FAO-56 eq. 11; checked with Example 3 and table 2.3.
 * @throws InputError naming the field
 */
export function saturationPressure_kPa(temperature_C: number): number {
  requireRange('temperature_C', temperature_C, -90, 60, 'C');
  return saturation_kPa(temperature_C);
}

/** The curve itself, for the daily loop: the caller has checked the range. */
export const saturation_kPa = (temperature_C: number): number =>
  0.6108 * Math.exp((17.27 * temperature_C) / (temperature_C + 237.3));

/** Mean saturation vapour pressure of a day, from both extremes. Source: FAO-56 eq. 12. */
export const meanSaturation_kPa = (tmax_C: number, tmin_C: number): number =>
  (saturation_kPa(tmax_C) + saturation_kPa(tmin_C)) / 2;

/**
 * Slope of the saturation curve, `4098 e(T) / (T + 237.3)^2`.
 * Source: FAO-56 eq. 13; checked with table 2.4.
 */
export const saturationSlope_kPa_per_K = (temperature_C: number): number =>
  (4098 * saturation_kPa(temperature_C)) / (temperature_C + 237.3) ** 2;

/** Vapour pressure of the air, given its dew point. Source: FAO-56 eq. 14. */
export const vapourFromDewPoint_kPa = (dewPoint_C: number): number => saturationPressure_kPa(dewPoint_C);

export type PsychrometerInput = {
  readonly dry_C: number;
  readonly wet_C: number;
  readonly pressure_kPa: number;
  /** 0.000662 ventilated, 0.000800 in natural draught, 0.001200 indoors without ventilation. */
  readonly coefficient_per_K: number;
};

/**
 * Vapour pressure from a wet and a dry thermometer, `e(Twet) - a P (Tdry - Twet)`.
 * Source: FAO-56 eq. 15, 16; checked with Example 4.
 * @throws InputError when the wet bulb reads above the dry one
 */
export function vapourFromPsychrometer_kPa(input: PsychrometerInput): number {
  const { dry_C, wet_C, pressure_kPa, coefficient_per_K } = input;
  if (wet_C > dry_C) refuse('wet_C', 'too-large', 'The wet thermometer cannot read more than the dry one.');
  return Math.max(0, saturationPressure_kPa(wet_C) - coefficient_per_K * pressure_kPa * (dry_C - wet_C));
}

export type HumidityInput = { readonly tmax_C: number; readonly tmin_C: number };

/** Vapour pressure from both extremes of relative humidity. Source: FAO-56 eq. 17; checked with Example 5. */
export function vapourFromBothHumidities_kPa(
  input: HumidityInput & { readonly rhmax_share: number; readonly rhmin_share: number },
): number {
  requireRange('rhmax_share', input.rhmax_share, 0, 1, '');
  requireRange('rhmin_share', input.rhmin_share, 0, input.rhmax_share, '');
  return (saturation_kPa(input.tmin_C) * input.rhmax_share + saturation_kPa(input.tmax_C) * input.rhmin_share) / 2;
}

/** Vapour pressure from the greatest relative humidity alone: where the least is badly measured. Source: FAO-56 eq. 18. */
export function vapourFromGreatestHumidity_kPa(tmin_C: number, rhmax_share: number): number {
  requireRange('rhmax_share', rhmax_share, 0, 1, '');
  return saturation_kPa(tmin_C) * rhmax_share;
}

/** Vapour pressure from a mean relative humidity: the least good of the three. Source: FAO-56 eq. 19. */
export function vapourFromMeanHumidity_kPa(input: HumidityInput & { readonly rhmean_share: number }): number {
  requireRange('rhmean_share', input.rhmean_share, 0, 1, '');
  return meanSaturation_kPa(input.tmax_C, input.tmin_C) * input.rhmean_share;
}

/**
 * Dew point of air, the inverse of the saturation curve as printed: `(116.91 + 237.3 ln ea) / (16.78 - ln ea)`.
 * Source: FAO-56 annex 3, eq. 3-11. Rounded constants: within 0.1 degree of the exact inverse.
 * @throws InputError for air without any vapour
 */
export function dewPoint_C(vapour_kPa: number): number {
  requireRange('vapour_kPa', vapour_kPa, 1e-4, 20, 'kPa');
  const ln = Math.log(vapour_kPa);
  return (116.91 + 237.3 * ln) / (16.78 - ln);
}

/** Least relative humidity of a day as a share, `e(Tdew) / e(Tmax)`. Source: FAO-56 eq. 63; with Tmin for Tdew eq. 64. */
export const leastHumidity_share = (dewPoint_C: number, tmax_C: number): number =>
  Math.min(1, saturationPressure_kPa(dewPoint_C) / saturationPressure_kPa(tmax_C));
