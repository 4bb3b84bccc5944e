import { refuse } from './errors.ts';

declare const dateOf: unique symbol;

/** A calendar date, `YYYY-MM-DD`. No clock and no time zone is involved. */
export type IsoDate = string & { readonly [dateOf]: 'date' };

const MS_PER_DAY = 86_400_000;
const twoDigits = Array.from({ length: 100 }, (_, number) => String(number).padStart(2, '0'));
const dateForm = /^(\d{4})-(\d{2})-(\d{2})$/;

const DAYS_PER_ERA = 146_097; // 400 Gregorian years
const EPOCH = 719_468; // days from 0000-03-01 to 1970-01-01
const FIRST_DAY = -719_528; // 0000-01-01
const LAST_DAY = 2_932_896; // 9999-12-31

/** The digits of a text from one place to another as a number; NaN when one is no digit. */
function digits(text: string, from: number, to: number): number {
  let value = 0;
  for (let at = from; at < to; at += 1) {
    const digit = text.charCodeAt(at) - 48;
    if (!(digit >= 0 && digit <= 9)) return Number.NaN;
    value = 10 * value + digit;
  }
  return value;
}

/**
 * Days since 1970-01-01 of a calendar date: whole numbers for loops and differences. Years counted from March, so that the
 * leap day is the last; other forms than `YYYY-MM-DD` go the longer way of the language's own dates.
 */
export function dayNumber(date: IsoDate): number {
  const year = digits(date, 0, 4);
  const month = digits(date, 5, 7);
  const day = digits(date, 8, 10);
  if (date.length === 10 && year >= 100 && month >= 1 && month <= 12 && day >= 0) {
    const from = month > 2 ? year : year - 1;
    const era = Math.floor(from / 400);
    const inEra = from - era * 400;
    const inYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1;
    return era * DAYS_PER_ERA + inEra * 365 + Math.floor(inEra / 4) - Math.floor(inEra / 100) + inYear - EPOCH;
  }
  return Date.UTC(Number(date.slice(0, 4)), Number(date.slice(5, 7)) - 1, Number(date.slice(8, 10))) / MS_PER_DAY;
}

/** The calendar date of a day number. */
export function dateOfDay(day: number): IsoDate {
  if (Number.isInteger(day) && day >= FIRST_DAY && day <= LAST_DAY) {
    const era = Math.floor((day + EPOCH) / DAYS_PER_ERA);
    const inEra = day + EPOCH - era * DAYS_PER_ERA;
    const yearOfEra = Math.floor(
      (inEra - Math.floor(inEra / 1460) + Math.floor(inEra / 36_524) - Math.floor(inEra / 146_096)) / 365,
    );
    const inYear = inEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
    const fromMarch = Math.floor((5 * inYear + 2) / 153);
    const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
    const year = era * 400 + yearOfEra + (month <= 2 ? 1 : 0);
    const ofMonth = inYear - Math.floor((153 * fromMarch + 2) / 5) + 1;
    return `${twoDigits[Math.floor(year / 100)]}${twoDigits[year % 100]}-${twoDigits[month]}-${twoDigits[ofMonth]}` as IsoDate;
  }
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
