import { requireRange } from '../errors.ts';

const KELVIN_AT_ZERO_C = 273.15;

/**
 * Density of pure liquid water at atmospheric pressure.
 *
 *   rho = 1000 [1 - (T + 288.9414)(T - 3.9863)^2 / (508929.2 (T + 68.12963))]
 *
 *   rho  density       kg/m3
 *   T    temperature   C       0 to 60 here
 *
 * Source: from memory; 997.075 at 25 C agrees with the printed output of an open hydraulics package (vignette, section 1).
 * @throws InputError when the water would be ice or steam
 */
export function waterDensity_kg_per_m3(temperature_C: number): number {
  requireRange('temperature_C', temperature_C, 0, 60, 'C');
  const t = temperature_C;
  return 1000 * (1 - ((t + 288.9414) * (t - 3.9863) ** 2) / (508929.2 * (t + 68.12963)));
}

/**
 * Dynamic viscosity of liquid water.
 *
 *   mu = 1e-6 [280.68 x^-1.9 + 511.45 x^-7.7 + 61.131 x^-19.6 + 0.45903 x^-40]   with x = T_K / 300
 *
 *   mu   dynamic viscosity   Pa s
 *   T    temperature         C     0 to 60 here
 *
 * Source: Patek et al. 2009, from memory; agrees with standard water tables within 2 % at 5, 20 and 30 C.
 * @throws InputError when the water would be ice or steam
 */
export function dynamicViscosity_Pa_s(temperature_C: number): number {
  requireRange('temperature_C', temperature_C, 0, 60, 'C');
  const x = (temperature_C + KELVIN_AT_ZERO_C) / 300;
  return 1e-6 * (280.68 * x ** -1.9 + 511.45 * x ** -7.7 + 61.131 * x ** -19.6 + 0.45903 * x ** -40);
}

/**
 * Kinematic viscosity of water, nu = mu / rho: 1.52e-6 at 5 C, 1.00e-6 at 20 C, 0.80e-6 m2/s at 30 C.
 * @throws InputError when the water would be ice or steam
 */
export function kinematicViscosity_m2_per_s(temperature_C: number): number {
  return dynamicViscosity_Pa_s(temperature_C) / waterDensity_kg_per_m3(temperature_C);
}
