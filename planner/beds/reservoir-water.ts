import { refuse, requireRange } from '../errors.ts';
import { significant } from '../units/significant.ts';
import { computed, entry, practice, type Working } from '../working.ts';
import type { BedForm } from './form.ts';
import { volumeBetween_L } from './volume.ts';

export type ReservoirInput = {
  readonly bed: BedForm;
  /** Height of the overflow hole above the bed's floor: water never stands higher. */
  readonly overflow_m: number;
  /** Share of the reservoir that is open to water: about 0.4 in gravel, near 1 in a void former. */
  readonly voidShare: number;
};

/**
 * Water held below the overflow of a bed with a built-in reservoir.
 *
 *   W = n V(z)
 *
 *   V(z)   inside of the bed from its floor to the overflow    L
 *   n      void fraction of what fills the reservoir           -   above 0, up to 1
 *
 * Does not count water held by the mix above, nor the wicking column of mix where it takes up part of the reservoir.
 * Source: definition of void fraction; gravel about 0.4: common practice, no source.
 * @throws InputError naming the field: no void, an overflow above the wall
 */
export function reservoirWater_L({ bed, overflow_m, voidShare }: ReservoirInput): number {
  if (Number.isFinite(voidShare) && voidShare <= 0)
    refuse('voidShare', 'no-void', 'A reservoir without void holds no water: gravel has about 40 %, a void former 90 % or more.');
  requireRange('voidShare', voidShare, 0, 1, '');
  if (overflow_m > bed.depth_m)
    refuse('overflow_m', 'too-large', `The overflow is above the wall: at most ${bed.depth_m} m above the floor fits.`);
  requireRange('overflow_m', overflow_m, 0, bed.depth_m, 'm');
  return voidShare * volumeBetween_L(bed, 0, overflow_m);
}

export function explainReservoirWater(input: ReservoirInput): Working {
  const result = { value: reservoirWater_L(input), unit: 'L' };
  const space = { value: volumeBetween_L(input.bed, 0, input.overflow_m), unit: 'L' };
  return {
    title: 'Water in the reservoir',
    formula: 'W = n V(z)',
    symbols: [
      {
        symbol: 'z',
        name: 'overflow above the floor',
        figure: { value: input.overflow_m, unit: 'm_short' },
        origin: entry('the design'),
      },
      { symbol: 'V', name: 'space below the overflow', figure: space, origin: computed() },
      {
        symbol: 'n',
        name: 'void fraction',
        figure: { value: input.voidShare, unit: 'share' },
        origin: practice('the design; gravel about 40 %: common practice, no source'),
      },
    ],
    steps: [{ text: 'Open share of the space', figures: `${input.voidShare} × ${significant(space.value, 4)} L`, result }],
    sources: ['Definition of void fraction'],
    notes: ['Water held by the mix above is not counted.'],
    result,
  };
}
