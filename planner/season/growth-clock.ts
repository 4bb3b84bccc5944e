import { refuse, requireRange } from '../errors.ts';

/**
 * How growth adds up from day to day: `made[i]` is what was made before the day `firstDay + i`. Days are day numbers.
 * What one unit is depends on the clock: a day, a day long enough to grow, or a degree day.
 */
export type GrowthClock = { readonly firstDay: number; readonly made: Float64Array };

/** A clock from what each day adds. @throws InputError naming a day that adds less than nothing */
export function clockOf(firstDay: number, perDay: readonly number[]): GrowthClock {
  const made = new Float64Array(perDay.length + 1);
  for (const [at, each] of perDay.entries()) {
    if (!(each >= 0)) refuse(`perDay.${at}`, 'not-a-number', 'Each day adds nothing or more.');
    made[at + 1] = (made[at] ?? 0) + each;
  }
  return { firstDay, made };
}

/** A clock on which every day counts one. */
export function dayClock(firstDay: number, days: number): GrowthClock {
  const made = new Float64Array(days + 1);
  for (let at = 0; at <= days; at += 1) made[at] = at;
  return { firstDay, made };
}

/** Growth nearly stops under ten hours of day. Common practice, no source. */
export const GROWING_DAY_H = 10;

/**
 * A clock on which only days of ten hours or more count: autumn plantings wait for the light to come back.
 * @param daylight_h almanac day length of each day from `firstDay`
 */
export function dayLengthClock(firstDay: number, daylight_h: readonly number[], threshold_h = GROWING_DAY_H): GrowthClock {
  requireRange('threshold_h', threshold_h, 0, 24, 'h');
  return clockOf(
    firstDay,
    daylight_h.map((hours) => (hours >= threshold_h ? 1 : 0)),
  );
}

/** What the clock makes from the start of one day to the start of another. */
export function madeBetween(clock: GrowthClock, fromDay: number, toDay: number): number {
  return madeAt(clock, toDay) - madeAt(clock, fromDay);
}

function madeAt({ firstDay, made }: GrowthClock, day: number): number {
  const at = Math.min(Math.max(day - firstDay, 0), made.length - 1);
  return made[at] ?? 0;
}

/** The first day on which `need` has been made since the start of `fromDay`; null when the clock ends before. */
export function dayReaching(clock: GrowthClock, fromDay: number, need: number): number | null {
  const { firstDay, made } = clock;
  const goal = madeAt(clock, fromDay) + need - 1e-9;
  let low = Math.max(0, fromDay - firstDay);
  let high = made.length - 1;
  if (low > high || (made[high] ?? 0) < goal) return null;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((made[middle] ?? 0) >= goal) high = middle;
    else low = middle + 1;
  }
  return firstDay + low;
}

/** The last day to start on so that `need` is made by the start of `byDay`; null when the clock starts too late. */
export function dayToStart(clock: GrowthClock, byDay: number, need: number): number | null {
  const { firstDay, made } = clock;
  const ceiling = madeAt(clock, byDay) - need + 1e-9;
  if (ceiling < (made[0] ?? 0)) return null;
  let low = 0;
  let high = Math.min(Math.max(byDay - firstDay, 0), made.length - 1);
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((made[middle] ?? 0) <= ceiling) low = middle;
    else high = middle - 1;
  }
  return firstDay + low;
}
