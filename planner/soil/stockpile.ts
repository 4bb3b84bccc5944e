import { volumeTo_L } from '../beds/volume.ts';
import { refuse, requirePositive, requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';
import { entry, type Working } from '../working.ts';

/** Section across a windrow: a triangle, a parabola, half an ellipse, or a half-circle (as wide as twice its height). */
export type WindrowSection = 'triangle' | 'parabola' | 'half-ellipse' | 'semicircle';

/** A heap as a grower measures it. */
export type Heap =
  | { readonly shape: 'cone'; readonly diameter_m: number; readonly height_m: number }
  | {
      readonly shape: 'half-ellipsoid' | 'paraboloid';
      readonly length_m: number;
      readonly width_m: number;
      readonly height_m: number;
    }
  | {
      readonly shape: 'windrow';
      readonly section: WindrowSection;
      readonly length_m: number;
      readonly width_m: number;
      readonly height_m: number;
      /** The ends slope as half-cones, within the length at the base; only for a triangle. */
      readonly coneEnds?: boolean;
    };

/** Area across a windrow as a multiple of width times height. */
const sectionArea: Readonly<Record<Exclude<WindrowSection, 'semicircle'>, number>> = {
  triangle: 1 / 2,
  parabola: 2 / 3,
  'half-ellipse': Math.PI / 4,
};

/**
 * Loose volume of a heap by its shape.
 *
 *   cone pi D2 h/12;  half-ellipsoid pi L W h/6;  paraboloid pi L W h/8
 *   windrow: triangle W h L/2, parabola 2 W h L/3, half-ellipse pi W h L/4, semicircle pi h2 L/2
 *   triangle with half-cone ends, L at the base: W h (L - W)/2 + pi W2 h/12
 *
 *   D, L, W, h   measured at the base, and the height     m   more than 0
 *
 * Source: solid geometry; half-ellipsoid and paraboloid are pile shapes of USDA PNW-GTR-364 (memory).
 * @throws InputError naming the field
 */
export function heapVolume_m3(heap: Heap): number {
  requirePositive('height_m', heap.height_m, 'm');
  switch (heap.shape) {
    case 'cone':
      requirePositive('diameter_m', heap.diameter_m, 'm');
      return (Math.PI * heap.diameter_m ** 2 * heap.height_m) / 12;
    case 'half-ellipsoid':
    case 'paraboloid': {
      const form = { solid: heap.shape, length_m: heap.length_m, width_m: heap.width_m, depth_m: heap.height_m };
      return convert(volumeTo_L(form, heap.height_m), 'L', 'm3');
    }
    case 'windrow':
      requirePositive('length_m', heap.length_m, 'm');
      requirePositive('width_m', heap.width_m, 'm');
      return windrowVolume_m3(heap);
  }
}

function windrowVolume_m3(heap: Extract<Heap, { readonly shape: 'windrow' }>): number {
  const { length_m: L, width_m: W, height_m: h } = heap;
  if (heap.section === 'semicircle' && Math.abs(W - 2 * h) > 0.02 * W)
    refuse('height_m', 'not-a-half-circle', `A half-circle ${W} m wide is ${W / 2} m high. Take half an ellipse instead.`);
  if (heap.coneEnds !== true) return windrowSection_m2(heap.section, W, h) * L;
  if (heap.section !== 'triangle')
    refuse('section', 'no-cone-ends', 'Half-cone ends belong to a windrow with a triangular section.');
  if (L < W)
    refuse('length_m', 'too-small', `A windrow with cone ends is at least as long as wide: ${W} m. Measure it as a cone.`);
  return (W * h * (L - W)) / 2 + (Math.PI * W ** 2 * h) / 12;
}

/**
 * Area across a windrow. A half-circle goes by its height alone; that it is twice as wide is asked where a heap is entered.
 * @throws InputError naming the field
 */
export function windrowSection_m2(section: WindrowSection, width_m: number, height_m: number): number {
  requirePositive('width_m', width_m, 'm');
  requirePositive('height_m', height_m, 'm');
  return section === 'semicircle' ? (Math.PI * height_m ** 2) / 2 : sectionArea[section] * width_m * height_m;
}

/** Height of a cone from its base and angle of repose: h = D/2 tan a. @throws InputError */
export function coneHeight_m(diameter_m: number, repose_deg: number): number {
  requirePositive('diameter_m', diameter_m, 'm');
  requireRange('repose_deg', repose_deg, 1, 80, '°');
  return (diameter_m / 2) * Math.tan((repose_deg * Math.PI) / 180);
}

/** Diameter of a round heap from the tape laid round its foot: girth/pi. @throws InputError */
export function diameterFromGirth_m(girth_m: number): number {
  requirePositive('girth_m', girth_m, 'm');
  return girth_m / Math.PI;
}

/**
 * Height of a heap by a board leant against it: the board's rise over a short measured stretch of it, scaled to the
 * board's whole length (similar triangles). @throws InputError
 */
export function heightByBoard_m(input: {
  readonly board_m: number;
  readonly rise_m: number;
  readonly stretch_m: number;
}): number {
  requirePositive('board_m', input.board_m, 'm');
  requirePositive('stretch_m', input.stretch_m, 'm');
  requireRange('rise_m', input.rise_m, 0, input.stretch_m, 'm');
  return (input.board_m * input.rise_m) / input.stretch_m;
}

/**
 * Volume that windrows hold on a site: length = site area/(width + aisle), times the section.
 * Source: New Jersey leaf composting manual, Appendix A (site capacity per acre).
 * @throws InputError naming the field
 */
export function windrowSite_m3(input: {
  readonly siteArea_m2: number;
  readonly width_m: number;
  readonly height_m: number;
  readonly aisle_m: number;
  readonly section: WindrowSection;
}): number {
  requirePositive('siteArea_m2', input.siteArea_m2, 'm2');
  requireRange('aisle_m', input.aisle_m, 0, 100, 'm');
  return (input.siteArea_m2 / (input.width_m + input.aisle_m)) * windrowSection_m2(input.section, input.width_m, input.height_m);
}

export function explainHeap(heap: Heap): Working {
  const result = { value: heapVolume_m3(heap), unit: 'm3' };
  const formulas = {
    cone: 'V = pi D² h/12',
    'half-ellipsoid': 'V = pi L W h/6',
    paraboloid: 'V = pi L W h/8',
    windrow: heap.shape === 'windrow' && heap.coneEnds === true ? 'V = W h (L − W)/2 + pi W² h/12' : 'V = section × L',
  } as const;
  const sizes = Object.entries(heap).filter((pair): pair is [string, number] => typeof pair[1] === 'number');
  return {
    title: 'Heap',
    formula: formulas[heap.shape],
    symbols: sizes.map(([name, value]) => ({
      symbol: name.charAt(0).toUpperCase(),
      name: name.replace('_m', ''),
      figure: { value, unit: 'm' },
      origin: entry(),
    })),
    steps: [{ text: 'Volume by shape', figures: sizes.map(([, value]) => `${value} m`).join(' × '), result }],
    sources: ['Solid geometry'],
    notes: ['A heap measured so is loose. Slumped or walked-on heaps hold more than they look.'],
    result: { ...result },
  };
}
