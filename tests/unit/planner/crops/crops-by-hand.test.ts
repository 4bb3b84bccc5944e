import { describe, expect, test } from 'vitest';
import { type CropFact, knownFacts, numberOf, wordsOf } from '../../../../planner/crops/crop-facts.ts';
import { cropOfName } from '../../../../planner/crops/crop-names.ts';
import { markOfSource, printedSource } from '../../../../planner/crops/crop-sources.ts';
import { daysBetweenColumns, emergenceAt, emergenceDay } from '../../../../planner/crops/emergence.ts';
import { familyGroup } from '../../../../planner/crops/families.ts';
import { leastGermination_share } from '../../../../planner/crops/germination-standard.ts';
import { isHardinessClass } from '../../../../planner/crops/hardiness.ts';
import { explainNitrogenRemoval, removalOf } from '../../../../planner/crops/removal.ts';
import { originOfFact, requiredFact } from '../../../../planner/crops/required-fact.ts';
import { relativeYield_share } from '../../../../planner/crops/salt-tolerance.ts';
import { yieldAlongRow_kg_per_m, yieldOfPlants, yieldOfRows_kg_per_m2 } from '../../../../planner/crops/yields.ts';
import { celsiusOf } from '../../../../planner/units/convert.ts';
import { asRead } from '../../../builders/as-read.ts';
import { testRefusals } from '../../../builders/faults-of.ts';

const fact = (change: Partial<CropFact>): CropFact => ({
  name: 'root_depth_m',
  varietyId: null,
  number: 0.6,
  words: null,
  origin: 'library',
  source: 'KNOTT~m',
  ...change,
});

describe('facts', () => {
  test('the nearer to the field stands, in whatever order they come; of equals the first', () => {
    const facts = [fact({ number: 1, origin: 'own' }), fact({ number: 2, origin: 'learned' }), fact({ number: 3 })];
    for (const order of [facts, facts.toReversed()]) expect(numberOf(knownFacts(order, null), 'root_depth_m')).toBe(1);
    expect(numberOf(knownFacts([fact({ number: 4 }), fact({ number: 5 })], null), 'root_depth_m')).toBe(4);
    // the library's figure for a variety goes before the grower's own for the crop
    const both = [fact({ number: 6, varietyId: 'v' }), fact({ number: 7, origin: 'own' })];
    for (const order of [both, both.toReversed()]) expect(numberOf(knownFacts(order, 'v'), 'root_depth_m')).toBe(6);
  });
  test('a fact keeps its words, source and whether it is the variety’s', () => {
    const known = knownFacts([fact({ name: 'season', number: null, words: 'cool', varietyId: 'v', origin: 'own' })], 'v');
    expect([...known]).toEqual([['season', { number: null, words: 'cool', origin: 'own', source: 'KNOTT~m', ofVariety: true }]]);
    expect([wordsOf(known, 'season'), wordsOf(known, 'sow_method'), numberOf(known, 'height_m')]).toEqual(['cool', null, null]);
    expect(knownFacts([fact({})], null).get('root_depth_m')?.ofVariety).toBe(false);
  });
  test('where a fact came from: an entry, the records, the library, or nowhere yet', () => {
    const of = (change: Partial<CropFact>) =>
      originOfFact(knownFacts([fact({ varietyId: 'v', ...change })], 'v'), 'root_depth_m');
    expect(of({ origin: 'own' }).kind).toBe('entry');
    expect(of({ origin: 'own' }).text).not.toBe(of({ origin: 'own', varietyId: null }).text);
    expect(of({ origin: 'learned', source: '2025' })).toMatchObject({ kind: 'source', text: expect.stringMatching(/2025/) });
    expect(of({})).toEqual({ kind: 'library', text: printedSource('KNOTT~m') });
    expect(originOfFact(new Map(), 'root_depth_m').kind).toBe('entry');
  });
  test('a needed fact that is there is given', () => {
    expect(requiredFact(knownFacts([fact({})], null), 'root_depth_m', 'Kale')).toBe(0.6);
  });
  test('how sure a source is, and its name in full', () => {
    expect(['X~p', 'PRACTICE', 'PRACTICE_2', 'X~m', 'X', '~pX'].map(markOfSource)).toEqual([
      'practice',
      'practice',
      'practice',
      'memory',
      'seen',
      'seen',
    ]);
    expect(printedSource('KNOTT')).toMatch(/^Knott.*Growers$/);
    expect(printedSource('KNOTT~m')).toMatch(/^Knott.*Growers \(from memory/);
    expect(printedSource('A new book')).toBe('A new book');
  });
});

describe('names', () => {
  const crops = [
    { id: 'bean-bush', name: 'Bean, bush (snap)' },
    { id: 'peas', name: 'Peas' },
    { id: 'globe-amaranth', name: 'Gomphrena' },
    { id: 'as', name: 'As' },
  ];
  test('a key, a full name, a usual name, words for a key, or a plural, however it is written', () => {
    const of = (name: string) => cropOfName(crops, name)?.id;
    expect(of(' BEAN-BUSH ')).toBe('bean-bush');
    expect(of('bean, bush (snap)')).toBe('bean-bush');
    expect(of(' Gomphrena')).toBe('globe-amaranth');
    expect(of('Snap bean')).toBe('bean-bush');
    expect(of('snap beans')).toBe('bean-bush');
    expect(of('Globe Amaranth')).toBe('globe-amaranth');
    expect(of('globe amaranths')).toBe('globe-amaranth');
    expect(of('peas')).toBe('peas');
    expect(of('constructor')).toBeUndefined();
  });
  test('neither a short word nor one without its s is a plural', () => {
    const of = (name: string) =>
      cropOfName(
        [
          { id: 'be', name: 'Be' },
          { id: 'bee', name: 'Bee' },
          { id: 'tom', name: 'Tom' },
        ],
        name,
      )?.id;
    expect([of('bes'), of('bees'), of('toms'), of('tomo')]).toEqual([undefined, 'bee', 'tom', undefined]);
  });
  test('families, hardiness and the legal floor of germination, by their own names only', () => {
    expect([familyGroup('Fabaceae'), familyGroup('Mine'), familyGroup('toString')]).toEqual(['legume', 'Mine', 'toString']);
    expect([isHardinessClass('half-hardy'), isHardinessClass('mild')]).toEqual([true, false]);
    // 7 CFR 201.31: lettuce 80 %, carrot 55 %; rye 70 % by West Virginia's rule
    expect([' Lettuce ', 'CARROT', 'rye', 'zinnia'].map(leastGermination_share)).toEqual([0.8, 0.55, 0.7, null]);
  });
});

describe('emergence (Harrington)', () => {
  const days = (crop: string, soil_F: number) => {
    const at = emergenceAt(crop, celsiusOf(soil_F));
    return at.state === 'comes-up' ? Number(at.days.toFixed(6)) : at.state;
  };
  test('as tabled at each column, ends included; colder and hotter is none', () => {
    expect([41, 50, 59, 68, 77, 86].map((soil_F) => days('lettuce', soil_F))).toEqual([15, 7, 4, 3, 2, 2]);
    expect([days('lettuce', 40.9), days('lettuce', 86.1)]).toEqual(['too-cold', 'too-hot']);
    expect([days('okra', 58.9), days('okra', 59), days('okra', 95), days('okra', 95.1)]).toEqual(['too-cold', 27, 6, 'too-hot']);
    expect([days('tomato-cherry', 68), days('moon flower', 68), days('constructor', 68)]).toEqual([
      8,
      'not-tabled',
      'not-tabled',
    ]);
  });
  test('between two columns the rates are mixed: halfway from 6 to 3 days is 4', () => {
    expect(daysBetweenColumns(6, 3, 0.5)).toBeCloseTo(4, 9);
    expect(days('corn, sweet', 72.5)).toBeCloseTo(2 / (1 / 7 + 1 / 4), 5);
    expect(days('corn, sweet', 70.25)).toBeCloseTo(1 / (0.75 / 7 + 0.25 / 4), 5);
  });
  test('the day on which the parts add up to one; a cold day adds nothing', () => {
    const at = (...soil_F: number[]) => emergenceDay('turnip', soil_F.map(celsiusOf));
    expect([at(77), at(68, 68), at(68, 41, 68), at(59, 59), at()]).toEqual([1, 2, 3, null, null]);
    expect(emergenceDay('moon flower', [20, 20])).toBeNull();
  });
});

describe('what leaves and what is left', () => {
  const input = { protein_kg_per_kg: 0.0125, phosphorus_kg_per_kg: 0.001, potassium_kg_per_kg: 0.01 };
  test('nitrogen, phosphate and potash of a kilogram, and the working of the first', () => {
    const { n_kg_per_kg, p2o5_kg_per_kg, k2o_kg_per_kg } = removalOf(input);
    expect(n_kg_per_kg).toBeCloseTo(0.002, 12);
    expect(p2o5_kg_per_kg).toBeCloseTo(0.0022914, 12);
    expect(k2o_kg_per_kg).toBeCloseTo(0.012046, 12);
    expect(asRead(explainNitrogenRemoval(input))).toEqual([
      'protein = 0.0125 kg_per_kg (source)',
      'N = 0.002 kg_per_kg (computed)',
      '0.0125 / 6.25 -> 0.002 kg_per_kg',
      'result 0.002 kg_per_kg, notes 1',
    ]);
  });
  test('salt: nothing to the threshold, the slope beyond it', () => {
    const of = (ece_dS_per_m: number) =>
      relativeYield_share({ ece_dS_per_m, threshold_dS_per_m: 1, slope_share_per_dS_per_m: 0.2 });
    expect([of(1), of(2), of(6)]).toEqual([1, 0.8, 0]);
  });
  test('yields by row, along it and by plant', () => {
    expect([yieldOfRows_kg_per_m2(3, 0.5), yieldAlongRow_kg_per_m(30, 10), yieldOfPlants(12, 2.5)]).toEqual([6, 3, 30]);
  });
  testRefusals([
    ['root_depth_m not-known', () => requiredFact(new Map(), 'root_depth_m', 'Kale')],
    ['crop.depth not-known', () => requiredFact(new Map(), 'root_depth_m', 'Kale', 'crop.depth')],
    ['soil_C too-large (60 C)', () => emergenceAt('lettuce', 61)],
    ['low_days too-small (0.1 days)', () => daysBetweenColumns(0, 3, 0.5)],
    ['high_days too-large (1000 days)', () => daysBetweenColumns(3, 1001, 0.5)],
    ['share too-large (1)', () => daysBetweenColumns(3, 3, 1.5)],
    ['protein_kg_per_kg too-large (1 kg/kg)', () => removalOf({ ...input, protein_kg_per_kg: 1.5 })],
    ['phosphorus_kg_per_kg too-small (0 kg/kg)', () => removalOf({ ...input, phosphorus_kg_per_kg: -1 })],
    ['potassium_kg_per_kg too-large (1 kg/kg)', () => removalOf({ ...input, potassium_kg_per_kg: 1.5 })],
    [
      'ece_dS_per_m too-large (50 dS/m)',
      () => relativeYield_share({ ece_dS_per_m: 51, threshold_dS_per_m: 1, slope_share_per_dS_per_m: 0.1 }),
    ],
    [
      'threshold_dS_per_m too-large (20 dS/m)',
      () => relativeYield_share({ ece_dS_per_m: 5, threshold_dS_per_m: 21, slope_share_per_dS_per_m: 0.1 }),
    ],
    [
      'slope_share_per_dS_per_m too-large (1 1/(dS/m))',
      () => relativeYield_share({ ece_dS_per_m: 5, threshold_dS_per_m: 1, slope_share_per_dS_per_m: 2 }),
    ],
    ['yield_kg_per_m too-large (1000 kg/m)', () => yieldOfRows_kg_per_m2(1001, 1)],
    ['rowSpacing_m not-positive (0 m)', () => yieldOfRows_kg_per_m2(1, 0)],
    ['yield_kg too-small (0 kg)', () => yieldAlongRow_kg_per_m(-1, 1)],
    ['row_m not-positive (0 m)', () => yieldAlongRow_kg_per_m(1, 0)],
    ['plants too-small (0)', () => yieldOfPlants(-1, 1)],
    ['perPlant too-large (100000)', () => yieldOfPlants(1, 100_001)],
  ]);
});
