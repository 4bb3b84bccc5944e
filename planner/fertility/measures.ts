import { requirePositive, requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';

/** What a dose is measured with: the grower's scoop, a quarter of it, or a tablespoon (15 mL) for small beds. */
export type Measure = { readonly name: 'scoop' | 'quarter scoop' | 'spoon'; readonly volume_L: number };

const SPOON_L = convert(15, 'mL', 'L');

/**
 * The measure whose whole number a dose is rounded to: coarse enough to count, fine enough to miss by little.
 *
 *   4 scoops or more   whole scoops      1 scoop or more   quarter scoops      less   spoons of 15 mL
 *
 * Common practice, no source.
 */
export function measureFor(volume_L: number, scoop_L: number): Measure {
  requireRange('volume_L', volume_L, 0, Infinity, 'L');
  requirePositive('scoop_L', scoop_L, 'L');
  if (volume_L >= 4 * scoop_L || scoop_L <= SPOON_L) return { name: 'scoop', volume_L: scoop_L };
  if (volume_L >= scoop_L && scoop_L > 4 * SPOON_L) return { name: 'quarter scoop', volume_L: scoop_L / 4 };
  return { name: 'spoon', volume_L: SPOON_L };
}

export type MeasuredDose = { readonly scoops: number; readonly spoons: number; readonly volume_L: number };

/** A volume in whole and quarter scoops and level spoons, as it stands on a dose card. */
export function measuredDose(volume_L: number, scoop_L: number): MeasuredDose {
  requireRange('volume_L', volume_L, 0, Infinity, 'L');
  requirePositive('scoop_L', scoop_L, 'L');
  const quarters = Math.floor((4 * volume_L) / scoop_L + 1e-6);
  const left_L = volume_L - (quarters * scoop_L) / 4;
  const spoons = Math.round(left_L / SPOON_L);
  return { scoops: quarters / 4, spoons, volume_L: (quarters * scoop_L) / 4 + spoons * SPOON_L };
}
