import { describe, expect, test } from 'vitest';
import { alignBeds, type Placed, snapMove, spaceEvenly, turnedBox } from '../../../../planner/beds/arrange.ts';
import { classOfVolume } from '../../../../planner/beds/container-class.ts';
import { moistDensity_kg_per_m3, totalPorosity } from '../../../../planner/beds/density.ts';
import { cornersOf, extentOf, ringOf } from '../../../../planner/beds/extent.ts';
import { floorLoad_kg_per_m2, isWithinFloorLimit } from '../../../../planner/beds/floor-load.ts';
import { footprint_m2 } from '../../../../planner/beds/footprint.ts';
import { type BedForm, outlineAt, requireForm } from '../../../../planner/beds/form.ts';
import { codesFrom, layOutBeds } from '../../../../planner/beds/lay-out.ts';
import type { Outline, Point } from '../../../../planner/beds/outline.ts';
import { perimeter_m } from '../../../../planner/beds/perimeter.ts';
import { plantsInBed } from '../../../../planner/beds/plant-count.ts';
import { bedRows } from '../../../../planner/beds/plants-in-row.ts';
import { remainingValue_minor } from '../../../../planner/beds/remaining-value.ts';
import { fullVolume_L, heightHolding_m, volumeTo_L } from '../../../../planner/beds/volume.ts';
import { wallArea_m2 } from '../../../../planner/beds/wall-area.ts';
import { weedBarrier } from '../../../../planner/beds/weed-barrier.ts';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { refusals } from '../../../builders/faults-of.ts';

const rectangle = { shape: 'rectangle', length_m: 2, width_m: 1 } as const;
const bed = (bedId: string, x_m: number, y_m: number, halfX_m = 1, halfY_m = 0.5): Placed => ({
  bedId,
  x_m,
  y_m,
  halfX_m,
  halfY_m,
});
const rounded = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value, (_, each) => (typeof each === 'number' ? Math.round(each * 1e6) / 1e6 + 0 : each)));

describe('arranging beds on the site', () => {
  const beds = [bed('a', 0, 0), bed('b', 5, 1, 2, 1.5), bed('c', -2, 4)];
  test.each([
    [
      'west',
      [
        [-2, 0],
        [-1, 1],
        [-2, 4],
      ],
    ],
    [
      'east',
      [
        [6, 0],
        [5, 1],
        [6, 4],
      ],
    ],
    [
      'south',
      [
        [0, 0],
        [5, 1],
        [-2, 0],
      ],
    ],
    [
      'north',
      [
        [0, 4],
        [5, 3],
        [-2, 4],
      ],
    ],
    [
      'middle-x',
      [
        [1, 0],
        [1, 1],
        [1, 4],
      ],
    ],
    [
      'middle-y',
      [
        [0, 5 / 3],
        [5, 5 / 3],
        [-2, 5 / 3],
      ],
    ],
  ] as const)('to the %s: edges of beds of different size', (to, places) => {
    expect(alignBeds(beds, to).map(({ x_m, y_m }) => [x_m, y_m])).toEqual(places);
  });
  test('one bed, or two to space, stay', () => {
    expect(alignBeds([bed('a', 1, 1)], 'west')).toEqual([]);
    expect(spaceEvenly([bed('a', 0, 0), bed('b', 5, 0)], 'x')).toEqual([]);
  });
  test('spacing up the site: 9.5 m of outer edges less 5 m of beds over two paths', () => {
    const up = [bed('c', 1, 8, 1, 1), bed('a', 3, 0, 1, 0.5), bed('b', 2, 2, 1, 1)];
    expect(rounded(spaceEvenly(up, 'y'))).toEqual([
      { bedId: 'a', x_m: 3, y_m: 0 },
      { bedId: 'b', x_m: 2, y_m: 3.75 },
      { bedId: 'c', x_m: 1, y_m: 8 },
    ]);
  });
  test('the nearest of all edges and middles draws a bed, within reach', () => {
    expect(rounded(snapMove(bed('a', 0, 2.45), [bed('b', 9, 3.5), bed('c', 20, 2)], 0.1, null))).toEqual({
      dx_m: 0,
      dy_m: 0.05,
      lineX_m: null,
      lineY_m: 3,
    });
    expect(snapMove(bed('a', 0, 2.3), [bed('b', 9, 3.5)], 0.1, null)).toMatchObject({ dy_m: 0, lineY_m: null });
    expect(rounded(snapMove(bed('a', 0.3, 2.3), [], 0.1, 0.5))).toEqual({ dx_m: 0.2, dy_m: 0.2, lineX_m: null, lineY_m: null });
  });
  test('the box of a bed turned by 30 degrees', () => {
    expect(rounded(turnedBox(2, 1, 30))).toEqual(
      rounded({ halfX_m: (2 * Math.cos(Math.PI / 6) + 0.5) / 2, halfY_m: (1 + Math.cos(Math.PI / 6)) / 2 }),
    );
  });
  test('rows run along the beds from the first, the next row to their left', () => {
    const rows = { count: 3, perRow: 2, length_m: 2, width_m: 1, endPath_m: 1, sidePath_m: 0.5, first_m: [10, 20] } as const;
    expect(rounded(layOutBeds({ ...rows, turn_deg: 0 }))).toEqual([
      { x_m: 10, y_m: 20, turn_deg: 0 },
      { x_m: 13, y_m: 20, turn_deg: 0 },
      { x_m: 10, y_m: 21.5, turn_deg: 0 },
    ]);
    expect(rounded(layOutBeds({ ...rows, turn_deg: 90 }))).toEqual([
      { x_m: 10, y_m: 20, turn_deg: 90 },
      { x_m: 10, y_m: 23, turn_deg: 90 },
      { x_m: 8.5, y_m: 20, turn_deg: 90 },
    ]);
  });
  test('a code of forty letters is the longest', () => {
    const long = `${'x'.repeat(38)}-1`;
    expect(codesFrom(long, 1, new Set())).toEqual([long]);
    expect(codesFrom(' A-9 ', 2, new Set())).toEqual(['A-9', 'A-10']);
  });
});

describe('outlines', () => {
  const hexagon: Outline = { shape: 'hexagon', acrossFlats_m: Math.sqrt(3) };
  const octagon: Outline = { shape: 'octagon', acrossFlats_m: 2 };
  const triangle: Outline = {
    shape: 'polygon',
    vertices_m: [
      [1, 1],
      [4, 1],
      [1, 5],
    ],
  };
  test.each([
    ['hexagon of side 1', hexagon, { length_m: 2, width_m: Math.sqrt(3) }],
    ['octagon', octagon, { length_m: 2, width_m: 2 }],
    ['3-4-5 triangle', triangle, { length_m: 3, width_m: 4 }],
    ['round', { shape: 'round', diameter_m: 1.5 }, { length_m: 1.5, width_m: 1.5 }],
    ['oval', { shape: 'oval', length_m: 3, width_m: 1 }, { length_m: 3, width_m: 1 }],
  ] as const)('box of a %s', (_, outline, box) => {
    expect(rounded(extentOf(outline))).toEqual(rounded(box));
  });
  test('area and way round of straight-sided outlines agree with their corners', () => {
    for (const outline of [rectangle, hexagon, octagon, triangle]) {
      const polygon: Outline = { shape: 'polygon', vertices_m: cornersOf(outline) };
      expect(footprint_m2(polygon)).toBeCloseTo(footprint_m2(outline), 9);
      expect(perimeter_m(polygon)).toBeCloseTo(perimeter_m(outline), 9);
      expect(rounded(extentOf(polygon))).toEqual(rounded(extentOf(outline)));
    }
    expect(perimeter_m(triangle)).toBe(12);
    expect(footprint_m2(triangle)).toBe(6);
  });
  test('a ring drawn in steps comes close to its curve, from inside', () => {
    for (const outline of [
      { shape: 'round', diameter_m: 2 },
      { shape: 'oval', length_m: 3, width_m: 1 },
      { shape: 'ellipse', length_m: 3, width_m: 1 },
      { shape: 'oval', length_m: 2, width_m: 2 },
    ] as const) {
      const drawn = footprint_m2({ shape: 'polygon', vertices_m: ringOf(outline) });
      expect(drawn / footprint_m2(outline)).toBeGreaterThan(0.995);
      expect(drawn / footprint_m2(outline)).toBeLessThan(1);
      expect(rounded(extentOf({ shape: 'polygon', vertices_m: ringOf(outline) }))).toEqual(rounded(extentOf(outline)));
    }
    expect(ringOf({ shape: 'round', diameter_m: 2 })).toHaveLength(48);
    expect(ringOf(rectangle)).toEqual(cornersOf(rectangle));
  });
  test('half way up a leaning wall every size is half way', () => {
    const square = (half: number): readonly Point[] => [
      [-half, -half],
      [half, -half],
      [half, half],
      [-half, half],
    ];
    const halfway = (outline: Outline, bottom: Outline) => outlineAt({ solid: 'tapered', outline, bottom, depth_m: 1 }, 0.5);
    expect(halfway({ shape: 'round', diameter_m: 2 }, { shape: 'round', diameter_m: 1 })).toEqual({
      shape: 'round',
      diameter_m: 1.5,
    });
    expect(halfway({ shape: 'octagon', acrossFlats_m: 2 }, { shape: 'octagon', acrossFlats_m: 1 })).toEqual({
      shape: 'octagon',
      acrossFlats_m: 1.5,
    });
    expect(halfway({ shape: 'hexagon', acrossFlats_m: 2 }, { shape: 'hexagon', acrossFlats_m: 1 })).toEqual({
      shape: 'hexagon',
      acrossFlats_m: 1.5,
    });
    expect(halfway({ shape: 'polygon', vertices_m: square(2) }, { shape: 'polygon', vertices_m: square(1) })).toEqual({
      shape: 'polygon',
      vertices_m: square(1.5),
    });
    expect(halfway(rectangle, { ...rectangle, length_m: 1 })).toEqual({ ...rectangle, length_m: 1.5 });
  });
  test('a bag may bulge at the floor only where it says so; a brim as wide as the floor is upright', () => {
    const bulging = {
      solid: 'tapered',
      outline: { shape: 'round', diameter_m: 1 },
      bottom: { shape: 'round', diameter_m: 1.2 },
      depth_m: 0.5,
    } as const;
    expect(refusals(() => requireForm(bulging))).toEqual(['bottom.diameter_m too-large']);
    expect(refusals(() => requireForm({ ...bulging, mayBulge: true }))).toEqual([]);
    expect(refusals(() => requireForm({ ...bulging, bottom: bulging.outline }))).toEqual([]);
    const ridge = { solid: 'ridge', length_m: 4, width_m: 1, crownLength_m: 4, crownWidth_m: 1, depth_m: 0.4 } as const;
    expect(refusals(() => requireForm(ridge))).toEqual([]);
    expect(refusals(() => requireForm({ ...ridge, crownLength_m: 0, crownWidth_m: 0 }))).toEqual([]);
  });
});

describe('volumes and walls', () => {
  test('solids of the books', () => {
    expect(fullVolume_L({ solid: 'cone', length_m: 2, width_m: 2, depth_m: 3 })).toBeCloseTo(1000 * Math.PI, 6);
    expect(fullVolume_L({ solid: 'paraboloid', length_m: 2, width_m: 2, depth_m: 2 })).toBeCloseTo(1000 * Math.PI, 6);
    expect(fullVolume_L({ solid: 'half-ellipsoid', length_m: 2, width_m: 2, depth_m: 1 })).toBeCloseTo((2000 / 3) * Math.PI, 6);
    // a pyramid without its top: h (A + sqrt(A B) + B)/3
    expect(fullVolume_L({ solid: 'ridge', length_m: 2, width_m: 2, crownLength_m: 1, crownWidth_m: 1, depth_m: 3 })).toBeCloseTo(
      7000,
      6,
    );
  });
  test('a bed may be filled to its very rim, and holds 800 L at 0.4 m', () => {
    const box: BedForm = { solid: 'straight', outline: rectangle, depth_m: 0.4 };
    expect(volumeTo_L(box, 0.4)).toBeCloseTo(800, 9);
    expect(volumeTo_L(box, 0.4 * (1 + 1e-9))).toBeCloseTo(800, 5);
    expect(heightHolding_m(box, 800)).toBeCloseTo(0.4, 9);
    expect(heightHolding_m(box, 0)).toBeCloseTo(0, 9);
  });
  test('walls: upright by the way round, leaning by their slant', () => {
    expect(wallArea_m2({ solid: 'straight', outline: rectangle, depth_m: 0.5 })).toBe(3);
    // frustum of a cone: pi (R + r) slant, slant of 3-4-5
    const frustum: BedForm = {
      solid: 'tapered',
      outline: { shape: 'round', diameter_m: 8 },
      bottom: { shape: 'round', diameter_m: 2 },
      depth_m: 4,
    };
    expect(wallArea_m2(frustum)).toBeCloseTo(Math.PI * 5 * 5, 6);
    // a trough 10 by 8 at the brim, 4 by 2 at its floor, 4 deep: four trapezia of slant 5
    const trough: BedForm = {
      solid: 'tapered',
      outline: { ...rectangle, length_m: 10, width_m: 8 },
      bottom: { ...rectangle, length_m: 4, width_m: 2 },
      depth_m: 4,
    };
    expect(wallArea_m2(trough)).toBeCloseTo((10 + 4) * 5 + (8 + 2) * 5, 6);
    const corners = (length_m: number, width_m: number): Outline => ({
      shape: 'polygon',
      vertices_m: cornersOf({ ...rectangle, length_m, width_m }),
    });
    expect(wallArea_m2({ solid: 'tapered', outline: corners(10, 8), bottom: corners(4, 2), depth_m: 4 })).toBeCloseTo(120, 6);
  });
});

describe('loads, lives, barriers', () => {
  test('a floor’s limit holds to the very kilogram', () => {
    expect([isWithinFloorLimit(200, 200), isWithinFloorLimit(200.1, 200), isWithinFloorLimit(0.1 + 0.2, 0.3)]).toEqual([
      true,
      false,
      true,
    ]);
    expect(
      floorLoad_kg_per_m2({
        layers: [{ depth_m: 0.3, density_kg_per_m3: 1500 }],
        tare_kg_per_m2: 10,
        plants_kg_per_m2: 5,
        water_kg_per_m2: 50,
      }),
    ).toBe(515);
  });
  test('moist density, pores, classes of containers', () => {
    expect(moistDensity_kg_per_m3(400, 0.5)).toBe(800);
    expect(totalPorosity(0.2, 0.8)).toBe(1);
    expect(refusals(() => totalPorosity(0.2, 0.81))).toHaveLength(1);
    // ANSI Z60.1: a class is a range, its ends included
    expect([classOfVolume(785)?.name, classOfVolume(1242)?.name, classOfVolume(1300)?.name]).toEqual(['#5', '#5', undefined]);
  });
  test('straight-line worth: all at first, half at half its life, nothing after', () => {
    const since = '2020-01-01' as IsoDate;
    expect(remainingValue_minor(1000, 8, since, '2024-01-01' as IsoDate)).toBe(500);
    expect(remainingValue_minor(1000, 8, since, since)).toBe(1000);
    expect(remainingValue_minor(1000, 8, since, '2019-01-01' as IsoDate)).toBe(1000);
    expect(remainingValue_minor(1000, 8, since, '2030-01-01' as IsoDate)).toBe(0);
  });
  test('strips of a roll: 2.2 by 1.2 m under a box, each strip lying 10 cm over the next', () => {
    const cut = { outline: rectangle, reach_m: 0.1, overlap_m: 0.1 };
    expect(rounded(weedBarrier(cut))).toEqual({ strips: 1, stripLength_m: 2.2, area_m2: 2.64 });
    expect(rounded(weedBarrier({ ...cut, roll_m: 0.65 }))).toEqual({ strips: 2, stripLength_m: 2.2, area_m2: 2.86 });
    expect(weedBarrier({ ...cut, roll_m: 0.6 }).strips).toBe(3);
    expect(weedBarrier({ ...cut, roll_m: 3 }).strips).toBe(1);
  });
});

describe('plants in rows and in the middle', () => {
  test('rows lie in the middle of the bed, plants in the middle of the row', () => {
    const outline = { ...rectangle, length_m: 1, width_m: 0.8 };
    const { points_m, plants, isOneInTheMiddle } = plantsInBed({
      outline,
      spacing: { pattern: 'rows', rowSpacing_m: 0.3, inRow_m: 0.4 },
    });
    expect(rounded(points_m)).toEqual([
      [-0.2, -0.15],
      [0.2, -0.15],
      [-0.2, 0.15],
      [0.2, 0.15],
    ]);
    expect([plants, isOneInTheMiddle]).toEqual([4, false]);
    const tight = plantsInBed({ outline, spacing: { pattern: 'rows', rowSpacing_m: 0.3, inRow_m: 0.4 }, edgeMargin_m: 0.1 });
    expect(tight.plants).toBe(3 * 3);
  });
  test('what is over beside the rows is told', () => {
    expect(rounded(bedRows({ length_m: 1, width_m: 0.8, rowSpacing_m: 0.3, inRow_m: 0.4 }))).toEqual({
      rows: 2,
      plantsPerRow: 2,
      plants: 4,
      sideLeft_m: 0.25,
    });
    expect(bedRows({ length_m: 1, width_m: 0.2, rowSpacing_m: 0.3, inRow_m: 0.4 })).toMatchObject({
      rows: 0,
      plants: 0,
      sideLeft_m: 0.1,
    });
  });
  test('one plant in the middle where nothing fits', () => {
    expect(plantsInBed({ outline: rectangle, spacing: { pattern: 'square', spacing_m: 3 } })).toEqual({
      plants: 1,
      points_m: [[0, 0]],
      isOneInTheMiddle: true,
    });
  });
  test.each(['square', 'staggered'] as const)(
    'a %s lattice set out from the middle has a plant there, in every outline',
    (pattern) => {
      for (const outline of [
        { shape: 'round', diameter_m: 1 },
        { shape: 'hexagon', acrossFlats_m: 1 },
        { shape: 'oval', length_m: 2, width_m: 1 },
      ] as const) {
        const { points_m, plants } = plantsInBed({ outline, spacing: { pattern, spacing_m: 0.3 }, layout: 'centred' });
        expect(points_m.some(([x, y]) => Math.hypot(x, y) < 1e-9)).toBe(true);
        expect(plants).toBeLessThanOrEqual(plantsInBed({ outline, spacing: { pattern, spacing_m: 0.3 } }).plants);
      }
      // a disc of 1 m with half-spacing margins: plants within 0.35 m of the middle
      expect(
        plantsInBed({ outline: { shape: 'round', diameter_m: 1 }, spacing: { pattern, spacing_m: 0.3 }, layout: 'centred' })
          .plants,
      ).toBe(pattern === 'square' ? 5 : 7);
    },
  );
});
