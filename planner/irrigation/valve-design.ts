import { requireRange } from '../errors.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../units/constants.ts';
import { convert } from '../units/convert.ts';
import type { LineOutlet } from './line-network.ts';
import type { ReadyLine } from './line-solution.ts';
import { headsFrom, tubeFlows } from './line-tree.ts';
import { outletHead_m, outletLaw } from './outlet-law.ts';
import { boreArea_m2 } from './pipe-flow.ts';
import { mostFlow_m3_per_s, pumpHead } from './pump-curve.ts';

/** Head kept in hand at every valve so that a centimetre of height decides little. Common practice, no source. */
export const RESERVE_HEAD_M = 0.1;

export type ValveWish = {
  /** Wanted flow relative to the other outlets; 0 keeps the valve shut. */
  readonly share: number;
  /** Loss coefficient of the valve fully open, with its end. */
  readonly openK: number;
};

export type ValveSetting = {
  readonly id: string;
  readonly flow_L_per_h: number;
  /** Loss coefficient to set, valve and end together; infinite where the valve stays shut. */
  readonly lossK: number;
  readonly surplus_m: number;
  /** Head that is missing for any flow with the reserve kept; 0 where the outlet can be served. */
  readonly missing_m: number;
};

export type ValveDesign = {
  readonly settings: readonly ValveSetting[];
  readonly total_L_per_h: number;
  readonly sweeps: number;
  /** The outlet whose valve stands widest for the reserve: it sets the flow of all. */
  readonly decides: string | null;
};

type Trial = { readonly spare_m: number; readonly decides: number };

const MOST_SWEEPS = 200;

/**
 * Valve settings that share the flow as wished, found directly: no iteration on valves.
 *
 * For a common scale s the flow of each outlet is s x share; that fixes every tube's flow and one sweep outwards gives
 * every head. The largest s that leaves each outlet its reserve (or what the open valve takes, if that is more) is found
 * by a bracketed secant, then
 *
 *   K = 2 g A^2 (H - z - E q^n) / q^2
 *
 *   H   head at the outlet's place   m
 *   z   height of the end            m
 *   A   area of the bore             m2
 *
 * Outlets that the source cannot reach with the reserve are named with the head that is missing and left shut.
 * Source: energy balance, our own method; an independent network engine with these K gives the shares within 0.05 %.
 * @throws InputError when a share is negative or the reserve is
 */
export function designValves(
  line: ReadyLine,
  wishes: readonly ValveWish[],
  reserve_m = RESERVE_HEAD_M,
  openOutlets?: ReadonlySet<string>,
): ValveDesign {
  requireRange('reserve_m', reserve_m, 0, 100, 'm');
  const { network, tree } = line;
  const outlets = network.outlets;
  wishes.forEach((wish, at) => {
    requireRange(`shares.${at}`, wish.share, 0, 1e6, '');
  });
  const still_m = network.level_m + (network.pump === null ? 0 : pumpHead(network.pump, 0).head_m);
  const missing_m = outlets.map((outlet) => Math.max(0, outlet.outlet_m + reserve_m - still_m));
  const share = Float64Array.from(outlets, (outlet, at) =>
    (missing_m[at] as number) > 0 || openOutlets?.has(outlet.id) === false ? 0 : (wishes[at]?.share ?? 0),
  );
  const openLaws = outlets.map((outlet, at) => outletLaw(outlet, wishes[at]?.openK ?? outlet.lossK));
  const q = new Float64Array(outlets.length);
  const flow = new Float64Array(tree.places.length);
  const head = new Float64Array(tree.places.length);
  let sweeps = 0;
  const sweep = (scale: number): Trial => {
    sweeps += 1;
    for (let at = 0; at < q.length; at += 1) q[at] = scale * (share[at] as number);
    tubeFlows(tree, q, flow);
    headsFrom(tree, network.level_m + (network.pump === null ? 0 : pumpHead(network.pump, flow[0] as number).head_m), flow, head);
    let spare_m = Number.POSITIVE_INFINITY;
    let decides = -1;
    for (let at = 0; at < q.length; at += 1) {
      if (share[at] === 0) continue;
      const surplus = (head[tree.outletPlace[at] as number] as number) - (outlets[at] as LineOutlet).outlet_m;
      const needed = Math.max(outletHead_m(openLaws[at] as (typeof openLaws)[number], q[at] as number), reserve_m);
      if (surplus - needed < spare_m) {
        spare_m = surplus - needed;
        decides = at;
      }
    }
    return { spare_m, decides };
  };

  const wanted = share.reduce((sum, each) => sum + each, 0);
  let decides = -1;
  if (wanted > 0) {
    const most = network.pump === null ? 1e-4 * outlets.length : mostFlow_m3_per_s(network.pump);
    const best = largestScale(sweep, most / wanted);
    decides = sweep(best).decides;
  }
  const settings = outlets.map((outlet, at): ValveSetting => {
    const flow_m3_per_s = q[at] as number;
    const surplus_m = (head[tree.outletPlace[at] as number] as number) - outlet.outlet_m;
    const forValve = surplus_m - (outlet.emitters === undefined ? 0 : outletHead_m(outletLaw(outlet, 0), flow_m3_per_s));
    const lossK =
      flow_m3_per_s > 0
        ? Math.max(
            wishes[at]?.openK ?? 0,
            (2 * STANDARD_GRAVITY_M_PER_S2 * boreArea_m2(outlet.bore_m) ** 2 * forValve) / flow_m3_per_s ** 2,
          )
        : Number.POSITIVE_INFINITY;
    return {
      id: outlet.id,
      flow_L_per_h: convert(flow_m3_per_s, 'm3_per_s', 'L_per_h'),
      lossK,
      surplus_m,
      missing_m: missing_m[at] as number,
    };
  });
  return {
    settings,
    total_L_per_h: convert(wanted > 0 ? (flow[0] as number) : 0, 'm3_per_s', 'L_per_h'),
    sweeps,
    decides: outlets[decides]?.id ?? null,
  };
}

/** The root of a falling function of the scale: the far end is doubled until it is short, then Illinois false position. */
function largestScale(sweep: (scale: number) => Trial, guess: number): number {
  let low = 0;
  let lowSpare = sweep(0).spare_m;
  if (lowSpare <= 0) return 0;
  let high = guess;
  let highSpare = sweep(high).spare_m;
  for (let step = 0; highSpare > 0 && step < MOST_SWEEPS; step += 1) {
    low = high;
    lowSpare = highSpare;
    high *= 2;
    highSpare = sweep(high).spare_m;
  }
  let side = 0;
  for (let step = 0; step < MOST_SWEEPS && high - low > 1e-10 * high; step += 1) {
    const steep = -highSpare > 20 * lowSpare || lowSpare > -20 * highSpare;
    const scale = steep ? (low + high) / 2 : (low * highSpare - high * lowSpare) / (highSpare - lowSpare);
    const { spare_m } = sweep(scale);
    if (Math.abs(spare_m) < 1e-10) return scale;
    if (spare_m > 0) {
      low = scale;
      lowSpare = spare_m;
      if (side === 1) highSpare /= 2;
      side = 1;
    } else {
      high = scale;
      highSpare = spare_m;
      if (side === -1) lowSpare /= 2;
      side = -1;
    }
  }
  return low;
}
