import { expect, test } from 'vitest';
import type { MaterialId } from '../../../../planner/ids.ts';
import { bedFigures, contactArea_m2, explainBedLoad, type FigureLayer } from '../../../../planner/soil/bed-figures.ts';
import { aBedSpec } from '../../../builders/a-bed-spec.ts';
import { asRead } from '../../../builders/as-read.ts';
import { testRefusals } from '../../../builders/faults-of.ts';

const mix: FigureLayer = {
  materialId: 'mix' as MaterialId,
  name: 'mix',
  amount: { kind: 'rest' },
  settlingShare: 0.2,
  dryDensity_kg_per_m3: 400,
  moistDensity_kg_per_m3: 600,
  porosityShare: 0.7,
};
const gravel: FigureLayer = {
  ...mix,
  materialId: 'gravel' as MaterialId,
  name: 'gravel',
  amount: { kind: 'depth', depth_m: 0.1 },
  settlingShare: 0,
  dryDensity_kg_per_m3: 1500,
  moistDensity_kg_per_m3: null,
  porosityShare: null,
};
const bag = { kind: 'bag', outline: 'round', length_m: 0.6, width_m: 0.6 } as const;
const inBasin = { ...bag, watering: 'basin', basinLength_m: 1, basinDepth_m: 0.15, basinFill_m: 0.1 } as const;
const trough = { watering: 'reservoir', reservoirDepth_m: 0.15, overflow_m: 0.1, reservoirVoid_share: 0.4 } as const;

test('a box 2 by 1 by 0.4 m: 800 L settled, 1,000 L to place, and what it weighs', () => {
  // 1 m3 loose at 400 dry and 600 moist; pores of the settled layer 0.7 of 800 L
  const { layers, ...figures } = bedFigures(aBedSpec(), [mix]);
  expect(layers).toHaveLength(1);
  expect(figures).toEqual({
    area_m2: 2,
    perimeter_m: 6,
    fill_L: expect.closeTo(800, 9),
    loose_L: expect.closeTo(1000, 9),
    wall_m2: expect.closeTo(2.4, 9),
    barrier_m2: null,
    water_L: 0,
    contact_m2: 2,
    dry_kg: expect.closeTo(400, 9),
    moist_kg: expect.closeTo(600, 9),
    wet_kg: expect.closeTo(960, 9),
    load_kg_per_m2: expect.closeTo(480, 9),
  });
});

test('no weight is made up while a density is missing; the volumes stand', () => {
  const figures = bedFigures(aBedSpec(), [{ ...mix, dryDensity_kg_per_m3: null }]);
  expect(figures).toMatchObject({ dry_kg: null, moist_kg: null, wet_kg: null, load_kg_per_m2: null });
  expect(figures.loose_L).toBeCloseTo(1000, 9);
  expect(explainBedLoad(aBedSpec(), [{ ...mix, dryDensity_kg_per_m3: null }])).toBeUndefined();
});

test('pores that are not known follow from the dry weight and mineral solids: 1,500 kg/m3 leaves 1 - 1500/2650', () => {
  const bed = aBedSpec({ fillDepth_m: 0.1 });
  const { dry_kg, moist_kg, wet_kg } = bedFigures(bed, [gravel]);
  expect(dry_kg).toBeCloseTo(300, 9);
  expect(moist_kg).toBeCloseTo(300, 9);
  expect(wet_kg).toBeCloseTo(300 + 200 * (1 - 1500 / 2650), 6);
});

test('a barrier reaches beyond the bed by its overlap on every side, a mound has no wall', () => {
  expect(bedFigures(aBedSpec(), [mix], 0.5).barrier_m2).toBeCloseTo(3 * 2, 9);
  const mound = aBedSpec({ kind: 'mound', outline: 'half-ellipsoid' });
  expect(bedFigures(mound, [mix]).wall_m2).toBeNull();
  const leaning = aBedSpec({ bottomLength_m: 1.8, bottomWidth_m: 0.8 });
  expect(bedFigures(leaning, [mix]).wall_m2).toBeGreaterThan(2.2);
  expect(bedFigures(leaning, [mix]).contact_m2).toBeCloseTo(1.44, 9);
});

test('a bag in a basin rests on the basin, and its water counts in the load', () => {
  // basin 1 m by 1 m (one length given: as wide as long) round, 10 cm of water beside a bag of 0.6 m
  const spec = aBedSpec(inBasin);
  const water_L = 1000 * 0.1 * Math.PI * (0.5 ** 2 - 0.3 ** 2);
  const figures = bedFigures(spec, [mix]);
  expect(contactArea_m2(spec)).toBeCloseTo(Math.PI * 0.25, 9);
  expect(figures.water_L).toBeCloseTo(water_L, 6);
  const bag_m3 = Math.PI * 0.09 * 0.4;
  expect(figures.wet_kg).toBeCloseTo(bag_m3 * 500 + bag_m3 * 700 + water_L, 6);
  expect(figures.load_kg_per_m2).toBeCloseTo((figures.wet_kg ?? 0) / (Math.PI * 0.25), 6);
});

test('water among gravel is weighed with the gravel; a void former’s water comes on top and the fill begins above it', () => {
  const among = bedFigures(aBedSpec(trough), [gravel, mix]);
  expect(among.water_L).toBeCloseTo(2 * 0.1 * 0.4 * 1000, 6);
  const gravelWet_kg = 300 + 200 * (1 - 1500 / 2650);
  expect(among.wet_kg).toBeCloseTo(gravelWet_kg + 0.6 * (500 + 700), 6);
  const former = bedFigures(aBedSpec({ ...trough, reservoirVoid_share: 0.95 }), [mix]);
  expect(former.layers[0]?.from_m).toBe(0.15);
  expect(former.water_L).toBeCloseTo(190, 6);
  expect(former.wet_kg).toBeCloseTo(0.5 * (500 + 700) + 190, 6);
});

test('the load’s working: 960 kg over 2 m2', () => {
  const working = explainBedLoad(aBedSpec(), [mix]);
  expect(working && asRead(working)).toEqual([
    'M = 960 kg (computed)',
    'A = 2 m2 (computed)',
    '960 kg ÷ 2 m² -> 480 kg_per_m2',
    'result 480 kg_per_m2, notes 2',
  ]);
});

testRefusals([
  ['fillDepth_m too-large', () => bedFigures(aBedSpec({ fillDepth_m: 0.5 }), [mix])],
  ['basinLength_m not-a-number', () => bedFigures(aBedSpec({ watering: 'basin', basinDepth_m: 0.1 }), [mix])],
]);
