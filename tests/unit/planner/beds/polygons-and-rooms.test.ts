import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestInDisc, centredInDisc } from '../../../../planner/beds/disc-lattice.ts';
import { cornersOf, ringOf } from '../../../../planner/beds/extent.ts';
import { roomWithin } from '../../../../planner/beds/inside.ts';
import type { Outline, Point } from '../../../../planner/beds/outline.ts';
import { bestInOutline, centredInOutline } from '../../../../planner/beds/outline-lattice.ts';
import { rowsInOutline } from '../../../../planner/beds/outline-rows.ts';
import { mostCircles, packingBound, packingRadiusRatio } from '../../../../planner/beds/packing-bound.ts';
import { plantsInBed } from '../../../../planner/beds/plant-count.ts';
import {
  centroid_m,
  crossingSides,
  distanceToSegment_m,
  isInPolygon,
  requireSimplePolygon,
  signedArea_m2,
} from '../../../../planner/beds/polygon.ts';
import { refusals } from '../../../builders/faults-of.ts';

/** An L: 3 by 3 m without its upper right 2 by 2 m. */
const ell: readonly Point[] = [
  [0, 0],
  [3, 0],
  [3, 1],
  [1, 1],
  [1, 3],
  [0, 3],
];
const bowTie: readonly Point[] = [
  [0, 0],
  [2, 2],
  [2, 0],
  [0, 2],
];

describe('polygons by hand', () => {
  test('area is positive counter-clockwise; the middle of an L lies off its corner', () => {
    expect([signedArea_m2(ell), signedArea_m2(ell.toReversed())]).toEqual([5, -5]);
    // 3 m2 about (1.5, 0.5) and 2 m2 about (0.5, 2)
    for (const ring of [ell, ell.toReversed()]) for (const each of centroid_m(ring)) expect(each).toBeCloseTo(5.5 / 5, 12);
    expect(
      centroid_m([
        [0, 0],
        [2, 4],
        [4, 8],
      ]),
    ).toEqual([2, 4]);
    expect(centroid_m([])).toEqual([0, 0]);
  });
  test('inside, in the bay, on an edge, on a corner', () => {
    const inside = (x: number, y: number) => isInPolygon([x, y], ell);
    expect([inside(0.5, 2.5), inside(2.5, 0.5), inside(0.5, 0.5)]).toEqual([true, true, true]);
    expect([inside(2, 2), inside(1.01, 1.5), inside(-0.1, 1), inside(3.1, 0.5), inside(0.5, -0.1), inside(0.5, 3.1)]).toEqual(
      Array(6).fill(false),
    );
    expect([inside(1, 2), inside(2, 1), inside(0, 0), inside(3, 1), inside(1, 1)]).toEqual(Array(5).fill(true));
    expect([isInPolygon([1.05, 2], ell, 0.1), isInPolygon([1.15, 2], ell, 0.1)]).toEqual([true, false]);
  });
  test('the way to a side: to its foot, to either end, to a side of no length', () => {
    expect(distanceToSegment_m([1, 2], [0, 0], [4, 0])).toBe(2);
    expect(distanceToSegment_m([-3, 4], [0, 0], [4, 0])).toBe(5);
    expect(distanceToSegment_m([7, 4], [0, 0], [4, 0])).toBe(5);
    expect(distanceToSegment_m([3, 4], [0, 0], [0, 0])).toBe(5);
    expect(distanceToSegment_m([2, 2], [1, 1], [3, 1])).toBe(1);
    expect(distanceToSegment_m([1, 0], [0, 0], [2, 2])).toBeCloseTo(Math.SQRT1_2, 12);
  });
  test('sides that cross or touch are named from 1; neighbours share a corner and do not count', () => {
    expect(crossingSides(bowTie)).toEqual([1, 3]);
    expect(crossingSides(ell)).toBeUndefined();
    expect(crossingSides(ell.slice(0, 3))).toBeUndefined();
    expect(
      crossingSides([
        [0, 0],
        [4, 0],
        [4, 2],
        [2, 0],
        [0, 2],
      ]),
    ).toEqual([1, 3]);
    expect(
      crossingSides([
        [0, 0],
        [4, 0],
        [4, 2],
        [2, 0.001],
        [0, 2],
      ]),
    ).toBeUndefined();
  });
  test('each bad corner is told at its place', () => {
    const of = (vertices: readonly Point[]) => refusals(() => requireSimplePolygon(vertices, 'outline'));
    expect(of(ell)).toEqual([]);
    expect(of(bowTie)).toEqual(['outline crosses-itself']);
    expect(of(ell.slice(0, 2))).toEqual(['outline too-few']);
    expect(
      of([
        [0, 0],
        [0, 5e-7],
        [1, 1],
        [Number.NaN, 2],
        [0, Number.POSITIVE_INFINITY],
      ]),
    ).toEqual(['outline.0 twice', 'outline.3 not-a-number', 'outline.4 not-a-number']);
    expect(
      of([
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 0],
      ]),
    ).toEqual(['outline.3 twice']);
    expect(
      of([
        [0, 0],
        [0.001, 0],
        [0, 0.001],
      ]),
    ).toEqual(['outline no-area']);
  });
});

describe('room within a margin', () => {
  const contains = (outline: Outline, margin_m: number, ...places: Point[]) => {
    const room = roomWithin(outline, margin_m);
    return places.map(([x, y]) => room.contains(x, y));
  };
  test('by hand, the limit itself included', () => {
    const rectangle = { shape: 'rectangle', length_m: 2, width_m: 1 } as const;
    expect(contains(rectangle, 0.1, [0.9, 0.4], [-0.9, -0.4], [0.91, 0], [0, 0.41], [0, -0.41])).toEqual([
      true,
      true,
      false,
      false,
      false,
    ]);
    const round = { shape: 'round', diameter_m: 2 } as const;
    expect(contains(round, 0.1, [0.9, 0], [0.54, 0.72], [0.91, 0], [0.65, 0.65])).toEqual([true, true, false, false]);
    expect(contains(round, 1, [0, 0], [0.01, 0])).toEqual([true, false]);
    expect(contains(round, 1.1, [0, 0])).toEqual([false]);
    const oval = { shape: 'oval', length_m: 3, width_m: 1 } as const;
    expect(contains(oval, 0.1, [1, 0.4], [1.4, 0], [-1.4, 0], [1.24, 0.32], [1.41, 0], [0, 0.41], [1.3, 0.3])).toEqual([
      true,
      true,
      true,
      true,
      false,
      false,
      false,
    ]);
    expect(contains(oval, 0.6, [0, 0])).toEqual([false]);
    // flats above and below at half a metre
    const hexagon = { shape: 'hexagon', acrossFlats_m: 1 } as const;
    expect(contains(hexagon, 0.1, [0, 0.4], [0, 0.41], [0.45, 0], [0.47, 0])).toEqual([true, false, true, false]);
    const octagon = { shape: 'octagon', acrossFlats_m: 1 } as const;
    expect(contains(octagon, 0.1, [0, 0.4], [0.4, 0], [0.41, 0], [0.28, 0.28], [0.29, 0.29])).toEqual([
      true,
      true,
      false,
      true,
      false,
    ]);
  });
  test('an ellipse is held to its drawn ring, close to its ends too', () => {
    const ellipse = { shape: 'ellipse', length_m: 3, width_m: 1 } as const;
    expect(contains(ellipse, 0, [1.4999, 0], [-1.4999, 0], [0, 0.49999], [1.5001, 0], [0, 0.5001])).toEqual([
      true,
      true,
      true,
      false,
      false,
    ]);
  });
  test('its box is that of the outline, about its own middle or as drawn', () => {
    expect(roomWithin({ shape: 'oval', length_m: 3, width_m: 1 }, 0.2)).toMatchObject({ from_m: [-1.5, -0.5], to_m: [1.5, 0.5] });
    expect(roomWithin({ shape: 'polygon', vertices_m: ell }, 0.2)).toMatchObject({ from_m: [0, 0], to_m: [3, 3] });
    expect(roomWithin({ shape: 'ellipse', length_m: 3, width_m: 1 }, 0.2)).toMatchObject({
      from_m: [-1.5, -0.5],
      to_m: [1.5, 0.5],
    });
  });
  // the room is the set of places inside whose way to every side is the margin or more
  test('agrees with the way to every side of the drawn outline, whatever its shape', () => {
    const outline = fc.oneof(
      fc.record({
        shape: fc.constant('rectangle' as const),
        length_m: fc.constantFrom(1, 2.3),
        width_m: fc.constantFrom(0.4, 1),
      }),
      fc.record({ shape: fc.constantFrom('hexagon' as const, 'octagon' as const), acrossFlats_m: fc.constantFrom(0.8, 1.7) }),
      fc.record({
        shape: fc.constant('ellipse' as const),
        length_m: fc.constantFrom(1.5, 2.6),
        width_m: fc.constantFrom(0.7, 1.2),
      }),
      fc.constant({ shape: 'polygon' as const, vertices_m: ell }),
      fc.constant({ shape: 'polygon' as const, vertices_m: ell.toReversed() }),
    );
    const at = fc.double({ min: -1.5, max: 3.2, noNaN: true });
    fc.assert(
      fc.property(outline, fc.constantFrom(0, 0.05, 0.3), at, at, (given, margin_m, x, y) => {
        const straight = cornersOf(given);
        const ring = straight.length > 0 ? straight : ringOf(given, 2);
        const nearest = Math.min(
          ...ring.map((corner, k) => distanceToSegment_m([x, y], corner, ring[(k + 1) % ring.length] ?? corner)),
        );
        fc.pre(Math.abs(nearest - margin_m) > 1e-6);
        const expected = isInPolygon([x, y], ring, 0) && nearest > margin_m;
        expect(roomWithin(given, margin_m).contains(x, y)).toBe(expected);
      }),
      { numRuns: 600 },
    );
  });
});

describe('plants on a lattice', () => {
  const turned = (points: readonly Point[], degrees: number): readonly Point[] => {
    const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    return points.map(([x, y]) => [x * cos - y * sin, x * sin + y * cos]);
  };
  const rectangle = { shape: 'rectangle', length_m: 1.2, width_m: 0.9 } as const;
  test('rows follow a side of a bed that lies askew: as many plants as if it lay straight, far from the origin too', () => {
    for (const lattice of ['square', 'staggered'] as const) {
      const lay = { lattice, spacing_m: 0.3, edgeMargin_m: 0.15 };
      const straight = bestInOutline({ ...lay, outline: { shape: 'polygon', vertices_m: cornersOf(rectangle) } });
      const askew = turned(cornersOf(rectangle), 25).map(([x, y]): Point => [x + 7, y - 4]);
      const found = bestInOutline({ ...lay, outline: { shape: 'polygon', vertices_m: askew } });
      expect(found.plants).toBe(straight.plants);
      expect(found.plants).toBe(found.points_m.length);
      // along, across, or along one of the sides: all of these, less 25 degrees, are whole right angles
      expect(((found.turn_deg - 25 + 360) % 30) * ((found.turn_deg + 360) % 30)).toBeCloseTo(0, 6);
    }
    // 1.2 by 0.9 m at 30 cm with 15 cm to the edge: four by three
    expect(bestInOutline({ outline: rectangle, lattice: 'square', spacing_m: 0.3, edgeMargin_m: 0.15 }).plants).toBe(12);
  });
  test('the search over offsets holds what the exact rule holds in a round bed; centred, both stand alike', () => {
    for (const lattice of ['square', 'staggered'] as const)
      for (const diameter_m of [0.5, 0.8, 1]) {
        const lay = { lattice, spacing_m: 0.2, edgeMargin_m: 0.1 };
        const outline = { shape: 'round', diameter_m } as const;
        expect(bestInOutline({ ...lay, outline }).plants).toBe(bestInDisc({ ...lay, diameter_m }).plants);
        const sorted = (points: readonly Point[]) =>
          points.map(([x, y]) => `${x.toFixed(6)} ${y.toFixed(6)}`.replaceAll('-0.000000', '0.000000')).sort();
        expect(sorted(centredInOutline({ ...lay, outline }).points_m)).toEqual(
          sorted(centredInDisc({ ...lay, diameter_m }).points_m),
        );
      }
  });
  // points of the square lattice within R of its own point: 1, 5, 9, 13, 21 (Gauss' circle); of the triangular 1, 7, 13, 19
  test('centred round beds hold the counts of the circle problem; a margin beyond the bed holds none', () => {
    const centred = (lattice: 'square' | 'staggered', reach: number) =>
      centredInDisc({ diameter_m: 2 * reach, spacing_m: 1, edgeMargin_m: 0, lattice }).plants;
    expect([0.5, 1, 1.5, 2, Math.sqrt(5)].map((reach) => centred('square', reach))).toEqual([1, 5, 9, 13, 21]);
    expect([0.5, 1, Math.sqrt(3), 2].map((reach) => centred('staggered', reach))).toEqual([1, 7, 13, 19]);
    expect(centredInDisc({ diameter_m: 1, spacing_m: 1, edgeMargin_m: 0.6, lattice: 'square' })).toEqual({
      plants: 0,
      points_m: [],
    });
    expect(bestInDisc({ diameter_m: 1, spacing_m: 1, edgeMargin_m: 0.6, lattice: 'square' })).toEqual({
      plants: 0,
      points_m: [],
    });
    // half a spacing to the edge unless told: a disc of 1 m holds one plant at 1 m
    expect(centredInDisc({ diameter_m: 1, spacing_m: 1, lattice: 'square' }).plants).toBe(1);
  });
  // the most points of a lattice in a free disc: four in a square's own circle, three in a triangle's, two across a spacing
  test('laid freely a disc holds more than from its middle', () => {
    const best = (lattice: 'square' | 'staggered', reach: number) =>
      bestInDisc({ diameter_m: 2 * reach, spacing_m: 1, edgeMargin_m: 0, lattice });
    expect([0.4, 0.5, Math.SQRT1_2, 1.5].map((reach) => best('square', reach).plants)).toEqual([1, 2, 4, 9]);
    expect([0.5, 1 / Math.sqrt(3), 1].map((reach) => best('staggered', reach).plants)).toEqual([2, 3, 7]);
    for (const [x, y] of best('square', Math.SQRT1_2).points_m) expect(Math.hypot(x, y)).toBeCloseTo(Math.SQRT1_2, 6);
  });
  test('the most circles of a round bed by the table, its own radius included; beyond the table none is told (Graham et al. 1998)', () => {
    expect([1, 1.99, 2, 2.154, 3, 3.303, 9.016].map(mostCircles)).toEqual([1, 1, 2, 3, 7, 7, 64]);
    expect([mostCircles(9.017), mostCircles(20)]).toEqual([undefined, undefined]);
    expect([1, 7, 65].map(packingRadiusRatio)).toEqual([1, 3, 9.017]);
    // Oler: 2 m2 and 6 m round at 1 m: 4/sqrt(3) + 3 + 1
    expect(packingBound({ shape: 'rectangle', length_m: 2, width_m: 1 }, 1)).toBe(6);
  });
  test('a round bed takes the most, unless a plant in its middle is asked for', () => {
    const given = {
      outline: { shape: 'round', diameter_m: Math.SQRT2 },
      spacing: { pattern: 'square', spacing_m: 1 },
      edgeMargin_m: 0,
    } as const;
    expect([plantsInBed(given).plants, plantsInBed({ ...given, layout: 'centred' }).plants]).toEqual([4, 1]);
  });
  test('a straight bed is laid out from its margins, also where a plant in the middle is asked for', () => {
    const given = { outline: { ...rectangle, length_m: 2, width_m: 1 }, spacing: { pattern: 'square', spacing_m: 0.3 } } as const;
    expect(plantsInBed({ ...given, layout: 'centred' })).toEqual(plantsInBed(given));
  });
  test('rows of an L are cut by its bay; each piece is filled from its middle', () => {
    const rows = rowsInOutline({
      outline: { shape: 'polygon', vertices_m: ell },
      rowSpacing_m: 2,
      inRow_m: 0.5,
      edgeMargin_m: 0.1,
    });
    // one row through the foot (2.8 m: six plants) and one through the stem (0.8 m: two)
    expect([rows.rows, rows.plants]).toEqual([2, 8]);
    const [foot, stem] = [rows.points_m.filter(([, y]) => y < 1), rows.points_m.filter(([, y]) => y > 1)];
    expect([foot.length, stem.length]).toEqual([6, 2]);
    const mean = (list: readonly Point[]) => list.reduce((sum, [x]) => sum + x, 0) / list.length;
    expect(mean(foot)).toBeCloseTo(1.5, 6);
    expect(mean(stem)).toBeCloseTo(0.5, 6);
    expect((foot[1]?.[0] ?? 0) - (foot[0]?.[0] ?? 0)).toBeCloseTo(0.5, 9);
    expect((stem[0]?.[1] ?? 0) - (foot[0]?.[1] ?? 0)).toBeCloseTo(2, 9);
  });
  test('without a margin a row ends at the edges themselves', () => {
    const rows = rowsInOutline({
      outline: { shape: 'polygon', vertices_m: ell },
      rowSpacing_m: 2,
      inRow_m: 0.5,
      edgeMargin_m: 0,
    });
    // 3 m of foot hold seven plants, 1 m of stem three
    expect([rows.rows, rows.plants]).toEqual([2, 10]);
    expect(Math.min(...rows.points_m.map(([x]) => x))).toBeCloseTo(0, 9);
  });
  test('every second row of a staggered bed lies half a spacing on, the whole in the middle', () => {
    const { points_m, plants } = plantsInBed({
      outline: { shape: 'rectangle', length_m: 1.5, width_m: 0.6 },
      spacing: { pattern: 'staggered', spacing_m: 0.3 },
    });
    const row = (sign: number) => points_m.filter(([, y]) => Math.sign(y) === sign).map(([x]) => Number(x.toFixed(6)));
    expect([plants, row(-1), row(1)]).toEqual([9, [-0.6, -0.3, 0, 0.3, 0.6], [-0.45, -0.15, 0.15, 0.45]]);
  });
  test('rows of an even outline lie about its middle line where that costs no plant', () => {
    const oval = rowsInOutline({
      outline: { shape: 'oval', length_m: 3, width_m: 1 },
      rowSpacing_m: 0.4,
      inRow_m: 0.3,
      edgeMargin_m: 0.05,
    });
    expect(oval.rows).toBe(3);
    expect([...new Set(oval.points_m.map(([, y]) => Number(y.toFixed(6)) + 0))]).toEqual([-0.4, 0, 0.4]);
    // middle row 2.9 m long: ten plants
    expect(oval.points_m.filter(([, y]) => Math.abs(y) < 1e-9)).toHaveLength(10);
    expect(
      rowsInOutline({ outline: { shape: 'round', diameter_m: 0.2 }, rowSpacing_m: 0.4, inRow_m: 0.3, edgeMargin_m: 0.2 }),
    ).toEqual({
      plants: 0,
      rows: 0,
      points_m: [],
    });
  });
});
