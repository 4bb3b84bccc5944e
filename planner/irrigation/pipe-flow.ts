import { requirePositive, requireRange } from '../errors.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../units/constants.ts';

/**
 * Fastest water in a line that may be shut quickly, 5 ft/s.
 * Source: an extension page after A. R. Jarrett, Water Management, 2nd ed. 2000.
 */
export const VELOCITY_LIMIT_M_PER_S = 1.524;

/** Clear area of a round tube, pi/4 D2. @throws InputError when the diameter is not above zero */
export function boreArea_m2(insideDiameter_m: number): number {
  requirePositive('insideDiameter_m', insideDiameter_m, 'm');
  return (Math.PI / 4) * insideDiameter_m ** 2;
}

/** Mean velocity of a flow in a round tube, v = Q/A. @throws InputError on a tube without a bore */
export function velocity_m_per_s(flow_m3_per_s: number, insideDiameter_m: number): number {
  return flow_m3_per_s / boreArea_m2(insideDiameter_m);
}

/** Flow that has a given mean velocity, Q = v A. @throws InputError on a tube without a bore */
export function flowAtVelocity_m3_per_s(velocity: number, insideDiameter_m: number): number {
  requireRange('velocity_m_per_s', velocity, 0, 100, 'm/s');
  return velocity * boreArea_m2(insideDiameter_m);
}

/**
 * Reynolds number, Re = v D / nu = 4 Q / (pi D nu).
 *
 *   Q   flow                  m3/s   0 or more
 *   D   inside diameter       m
 *   nu  kinematic viscosity   m2/s   about 1e-6 for water
 *
 * @throws InputError on a tube without a bore or a fluid without viscosity
 */
export function reynoldsNumber(flow_m3_per_s: number, insideDiameter_m: number, viscosity_m2_per_s: number): number {
  requirePositive('viscosity_m2_per_s', viscosity_m2_per_s, 'm2/s');
  return (Math.abs(velocity_m_per_s(flow_m3_per_s, insideDiameter_m)) * insideDiameter_m) / viscosity_m2_per_s;
}

/** Velocity head v2/(2 g), the measure of every fitting's loss. */
export function velocityHead_m(velocity: number): number {
  return velocity ** 2 / (2 * STANDARD_GRAVITY_M_PER_S2);
}

/**
 * Head lost per squared flow by a coefficient K on a bore: R = K / (2 g A2), so that h = R Q2.
 * @throws InputError on a bore that is not above zero or a negative coefficient
 */
export function squareLaw_s2_per_m5(lossK: number, bore_m: number): number {
  requireRange('lossK', lossK, 0, 1e12, '');
  return lossK / (2 * STANDARD_GRAVITY_M_PER_S2 * boreArea_m2(bore_m) ** 2);
}
