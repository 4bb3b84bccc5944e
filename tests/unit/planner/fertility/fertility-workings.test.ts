import { expect, test } from 'vitest';
import { explainCompostMix } from '../../../../planner/fertility/compost-plan.ts';
import { explainDose } from '../../../../planner/fertility/explain-dose.ts';
import { explainReading } from '../../../../planner/fertility/explain-reading.ts';
import { explainToFeed } from '../../../../planner/fertility/nutrient-budget.ts';
import { noNutrients } from '../../../../planner/fertility/nutrients.ts';
import { explainPhPlan, type PhPlanInput } from '../../../../planner/fertility/ph-plan.ts';
import { explainTeaBatch } from '../../../../planner/fertility/tea-batch.ts';
import { asRead } from '../../../builders/as-read.ts';
import { soilTables } from '../../../builders/soil-tables.ts';

const dose = {
  material: 'Meal',
  dose_kg: 0.47517,
  density_kg_per_m3: 470,
  scoop_L: 0.25,
  area_m2: 3,
  reason: 'the blend',
  source: 'the maker’s sheet',
};

test('a dose: 0.47517 kg of 470 kg/m3 is 1.011 L, measured as four scoops and two teaspoons', () => {
  const working = explainDose(dose);
  expect(asRead(working)).toEqual([
    'm = 0.47517 kg (computed)',
    'ρ = 470 kg_per_m3 (library)',
    'scoop = 0.25 L (entry)',
    'm ÷ A -> 0.15839 kg_per_m2',
    'm ÷ ρ -> 1.011 L',
    'whole and quarter scoops, spoons, teaspoons -> 1.01 L',
    'result 0.47517 kg, notes 1',
  ]);
  expect(working.symbols.map((each) => each.origin.text)).toContain('the maker’s sheet');
  expect(working.sources).toEqual(['the maker’s sheet']);
});
test('a dose without density, bed or source says only what is known', () => {
  const bare = { ...dose, density_kg_per_m3: null, area_m2: null, source: '' };
  const lines = ['m = 0.47517 kg (computed)', 'scoop = 0.25 L (entry)', 'result 0.47517 kg, notes 1'];
  expect(asRead(explainDose(bare))).toEqual(lines);
  expect(asRead(explainDose({ ...bare, area_m2: 0 }))).toEqual(lines);
  expect(asRead(explainDose({ ...dose, source: '' }))).toHaveLength(7);
});

test('a reading stands against the bounds of its method, Olsen P 15 and 25 ppm (University of California)', () => {
  const working = explainReading({ nutrient: 'P', method: 'olsen', entered: '20 ppm', value_mg_per_kg: 20 });
  expect(asRead(working)).toEqual([
    'x = 20 ppm (entry)',
    '< = 15 ppm (source)',
    '< = 25 ppm (source)',
    'x against the bounds -> 20 ppm',
    'result 20 ppm, notes 2',
  ]);
  expect(working.sources.join()).toMatch(/University of California/);
  expect(working.steps[0]?.text).toMatch(/medium/);
});
test('a class of two words is read as two', () => {
  const working = explainReading({ nutrient: 'P', method: 'mehlich-3', entered: '10 ppm', value_mg_per_kg: 10 });
  expect(working.steps[0]?.text).toMatch(/very low$/);
  expect(working.symbols[1]?.name).toBe('very low');
});
test('a reading without a scale has neither bounds nor a source', () => {
  const working = explainReading({ nutrient: 'B', method: 'olsen', entered: '1 ppm', value_mg_per_kg: 1 });
  expect(working.symbols.map((each) => each.symbol)).toEqual(['x']);
  expect(working.sources).toEqual([]);
  expect(working.result).toEqual({ value: 1, unit: 'ppm' });
});

// 100 kg at 80 % water and 50 kg at 20 %: 90 of 150 kg are water. N 0.8 and 0.4 kg, C 12 and 24 kg: C:N 30
test('a heap: mass, moisture and C:N', () => {
  const working = explainCompostMix([
    { name: 'wet', part_kg: 100, moistureShare: 0.8, nShareOfDry: 0.04, carbonToNitrogen: 15 },
    { name: 'dry', part_kg: 50, moistureShare: 0.2, nShareOfDry: 0.01, carbonToNitrogen: 60 },
  ]);
  expect(asRead(working)).toEqual([
    'Q = 100 kg (library)',
    'Q = 50 kg (library)',
    'Σ Q -> 150 kg',
    'Σ Q M / Σ Q -> 0.6 share',
    'result 30, notes 1',
  ]);
  expect(working.symbols.map((each) => each.name)).toEqual(['wet: C:N 15, moisture 80 %', 'dry: C:N 60, moisture 20 %']);
});

test('what is to be fed: each need and supply, their sums, what is left', () => {
  const planting = { area_m2: 4, by: 'rate' as const };
  const plantings = [
    { ...planting, name: 'kale', basis: 'handbook', need: { ...noNutrients, N: 0.06 } },
    { ...planting, name: 'leek', basis: 'handbook', need: { ...noNutrients, N: 0.05 } },
  ];
  const credits = [
    { kind: 'legumes' as const, name: 'clover', source: 'bulletin', brings: { ...noNutrients, N: 0.02 } },
    { kind: 'water' as const, name: 'well', source: 'definition', brings: { ...noNutrients, N: 0.01 } },
  ];
  const working = explainToFeed('N', 4, plantings, credits);
  expect(asRead(working)).toEqual([
    'A = 4 m2 (computed)',
    'need 1 = 0.06 kg (source)',
    'need 2 = 0.05 kg (source)',
    'supply 1 = 0.02 kg (source)',
    'supply 2 = 0.01 kg (source)',
    'kale + leek -> 0.11 kg',
    'clover + well -> 0.03 kg',
    'result 0.08 kg, notes 1',
  ]);
  expect(working.sources).toEqual(['handbook', 'bulletin', 'definition']);
  expect(explainToFeed('P2O5', 4, plantings, credits).steps[0]?.text).not.toBe(working.steps[0]?.text);
});

const plan: PhPlanInput = {
  tables: soilTables,
  kind: 'media',
  soilPh: 5,
  bufferPh: null,
  bufferMethod: null,
  texture: 'loam',
  targetPh: 6,
  area_m2: 2,
  depth_m: 0.3,
  limeSince_kg_per_m2: 0,
  limeWorthShare: 0.9,
  sulfurShare: 0.8,
};
test('a pH plan of lime: 2.25 kg/m3 over 0.3 m, 2 m2 of it, over the worth', () => {
  const working = explainPhPlan(plan);
  expect(asRead(working)).toEqual([
    'pH = 5 (entry)',
    'target = 6 (entry)',
    'D = 0.3 m (computed)',
    'A = 2 m2 (computed)',
    'worth = 0.9 share (entry)',
    'table(BpH, target) × D ÷ table depth -> 0.675 kg_per_m2',
    'rate × A -> 1.35 kg',
    'result 1.5 kg, notes 1',
  ]);
  expect(working.title).toMatch(/Lime/);
});
test('a pH plan of sulfur: its own worth; a reading outside the table is noted; the buffer pH is shown', () => {
  const working = explainPhPlan({ ...plan, kind: 'soil', soilPh: 8.6, targetPh: 6.5, bufferPh: 7 });
  expect(working.title).toMatch(/Sulfur/);
  expect(asRead(working)).toContain('worth = 0.8 share (entry)');
  expect(asRead(working)).toContain('BpH = 7 (entry)');
  expect(working.notes).toHaveLength(2);
  expect(working.steps[0]?.text).toMatch(/texture table$/);
});
test('a pH at its target wants nothing, and rests on nothing', () => {
  const working = explainPhPlan({ ...plan, targetPh: 5 });
  expect([working.result, working.sources]).toEqual([{ value: 0, unit: 'kg' }, []]);
  expect(working.steps[0]?.text).toMatch(/no method$/);
});

test('a tea batch: 60 m2 at 1 L, one part in five, 0.06 kg of compost to the litre', () => {
  const input = { area_m2: 60, drench_L_per_m2: 1, teaParts: 1, waterParts: 4, compost_kg_per_L: 0.06 };
  expect(asRead(explainTeaBatch(input))).toEqual([
    'A = 60 m2 (computed)',
    'r = 1 L_per_m2 (entry)',
    't = 1 (entry)',
    'w = 4 (entry)',
    'c = 0.06 kg_per_L (practice)',
    'A × r -> 60 L',
    'A × r − tea -> 48 L',
    'tea × c -> 0.72 kg',
    'result 12 L, notes 2',
  ]);
});
