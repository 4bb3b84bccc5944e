import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dateOfDay, dayNumber, type IsoDate, isIsoDate } from '../../../planner/calendar.ts';

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
