import { requireRange } from '../errors.ts';

/** A quantity known with a spread. */
export type Spread = { readonly mean: number; readonly sd: number };

/**
 * Mean and standard deviation of yield times price when the two are independent.
 *
 *   mean = mY mp;   var = mY^2 sp^2 + mp^2 sY^2 + sY^2 sp^2
 *
 * They often move against each other (a glut): then use the simulation with a correlation instead.
 * Source: Goodman 1960, exact variance of products, from memory.
 * @throws InputError naming the field
 */
export function productSpread(amount: Spread, price: Spread): Spread {
  requireRange('amount.sd', amount.sd, 0, Infinity, '');
  requireRange('price.sd', price.sd, 0, Infinity, '');
  const variance = amount.mean ** 2 * price.sd ** 2 + price.mean ** 2 * amount.sd ** 2 + amount.sd ** 2 * price.sd ** 2;
  return { mean: amount.mean * price.mean, sd: Math.sqrt(variance) };
}

/**
 * Mean and standard deviation of a triangular spread from low, typical, high.
 *
 *   mean = (a + b + c) / 3;   var = (a^2 + b^2 + c^2 - ab - ac - bc) / 18
 *
 * Source: standard form, from memory.
 * @throws InputError when the three are not in order
 */
export function triangleSpread(low: number, typical: number, high: number): Spread {
  requireRange('typical', typical, low, high, '');
  const variance = (low ** 2 + typical ** 2 + high ** 2 - low * typical - low * high - typical * high) / 18;
  return { mean: (low + typical + high) / 3, sd: Math.sqrt(Math.max(0, variance)) };
}
