import { refuse, requirePositive, requireRange } from '../errors.ts';
import { significant } from '../units/significant.ts';
import { computed, entry, practice, type Working } from '../working.ts';
import { extentOf } from './extent.ts';
import type { Outline } from './outline.ts';
import { requireOutline } from './outline.ts';

export type BarrierInput = {
  readonly outline: Outline;
  /** How far the sheet reaches beyond the bed's edge, or up its wall, on every side. */
  readonly reach_m: number;
  /** Width of the roll; without it one sheet covers the bed. */
  readonly roll_m?: number;
  /** How far one strip lies over the next. */
  readonly overlap_m: number;
};

/**
 * Weed barrier to cut for a bed: strips of a roll laid lengthwise under the bed's box.
 *
 *   n = ceil((W' - o)/(r - o)), at least 1;   A = n r L';   L' = L + 2 e, W' = W + 2 e
 *   one sheet (no roll width given): A = L' W'
 *
 *   L, W   length and width of the bed's box      m
 *   e      reach beyond each edge                 m   0 to 2
 *   r      width of the roll                      m   more than the overlap
 *   o      overlap of strips                      m   0 or more, below r
 *
 * Counts the offcuts of round beds as used: a roll is cut straight.
 * Source: common practice, no source.
 * @throws InputError naming the field
 */
export function weedBarrier(input: BarrierInput): {
  readonly strips: number;
  readonly stripLength_m: number;
  readonly area_m2: number;
} {
  requireOutline(input.outline);
  requireRange('reach_m', input.reach_m, 0, 2, 'm');
  requireRange('overlap_m', input.overlap_m, 0, 2, 'm');
  const box = extentOf(input.outline);
  const stripLength_m = box.length_m + 2 * input.reach_m;
  const across_m = box.width_m + 2 * input.reach_m;
  if (input.roll_m === undefined) return { strips: 1, stripLength_m, area_m2: stripLength_m * across_m };
  requirePositive('roll_m', input.roll_m, 'm');
  if (input.overlap_m >= input.roll_m)
    refuse('overlap_m', 'too-large', `The overlap must be less than the roll's width, ${input.roll_m} m.`);
  const strips = Math.max(1, Math.ceil((across_m - input.overlap_m) / (input.roll_m - input.overlap_m) - 1e-9));
  return { strips, stripLength_m, area_m2: strips * input.roll_m * stripLength_m };
}

export function explainWeedBarrier(input: BarrierInput): Working {
  const sheet = weedBarrier(input);
  const result = { value: sheet.area_m2, unit: 'm2' };
  return {
    title: 'Weed barrier',
    formula: input.roll_m === undefined ? 'A = (L + 2 e)(W + 2 e)' : 'A = n r (L + 2 e)',
    symbols: [
      {
        symbol: 'e',
        name: 'reach beyond each edge',
        figure: { value: input.reach_m, unit: 'm_short' },
        origin: entry('the design'),
      },
      {
        symbol: 'o',
        name: 'overlap of strips',
        figure: { value: input.overlap_m, unit: 'm_short' },
        origin: entry('the design'),
      },
      { symbol: 'n', name: 'strips', figure: { value: sheet.strips, unit: 'count' }, origin: computed() },
      { symbol: 'A', name: 'barrier to cut', figure: result, origin: practice() },
    ],
    steps: [
      { text: 'Strips over the bed’s box', figures: `${sheet.strips} × ${significant(sheet.stripLength_m, 4)} m long`, result },
    ],
    sources: ['common practice, no source'],
    notes: ['Offcuts of a round or oval bed are counted as used.'],
    result,
  };
}
