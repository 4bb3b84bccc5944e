import { expect, test } from 'vitest';
import { printDate } from '../../../../planner/units/print-date.ts';
import { readerOf, unitForKey } from '../../../../planner/units/reader.ts';

const us = readerOf({ system: 'us', currency: 'USD', locale: 'en-US' });
const german = readerOf({ system: 'metric', currency: 'EUR', locale: 'de-DE' });

test('prints and reads in the manner of one reader', () => {
  expect([us.print(1.0668, 'm'), german.print(1.0668, 'm')]).toEqual(['3 ft 6 in', '1,07 m']);
  expect(us.print(1234.5, 'kg_per_m3', 2)).toBe('77 lb/ft³');
  expect([us.number(0.2, 'share'), german.number(1234.5, 'kg_per_m3', 5)]).toEqual(['20', '1.234,5']);
  expect([us.read('1,5'), german.read('1,5'), german.read('1.200'), german.read('1.200', 'pasted')]).toEqual([
    1.5,
    1.5,
    undefined,
    1200,
  ]);
  expect([us.entry(0.2, 'share'), german.entry(12_345.5, 'L')]).toEqual(['20%', '12345,5 L']);
  expect([us.money(123_456), german.money(-5)]).toEqual(['$1,234.56', '−0,05\u00a0€']);
  expect([us.print(441, 'minor_per_kg'), us.system, german.locale]).toEqual(['$2.00/lb', 'us', 'de-DE']);
});
test('what is not known is a dash', () => {
  expect([us.print(null, 'm'), us.print(undefined, 'm'), us.money(null), us.money(undefined)]).toEqual(['–', '–', '–', '–']);
  expect([us.date(null), us.date(undefined), us.date('')]).toEqual(['–', '–', '–']);
});
test('the sign and scale of a column: the currency for money, nothing for a pure number', () => {
  expect(['minor', '', 'L', 'share', 'count'].map(us.sign)).toEqual(['USD', '', 'gal', '%', '']);
  expect(us.scale(100, 'C')).toBeCloseTo(212, 9);
  expect([us.scale(7, ''), german.scale(7, 'L')]).toEqual([7, 7]);
});
test('dates, short and long; what is no date stands as it is', () => {
  expect([us.date('2026-03-09'), german.date('2026-03-09')]).toEqual(['Mar 9, 2026', '9. März 2026']);
  expect(us.date('2026-03-09', 'long')).toBe('Monday, March 9, 2026');
  expect([us.date('2026-03-09', 'day'), german.date('2026-03-09', 'day')]).toEqual(['Mar 9', '9. März']);
  expect([us.date('2026-10-09', 'month'), german.date('2026-10-09', 'month')]).toEqual(['Oct 2026', 'Okt. 2026']);
  expect([printDate('soon', 'en-US'), printDate('1969-12-31', 'en-US')]).toEqual(['soon', 'Dec 31, 1969']);
});
test('dates within a finished text; figures that are none stay', () => {
  expect(us.datesIn('due 2027-03-02, sown 2027-01-05.')).toBe('due Mar 2, 2027, sown Jan 5, 2027.');
  expect(german.datesIn('(2027-03-02)')).toBe('(2. März 2027)');
  expect(us.datesIn('lot 2027-03-021, A-2027-03-02, 2027-13-40')).toBe('lot 2027-03-021, A-2027-03-02, 2027-13-40');
});
test('the unit of a key, as the trade reads it', () => {
  expect(['depth_m', 'length_m', 'soil_L', 'tank_L', 'kc'].map(unitForKey)).toEqual(['m_short', 'm', 'bulk_L', 'L', '']);
});
