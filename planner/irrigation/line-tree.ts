import { InputError } from '../errors.ts';
import { lineFaults } from './line-faults.ts';
import type { LineNetwork } from './line-network.ts';
import { LAW_WIDTH, type TubeLaws, tubeLoss, writeTubeLaw } from './tube-law.ts';

/**
 * The line in the order in which water runs: place 0 is the source, every place comes after the one that feeds it, and
 * the tube into place i stands at i. `outletPlace` says where each outlet of the network hangs.
 */
export type LineTree = {
  readonly places: readonly string[];
  readonly placeOf: ReadonlyMap<string, number>;
  readonly parent: Int32Array;
  /** Index of the network's tube that leads into the place; -1 for the source. */
  readonly tube: Int32Array;
  /** The law of the tube into each place; the source's row stays empty. */
  readonly laws: TubeLaws;
  readonly outletPlace: Int32Array;
};

/** Puts a network in order. @throws InputError with every fault of the line at its field */
export function lineTree(network: LineNetwork): LineTree {
  const faults = lineFaults(network);
  if (faults.length > 0) throw new InputError(faults);
  const after = new Map<string, number[]>();
  network.tubes.forEach((tube, at) => {
    const list = after.get(tube.from);
    if (list === undefined) after.set(tube.from, [at]);
    else list.push(at);
  });
  const places = [network.source];
  const parents = [-1];
  const tubes = [-1];
  const laws = new Float64Array((network.tubes.length + 1) * LAW_WIDTH);
  for (let place = 0; place < places.length; place += 1)
    for (const at of after.get(places[place] as string) ?? []) {
      const tube = network.tubes[at];
      if (tube === undefined) continue;
      places.push(tube.to);
      parents.push(place);
      tubes.push(at);
      writeTubeLaw(laws, places.length - 1, tube, network.viscosity_m2_per_s);
    }
  const placeOf = new Map(places.map((name, at) => [name, at]));
  const outletPlace = Int32Array.from(network.outlets, (outlet) => placeOf.get(outlet.node) ?? -1);
  return { places, placeOf, parent: Int32Array.from(parents), tube: Int32Array.from(tubes), laws, outletPlace };
}

/** Adds up what leaves behind every tube: flow into each place, the source's own in place 0. */
export function tubeFlows(tree: LineTree, outletFlow: Float64Array, flow: Float64Array): void {
  flow.fill(0);
  for (let at = 0; at < outletFlow.length; at += 1) {
    const place = tree.outletPlace[at] as number;
    flow[place] = (flow[place] as number) + (outletFlow[at] as number);
  }
  for (let place = tree.places.length - 1; place > 0; place -= 1) {
    const parent = tree.parent[place] as number;
    flow[parent] = (flow[parent] as number) + (flow[place] as number);
  }
}

/** Heads at every place, from the source's head and the tubes' flows: one sweep outwards. */
export function headsFrom(tree: LineTree, sourceHead_m: number, flow: Float64Array, head: Float64Array): void {
  const out = new Float64Array(2);
  head[0] = sourceHead_m;
  for (let place = 1; place < tree.places.length; place += 1) {
    tubeLoss(tree.laws, place, flow[place] as number, out);
    head[place] = (head[tree.parent[place] as number] as number) - (out[0] as number);
  }
}
