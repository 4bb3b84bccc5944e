import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError } from '../../../../planner/errors.ts';
import { parseQuantity } from '../../../../planner/units/parse.ts';
import { printForEntry, printNamed, printNumber, printQuantity } from '../../../../planner/units/print.ts';
import { messageFor } from '../../../../planner/units/print-message.ts';
import { printMoney } from '../../../../planner/units/print-money.ts';
import { symbolForName } from '../../../../planner/units/reader-unit.ts';
import { unitOfName } from '../../../../planner/units/symbol.ts';

const us = 'us' as const;
const metric = 'metric' as const;

describe('reading what a grower writes', () => {
  // factors: NIST Handbook 44, Appendix C
  test.each([
    ['3 ft 6 in', 'm', us, 1.0668],
    [`3'6"`, 'm', us, 1.0668],
    [`3' 6 1/2"`, 'm', us, 1.0795],
    ['3ft6in', 'm', metric, 1.0668],
    ['42"', 'm', us, 1.0668],
    ['4', 'm', us, 1.2192],
    ['4', 'm', metric, 4],
    ['12', 'm_short', us, 0.3048],
    ['30', 'm_short', metric, 0.3],
    ['90 cm', 'm', us, 0.9],
    ['40 gal', 'L', metric, 151.41647136],
    ['1.5 yd3', 'L', us, 1146.832286],
    ['1 1/2 yards', 'bulk_L', us, 1146.832286],
    ['1½ cu. yd.', 'L', us, 1146.832286],
    ['2 cubic feet', 'L', us, 56.633693],
    ['8 dry qt', 'L', us, 8.80977],
    ['8 oz', 'L', us, 0.236588],
    ['2 lb 4 oz', 'kg', us, 1.02058],
    ['1,200', 'L', metric, 1200],
    ['1,5 m', 'm', metric, 1.5],
    ['.75 in', 'm', us, 0.01905],
    ['100 sq ft', 'm2', us, 9.290304],
    ['100 ft²', 'm2', us, 9.290304],
    ['5 gal/day', 'L_per_day', metric, 18.92706],
    ['10 gpm', 'L_per_min', us, 37.85412],
    ['0.3 in/day', 'mm_per_day', metric, 7.62],
    ['10 lb/1000 ft2', 'g_per_m2', us, 48.8243],
    ['100 lb per acre', 'g_per_m2', us, 11.2085],
    ['1200 lb/yd3', 'kg_per_m3', us, 711.9317],
    ['40 psf', 'kg_per_m2', us, 195.297],
    ['55 F', 'C', metric, 12.7778],
    ['55', 'C', us, 12.7778],
    ['20 %', 'share', us, 0.2],
    ['20', 'share', us, 0.2],
    ['2 h 30 min', 'min', us, 150],
    ['-3 C', 'C', metric, -3],
  ])('%s in %s for a %s reader', (text, unit, system, expected) => {
    expect(parseQuantity(text, { unit, system })).toBeCloseTo(expected, 3);
  });

  test.each([
    ['', 'empty'],
    ['deep', 'not-a-quantity'],
    ['3 furlongs', 'unknown-unit'],
    ['3 gal', 'other-dimension'],
    ['3 ft 6', 'no-unit'],
    ['1/0 ft', 'not-a-quantity'],
  ])('refuses "%s" at its field', (text, code) => {
    try {
      parseQuantity(text, { unit: 'm', system: us, path: 'depth_m' });
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(InputError);
      expect((error as InputError).faults).toMatchObject([{ path: 'depth_m', code }]);
    }
  });
});

describe('printing for a reader', () => {
  test.each([
    [1.0668, 'm', us, '3 ft 6 in'],
    [0.8, 'm', us, '2 ft 7.5 in'],
    [0.3048, 'm', us, '1 ft'],
    [0.2, 'm', us, '7.75 in'],
    [0.8, 'm', metric, '80 cm'],
    [12.345, 'm', metric, '12.3 m'],
    [151.41647136, 'L', us, '40 gal'],
    [1146.83, 'bulk_L', us, '1.5 yd³'],
    [56.6337, 'bulk_L', us, '2 ft³'],
    [1146.83, 'bulk_L', metric, '1.15 m³'],
    [0.3, 'm_short', us, '11.8 in'],
    [9.290304, 'm2', us, '100 ft²'],
    [18.92706, 'L_per_day', us, '5 gal/day'],
    [7.62, 'mm_per_day', us, '0.3 in/day'],
    [37.85412, 'L_per_min', us, '10 gal/min'],
    [195.297, 'kg_per_m2', us, '40 lb/ft²'],
    [12.7778, 'C', us, '55 °F'],
    [12.7778, 'C', metric, '12.8 °C'],
    [0.2, 'share', us, '20%'],
    [1234.567, 'L', metric, '1,230 L'],
    [0, 'L', metric, '0 L'],
    [48, 'count', us, '48'],
    [2.5, '', us, '2.5'],
    [1, 'days', us, '1 day'],
  ])('%d %s for a %s reader is %s', (value, unit, system, text) => {
    expect(printQuantity(value, unit, system)).toBe(text);
  });
  test('money keeps its minor units', () => {
    expect(printMoney(123_456, 'USD')).toBe('$1,234.56');
    expect(printQuantity(-123_456, 'minor', us, { currency: 'USD' })).toBe('−$1,234.56');
    expect(printQuantity(123_456, 'minor', us)).toBe('1,234.56');
    expect(printQuantity(441, 'minor_per_kg', us, { currency: 'USD' })).toBe('$2.00/lb');
  });
  test('a name tells its unit', () => {
    expect(unitOfName('depth_m')).toBe('m');
    expect(unitOfName('cropUse_L_per_day')).toBe('L_per_day');
    expect(unitOfName('price_minor_per_kg')).toBe('minor_per_kg');
    expect(unitOfName('eto_mm_per_day')).toBe('mm_per_day');
    expect(unitOfName('share')).toBe('share');
    expect(unitOfName('code')).toBeUndefined();
    expect(unitOfName('plants')).toBe('plants');
    expect(symbolForName('soil_L', 'L')).toBe('bulk_L');
    expect(printNamed('depth_m', 0.3048, us)).toBe('12 in');
    expect(printNamed('plants', 48, us)).toBe('48 plants');
    expect(printNumber(0.3048, 'm_short', us)).toBe('12');
  });
});

test('a field left alone gives back what it was shown, to a part in a million', () => {
  const anySymbol = fc.constantFrom(
    'm',
    'm_short',
    'm2',
    'L',
    'bulk_L',
    'kg',
    'g',
    'L_per_min',
    'mm_per_day',
    'kg_per_m2',
    'C',
    'share',
    'kPa',
    'h',
  );
  fc.assert(
    fc.property(
      anySymbol,
      fc.constantFrom(us, metric),
      fc.double({ min: 0.001, max: 100_000, noNaN: true }),
      (unit, system, value) => {
        const back = parseQuantity(printForEntry(value, unit, system), { unit, system });
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(value)) * (unit === 'C' ? 20 : 1));
      },
    ),
  );
});

test('a limit in a message is told in the reader’s units', () => {
  expect(messageFor('The fill stands above the wall: at most 0.3048 m fits.', us)).toBe(
    'The fill stands above the wall: at most 1 ft fits.',
  );
  expect(messageFor('The bag (0.9 m) is wider than its basin. A bag up to 0.5 × 0.7 m fits.', metric)).toBe(
    'The bag (90 cm) is wider than its basin. A bag up to 50 cm × 70 cm fits.',
  );
  expect(messageFor('at most 151.41647136 L fits, 12 beds', us)).toBe('at most 40 gal fits, 12 beds');
});
