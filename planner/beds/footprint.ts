import { computed, entry, type Working } from '../working.ts';
import { type Outline, requireOutline } from './outline.ts';
import { signedArea_m2 } from './polygon.ts';

/** Area of a regular hexagon and octagon by the width across flats, as a multiple of its square. */
const HEXAGON_AREA = Math.sqrt(3) / 2;
const OCTAGON_AREA = 2 * (Math.SQRT2 - 1);

/**
 * Area of a bed seen from above, as if by a plan.
 *
 *   rectangle L W;  round pi D2/4;  ellipse pi L W/4;  oval (stadium) (L - W) W + pi W2/4
 *   hexagon 0.8660254 F2;  octagon 0.8284271 F2;  polygon by the shoelace rule
 *
 *   L, W  length, width    m   more than 0
 *   D     diameter         m   more than 0
 *   F     across flats     m   more than 0
 *
 * Source: plane geometry; the constants are sqrt(3)/2 and 2(sqrt(2) - 1).
 * @throws InputError naming the field
 */
export function footprint_m2(outline: Outline): number {
  requireOutline(outline);
  return plainArea_m2(outline);
}

/** The same without the checks, for loops over sections of a bed already checked. */
export function plainArea_m2(outline: Outline): number {
  switch (outline.shape) {
    case 'rectangle':
      return outline.length_m * outline.width_m;
    case 'round':
      return (Math.PI * outline.diameter_m ** 2) / 4;
    case 'ellipse':
      return (Math.PI * outline.length_m * outline.width_m) / 4;
    case 'oval':
      return (outline.length_m - outline.width_m) * outline.width_m + (Math.PI * outline.width_m ** 2) / 4;
    case 'hexagon':
      return HEXAGON_AREA * outline.acrossFlats_m ** 2;
    case 'octagon':
      return OCTAGON_AREA * outline.acrossFlats_m ** 2;
    case 'polygon':
      return Math.abs(signedArea_m2(outline.vertices_m));
  }
}

/** Side of a regular hexagon: across flats over the square root of 3. */
export function hexagonSide_m(acrossFlats_m: number): number {
  return acrossFlats_m / Math.sqrt(3);
}

const formulas: Readonly<Record<Outline['shape'], string>> = {
  rectangle: 'A = L W',
  round: 'A = pi D²/4',
  ellipse: 'A = pi L W/4',
  oval: 'A = (L − W) W + pi W²/4',
  hexagon: 'A = 0.8660254 F²',
  octagon: 'A = 0.8284271 F²',
  polygon: 'A = ½ |Σ (x_i y_(i+1) − x_(i+1) y_i)|',
};

/** The sizes of an outline by the letters of its formula. */
export function sizesOf(
  outline: Outline,
): readonly { readonly symbol: string; readonly name: string; readonly value_m: number }[] {
  switch (outline.shape) {
    case 'round':
      return [{ symbol: 'D', name: 'diameter', value_m: outline.diameter_m }];
    case 'hexagon':
    case 'octagon':
      return [{ symbol: 'F', name: 'width across flats', value_m: outline.acrossFlats_m }];
    case 'polygon':
      return [];
    default:
      return [
        { symbol: 'L', name: 'length', value_m: outline.length_m },
        { symbol: 'W', name: 'width', value_m: outline.width_m },
      ];
  }
}

export function explainFootprint(outline: Outline): Working {
  const result = { value: footprint_m2(outline), unit: 'm2' };
  const symbols = sizesOf(outline).map((size) => ({
    symbol: size.symbol,
    name: size.name,
    figure: { value: size.value_m, unit: 'm' },
    origin: entry('the bed or its design'),
  }));
  const corners =
    outline.shape === 'polygon'
      ? [
          {
            symbol: 'n',
            name: 'corners',
            figure: { value: outline.vertices_m.length, unit: 'count' },
            origin: entry('the drawing'),
          },
        ]
      : [];
  return {
    title: 'Bed area',
    formula: formulas[outline.shape],
    symbols: [...symbols, ...corners, { symbol: 'A', name: 'area seen from above', figure: result, origin: computed() }],
    steps: [
      {
        text: 'Area of the outline',
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
