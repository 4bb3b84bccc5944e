import { expect, test } from 'vitest';
import type { BedForm } from '../../../../planner/beds/form.ts';
import { explainBedWeight } from '../../../../planner/soil/bed-weight.ts';
import { explainBlend } from '../../../../planner/soil/blend.ts';
import { explainLoads } from '../../../../planner/soil/loads.ts';
import { explainLoose } from '../../../../planner/soil/settling.ts';
import { explainHeap } from '../../../../planner/soil/stockpile.ts';
import { explainDig } from '../../../../planner/soil/swell.ts';
import { explainTopUp } from '../../../../planner/soil/top-up.ts';
import { asRead } from '../../../builders/as-read.ts';

test('loose for settled: 500 L over 0.8', () => {
  expect(asRead(explainLoose(500, 0.2, 'Mix')).join('\n')).toMatchInlineSnapshot(`
    "V_s = 500 bulk_L (computed)
    s = 0.2 share (practice)
    500 L ÷ 0.8 -> 625 bulk_L
    result 625 bulk_L, notes 0"
  `);
});

test('own soil dug: 500 L loose over 1.25', () => {
  expect(asRead(explainDig(500, 0.25)).join('\n')).toMatchInlineSnapshot(`
    "V_l = 500 bulk_L (computed)
    w = 0.25 share (practice)
    500 L ÷ 1.25 -> 400 bulk_L
    result 400 bulk_L, notes 1"
  `);
});

test('a blend of 3 to 2 with a tenth lost when mixed', () => {
  const parts = [
    { name: 'soil', part: 3 },
    { name: 'compost', part: 2 },
  ];
  expect(asRead(explainBlend(450, parts, 0.1)).join('\n')).toMatchInlineSnapshot(`
    "V = 450 bulk_L (computed)
    m = 0.1 share (practice)
    p1 = 3 (entry)
    p2 = 2 (entry)
    3 parts -> 300 bulk_L
    2 parts -> 200 bulk_L
    result 500 bulk_L, notes 0"
  `);
});

test('loads by volume and by weight', () => {
  const haul = { volume_L: 4000, density_kg_per_m3: 1300, box_L: 2000 };
  expect(asRead(explainLoads(haul)).join('\n')).toMatchInlineSnapshot(`
    "V = 4000 bulk_L (computed)
    box = 2000 bulk_L (entry)
    M = 5200 kg (computed)
    -> 2 count
    result 2 count, notes 0"
  `);
  expect(asRead(explainLoads({ ...haul, payload_kg: 1300 })).join('\n')).toMatchInlineSnapshot(`
    "V = 4000 bulk_L (computed)
    box = 2000 bulk_L (entry)
    M = 5200 kg (computed)
    payload = 1300 kg (entry)
    -> 4 count
    result 4 count, notes 0"
  `);
  expect(explainLoads(haul).formula).not.toMatch(/M/);
  expect(explainLoads({ ...haul, payload_kg: 1300 }).formula).toMatch(/M/);
  expect(explainLoads(haul).steps[0]?.text).toBe('Volume decides');
  expect(explainLoads({ ...haul, payload_kg: 1300 }).steps[0]?.text).toBe('Weight decides');
});

test('heaps', () => {
  expect(asRead(explainHeap({ shape: 'cone', diameter_m: 3, height_m: 1.2 })).join('\n')).toMatchInlineSnapshot(`
    "D = 3 m (entry)
    H = 1.2 m (entry)
    3 m × 1.2 m -> 2.82743 m3
    result 2.82743 m3, notes 1"
  `);
  const windrow = { shape: 'windrow', section: 'triangle', length_m: 5, width_m: 3, height_m: 1.2 } as const;
  expect(asRead(explainHeap({ ...windrow, coneEnds: true })).join('\n')).toMatchInlineSnapshot(`
    "L = 5 m (entry)
    W = 3 m (entry)
    H = 1.2 m (entry)
    5 m × 3 m × 1.2 m -> 6.42743 m3
    result 6.42743 m3, notes 1"
  `);
  expect(explainHeap(windrow).formula).not.toBe(explainHeap({ ...windrow, coneEnds: true }).formula);
});

test('a top-up of a drop of 5 cm in 2 m2', () => {
  const form: BedForm = { solid: 'straight', outline: { shape: 'rectangle', length_m: 2, width_m: 1 }, depth_m: 0.4 };
  expect(asRead(explainTopUp({ form, surface_m: 0.4, drop_m: 0.05, settlingShare: 0.2 })).join('\n')).toMatchInlineSnapshot(`
    "z = 0.4 m_short (entry)
    Δz = 0.05 m_short (entry)
    s = 0.2 share (practice)
    V_s = 100 bulk_L (computed)
    100 L ÷ 0.8 -> 125 bulk_L
    result 125 bulk_L, notes 1"
  `);
});

test('weight of two layers: 360 kg dry, and what the pores hold', () => {
  const layers = [
    { name: 'mix', loose_L: 500, settled_L: 400, dryDensity_kg_per_m3: 120, moistDensity_kg_per_m3: 315 },
    { loose_L: 300, settled_L: 255, dryDensity_kg_per_m3: 1000, moistDensity_kg_per_m3: 1200, porosityShare: 0.4 },
  ];
  expect(asRead(explainBedWeight(layers)).join('\n')).toMatchInlineSnapshot(`
    "V1 = 500 bulk_L (computed)
    ρ1 = 120 kg_per_m3 (library)
    n1 = 0.943396 share (computed)
    V2 = 300 bulk_L (computed)
    ρ2 = 1000 kg_per_m3 (library)
    n2 = 0.4 share (computed)
    -> 360 kg
    -> 517.5 kg
    -> 839.358 kg
    result 839.358 kg, notes 1"
  `);
});
