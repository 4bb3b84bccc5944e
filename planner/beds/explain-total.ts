import { computed, type Working } from '../working.ts';

export type TotalPart = { readonly name: string; readonly value: number };

/** Sum of parts. */
export const totalOf = (parts: readonly TotalPart[]): number => parts.reduce((sum, part) => sum + part.value, 0);

/** A total as the sum of its parts, each named. */
export function explainTotal(title: string, unit: string, parts: readonly TotalPart[], notes: readonly string[] = []): Working {
  const result = { value: totalOf(parts), unit };
  return {
    title,
    formula: 'the sum of the blocks',
    symbols: parts.map((part, at) => ({
      symbol: `${at + 1}`,
      name: part.name,
      figure: { value: part.value, unit },
      origin: computed('the beds of the block'),
    })),
    steps: [{ text: 'Added', figures: `${parts.length} blocks`, result }],
    sources: ['Figures of the single beds; each opens its own working'],
    notes,
    result,
  };
}
