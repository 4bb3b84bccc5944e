import { InputError, refuse } from '../errors.ts';

type Point = readonly [x_m: number, y_m: number];

const EPS = 1e-12;

/**
 * Area inside a polygon, positive when its corners run counter-clockwise.
 *
 *   A = 1/2 sum (x_i y_(i+1) - x_(i+1) y_i)
 *
 * Source: the shoelace rule, from memory. Does not hold for a polygon that crosses itself.
 */
export function signedArea_m2(vertices_m: readonly Point[]): number {
  let twice = 0;
  for (let at = 0; at < vertices_m.length; at += 1) {
    const [x1, y1] = corner(vertices_m, at);
    const [x2, y2] = corner(vertices_m, at + 1);
    twice += x1 * y2 - x2 * y1;
  }
  return twice / 2;
}

/** Middle of the area of a polygon; the mean of its corners where the area is nil. */
export function centroid_m(vertices_m: readonly Point[]): Point {
  const area = signedArea_m2(vertices_m);
  let x = 0;
  let y = 0;
  for (let at = 0; at < vertices_m.length; at += 1) {
    const [x1, y1] = corner(vertices_m, at);
    const [x2, y2] = corner(vertices_m, at + 1);
    const cross = x1 * y2 - x2 * y1;
    x += (x1 + x2) * cross;
    y += (y1 + y2) * cross;
  }
  if (Math.abs(area) > EPS) return [x / (6 * area), y / (6 * area)];
  const n = Math.max(1, vertices_m.length);
  return [vertices_m.reduce((sum, p) => sum + p[0], 0) / n, vertices_m.reduce((sum, p) => sum + p[1], 0) / n];
}

/** True when a point lies inside a polygon or on its edge. */
export function isInPolygon([px, py]: Point, vertices_m: readonly Point[], tolerance_m = 1e-9): boolean {
  let inside = false;
  for (let at = 0; at < vertices_m.length; at += 1) {
    const a = corner(vertices_m, at);
    const b = corner(vertices_m, at + 1);
    if (distanceToSegment_m([px, py], a, b) <= tolerance_m) return true;
    if (a[1] > py !== b[1] > py && px < ((b[0] - a[0]) * (py - a[1])) / (b[1] - a[1]) + a[0]) inside = !inside;
  }
  return inside;
}

/** Shortest way from a point to a straight side. */
export function distanceToSegment_m([px, py]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const dx = bx - ax;
  const dy = by - ay;
  const length2 = dx * dx + dy * dy;
  const t = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / length2));
  return Math.hypot(px - (ax + t * dx), py - (ay + t * dy));
}

/** The two sides of a polygon that cross, by the numbers of their first corners (from 1), or nothing. */
export function crossingSides(vertices_m: readonly Point[]): readonly [number, number] | undefined {
  const n = vertices_m.length;
  for (let i = 0; i < n; i += 1) {
    for (let j = i + 1; j < n; j += 1) {
      if (j === i + 1 || (i === 0 && j === n - 1)) continue;
      if (segmentsMeet(corner(vertices_m, i), corner(vertices_m, i + 1), corner(vertices_m, j), corner(vertices_m, j + 1)))
        return [i + 1, j + 1];
    }
  }
  return undefined;
}

/**
 * Refuses what is no outline: under three corners, no area, a side without length, sides that cross or touch.
 * @throws InputError naming the field and the sides
 */
export function requireSimplePolygon(vertices_m: readonly Point[], path: string): void {
  if (vertices_m.length < 3) refuse(path, 'too-few', 'An outline needs at least three corners.');
  const faults = vertices_m.flatMap(([x, y], at) => {
    if (!Number.isFinite(x) || !Number.isFinite(y))
      return [{ path: `${path}.${at}`, code: 'not-a-number', message: `Corner ${at + 1} needs two numbers.` }];
    const [nx, ny] = corner(vertices_m, at + 1);
    const isTwice = Math.hypot(nx - x, ny - y) <= 1e-6; // not where the next corner is no number: that is told there
    const message = `Corner ${at + 1} and the next are the same place: leave one out.`;
    return isTwice ? [{ path: `${path}.${at}`, code: 'twice', message }] : [];
  });
  if (faults.length > 0) throw new InputError(faults);
  const crossing = crossingSides(vertices_m);
  if (crossing !== undefined)
    refuse(
      path,
      'crosses-itself',
      `The outline crosses itself: side ${crossing[0]} meets side ${crossing[1]}. List the corners in order round the bed.`,
    );
  if (Math.abs(signedArea_m2(vertices_m)) < 1e-6)
    refuse(path, 'no-area', 'The corners lie on one line: an outline needs an area.');
}

export function corner(vertices_m: readonly Point[], at: number): Point {
  return vertices_m[at % vertices_m.length] ?? [0, 0];
}

const side = (a: Point, b: Point, p: Point): number => (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);

function segmentsMeet(a: Point, b: Point, c: Point, d: Point): boolean {
  const s1 = side(a, b, c);
  const s2 = side(a, b, d);
  const s3 = side(c, d, a);
  const s4 = side(c, d, b);
  if (s1 * s2 < -EPS && s3 * s4 < -EPS) return true;
  const near = 1e-9;
  return [
    [c, a, b],
    [d, a, b],
    [a, c, d],
    [b, c, d],
  ].some(([p, q, r]) => distanceToSegment_m(p as Point, q as Point, r as Point) <= near);
}
