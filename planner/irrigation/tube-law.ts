import { STANDARD_GRAVITY_M_PER_S2 } from '../units/constants.ts';
import { LAMINAR_BELOW_RE, TURBULENT_ABOVE_RE, transitionCubic } from './friction-factor.ts';
import type { LineTube } from './line-network.ts';
import { boreArea_m2, squareLaw_s2_per_m5 } from './pipe-flow.ts';

/**
 * What each tube does to a flow, prepared once and kept in one row of numbers for each, since it is read some hundred
 * thousand times for a solution: see {@link writeTubeLaw} for the order.
 */
export type TubeLaws = Float64Array;

/** Numbers of one tube. */
export const LAW_WIDTH = 9;

/**
 * Writes a tube's numbers in row `at`: Reynolds number per m3/s; smooth flow, head per flow; L / (2 g D A2), head per f Q2;
 * relative roughness over 3.7; fittings, head per Q2; the four coefficients of the cubic.
 */
export function writeTubeLaw(laws: TubeLaws, at: number, tube: LineTube, viscosity_m2_per_s: number): void {
  const area = boreArea_m2(tube.insideDiameter_m);
  const reynoldsPerFlow = tube.insideDiameter_m / (area * viscosity_m2_per_s);
  const square = tube.length_m / (2 * STANDARD_GRAVITY_M_PER_S2 * tube.insideDiameter_m * area ** 2);
  const relativeRoughness = tube.roughness_m / tube.insideDiameter_m;
  const fittings = squareLaw_s2_per_m5(tube.fittingK, tube.insideDiameter_m);
  laws.set(
    [
      reynoldsPerFlow,
      (square * 64) / reynoldsPerFlow,
      square,
      relativeRoughness / 3.7,
      fittings,
      ...transitionCubic(relativeRoughness),
    ],
    at * LAW_WIDTH,
  );
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
export function tubeLoss(laws: TubeLaws, at: number, flow_m3_per_s: number, out: Float64Array): void {
  const row = at * LAW_WIDTH;
  const flow = Math.abs(flow_m3_per_s);
  const reynolds = flow * (laws[row] as number);
  const square = laws[row + 2] as number;
  const fittings = laws[row + 4] as number;
  let loss: number;
  let slope: number;
  if (reynolds < LAMINAR_BELOW_RE) {
    slope = laws[row + 1] as number;
    loss = slope * flow;
  } else if (reynolds > TURBULENT_ABOVE_RE) {
    const part = 5.74 * reynolds ** -0.9;
    const inner = (laws[row + 3] as number) + part;
    const log = Math.log10(inner);
    const factor = 0.25 / (log * log);
    const factorSlopeTimesRe = (1.8 * factor * part) / (inner * Math.LN10 * log);
    loss = square * factor * flow * flow;
    slope = square * flow * (2 * factor + factorSlopeTimesRe);
  } else {
    const r = reynolds / LAMINAR_BELOW_RE;
    const [x1, x2] = [laws[row + 5] as number, laws[row + 6] as number];
    const [x3, x4] = [laws[row + 7] as number, laws[row + 8] as number];
    const factor = x1 + r * (x2 + r * (x3 + r * x4));
    loss = square * factor * flow * flow;
    slope = square * flow * (2 * factor + r * (x2 + r * (2 * x3 + 3 * r * x4)));
  }
  loss += fittings * flow * flow;
  out[0] = flow_m3_per_s < 0 ? -loss : loss;
  out[1] = slope + 2 * fittings * flow;
}

/** Reynolds number of a flow in a tube of the row `at`. */
export function reynoldsIn(laws: TubeLaws, at: number, flow_m3_per_s: number): number {
  return Math.abs(flow_m3_per_s) * (laws[at * LAW_WIDTH] as number);
}
