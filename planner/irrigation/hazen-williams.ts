import { requirePositive, requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';

/** Coefficient of new plastic tube. Source: NRCS practice standard 430HH. Use 130 to 140 with slime (common practice). */
export const NEW_PLASTIC_C = 150;

export type HazenWilliamsInput = {
  readonly flow_m3_per_s: number;
  readonly insideDiameter_m: number;
  readonly length_m: number;
  readonly coefficient: number;
};

/**
 * Friction loss by Hazen-Williams, kept for comparison with catalogues and tables.
 *
 *   h_ft per 100 ft = 0.2083 (100/C)^1.852 Q^1.852 / d^4.8655      Q in US gal/min, d in in
 *
 *   C    coefficient of the wall   -   60 to 160; new plastic 150
 *
 * Turbulent water only: up to 25 % low in half-inch tube at the flows of small lines, so never inside the solver.
 * Source: plastic-pipe industry water formula (maker withheld); Illinois Administrative Code, Title 77, Part 906, Exhibit I.
 * @throws InputError naming the field
 */
export function hazenWilliamsLoss_m(input: HazenWilliamsInput): number {
  requireRange('flow_m3_per_s', input.flow_m3_per_s, 0, 100, 'm3/s');
  requirePositive('insideDiameter_m', input.insideDiameter_m, 'm');
  requireRange('length_m', input.length_m, 0, 1e5, 'm');
  requireRange('coefficient', input.coefficient, 10, 200, '');
  const flow_us_gal_per_min = convert(input.flow_m3_per_s, 'm3_per_s', 'us_gal_per_min');
  const diameter_in = convert(input.insideDiameter_m, 'm', 'in');
  const per100 = (0.2083 * (100 / input.coefficient) ** 1.852 * flow_us_gal_per_min ** 1.852) / diameter_in ** 4.8655;
  return (per100 / 100) * input.length_m;
}
