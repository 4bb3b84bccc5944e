import { cornersOf, extentOf, ringOf } from './extent.ts';
import type { Outline, Point } from './outline.ts';
import { corner } from './polygon.ts';

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
      return ellipseRoom(ringOf(outline, 2), side_m, centred);
    case 'polygon':
      return ringRoom(outline.vertices_m, side_m);
  }
}

function ringRoom(ring: readonly Point[], side_m: number): Room {
  const xs = ring.map(([x]) => x);
  const ys = ring.map(([, y]) => y);
  const sides = ring.map((a, at) => {
    const b = corner(ring, at + 1);
    return { ax: a[0], ay: a[1], dx: b[0] - a[0], dy: b[1] - a[1], by: b[1], length2: (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2 };
  });
  const side2 = side_m * side_m;
  // one loop tells both whether a place is inside and how near the edge is: this is asked millions of times
  const contains = (x: number, y: number): boolean => {
    let inside = false;
    let nearest2 = Number.POSITIVE_INFINITY;
    for (const { ax, ay, dx, dy, by, length2 } of sides) {
      const t = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / length2));
      const [px, py] = [x - ax - t * dx, y - ay - t * dy];
      const away2 = px * px + py * py;
      if (side_m > 0 && away2 < side2) return false;
      if (away2 < nearest2) nearest2 = away2;
      if (ay > y !== by > y && x < (dx * (y - ay)) / dy + ax) inside = !inside;
    }
    return inside || nearest2 <= SLACK_m * SLACK_m;
  };
  return { from_m: [Math.min(...xs), Math.min(...ys)], to_m: [Math.max(...xs), Math.max(...ys)], contains };
}

/**
 * The room of an ellipse drawn as a ring: every side moved inwards by the margin, as half-planes. A point well inside needs
 * no look at the sides: the ellipse shrunk by the share that the margin has of its smaller half axis lies within the room.
 */
function ellipseRoom(ring: readonly Point[], side_m: number, box: Pick<Room, 'from_m' | 'to_m'>): Room {
  const sides = new Float64Array(3 * ring.length);
  ring.forEach((a, at) => {
    const b = corner(ring, at + 1);
    const length_m = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const nx = (b[1] - a[1]) / length_m;
    const ny = (a[0] - b[0]) / length_m;
    sides.set([nx, ny, nx * a[0] + ny * a[1] - side_m], 3 * at);
  });
  const [halfX_m, halfY_m] = box.to_m;
  const shrunk = Math.max(0, Math.cos(Math.PI / ring.length) - side_m / Math.min(halfX_m, halfY_m));
  const [wellX_m, wellY_m] = [shrunk * halfX_m, shrunk * halfY_m];
  return {
    ...box,
    contains(x, y) {
      if (shrunk > 0 && (x / wellX_m) ** 2 + (y / wellY_m) ** 2 <= 1) return true;
      for (let at = 0; at < sides.length; at += 3)
        if ((sides[at] ?? 0) * x + (sides[at + 1] ?? 0) * y > (sides[at + 2] ?? 0)) return false;
      return true;
    },
  };
}
