import { refuse } from './errors.ts';

/**
 * Divides a sum of money by weights so that the parts add up to the whole, by largest remainder; equal remainders go
 * to the earlier part.
 *
 *   weights all zero (or none): no share may be invented, every part is 0 and the sum stays unallocated.
 *
 * Source: the largest-remainder (Hamilton) rule, from memory.
 * @throws InputError when the amount is not a whole number of minor units or a weight is negative
 */
export function splitMoney(
  amount_minor: number,
  weights: readonly number[],
): { readonly parts_minor: readonly number[]; readonly unallocated_minor: number } {
  if (!Number.isSafeInteger(amount_minor)) refuse('amount_minor', 'not-whole', 'Money is kept in whole minor units.');
  weights.forEach((weight, at) => {
    if (!Number.isFinite(weight) || weight < 0) refuse(`weights.${at}`, 'too-small', 'A share cannot be negative.');
  });
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  if (total === 0) return { parts_minor: weights.map(() => 0), unallocated_minor: amount_minor };
  const sign = amount_minor < 0 ? -1 : 1;
  const size = Math.abs(amount_minor);
  const exact = weights.map((weight) => (size * weight) / total);
  const floors = exact.map(Math.floor);
  let left = size - floors.reduce((sum, part) => sum + part, 0);
  const order = exact.map((part, at) => ({ at, rest: part - Math.floor(part) })).sort((a, b) => b.rest - a.rest || a.at - b.at);
  const parts = [...floors];
  for (const { at } of order) {
    if (left <= 0) break;
    parts[at] = (parts[at] ?? 0) + 1;
    left -= 1;
  }
  return { parts_minor: parts.map((part) => (part === 0 ? 0 : sign * part)), unallocated_minor: 0 };
}

/** Rounds to a whole number of minor units, halves away from zero. */
export function roundMoney(amount: number): number {
  const rounded = Math.sign(amount) * Math.round(Math.abs(amount) + Number.EPSILON * Math.abs(amount));
  return rounded === 0 ? 0 : rounded;
}
