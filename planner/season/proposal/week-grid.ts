import { dateOfDay, dayNumber, type IsoDate, mondayOf } from '../../calendar.ts';

/** The weeks of a season, Monday to Sunday, the first holding the season's first day. */
export type WeekGrid = { readonly firstMonday: number; readonly weeks: number };

const DAYS = 7;

/** The grid from a season's first day up to the day after its last. */
export function weekGrid(start: IsoDate, end: IsoDate): WeekGrid {
  const firstMonday = dayNumber(mondayOf(start));
  return { firstMonday, weeks: Math.max(1, Math.ceil((dayNumber(end) - firstMonday) / DAYS)) };
}

/** Index of the week that a day lies in; below 0 or above the last outside the season. */
export const weekOfDay = (grid: WeekGrid, day: number): number => Math.floor((day - grid.firstMonday) / DAYS);

/** The first week that begins on or after a day. */
export const weekFrom = (grid: WeekGrid, day: number): number => Math.ceil((day - grid.firstMonday) / DAYS);

export const mondayOfWeek = (grid: WeekGrid, week: number): number => grid.firstMonday + DAYS * week;

export const mondayDate = (grid: WeekGrid, week: number): IsoDate => dateOfDay(mondayOfWeek(grid, week));
