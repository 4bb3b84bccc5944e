import { requireRange } from '../errors.ts';

/**
 * Affinity rules of one pump at another speed: flow with n, head with n2, power with n3.
 * Holds for turbulent flow in the pump and modest changes of speed.
 * Source: Hydraulic Institute eqs. 1.B.6a to c; EPANET 2.2 user manual.
 * @throws InputError when the ratio is out of range
 */
export function atSpeed(speedRatio: number): {
  readonly flowRatio: number;
  readonly headRatio: number;
  readonly powerRatio: number;
} {
  requireRange('speedRatio', speedRatio, 0, 10, '');
  return { flowRatio: speedRatio, headRatio: speedRatio ** 2, powerRatio: speedRatio ** 3 };
}
