import { refuse } from './errors.ts';

declare const dateOf: unique symbol;

/** A calendar date, `YYYY-MM-DD`. No clock and no time zone is involved. */
export type IsoDate = string & { readonly [dateOf]: 'date' };

const MS_PER_DAY = 86_400_000;
const dateForm = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Days since 1970-01-01 of a calendar date: whole numbers for loops and differences. */
export function dayNumber(date: IsoDate): number {
  return Date.UTC(Number(date.slice(0, 4)), Number(date.slice(5, 7)) - 1, Number(date.slice(8, 10))) / MS_PER_DAY;
}

/** The calendar date of a day number. */
export function dateOfDay(day: number): IsoDate {
  return new Date(day * MS_PER_DAY).toISOString().slice(0, 10) as IsoDate;
}

/** True for a real calendar date in the form `YYYY-MM-DD` (30 February is not). */
export function isIsoDate(text: string): text is IsoDate {
  const parts = dateForm.exec(text);
  if (parts === null) return false;
  const day = dayNumber(text as IsoDate);
  return Number.isFinite(day) && dateOfDay(day) === text;
}

/** Reads a calendar date. @throws InputError at `path` when it is none */
export function parseIsoDate(text: string, path = 'date'): IsoDate {
  if (isIsoDate(text)) return text;
  return refuse(path, 'not-a-date', `${path}: "${text}" is not a calendar date. Write it as 2026-03-09.`);
}

export function addDays(date: IsoDate, days: number): IsoDate {
  return dateOfDay(dayNumber(date) + days);
}

/** Whole days from `from` to `to`; negative when `to` is earlier. */
export function daysBetween(from: IsoDate, to: IsoDate): number {
  return dayNumber(to) - dayNumber(from);
}

export function yearOf(date: IsoDate): number {
  return Number(date.slice(0, 4));
}

export function isLeapYear(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}

/** 1 for 1 January. */
export function dayOfYear(date: IsoDate): number {
  return dayNumber(date) - dayNumber(`${date.slice(0, 4)}-01-01` as IsoDate) + 1;
}

/** The date of a day of the year; day 1 is 1 January. */
export function dateOfYearDay(year: number, day: number): IsoDate {
  return addDays(`${String(year).padStart(4, '0')}-01-01` as IsoDate, day - 1);
}

/** The Monday on or before a date. */
export function mondayOf(date: IsoDate): IsoDate {
  const day = dayNumber(date);
  return dateOfDay(day - ((((day + 3) % 7) + 7) % 7));
}

/** ISO 8601 week: the week with the year's first Thursday is week 1. */
export function isoWeek(date: IsoDate): { readonly year: number; readonly week: number } {
  const thursday = addDays(mondayOf(date), 3);
  return { year: yearOf(thursday), week: Math.floor((dayOfYear(thursday) - 1) / 7) + 1 };
}
