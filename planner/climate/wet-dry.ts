import { daysBetween, type IsoDate } from '../calendar.ts';

type RainDay = { readonly date: IsoDate; readonly rain_mm: number | null };

/** Rain from which a day counts as wet, 0.3 mm (0.01 in). Source: NOAA's least measurable rain. */
export const WET_FROM_MM = 0.3;

export type WetDry = {
  readonly wetAfterWet: number;
  readonly afterWet: number;
  readonly wetAfterDry: number;
  readonly afterDry: number;
  readonly pWetAfterWet: number | null;
  readonly pWetAfterDry: number | null;
};

/**
 * How often a wet day follows a wet or a dry one in a month, over all years of record. A day counts when the day before is
 * known; a gap breaks the chain.
 * Source: first-order chain of wet and dry days, counted.
 */
export function wetDry(days: readonly RainDay[], month: number, wetFrom_mm: number = WET_FROM_MM): WetDry {
  let wetAfterWet = 0;
  let afterWet = 0;
  let wetAfterDry = 0;
  let afterDry = 0;
  days.forEach((day, at) => {
    const before = days[at - 1];
    if (before === undefined || before.rain_mm === null || day.rain_mm === null) return;
    if (Number(day.date.slice(5, 7)) !== month || daysBetween(before.date, day.date) !== 1) return;
    const wet = day.rain_mm >= wetFrom_mm ? 1 : 0;
    if (before.rain_mm >= wetFrom_mm) {
      afterWet += 1;
      wetAfterWet += wet;
    } else {
      afterDry += 1;
      wetAfterDry += wet;
    }
  });
  return {
    wetAfterWet,
    afterWet,
    wetAfterDry,
    afterDry,
    pWetAfterWet: afterWet === 0 ? null : wetAfterWet / afterWet,
    pWetAfterDry: afterDry === 0 ? null : wetAfterDry / afterDry,
  };
}

export type DryRun = { readonly days: number; readonly from: IsoDate; readonly to: IsoDate };

/**
 * Longest run of days below a rain, within the days given; a gap or an unknown day ends a run. The first of equal runs.
 * @returns null when no day was dry
 */
export function longestDryRun(days: readonly RainDay[], below_mm = 1): DryRun | null {
  let best: DryRun | null = null;
  let start: IsoDate | null = null;
  let last: IsoDate | null = null;
  for (const day of days) {
    const dry = day.rain_mm !== null && day.rain_mm < below_mm;
    const follows = last !== null && daysBetween(last, day.date) === 1;
    if (!dry) start = null;
    else if (start === null || !follows) start = day.date;
    last = day.date;
    if (dry && start !== null) {
      const length = daysBetween(start, day.date) + 1;
      if (best === null || length > best.days) best = { days: length, from: start, to: day.date };
    }
  }
  return best;
}
