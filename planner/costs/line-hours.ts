import { addDays, type IsoDate } from '../calendar.ts';
import { requirePositive } from '../errors.ts';

/** What a timer does in a month: a run of some minutes every so many days. */
export type TimerMonth = { readonly month: number; readonly every_days: number; readonly run_min: number };

const MIN_PER_H = 60;

/**
 * Hours that a line runs between two days by its timer, both included: `sum over months of days / every x minutes / 60`.
 * Common practice, no source: the programme as set, not as metered.
 * @throws InputError on a rhythm of nothing
 */
export function lineHours_h(timers: readonly TimerMonth[], from: IsoDate, to: IsoDate): number {
  const days = new Map<number, number>();
  for (let day = from; day <= to; day = addDays(day, 1)) {
    const month = Number(day.slice(5, 7));
    days.set(month, (days.get(month) ?? 0) + 1);
  }
  return timers.reduce((sum, timer) => {
    requirePositive('every_days', timer.every_days, 'days');
    return sum + ((days.get(timer.month) ?? 0) / timer.every_days) * (timer.run_min / MIN_PER_H);
  }, 0);
}
