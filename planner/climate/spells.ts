import { daysBetween, type IsoDate } from '../calendar.ts';
import { refuse, requireWhole } from '../errors.ts';

export type Spell = { readonly from: IsoDate; readonly to: IsoDate; readonly mean: number };

/**
 * The run of days with the highest mean of some daily figure; windows with an unknown value or a gap are left out. The first
 * of equal spells.
 * @returns null when no window is whole
 * @throws InputError for a window that is no whole number of days
 */
export function highestSpell(
  days: readonly { readonly date: IsoDate; readonly value: number | null }[],
  window_days: number,
): Spell | null {
  requireWhole('window_days', window_days, 1, 366);
  if (days.length === 0) refuse('days', 'too-few', 'A weather record is needed.');
  let best: Spell | null = null;
  let sum = 0;
  let length = 0;
  days.forEach((day, at) => {
    const before = days[at - 1];
    if (before !== undefined && daysBetween(before.date, day.date) !== 1) {
      sum = 0;
      length = 0;
    }
    if (day.value === null) {
      sum = 0;
      length = 0;
      return;
    }
    sum += day.value;
    length += 1;
    if (length > window_days) {
      sum -= days[at - window_days]?.value ?? 0;
      length = window_days;
    }
    const first = days[at - window_days + 1];
    const mean = sum / window_days;
    if (length === window_days && first !== undefined && (best === null || mean > best.mean + 1e-9))
      best = { from: first.date, to: day.date, mean };
  });
  return best;
}
