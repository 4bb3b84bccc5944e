import { expect, test } from 'vitest';
import { explainBasinWater } from '../../../../planner/beds/basin-water.ts';
import { explainTotal } from '../../../../planner/beds/explain-total.ts';
import { explainFloorLoad } from '../../../../planner/beds/floor-load.ts';
import { explainFootprint } from '../../../../planner/beds/footprint.ts';
import type { BedForm } from '../../../../planner/beds/form.ts';
import { explainPerimeter } from '../../../../planner/beds/perimeter.ts';
import { explainPlants } from '../../../../planner/beds/plant-count.ts';
import { explainReservoirWater } from '../../../../planner/beds/reservoir-water.ts';
import { explainVolume } from '../../../../planner/beds/volume.ts';
import { explainWallArea } from '../../../../planner/beds/wall-area.ts';
import { explainWeedBarrier } from '../../../../planner/beds/weed-barrier.ts';
import { asRead } from '../../../builders/as-read.ts';

const rectangle = { shape: 'rectangle', length_m: 2, width_m: 1 } as const;
const box: BedForm = { solid: 'straight', outline: rectangle, depth_m: 0.4 };
const trough: BedForm = { ...box, solid: 'tapered', bottom: { ...rectangle, length_m: 1, width_m: 0.5 } };

test('area and way round of each kind of outline, by the letters of its formula', () => {
  expect(asRead(explainFootprint(rectangle))).toEqual([
    'L = 2 m (entry)',
    'W = 1 m (entry)',
    'A = 2 m2 (computed)',
    'L = 2 m, W = 1 m -> 2 m2',
    'result 2 m2, notes 0',
  ]);
  expect(asRead(explainFootprint({ shape: 'round', diameter_m: 2 })).slice(0, 2)).toEqual([
    'D = 2 m (entry)',
    'A = 3.14159 m2 (computed)',
  ]);
  expect(asRead(explainFootprint({ shape: 'hexagon', acrossFlats_m: 1 }))[0]).toBe('F = 1 m (entry)');
  const corners = [
    [0, 0],
    [3, 0],
    [0, 4],
  ] as const;
  expect(asRead(explainFootprint({ shape: 'polygon', vertices_m: corners }))).toEqual([
    'n = 3 count (entry)',
    'A = 6 m2 (computed)',
    '-> 6 m2',
    'result 6 m2, notes 0',
  ]);
  const formulas = [rectangle, { shape: 'oval', length_m: 2, width_m: 1 }, { shape: 'octagon', acrossFlats_m: 1 }] as const;
  expect(new Set(formulas.map((outline) => explainFootprint(outline).formula)).size).toBe(3);
  expect(asRead(explainPerimeter({ shape: 'oval', length_m: 2, width_m: 1 }))).toEqual([
    'P = 5.14159 m (computed)',
    'L = 2 m, W = 1 m -> 5.14159 m',
    'result 5.14159 m, notes 0',
  ]);
});

// 0.2 m of a trough 2 by 1 m at its brim of 0.4 m and 1 by 0.5 m at its floor: 0.2 (0.5 + 4 x 0.78125 + 1.125)/6
test('volume by the areas at floor, half height and surface', () => {
  expect(asRead(explainVolume(trough, 0.2))).toEqual([
    'h = 0.2 m (entry)',
    'A1 = 0.5 m2 (computed)',
    'Am = 0.78125 m2 (computed)',
    'A2 = 1.125 m2 (computed)',
    '0.5 m², 0.7813 m², 1.125 m² -> 158.333 bulk_L',
    'result 158.333 bulk_L, notes 0',
  ]);
});

test('walls: the way round at the brim where there is a wall to go round', () => {
  expect(asRead(explainWallArea(box))).toEqual([
    'P = 6 m (computed)',
    'h = 0.4 m_short (entry)',
    '-> 2.4 m2',
    'result 2.4 m2, notes 0',
  ]);
  expect(asRead(explainWallArea(trough)).slice(0, 2)).toEqual(['P = 6 m (computed)', 'h = 0.4 m_short (entry)']);
  expect(explainWallArea(trough).formula).not.toBe(explainWallArea(box).formula);
});

test('load on a floor, layer by layer, then what else weighs', () => {
  const layers = [
    { depth_m: 0.3, density_kg_per_m3: 1500, name: 'mix' },
    { depth_m: 0.1, density_kg_per_m3: 1800 },
  ];
  const working = explainFloorLoad({ layers, tare_kg_per_m2: 10, plants_kg_per_m2: 5, water_kg_per_m2: 0 });
  expect(asRead(working)).toEqual([
    'd1 = 0.3 m_short (entry)',
    'ρ1 = 1500 kg_per_m3 (library)',
    'd2 = 0.1 m_short (entry)',
    'ρ2 = 1800 kg_per_m3 (library)',
    'tare = 10 kg_per_m2 (computed)',
    'plants = 5 kg_per_m2 (computed)',
    '0.3 m × 1,500 kg/m³ + 0.1 m × 1,800 kg/m³ + 10 kg/m² + 5 kg/m² -> 645 kg_per_m2',
    'result 645 kg_per_m2, notes 1',
  ]);
  expect(working.symbols[0]?.name).toMatch(/mix$/);
  expect(working.symbols[2]?.name).toMatch(/2$/);
  expect(asRead(explainFloorLoad({ layers: [], water_kg_per_m2: 50 }))).toEqual([
    'water = 50 kg_per_m2 (computed)',
    '50 kg/m² -> 50 kg_per_m2',
    'result 50 kg_per_m2, notes 1',
  ]);
});

test('water round a bag, and among the gravel of a reservoir', () => {
  const basin: BedForm = { solid: 'straight', outline: { ...rectangle, length_m: 2.2, width_m: 1.2 }, depth_m: 0.2 };
  expect(asRead(explainBasinWater({ basin, bag: box, level_m: 0.1 }))).toEqual([
    'z = 0.1 m_short (entry)',
    'V_basin = 264 L (computed)',
    'V_bag = 200 L (computed)',
    '264 L − 200 L -> 64 L',
    'result 64 L, notes 1',
  ]);
  expect(asRead(explainReservoirWater({ bed: box, overflow_m: 0.1, voidShare: 0.4 }))).toEqual([
    'z = 0.1 m_short (entry)',
    'V = 200 L (computed)',
    'n = 0.4 share (practice)',
    '0.4 × 200 L -> 80 L',
    'result 80 L, notes 1',
  ]);
});

test('a barrier in one piece, and in strips of its roll', () => {
  const cut = { outline: rectangle, reach_m: 0.1, overlap_m: 0.1 };
  expect(asRead(explainWeedBarrier(cut))).toEqual([
    'e = 0.1 m_short (entry)',
    'o = 0.1 m_short (entry)',
    'n = 1 count (computed)',
    'A = 2.64 m2 (practice)',
    '1 × 2.2 m long -> 2.64 m2',
    'result 2.64 m2, notes 1',
  ]);
  const strips = explainWeedBarrier({ ...cut, roll_m: 0.65 });
  expect(asRead(strips)).toContain('2 × 2.2 m long -> 2.86 m2');
  expect(strips.formula).not.toBe(explainWeedBarrier(cut).formula);
});

test('plants: spacing, row distance where there are rows, the margin and where it comes from', () => {
  // 2 by 1 m at 30 cm with 15 cm to the edge: six by three
  expect(asRead(explainPlants({ outline: rectangle, spacing: { pattern: 'square', spacing_m: 0.3 } }))).toEqual([
    's = 0.3 m_short (library)',
    'e = 0.15 m_short (computed)',
    'square lattice -> 18 plants',
    'result 18 plants, notes 0',
  ]);
  const rows = { pattern: 'rows', rowSpacing_m: 0.3, inRow_m: 0.4 } as const;
  const outline = { ...rectangle, length_m: 1, width_m: 0.8 };
  expect(asRead(explainPlants({ outline, spacing: rows, edgeMargin_m: 0.1 }))).toEqual([
    's = 0.4 m_short (library)',
    'r = 0.3 m_short (library)',
    'e = 0.1 m_short (entry)',
    'rows -> 9 plants',
    'result 9 plants, notes 0',
  ]);
  expect(asRead(explainPlants({ outline, spacing: rows }))[2]).toBe('e = 0.2 m_short (computed)');
  expect(asRead(explainPlants({ outline, spacing: { pattern: 'staggered', spacing_m: 3 } })).at(-1)).toBe(
    'result 1 plants, notes 1',
  );
});

test('a total names its parts', () => {
  const working = explainTotal(
    'Area',
    'm2',
    [
      { name: 'north', value: 2 },
      { name: 'south', value: 3.5 },
    ],
    ['measured'],
  );
  expect(asRead(working)).toEqual([
    '1 = 2 m2 (computed)',
    '2 = 3.5 m2 (computed)',
    '2 blocks -> 5.5 m2',
    'result 5.5 m2, notes 1',
  ]);
  expect(explainTotal('Area', 'm2', []).notes).toEqual([]);
});
