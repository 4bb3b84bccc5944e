import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dateOfDay, type IsoDate } from '../../../../planner/calendar.ts';
import { calendarLine } from '../../../../planner/costs/calendar-text.ts';
import { chanceOfCover, explainChance, tornado } from '../../../../planner/costs/chance.ts';
import { csvField, csvFields } from '../../../../planner/costs/csv-field.ts';
import { isLotCode, lotCode } from '../../../../planner/costs/lot-code.ts';
import { packOut } from '../../../../planner/costs/pack-out.ts';
import { exemptionFigures, keepUntil } from '../../../../planner/costs/records.ts';
import { productSpread, triangleSpread } from '../../../../planner/costs/uncertainty.ts';
import { netOfUnit_kg, netWeight_kg, weighedUnit } from '../../../../planner/costs/units-of-sale.ts';

describe('lots', () => {
  test('the code of a lot names crop, day and bed', () => {
    expect(lotCode({ crop: 'Lettuce, leaf', date: '2026-06-13' as IsoDate, place: 'B-14' }, new Set())).toBe('LETTU-2026164-B14');
  });

  test('a second lot of the day gets a run number, and no code is given twice', () => {
    const taken = new Set<string>();
    for (let n = 0; n < 5; n += 1) taken.add(lotCode({ crop: 'Kale', date: '2026-06-13' as IsoDate, place: 'A-01' }, taken));
    expect([...taken]).toEqual([
      'KALE-2026164-A01',
      'KALE-2026164-A01-2',
      'KALE-2026164-A01-3',
      'KALE-2026164-A01-4',
      'KALE-2026164-A01-5',
    ]);
  });

  test('every code keeps the rule, whatever crop and bed are called', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), fc.integer({ min: 0, max: 40_000 }), (crop, place, day) => {
        expect(isLotCode(lotCode({ crop, date: dateOfDay(day), place }, new Set()))).toBe(true);
      }),
    );
  });
});

describe('units of sale', () => {
  const own = [
    { cropId: null, unit: 'bunch', net_kg: 0.3 },
    { cropId: 'kale', unit: 'bunch', net_kg: 0.25 },
  ];

  test('the crop’s own weight comes before the common one, and a weight unit needs none', () => {
    expect(netOfUnit_kg('bunch', 'kale', own)).toBe(0.25);
    expect(netOfUnit_kg('bunch', 'beet', own)).toBe(0.3);
    expect(netOfUnit_kg('lb', 'beet', own)).toBe(0.45359237);
    expect(netOfUnit_kg('stem', 'zinnia', own)).toBeNull();
  });

  test('a unit without weight is refused at the unit', () => {
    expect(() => netWeight_kg(3, null, 'stem')).toThrow('The weight of one stem is not known');
    expect(weighedUnit([0.2, 0.3])).toEqual({ net_kg: 0.25, weighed: 2 });
    expect(() => weighedUnit([])).toThrow('Weigh at least one');
  });

  test('what is packed is never more than what was harvested', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, (cullShare, unsoldShare) => {
        const found = packOut({ harvested_kg: 100, cullShare, unsoldShare });
        expect(found.sold_kg).toBeLessThanOrEqual(found.packed_kg);
        expect(found.packed_kg).toBeLessThanOrEqual(100);
      }),
    );
  });
});

describe('records', () => {
  test('a record of 29 February is kept to the 28th, or to the next 29th', () => {
    expect(keepUntil('2024-02-29' as IsoDate, 5)).toBe('2029-02-28');
    expect(keepUntil('2024-02-29' as IsoDate, 4)).toBe('2028-02-29');
  });

  test('the yearly review gives means and no verdict of its own', () => {
    expect(exemptionFigures([{ qualified_minor: 10, others_minor: 20 }], 40)).toMatchObject({
      mostlyQualified: false,
      underLimit: true,
    });
    expect(() => exemptionFigures([], 40)).toThrow();
  });

  test('any text goes through CSV and comes back', () => {
    fc.assert(
      fc.property(fc.array(fc.string(), { minLength: 1 }), (fields) => {
        expect(csvFields(fields.map(csvField).join(','))).toEqual(fields);
      }),
    );
    expect(() => csvFields('a,"b')).toThrow('not closed');
    expect(() => csvFields('"a"b,c')).toThrow('after a closing quote');
  });

  test('no folded line is longer than 75 octets and unfolding gives the line back', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (text) => {
        const clean = text.replace(/[\r\n]/g, '');
        const folded = calendarLine('NOTE', clean);
        for (const line of folded.split('\r\n')) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
        expect(folded.replaceAll('\r\n ', '')).toBe(`NOTE:${clean.replace(/[\\;,]/g, (sign) => `\\${sign}`)}`);
      }),
    );
  });
});

describe('uncertainty', () => {
  const input = {
    sold: { low: 60, typical: 100, high: 140 },
    price_minor_per_unit: { low: 200, typical: 250, high: 300 },
    fixed_minor: 15_000,
    following_minor_per_unit: 20,
    correlation: 0,
    draws: 40_000,
    seed: 7,
  };

  test('the simulation meets the exact mean and spread of a product', () => {
    const yields = triangleSpread(60, 100, 140);
    const kept = triangleSpread(180, 230, 280);
    const exact = productSpread(yields, kept);
    // the standard error of the mean of n draws is sd / sqrt(n): five of them
    expect(Math.abs(chanceOfCover(input).mean_minor - (exact.mean - 15_000))).toBeLessThan((5 * exact.sd) / Math.sqrt(40_000));
  });

  test('the same seed draws the same', () => {
    expect(chanceOfCover(input)).toEqual(chanceOfCover(input));
    expect(chanceOfCover({ ...input, seed: 8 })).not.toEqual(chanceOfCover(input));
  });

  test('a price that falls when the yield is good narrows the spread', () => {
    const wide = chanceOfCover(input);
    const narrow = chanceOfCover({ ...input, correlation: -1 });
    expect(narrow.p90_minor - narrow.p10_minor).toBeLessThan(wide.p90_minor - wide.p10_minor);
  });

  test('without spread the chance is none or all', () => {
    const sure = {
      ...input,
      sold: { low: 100, typical: 100, high: 100 },
      price_minor_per_unit: { low: 250, typical: 250, high: 250 },
    };
    expect(chanceOfCover(sure).covers_share).toBe(1);
    expect(chanceOfCover({ ...sure, fixed_minor: 23_001 }).covers_share).toBe(0);
  });

  test('the largest swing stands first and the working ends in the chance', () => {
    const bars = tornado({
      sold: input.sold,
      price_minor_per_unit: input.price_minor_per_unit,
      fixed_minor: { low: 14_000, typical: 15_000, high: 16_000 },
      following_minor_per_unit: { low: 20, typical: 20, high: 20 },
    });
    expect(bars.map((bar) => bar.cause)).toEqual(['Yield', 'Price', 'Cost that stays', 'Cost of each unit']);
    expect(explainChance(input, 'kg').result.value).toBe(chanceOfCover(input).covers_share);
    expect(() => chanceOfCover({ ...input, sold: { low: 5, typical: 4, high: 6 } })).toThrow('must rise');
  });
});
