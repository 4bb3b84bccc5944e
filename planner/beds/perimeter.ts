import { computed, type Working } from '../working.ts';
import { hexagonSide_m, sizesOf } from './footprint.ts';
import { type Outline, requireOutline } from './outline.ts';
import { corner } from './polygon.ts';

/**
 * Way once round a bed.
 *
 *   rectangle 2 (L + W);  round pi D;  oval 2 (L - W) + pi W;  hexagon 6 F/sqrt(3);  octagon 8 F tan(pi/8)
 *   ellipse pi (a + b)(1 + 3 k/(10 + sqrt(4 - 3 k))), k = ((a - b)/(a + b))2, a and b the half-axes
 *
 * The ellipse has no closed form; the error here is under 0.05 % up to an axis ratio of 20.
 * Source: plane geometry; the ellipse by Ramanujan's second approximation (memory).
 * @throws InputError naming the field
 */
export function perimeter_m(outline: Outline): number {
  requireOutline(outline);
  switch (outline.shape) {
    case 'rectangle':
      return 2 * (outline.length_m + outline.width_m);
    case 'round':
      return Math.PI * outline.diameter_m;
    case 'oval':
      return 2 * (outline.length_m - outline.width_m) + Math.PI * outline.width_m;
    case 'ellipse':
      return ellipsePerimeter_m(outline.length_m / 2, outline.width_m / 2);
    case 'hexagon':
      return 6 * hexagonSide_m(outline.acrossFlats_m);
    case 'octagon':
      return 8 * outline.acrossFlats_m * Math.tan(Math.PI / 8);
    case 'polygon':
      return outline.vertices_m.reduce((sum, [x, y], at) => {
        const [nx, ny] = corner(outline.vertices_m, at + 1);
        return sum + Math.hypot(nx - x, ny - y);
      }, 0);
  }
}

function ellipsePerimeter_m(a: number, b: number): number {
  const k = ((a - b) / (a + b)) ** 2;
  return Math.PI * (a + b) * (1 + (3 * k) / (10 + Math.sqrt(4 - 3 * k)));
}

export function explainPerimeter(outline: Outline): Working {
  const result = { value: perimeter_m(outline), unit: 'm' };
  return {
    title: 'Perimeter',
    formula: 'the way once round the outline',
    symbols: [{ symbol: 'P', name: 'perimeter', figure: result, origin: computed() }],
    steps: [
      {
        text: 'Sides and arcs added',
        figures: sizesOf(outline)
          .map((size) => `${size.symbol} = ${size.value_m} m`)
          .join(', '),
        result,
      },
    ],
    sources: ['Plane geometry'],
    notes: [],
    result,
  };
}
