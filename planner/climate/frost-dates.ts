import { dayOfYear, type IsoDate } from '../calendar.ts';

export type FrostYear = {
  readonly year: number;
  /** Last day January to June with a freeze; null when there was none. */
  readonly lastSpring: IsoDate | null;
  /** First day July to December with a freeze; null when there was none. */
  readonly firstFall: IsoDate | null;
};

type Minimum = { readonly date: IsoDate; readonly tmin_C: number | null };

/**
 * Last spring and first fall freeze of each year of a record; a freeze day is `Tmin <= threshold`.
 * For the northern half of the world. Source: NOAA freeze/frost data (Climatography No. 20), halves split at 1 July.
 */
export function frostYears(days: readonly Minimum[], threshold_C = 0): readonly FrostYear[] {
  const years = new Map<number, { lastSpring: IsoDate | null; firstFall: IsoDate | null }>();
  for (const day of days) {
    const year = Number(day.date.slice(0, 4));
    const known = years.get(year) ?? { lastSpring: null, firstFall: null };
    years.set(year, known);
    if (day.tmin_C === null || day.tmin_C > threshold_C) continue;
    if (day.date.slice(5, 7) <= '06') {
      if (known.lastSpring === null || day.date > known.lastSpring) known.lastSpring = day.date;
    } else if (known.firstFall === null || day.date < known.firstFall) known.firstFall = day.date;
  }
  return [...years].sort(([a], [b]) => a - b).map(([year, found]) => ({ year, ...found }));
}

/** Days of the year of one side's freezes; `null` for years without. */
export const frostDays = (years: readonly FrostYear[], side: 'spring' | 'fall'): readonly (number | null)[] =>
  years.map((year) => {
    const date = side === 'spring' ? year.lastSpring : year.firstFall;
    return date === null ? null : dayOfYear(date);
  });
