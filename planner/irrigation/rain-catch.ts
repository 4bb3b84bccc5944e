import { requireRange } from '../errors.ts';
import { L_PER_US_GALLON, M2_PER_SQUARE_FOOT } from '../units/constants.ts';
import { convert } from '../units/convert.ts';

/**
 * Share of the rain on a surface that reaches the tank.
 * Sources: rain-harvest pages (metal, shingle, tar and gravel), an international rainwater page (tiles, concrete, brick).
 */
export const CATCH_SHARE = {
  metal: 0.95,
  asphaltShingle: 0.9,
  tarAndGravel: 0.8,
  tiles: 0.85,
  concrete: 0.7,
  brickPaving: 0.55,
} as const;

/** First rain to turn away, 10 US gal per 1000 ft2, 0.41 mm. Source: a rain-catchment page (rule of thumb). */
export const FIRST_FLUSH_US_GAL_PER_1000_FT2 = 10;

export type RainCatchInput = { readonly area_m2: number; readonly rain_mm: number; readonly catchShare: number };

/**
 * Rain that runs off a surface, V = A P C.
 *
 *   V   volume               L       1 mm on 1 m2 is 1 L, exactly
 *   A   plan area            m2      seen from above, not along the slope
 *   P   rain                 mm
 *   C   runoff coefficient   -       0 to 1
 *
 * Source: definition; 0.623 US gal per ft2 and inch follows from it.
 * @throws InputError naming the field
 */
export function rainCatch_L(input: RainCatchInput): number {
  requireRange('area_m2', input.area_m2, 0, 1e6, 'm2');
  requireRange('rain_mm', input.rain_mm, 0, 20_000, 'mm');
  requireRange('catchShare', input.catchShare, 0, 1, '');
  return input.area_m2 * input.rain_mm * input.catchShare;
}

/**
 * The same with a rounded trade factor in US gallons per square foot and inch (0.6 and 0.62 are met).
 * Source: rain-barrel pages.
 * @throws InputError naming the field
 */
export function rainCatchByTradeFactor_L(input: RainCatchInput & { readonly factor_us_gal_per_ft2_in: number }): number {
  requireRange('factor_us_gal_per_ft2_in', input.factor_us_gal_per_ft2_in, 0, 1, 'gal/ft2/in');
  const exact_L = rainCatch_L(input);
  const exactFactor = (M2_PER_SQUARE_FOOT * convert(1, 'in', 'mm')) / L_PER_US_GALLON;
  return (exact_L * input.factor_us_gal_per_ft2_in) / exactFactor;
}

/**
 * First flush of a surface, as volume and as depth of rain.
 * @throws InputError naming the field
 */
export function firstFlush(
  area_m2: number,
  us_gal_per_1000_ft2 = FIRST_FLUSH_US_GAL_PER_1000_FT2,
): { readonly volume_L: number; readonly depth_mm: number } {
  requireRange('area_m2', area_m2, 0, 1e6, 'm2');
  requireRange('us_gal_per_1000_ft2', us_gal_per_1000_ft2, 0, 1000, 'gal/1000 ft2');
  const depth_mm = convert(us_gal_per_1000_ft2, 'us_gal', 'L') / (1000 * M2_PER_SQUARE_FOOT);
  return { volume_L: depth_mm * area_m2, depth_mm };
}

/**
 * Flow a roof sends down in a downpour, Q = A i.
 * The trade's 0.0104 gal/min per ft2 and in/h is this, rounded (a rain-collection page).
 * @throws InputError naming the field
 */
export function roofFlow_L_per_min(area_m2: number, intensity_mm_per_h: number): number {
  requireRange('area_m2', area_m2, 0, 1e6, 'm2');
  requireRange('intensity_mm_per_h', intensity_mm_per_h, 0, 1000, 'mm/h');
  return convert(area_m2 * intensity_mm_per_h, 'L_per_h', 'L_per_min');
}

export type RainKeptInput = RainCatchInput & { readonly firstFlush_mm: number; readonly free_L: number };

/**
 * Rain kept from one event: catch less first flush, what the tank cannot hold runs over.
 * The first flush is taken from what runs off, after the coefficient.
 * Source: water balance.
 * @throws InputError naming the field
 */
export function rainKept(input: RainKeptInput): { readonly collected_L: number; readonly overflow_L: number } {
  requireRange('firstFlush_mm', input.firstFlush_mm, 0, 100, 'mm');
  requireRange('free_L', input.free_L, 0, 1e9, 'L');
  const net_L = Math.max(0, rainCatch_L(input) - input.firstFlush_mm * input.area_m2);
  const collected_L = Math.min(net_L, input.free_L);
  return { collected_L, overflow_L: net_L - collected_L };
}
