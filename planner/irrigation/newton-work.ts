import type { NewtonInput } from './line-newton.ts';
import { tubeFlows } from './line-tree.ts';
import type { OutletLaw } from './outlet-law.ts';
import { pumpHead } from './pump-curve.ts';
import { tubeLoss } from './tube-law.ts';

/** Numbers that one solution works on: per outlet (flow q, slack s and their changes) and per place of the tree. */
export type NewtonWork = {
  readonly input: NewtonInput;
  readonly start_m3_per_s: number;
  readonly q: Float64Array;
  readonly s: Float64Array;
  /** Height of the end and what it takes at the flow of now. */
  readonly taken: Float64Array;
  readonly slope: Float64Array;
  readonly target: Float64Array;
  readonly flow: Float64Array;
  readonly head: Float64Array;
  readonly loss: Float64Array;
  readonly lossSlope: Float64Array;
  /** Flow that a subtree draws more for each metre of head: sum of 1/slope, lessened by its tubes. */
  readonly draw: Float64Array;
  readonly rest: Float64Array;
  readonly weight: Float64Array;
  readonly source: { head_m: number; slope: number };
};

export function newtonWork(input: NewtonInput, start_m3_per_s: number): NewtonWork {
  const outlets = input.laws.length;
  const places = input.tree.places.length;
  const each = (length: number): Float64Array => new Float64Array(length);
  const q = each(outlets);
  for (let k = 0; k < outlets; k += 1) q[k] = input.closed[k] === 1 ? 0 : start_m3_per_s;
  return {
    input,
    start_m3_per_s,
    q,
    s: each(outlets).fill(0.1),
    taken: each(outlets),
    slope: each(outlets),
    target: each(outlets),
    flow: each(places),
    head: each(places),
    loss: each(places),
    lossSlope: each(places),
    draw: each(places),
    rest: each(places),
    weight: each(places),
    source: { head_m: 0, slope: 0 },
  };
}

/** Share of the starting flow below which a two-way end's square law is taken as straight: its slope at rest is nothing. */
const STRAIGHT_BELOW = 1e-3;

/** Linearises outlets, tubes and source at the flows of now, and adds up from the ends what each subtree draws. */
export function linearise(work: NewtonWork): void {
  const { q, s, taken, slope, flow, loss, lossSlope, draw, weight } = work;
  const { tree, laws, outlet_m, twoWay, closed, pump, level_m } = work.input;
  tubeFlows(tree, q, flow);
  draw.fill(0);
  for (let k = 0; k < q.length; k += 1) {
    if (closed[k] === 1) continue;
    const law = laws[k] as OutletLaw;
    const now = q[k] as number;
    const size = Math.abs(now);
    let takes = law.square * size * size;
    let rises = 2 * law.square * size;
    if (law.emitter > 0) {
      const emitter = law.emitter * size ** law.emitterPower;
      takes += emitter;
      rises += (law.emitterPower * emitter) / Math.max(size, 1e-12);
    }
    taken[k] = (outlet_m[k] as number) + (now < 0 ? -takes : takes);
    slope[k] =
      twoWay[k] === 1 ? Math.max(rises, 2 * law.square * STRAIGHT_BELOW * work.start_m3_per_s) : rises + (s[k] as number) / now;
    const place = tree.outletPlace[k] as number;
    draw[place] = (draw[place] as number) + 1 / (slope[k] as number);
  }
  const out = new Float64Array(2);
  for (let place = flow.length - 1; place > 0; place -= 1) {
    tubeLoss(tree.laws, place, flow[place] as number, out);
    loss[place] = out[0] as number;
    lossSlope[place] = out[1] as number;
    weight[place] = 1 / (1 + (draw[place] as number) * (out[1] as number));
    const parent = tree.parent[place] as number;
    draw[parent] = (draw[parent] as number) + (draw[place] as number) * (weight[place] as number);
  }
  const source = pump === null ? { head_m: 0, slope: 0 } : pumpHead(pump, flow[0] as number);
  work.source.head_m = level_m + source.head_m;
  work.source.slope = source.slope;
}

/**
 * The change of every outlet's flow for the targets set: heads are taken out from the ends to the source and put in again
 * from the source to the ends.
 */
export function changesFor(work: NewtonWork, into: Float64Array): void {
  const { slope, target, head, loss, lossSlope, draw, rest, weight, source } = work;
  const { tree, closed } = work.input;
  rest.fill(0);
  for (let k = 0; k < target.length; k += 1) {
    if (closed[k] === 1) continue;
    const place = tree.outletPlace[k] as number;
    rest[place] = (rest[place] as number) - (target[k] as number) / (slope[k] as number);
  }
  for (let place = head.length - 1; place > 0; place -= 1) {
    const parent = tree.parent[place] as number;
    const own = (rest[place] as number) - (draw[place] as number) * (loss[place] as number);
    rest[parent] = (rest[parent] as number) + own * (weight[place] as number);
  }
  const change = ((draw[0] as number) * source.head_m + (rest[0] as number)) / (1 - (draw[0] as number) * source.slope);
  head[0] = source.head_m + source.slope * change;
  for (let place = 1; place < head.length; place += 1) {
    const above = (head[tree.parent[place] as number] as number) - (loss[place] as number);
    head[place] = (above - (lossSlope[place] as number) * (rest[place] as number)) * (weight[place] as number);
  }
  for (let k = 0; k < target.length; k += 1)
    into[k] =
      closed[k] === 1 ? 0 : ((head[tree.outletPlace[k] as number] as number) - (target[k] as number)) / (slope[k] as number);
}
