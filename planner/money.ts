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
  let total = 0;
  for (let at = 0; at < weights.length; at += 1) {
    const weight = weights[at] ?? 0;
    if (!Number.isFinite(weight) || weight < 0) refuse(`weights.${at}`, 'too-small', 'A share cannot be negative.');
    total += weight;
  }
  if (total === 0) return { parts_minor: weights.map(() => 0), unallocated_minor: amount_minor };
  const sign = amount_minor < 0 ? -1 : 1;
  const size = Math.abs(amount_minor);
  const exact = weights.map((weight) => (size * weight) / total);
  const parts = exact.map(Math.floor);
  const left = size - parts.reduce((sum, part) => sum + part, 0);
  if (left > 0) {
    const rests = exact.map((part, at) => part - (parts[at] ?? 0));
    const order = rests.map((_, at) => at).sort((a, b) => (rests[b] ?? 0) - (rests[a] ?? 0) || a - b);
    for (const at of order.slice(0, left)) parts[at] = (parts[at] ?? 0) + 1;
  }
  return { parts_minor: parts.map((part) => (part === 0 ? 0 : sign * part)), unallocated_minor: 0 };
}

/** Rounds to a whole number of minor units, halves away from zero. */
export function roundMoney(amount: number): number {
  const rounded = Math.sign(amount) * Math.round(Math.abs(amount) + Number.EPSILON * Math.abs(amount));
  return rounded === 0 ? 0 : rounded;
}
