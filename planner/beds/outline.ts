import { refuse, requirePositive } from '../errors.ts';
import { requireSimplePolygon } from './polygon.ts';

/** A place on the site or within a bed, metres: x to the east or along the bed, y to the north or across it. */
export type Point = readonly [x_m: number, y_m: number];

/** The outline of a bed seen from above. All but the polygon are centred on their own middle. */
export type Outline =
  | { readonly shape: 'rectangle'; readonly length_m: number; readonly width_m: number }
  | { readonly shape: 'round'; readonly diameter_m: number }
  /** A stadium: a rectangle with a half-circle at each end. */
  | { readonly shape: 'oval'; readonly length_m: number; readonly width_m: number }
  | { readonly shape: 'ellipse'; readonly length_m: number; readonly width_m: number }
  | { readonly shape: 'hexagon'; readonly acrossFlats_m: number }
  | { readonly shape: 'octagon'; readonly acrossFlats_m: number }
  | { readonly shape: 'polygon'; readonly vertices_m: readonly Point[] };

/**
 * Refuses an outline that cannot be: a size of zero or less, an oval wider than long, a polygon that crosses itself.
 * @throws InputError naming the field
 */
export function requireOutline(outline: Outline, path = ''): void {
  const at = (field: string): string => (path === '' ? field : `${path}.${field}`);
  switch (outline.shape) {
    case 'round':
      requirePositive(at('diameter_m'), outline.diameter_m, 'm');
      return;
    case 'hexagon':
    case 'octagon':
      requirePositive(at('acrossFlats_m'), outline.acrossFlats_m, 'm');
      return;
    case 'polygon':
      requireSimplePolygon(outline.vertices_m, at('vertices_m'));
      return;
    case 'rectangle':
    case 'ellipse':
    case 'oval': {
      requirePositive(at('length_m'), outline.length_m, 'm');
      requirePositive(at('width_m'), outline.width_m, 'm');
      if (outline.shape === 'oval' && outline.width_m > outline.length_m)
        refuse(at('width_m'), 'too-large', `An oval is at least as long as it is wide: at most ${outline.length_m} m fits here.`);
    }
  }
}
