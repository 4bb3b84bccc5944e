import { daysBetween, type IsoDate } from '../calendar.ts';

/** A price older than half a year is asked for again. Common practice, no source. */
const STALE_DAYS = 183;

/** Whether a price of that day is too old to order by on `today`. */
export function isStalePrice(priced: IsoDate, today: IsoDate): boolean {
  return daysBetween(priced, today) > STALE_DAYS;
}
