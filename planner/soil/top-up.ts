import type { BedForm } from '../beds/form.ts';
import { volumeBetween_L } from '../beds/volume.ts';
import { refuse, requireRange } from '../errors.ts';
import { significant } from '../units/significant.ts';
import { computed, entry, type Origin, practice, type Working } from '../working.ts';
import { depthAfter_m, looseForSettled_L } from './settling.ts';
import { volumeToCover_L } from './spread.ts';

/** Drops below this are not worth a barrow. Common practice, no source. */
export const LEAST_DROP_M = 0.005;

export type TopUpInput = {
  readonly form: BedForm;
  /** Height above the floor at which the surface should stand. */
  readonly surface_m: number;
  /** How far it has dropped below that. */
  readonly drop_m: number;
  /** Settling of what is put on top, in its first season. */
  readonly settlingShare: number;
};

export type TopUp = { readonly settled_L: number; readonly loose_L: number };

/**
 * What brings a sunk bed back to its height.
 *
 *   V_s = V(z) - V(z - dz);   V_l = V_s/(1 - s)
 *
 *   z    height of the wanted surface       m
 *   dz   drop measured below it             m   0 to z
 *   s    settling of the top-up material    -
 *
 * In a bed with leaning walls the drop counts at its own height, where the bed is widest.
 * Source: geometry and definition; drops of 2 to 4 in in the first season are reported by garden sources.
 * @throws InputError naming the field
 */
export function topUp({ form, surface_m, drop_m, settlingShare }: TopUpInput): TopUp {
  if (drop_m > surface_m) refuse('drop_m', 'too-large', `The drop is more than the fill is deep: at most ${surface_m} m.`);
  requireRange('drop_m', drop_m, 0, surface_m, 'm');
  const settled_L = volumeBetween_L(form, surface_m - drop_m, surface_m);
  return { settled_L, loose_L: looseForSettled_L(settled_L, settlingShare) };
}

/** The same for a number of beds alike with upright walls: settled and loose for all of them. @throws InputError */
export function topUpOfMany(beds: number, area_m2: number, drop_m: number, settlingShare: number): TopUp {
  requireRange('beds', beds, 0, 1e6, '');
  requireRange('area_m2', area_m2, 1e-6, 1e6, 'm2');
  requireRange('drop_m', drop_m, 0, 5, 'm');
  const settled_L = beds * volumeToCover_L(area_m2, drop_m);
  return { settled_L, loose_L: looseForSettled_L(settled_L, settlingShare) };
}

/**
 * Drop to expect where none was measured: d (1 - (1 - s2)^n).
 *
 *   d    depth of the fill                                          m
 *   s2   share lost in each season after the first                  -   0 to 0.9
 *   n    whole seasons since the surface last stood at its height   -
 *
 * The first season's settling is already in the loose volume placed, so it is not counted again.
 * Source: definition; settling is common practice, no source.
 * @throws InputError naming the field
 */
export function expectedDrop_m(depth_m: number, laterShare: number, seasons: number): number {
  return depth_m - depthAfter_m(depth_m, { firstShare: laterShare, laterShare }, seasons);
}

export function explainTopUp(input: TopUpInput, dropFrom: Origin = entry('measured')): Working {
  const answer = topUp(input);
  const result = { value: answer.loose_L, unit: 'bulk_L' };
  return {
    title: 'Top-up',
    formula: 'V_l = (V(z) − V(z − Δz))/(1 − s)',
    symbols: [
      {
        symbol: 'z',
        name: 'height of the wanted surface',
        figure: { value: input.surface_m, unit: 'm_short' },
        origin: entry('the bed or its design'),
      },
      { symbol: 'Δz', name: 'drop below it', figure: { value: input.drop_m, unit: 'm_short' }, origin: dropFrom },
      {
        symbol: 's',
        name: 'settling of what is put on top',
        figure: { value: input.settlingShare, unit: 'share' },
        origin: practice(),
      },
      {
        symbol: 'V_s',
        name: 'room to fill',
        figure: { value: answer.settled_L, unit: 'bulk_L' },
        origin: computed('geometry of the bed'),
      },
    ],
    steps: [
      {
        text: 'Room over one less the settling',
        figures: `${significant(answer.settled_L, 4)} L ÷ ${significant(1 - input.settlingShare, 3)}`,
        result,
      },
    ],
    sources: ['Geometry; settling common practice, no source'],
    notes: ['Measure the drop in spring: it counts more than any expected figure.'],
    result,
  };
}
