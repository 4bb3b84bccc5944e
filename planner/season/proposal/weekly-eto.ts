import { dayOfYear } from '../../calendar.ts';
import { referenceEt } from '../../climate/reference-et.ts';
import type { StationPlace, WeatherDay } from '../../climate/weather-day.ts';

const WEEKS = 53;

/**
 * Mean reference evapotranspiration of each week of the year (week 0 holds 1 to 7 January) over the years on record; null
 * where no day of that week is known.
 * Source: definition of a mean; each day by `climate/reference-et.ts`.
 */
export function weeklyEto_mm_per_day(days: readonly WeatherDay[], place: StationPlace): readonly (number | null)[] {
  const sums = new Float64Array(WEEKS);
  const counts = new Int32Array(WEEKS);
  for (const day of days) {
    const known = referenceEt(day, place);
    if (known.state !== 'known') continue;
    const week = Math.min(WEEKS - 1, Math.floor((dayOfYear(day.date) - 1) / 7));
    sums[week] = (sums[week] ?? 0) + known.eto_mm_per_day;
    counts[week] = (counts[week] ?? 0) + 1;
  }
  return Array.from(sums, (sum, week) => ((counts[week] ?? 0) > 0 ? sum / (counts[week] ?? 1) : null));
}
