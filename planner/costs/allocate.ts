import { requireRange } from '../errors.ts';
import { splitMoney } from '../money.ts';
import { computed, type Working } from '../working.ts';

/** By what a shared cost is divided. One amount is divided by one key only. */
export type ShareKey = 'area' | 'bed-days' | 'plants' | 'hours' | 'income';

/**
 * A shared cost divided in whole minor units by largest remainder; ties go to the earlier. All weights zero: nothing is
 * invented and the whole stays unallocated.
 *
 * Source: the largest-remainder rule, from memory; the bases are common practice, no source.
 * @throws InputError naming the field
 */
export function allocate_minor(
  amount_minor: number,
  weights: readonly number[],
): { readonly parts_minor: readonly number[]; readonly unallocated_minor: number } {
  return splitMoney(amount_minor, weights);
}

/** A total divided by recorded shares and laid on areas: money, and money by area. Shares must add up to 1. @throws InputError */
export function shareByArea(
  amount_minor: number,
  shares: readonly { readonly share: number; readonly area_m2: number }[],
): readonly { readonly amount_minor: number; readonly amount_minor_per_m2: number }[] {
  const sum = shares.reduce((total, each) => total + each.share, 0);
  requireRange('share', sum, 1 - 1e-9, 1 + 1e-9, '');
  const { parts_minor } = splitMoney(
    amount_minor,
    shares.map((each) => each.share),
  );
  return shares.map((each, at) => {
    const part = parts_minor[at] ?? 0;
    return { amount_minor: part, amount_minor_per_m2: each.area_m2 > 0 ? part / each.area_m2 : 0 };
  });
}

/** Hours at a wage. @throws InputError naming the field */
export function labourCost_minor(labour_h: number, wage_minor_per_h: number): number {
  requireRange('labour_h', labour_h, 0, Infinity, 'h');
  requireRange('wage_minor_per_h', wage_minor_per_h, 0, Infinity, '');
  return labour_h * wage_minor_per_h;
}

/** Working of one part of {@link allocate_minor}. */
export function explainShare(amount_minor: number, weights: readonly number[], at: number, unit: string): Working {
  const { parts_minor } = allocate_minor(amount_minor, weights);
  return {
    title: 'Share of a common cost',
    formula: 'share = C w / W, in whole minor units by largest remainder',
    symbols: [
      { symbol: 'C', name: 'cost to divide', figure: { value: amount_minor, unit: 'minor' }, origin: computed('your ledger') },
      { symbol: 'w', name: 'weight of this one', figure: { value: weights[at] ?? 0, unit }, origin: computed() },
      {
        symbol: 'W',
        name: 'all weights',
        figure: { value: weights.reduce((sum, each) => sum + each, 0), unit },
        origin: computed(),
      },
    ],
    steps: [],
    result: { value: parts_minor[at] ?? 0, unit: 'minor' },
    sources: ['largest-remainder rule, from memory; the key is common practice, no source'],
    notes: ['The parts add up to the whole.'],
  };
}
