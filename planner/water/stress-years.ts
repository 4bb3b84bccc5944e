import { monthOf, runBed, type Watering } from './bed-run.ts';
import type { BedStore } from './bed-store.ts';
import type { BedYear } from './bed-year.ts';
import type { WeatherRun } from './weather-run.ts';

export type BedInYears = { readonly store: BedStore; readonly year: BedYear; readonly watering: Watering };

export type BedStress = {
  readonly bedId: string;
  /** Share of the years with a stress day in the month, index 0 January; null where no crop stands. */
  readonly chance: readonly (number | null)[];
  /** Mean stress days a year. */
  readonly days_per_year: number;
  readonly worstYear: number;
  readonly worstYear_days: number;
  /** Lost by drainage and overflow, mean of a year. */
  readonly lost_L_per_year: number;
  readonly given_L_per_year: number;
  /** Share of the wanted use that was met over all years. */
  readonly metShare: number;
};

export type StressYears = {
  readonly years: readonly number[];
  readonly beds: readonly BedStress[];
  /** True when it was stopped before the last bed. */
  readonly stopped: boolean;
};

export type StressVoice = { readonly progress: (done: number, of: number) => void; readonly shouldStop: () => boolean };

/** Beds between two looks at the flag. */
const CHUNK = 20;

/**
 * Every year of record run through the plan of each bed: how often and when each goes short.
 * A year counts from 1 January and begins with a full bed; the winter's rain makes that true in wet climates only.
 * Source: daily balance of `bed-day.ts`, counted.
 */
export function stressYears(beds: readonly BedInYears[], years: readonly WeatherRun[], voice: StressVoice): StressYears {
  const names = years.map((run) => run.year[0] ?? 0);
  const found: BedStress[] = [];
  for (const [at, bed] of beds.entries()) {
    if (at % CHUNK === 0) {
      voice.progress(at, beds.length);
      if (voice.shouldStop()) return { years: names, beds: found, stopped: true };
    }
    found.push(bedStress(bed, years, names));
  }
  voice.progress(beds.length, beds.length);
  return { years: names, beds: found, stopped: false };
}

function bedStress({ store, year, watering }: BedInYears, years: readonly WeatherRun[], names: readonly number[]): BedStress {
  const yearsWith = new Int32Array(12);
  const croppedIn = new Uint8Array(12);
  for (let day = 0; day < 366; day += 1) if (year.cropped[day] === 1) croppedIn[monthOf(day)] = 1;
  let worst = { year: names[0] ?? 0, days: -1 };
  let days = 0;
  let lost_L = 0;
  let given_L = 0;
  let used_L = 0;
  let wanted_L = 0;
  for (const [at, weather] of years.entries()) {
    const inMonth = new Uint8Array(12);
    const totals = runBed(store, year, weather, watering, (dayAt, day) => {
      if (day.ks >= 1 - 1e-9) return;
      const yearDay = weather.yearDay[dayAt] ?? 0;
      if (year.cropped[yearDay] === 1) inMonth[monthOf(yearDay)] = 1;
    });
    for (let month = 0; month < 12; month += 1) yearsWith[month] = (yearsWith[month] ?? 0) + (inMonth[month] ?? 0);
    days += totals.stressDays;
    lost_L += totals.drained_L + totals.overflow_L;
    given_L += totals.given_L;
    used_L += totals.used_L;
    wanted_L += totals.wanted_L;
    if (totals.stressDays > worst.days) worst = { year: names[at] ?? 0, days: totals.stressDays };
  }
  const count = Math.max(1, years.length);
  return {
    bedId: store.bedId,
    chance: Array.from({ length: 12 }, (_, month) => (croppedIn[month] === 1 ? (yearsWith[month] ?? 0) / count : null)),
    days_per_year: days / count,
    worstYear: worst.year,
    worstYear_days: Math.max(0, worst.days),
    lost_L_per_year: lost_L / count,
    given_L_per_year: given_L / count,
    metShare: wanted_L <= 0 ? 1 : used_L / wanted_L,
  };
}
