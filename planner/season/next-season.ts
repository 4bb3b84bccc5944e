import { addDays, daysBetween, type IsoDate, yearOf } from '../calendar.ts';
import { refuse } from '../errors.ts';
import { type MovableDates, moved } from './move-planting.ts';

/** The same day of another year; 29 February becomes the 28th where there is none. */
export function sameDayInYear(date: IsoDate, year: number): IsoDate {
  const text = `${String(year).padStart(4, '0')}${date.slice(4)}` as IsoDate;
  return date.slice(5) === '02-29' && !leap(year) ? (`${text.slice(0, 8)}28` as IsoDate) : text;
}

const leap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

/**
 * A planting's dates in a later season: it goes into the bed on the same calendar day, and what the records taught of its
 * days to first harvest and of its harvest takes the place of the planned lengths.
 * @throws InputError when the target is not a later year
 */
export function carriedOver(
  dates: MovableDates,
  years: number,
  learned: { readonly toHarvest_days: number | null; readonly window_days: number | null },
): MovableDates {
  if (!Number.isInteger(years) || years < 1) refuse('years', 'too-small', 'A season is copied to a later year.');
  const inBed = sameDayInYear(dates.inBed, yearOf(dates.inBed) + years);
  const same = moved(dates, daysBetween(dates.inBed, inBed));
  const firstHarvest = learned.toHarvest_days === null ? same.firstHarvest : addDays(inBed, Math.round(learned.toHarvest_days));
  const window = learned.window_days ?? daysBetween(same.firstHarvest, same.lastHarvest);
  const lastHarvest = addDays(firstHarvest, Math.round(window));
  const free = addDays(lastHarvest, daysBetween(same.lastHarvest, same.free));
  return { ...same, firstHarvest, lastHarvest, free };
}
