import { describe, expect, test } from 'vitest';
import { type CropFact, knownFacts, numberOf } from '../../../../planner/crops/crop-facts.ts';
import { cropOfName } from '../../../../planner/crops/crop-names.ts';
import { knownSourceKeys, printedSource } from '../../../../planner/crops/crop-sources.ts';
import { emergenceAt, emergenceDay } from '../../../../planner/crops/emergence.ts';
import { explainNitrogenRemoval, removalOf } from '../../../../planner/crops/removal.ts';
import { requiredFact } from '../../../../planner/crops/required-fact.ts';
import { relativeYield_share } from '../../../../planner/crops/salt-tolerance.ts';
import { diseaseOfName, diseaseRests, mayReturn } from '../../../../planner/season/rotation.ts';

const fact = (change: Partial<CropFact>): CropFact => ({
  name: 'maturity_min_days',
  varietyId: null,
  number: 60,
  words: null,
  origin: 'library',
  source: 'NDSU_H912',
  ...change,
});

describe('what is known of a crop', () => {
  test("the grower's own stands over the records, and these over the library", () => {
    const facts = [fact({}), fact({ number: 64, origin: 'learned' }), fact({ number: 66, origin: 'own' })];
    expect(numberOf(knownFacts(facts, null), 'maturity_min_days')).toBe(66);
    expect(numberOf(knownFacts(facts.slice(0, 2), null), 'maturity_min_days')).toBe(64);
  });
  test("a variety's figure goes before the crop's, and only for that variety", () => {
    const facts = [fact({ number: 66, origin: 'own' }), fact({ number: 50, origin: 'learned', varietyId: 'v1' })];
    expect(numberOf(knownFacts(facts, 'v1'), 'maturity_min_days')).toBe(50);
    expect(numberOf(knownFacts(facts, 'v2'), 'maturity_min_days')).toBe(66);
  });
  test('what is blank is asked for where it is needed, by the crop and the field', () => {
    expect(() => requiredFact(knownFacts([], null), 'maturity_min_days', 'Kale')).toThrow(/Kale: the days to maturity/);
  });
  test('every source key of the library has a name, and its mark is said', () => {
    expect(knownSourceKeys).toContain('CFR_201_31');
    expect(printedSource('KNOTT~m')).toMatch(/from memory/);
    expect(printedSource('PRACTICE~p')).toBe('common practice, no source');
  });
  test('a plural or a market name finds its crop', () => {
    const crops = [
      { id: 'muskmelon', name: 'Muskmelon (cantaloupe)' },
      { id: 'beet', name: 'Beet' },
    ];
    expect(cropOfName(crops, 'Cantaloupe')?.id).toBe('muskmelon');
    expect(cropOfName(crops, 'beets')?.id).toBe('beet');
    expect(cropOfName(crops, 'moon flower')).toBeUndefined();
  });
});

describe('emergence, removal, salt', () => {
  test('warmer soil brings carrots up sooner up to the optimum; outside the table it says so', () => {
    const days = [6, 10, 15, 20]
      .map((soil_C) => emergenceAt('carrot', soil_C))
      .flatMap((each) => (each.state === 'comes-up' ? each.days : []));
    expect([...days].sort((a, b) => b - a)).toEqual(days);
    expect(emergenceAt('carrot', 2).state).toBe('too-cold');
    expect(emergenceAt('lettuce-leaf', 34).state).toBe('too-hot');
    expect(emergenceDay('radish', [20, 20, 20, 20, 20])).toBe(4);
    expect(emergenceDay('radish', [2, 2, 2])).toBeNull();
  });
  test('twice the protein takes twice the nitrogen, and the working says the same', () => {
    const input = { protein_kg_per_kg: 0.01, phosphorus_kg_per_kg: 0.0004, potassium_kg_per_kg: 0.003 };
    expect(removalOf({ ...input, protein_kg_per_kg: 0.02 }).n_kg_per_kg).toBeCloseTo(2 * removalOf(input).n_kg_per_kg, 12);
    expect(explainNitrogenRemoval(input).result.value).toBe(removalOf(input).n_kg_per_kg);
  });
  test('no salt costs nothing and much salt costs all, never more', () => {
    const crop = { threshold_dS_per_m: 1, slope_share_per_dS_per_m: 0.19 };
    expect(relativeYield_share({ ...crop, ece_dS_per_m: 0.5 })).toBe(1);
    expect(relativeYield_share({ ...crop, ece_dS_per_m: 20 })).toBe(0);
    expect(() => relativeYield_share({ ...crop, ece_dS_per_m: -1 })).toThrow(/ece_dS_per_m/);
  });
});

describe('rotation', () => {
  test('a family never seen in the bed may come, one too soon may not', () => {
    expect(mayReturn(2027, null, 3)).toBe(true);
    expect(mayReturn(2027, 2024, 3)).toBe(true);
    expect(mayReturn(2027, 2025, 3)).toBe(false);
  });
  test('every disease is found by its own name', () => {
    for (const each of diseaseRests) expect(diseaseOfName(each.disease)).toBe(each);
    expect(diseaseOfName('rain')).toBeUndefined();
  });
});
