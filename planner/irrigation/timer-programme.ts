import { refuse, requirePositive, requireRange } from '../errors.ts';

/** What a bed needs on a day of a month and what one fill gives it. */
export type FillNeed = { readonly id: string; readonly need_L_per_day: number; readonly fill_L: number };

export type Interval = { readonly every_days: number; readonly runsPerDay: number; readonly decides: string | null };

/**
 * How often a line must run in a month: whole days between runs by the bed whose fill lasts shortest, several runs a day
 * where a fill lasts less than one.
 *
 *   lasts = V / need;   every floor(lasts) days, or ceil(1/lasts) runs each day
 *
 * Source: water balance; whole days common practice, no source.
 * @throws InputError when a fill holds nothing
 */
export function interval(needs: readonly FillNeed[]): Interval {
  let lasts_days = Number.POSITIVE_INFINITY;
  let decides: string | null = null;
  needs.forEach((need, at) => {
    requireRange(`needs.${at}.need_L_per_day`, need.need_L_per_day, 0, 1e6, 'L/day');
    if (need.need_L_per_day === 0) return;
    requirePositive(`needs.${at}.fill_L`, need.fill_L, 'L');
    const lasts = need.fill_L / need.need_L_per_day;
    if (lasts < lasts_days) {
      lasts_days = lasts;
      decides = need.id;
    }
  });
  if (decides === null) return { every_days: 0, runsPerDay: 0, decides };
  if (lasts_days >= 1) return { every_days: Math.floor(lasts_days), runsPerDay: 1, decides };
  return { every_days: 1, runsPerDay: Math.ceil(1 / lasts_days - 1e-9), decides };
}

/** A line (or zone) that wants to run for some minutes and draws some watts. */
export type TimerLoad = { readonly id: string; readonly run_min: number; readonly power_W: number };
export type TimerSlot = { readonly id: string; readonly start_min: number; readonly end_min: number };

/**
 * Starts of several lines so that together they never draw more than the power can give: each in its turn at the
 * earliest minute with enough left.
 *
 * @param limit_W what the source can give at once
 * @throws InputError when one line alone draws more
 */
export function stagger(loads: readonly TimerLoad[], limit_W: number, first_min = 0): readonly TimerSlot[] {
  requirePositive('limit_W', limit_W, 'W');
  const placed: (TimerSlot & { readonly power_W: number })[] = [];
  loads.forEach((load, at) => {
    requireRange(`loads.${at}.run_min`, load.run_min, 0, 10_000, 'min');
    if (load.power_W > limit_W)
      refuse(
        `loads.${at}.power_W`,
        'beyond-the-power',
        `${load.id} draws ${load.power_W} W, more than the ${limit_W} W the power gives at once.`,
      );
    const starts = [first_min, ...placed.map((slot) => slot.end_min)].sort((one, other) => one - other);
    const fits = (start: number): boolean => {
      const changes = [
        start,
        ...placed.map((slot) => slot.start_min).filter((minute) => minute > start && minute < start + load.run_min),
      ];
      return changes.every((minute) => {
        const drawn = placed.reduce(
          (sum, slot) => (slot.start_min <= minute && minute < slot.end_min ? sum + slot.power_W : sum),
          0,
        );
        return drawn + load.power_W <= limit_W + 1e-9;
      });
    };
    const start_min = starts.find(fits) ?? Math.max(...placed.map((slot) => slot.end_min));
    placed.push({ id: load.id, start_min, end_min: start_min + load.run_min, power_W: load.power_W });
  });
  return placed.map(({ id, start_min, end_min }) => ({ id, start_min, end_min }));
}
