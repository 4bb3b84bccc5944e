import { dateOfYearDay, type IsoDate, isLeapYear } from '../calendar.ts';
import { dayLength_h, SUNRISE_deg } from '../climate/day-length.ts';
import { declination_rad } from '../climate/sun.ts';
import { GROWING_DAY_H } from './growth-clock.ts';

export type ShortDays = {
  /** First day in the second half of the year shorter than the threshold; null when there is none. */
  readonly underFrom: IsoDate | null;
  /** First day in the first half of the year as long as the threshold again; null when days are never shorter. */
  readonly backOn: IsoDate | null;
};

export type ShortDaysInput = {
  readonly latitude_deg: number;
  readonly year: number;
  readonly threshold_h?: number;
  /** Height of the sun's centre at rise: the almanac's -0.833 unless told; 0 for the form of FAO-56. */
  readonly height_deg?: number;
};

/**
 * The days between which growth nearly stops for want of light, north of the equator.
 * Source: FAO-56 eq. 24 and 34 day by day; the ten hours are common practice, no source.
 * @throws InputError naming the field
 */
export function shortDays({
  latitude_deg,
  year,
  threshold_h = GROWING_DAY_H,
  height_deg = SUNRISE_deg,
}: ShortDaysInput): ShortDays {
  const last = isLeapYear(year) ? 366 : 365;
  const isShort = (day: number): boolean => planningDay_h(latitude_deg, day, height_deg) < threshold_h;
  const half = Math.floor(last / 2);
  let backOn: IsoDate | null = null;
  let underFrom: IsoDate | null = null;
  for (let day = 1; day <= half; day += 1) if (isShort(day) && !isShort(day + 1)) backOn = dateOfYearDay(year, day + 1);
  for (let day = last; day > half; day -= 1) if (isShort(day) && !isShort(day - 1)) underFrom = dateOfYearDay(year, day);
  return { underFrom, backOn };
}

/**
 * Day length as the planting tables reckon it, by the short declination of FAO-56: up to 8 minutes off a solar almanac, which
 * moves the ten-hour day by some three days at 40 to 48 degrees north. The ten hours themselves are no sharper than that.
 * Source: FAO-56 eq. 24 and 34, with the almanac's height of the sun unless told.
 */
export const planningDay_h = (latitude_deg: number, dayOfYear: number, height_deg: number = SUNRISE_deg): number =>
  dayLength_h(latitude_deg, dayOfYear, height_deg, declination_rad(dayOfYear));

/** Day length of each of a number of days, for a growth clock; days of the year are counted from `firstYearDay`. */
export function daylightFrom_h(latitude_deg: number, daysOfYear: readonly number[]): readonly number[] {
  const known = new Map<number, number>();
  return daysOfYear.map((day) => {
    const present = known.get(day) ?? planningDay_h(latitude_deg, day);
    known.set(day, present);
    return present;
  });
}
