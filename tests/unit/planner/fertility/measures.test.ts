import fc from 'fast-check';
import { expect, test } from 'vitest';
import { explainDose } from '../../../../planner/fertility/explain-dose.ts';
import { measuredDose, measureFor } from '../../../../planner/fertility/measures.ts';
import { faultPaths } from '../../../builders/faults-of.ts';

const volume = fc.double({ min: 0.001, max: 30, noNaN: true });
const scoop = fc.double({ min: 0.06, max: 2, noNaN: true });

test('a dose in measures misses its volume by at most half a teaspoon', () => {
  fc.assert(
    fc.property(volume, scoop, (volume_L, scoop_L) => {
      expect(Math.abs(measuredDose(volume_L, scoop_L).volume_L - volume_L)).toBeLessThanOrEqual(0.0025 + 1e-5);
    }),
  );
});
test('the measure is never larger than the dose can be counted in', () => {
  fc.assert(
    fc.property(volume, scoop, (volume_L, scoop_L) => {
      const measure = measureFor(volume_L, scoop_L);
      if (measure.name !== 'half teaspoon') expect(volume_L / measure.volume_L).toBeGreaterThanOrEqual(3.99);
    }),
  );
});
test('an empty scoop is refused at its field', () => {
  expect(faultPaths(() => measureFor(1, 0))).toEqual(['scoop_L']);
});

test('the working of a dose ends in its weight; without a density it says to weigh', () => {
  const input = {
    material: 'Feather meal',
    dose_kg: 0.4,
    density_kg_per_m3: 470,
    scoop_L: 0.25,
    area_m2: 3,
    reason: 'blend',
    source: '',
  };
  expect(explainDose(input).result.value).toBe(0.4);
  expect(explainDose({ ...input, density_kg_per_m3: null }).notes.join(' ')).toMatch(/weigh/);
});
