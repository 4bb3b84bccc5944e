import { refuse, requirePositive, requireRange } from '../errors.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../units/constants.ts';
import { colebrookFactor } from './friction-factor.ts';
import { boreArea_m2, reynoldsNumber } from './pipe-flow.ts';

/** A parabola h = shutoff + curvature q2 (curvature below zero for a pump), in any one pair of units. */
export type Parabola = { readonly shutoff: number; readonly curvature: number };

/**
 * Where a pump h = A + a q2 meets a system h = S + K q2:  q = sqrt[(A - S)/(K - a)].
 *
 *   A   shut-off head         head
 *   a   curvature, below 0    head per flow2
 *   S   static lift           head
 *   K   system coefficient    head per flow2
 *
 * All four in one pair of units; the answer is in the same.
 * @throws InputError by how much the lift is beyond the pump
 */
export function parabolaMeetsSystem(
  pump: Parabola,
  system: { readonly staticLift: number; readonly coefficient: number },
): { readonly flow: number; readonly head: number } {
  if (pump.shutoff < system.staticLift)
    refuse(
      'staticLift',
      'beyond-the-pump',
      `The lift is ${(system.staticLift - pump.shutoff).toPrecision(3)} above what the pump can reach.`,
    );
  if (system.coefficient <= pump.curvature)
    refuse('coefficient', 'does-not-fall', 'The pump curve must fall, or the line must resist.');
  const flow = Math.sqrt((pump.shutoff - system.staticLift) / (system.coefficient - pump.curvature));
  return { flow, head: system.staticLift + system.coefficient * flow ** 2 };
}

/**
 * Least-squares parabola h = a + c q2 through points of a pump curve.
 * Source: normal equations of a straight line in q2; the form after the vignette of an open hydraulics package, section 6.
 * @throws InputError when fewer than two different flows are given
 */
export function leastSquaresParabola(points: readonly { readonly flow: number; readonly head: number }[]): Parabola {
  const n = points.length;
  const meanSquare = points.reduce((sum, point) => sum + point.flow ** 2, 0) / n;
  const meanHead = points.reduce((sum, point) => sum + point.head, 0) / n;
  let across = 0;
  let spread = 0;
  for (const point of points) {
    across += (point.flow ** 2 - meanSquare) * (point.head - meanHead);
    spread += (point.flow ** 2 - meanSquare) ** 2;
  }
  if (n < 2 || spread === 0) refuse('points', 'too-few', 'points: at least two different flows are needed.');
  const curvature = across / spread;
  return { shutoff: meanHead - curvature * meanSquare, curvature };
}

export type SystemCoefficientInput = {
  readonly atFlow_m3_per_s: number;
  readonly insideDiameter_m: number;
  readonly length_m: number;
  readonly roughness_m: number;
  readonly viscosity_m2_per_s: number;
};

/**
 * Head per squared flow of a long pipe, K = f (L/D) / (2 g A2), its friction factor taken at one flow.
 * Source: Darcy-Weisbach with Colebrook (Hydraulic Institute eqs. 3.A.1, 3.A.2).
 * @throws InputError naming the field
 */
export function systemCoefficient_s2_per_m5(input: SystemCoefficientInput): number {
  requirePositive('atFlow_m3_per_s', input.atFlow_m3_per_s, 'm3/s');
  requireRange('length_m', input.length_m, 0, 1e6, 'm');
  const reynolds = reynoldsNumber(input.atFlow_m3_per_s, input.insideDiameter_m, input.viscosity_m2_per_s);
  const factor = colebrookFactor(reynolds, input.roughness_m / input.insideDiameter_m);
  return (
    (factor * input.length_m) /
    (input.insideDiameter_m * 2 * STANDARD_GRAVITY_M_PER_S2 * boreArea_m2(input.insideDiameter_m) ** 2)
  );
}

/** Head a system coefficient takes at a flow, h = K q2, in any one pair of units. */
export function headAtFlow_m(coefficient: number, flow: number): number {
  return coefficient * flow ** 2;
}
