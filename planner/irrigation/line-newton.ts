import { headsFrom, type LineTree, tubeFlows } from './line-tree.ts';
import { changesFor, linearise, type NewtonWork, newtonWork } from './newton-work.ts';
import type { OutletLaw } from './outlet-law.ts';
import { mostFlow_m3_per_s, type PumpCurve, pumpHead } from './pump-curve.ts';

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
/** How far towards the boundary a step may go. */
const TO_BOUNDARY = 0.99;

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
 * sweeps, no matrix). It looks ahead once with mu = 0 to choose mu and to correct for the product of the changes, and goes at
 * most 99 % of the way to the boundary. The problem is convex, since every loss rises with flow and the pump's head falls, so
 * there is one answer. Ends under water have no slack and may run back.
 *
 * Stops when the largest change is under 1e-7 of the starting flow and mu at its floor; over 200 steps is no solution.
 * Source: predictor and corrector of Mehrotra (1992, memory); tested against an independent network engine.
 */
export function solveByNewton(input: NewtonInput): NewtonAnswer {
  const open = input.closed.reduce((sum, closed) => sum + (closed === 1 ? 0 : 1), 0);
  const most = input.pump === null ? START_FLOW_M3_PER_S : mostFlow_m3_per_s(input.pump) / 2;
  const work = newtonWork(input, most / Math.max(1, open));
  if (open === 0) return finished(work, 0);
  const { start_m3_per_s: start } = work;
  const outlets = input.laws.length;
  const dq = new Float64Array(outlets);
  const ds = new Float64Array(outlets);
  const dqAhead = new Float64Array(outlets);
  const dsAhead = new Float64Array(outlets);
  for (let iteration = 1; iteration <= MOST_ITERATIONS; iteration += 1) {
    const mean = meanProduct(work, 0, dq, ds);
    linearise(work);

    work.target.set(work.taken);
    changesFor(work, dqAhead);
    slackChanges(work, 0, dqAhead, null, dsAhead);
    const ahead = stepWithin(work, dqAhead, dsAhead, 1);
    const left = mean === 0 ? 0 : meanProduct(work, ahead, dqAhead, dsAhead) / mean;
    const mu = Math.max(left ** 3 * mean, LEAST_MU_M * start);

    for (let k = 0; k < outlets; k += 1) {
      dsAhead[k] = ahead * ahead * (dqAhead[k] as number) * (dsAhead[k] as number);
      if (input.closed[k] === 0 && input.twoWay[k] === 0)
        work.target[k] = (work.taken[k] as number) - (mu - (dsAhead[k] as number)) / (work.q[k] as number);
    }
    changesFor(work, dq);
    slackChanges(work, mu, dq, dsAhead, ds);
    const step = stepWithin(work, dq, ds, TO_BOUNDARY);
    let largest = 0;
    for (let k = 0; k < outlets; k += 1) largest = Math.max(largest, Math.abs(dq[k] as number));
    if (!Number.isFinite(largest))
      return { state: 'no-solution', because: 'The figures of this line lead to no finite flow.', iterations: iteration };
    advance(work, step, dq, ds);
    if (step > 0.9 && largest < CLOSE * start && mean < 10 * LEAST_MU_M * start) return finished(work, iteration);
  }
  return {
    state: 'no-solution',
    because: `No balance of flows was found in ${MOST_ITERATIONS} steps. Look for a length, bore or height far out of line.`,
    iterations: MOST_ITERATIONS,
  };
}

/** True for an open end that is in use: only these have a slack. */
const hasSlack = ({ input }: NewtonWork, k: number): boolean => input.closed[k] === 0 && input.twoWay[k] === 0;

/** Mean of q s over the open ends after a step along the changes. */
function meanProduct(work: NewtonWork, step: number, dq: Float64Array, ds: Float64Array): number {
  let product = 0;
  let count = 0;
  for (let k = 0; k < work.q.length; k += 1) {
    if (!hasSlack(work, k)) continue;
    product += ((work.q[k] as number) + step * (dq[k] as number)) * ((work.s[k] as number) + step * (ds[k] as number));
    count += 1;
  }
  return count === 0 ? 0 : product / count;
}

/** Change of each slack that brings q s to mu less a correction: ds = (mu - c - q s - s dq) / q. */
function slackChanges(work: NewtonWork, mu: number, dq: Float64Array, correction: Float64Array | null, into: Float64Array): void {
  for (let k = 0; k < work.q.length; k += 1) {
    if (!hasSlack(work, k)) continue;
    const [flow, slack] = [work.q[k] as number, work.s[k] as number];
    into[k] = (mu - (correction === null ? 0 : (correction[k] as number)) - flow * slack - slack * (dq[k] as number)) / flow;
  }
}

/** The longest step, 1 at the most, that keeps every flow and slack above zero and no two-way end from leaping. */
function stepWithin(work: NewtonWork, dq: Float64Array, ds: Float64Array, share: number): number {
  let step = 1;
  for (let k = 0; k < work.q.length; k += 1) {
    const change = dq[k] as number;
    if (hasSlack(work, k)) {
      if (change < 0) step = Math.min(step, (-share * (work.q[k] as number)) / change);
      if ((ds[k] as number) < 0) step = Math.min(step, (-share * (work.s[k] as number)) / (ds[k] as number));
    } else if (change !== 0)
      step = Math.min(step, (4 * Math.abs(work.q[k] as number) + 4 * work.start_m3_per_s) / Math.abs(change));
  }
  return step;
}

function advance(work: NewtonWork, step: number, dq: Float64Array, ds: Float64Array): void {
  for (let k = 0; k < work.q.length; k += 1) {
    work.q[k] = (work.q[k] as number) + step * (dq[k] as number);
    if (hasSlack(work, k)) work.s[k] = (work.s[k] as number) + step * (ds[k] as number);
  }
}

/** Dry ends are set to no flow; tube flows and heads follow from the outlets, so that every balance holds exactly. */
function finished(work: NewtonWork, iterations: number): NewtonAnswer {
  const { q, flow, head, input } = work;
  for (let k = 0; k < q.length; k += 1) if (input.twoWay[k] === 0 && (q[k] as number) < DRY * work.start_m3_per_s) q[k] = 0;
  tubeFlows(input.tree, q, flow);
  const pumpHead_m = input.pump === null ? 0 : pumpHead(input.pump, flow[0] as number).head_m;
  headsFrom(input.tree, input.level_m + pumpHead_m, flow, head);
  return { state: 'converged', iterations, outletFlow_m3_per_s: q, tubeFlow_m3_per_s: flow, head_m: head };
}
