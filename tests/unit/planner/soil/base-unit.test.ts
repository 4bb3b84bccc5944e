import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { kgPerBaseUnit, litresPerBaseUnit } from '../../../../planner/soil/base-unit.ts';

const density = fc.double({ min: 20, max: 3000, noNaN: true });
const positive = fc.double({ min: 1e-3, max: 1e5, noNaN: true });
const kept = fc.record({
  baseUnit: fc.constantFrom('L', 'kg', 'count', 'm', 'm2'),
  moistDensity_kg_per_m3: density,
  piece_kg: positive,
});

describe('a material in its base unit', () => {
  test('weighs its volume times its density, however it is kept', () => {
    fc.assert(
      fc.property(kept, (each) => {
        const volume_L = litresPerBaseUnit(each) ?? Number.NaN;
        const mass_kg = kgPerBaseUnit(each) ?? Number.NaN;
        expect(mass_kg / ((volume_L / 1000) * each.moistDensity_kg_per_m3)).toBeCloseTo(1, 9);
      }),
    );
  });

  test('litres to base units and back are the litres', () => {
    fc.assert(
      fc.property(kept, positive, (each, loose_L) => {
        const per = litresPerBaseUnit(each) ?? Number.NaN;
        expect(((loose_L / per) * per) / loose_L).toBeCloseTo(1, 9);
      }),
    );
  });

  test('a cubic metre of water kept by weight is 1000 kg; a 20 kg bag of it holds 20 L', () => {
    expect(litresPerBaseUnit({ baseUnit: 'kg', moistDensity_kg_per_m3: 1000 })).toBeCloseTo(1, 12);
    expect(litresPerBaseUnit({ baseUnit: 'count', moistDensity_kg_per_m3: 1000, piece_kg: 20 })).toBeCloseTo(20, 12);
  });

  test('is not guessed where density or weight of a piece is not known', () => {
    expect(litresPerBaseUnit({ baseUnit: 'kg', moistDensity_kg_per_m3: null })).toBeNull();
    expect(litresPerBaseUnit({ baseUnit: 'count', moistDensity_kg_per_m3: 800 })).toBeNull();
    expect(kgPerBaseUnit({ baseUnit: 'L', moistDensity_kg_per_m3: null })).toBeNull();
    expect(() => litresPerBaseUnit({ baseUnit: 'kg', moistDensity_kg_per_m3: 0 })).toThrow();
  });
});
