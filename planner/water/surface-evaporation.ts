import { requireRange } from '../errors.ts';
import { type AirOverCrop, airTerm } from './kc-adjustments.ts';

/** Upper limit of a coefficient right after wetting, before the air term; 1.1 where wetted daily. Source: FAO-56 eq. 72. */
export const WET_KC = 1.2;
export const OFTEN_WET_KC = 1.1;

/** Greatest coefficient of a wet surface, `max(1.2 + air term, Kcb + 0.05)`. Source: FAO-56 eq. 72; checked with Example 32. */
export const greatestKc = (kcb: number, air: AirOverCrop, wetKc: number = WET_KC): number =>
  Math.max(wetKc + airTerm(air), kcb + 0.05);

/** Share of the ground covered by leaves, `((Kcb - Kcmin)/(Kcmax - Kcmin))^(1 + 0.5 h)`. Source: FAO-56 eq. 76. */
export function coverFromKcb(kcb: number, kcMin: number, kcMax: number, height_m: number): number {
  if (kcMax <= kcMin) return 0;
  return Math.min(0.99, Math.max(0, (kcb - kcMin) / (kcMax - kcMin)) ** (1 + 0.5 * height_m));
}

/** Share of the ground that is both bare and wetted, at least 0.01. Source: FAO-56 eq. 75. */
export const exposedWetShare = (coverShare: number, wettedShare: number): number =>
  Math.max(0.01, Math.min(1 - coverShare, wettedShare));

/** How far evaporation from the surface has slowed: 1 until REW is gone, then straight to 0 at TEW. Source: FAO-56 eq. 74. */
export function dryingShare(evaporated_mm: number, rew_mm: number, tew_mm: number): number {
  if (evaporated_mm <= rew_mm) return 1;
  return Math.max(0, (tew_mm - evaporated_mm) / (tew_mm - rew_mm));
}

/** Coefficient of evaporation, `min(Kr (Kcmax - Kcb), few Kcmax)`. Source: FAO-56 eq. 71. */
export const evaporationKc = (kr: number, kcMax: number, kcb: number, exposedShare: number): number =>
  Math.max(0, Math.min(kr * (kcMax - kcb), exposedShare * kcMax));

/** Water that can evaporate from the surface layer, `1000 (FC - WP/2) Ze` mm. Source: FAO-56 eq. 73. */
export const evaporable_mm = (fieldCapacityShare: number, wiltingShare: number, layer_m: number): number =>
  1000 * (fieldCapacityShare - wiltingShare / 2) * layer_m;

export type DryingDay = { readonly kr: number; readonly etc_mm: number; readonly evaporated_mm: number };

/**
 * A bare surface drying day by day after a wetting.
 * Source: FAO-56 eq. 71, 74; checked with Example 31.
 * @throws InputError naming the field
 */
export function dryingDays(input: {
  readonly eto_mm_per_day: readonly number[];
  readonly kcb: number;
  readonly kcMax: number;
  readonly rew_mm: number;
  readonly tew_mm: number;
}): readonly DryingDay[] {
  requireRange('tew_mm', input.tew_mm, 0.1, 200, 'mm');
  requireRange('rew_mm', input.rew_mm, 0, input.tew_mm, 'mm');
  let evaporated_mm = 0;
  return input.eto_mm_per_day.map((eto) => {
    const kr = dryingShare(evaporated_mm, input.rew_mm, input.tew_mm);
    const ke = evaporationKc(kr, input.kcMax, input.kcb, 1);
    evaporated_mm = Math.min(input.tew_mm, evaporated_mm + ke * eto);
    return { kr, etc_mm: (ke + input.kcb) * eto, evaporated_mm };
  });
}
