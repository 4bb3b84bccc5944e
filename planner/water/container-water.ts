import { refuse, requirePositive, requireRange } from '../errors.ts';

/** Air space and container capacity are the whole pore space. Source: Bilderback & Fonteno 1987 and others. */
export function poreSpace_share(air_share: number, capacity_share: number): number {
  requireRange('air_share', air_share, 0, 1, '');
  requireRange('capacity_share', capacity_share, 0, 1 - air_share + 1e-12, '');
  return air_share + capacity_share;
}

/** A patch smaller or wetter than its surroundings never uses more than this, as a coefficient. Source: FAO-56 chapter 10. */
export const GREATEST_PATCH_KC = 2.5;

/**
 * Water that a round canopy or a round rim uses in a day, `Kc ETo pi d^2/4`; 1 mm over 1 m2 is 1 L, exactly.
 * Once a canopy hangs over the rim its own area counts. Source: FAO-56 eq. 58; the choice of area is common practice, no source.
 */
export function roundUse_L_per_day(eto_mm_per_day: number, kc: number, diameter_m: number): number {
  requireRange('eto_mm_per_day', eto_mm_per_day, 0, 20, 'mm/day');
  requireRange('kc', kc, 0, GREATEST_PATCH_KC, '');
  requireRange('diameter_m', diameter_m, 0, 20, 'm');
  return (eto_mm_per_day * kc * Math.PI * diameter_m ** 2) / 4;
}

/** Water that an area uses in a day, `ETc A`; 1 mm over 1 m2 is 1 L, exactly. Source: FAO-56 eq. 58. @throws InputError naming the field */
export function areaUse_L_per_day(etc_mm_per_day: number, area_m2: number): number {
  requireRange('etc_mm_per_day', etc_mm_per_day, 0, 20 * GREATEST_PATCH_KC, 'mm/day');
  requireRange('area_m2', area_m2, 0, 1e6, 'm2');
  return etc_mm_per_day * area_m2;
}

/** Factor of the wall's loss against the reference, 0 to 0.5. Common practice, no source: weigh a bag to set it. */
export const USUAL_WALL_FACTOR = 0.3;

/** Water lost through a permeable wall in a day, `k ETo A`. Common practice, no source. */
export function wallLoss_L_per_day(eto_mm_per_day: number, wall_m2: number, factor: number = USUAL_WALL_FACTOR): number {
  requireRange('factor', factor, 0, 0.5, '');
  requireRange('wall_m2', wall_m2, 0, 1000, 'm2');
  return factor * eto_mm_per_day * wall_m2;
}

/** Days a container lasts from full. Source: water balance. @throws InputError naming the field */
export function containerDays(input: {
  readonly mix_L: number;
  readonly availableShare: number;
  readonly depletionShare: number;
  readonly use_L_per_day: number;
}): { readonly store_L: number; readonly usable_L: number; readonly days: number } {
  requireRange('mix_L', input.mix_L, 0, 1e6, 'L');
  requireRange('availableShare', input.availableShare, 0, 1, '');
  requireRange('depletionShare', input.depletionShare, 0, 1, '');
  requirePositive('use_L_per_day', input.use_L_per_day, 'L/day');
  const store_L = input.mix_L * input.availableShare;
  const usable_L = store_L * input.depletionShare;
  return { store_L, usable_L, days: usable_L / input.use_L_per_day };
}

/** Share of the water given that ran out below. Source: definition, nursery guides. */
export function leachateShare(leachate_L: number, applied_L: number): number {
  requirePositive('applied_L', applied_L, 'L');
  if (leachate_L > applied_L) refuse('leachate_L', 'too-large', 'No more can run out than was given.');
  return leachate_L / applied_L;
}

/** Water to give for a use and a wanted leaching share, `use/(1 - LF)`. Source: definition. */
export function toApply_L(use_L: number, leaching: number): number {
  requireRange('leaching', leaching, 0, 0.9, '');
  return use_L / (1 - leaching);
}

/** Water below the overflow of a bed with a built-in reservoir, `A z n` in litres (m2 and mm). Source: definition of void share. */
export const reservoirStore_L = (area_m2: number, depth_mm: number, voidShare: number): number => area_m2 * depth_mm * voidShare;

/** Depth of water over an area as a volume: 1 mm over 1 m2 is 1 L. */
export const overArea_L = (depth_mm: number, area_m2: number): number => depth_mm * area_m2;
