import { addDays, dayOfYear, type IsoDate } from '../calendar.ts';
import type { WeatherDay } from './weather-day.ts';

export type FilledDay = WeatherDay & { readonly filled: boolean };

/** Longest gap that a straight line may bridge. Longer ones take the mean of the same days of other years. */
const LINE_GAP_DAYS = 5;

/**
 * Fills gaps in temperatures and rain as the grower agreed: up to five days by a straight line between the neighbours
 * (temperatures), longer ones, and rain always, by the mean of the same day of the other years, with three days either side.
 * A day that nothing speaks for stays empty. Every filled day is marked.
 * Common practice, no source.
 */
export function fillGaps(days: readonly WeatherDay[]): readonly FilledDay[] {
  const first = days[0];
  const last = days[days.length - 1];
  if (first === undefined || last === undefined) return [];
  const byDate = new Map(days.map((day) => [day.date, day]));
  const whole: WeatherDay[] = [];
  for (let date = first.date; date <= last.date; date = addDays(date, 1)) whole.push(byDate.get(date) ?? blank(date));
  const usual = usualByDay(days);
  const filled = whole.map((day) => ({ ...day, filled: false }));
  for (const name of ['tmin_C', 'tmax_C', 'rain_mm'] as const) {
    let at = 0;
    while (at < filled.length) {
      if (whole[at]?.[name] !== null) {
        at += 1;
        continue;
      }
      let end = at;
      while (end < whole.length && whole[end]?.[name] === null) end += 1;
      const from = whole[at - 1]?.[name];
      const to = whole[end]?.[name];
      for (let each = at; each < end; each += 1) {
        const day = filled[each];
        if (day === undefined) continue;
        const along = (each - at + 1) / (end - at + 1);
        const line = name !== 'rain_mm' && end - at <= LINE_GAP_DAYS && typeof from === 'number' && typeof to === 'number';
        const value = line ? from + (to - from) * along : (usual[name].get(dayOfYear(day.date)) ?? null);
        if (value !== null) filled[each] = { ...day, [name]: value, filled: true };
      }
      at = end;
    }
  }
  return filled;
}

const blank = (date: IsoDate): WeatherDay => ({
  date,
  tmin_C: null,
  tmax_C: null,
  rain_mm: null,
  wind_m_per_s: null,
  rhmin_share: null,
  rhmax_share: null,
  radiation_MJ_per_m2: null,
  dewPoint_C: null,
});

type Usual = Readonly<Record<'tmin_C' | 'tmax_C' | 'rain_mm', ReadonlyMap<number, number>>>;

function usualByDay(days: readonly WeatherDay[]): Usual {
  const mean = (name: 'tmin_C' | 'tmax_C' | 'rain_mm'): ReadonlyMap<number, number> => {
    const sums = new Map<number, { sum: number; count: number }>();
    for (const day of days) {
      const value = day[name];
      if (value === null) continue;
      for (let off = -3; off <= 3; off += 1) {
        const key = ((dayOfYear(day.date) + off - 1 + 366) % 366) + 1;
        const known = sums.get(key) ?? { sum: 0, count: 0 };
        sums.set(key, { sum: known.sum + value, count: known.count + 1 });
      }
    }
    return new Map([...sums].map(([key, { sum, count }]) => [key, sum / count]));
  };
  return { tmin_C: mean('tmin_C'), tmax_C: mean('tmax_C'), rain_mm: mean('rain_mm') };
}
