import { entry, library, type Working } from '../working.ts';

export type NeedDay = { readonly date: string; readonly need_L: number; readonly eto_mm: number; readonly rain_mm: number };

export type WeekNeed = {
  readonly need_L_per_day: number;
  readonly from: string;
  readonly to: string;
  readonly eto_mm_per_day: number;
  readonly rain_mm: number;
};

const WEEK = 7;

/**
 * The week in which some beds need most water, as a mean day; null with fewer than seven days.
 *
 *   V = sum over seven days of (what the beds used and did not get from rain) / 7
 *
 * Source: daily balance of `bed-day.ts`, beds kept full while a crop stands.
 */
export function thirstiestWeek(days: readonly NeedDay[]): WeekNeed | null {
  let best: WeekNeed | null = null;
  for (let at = WEEK - 1; at < days.length; at += 1) {
    const own = days.slice(at - WEEK + 1, at + 1);
    const need = own.reduce((sum, day) => sum + day.need_L, 0) / WEEK;
    if (best !== null && need <= best.need_L_per_day) continue;
    best = {
      need_L_per_day: need,
      from: own[0]?.date ?? '',
      to: own.at(-1)?.date ?? '',
      eto_mm_per_day: own.reduce((sum, day) => sum + day.eto_mm, 0) / WEEK,
      rain_mm: own.reduce((sum, day) => sum + day.rain_mm, 0),
    };
  }
  return best;
}

/** How {@link thirstiestWeek} came to its figure; null with fewer than seven days. */
export function explainThirstiestWeek(
  days: readonly NeedDay[],
  about: { readonly name: string; readonly beds: number },
): Working | null {
  const week = thirstiestWeek(days);
  if (week === null) return null;
  return {
    title: `${about.name}: thirstiest week`,
    formula: 'V = Σ over 7 days (water used − rain that reached the soil) / 7',
    symbols: [
      { symbol: 'n', name: 'beds', figure: { value: about.beds, unit: '' }, origin: entry('the farm') },
      {
        symbol: 'ETo',
        name: `mean reference, ${week.from} to ${week.to}`,
        figure: { value: week.eto_mm_per_day, unit: 'mm_per_day' },
        origin: library('the weather record'),
      },
      {
        symbol: 'P',
        name: 'rain of the week',
        figure: { value: week.rain_mm, unit: 'mm' },
        origin: library('the weather record'),
      },
    ],
    steps: [{ text: 'all seven days together', figures: 'Σ', result: { value: week.need_L_per_day * WEEK, unit: 'L' } }],
    result: { value: week.need_L_per_day, unit: 'L_per_day' },
    sources: ['FAO Irrigation and Drainage Paper 56 (1998), eq. 58 and 85, bed by bed'],
    notes: ['Each bed is kept full while a crop stands on it. Open a bed’s own figure to see its coefficients.'],
  };
}
