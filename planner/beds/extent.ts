import type { Outline, Point } from './outline.ts';

/** Sides of an outline's upright box: along the bed and across it. */
export type Extent = { readonly length_m: number; readonly width_m: number };

export function extentOf(outline: Outline): Extent {
  switch (outline.shape) {
    case 'round':
      return { length_m: outline.diameter_m, width_m: outline.diameter_m };
    case 'hexagon':
      // flats above and below, corners at both ends
      return { length_m: (2 * outline.acrossFlats_m) / Math.sqrt(3), width_m: outline.acrossFlats_m };
    case 'octagon':
      return { length_m: outline.acrossFlats_m, width_m: outline.acrossFlats_m };
    case 'polygon': {
      const xs = outline.vertices_m.map(([x]) => x);
      const ys = outline.vertices_m.map(([, y]) => y);
      return { length_m: Math.max(...xs) - Math.min(...xs), width_m: Math.max(...ys) - Math.min(...ys) };
    }
    default:
      return { length_m: outline.length_m, width_m: outline.width_m };
  }
}

/** The corners of an outline with straight sides, counter-clockwise about its middle; none for a curved one. */
export function cornersOf(outline: Outline): readonly Point[] {
  switch (outline.shape) {
    case 'rectangle': {
      const x = outline.length_m / 2;
      const y = outline.width_m / 2;
      return [
        [-x, -y],
        [x, -y],
        [x, y],
        [-x, y],
      ];
    }
    case 'hexagon':
      return regular(6, outline.acrossFlats_m / Math.sqrt(3), 0);
    case 'octagon':
      return regular(8, outline.acrossFlats_m / 2 / Math.cos(Math.PI / 8), Math.PI / 8);
    case 'polygon':
      return outline.vertices_m;
    default:
      return [];
  }
}

function regular(sides: number, radius_m: number, from_rad: number): readonly Point[] {
  return Array.from({ length: sides }, (_, at): Point => {
    const angle = from_rad + (2 * Math.PI * at) / sides;
    return [radius_m * Math.cos(angle), radius_m * Math.sin(angle)];
  });
}

/** An outline as a ring of points for drawing, import and export; curves in steps of at most `step_deg`. */
export function ringOf(outline: Outline, step_deg = 7.5): readonly Point[] {
  const straight = cornersOf(outline);
  if (straight.length > 0) return straight;
  const steps = Math.ceil(360 / step_deg);
  if (outline.shape === 'oval' && outline.length_m > outline.width_m) {
    const radius_m = outline.width_m / 2;
    const reach_m = (outline.length_m - outline.width_m) / 2;
    const half = Math.ceil(steps / 2);
    const arc = (middle_m: number, from_rad: number): Point[] =>
      Array.from({ length: half + 1 }, (_, at): Point => {
        const angle = from_rad + (Math.PI * at) / half;
        return [middle_m + radius_m * Math.cos(angle), radius_m * Math.sin(angle)];
      });
    return [...arc(reach_m, -Math.PI / 2), ...arc(-reach_m, Math.PI / 2)];
  }
  const { length_m, width_m } = extentOf(outline);
  return Array.from({ length: steps }, (_, at): Point => {
    const angle = (2 * Math.PI * at) / steps;
    return [(length_m / 2) * Math.cos(angle), (width_m / 2) * Math.sin(angle)];
  });
}
