import type { LineTree } from './line-tree.ts';
import { headsFrom, tubeFlows } from './line-tree.ts';
import type { OutletLaw } from './outlet-law.ts';
import { mostFlow_m3_per_s, type PumpCurve, pumpHead } from './pump-curve.ts';
import { type TubeLaw, tubeLoss } from './tube-law.ts';

export type NewtonInput = {
  readonly tree: LineTree;
  readonly level_m: number;
  readonly pump: PumpCurve | null;
  readonly laws: readonly OutletLaw[];
  readonly outlet_m: Float64Array;
  /** 1 where the end is under water and can run back. */
  readonly twoWay: Uint8Array;
  /** 1 where the valve is shut or the zone rests. */
  readonly closed: Uint8Array;
};

export type NewtonAnswer =
  | {
      readonly state: 'converged';
      readonly iterations: number;
      readonly outletFlow_m3_per_s: Float64Array;
      readonly tubeFlow_m3_per_s: Float64Array;
      readonly head_m: Float64Array;
    }
  | { readonly state: 'no-solution'; readonly because: string; readonly iterations: number };

/** Flow a line without pump starts from. */
const START_FLOW_M3_PER_S = 1e-4;
const MOST_ITERATIONS = 200;
/** The barrier is not driven below this times the starting flow: under it the heads' own rounding would rule. */
const LEAST_MU_M = 1e-14;
/** Largest change, as a share of the starting flow, at which the flows are taken as found. */
const CLOSE = 1e-7;
/** Flow, as a share of the starting flow, below which an open end is called dry. */
const DRY = 1e-4;

/**
 * Finds every outlet's flow on a tree of tubes (interior-point Newton).
 *
 * An open end gives water only: with flow q and slack s, both above zero,
 *
 *   H = z + R q^2 + E q^n - s     and     q s = mu,   mu driven to 0
 *
 *   H   head at the outlet's place     m
 *   z   height of the end              m
 *
 * Tube flow is the sum of the outlet flows behind it, so the water balance is exact. Each step linearises every tube,
 * outlet and the pump, takes heads out from the ends to the source and puts them in from the source to the ends (two
 * sweeps, no matrix), and goes at most 95 % of the way to the boundary. The problem is convex, since every loss rises with
 * flow and the pump's head falls, so there is one answer. Ends under water have no slack and may run back.
 *
 * Stops when the largest change is under 1e-7 of the starting flow and mu at its floor; over 200 steps is no solution.
 * Source: interior-point method for complementarity problems (memory); tested against an independent network engine.
 */
export function solveByNewton(input: NewtonInput): NewtonAnswer {
  const { tree, laws, outlet_m, twoWay, closed } = input;
  const placeCount = tree.places.length;
  const outletCount = laws.length;
  let open = 0;
  for (let k = 0; k < outletCount; k += 1) open += closed[k] === 1 ? 0 : 1;
  const start = (input.pump === null ? START_FLOW_M3_PER_S : mostFlow_m3_per_s(input.pump) / 2) / Math.max(1, open);
  const q = new Float64Array(outletCount);
  const s = new Float64Array(outletCount).fill(0.1);
  const dq = new Float64Array(outletCount);
  const ds = new Float64Array(outletCount);
  const target = new Float64Array(outletCount);
  const slope = new Float64Array(outletCount);
  for (let k = 0; k < outletCount; k += 1) q[k] = closed[k] === 1 ? 0 : start;
  const flow = new Float64Array(placeCount);
  const head = new Float64Array(placeCount);
  const a = new Float64Array(placeCount);
  const b = new Float64Array(placeCount);
  const loss = new Float64Array(placeCount);
  const lossSlope = new Float64Array(placeCount);
  const out = new Float64Array(2);
  const finish = (iterations: number): NewtonAnswer => {
    for (let k = 0; k < outletCount; k += 1) if (twoWay[k] === 0 && (q[k] as number) < DRY * start) q[k] = 0;
    tubeFlows(tree, q, flow);
    const pumpHead_m = input.pump === null ? 0 : pumpHead(input.pump, flow[0] as number).head_m;
    headsFrom(tree, input.level_m + pumpHead_m, flow, head);
    return { state: 'converged', iterations, outletFlow_m3_per_s: q, tubeFlow_m3_per_s: flow, head_m: head };
  };
  if (open === 0) return finish(0);

  for (let iteration = 1; iteration <= MOST_ITERATIONS; iteration += 1) {
    let product = 0;
    let oneWay = 0;
    for (let k = 0; k < outletCount; k += 1)
      if (closed[k] === 0 && twoWay[k] === 0) {
        product += (q[k] as number) * (s[k] as number);
        oneWay += 1;
      }
    const mean = oneWay === 0 ? 0 : product / oneWay;
    const mu = Math.max(0.05 * mean, LEAST_MU_M * start);

    tubeFlows(tree, q, flow);
    a.fill(0);
    b.fill(0);
    for (let k = 0; k < outletCount; k += 1) {
      if (closed[k] === 1) continue;
      const law = laws[k] as OutletLaw;
      const flowNow = q[k] as number;
      const size = Math.abs(flowNow);
      let taken = law.square * size * size;
      let rises = 2 * law.square * size;
      if (law.emitter > 0) {
        const emitter = law.emitter * size ** law.emitterPower;
        taken += emitter;
        rises += (law.emitterPower * emitter) / Math.max(size, 1e-12);
      }
      if (twoWay[k] === 1) {
        rises = Math.max(rises, 2 * law.square * 1e-3 * start);
        slope[k] = rises;
        target[k] = (outlet_m[k] as number) + (flowNow < 0 ? -taken : taken);
      } else {
        slope[k] = rises + (s[k] as number) / flowNow;
        target[k] = (outlet_m[k] as number) + taken - mu / flowNow;
      }
      const place = tree.outletPlace[k] as number;
      a[place] = (a[place] as number) + 1 / (slope[k] as number);
      b[place] = (b[place] as number) - (target[k] as number) / (slope[k] as number);
    }
    for (let place = placeCount - 1; place > 0; place -= 1) {
      tubeLoss(tree.laws[place] as TubeLaw, flow[place] as number, out);
      loss[place] = out[0] as number;
      lossSlope[place] = out[1] as number;
      const weight = 1 / (1 + (a[place] as number) * (out[1] as number));
      const parent = tree.parent[place] as number;
      a[parent] = (a[parent] as number) + (a[place] as number) * weight;
      b[parent] = (b[parent] as number) + ((b[place] as number) - (a[place] as number) * (out[0] as number)) * weight;
    }
    const source = input.pump === null ? { head_m: 0, slope: 0 } : pumpHead(input.pump, flow[0] as number);
    const sourceHead = input.level_m + source.head_m;
    const change = ((a[0] as number) * sourceHead + (b[0] as number)) / (1 - (a[0] as number) * source.slope);
    head[0] = sourceHead + source.slope * change;
    for (let place = 1; place < placeCount; place += 1) {
      const above = (head[tree.parent[place] as number] as number) - (loss[place] as number);
      head[place] =
        (above - (lossSlope[place] as number) * (b[place] as number)) / (1 + (lossSlope[place] as number) * (a[place] as number));
    }

    let step = 1;
    let largest = 0;
    for (let k = 0; k < outletCount; k += 1) {
      if (closed[k] === 1) continue;
      const change_k = ((head[tree.outletPlace[k] as number] as number) - (target[k] as number)) / (slope[k] as number);
      dq[k] = change_k;
      largest = Math.max(largest, Math.abs(change_k));
      const flowNow = q[k] as number;
      if (twoWay[k] === 1) {
        step = Math.min(step, (4 * Math.abs(flowNow) + 4 * start) / Math.abs(change_k));
        continue;
      }
      const slack = s[k] as number;
      const slackChange = (mu - flowNow * slack - slack * change_k) / flowNow;
      ds[k] = slackChange;
      if (change_k < 0) step = Math.min(step, (-0.95 * flowNow) / change_k);
      if (slackChange < 0) step = Math.min(step, (-0.95 * slack) / slackChange);
    }
    if (!Number.isFinite(largest))
      return { state: 'no-solution', because: 'The figures of this line lead to no finite flow.', iterations: iteration };
    for (let k = 0; k < outletCount; k += 1) {
      if (closed[k] === 1) continue;
      q[k] = (q[k] as number) + step * (dq[k] as number);
      if (twoWay[k] === 0) s[k] = (s[k] as number) + step * (ds[k] as number);
    }
    if (step > 0.9 && largest < CLOSE * start && mean < 10 * LEAST_MU_M * start) return finish(iteration);
  }
  return {
    state: 'no-solution',
    because: `No balance of flows was found in ${MOST_ITERATIONS} steps. Look for a length, bore or height far out of line.`,
    iterations: MOST_ITERATIONS,
  };
}
