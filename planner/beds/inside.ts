import { cornersOf, extentOf, ringOf } from './extent.ts';
import type { Outline, Point } from './outline.ts';
import { corner, distanceToSegment_m, isInPolygon } from './polygon.ts';

/** The room for plants in an outline: every place at least a margin from the edge. */
export type Room = {
  readonly contains: (x_m: number, y_m: number) => boolean;
  /** Box around the outline. */
  readonly from_m: Point;
  readonly to_m: Point;
};

const SLACK_m = 1e-9;

/** Shrinks an outline by a margin all round (its inner parallel curve), as a test for points. */
export function roomWithin(outline: Outline, margin_m: number): Room {
  const { length_m, width_m } = extentOf(outline);
  const centred = { from_m: [-length_m / 2, -width_m / 2], to_m: [length_m / 2, width_m / 2] } as const;
  const side_m = margin_m - SLACK_m;
  switch (outline.shape) {
    case 'rectangle': {
      const x_m = length_m / 2 - side_m;
      const y_m = width_m / 2 - side_m;
      return { ...centred, contains: (x, y) => Math.abs(x) <= x_m && Math.abs(y) <= y_m };
    }
    case 'round': {
      const reach_m = outline.diameter_m / 2 - side_m;
      return { ...centred, contains: (x, y) => reach_m >= 0 && x * x + y * y <= reach_m * reach_m };
    }
    case 'oval': {
      const core_m = (length_m - width_m) / 2;
      const reach_m = width_m / 2 - side_m;
      return { ...centred, contains: (x, y) => reach_m >= 0 && Math.hypot(Math.max(0, Math.abs(x) - core_m), y) <= reach_m };
    }
    case 'hexagon':
    case 'octagon': {
      const sides = cornersOf(outline);
      const apothem_m = outline.acrossFlats_m / 2 - side_m;
      const normals = sides.map((a, at): Point => {
        const b = corner(sides, at + 1);
        const n = Math.hypot(a[0] + b[0], a[1] + b[1]);
        return [(a[0] + b[0]) / n, (a[1] + b[1]) / n];
      });
      return { ...centred, contains: (x, y) => normals.every(([nx, ny]) => nx * x + ny * y <= apothem_m) };
    }
    case 'ellipse':
      return ringRoom(ringOf(outline, 2), side_m);
    case 'polygon':
      return ringRoom(outline.vertices_m, side_m);
  }
}

function ringRoom(ring: readonly Point[], side_m: number): Room {
  const xs = ring.map(([x]) => x);
  const ys = ring.map(([, y]) => y);
  return {
    from_m: [Math.min(...xs), Math.min(...ys)],
    to_m: [Math.max(...xs), Math.max(...ys)],
    contains: (x, y) =>
      isInPolygon([x, y], ring) && ring.every((a, at) => distanceToSegment_m([x, y], a, corner(ring, at + 1)) >= side_m),
  };
}
