import { addDays, dateOfDay, dayNumber, type IsoDate, isoWeek, mondayOf } from '../../../planner/calendar.ts';

/** Days laid along the board. */
export type TimeScale = {
  readonly first: number;
  readonly last: number;
  readonly day_px: number;
  readonly width_px: number;
  readonly x: (date: IsoDate) => number;
  readonly dayAt: (x_px: number) => number;
};

/** From the Monday before the season to the Sunday after it. */
export function timeScale(start: IsoDate, end: IsoDate, week_px: number): TimeScale {
  const first = dayNumber(mondayOf(start));
  const last = dayNumber(addDays(mondayOf(addDays(end, -1)), 7));
  const day_px = week_px / 7;
  return {
    first,
    last,
    day_px,
    width_px: (last - first) * day_px,
    x: (date) => (dayNumber(date) - first) * day_px,
    dayAt: (x_px) => first + Math.floor(x_px / day_px),
  };
}

export type WeekMark = {
  readonly monday: IsoDate;
  readonly week: number;
  readonly x_px: number;
  /** Set where a month begins in this week. */
  readonly month: string | null;
};

export function weekMarks(scale: TimeScale, locale: string): readonly WeekMark[] {
  const marks: WeekMark[] = [];
  const name = new Intl.DateTimeFormat(locale, { month: 'short', timeZone: 'UTC' });
  let month = '';
  for (let day = scale.first; day < scale.last; day += 7) {
    const monday = dateOfDay(day);
    // the month of a week is that of its Thursday, as ISO weeks have it
    const of = dateOfDay(day + 3).slice(0, 7);
    marks.push({
      monday,
      week: isoWeek(monday).week,
      x_px: (day - scale.first) * scale.day_px,
      month: of === month ? null : name.format(Date.parse(`${of}-15`)),
    });
    month = of;
  }
  // a month of which only the last week is shown would run into the next one's name
  const [first, second, ...rest] = marks;
  return first !== undefined && second !== undefined && second.month !== null
    ? [{ ...first, month: null }, second, ...rest]
    : marks;
}
