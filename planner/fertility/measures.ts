import { requirePositive, requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';

/** What a dose is measured with: the grower's scoop, a quarter of it, a level spoon (15 mL), teaspoon (5 mL) or half of one for small beds. */
export type Measure = {
  readonly name: 'scoop' | 'quarter scoop' | 'spoon' | 'teaspoon' | 'half teaspoon';
  readonly volume_L: number;
};

const SPOON_L = convert(15, 'mL', 'L');
const TEASPOON_L = convert(5, 'mL', 'L');

/**
 * The measure whose whole number a dose is rounded to: coarse enough to count, fine enough to miss by little.
 *
 *   4 scoops or more   whole scoops        1 scoop or more   quarter scoops
 *   8 spoons or more   spoons of 15 mL     4 teaspoons       teaspoons of 5 mL     less   half teaspoons
 *
 * Common practice, no source.
 */
export function measureFor(volume_L: number, scoop_L: number): Measure {
  requireRange('volume_L', volume_L, 0, Infinity, 'L');
  requirePositive('scoop_L', scoop_L, 'L');
  if (volume_L >= 4 * scoop_L || scoop_L <= TEASPOON_L) return { name: 'scoop', volume_L: scoop_L };
  if (volume_L >= scoop_L && scoop_L > 4 * SPOON_L) return { name: 'quarter scoop', volume_L: scoop_L / 4 };
  if (volume_L >= 8 * SPOON_L) return { name: 'spoon', volume_L: SPOON_L };
  return volume_L >= 4 * TEASPOON_L
    ? { name: 'teaspoon', volume_L: TEASPOON_L }
    : { name: 'half teaspoon', volume_L: TEASPOON_L / 2 };
}

export type MeasuredDose = {
  /** Whole and quarter scoops. */
  readonly scoops: number;
  readonly spoons: number;
  /** In halves. */
  readonly teaspoons: number;
  readonly volume_L: number;
};

/** A volume in whole and quarter scoops, level spoons and teaspoons, as it stands on a dose card. */
export function measuredDose(volume_L: number, scoop_L: number): MeasuredDose {
  requireRange('volume_L', volume_L, 0, Infinity, 'L');
  requirePositive('scoop_L', scoop_L, 'L');
  const quarters = Math.floor((4 * volume_L) / scoop_L + 1e-6);
  const scooped_L = (quarters * scoop_L) / 4;
  const left_L = Math.max(0, volume_L - scooped_L);
  const teaspoonsInAll = Math.round((2 * left_L) / TEASPOON_L) / 2;
  const spoons = Math.floor(teaspoonsInAll / 3);
  return {
    scoops: quarters / 4,
    spoons,
    teaspoons: teaspoonsInAll - 3 * spoons,
    volume_L: scooped_L + teaspoonsInAll * TEASPOON_L,
  };
}
