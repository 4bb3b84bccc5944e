import { requireRange, requireWhole } from '../errors.ts';

/**
 * Share of the friction of the full flow that a tube with equal, equally spaced outlets loses, the first outlet one
 * spacing from the inlet.
 *
 *   F = sum over k = 1..N of k^m, over N^(m+1)
 *
 *   N   outlets                  -   1 or more
 *   m   exponent of the flow     -   1 (smooth flow) to 2; 1.852 for Hazen-Williams, 1.75 for Blasius
 *
 * For the working and quick sizing only: the solver needs no such factor.
 * Source: J. E. Christiansen, Irrigation by Sprinkling, Bulletin 670, 1942 (memory); the sum computed.
 * @throws InputError naming the field
 */
export function multipleOutletFactor(outlets: number, flowExponent: number): number {
  requireWhole('outlets', outlets, 1, 1_000_000);
  requireRange('flowExponent', flowExponent, 0, 3, '');
  let sum = 0;
  for (let k = 1; k <= outlets; k += 1) sum += k ** flowExponent;
  return sum / outlets ** (flowExponent + 1);
}

/**
 * Short form of {@link multipleOutletFactor}, F = 1/(m+1) + 1/(2N) + sqrt(m-1)/(6 N2); within 0.5 % from two outlets up.
 * Source: Christiansen 1942 (memory).
 * @throws InputError when the exponent is below 1
 */
export function multipleOutletFactorShort(outlets: number, flowExponent: number): number {
  requireWhole('outlets', outlets, 1, 1_000_000);
  requireRange('flowExponent', flowExponent, 1, 3, '');
  return 1 / (flowExponent + 1) + 1 / (2 * outlets) + Math.sqrt(flowExponent - 1) / (6 * outlets ** 2);
}
