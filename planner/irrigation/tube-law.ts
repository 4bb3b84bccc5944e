import { STANDARD_GRAVITY_M_PER_S2 } from '../units/constants.ts';
import { LAMINAR_BELOW_RE, TURBULENT_ABOVE_RE, transitionCubic } from './friction-factor.ts';
import type { LineTube } from './line-network.ts';
import { boreArea_m2, squareLaw_s2_per_m5 } from './pipe-flow.ts';

/** What a tube does to a flow, prepared once: the constants of {@link tubeLoss}. */
export type TubeLaw = {
  /** Reynolds number per m3/s. */
  readonly reynoldsPerFlow: number;
  /** Smooth flow: head per flow. */
  readonly smooth: number;
  /** L / (2 g D A2): head is this times f Q2. */
  readonly square: number;
  readonly relativeRoughness: number;
  readonly cubic: readonly [number, number, number, number];
  /** Fittings: head per squared flow. */
  readonly fittings: number;
};

export function tubeLaw(tube: LineTube, viscosity_m2_per_s: number): TubeLaw {
  const area = boreArea_m2(tube.insideDiameter_m);
  const reynoldsPerFlow = tube.insideDiameter_m / (area * viscosity_m2_per_s);
  const square = tube.length_m / (2 * STANDARD_GRAVITY_M_PER_S2 * tube.insideDiameter_m * area ** 2);
  const relativeRoughness = tube.roughness_m / tube.insideDiameter_m;
  return {
    reynoldsPerFlow,
    smooth: (square * 64) / reynoldsPerFlow,
    square,
    relativeRoughness,
    cubic: transitionCubic(relativeRoughness),
    fittings: squareLaw_s2_per_m5(tube.fittingK, tube.insideDiameter_m),
  };
}

/**
 * Head lost along a tube at a signed flow, friction and fittings, and its slope dh/dQ (always above zero).
 *
 *   laminar     h = c Q
 *   otherwise   h = m f Q2, dh/dQ = m (2 f Q + Q Re df/dRe)
 *   turbulent   df/dRe = 1.8 f 5.74 Re^-1.9 / (a ln 10 log10 a),  a = e/3.7 + 5.74/Re^0.9
 *
 * Writes loss and slope into `out`, since it runs some thousand times for each solution.
 * Source: Darcy-Weisbach, see `pipe-friction.ts`; the slope by differentiation.
 */
export function tubeLoss(law: TubeLaw, flow_m3_per_s: number, out: Float64Array): void {
  const flow = Math.abs(flow_m3_per_s);
  const reynolds = flow * law.reynoldsPerFlow;
  let loss: number;
  let slope: number;
  if (reynolds < LAMINAR_BELOW_RE) {
    loss = law.smooth * flow;
    slope = law.smooth;
  } else if (reynolds > TURBULENT_ABOVE_RE) {
    const part = 5.74 * reynolds ** -0.9;
    const inner = law.relativeRoughness / 3.7 + part;
    const log = Math.log10(inner);
    const factor = 0.25 / (log * log);
    const factorSlopeTimesRe = (1.8 * factor * part) / (inner * Math.LN10 * log);
    loss = law.square * factor * flow * flow;
    slope = law.square * flow * (2 * factor + factorSlopeTimesRe);
  } else {
    const r = reynolds / LAMINAR_BELOW_RE;
    const [x1, x2, x3, x4] = law.cubic;
    const factor = x1 + r * (x2 + r * (x3 + r * x4));
    loss = law.square * factor * flow * flow;
    slope = law.square * flow * (2 * factor + r * (x2 + r * (2 * x3 + 3 * r * x4)));
  }
  loss += law.fittings * flow * flow;
  out[0] = flow_m3_per_s < 0 ? -loss : loss;
  out[1] = slope + 2 * law.fittings * flow;
}
