import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bedDose_kg } from '../../../../planner/fertility/bed-dose.ts';
import { bufferLime } from '../../../../planner/fertility/buffer-lime.ts';
import {
  effectiveNeutralisingShare,
  limeFinenessShare,
  limingMaterial_kg,
  pureNeutralisingShare,
} from '../../../../planner/fertility/liming-material.ts';
import { limeCredit_kg_per_m2, mehlichLime } from '../../../../planner/fertility/mehlich-lime.ts';
import { textureLime_kg_per_m2 } from '../../../../planner/fertility/texture-lime.ts';
import { convert } from '../../../../planner/units/convert.ts';
import { faultPaths } from '../../../builders/faults-of.ts';
import { soilTables } from '../../../builders/soil-tables.ts';

const table = soilTables.lime_sikora_oregon;
const tonAcre = (rate: number) => convert(rate, 'kg_per_m2', 'us_ton_per_acre');

describe('lime by buffer', () => {
  test('every printed rate is read back (Oregon State EM 9585, Table 1)', () => {
    for (const row of table.rows)
      for (const [target, rate] of Object.entries(row.ton_per_acre))
        expect(tonAcre(bufferLime({ table, bufferPh: row.buffer_ph, targetPh: Number(target) }).lime_kg_per_m2)).toBeCloseTo(
          rate,
          9,
        );
  });
  test('a more acid buffer or a higher target never wants less lime', () => {
    const ph = fc.double({ min: 4.8, max: 6.9, noNaN: true });
    const target = fc.double({ min: 5.6, max: 7.2, noNaN: true });
    fc.assert(
      fc.property(ph, ph, target, target, (a, b, s, t) => {
        const rate = (bufferPh: number, targetPh: number) => bufferLime({ table, bufferPh, targetPh }).lime_kg_per_m2;
        expect(rate(Math.min(a, b), s)).toBeGreaterThanOrEqual(rate(Math.max(a, b), s) - 1e-12);
        expect(rate(a, Math.max(s, t))).toBeGreaterThanOrEqual(rate(a, Math.min(s, t)) - 1e-12);
      }),
    );
  });
  test('outside the table the edge row is held and said so', () => {
    expect(bufferLime({ table, bufferPh: 4.5, targetPh: 6.4 }).heldAtEdge).toBe(true);
    expect(bufferLime({ table, bufferPh: 5.5, targetPh: 6.4 }).heldAtEdge).toBe(false);
  });
  test('soil that meets the target wants none', () => {
    expect(bufferLime({ table, bufferPh: 5.5, targetPh: 6.4, soilPh: 6.5 }).lime_kg_per_m2).toBe(0);
  });
  test('a pH that cannot be is refused at its field', () => {
    expect(faultPaths(() => bufferLime({ table, bufferPh: 65, targetPh: 6.4 }))).toEqual(['bufferPh']);
    expect(faultPaths(() => bufferLime({ table, bufferPh: 6, targetPh: 6.4, soilPh: 14 }))).toEqual(['soilPh']);
  });
});

describe('lime by the Mehlich buffer', () => {
  const input = { targetPh: 6, acidity_meq_per_100cm3: 1.2, credit_kg_per_m2: 0 };
  test('a credit takes off the rate but never below nothing', () => {
    expect(mehlichLime({ ...input, soilPh: 5, credit_kg_per_m2: 5 }).lime_kg_per_m2).toBe(0);
  });
  test('soil at pH 6.6 or above is refused', () => {
    expect(faultPaths(() => mehlichLime({ ...input, soilPh: 6.6 }))).toEqual(['soilPh']);
  });
  test('lime of more than a year ago counts for nothing', () => {
    expect(limeCredit_kg_per_m2({ lastLime_kg_per_m2: 1, monthsSince: 13, soilClass: 'mineral' })).toBe(0);
  });
});

describe('liming materials', () => {
  test('fine, pure calcite is worth what it weighs', () => {
    const fine = limeFinenessShare({ pass20Share: 1, pass60Share: 1, pass100Share: 1 });
    expect(limingMaterial_kg(10, effectiveNeutralisingShare(pureNeutralisingShare('CaCO3'), fine))).toBeCloseTo(10, 9);
  });
  test('a sieve cannot pass more than a coarser one', () => {
    expect(faultPaths(() => limeFinenessShare({ pass20Share: 0.8, pass60Share: 0.9, pass100Share: 0.5 }))).toEqual([
      'pass60Share',
    ]);
  });
  test('a compound that is not known is refused', () => {
    expect(faultPaths(() => pureNeutralisingShare('NaCl'))).toEqual(['compound']);
  });
});

describe('lime by texture', () => {
  const tables = soilTables.lime_by_texture_to_ph_6_5;
  test('nothing at pH 6.5, and the printed figure at pH 5 (10.5 lb per 100 ft2 of loam)', () => {
    expect(textureLime_kg_per_m2({ tables, soilPh: 6.5, texture: 'loam' })).toBe(0);
    expect(convert(textureLime_kg_per_m2({ tables, soilPh: 5, texture: 'loam' }), 'kg_per_m2', 'lb_per_1000ft2')).toBeCloseTo(
      105,
      9,
    );
    expect(convert(textureLime_kg_per_m2({ tables, soilPh: 5, texture: 'sand' }), 'kg_per_m2', 'lb_per_1000ft2')).toBeCloseTo(
      65,
      9,
    );
  });
  test('a texture that no table knows is refused', () => {
    expect(faultPaths(() => textureLime_kg_per_m2({ tables, soilPh: 5, texture: 'peat' }))).toEqual(['texture']);
  });
});

test('two half beds take what the whole bed takes', () => {
  expect(2 * bedDose_kg(0.4, 1.5)).toBeCloseTo(bedDose_kg(0.4, 3), 12);
});
