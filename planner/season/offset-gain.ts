import type { Outline } from '../beds/outline.ts';
import { plantsInBed } from '../beds/plant-count.ts';
import { refuse } from '../errors.ts';

/**
 * How many times as many plants a staggered layout holds as a square one in a bed, over several spacings: plants of all
 * spacings counted and summed. Without edges it is 1.155; edges take some of it.
 * Checked with a growers' handbook that prints 1.13 for a bed of 100 square feet.
 * @throws InputError when no spacing is given
 */
export function offsetGain(outline: Outline, spacings_m: readonly number[]): number {
  if (spacings_m.length === 0) refuse('spacings_m', 'not-known', 'Give a spacing.');
  const plants = (pattern: 'staggered' | 'square'): number =>
    spacings_m.reduce((sum, spacing_m) => sum + plantsInBed({ outline, spacing: { pattern, spacing_m } }).plants, 0);
  return plants('staggered') / plants('square');
}
