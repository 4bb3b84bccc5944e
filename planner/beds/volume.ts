import { refuse, requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';
import { significant } from '../units/significant.ts';
import { computed, entry, type Working } from '../working.ts';
import { plainArea_m2 } from './footprint.ts';
import { type BedForm, outlineAt, requireForm } from './form.ts';

/**
 * Litres that a bed holds between two heights above its floor.
 *
 *   V = h (A1 + 4 Am + A2)/6
 *
 *   h            height between the two levels                    m    0 or more
 *   A1, Am, A2   area at the lower, middle and upper level        m2
 *
 * The rule is exact here: in every form of {@link BedForm} the area is at most a square function of height (straight and
 * leaning walls, frustum of a cone, ridge, half-ellipsoid, paraboloid, cone). The mean of the end areas is not: about 1 %
 * high in a common leaning trough. Equal depths in a leaning bed are not equal volumes.
 * Source: prismoidal rule, solid geometry; pile shapes after USDA Forest Service PNW-GTR-364 (memory).
 * @throws InputError naming the field
 */
export function volumeBetween_L(form: BedForm, from_m: number, to_m: number): number {
  requireForm(form);
  requireRange('from_m', from_m, 0, form.depth_m * (1 + 1e-9), 'm');
  requireRange('to_m', to_m, from_m, form.depth_m * (1 + 1e-9), 'm');
  return plainVolume_L(form, from_m, to_m);
}

/** The same without the checks, for a form already checked. */
export function plainVolume_L(form: BedForm, from_m: number, to_m: number): number {
  const area = (height_m: number): number => plainArea_m2(outlineAt(form, height_m));
  const sum = area(from_m) + 4 * area((from_m + to_m) / 2) + area(to_m);
  return convert(((to_m - from_m) * sum) / 6, 'm3', 'L');
}

/** Litres from the floor to a depth of fill. @throws InputError when the depth is above the wall */
export function volumeTo_L(form: BedForm, fillDepth_m: number): number {
  requireForm(form);
  if (fillDepth_m > form.depth_m * (1 + 1e-9))
    refuse('fillDepth_m', 'too-large', `The fill is ${fillDepth_m} m deep, above the wall: at most ${form.depth_m} m fits.`);
  return volumeBetween_L(form, 0, fillDepth_m);
}

/** Litres to the brim or crown. */
export const fullVolume_L = (form: BedForm): number => volumeTo_L(form, form.depth_m);

/**
 * Height above the floor up to which a bed holds a volume: the root of V(z) = V, found by halving the interval, which
 * cannot fail since V rises strictly.
 * @throws InputError when the volume is negative or more than the bed holds
 */
export function heightHolding_m(form: BedForm, volume_L: number): number {
  const full_L = fullVolume_L(form);
  requireRange('volume_L', volume_L, 0, full_L * (1 + 1e-9), 'L');
  let low = 0;
  let high = form.depth_m;
  for (let turn = 0; turn < 60; turn += 1) {
    const middle = (low + high) / 2;
    if (plainVolume_L(form, 0, middle) < volume_L) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

export function explainVolume(form: BedForm, fillDepth_m: number): Working {
  const result = { value: volumeTo_L(form, fillDepth_m), unit: 'bulk_L' };
  const areas = [0, fillDepth_m / 2, fillDepth_m].map((height_m) => plainArea_m2(outlineAt(form, height_m)));
  const names = ['area at the floor', 'area at half height', 'area at the surface'];
  return {
    title: 'Volume of the bed',
    formula: 'V = h (A1 + 4 Am + A2)/6',
    symbols: [
      { symbol: 'h', name: 'depth of fill', figure: { value: fillDepth_m, unit: 'm' }, origin: entry('the bed or its design') },
      ...['A1', 'Am', 'A2'].map((symbol, at) => ({
        symbol,
        name: names[at] ?? '',
        figure: { value: areas[at] ?? 0, unit: 'm2' },
        origin: computed('outline at that height'),
      })),
    ],
    steps: [
      {
        text: 'Depth times the weighted mean area',
        figures: areas.map((area) => `${significant(area, 4)} m²`).join(', '),
        result,
      },
    ],
    sources: ['Prismoidal rule, exact for walls that are upright or lean evenly and for mounds of these shapes'],
    notes: [],
    result,
  };
}
