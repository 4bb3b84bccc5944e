import { describe, expect, test } from 'vitest';
import { bedDose_kg, looseVolume_L, wholeScoops } from '../../../../planner/fertility/bed-dose.ts';
import { classOf, readBetween } from '../../../../planner/fertility/between-rows.ts';
import { bufferLime } from '../../../../planner/fertility/buffer-lime.ts';
import { measuredDose, measureFor } from '../../../../planner/fertility/measures.ts';
import { mediaSaltClass, milliequivalents, saltyPartShare, sodiumClass } from '../../../../planner/fertility/media-salts.ts';
import { limeCredit_kg_per_m2, mehlichAcidity_meq_per_100cm3, mehlichLime } from '../../../../planner/fertility/mehlich-lime.ts';
import { type PhPlanInput, phPlan } from '../../../../planner/fertility/ph-plan.ts';
import { sulfurRate } from '../../../../planner/fertility/sulfur.ts';
import { classBounds_mg_per_kg, potassiumCritical_mg_per_kg, testClass } from '../../../../planner/fertility/test-class.ts';
import { testValue_mg_per_kg, unlikelyValue } from '../../../../planner/fertility/test-value.ts';
import { textureLime_kg_per_m2 } from '../../../../planner/fertility/texture-lime.ts';
import { convert } from '../../../../planner/units/convert.ts';
import { soilTables } from '../../../builders/soil-tables.ts';

const lbPerAcre = (rate: number) => convert(rate, 'kg_per_m2', 'lb_per_acre');
const tonPerAcre = (rate: number) => convert(rate, 'kg_per_m2', 'us_ton_per_acre');

describe('a table read between its rows', () => {
  const rows = [
    [6, 30],
    [5, 10],
  ] as const;
  test('rows in any order, a straight line between, the edge row outside', () => {
    expect([4, 5, 5.25, 6, 7].map((x) => readBetween(rows, x))).toEqual([
      { value: 10, outside: 'below' },
      { value: 10, outside: 'no' },
      { value: 15, outside: 'no' },
      { value: 30, outside: 'no' },
      { value: 30, outside: 'above' },
    ]);
  });
  test('one row is read where it stands; no row gives no number', () => {
    expect(readBetween([[5, 10]], 5)).toEqual({ value: 10, outside: 'no' });
    expect(readBetween([], 5)).toEqual({ value: Number.NaN, outside: 'below' });
  });
  test('a class holds its upper bound; beyond the last bound stands the last class', () => {
    const classes = ['low', 'fair', 'high'];
    expect([1, 1.1, 2, 99].map((value) => classOf(value, classes, [1, 2, null]))).toEqual(['low', 'fair', 'fair', 'high']);
    expect(classOf(99, classes, [1, 2])).toBe('high');
    expect(classOf(1, [], [])).toBe('');
  });
});

describe('doses', () => {
  test('a rate for twice the depth of the table is twice the dose', () => {
    expect([bedDose_kg(0.4, 3), bedDose_kg(0.4, 3, 2)]).toEqual([0.4 * 3, 0.4 * 3 * 2]);
    expect(looseVolume_L(0.47, 470)).toBe(1);
  });
  test('1.3 kg in halves of a 0.5 kg scoop: three scoops at least, two and a half at the nearest', () => {
    const up = wholeScoops(1.3, 0.5, 'up', 0.5);
    expect([up.scoops, up.given_kg]).toEqual([3, 1.5]);
    expect(up.missShare).toBeCloseTo(0.2 / 1.3, 12);
    const near = wholeScoops(1.3, 0.5, 'nearest', 0.5);
    expect([near.scoops, near.given_kg]).toEqual([2.5, 1.25]);
    expect(near.missShare).toBeCloseTo(-0.05 / 1.3, 12);
    expect(wholeScoops(0, 0.5, 'up')).toEqual({ scoops: 0, given_kg: 0, missShare: 0 });
    expect(wholeScoops(0.3, 0.1, 'up').scoops).toBe(3);
  });
  test('the measure by the size of the dose, each from its own least', () => {
    const of = (volume_L: number, scoop_L: number) => measureFor(volume_L, scoop_L);
    expect(of(1, 0.25)).toEqual({ name: 'scoop', volume_L: 0.25 });
    expect(of(0.99, 0.25)).toEqual({ name: 'quarter scoop', volume_L: 0.0625 });
    expect(of(0.25, 0.25).name).toBe('quarter scoop');
    expect(of(0.249, 0.25)).toEqual({ name: 'spoon', volume_L: 0.015 });
    expect(of(0.12, 0.25).name).toBe('spoon');
    expect(of(0.119, 0.25)).toEqual({ name: 'teaspoon', volume_L: 0.005 });
    expect(of(0.02, 0.25).name).toBe('teaspoon');
    expect(of(0.019, 0.25)).toEqual({ name: 'half teaspoon', volume_L: 0.0025 });
    // a scoop of four spoons has no quarter worth reading; one of a teaspoon is counted itself
    expect(of(0.06, 0.06).name).toBe('teaspoon');
    expect(of(0.001, 0.005)).toEqual({ name: 'scoop', volume_L: 0.005 });
  });
  test('a volume in scoops and their quarters, spoons of 15 mL, teaspoons of 5 mL and halves', () => {
    expect(measuredDose(0.0175, 0.25)).toEqual({ scoops: 0, spoons: 1, teaspoons: 0.5, volume_L: 0.0175 });
    const more = measuredDose(0.57, 0.25);
    expect([more.scoops, more.spoons, more.teaspoons]).toEqual([2.25, 0, 1.5]);
    expect(more.volume_L).toBeCloseTo(0.57, 12);
    expect(measuredDose(0.0925, 0.25)).toMatchObject({ scoops: 0.25, spoons: 2, teaspoons: 0 });
  });
});

describe('lime', () => {
  const table = soilTables.lime_sikora_oregon;
  test('a target beyond the table is held at its edge and said so; a soil at its target asks no table', () => {
    const { lime_kg_per_m2, heldAtEdge } = bufferLime({ table, bufferPh: 6, targetPh: 7.4 });
    expect(heldAtEdge).toBe(true);
    expect(lime_kg_per_m2).toBe(bufferLime({ table, bufferPh: 6, targetPh: 7.2 }).lime_kg_per_m2);
    expect(bufferLime({ table, bufferPh: 4, targetPh: 7.4, soilPh: 7.4 })).toEqual({
      lime_kg_per_m2: 0,
      tableDepth_m: table.depth_in * 0.0254,
      heldAtEdge: false,
    });
  });
  test('Mehlich acidity ends at the buffer’s own pH, and a soil above its target wants none', () => {
    expect(mehlichAcidity_meq_per_100cm3(6.1)).toBeCloseTo(2, 12);
    expect(mehlichAcidity_meq_per_100cm3(6.9)).toBe(0);
    const above = mehlichLime({ soilPh: 6.2, targetPh: 6, acidity_meq_per_100cm3: 2, credit_kg_per_m2: 0 });
    expect(above).toEqual({ factor: 0, lime_kg_per_m2: 0 });
  });
  test('earlier lime loses 8 % a month on mineral soil, 16 % on organic', () => {
    const left = (soilClass: 'mineral' | 'mineral-organic' | 'organic') =>
      limeCredit_kg_per_m2({ lastLime_kg_per_m2: 2, monthsSince: 5, soilClass });
    expect(left('mineral')).toBeCloseTo(1.2, 12);
    expect(left('mineral-organic')).toBeCloseTo(0.4, 12);
    expect(left('organic')).toBeCloseTo(0.4, 12);
  });
  test('a texture is known in any writing, between two rows of its table', () => {
    const tables = soilTables.lime_by_texture_to_ph_6_5;
    // 15 lb per 100 ft2 at pH 5.0 and 10.5 at 5.5; 150 lb per 1,000 ft2 of clay at pH 5.0
    const clayLoam = textureLime_kg_per_m2({ tables, soilPh: 5.25, texture: ' Clay Loam ' });
    expect(convert(clayLoam, 'kg_per_m2', 'lb_per_1000ft2')).toBeCloseTo(127.5, 9);
    const clay = textureLime_kg_per_m2({ tables, soilPh: 5, texture: 'clay' });
    expect(convert(clay, 'kg_per_m2', 'lb_per_1000ft2')).toBeCloseTo(150, 9);
  });
});

describe('the pH plan by its methods', () => {
  const inches = (count: number) => convert(count, 'in', 'm');
  const input: PhPlanInput = {
    tables: soilTables,
    kind: 'soil',
    soilPh: 5,
    bufferPh: 6.3,
    bufferMethod: 'mehlich',
    texture: 'loam',
    targetPh: 6,
    area_m2: 2,
    depth_m: inches(8),
    limeSince_kg_per_m2: 0,
    limeWorthShare: 0.5,
    sulfurShare: 0.9,
  };
  // North Carolina Department of Agriculture, notes to the Mehlich lime table: Ac 1.2, 1.2 x 1/1.6 = 0.75 ton/acre
  test('Mehlich: 0.75 ton/acre for 8 in, half of it for 4 in', () => {
    const plan = phPlan(input);
    expect(tonPerAcre(plan.rate_kg_per_m2)).toBeCloseTo(0.75, 9);
    expect(plan.method).toMatch(/Mehlich/);
    expect(plan.source).toMatch(/North Carolina/);
    expect(plan.heldAtEdge).toBe(false);
    expect(tonPerAcre(phPlan({ ...input, depth_m: inches(4) }).rate_kg_per_m2)).toBeCloseTo(0.375, 9);
  });
  test('the Mehlich buffer reaches pH 6.6; beyond it texture serves', () => {
    expect(phPlan({ ...input, targetPh: 6.6 }).method).toMatch(/Mehlich/);
    expect(phPlan({ ...input, targetPh: 6.7 }).method).toMatch(/texture/);
    expect(phPlan({ ...input, bufferPh: null }).method).toMatch(/texture/);
    expect(phPlan({ ...input, bufferMethod: null }).method).toMatch(/texture/);
  });
  // Shoemaker, McLean and Pratt 1961, from memory: buffer pH 6.3 to pH 6.5 takes 5.5 ton/acre of 8 in
  test('SMP and Sikora by their own tables and depths, each naming its source', () => {
    const smp = phPlan({ ...input, bufferMethod: 'smp', targetPh: 6.5 });
    expect(tonPerAcre(smp.rate_kg_per_m2)).toBeCloseTo(5.5, 9);
    expect([smp.method, smp.heldAtEdge]).toEqual([expect.stringMatching(/SMP/), false]);
    expect(smp.source).toMatch(/Shoemaker.*from memory$/);
    const table = soilTables.lime_sikora_oregon;
    const sikora = phPlan({ ...input, bufferMethod: 'sikora', targetPh: 6.4, depth_m: inches(table.depth_in) / 2 });
    const full = bufferLime({ table, bufferPh: 6.3, targetPh: 6.4 }).lime_kg_per_m2;
    expect(sikora.rate_kg_per_m2).toBeCloseTo(full / 2, 12);
    expect(sikora.method).toMatch(/Sikora/);
    expect(sikora.source).toBe(table.source);
    expect(phPlan({ ...input, bufferMethod: 'sikora', bufferPh: 4, targetPh: 6.4 }).heldAtEdge).toBe(true);
  });
  test('texture: the way to 6.5 by share, whole beyond it, held below pH 4', () => {
    const rough = { ...input, bufferMethod: null, depth_m: inches(6.67) };
    // loam at pH 5.5: 8 lb per 100 ft2 to pH 6.5; half the way is half
    const lb = (plan: ReturnType<typeof phPlan>) => convert(plan.rate_kg_per_m2, 'kg_per_m2', 'lb_per_1000ft2');
    expect(lb(phPlan({ ...rough, soilPh: 5.5, targetPh: 6.5 }))).toBeCloseTo(80, 9);
    expect(lb(phPlan({ ...rough, soilPh: 5.5, targetPh: 6 }))).toBeCloseTo(40, 9);
    expect(lb(phPlan({ ...rough, soilPh: 5.5, targetPh: 7 }))).toBeCloseTo(80, 9);
    // 0.05 short of 6.5: 4 lb at 6.0 is 0.4 lb here, whole though the target lies 0.2 off
    expect(lb(phPlan({ ...rough, soilPh: 6.45, targetPh: 6.65 }))).toBeCloseTo(4, 9);
    expect(phPlan({ ...rough, soilPh: 3.9 }).heldAtEdge).toBe(true);
    expect(phPlan({ ...rough, soilPh: 4 }).heldAtEdge).toBe(false);
  });
  test('lime in one, two or three parts: over 10 and over 20 lb per 100 ft2 (Penn State, home garden)', () => {
    const media = { ...input, kind: 'media' as const };
    // 2.25 kg/m3: 0.45, 0.675 and 1.35 kg/m2 are 9.2, 13.8 and 27.7 lb per 100 ft2
    expect(phPlan({ ...media, depth_m: 0.2 }).applications).toBe(1);
    expect(phPlan({ ...media, depth_m: 0.3 }).applications).toBe(2);
    expect(phPlan({ ...media, soilPh: 4, depth_m: 0.3 }).applications).toBe(3);
  });
  test('lime put on since the test leaves the method but no dose', () => {
    const covered = phPlan({ ...input, limeSince_kg_per_m2: 5 });
    expect(covered).toMatchObject({ act: 'none', pure_kg: 0, material_kg: 0, rate_kg_per_m2: 0, applications: 0 });
    expect(covered.method).toMatch(/Mehlich/);
    expect(covered.source).toMatch(/North Carolina/);
  });
  test('within 0.15 of the target nothing is done, beyond it something is', () => {
    expect(phPlan({ ...input, soilPh: 5.9 })).toMatchObject({ act: 'none', method: '', source: '', heldAtEdge: false });
    expect(phPlan({ ...input, soilPh: 5.8 }).act).toBe('lime');
    expect(phPlan({ ...input, soilPh: 6.2 }).act).toBe('sulfur');
  });
  test('sulfur: the table’s rate by depth and purity, 20 lb per 1,000 ft2 at a time', () => {
    const plan = phPlan({ ...input, soilPh: 7, targetPh: 6.5, depth_m: inches(6.67) });
    expect(lbPerAcre(plan.rate_kg_per_m2)).toBeCloseTo(150, 9);
    expect(plan.pure_kg).toBeCloseTo(2 * plan.rate_kg_per_m2, 12);
    expect(plan.material_kg).toBeCloseTo(plan.pure_kg / 0.9, 12);
    expect([plan.act, plan.applications, plan.heldAtEdge]).toEqual(['sulfur', 1, false]);
    // 1,350 lb/acre is 31 lb per 1,000 ft2
    const more = phPlan({ ...input, soilPh: 8, targetPh: 7, depth_m: inches(6.67) });
    expect([more.applications, more.heldAtEdge]).toEqual([2, false]);
    expect(phPlan({ ...input, soilPh: 9, targetPh: 7 }).heldAtEdge).toBe(true);
    expect(phPlan({ ...input, soilPh: 8, targetPh: 7, area_m2: 0 }).act).toBe('none');
    expect(phPlan({ ...input, kind: 'media', soilPh: 8, targetPh: 6 })).toMatchObject({ act: 'none', method: 'media' });
  });
});

describe('sulfur by the two tables (loam, lb/acre)', () => {
  const rate = (soilPh: number, targetPh: number) =>
    sulfurRate({
      toPh4_5: soilTables.sulfur_to_ph_4_5_lb_per_acre,
      toPh6_5: soilTables.sulfur_to_ph_6_5_lb_per_acre,
      soilPh,
      targetPh,
      texture: 'loam',
    });
  test.each([
    ['mild: 8.0 to 7.0 is 1500 less 150', 8, 7, 1350],
    ['mild to its own end: 7.0 to 6.5', 7, 6.5, 150],
    ['low: 6.5 to 5.5 is 2020 less 1030', 6.5, 5.5, 990],
    ['low from its last row: 7.0 to 5.5', 7, 5.5, 1530],
    ['across: 7.5 to 6.5, then on to 5.5', 7.5, 5.5, 800 + 2020 - 1030],
    ['whole: 6.0 to 4.5', 6, 4.5, 1540],
  ])('%s', (_, from, to, lb) => {
    expect(lbPerAcre(rate(from, to).sulfur_kg_per_m2)).toBeCloseTo(lb, 6);
    expect(rate(from, to).heldAtEdge).toBe(false);
  });
  test('above the last row that row is held and said so', () => {
    expect(rate(9, 8)).toEqual({ ...rate(8.5, 8), heldAtEdge: true });
    expect(rate(6, 6)).toEqual({ sulfur_kg_per_m2: 0, heldAtEdge: false });
  });
});

describe('salts of a medium', () => {
  test('each method on its own scale, in any writing (University of Massachusetts Extension)', () => {
    const of = (method: string, ec: number) => mediaSaltClass(soilTables.ec_classes_media_ds_m, method, ec);
    expect([of('1:2', 1), of('SME', 1), of(' sme ', 2.1), of('Pour-Through', 9)]).toEqual(['normal', 'low', 'normal', 'extreme']);
  });
  test('a salty part is held to what brings the blend to the limit', () => {
    expect(saltyPartShare(1, 8, 3)).toBeCloseTo(2 / 7, 12);
    expect([saltyPartShare(1, 3, 3), saltyPartShare(3, 3, 3), saltyPartShare(3, 8, 3), saltyPartShare(4, 2, 3)]).toEqual([
      1, 1, 0, 0,
    ]);
  });
  test('milligrams over the mass of a charge; classes of the adsorption ratio', () => {
    const meq = milliequivalents({ sodium_mg_per_L: 22.99, calcium_mg_per_L: 40.08, magnesium_mg_per_L: 36.45 });
    expect(meq.sodium_meq_per_L).toBeCloseTo(1, 9);
    expect(meq.calcium_meq_per_L).toBeCloseTo(2, 9);
    expect(meq.magnesium_meq_per_L).toBeCloseTo(3, 9);
    expect([10, 18, 24, 25].map((sar) => sodiumClass(soilTables.sar_classes, sar))).toEqual([
      'low',
      'medium',
      'high',
      'very high',
    ]);
  });
});

describe('figures of a laboratory', () => {
  const layer = { nutrient: 'K', depth_m: 0.1, bulkDensity_kg_per_m3: 1000 };
  test.each([
    ['ppm', 7, 7],
    ['mg/kg', 7, 7],
    ['mg/L', 7, 7],
    ['%', 0.5, 5000],
    ['meq/100g', 1, 391],
    ['kg/ha', 100, 100],
    ['lb/acre', 100, 112.085],
  ] as const)('%s', (unit, value, mg_per_kg) => {
    expect(testValue_mg_per_kg({ ...layer, unit, value })).toBeCloseTo(mg_per_kg, 3);
  });
  test('a figure is far too high above its limit only', () => {
    expect(unlikelyValue('P', 600, 'ppm')).toBeNull();
    expect(unlikelyValue('P', 601, 'ppm')).toMatchObject({ path: 'P', code: 'unlikely-high' });
    expect(unlikelyValue('P', 601, 'mg/kg')?.message).toMatch(/lb\/acre/);
    expect(unlikelyValue('P', 601, 'lb/acre')?.message).not.toMatch(/lb\/acre/);
    expect(unlikelyValue('Zn', 99_999, 'ppm')).toBeNull();
  });
  test('calcium, potassium and magnesium below 12 mg/kg look like meq', () => {
    for (const nutrient of ['Ca', 'K', 'Mg'])
      expect(unlikelyValue(nutrient, 11.9, 'ppm')).toMatchObject({ path: nutrient, code: 'unlikely-low' });
    expect(unlikelyValue('Ca', 12, 'ppm')).toBeNull();
    expect(unlikelyValue('Ca', 0, 'ppm')).toBeNull();
    expect(unlikelyValue('P', 5, 'ppm')).toBeNull();
    expect(unlikelyValue('Ca', 6, 'meq/100g')).toBeNull();
    expect(unlikelyValue('Ca', 6, 'mg/L')).toBeNull();
  });
  test('a value at a bound stands in the class above it; no scale, no class and no bounds', () => {
    expect([14.9, 15, 24.9, 25].map((value) => testClass('olsen', 'P', value)?.class)).toEqual([
      'low',
      'medium',
      'medium',
      'high',
    ]);
    expect(classBounds_mg_per_kg('olsen', 'P')).toEqual([
      { name: 'low', below_mg_per_kg: 15 },
      { name: 'medium', below_mg_per_kg: 25 },
    ]);
    expect(classBounds_mg_per_kg('olsen', 'B')).toEqual([]);
  });
  test('potassium ceases to tell at 85 ppm with CEC 4, at 115 with 16 (Midwest Vegetable Guide 2022)', () => {
    expect([potassiumCritical_mg_per_kg(4), potassiumCritical_mg_per_kg(16)]).toEqual([85, 115]);
  });
});
