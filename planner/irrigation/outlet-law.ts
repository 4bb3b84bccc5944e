import { convert } from '../units/convert.ts';
import type { LineOutlet } from './line-network.ts';
import { squareLaw_s2_per_m5 } from './pipe-flow.ts';

/** Head an outlet takes at a flow: R q2 for valve and end, E q^n for the emitters behind it. */
export type OutletLaw = {
  readonly square: number;
  readonly emitter: number;
  readonly emitterPower: number;
};

/**
 * The law of an outlet. Emitters rated q0 at h0 with exponent x follow q = N q0 (h/h0)^x, so h = h0 (q/(N q0))^(1/x).
 * Source: EPANET 2.2 user manual (emitters); drip emitter exponents common practice, no source.
 */
export function outletLaw(outlet: LineOutlet, lossK = outlet.lossK): OutletLaw {
  const square = squareLaw_s2_per_m5(lossK, outlet.bore_m);
  const emitters = outlet.emitters;
  if (emitters === undefined) return { square, emitter: 0, emitterPower: 2 };
  const rated_m3_per_s = convert(emitters.count * emitters.flowEach_L_per_h, 'L_per_h', 'm3_per_s');
  const emitterPower = 1 / emitters.exponent;
  return { square, emitter: emitters.atHead_m / rated_m3_per_s ** emitterPower, emitterPower };
}

/** Head taken at a flow of zero or more. */
export function outletHead_m(law: OutletLaw, flow_m3_per_s: number): number {
  const emitter = law.emitter === 0 ? 0 : law.emitter * flow_m3_per_s ** law.emitterPower;
  return law.square * flow_m3_per_s * flow_m3_per_s + emitter;
}
