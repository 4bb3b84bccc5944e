import { type BedStore, OPEN_WATER_KC } from './bed-store.ts';

/** What a bed holds at a moment. Changed in place by {@link waterBed}: the loop runs millions of times. */
export type BedWaterState = {
  /** Water missing in the rooted part, L. */
  rooted_L: number;
  /** Water missing in the soil below the roots, L. */
  below_L: number;
  /** Free water in basin or reservoir, L. */
  free_L: number;
  /** Rooted depth that the two parts stand for, m. */
  roots_m: number;
};

/** What went where on a day, L. Changed in place. */
export type BedDay = {
  used_L: number;
  /** What the bed would have used without stress. */
  wanted_L: number;
  evaporated_L: number;
  drained_L: number;
  overflow_L: number;
  /** Rain too light to reach the soil. */
  intercepted_L: number;
  rain_L: number;
  risen_L: number;
  ks: number;
};

export type BedDayInput = {
  eto_mm: number;
  rain_mm: number;
  use_m2: number;
  roots_m: number;
  p: number;
  /** Given on the surface. */
  top_L: number;
  /** Given into the free water. */
  below_L: number;
};

/** A bed as full as it gets. */
export const fullBed = (bed: BedStore, roots_m: number): BedWaterState => ({
  rooted_L: 0,
  below_L: 0,
  free_L: bed.free?.fill_L ?? 0,
  roots_m,
});

export const emptyDay = (): BedDay => ({
  used_L: 0,
  wanted_L: 0,
  evaporated_L: 0,
  drained_L: 0,
  overflow_L: 0,
  intercepted_L: 0,
  rain_L: 0,
  risen_L: 0,
  ks: 1,
});

/** Roots that grow or go take their share of what is missing with them: nothing is won or lost. */
function moveRoots(bed: BedStore, state: BedWaterState, roots_m: number): void {
  const now_m = state.roots_m;
  if (roots_m > now_m) {
    const rest_m = bed.depth_m - now_m;
    const moved_L = rest_m <= 0 ? 0 : (state.below_L * Math.min(rest_m, roots_m - now_m)) / rest_m;
    state.rooted_L += moved_L;
    state.below_L -= moved_L;
  } else if (roots_m < now_m) {
    const moved_L = (state.rooted_L * (now_m - roots_m)) / now_m;
    state.rooted_L -= moved_L;
    state.below_L += moved_L;
  }
  state.roots_m = roots_m;
}

/**
 * One day of a bed, in this order: roots grow; rain and water given on top fill the rooted part, then the soil below, the rest
 * drains into the free water or away; the free water rises into the soil as far as the soil can draw, then what is over its rim
 * runs away; crop and walls use, less under stress; open water evaporates.
 *
 *   change of (soil + free water) = rain + given - used - evaporated - drained - overflow - intercepted, to rounding
 *
 * Stress by the rooted part: 1 down to p TAW, then straight to 0. p follows the day's use.
 * Source: FAO-56 eq. 84 to 86 with rain first (reproduces Example 38); free water by balance; p by the text at Table 22.
 */
export function waterBed(bed: BedStore, state: BedWaterState, day: BedDayInput, out: BedDay): void {
  if (day.roots_m !== state.roots_m) moveRoots(bed, state, day.roots_m);
  const free = bed.free;
  const soilRain_L = day.rain_mm * bed.rain_m2;
  const light = day.rain_mm < 0.2 * day.eto_mm;
  const openRain_L = free === null || bed.rain_m2 === 0 ? 0 : day.rain_mm * free.open_m2;
  out.rain_L = soilRain_L + openRain_L;
  out.intercepted_L = light ? soilRain_L : 0;
  let top_L = day.top_L + (light ? 0 : soilRain_L);
  const intoRoots_L = Math.min(top_L, state.rooted_L);
  state.rooted_L -= intoRoots_L;
  top_L -= intoRoots_L;
  const intoBelow_L = Math.min(top_L, state.below_L);
  state.below_L -= intoBelow_L;
  top_L -= intoBelow_L;
  out.overflow_L = 0;
  out.risen_L = 0;
  out.evaporated_L = 0;
  if (free === null) out.drained_L = top_L + day.below_L;
  else {
    out.drained_L = 0;
    const held_L = state.free_L + top_L + day.below_L + openRain_L;
    const risen_L = Math.min(held_L, free.rise_mm_per_day * bed.area_m2, state.rooted_L + state.below_L);
    const lower_L = Math.min(risen_L, state.below_L);
    state.below_L -= lower_L;
    state.rooted_L = Math.max(0, state.rooted_L - (risen_L - lower_L));
    out.overflow_L = Math.max(0, held_L - risen_L - free.capacity_L);
    state.free_L = held_L - risen_L - out.overflow_L;
    out.risen_L = risen_L;
  }
  const taw_L = 1000 * bed.availableShare * day.roots_m * bed.area_m2;
  const wanted_L = day.eto_mm * (day.use_m2 + bed.wallFactor * bed.wall_m2);
  const p = Math.min(0.8, Math.max(0.1, day.p + 0.04 * (5 - wanted_L / bed.area_m2)));
  const raw_L = p * taw_L;
  const ks = state.rooted_L <= raw_L ? 1 : Math.max(0, (taw_L - state.rooted_L) / (taw_L - raw_L));
  const used_L = Math.max(0, Math.min(ks * wanted_L, taw_L - state.rooted_L));
  state.rooted_L += used_L;
  out.wanted_L = wanted_L;
  out.used_L = used_L;
  out.ks = wanted_L <= 0 ? 1 : ks;
  if (free !== null && free.open_m2 > 0) {
    const evaporated_L = Math.min(state.free_L, OPEN_WATER_KC * day.eto_mm * free.open_m2);
    state.free_L -= evaporated_L;
    out.evaporated_L = evaporated_L;
  }
}
