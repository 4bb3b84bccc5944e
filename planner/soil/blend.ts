import { refuse, requirePositive, requireRange } from '../errors.ts';
import { computed, entry, practice, type Working } from '../working.ts';

/**
 * Volume lost when parts are mixed, since the small nest between the large. Common practice, no source.
 */
export const blendShrinkByMix = { 'soil-compost': 0.1, 'bark-sand': 0.15, 'peat-perlite': 0.05 } as const;

/** Volume of a mix from its parts: V = (1 - m) sum V_i, m the blend shrink. @throws InputError naming the part */
export function mixedVolume_L(parts_L: readonly number[], shrinkShare: number): number {
  requireRange('shrinkShare', shrinkShare, 0, 0.9, '');
  parts_L.forEach((part, at) => {
    requireRange(`parts_L.${at}`, part, 0, 1e9, 'L');
  });
  return (1 - shrinkShare) * parts_L.reduce((sum, part) => sum + part, 0);
}

/**
 * Loose volume of each part for a wanted loose volume of mix.
 *
 *   V_i = p_i/sum p * V_l/(1 - m)
 *
 *   p_i   parts of the ratio                   -   0 or more, not all 0
 *   V_l   mix wanted, loose                    L
 *   m     blend shrink                         -   0 to 0.9
 *
 * Source: definition; the parts before mixing add to V_l/(1 - m).
 * @throws InputError naming the part
 */
export function blendParts_L(mix_L: number, parts: readonly number[], shrinkShare: number): readonly number[] {
  requireRange('mix_L', mix_L, 0, 1e9, 'L');
  requireRange('shrinkShare', shrinkShare, 0, 0.9, '');
  parts.forEach((part, at) => {
    requireRange(`parts.${at}`, part, 0, 1e6, '');
  });
  const total = parts.reduce((sum, part) => sum + part, 0);
  if (total === 0) refuse('parts', 'no-parts', 'A mix needs at least one part above zero.');
  return parts.map((part) => ((part / total) * mix_L) / (1 - shrinkShare));
}

/** A volume by a measure: as counted, and rounded to quarters for the card. */
export type Measures = { readonly exact: number; readonly quarters: number; readonly isAbove: boolean };

/**
 * How many buckets, barrows or cans a volume is: n = V/v, and the nearest quarter of a measure for work (never 0 for
 * something). @throws InputError naming the field
 */
export function measuresOf(volume_L: number, measure_L: number): Measures {
  requireRange('volume_L', volume_L, 0, 1e9, 'L');
  requirePositive('measure_L', measure_L, 'L');
  const exact = volume_L / measure_L;
  const quarters = volume_L === 0 ? 0 : Math.max(1, Math.round(exact * 4)) / 4;
  return { exact, quarters, isAbove: quarters > exact };
}

export function explainBlend(
  mix_L: number,
  parts: readonly { readonly name: string; readonly part: number }[],
  shrinkShare: number,
): Working {
  const volumes = blendParts_L(
    mix_L,
    parts.map((each) => each.part),
    shrinkShare,
  );
  const result = { value: volumes.reduce((sum, volume) => sum + volume, 0), unit: 'bulk_L' };
  return {
    title: 'Parts of the mix',
    formula: 'V_i = p_i/Σp × V/(1 − m)',
    symbols: [
      { symbol: 'V', name: 'mix wanted, loose', figure: { value: mix_L, unit: 'bulk_L' }, origin: computed() },
      { symbol: 'm', name: 'loss when mixed', figure: { value: shrinkShare, unit: 'share' }, origin: practice() },
      ...parts.map((each, at) => ({
        symbol: `p${at + 1}`,
        name: `parts of ${each.name}`,
        figure: { value: each.part, unit: '' },
        origin: entry('the recipe'),
      })),
    ],
    steps: parts.map((each, at) => ({
      text: each.name,
      figures: `${each.part} parts`,
      result: { value: volumes[at] ?? 0, unit: 'bulk_L' },
    })),
    sources: ['Definition; loss when mixed is common practice, no source'],
    notes: [],
    result,
  };
}
