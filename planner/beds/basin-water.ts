import { InputError, refuse, requireRange } from '../errors.ts';
import { significant } from '../units/significant.ts';
import { computed, entry, type Working } from '../working.ts';
import { extentOf } from './extent.ts';
import { type BedForm, outlineAt, requireForm } from './form.ts';
import { volumeBetween_L } from './volume.ts';

export type BasinInput = {
  /** Inside of the basin, from its floor to its rim. */
  readonly basin: BedForm;
  /** Outside of the bag or pot that stands on the basin's floor. */
  readonly bag: BedForm;
  /** Height of the water above the basin's floor. */
  readonly level_m: number;
};

/**
 * Water standing in a basin round a bag, to any level.
 *
 *   V = V_basin(z) - V_bag(z);   both round and upright: pi (D2 - d2) z/4
 *
 *   z      water level above the basin's floor    m   0 to the basin's rim
 *   D, d   diameter of basin and bag              m   d not over D
 *
 * The bag displaces water as a full body: what its mix has drawn up is counted with the mix. Above the bag's brim the whole
 * basin counts.
 * Source: geometry.
 * @throws InputError naming the field: a bag wider than its basin, a level above the rim
 */
export function basinWater_L(input: BasinInput): number {
  requireFits(input);
  if (input.level_m > input.basin.depth_m * (1 + 1e-9))
    refuse('level_m', 'too-large', `The level is above the basin's rim: at most ${input.basin.depth_m} m fits.`);
  requireRange('level_m', input.level_m, 0, input.basin.depth_m * (1 + 1e-9), 'm');
  return (
    volumeBetween_L(input.basin, 0, input.level_m) - volumeBetween_L(input.bag, 0, Math.min(input.level_m, input.bag.depth_m))
  );
}

/** Refuses a bag that does not fit into its basin. @throws InputError at `bag`, with the largest that fits */
export function requireFits({ basin, bag }: Pick<BasinInput, 'basin' | 'bag'>): void {
  requireForm(basin);
  requireForm(bag);
  const up_m = Math.min(basin.depth_m, bag.depth_m);
  for (const height_m of [0, up_m]) {
    const room = extentOf(outlineAt(basin, height_m));
    const taken = extentOf(outlineAt(bag, height_m));
    const over = taken.length_m > room.length_m + 1e-9 || taken.width_m > room.width_m + 1e-9;
    if (over) throw new InputError([{ path: 'bag', code: 'too-wide', message: tooWide(taken, room) }]);
  }
}

type Size = { readonly length_m: number; readonly width_m: number };

function tooWide(taken: Size, room: Size): string {
  const size = ({ length_m, width_m }: Size): string =>
    Math.abs(length_m - width_m) < 1e-9 ? `${round(length_m)} m` : `${round(length_m)} × ${round(width_m)} m`;
  return `The bag (${size(taken)}) is wider than its basin. A bag up to ${size(room)} fits, or choose a larger basin.`;
}

const round = (value: number): number => Math.round(value * 1000) / 1000;

export function explainBasinWater(input: BasinInput): Working {
  const result = { value: basinWater_L(input), unit: 'L' };
  const basin_L = volumeBetween_L(input.basin, 0, input.level_m);
  return {
    title: 'Water in the basin',
    formula: 'V = V_basin(z) − V_bag(z)',
    symbols: [
      {
        symbol: 'z',
        name: 'water level above the floor',
        figure: { value: input.level_m, unit: 'm_short' },
        origin: entry('the bed or its design'),
      },
      { symbol: 'V_basin', name: 'basin to that level', figure: { value: basin_L, unit: 'L' }, origin: computed() },
      { symbol: 'V_bag', name: 'bag standing in it', figure: { value: basin_L - result.value, unit: 'L' }, origin: computed() },
    ],
    steps: [
      { text: 'Basin less bag', figures: `${significant(basin_L, 4)} L − ${significant(basin_L - result.value, 4)} L`, result },
    ],
    sources: ['Geometry'],
    notes: ['Water drawn up into the mix is counted with the mix.'],
    result,
  };
}
