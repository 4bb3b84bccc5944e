import { refuse } from '../errors.ts';
import { computed, entry, type Working } from '../working.ts';
import { type BedForm, requireForm } from './form.ts';
import type { Outline } from './outline.ts';
import { perimeter_m } from './perimeter.ts';
import { corner } from './polygon.ts';

/**
 * Inside area of a bed's walls, for boards, lining or paint.
 *
 *   upright walls   A = P h
 *   leaning walls   A = (P_top + P_bottom)/2 s, s the length of the wall measured up its slope
 *   rectangle       each side its own trapezoid, since ends and sides may lean differently
 *   polygon         each side its own plane quadrilateral
 *
 *   P, h, s         m
 *
 * Exact for a straight or round tapered bed, hexagon, octagon, rectangle and polygon. For an oval whose straight part
 * changes length with height the half-cones are slightly oblique; the lean is then the mean of sides and ends.
 * Source: solid geometry (lateral area of a frustum).
 * @throws InputError naming the field; a mound has no walls
 */
export function wallArea_m2(form: BedForm): number {
  requireForm(form);
  if (form.solid === 'straight') return perimeter_m(form.outline) * form.depth_m;
  if (form.solid !== 'tapered') return refuse('solid', 'no-wall', 'A mound has no walls.');
  const { outline: top, bottom, depth_m } = form;
  if (top.shape === 'rectangle' && bottom.shape === 'rectangle') {
    const sideSlope_m = Math.hypot(depth_m, (top.width_m - bottom.width_m) / 2);
    const endSlope_m = Math.hypot(depth_m, (top.length_m - bottom.length_m) / 2);
    return (top.length_m + bottom.length_m) * sideSlope_m + (top.width_m + bottom.width_m) * endSlope_m;
  }
  if (top.shape === 'polygon' && bottom.shape === 'polygon') {
    return top.vertices_m.reduce((sum, _, at) => {
      const quad = [
        corner(bottom.vertices_m, at),
        corner(bottom.vertices_m, at + 1),
        corner(top.vertices_m, at + 1),
        corner(top.vertices_m, at),
      ];
      return sum + quadrilateral_m2(quad.map(([x, y], i) => [x, y, i < 2 ? 0 : depth_m] as const));
    }, 0);
  }
  return ((perimeter_m(top) + perimeter_m(bottom)) / 2) * Math.hypot(depth_m, meanLean_m(top, bottom));
}

/** How far the wall leans out from floor to brim, level. */
function meanLean_m(top: Outline, bottom: Outline): number {
  if (top.shape === 'round' && bottom.shape === 'round') return (top.diameter_m - bottom.diameter_m) / 2;
  if ('acrossFlats_m' in top && 'acrossFlats_m' in bottom) return (top.acrossFlats_m - bottom.acrossFlats_m) / 2;
  if ('length_m' in top && 'length_m' in bottom) return (top.length_m - bottom.length_m + (top.width_m - bottom.width_m)) / 4;
  return 0;
}

type Solid = readonly [number, number, number];

/** Area of a plane quadrilateral in space: half the cross product of its diagonals. */
function quadrilateral_m2(corners: readonly Solid[]): number {
  const [a, b, c, d] = corners;
  if (a === undefined || b === undefined || c === undefined || d === undefined) return 0;
  const p = [c[0] - a[0], c[1] - a[1], c[2] - a[2]] as const;
  const q = [d[0] - b[0], d[1] - b[1], d[2] - b[2]] as const;
  return Math.hypot(p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]) / 2;
}

export function explainWallArea(form: BedForm): Working {
  const result = { value: wallArea_m2(form), unit: 'm2' };
  return {
    title: 'Inside of the walls',
    formula: form.solid === 'straight' ? 'A = P h' : 'A = (P_top + P_bottom)/2 × slope length, side by side',
    symbols: [
      ...(form.solid === 'straight' || form.solid === 'tapered'
        ? [
            {
              symbol: 'P',
              name: 'way round at the brim',
              figure: { value: perimeter_m(form.outline), unit: 'm' },
              origin: computed(),
            },
          ]
        : []),
      { symbol: 'h', name: 'depth', figure: { value: form.depth_m, unit: 'm_short' }, origin: entry('the bed or its design') },
    ],
    steps: [{ text: 'Walls added', figures: '', result }],
    sources: ['Solid geometry'],
    notes: [],
    result,
  };
}
