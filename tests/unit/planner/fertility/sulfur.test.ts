import fc from 'fast-check';
import { expect, test } from 'vitest';
import { freeLimeSulfur_kg_per_m2, sulfurRate, sulfurTexture } from '../../../../planner/fertility/sulfur.ts';
import { faultPaths } from '../../../builders/faults-of.ts';
import { soilTables } from '../../../builders/soil-tables.ts';

const tables = { toPh4_5: soilTables.sulfur_to_ph_4_5_lb_per_acre, toPh6_5: soilTables.sulfur_to_ph_6_5_lb_per_acre };
const rate = (soilPh: number, targetPh: number, texture: 'sand' | 'loam' | 'clay' = 'loam') =>
  sulfurRate({ ...tables, soilPh, targetPh, texture }).sulfur_kg_per_m2;

test('two steps down take what one step takes, below pH 7', () => {
  fc.assert(
    fc.property(fc.double({ min: 5, max: 7, noNaN: true }), fc.double({ min: 4.6, max: 5, noNaN: true }), (from, by) => {
      expect(rate(from, by) + rate(by, 4.5)).toBeCloseTo(rate(from, 4.5), 9);
    }),
  );
});
test('clay takes more than sand, and a soil at its target takes none', () => {
  expect(rate(6.5, 5.5, 'clay')).toBeGreaterThan(rate(6.5, 5.5, 'sand'));
  expect(rate(6, 6.2)).toBe(0);
});
test('one percent of free lime in a 2,000,000 lb slice takes 6,406 lb of sulfur an acre (stoichiometry)', () => {
  const slice_kg_per_m2 = 224.17;
  expect(freeLimeSulfur_kg_per_m2(0.01, slice_kg_per_m2) / slice_kg_per_m2).toBeCloseTo(0.003203, 6);
});
test('textures of the trade fall into the three of the table', () => {
  expect(['sandy-loam', 'clay-loam', 'silt-loam'].map(sulfurTexture)).toEqual(['sand', 'clay', 'loam']);
});
test('a target below the table is refused at its field', () => {
  expect(faultPaths(() => rate(6.5, 3.8))).toEqual(['targetPh']);
});
