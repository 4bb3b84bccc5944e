import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError } from '../../../../planner/errors.ts';
import { marksOf } from '../../../../planner/units/number-marks.ts';
import { parseQuantity } from '../../../../planner/units/parse.ts';
import { isAmbiguous, readNumber } from '../../../../planner/units/parse-number.ts';
import { printForEntry, printQuantity } from '../../../../planner/units/print.ts';
import { printMinor, printMinorForEntry, printMoney } from '../../../../planner/units/print-money.ts';
import { grouped } from '../../../../planner/units/significant.ts';

const locales = ['en-US', 'en-IN', 'de-DE', 'de-CH', 'fr-FR', 'es-ES', 'pl-PL', 'pt-BR', 'sv-SE', 'ja-JP'] as const;
const NARROW = '\u202f';
const NO_BREAK = '\u00a0';

describe('numbers as a country writes them', () => {
  // the Unicode CLDR's forms, as the runtime's own formatter has them
  test.each(locales)('%s: the same as the runtime writes', (locale) => {
    const form = new Intl.NumberFormat(locale, { numberingSystem: 'latn', maximumFractionDigits: 2 });
    for (const value of [0, 7.5, 999, 1234, 12_345.67, 1_234_567.89, 98_765_432.1])
      expect(grouped(value, 2, marksOf(locale))).toBe(form.format(value));
  });

  test('a quantity and money stand so', () => {
    expect(printQuantity(1234.5, 'kg_per_m2', 'metric', { digits: 5, locale: 'de-DE' })).toBe('1.234,5 kg/m²');
    expect(printQuantity(0.3, 'm', 'metric', { locale: 'de-DE' })).toBe('30 cm');
    expect(printQuantity(1.0795, 'm', 'us', { locale: 'fr-FR' })).toBe('3 ft 6,5 in');
    expect(printQuantity(12.5, 'C', 'metric', { locale: 'pl-PL' })).toBe('12,5 °C');
    expect(printMoney(123_456, 'EUR', 0, 'de-DE')).toBe(`1.234,56${NO_BREAK}€`);
    expect(printMinor(1_234_567, 2, 'fr-FR')).toBe(`12${NARROW}345,67`);
    expect(printMinor(1_234_567, 0, 'ja-JP')).toBe('1,234,567');
    expect(printMinorForEntry(-1_234_567, 2, 'de-DE')).toBe('−12345,67');
  });
});

describe('reading numbers', () => {
  const read = (locale: string) => (text: string) => readNumber(text, locale);

  test('where the comma is the decimal sign', () => {
    expect(
      ['1,5', '1.5', '1.234,5', '1,234.5', '1,234', '0.125', '1.234.567', '12.50', '−3,25', '2½', '3 1/2'].map(read('de-DE')),
    ).toEqual([1.5, 1.5, 1234.5, 1234.5, 1.234, 0.125, 1_234_567, 12.5, -3.25, 2.5, 3.5]);
  });

  test('where the point is the decimal sign', () => {
    expect(['1,5', '1.5', '1,234.5', '1.234,5', '1,234', '1.234', '1,234,567', '12,34,567.5'].map(read('en-US'))).toEqual([
      1.5, 1.5, 1234.5, 1234.5, 1234, 1.234, 1_234_567, 1_234_567.5,
    ]);
  });

  test('spaces and apostrophes between groups', () => {
    expect(readNumber(`1${NARROW}234,5`, 'fr-FR')).toBe(1234.5);
    expect(readNumber('12 345', 'sv-SE')).toBe(12_345);
    expect(readNumber('1’234.5', 'de-CH')).toBe(1234.5);
    expect(readNumber('1’234.5', 'en-US')).toBeUndefined();
  });

  test('what is typed and may mean two is refused; pasted, the country decides', () => {
    expect(readNumber('1.234', 'de-DE')).toBeUndefined();
    expect(isAmbiguous('1.234', 'de-DE')).toBe(true);
    expect(readNumber('1.234', 'de-DE', 'pasted')).toBe(1234);
    expect(readNumber('1.234', 'fr-FR', 'pasted')).toBe(1.234);
    expect(isAmbiguous('1,234', 'de-DE')).toBe(false);
    expect(isAmbiguous('1.234', 'en-US')).toBe(false);
  });

  test.each(['', 'x', '1,2,3', '1.2.3', '12.34.567', '1,23,45', '1..5', '.', ',', '1 23', '1.234,5.6'])(
    '%s is no number',
    (text) => {
      for (const locale of locales) expect(readNumber(text, locale)).toBeUndefined();
    },
  );
});

describe('there and back', () => {
  const value = fc.double({ min: -1e7, max: 1e7, noNaN: true, noDefaultInfinity: true });

  test.each(locales)('%s: what a table writes is read again when pasted', (locale) => {
    fc.assert(
      fc.property(value, fc.integer({ min: 0, max: 4 }), (number, places) => {
        const text = grouped(number, places, marksOf(locale));
        expect(readNumber(text, locale, 'pasted')).toBeCloseTo(Number(number.toFixed(places)), 9);
      }),
    );
  });

  test.each(locales)('%s: what a field shows is read again as it stands', (locale) => {
    fc.assert(
      fc.property(
        value,
        fc.constantFrom('m', 'L', 'kg', 'C', 'share', ''),
        fc.constantFrom('us', 'metric'),
        (number, unit, system) => {
          const text = printForEntry(number, unit, system, locale);
          const back = unit === '' ? readNumber(text, locale) : parseQuantity(text, { unit, system, locale });
          expect(Math.abs((back ?? Number.NaN) - number)).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(number)) + 1e-4);
        },
      ),
    );
  });

  test.each(locales)('%s: money likewise, to the last unit', (locale) => {
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), fc.constantFrom(0, 2, 3), (minor, places) => {
        expect(Math.round((readNumber(printMinorForEntry(minor, places, locale), locale) ?? Number.NaN) * 10 ** places)).toBe(
          minor,
        );
      }),
    );
  });
});

test('a quantity typed with both kinds of mark, and the one that is refused at its field', () => {
  const field = { unit: 'L', system: 'metric', locale: 'de-DE', path: 'fill_L' } as const;
  expect(parseQuantity('1.234,5 L', field)).toBe(1234.5);
  expect(parseQuantity('2,5 gal', field)).toBeCloseTo(9.4635, 4);
  expect(parseQuantity('12 345 L', { ...field, locale: 'fr-FR' })).toBe(12_345);
  expect(() => parseQuantity('1.234 L', field)).toThrow(InputError);
  try {
    parseQuantity('1.234 L', field);
  } catch (error) {
    expect((error as InputError).faults[0]).toMatchObject({ path: 'fill_L', code: 'ambiguous' });
  }
});
