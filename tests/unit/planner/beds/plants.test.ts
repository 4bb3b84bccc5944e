import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestInDisc, centredInDisc } from '../../../../planner/beds/disc-lattice.ts';
import { extentOf } from '../../../../planner/beds/extent.ts';
import type { Outline } from '../../../../planner/beds/outline.ts';
import { bestInOutline } from '../../../../planner/beds/outline-lattice.ts';
import { mostCircles, packingBound, packingRadiusRatio } from '../../../../planner/beds/packing-bound.ts';
import { explainPlants, plantsInBed } from '../../../../planner/beds/plant-count.ts';
import { bedRows, plantsInRow } from '../../../../planner/beds/plants-in-row.ts';
import { squareInRectangle, staggeredInRectangle } from '../../../../planner/beds/rectangle-lattice.ts';
import { InputError } from '../../../../planner/errors.ts';

const M_PER_CM = 0.01;

describe('a round bed 80 cm across', () => {
  // our own brute-force count over every offset: no published source
  test.each([
    [10, 5, 41, 48, 37, 43],
    [10, 0, 52, 61, 49, 61],
    [15, 7.5, 17, 19, 13, 19],
    [15, 0, 24, 31, 21, 31],
    [20, 10, 9, 10, 9, 7],
    [20, 0, 14, 19, 13, 19],
    [30, 15, 4, 3, 1, 1],
    [30, 0, 7, 8, 5, 7],
    [45, 22.5, 1, 1, 1, 1],
    [45, 0, 4, 4, 1, 1],
  ])('at %d cm with %d cm margin', (spacing_cm, margin_cm, square, staggered, squareCentred, staggeredCentred) => {
    const bed = { diameter_m: 0.8, spacing_m: spacing_cm * M_PER_CM, edgeMargin_m: margin_cm * M_PER_CM };
    expect(bestInDisc({ ...bed, lattice: 'square' }).plants).toBe(square);
    expect(bestInDisc({ ...bed, lattice: 'staggered' }).plants).toBe(staggered);
    expect(centredInDisc({ ...bed, lattice: 'square' }).plants).toBe(squareCentred);
    expect(centredInDisc({ ...bed, lattice: 'staggered' }).plants).toBe(staggeredCentred);
  });
});

test('rows and blocks as printed', () => {
  // Maine and Georgia extension charts; Colorado State University Extension GardenNotes 713
  expect(plantsInRow({ length_m: 3.048, spacing_m: 0.4572 })).toBe(6);
  expect(plantsInRow({ length_m: 3.048, spacing_m: 0.4572, endMargin_m: 0 })).toBe(7);
  expect(plantsInRow({ length_m: 30.48, spacing_m: 0.3048 })).toBe(100);
  expect(squareInRectangle({ length_m: 0.9144, width_m: 0.6096, spacing_m: 0.0762 }).plants).toBe(96);
  expect(
    bedRows({ length_m: 30.48, width_m: 0.762, rowSpacing_m: 0.254, inRow_m: 0.1524, sideMargin_m: 0.127, endMargin_m: 0.0762 }),
  ).toMatchObject({
    rows: 3,
    plantsPerRow: 200,
    plants: 600,
  });
});

const anySize = fc.double({ min: 0.2, max: 2.5, noNaN: true });
const anyConvex: fc.Arbitrary<Outline> = fc.oneof(
  fc.record({ shape: fc.constant('round' as const), diameter_m: anySize }),
  fc.record({ shape: fc.constant('hexagon' as const), acrossFlats_m: anySize }),
  fc.record({ shape: fc.constant('rectangle' as const), length_m: anySize, width_m: anySize }),
  fc.tuple(anySize, anySize).map(([a, b]) => ({ shape: 'oval' as const, length_m: Math.max(a, b), width_m: Math.min(a, b) })),
);
const anyPattern = fc.constantFrom('square' as const, 'staggered' as const);
const anySpacing = fc.double({ min: 0.12, max: 0.6, noNaN: true });

test('no layout has more plants than any packing can have', () => {
  fc.assert(
    fc.property(anyConvex, anyPattern, anySpacing, fc.boolean(), (outline, pattern, spacing_m, toTheEdge) => {
      const count = plantsInBed({ outline, spacing: { pattern, spacing_m }, edgeMargin_m: toTheEdge ? 0 : spacing_m / 2 });
      expect(count.plants).toBeLessThanOrEqual(packingBound(outline, spacing_m));
      if (outline.shape !== 'round' || count.isOneInTheMiddle) return;
      const ratio = outline.diameter_m / spacing_m + (toTheEdge ? 1 : 0);
      expect(count.plants).toBeLessThanOrEqual(mostCircles(ratio) ?? Number.POSITIVE_INFINITY);
    }),
    { numRuns: 60 },
  );
});

test('plants stand at least a spacing apart and inside the bed, and the count is the number of places', () => {
  fc.assert(
    fc.property(anyConvex, anyPattern, anySpacing, (outline, pattern, spacing_m) => {
      const { plants, points_m } = plantsInBed({ outline, spacing: { pattern, spacing_m } });
      const { length_m, width_m } = extentOf(outline);
      expect(points_m).toHaveLength(plants);
      points_m.forEach(([x, y], at) => {
        expect(Math.abs(x)).toBeLessThanOrEqual(length_m / 2 + 1e-6);
        expect(Math.abs(y)).toBeLessThanOrEqual(width_m / 2 + 1e-6);
        for (const [ox, oy] of points_m.slice(at + 1)) expect(Math.hypot(ox - x, oy - y)).toBeGreaterThan(spacing_m * (1 - 1e-6));
      });
    }),
    { numRuns: 40 },
  );
});

test('laying a lattice freely never holds fewer plants than in the middle of the bed', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.3, max: 2, noNaN: true }), anySpacing, anyPattern, (diameter_m, spacing_m, lattice) => {
      expect(bestInDisc({ diameter_m, spacing_m, lattice }).plants).toBeGreaterThanOrEqual(
        centredInDisc({ diameter_m, spacing_m, lattice }).plants,
      );
    }),
  );
});

test('the search over offsets finds what the exact rule finds in round beds', () => {
  for (const spacing_m of [0.1, 0.15, 0.2, 0.3]) {
    const exact = bestInDisc({ diameter_m: 0.8, spacing_m, lattice: 'staggered' }).plants;
    const searched = bestInOutline({
      outline: { shape: 'round', diameter_m: 0.8 },
      lattice: 'staggered',
      spacing_m,
      edgeMargin_m: spacing_m / 2,
    });
    expect(searched.plants).toBe(exact);
  }
});

test('rows follow an oval: fewer plants near its ends than a rectangle of the same size', () => {
  const spacing = { pattern: 'rows', rowSpacing_m: 0.15, inRow_m: 0.1 } as const;
  const oval = plantsInBed({ outline: { shape: 'oval', length_m: 2.4, width_m: 0.6 }, spacing });
  const rectangle = plantsInBed({ outline: { shape: 'rectangle', length_m: 2.4, width_m: 0.6 }, spacing });
  expect(oval.plants).toBeGreaterThan(60);
  expect(oval.plants).toBeLessThan(rectangle.plants);
});

test('an L-shaped bed takes no plant in its bay', () => {
  const outline = {
    shape: 'polygon',
    vertices_m: [
      [0, 0],
      [2, 0],
      [2, 0.7],
      [1, 0.7],
      [1, 1.6],
      [0, 1.6],
    ],
  } as const;
  const { points_m } = plantsInBed({ outline, spacing: { pattern: 'square', spacing_m: 0.2 } });
  expect(points_m.some(([x, y]) => x > 0.9 + 1e-9 && y > 0.6 + 1e-9)).toBe(false);
  // by hand: 10 x 3 in the foot, 5 x 5 in the upright
  expect(points_m.length).toBe(55);
});

test('one big plant is offered in the middle when none fits with its margin', () => {
  const count = plantsInBed({ outline: { shape: 'round', diameter_m: 0.4 }, spacing: { pattern: 'square', spacing_m: 0.9 } });
  expect(count).toMatchObject({ plants: 1, isOneInTheMiddle: true });
});

test('which side the rows of a staggered lattice run along is told', () => {
  expect(staggeredInRectangle({ length_m: 2.4384, width_m: 1.2192, spacing_m: 0.3048, edgeMargin_m: 0 }).plants).toBe(45);
  expect(staggeredInRectangle({ length_m: 1, width_m: 0.2, spacing_m: 0.2 })).toMatchObject({ plants: 5, rowsAlong: 'length' });
});

test('a spacing of nothing is refused at its field', () => {
  const bed = { outline: { shape: 'round', diameter_m: 1 }, spacing: { pattern: 'square', spacing_m: 0 } } as const;
  expect(() => plantsInBed(bed)).toThrow(InputError);
  expect(() =>
    plantsInBed({ outline: { shape: 'round', diameter_m: 2 }, spacing: { pattern: 'square', spacing_m: 0.001 } }),
  ).toThrow(/200000 plants/);
  expect(() => plantsInRow({ length_m: 1, spacing_m: -1 })).toThrow(/spacing_m/);
  expect(() => packingRadiusRatio(0)).toThrow(/circles/);
});

test('the working ends in the count', () => {
  const bed = { outline: { shape: 'hexagon', acrossFlats_m: 1.2 }, spacing: { pattern: 'staggered', spacing_m: 0.2 } } as const;
  expect(explainPlants(bed).result.value).toBe(plantsInBed(bed).plants);
});
