import { InputError, refuse, requirePositive } from '../errors.ts';
import { type Outline, type Point, requireOutline } from './outline.ts';

/** The solid that a bed's fill takes up, from its floor (height 0) to its brim or crown. */
export type BedForm =
  | { readonly solid: 'straight'; readonly outline: Outline; readonly depth_m: number }
  /** Straight walls that lean: outline at the brim and at the floor, of one shape. `mayBulge` allows a wider floor. */
  | {
      readonly solid: 'tapered';
      readonly outline: Outline;
      readonly bottom: Outline;
      readonly depth_m: number;
      readonly mayBulge?: boolean;
    }
  | {
      readonly solid: 'half-ellipsoid' | 'paraboloid' | 'cone';
      readonly length_m: number;
      readonly width_m: number;
      readonly depth_m: number;
    }
  /** A long mound with sloped sides and ends and a flat crown. */
  | {
      readonly solid: 'ridge';
      readonly length_m: number;
      readonly width_m: number;
      readonly crownLength_m: number;
      readonly crownWidth_m: number;
      readonly depth_m: number;
    };

/** Refuses a form that cannot be built. @throws InputError naming the field */
export function requireForm(form: BedForm): void {
  requirePositive('depth_m', form.depth_m, 'm');
  switch (form.solid) {
    case 'straight':
      requireOutline(form.outline);
      return;
    case 'tapered':
      requireOutline(form.outline);
      requireOutline(form.bottom, 'bottom');
      requireTaper(form.outline, form.bottom, form.mayBulge === true);
      return;
    case 'ridge':
      requirePositive('length_m', form.length_m, 'm');
      requirePositive('width_m', form.width_m, 'm');
      if (form.crownWidth_m < 0 || form.crownWidth_m > form.width_m)
        refuse('crownWidth_m', 'out-of-range', `The crown is 0 to ${form.width_m} m wide: no wider than the foot of the mound.`);
      if (form.crownLength_m < 0 || form.crownLength_m > form.length_m)
        refuse(
          'crownLength_m',
          'out-of-range',
          `The crown is 0 to ${form.length_m} m long: no longer than the foot of the mound.`,
        );
      return;
    default:
      requirePositive('length_m', form.length_m, 'm');
      requirePositive('width_m', form.width_m, 'm');
  }
}

function requireTaper(top: Outline, bottom: Outline, mayBulge: boolean): void {
  if (top.shape !== bottom.shape)
    refuse('bottom.shape', 'other-shape', `The floor must have the shape of the brim, ${top.shape}, for walls that lean evenly.`);
  if (top.shape === 'polygon' && bottom.shape === 'polygon' && top.vertices_m.length !== bottom.vertices_m.length)
    refuse('bottom.vertices_m', 'other-count', `The floor needs ${top.vertices_m.length} corners, as the brim has.`);
  if (mayBulge || top.shape === 'polygon') return;
  const faults = namedSizes(top).flatMap(([field, most]) => {
    const value = Object.fromEntries(namedSizes(bottom))[field] ?? 0;
    if (value <= most) return [];
    const message = `The floor is wider (${value} m) than the brim (${most} m). At most ${most} m, or mark the bag as bulging.`;
    return [{ path: `bottom.${field}`, code: 'too-large', message }];
  });
  if (faults.length > 0) throw new InputError(faults);
}

function namedSizes(outline: Outline): readonly (readonly [string, number])[] {
  return Object.entries(outline).filter((pair): pair is [string, number] => typeof pair[1] === 'number');
}

/** Outline at a height above the floor. Every size of a leaning wall changes evenly with height. */
export function outlineAt(form: BedForm, height_m: number): Outline {
  const share = form.depth_m === 0 ? 1 : height_m / form.depth_m;
  switch (form.solid) {
    case 'straight':
      return form.outline;
    case 'tapered':
      return between(form.bottom, form.outline, share);
    case 'ridge': {
      const size = (foot: number, crown: number): number => foot + (crown - foot) * share;
      return {
        shape: 'rectangle',
        length_m: size(form.length_m, form.crownLength_m),
        width_m: size(form.width_m, form.crownWidth_m),
      };
    }
    case 'half-ellipsoid':
      return scaledEllipse(form, Math.sqrt(Math.max(0, 1 - share ** 2)));
    case 'paraboloid':
      return scaledEllipse(form, Math.sqrt(Math.max(0, 1 - share)));
    case 'cone':
      return scaledEllipse(form, Math.max(0, 1 - share));
  }
}

function scaledEllipse(form: { readonly length_m: number; readonly width_m: number }, scale: number): Outline {
  return { shape: 'ellipse', length_m: form.length_m * scale, width_m: form.width_m * scale };
}

/** Every size `share` of the way from one outline to another of the same shape. */
function between(low: Outline, high: Outline, share: number): Outline {
  const mix = (a: number, b: number): number => a + (b - a) * share;
  if (low.shape === 'round' && high.shape === 'round')
    return { shape: 'round', diameter_m: mix(low.diameter_m, high.diameter_m) };
  if ((low.shape === 'hexagon' || low.shape === 'octagon') && high.shape === low.shape)
    return { shape: low.shape, acrossFlats_m: mix(low.acrossFlats_m, high.acrossFlats_m) };
  if (low.shape === 'polygon' && high.shape === 'polygon') {
    const vertices_m = low.vertices_m.map((p, at): Point => {
      const q = high.vertices_m[at] ?? p;
      return [mix(p[0], q[0]), mix(p[1], q[1])];
    });
    return { shape: 'polygon', vertices_m };
  }
  if ('length_m' in low && 'length_m' in high)
    return { shape: low.shape, length_m: mix(low.length_m, high.length_m), width_m: mix(low.width_m, high.width_m) };
  return refuse('bottom.shape', 'other-shape', 'The floor must have the shape of the brim.');
}
