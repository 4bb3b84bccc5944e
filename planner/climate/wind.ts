import { requireRange } from '../errors.ts';

/** The equation's least wind: below it the air still moves by its own warmth. Source: FAO-56, text at eq. 47. */
export const LEAST_WIND_M_PER_S = 0.5;
/** Wind where nothing is known. Source: FAO-56, text at eq. 47 (mean of 2000 stations). */
export const USUAL_WIND_M_PER_S = 2;

/**
 * Wind at 2 m from a measurement at another height.
 *
 *   u2 = u 4.87 / ln(67.8 h - 5.42)
 *
 *   u   wind at the height h   m/s   0 to 60
 *   h   height above grass     m     0.1 to 100
 *
 * Source: FAO-56 eq. 47; checked with Example 14.
 * @throws InputError naming the field
 */
export function windAt2m_m_per_s(wind_m_per_s: number, height_m: number): number {
  requireRange('wind_m_per_s', wind_m_per_s, 0, 60, 'm/s');
  requireRange('height_m', height_m, 0.1, 100, 'm');
  const factor = height_m === 2 ? 1 : 4.87 / Math.log(67.8 * height_m - 5.42);
  return wind_m_per_s * factor;
}
