import { describe, expect, test } from 'vitest';
import { celsiusStepsOf, convert, degreesOf, fahrenheitStepsOf, radiansOf } from '../../../../planner/units/convert.ts';
import { writtenUnit } from '../../../../planner/units/entry-units.ts';
import { parseQuantity } from '../../../../planner/units/parse.ts';
import { readNumber } from '../../../../planner/units/parse-number.ts';
import { printForEntry, printNamed, printNumber, printQuantity } from '../../../../planner/units/print.ts';
import { messageFor } from '../../../../planner/units/print-message.ts';
import { currencyPlaces, printMinor, printMinorForEntry, printMoney } from '../../../../planner/units/print-money.ts';
import { readerUnit, signOf, symbolForName, unitBetween } from '../../../../planner/units/reader-unit.ts';
import { grouped, significant } from '../../../../planner/units/significant.ts';
import { symbolUnit, unitOfName } from '../../../../planner/units/symbol.ts';
import { refusals, testRefusals } from '../../../builders/faults-of.ts';

const us = 'us' as const;
const metric = 'metric' as const;

describe('numbers by hand', () => {
  test.each([
    ['½', 0.5],
    ['2 ½', 2.5],
    ['12¼', 12.25],
    ['x½', undefined],
    ['1.5½', undefined],
    ['½1', undefined],
    ['3 1/2', 3.5],
    ['3-1/2', 3.5],
    ['12 3/4', 12.75],
    ['1 / 4', 0.25],
    ['10/ 4', 2.5],
    ['10 /40', 0.25],
    ['1/0', undefined],
    ['1/2/3', undefined],
    ['a 1/2', undefined],
    ['1/2 a', undefined],
    ['+4', 4],
    ['- 4', -4],
    [' −4 ', -4],
    ['4-', undefined],
    ['-0', 0],
    ['5.', 5],
    ['.75', 0.75],
    ['0,5', 0.5],
    ['01,200', 1.2],
    ['1,2000', 1.2],
    ['1,200,300.25', 1_200_300.25],
    ['1,200.5,3', undefined],
    ['12,34,567', 1_234_567],
    ['12,345', 12_345],
    ['1234,567', 1234.567],
    ['1 234', 1234],
    ['1 234.5', 1234.5],
    ['12 34', undefined],
    ['1 2345', undefined],
    ['a1 234', undefined],
    ['x12', undefined],
    ['x1.5', undefined],
    ['12x', undefined],
    ['1,5x', undefined],
  ])('%s', (text, expected) => {
    expect(readNumber(text)).toBe(expected);
  });
  test('an apostrophe groups where the country writes it so, a space everywhere', () => {
    expect(readNumber("1'234", 'de-CH')).toBe(1234);
    expect(readNumber('1 234', 'de-CH')).toBe(1234);
    expect(readNumber("1'234", 'de-DE')).toBeUndefined();
  });
});

describe('what a grower writes', () => {
  // factors: NIST Handbook 44, Appendix C
  test.each([
    ['$5', 'minor', us, 5],
    ['  $ 5 ', 'minor', us, 5],
    ['9 F', 'K', metric, 5],
    ['9 °F', 'K', metric, 5],
    ['5 C', 'K', us, 5],
    ['5 °c', 'K', us, 5],
    ['5 deg c', 'K', us, 5],
    ['9', 'K', us, 5],
    ['41 deg F', 'C', metric, 5],
    ['5 deg C', 'C', us, 5],
    ['10 sq   ft', 'm2', metric, 0.92903],
    ['10 sq. ft.', 'm2', metric, 0.92903],
    ['10 ft^2', 'm2', metric, 0.92903],
    ['10 ft^3', 'm3', metric, 0.283168],
    ['10 ft³', 'm3', metric, 0.283168],
    ['10 lb / 1000 ft2', 'g_per_m2', metric, 48.8243],
    ['10 lb per 1000 ft2', 'g_per_m2', metric, 48.8243],
    ['10 lb/1000ft2', 'g_per_m2', metric, 48.8243],
    ['10 lb per 100 sq ft', 'g_per_m2', metric, 488.24276],
    ['2 lb, 4 oz', 'kg', us, 1.02058],
    ['2 lb and 4 oz', 'kg', us, 1.02058],
    ['2 lb + 4 oz', 'kg', us, 1.02058],
    ['2 lb & 4 oz', 'kg', us, 1.02058],
    ['2 lb and  4 oz', 'kg', us, 1.02058],
    ['1 gal 8 oz', 'L', us, 4.022],
    ['3 yd', 'L', us, 2293.66457],
    ['3 yd', 'm', us, 2.7432],
    ['1 foot', 'L', us, 28.3168],
    ['10 m2 5 m2', 'm2', us, 15],
    ['-½ in', 'm', metric, -0.0127],
    ['½', 'm', metric, 0.5],
    ['.5 m', 'm', us, 0.5],
    [',5 m', 'm', us, 0.5],
    ['1 200 mm', 'm', us, 1.2],
    ['2 1/2 in', 'm', us, 0.0635],
    ['2-1/2 in', 'm', us, 0.0635],
    ['1/2in', 'm', us, 0.0127],
    ['1 / 2 in', 'm', us, 0.0127],
    ['2 ½ in', 'm', us, 0.0635],
    ['3 l/m2', 'L_per_m2', us, 3],
    ['50 F', 'C', us, 10],
    ['1 yard/day', 'L_per_day', us, 764.55486],
    ['3 m 50', 'cm', us, Number.NaN],
  ])('%s in %s for a %s reader', (text, unit, system, expected) => {
    if (Number.isNaN(expected)) expect(() => parseQuantity(text, { unit, system })).toThrow();
    else expect(parseQuantity(text, { unit, system })).toBeCloseTo(expected, 4);
  });
  test('an apostrophe is feet, but groups where the country groups by it', () => {
    expect(parseQuantity('1\' 6"', { unit: 'm', system: us, locale: 'en-US' })).toBeCloseTo(0.4572, 9);
    expect(parseQuantity("1'234 m", { unit: 'm', system: metric, locale: 'de-CH' })).toBe(1234);
    expect(parseQuantity('1 234 m', { unit: 'm', system: metric, locale: 'de-CH' })).toBe(1234);
  });
  test('pasted, a number reads as the country writes it', () => {
    const field = { unit: 'L', system: metric, locale: 'de-DE' };
    expect(parseQuantity('1.200 L', { ...field, from: 'pasted' })).toBe(1200);
    expect(refusals(() => parseQuantity('1.200 L', field))).toEqual(['value ambiguous']);
  });
  testRefusals([
    ['value empty', () => parseQuantity('  ', { unit: 'm', system: us })],
    ['value empty', () => parseQuantity('$', { unit: 'minor', system: us })],
    ['price unknown-unit', () => parseQuantity('3', { unit: 'florins', system: us, path: 'price' })],
    ['value unknown-unit', () => parseQuantity('3 gal/florin', { unit: 'L_per_day', system: us })],
    ['value unknown-unit', () => parseQuantity('3 florin/day', { unit: 'L_per_day', system: us })],
    ['value other-dimension', () => parseQuantity('3 gal', { unit: 'L_per_day', system: us })],
    ['value other-dimension', () => parseQuantity('3 gal/day/day', { unit: 'L_per_day', system: us })],
    ['value other-dimension', () => parseQuantity('3 kg', { unit: 'count', system: us })],
    ['value no-unit', () => parseQuantity('5 3 ft', { unit: 'm', system: us })],
    ['value not-a-quantity', () => parseQuantity('ft 3', { unit: 'm', system: us })],
    ['unit other-dimension', () => convert(1, 'ft', 'us_gal')],
    ['unit unknown-unit', () => readerUnit('florins', us)],
    ['unit unknown-unit', () => unitBetween('m', 'florins')],
  ]);
  test('a word is known with its plural, its count and its division; what is not known is none', () => {
    expect(writtenUnit('Gallons', 'volume')).toEqual(symbolUnit('us_gal'));
    expect(writtenUnit('1000 ft2', 'area')?.factor).toBeCloseTo(92.90304, 9);
    expect(writtenUnit('gal per day', 'volume/time')?.dimension).toBe('volume/time');
    expect(writtenUnit(' ', 'volume')).toBeUndefined();
    expect(writtenUnit('c', 'temperatureStep')).toEqual({ dimension: 'temperatureStep', factor: 1, offset: 0 });
    expect(writtenUnit('cups', 'temperatureStep')?.dimension).toBe('volume');
    expect(writtenUnit('f', 'temperatureStep')?.offset).toBe(0);
  });
});

describe('what a reader is shown', () => {
  test.each([
    [Number.NaN, 'm', us, '–'],
    [Number.POSITIVE_INFINITY, 'L', metric, '–'],
    [-1.0668, 'm', us, '−3 ft 6 in'],
    [-0.2, 'm', us, '−7.75 in'],
    [0, 'm', us, '0 in'],
    [0.001, 'm', us, '0.039 in'],
    [-0.001, 'm', us, '−0.039 in'],
    // a quarter inch below 12 ft, a half to 40 ft, whole inches to 100 ft, then feet
    [3.64, 'm', us, '11 ft 11.25 in'],
    [3.6576, 'm', us, '12 ft'],
    [3.6639, 'm', us, '12 ft'],
    [12.18, 'm', us, '39 ft 11.5 in'],
    [12.192, 'm', us, '40 ft'],
    [12.21, 'm', us, '40 ft 1 in'],
    [30.45, 'm', us, '99 ft 11 in'],
    [30.48, 'm', us, '100 ft'],
    [30.6, 'm', us, '100.4 ft'],
    [-3048, 'm', us, '−10,000 ft'],
    [0.994, 'm', metric, '99.4 cm'],
    [0.995, 'm', metric, '0.995 m'],
    [10_000, 'm', metric, '10 km'],
    [-12_000, 'm', metric, '−12 km'],
    [3999, 'm2', us, '43,000 ft²'],
    [4046.8564224, 'm2', us, '1 acre'],
    [10_000, 'm2', metric, '1 ha'],
    [0.01, 'L', us, '0.338 fl oz'],
    [0.01, 'L', metric, '10 mL'],
    [12_000, 'L', metric, '12 m³'],
    [0.1, 'kg', us, '3.53 oz'],
    [0.1, 'kg', metric, '100 g'],
    [12_000, 'kg', metric, '12 t'],
    [500, 'g', us, '1.1 lb'],
    [12_000, 'Wh', us, '12 kWh'],
    [0.5, 'm3', us, '17.7 ft³'],
    [0, 'kg', metric, '0 kg'],
    [1, 'days', us, '1 day'],
    [2.5, 'day', us, '2.5 days'],
    [10, 'd', us, '10 days'],
    [10.4, 'd', us, '10 days'],
    [9.96, 'd', us, '10 days'],
    [-3, 'days', us, '−3 days'],
    [1, 'plants', us, '1 plants'],
    [2.5, 'plants', us, '2.5 plants'],
    [1200, 'seeds', us, '1,200 seeds'],
    [20.04, 'C', metric, '20 °C'],
    [-5.26, 'C', metric, '−5.3 °C'],
    [5, 'K', us, '9 °F'],
    [5, 'K', metric, '5 °C'],
    [0.1234, 'share', us, '12.3%'],
    [45, 'deg', us, '45°'],
    [1234.5, '', us, '1,230'],
    [2, 'dS_per_m', us, '2 dS/m'],
    [20, 'MJ_per_m2', us, '20 MJ/m²'],
    [100, 'kPa', us, '14.5 psi'],
    [1.5, 'kg_per_m3', metric, '1.5 kg/m³'],
  ])('%d %s for a %s reader is %s', (value, unit, system, text) => {
    expect(printQuantity(value, unit, system)).toBe(text);
  });
  test('no more digits than are asked for', () => {
    expect(printQuantity(12.3456, 'L', metric, { digits: 2 })).toBe('12 L');
    expect(printNumber(12.3456, 'L', metric, { digits: 2 })).toBe('12');
    expect(printNumber(1234.5, '', us, { digits: 5 })).toBe('1,234.5');
  });
  test('prices: two places more below a hundred minor units, none of a plain sum', () => {
    const usd = { currency: 'USD' };
    expect(printQuantity(12.3456, 'minor_per_g', metric, usd)).toBe('$0.1235/g');
    expect(printQuantity(99.99, 'minor_per_kg', metric, usd)).toBe('$0.9999/kg');
    expect(printQuantity(100.004, 'minor_per_kg', metric, usd)).toBe('$1.00/kg');
    expect(printQuantity(-12.5, 'minor_per_kg', metric, usd)).toBe('−$0.125/kg');
    expect(printQuantity(12.5, 'minor', metric, usd)).toBe('$0.13');
    expect(printQuantity(1250, 'minor_per_kg', metric)).toBe('12.50/kg');
  });
  test('a column’s number stands in the unit of its head', () => {
    expect(printNumber(0.2, 'share', us)).toBe('20');
    expect(printNumber(3.048, 'm', us)).toBe('10');
    expect(printNumber(20.04, 'C', metric)).toBe('20');
    expect(printNumber(-5.26, 'C', us)).toBe('22.5');
    expect(printNumber(1_234_567, 'count', us)).toBe('1,234,567');
    expect(printNumber(2.34567, 'count', us)).toBe('2.35');
    expect(printNumber(123_456, 'minor', us)).toBe('1,234.56');
    expect(printNumber(123_456, 'minor', us, { currency: 'JPY' })).toBe('123,456');
    expect(printNumber(441, 'minor_per_kg', us, { currency: 'USD' })).toBe('2.00');
    expect(printNumber(0.12345, '', us)).toBe('0.123');
  });
  test('a field’s text keeps seven digits, twelve of a pure number, and no marks between groups', () => {
    expect(printForEntry(12_345.6789, 'L', metric)).toBe('12345.68 L');
    expect(printForEntry(1_234_567.891, '', metric)).toBe('1234567.891');
    expect(printForEntry(12_345.5, 'L', metric, 'de-DE')).toBe('12345,5 L');
    expect(printForEntry(5, 'C', us)).toBe('41 °F');
    expect(printForEntry(0.2, 'share', us)).toBe('20%');
    expect(printForEntry(7, 'count', us)).toBe('7');
  });
  test('a name without unit is a number; a name of bed lengths is in inches, of loose material in cubic feet', () => {
    expect(printNamed('kc', 1.15, us)).toBe('1.15');
    expect(printNamed('rowSpacing_m', 0.3, us)).toBe('11.8 in');
    expect(printNamed('length_m', 3.048, us)).toBe('10 ft');
    expect(printNamed('mulch_L', 28.316846592, us)).toBe('1 ft³');
    expect(printNamed('tank_L', 3.785411784, us)).toBe('1 gal');
    expect([symbolForName('depth_mm', 'mm'), symbolForName('soil_kg', 'kg')]).toEqual(['mm', 'kg']);
  });
  test('money by its currency: places, signs and marks', () => {
    expect(['USD', 'JPY', 'KWD'].map(currencyPlaces)).toEqual([2, 0, 3]);
    expect(printMoney(-5, 'USD')).toBe('−$0.05');
    expect(printMoney(12.34, 'USD', 2)).toBe('$0.1234');
    expect(printMoney(500, 'JPY')).toBe('¥500');
    expect([printMinor(5), printMinor(500), printMinor(1_234_550), printMinor(500, 0), printMinor(1500, 3)]).toEqual([
      '0.05',
      '5.00',
      '12,345.50',
      '500',
      '1.500',
    ]);
    expect([printMinorForEntry(-5, 2, 'en-US'), printMinorForEntry(500, 0, 'en-US')]).toEqual(['−0.05', '500']);
  });
  test('digits that are known, and no others', () => {
    expect([1234.5, 0.045_67, -0.045_67, 0, 999.6, 1e-15, 5].map((value) => significant(value, 3))).toEqual([
      '1,230',
      '0.0457',
      '−0.0457',
      '0',
      '1,000',
      '0',
      '5',
    ]);
    expect(significant(Number.NaN, 3)).toBe('–');
    expect([grouped(-0.04, 1), grouped(-0.05, 1), grouped(1.5, 3), grouped(100, 2), grouped(999, 0)]).toEqual([
      '0',
      '−0.1',
      '1.5',
      '100',
      '999',
    ]);
  });
  test('signs and units for a reader', () => {
    expect(['kg_per_m2', 'm2', 'us_gal_per_min', 'florins', 'count'].map(signOf)).toEqual([
      'kg/m²',
      'm²',
      'gal/min',
      'florins',
      '',
    ]);
    expect(readerUnit('kg', metric)).toEqual({ sign: 'kg', factor: 1, offset: 0 });
    expect(readerUnit('C', us)).toEqual({ sign: '°F', factor: 1.8, offset: 32 });
    expect(readerUnit('C', metric)).toEqual({ sign: '°C', factor: 1, offset: 0 });
    expect(readerUnit('mg_per_L', us)).toEqual({ sign: 'mg/L', factor: 1, offset: 0 });
    expect(readerUnit('L_per_m2', us).sign).toBe('gal/ft²');
    expect(readerUnit('mm_per_day', us).sign).toBe('in/day');
    expect([radiansOf(180), degreesOf(Math.PI), celsiusStepsOf(9), fahrenheitStepsOf(5)]).toEqual([Math.PI, 180, 5, 9]);
  });
  test('a symbol’s dimension and factor, from its parts', () => {
    expect(symbolUnit('L_per_min')?.dimension).toBe('volume/time');
    expect(symbolUnit('L_per_min')?.factor).toBeCloseTo(1 / 60, 12);
    expect(symbolUnit('m_per_s')?.dimension).toBe('length/time');
    expect(symbolUnit('florins_per_day')).toBeUndefined();
    expect(symbolUnit('L_per_florin')).toBeUndefined();
    expect([symbolUnit('constructor'), symbolUnit('toString_per_day')]).toEqual([undefined, undefined]);
    expect(['netShare', 'area_ft2', 'flow_us_gal_per_min', 'x', 'm', 'a_b_us_dry_qt'].map(unitOfName)).toEqual([
      'share',
      'ft2',
      'us_gal_per_min',
      undefined,
      'm',
      'us_dry_qt',
    ]);
    expect([unitOfName('fill_bulk_L'), unitOfName('gap_m_short')]).toEqual(['L', undefined]);
  });
  test('a limit in a message, its units and none of other words', () => {
    expect(messageFor('1 kg/m2 is 1 kg/m3, 2 mm/day and 3 L/min', us)).toBe(
      '0.205 lb/ft² is 0.0624 lb/ft³, 0.0787 in/day and 0.793 gal/min',
    );
    expect(messageFor('-0.3048 m, 1e-3 kg, 5 kPa', us)).toBe('−1 ft, 0.0353 oz, 0.725 psi');
    expect(messageFor('12 mi, 5 L/h², 7 kg/plant', us)).toBe('12 mi, 5 L/h², 7 kg/plant');
    expect(messageFor('1.5 L', metric, 'de-DE')).toBe('1,5 L');
  });
});
