import { describe, expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { calendarText, foldedLine } from '../../../../planner/costs/calendar-text.ts';
import { csvField, csvFields } from '../../../../planner/costs/csv-field.ts';
import { isLotCode, lotCode } from '../../../../planner/costs/lot-code.ts';
import { exemptionFigures, lateBy_days } from '../../../../planner/costs/records.ts';
import { dryMeasure_L, dryMeasuresOf_L, isWeightUnit, netOfUnit_kg } from '../../../../planner/costs/units-of-sale.ts';

describe('the code of a lot', () => {
  test('keeps its rule over many lots of a day; I, O, too long a crop or a short year break it', () => {
    expect(isLotCode('KALE-2026164-A01-12')).toBe(true);
    for (const wrong of [
      'KALIO-2026164-A01',
      'LETTUC-2026164-A01',
      'KALE-26164-A01',
      'KALE-2026164-',
      ' KALE-2026164-A01',
      'KALE-2026164-A01 ',
    ])
      expect(isLotCode(wrong)).toBe(false);
  });

  test('has a word for a crop or bed without letters, and drops accents and signs', () => {
    expect(lotCode({ crop: '', date: '2026-01-05' as IsoDate, place: '-' }, new Set())).toBe('CR-2026005-FARM');
    expect(lotCode({ crop: 'Céleri', date: '2026-01-05' as IsoDate, place: 'a 1' }, new Set())).toBe('CELER-2026005-A1');
  });
});

test('the weight of a unit for one crop says nothing of another', () => {
  const own = [{ cropId: 'kale', unit: 'crate', net_kg: 9 }];
  expect(netOfUnit_kg('crate', 'beet', own)).toBeNull();
  expect(netOfUnit_kg('crate', 'kale', own)).toBe(9);
  expect(['kg', 'oz', 't', 'bunch'].map(isWeightUnit)).toEqual([true, true, true, false]);
});

// NIST Handbook 44, App. C: 4 pecks, 32 dry quarts or 64 dry pints in a bushel of 2150.42 cubic inches
test('a bushel parts into pecks, quarts and pints, whichever bushel it is', () => {
  expect(dryMeasuresOf_L(36)).toEqual({ bushel: 36, peck: 9, dryQuart: 1.125, dryPint: 0.5625, carton: 40 });
  for (const [name, litres] of Object.entries(dryMeasuresOf_L(35.23907016688)))
    expect(dryMeasure_L[name as keyof typeof dryMeasure_L]).toBeCloseTo(litres, 12);
});

describe('records', () => {
  test('sales to others as large as to qualified buyers do not make them the lesser; at the limit is not under it', () => {
    const years = [
      { qualified_minor: 30, others_minor: 20 },
      { qualified_minor: 10, others_minor: 0 },
    ];
    expect(exemptionFigures(years, 30)).toEqual({
      meanQualified_minor: 20,
      meanOthers_minor: 10,
      meanAll_minor: 30,
      mostlyQualified: true,
      underLimit: false,
    });
    expect(exemptionFigures([{ qualified_minor: 10, others_minor: 10 }], 40).mostlyQualified).toBe(false);
  });

  test('one entered the same day or before is not late', () => {
    const of = (entered: string) => lateBy_days('2026-06-10' as IsoDate, entered as IsoDate);
    expect(['2026-06-09', '2026-06-10', '2026-06-13'].map(of)).toEqual([0, 0, 3]);
  });
});

// RFC 4180 section 2, rules 4 to 7
describe('a CSV line', () => {
  test('is quoted only where it must be, a quote in it is doubled', () => {
    expect(['plain', 'a,b', 'say "x"', 'two\nlines', 'two\rlines'].map(csvField)).toEqual([
      'plain',
      '"a,b"',
      '"say ""x"""',
      '"two\nlines"',
      '"two\rlines"',
    ]);
    expect(csvFields('a,,"b ""c"", d",')).toEqual(['a', '', 'b "c", d', '']);
  });

  test('that is broken tells the column', () => {
    expect(() => csvFields('a,"b')).toThrow('Column 3: a quoted field is not closed');
    expect(() => csvFields('a,"b"c')).toThrow('Column 6: something stands after');
  });
});

// RFC 5545 sections 3.1 and 3.3.11
describe('a calendar line', () => {
  test('writes line breaks as a backslash and n', () => {
    expect(calendarText('sow\r\nweed\rpick\nsell; eat')).toBe('sow\\nweed\\npick\\nsell\\; eat');
  });

  test.each([
    ['x', 1],
    ['é', 2],
    ['€', 3],
    ['🌱', 4],
  ])('of %s holds as many as fit in 75 octets, %d each', (sign, octets) => {
    const fits = Math.floor(75 / octets);
    expect(foldedLine(sign.repeat(fits))).toBe(sign.repeat(fits));
    expect(foldedLine(sign.repeat(fits + 1))).toBe(`${sign.repeat(fits)}\r\n ${sign}`);
  });

  test('goes on with a space that counts', () => {
    expect(foldedLine('x'.repeat(75 + 74 + 1)).split('\r\n')).toEqual(['x'.repeat(75), ` ${'x'.repeat(74)}`, ' x']);
  });
});
