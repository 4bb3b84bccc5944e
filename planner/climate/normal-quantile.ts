import { requireRange } from '../errors.ts';

// Rational approximation of P. J. Acklam (2003), relative error below 1.15e-9.
const A = [-39.6968302866538, 220.946098424521, -275.928510446969, 138.357751867269, -30.6647980661472, 2.50662827745924];
const B = [-54.4760987982241, 161.585836858041, -155.698979859887, 66.8013118877197, -13.2806815528857];
const C = [-0.00778489400243029, -0.322396458041136, -2.40075827716184, -2.54973253934373, 4.37466414146497, 2.93816398269878];
const D = [0.00778469570904146, 0.32246712907004, 2.445134137143, 3.75440866190742];

const horner = (coefficients: readonly number[], x: number): number => coefficients.reduce((sum, each) => sum * x + each, 0);

/**
 * Value below which a share `p` of the standard normal distribution lies.
 * Source: Acklam's rational approximation (from memory), accurate to about 1e-9.
 * @throws InputError for a share outside 0 to 1
 */
export function normalQuantile(p: number): number {
  requireRange('p', p, 1e-12, 1 - 1e-12, '');
  const low = 0.02425;
  if (p < low) {
    const q = Math.sqrt(-2 * Math.log(p));
    return horner(C, q) / (horner(D, q) * q + 1);
  }
  if (p > 1 - low) return -normalQuantile(1 - p);
  const q = p - 0.5;
  const r = q * q;
  return (horner(A, r) * q) / (horner(B, r) * r + 1);
}
