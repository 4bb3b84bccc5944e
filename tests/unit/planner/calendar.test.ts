import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  addDays,
  dateOfDay,
  dateOfYearDay,
  dayNumber,
  dayOfYear,
  daysBetween,
  type IsoDate,
  isIsoDate,
  isLeapYear,
  isoWeek,
  mondayOf,
  parseIsoDate,
  yearOf,
} from '../../../planner/calendar.ts';
import { refusals } from '../../builders/faults-of.ts';

const MS_PER_DAY = 86_400_000;
/** 0100-01-01 to 9999-12-31. */
const anyDay = fc.integer({ min: -683_003, max: 2_932_896 });

test('days and dates are those of the language’s own calendar, there and back', () => {
  fc.assert(
    fc.property(anyDay, (day) => {
      const date = new Date(day * MS_PER_DAY).toISOString().slice(0, 10);
      expect(dateOfDay(day)).toBe(date);
      expect(dayNumber(date as IsoDate)).toBe(day);
    }),
    { numRuns: 2000 },
  );
});

test('leap days and ends of centuries stand where the Gregorian calendar has them', () => {
  for (const date of ['2000-02-29', '2024-02-29', '1900-02-28', '1900-03-01', '2026-12-31', '1970-01-01', '9999-12-31'])
    expect(dateOfDay(dayNumber(date as IsoDate))).toBe(date);
  expect(dayNumber('1970-01-01' as IsoDate)).toBe(0);
  expect(dayNumber('2000-03-01' as IsoDate) - dayNumber('2000-02-28' as IsoDate)).toBe(2);
  expect(dayNumber('1900-03-01' as IsoDate) - dayNumber('1900-02-28' as IsoDate)).toBe(1);
});

test('what is no calendar date is still told apart', () => {
  for (const text of ['2026-02-30', '2025-02-29', '2026-13-01', '2026-00-10', '2026-01-00', '2026-1-1', '', 'abcd-01-01'])
    expect(isIsoDate(text)).toBe(false);
  expect(dayNumber('abcd-01-01' as IsoDate)).toBeNaN();
  expect(() => dateOfDay(Number.NaN)).toThrow(RangeError);
});

test('days that are no whole number, and those before year 0, go the longer way', () => {
  expect([dateOfDay(0.5), dateOfDay(-719_528), dateOfDay(2_932_896)]).toEqual(['1970-01-01', '0000-01-01', '9999-12-31']);
  expect([dateOfDay(-719_529).slice(0, 7), dateOfDay(2_932_897).slice(0, 7)]).toEqual(['-000001', '+010000']);
});

test('an entry that is no date is refused at its field', () => {
  expect(parseIsoDate('2026-03-09')).toBe('2026-03-09');
  expect(refusals(() => parseIsoDate('9.3.2026'))).toEqual(['date not-a-date']);
  expect(refusals(() => parseIsoDate('2026-02-29', 'sown'))).toEqual(['sown not-a-date']);
});

test('days on, between, in the year; leap years by the Gregorian rule', () => {
  const day = (text: string) => text as IsoDate;
  expect([addDays(day('2024-02-28'), 2), addDays(day('2025-01-01'), -1)]).toEqual(['2024-03-01', '2024-12-31']);
  expect([daysBetween(day('2026-03-01'), day('2026-03-09')), daysBetween(day('2026-03-09'), day('2026-03-01'))]).toEqual([8, -8]);
  expect([yearOf(day('0987-01-01')), yearOf(day('2026-12-31'))]).toEqual([987, 2026]);
  expect([2000, 2024, 1900, 2023].map(isLeapYear)).toEqual([true, true, false, false]);
  expect([dayOfYear(day('2024-12-31')), dayOfYear(day('2023-12-31')), dayOfYear(day('2023-01-01'))]).toEqual([366, 365, 1]);
  expect([dateOfYearDay(2024, 60), dateOfYearDay(2023, 60), dateOfYearDay(987, 1)]).toEqual([
    '2024-02-29',
    '2023-03-01',
    '0987-01-01',
  ]);
});

// ISO 8601: the week with the year's first Thursday is week 1
test('Mondays and weeks of the standard, about the turn of the year and before 1970', () => {
  const day = (text: string) => text as IsoDate;
  expect(['2026-11-23', '2026-11-25', '2026-11-29', '2026-11-30'].map((text) => mondayOf(day(text)))).toEqual([
    '2026-11-23',
    '2026-11-23',
    '2026-11-23',
    '2026-11-30',
  ]);
  expect([mondayOf(day('1969-12-31')), mondayOf(day('1969-12-28'))]).toEqual(['1969-12-29', '1969-12-22']);
  const week = (text: string) => `${isoWeek(day(text)).year}-${isoWeek(day(text)).week}`;
  expect(['2021-01-03', '2021-01-04', '2020-12-31', '2024-12-30', '2026-01-01', '2026-11-25'].map(week)).toEqual([
    '2020-53',
    '2021-1',
    '2020-53',
    '2025-1',
    '2026-1',
    '2026-48',
  ]);
});
