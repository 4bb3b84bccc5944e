import { type BedDay, type BedDayInput, type BedWaterState, emptyDay, fullBed, waterBed } from './bed-day.ts';
import { type BedStore, requireStore } from './bed-store.ts';
import type { BedYear } from './bed-year.ts';
import type { WeatherRun } from './weather-run.ts';

/** How a bed is watered through a run. Only a timer waters a bed without a crop. */
export type Watering =
  | { readonly kind: 'rain-only' }
  /** What is missing, less what the day's rain will bring, is given back each day. */
  | { readonly kind: 'kept-full' }
  /** Filled up on the morning on which the share of the soil's store is gone that the crop may take. */
  | { readonly kind: 'when-due' }
  /** The same amount on every so many days, counted from 1 January; by month, index 0 January. */
  | { readonly kind: 'timer'; readonly months: readonly ({ readonly every_days: number; readonly amount_L: number } | null)[] };

export type RunTotals = {
  readonly used_L: number;
  readonly wanted_L: number;
  readonly given_L: number;
  readonly rain_L: number;
  readonly drained_L: number;
  readonly overflow_L: number;
  readonly evaporated_L: number;
  readonly intercepted_L: number;
  /** Days on which a crop stood short of water. */
  readonly stressDays: number;
  readonly lowestKs: number;
};

/** What happened on each day, where a chart wants it. */
export type DailyTrace = {
  readonly missing_L: Float64Array;
  readonly allowed_L: Float64Array;
  readonly free_L: Float64Array;
  readonly given_L: Float64Array;
  readonly used_L: Float64Array;
  readonly lost_L: Float64Array;
  readonly ks: Float64Array;
};

const trace = (length: number): DailyTrace => ({
  missing_L: new Float64Array(length),
  allowed_L: new Float64Array(length),
  free_L: new Float64Array(length),
  given_L: new Float64Array(length),
  used_L: new Float64Array(length),
  lost_L: new Float64Array(length),
  ks: new Float64Array(length),
});

const monthOfYearDay = Int8Array.from({ length: 366 }, (_, day) => {
  let left = day;
  for (let month = 0; month < 12; month += 1) {
    const length = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month] ?? 31;
    if (left < length) return month;
    left -= length;
  }
  return 11;
});

/** Month of a day of the year, 0 for January; day 0 is 1 January of a leap year. */
export const monthOf = (yearDay: number): number => monthOfYearDay[yearDay] ?? 11;

/** Stress below this is a day short of water: rounding apart, anything under 1. */
const FULL = 1 - 1e-9;

/** Called for each day; a hot path, so plain numbers. */
export type OnDay = (at: number, day: BedDay, state: BedWaterState, given_L: number) => void;

/**
 * A bed through a run of weather. Begins full.
 * Source: see `bed-day.ts`.
 * @throws InputError for a store that cannot be
 */
export function runBed(bed: BedStore, year: BedYear, weather: WeatherRun, watering: Watering, onDay?: OnDay): RunTotals {
  requireStore(bed);
  const { eto_mm, rain_mm, yearDay } = weather;
  const state = fullBed(bed, year.roots_m[yearDay[0] ?? 0] ?? bed.depth_m);
  const out = emptyDay();
  const input: BedDayInput = { eto_mm: 0, rain_mm: 0, use_m2: 0, roots_m: 0, p: 0, top_L: 0, below_L: 0 };
  const sum = { used_L: 0, wanted_L: 0, given_L: 0, rain_L: 0, drained_L: 0, overflow_L: 0, evaporated_L: 0, intercepted_L: 0 };
  let stressDays = 0;
  let lowestKs = 1;
  for (let at = 0; at < eto_mm.length; at += 1) {
    const day = yearDay[at] ?? 0;
    input.eto_mm = eto_mm[at] ?? 0;
    input.rain_mm = rain_mm[at] ?? 0;
    input.use_m2 = year.use_m2[day] ?? 0;
    input.roots_m = year.roots_m[day] ?? bed.depth_m;
    input.p = year.p[day] ?? 0.5;
    const given_L = givenOn(bed, state, input, watering, day, year.cropped[day] === 1);
    input.top_L = bed.free === null ? given_L : 0;
    input.below_L = bed.free === null ? 0 : given_L;
    waterBed(bed, state, input, out);
    sum.used_L += out.used_L;
    sum.wanted_L += out.wanted_L;
    sum.given_L += given_L;
    sum.rain_L += out.rain_L;
    sum.drained_L += out.drained_L;
    sum.overflow_L += out.overflow_L;
    sum.evaporated_L += out.evaporated_L;
    sum.intercepted_L += out.intercepted_L;
    if (year.cropped[day] === 1 && out.ks < FULL) {
      stressDays += 1;
      if (out.ks < lowestKs) lowestKs = out.ks;
    }
    if (onDay !== undefined) onDay(at, out, state, given_L);
  }
  return { ...sum, stressDays, lowestKs };
}

function givenOn(
  bed: BedStore,
  state: BedWaterState,
  day: BedDayInput,
  watering: Watering,
  yearDay: number,
  cropped: boolean,
): number {
  switch (watering.kind) {
    case 'rain-only':
      return 0;
    case 'kept-full': {
      if (!cropped) return 0;
      const light = day.rain_mm < 0.2 * day.eto_mm;
      const open_m2 = bed.rain_m2 === 0 ? 0 : (bed.free?.open_m2 ?? 0);
      const rain_L = (light ? 0 : day.rain_mm * bed.rain_m2) + day.rain_mm * open_m2;
      return Math.max(0, missing_L(bed, state) - rain_L);
    }
    case 'when-due': {
      if (!cropped) return 0;
      const taw_L = 1000 * bed.availableShare * day.roots_m * bed.area_m2;
      const p = Math.min(0.8, Math.max(0.1, day.p + 0.04 * (5 - (day.eto_mm * day.use_m2) / bed.area_m2)));
      // with free water below, the basin is to be dry before it is filled again
      const due = state.free_L <= 0.01 && state.rooted_L + day.eto_mm * (day.use_m2 + bed.wallFactor * bed.wall_m2) > p * taw_L;
      return due ? missing_L(bed, state) : 0;
    }
    case 'timer': {
      const plan = watering.months[monthOf(yearDay)];
      return plan !== null && plan !== undefined && yearDay % plan.every_days === 0 ? plan.amount_L : 0;
    }
  }
}

/** Water that a bed takes until it is full, L. */
export const missing_L = (bed: BedStore, state: BedWaterState): number =>
  state.rooted_L + state.below_L + (bed.free === null ? 0 : Math.max(0, bed.free.fill_L - state.free_L));

/** A bed through a run of weather with every day kept, for charts. */
export function traceBed(bed: BedStore, year: BedYear, weather: WeatherRun, watering: Watering) {
  const days = trace(weather.eto_mm.length);
  const totals = runBed(bed, year, weather, watering, (at, day, state, given_L) => {
    const yearDay = weather.yearDay[at] ?? 0;
    days.missing_L[at] = state.rooted_L;
    const taw_L = 1000 * bed.availableShare * state.roots_m * bed.area_m2;
    const p = Math.min(0.8, Math.max(0.1, (year.p[yearDay] ?? 0.5) + 0.04 * (5 - day.wanted_L / bed.area_m2)));
    days.allowed_L[at] = p * taw_L;
    days.free_L[at] = state.free_L;
    days.given_L[at] = given_L;
    days.used_L[at] = day.used_L;
    days.lost_L[at] = day.drained_L + day.overflow_L;
    days.ks[at] = day.ks;
  });
  return { days, totals };
}
