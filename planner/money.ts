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
  const parts: number[] = [];
  const rests = new Float64Array(weights.length);
  let left = size;
  for (let at = 0; at < weights.length; at += 1) {
    const exact = (size * (weights[at] ?? 0)) / total;
    const part = Math.floor(exact);
    parts.push(part);
    rests[at] = exact - part;
    left -= part;
  }
  if (left > 0) addToLargest(parts, rests, left);
  return { parts_minor: parts.map((part) => (part === 0 ? 0 : sign * part)), unallocated_minor: 0 };
}

/** Adds one to each of the `count` parts with the largest remainders, the earlier first among equal ones. */
function addToLargest(parts: number[], rests: Float64Array, count: number): void {
  const least = rests.toSorted()[rests.length - count] ?? 0;
  let equal = count;
  for (const rest of rests) if (rest > least) equal -= 1;
  rests.forEach((rest, at) => {
    if (rest < least || (rest === least && equal <= 0)) return;
    if (rest === least) equal -= 1;
    parts[at] = (parts[at] ?? 0) + 1;
  });
}

/** Rounds to a whole number of minor units, halves away from zero. */
export function roundMoney(amount: number): number {
  const rounded = Math.sign(amount) * Math.round(Math.abs(amount) + Number.EPSILON * Math.abs(amount));
  return rounded === 0 ? 0 : rounded;
}
