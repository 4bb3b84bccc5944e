import { refuse } from '../errors.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../units/constants.ts';
import { convert } from '../units/convert.ts';
import type { LineOutlet } from './line-network.ts';
import { type LineSolution, type ReadyLine, solveReady } from './line-solution.ts';
import { headsFrom, tubeFlows } from './line-tree.ts';
import { outletHead_m, outletLaw } from './outlet-law.ts';
import { boreArea_m2 } from './pipe-flow.ts';
import { pumpHead } from './pump-curve.ts';

/** Seconds a grower holds the jug under the outlet. */
export const CATCH_S = 30;

export type CardStep = {
  readonly id: string;
  /** Flow to see at this outlet now, while those after it stand as they did. */
  readonly seeNow_L_per_h: number;
  readonly catch_mL: number;
  /** Flow once every valve is set. */
  readonly final_L_per_h: number;
};

/** What a jug holds after 30 s of a flow. */
export function catchOf_mL(flow_L_per_h: number): number {
  return convert(convert(flow_L_per_h, 'L_per_h', 'L_per_s') * CATCH_S, 'L', 'mL');
}

/** The flow that fills a jug so far in some seconds. @throws InputError when the time is not above zero */
export function flowOfCatch_L_per_h(caught_mL: number, time_s = CATCH_S): number {
  if (!(time_s > 0)) refuse('time_s', 'not-positive', 'time_s: seconds above zero are needed.');
  if (!(caught_mL >= 0)) refuse('caught_mL', 'too-small', 'caught_mL: a volume of zero or more is needed.');
  return convert(convert(caught_mL, 'mL', 'L') / time_s, 'L_per_s', 'L_per_h');
}

const flowAt = (solution: LineSolution, id: string): number =>
  solution.state === 'converged' ? (solution.outlets.find((outlet) => outlet.id === id)?.flow_L_per_h ?? 0) : 0;

export type CardInput = {
  readonly line: ReadyLine;
  readonly order: readonly string[];
  readonly designK: ReadonlyMap<string, number>;
  readonly presentK: ReadonlyMap<string, number>;
};

/**
 * The card to walk the line with: at each outlet, in order, the flow to see while the outlets before it are set and those
 * after it stand as they were. Beds interact, so a bed set right early reads less than its final flow; walk near to far.
 *
 * Each step is one solution of the line, so a long card is handed out step by step.
 * Source: one solution of the line for each step; the order common practice, no source.
 * @throws InputError when an outlet of the order is not on the line
 */
export function* cardSteps(input: CardInput): Generator<CardStep, void> {
  const { line, order, designK } = input;
  const final = solveReady(line, { lossK: designK });
  const standing = new Map(input.presentK);
  for (const [at, id] of order.entries()) {
    const wanted = designK.get(id);
    if (wanted === undefined) return refuse(`order.${at}`, 'not-on-the-line', `${id} is not an outlet of this line.`);
    standing.set(id, wanted);
    const seeNow_L_per_h = flowAt(solveReady(line, { lossK: standing }), id);
    yield { id, seeNow_L_per_h, catch_mL: catchOf_mL(seeNow_L_per_h), final_L_per_h: flowAt(final, id) };
  }
}

/** The whole card at once. @throws InputError when an outlet of the order is not on the line */
export const setUpCard = (input: CardInput): readonly CardStep[] => [...cardSteps(input)];

/** Outlets from the nearest to the farthest, along the tubes; equal distances by the order of the line. */
export function nearToFar(line: ReadyLine): readonly string[] {
  const { tree, network } = line;
  const distance_m = new Float64Array(tree.places.length);
  for (let place = 1; place < tree.places.length; place += 1)
    distance_m[place] =
      (distance_m[tree.parent[place] as number] as number) + (network.tubes[tree.tube[place] as number]?.length_m ?? 0);
  const far = (at: number): number => distance_m[tree.outletPlace[at] as number] as number;
  return network.outlets
    .map((outlet, at) => ({ id: outlet.id, at }))
    .sort((one, other) => far(one.at) - far(other.at) || one.at - other.at)
    .map(({ id }) => id);
}

/** Outlets branch by branch, each from its near end: less walking where the line forks, smaller flows to read. */
export function branchByBranch(line: ReadyLine): readonly string[] {
  const { tree, network } = line;
  const after: number[][] = tree.places.map(() => []);
  for (let place = 1; place < tree.places.length; place += 1) after[tree.parent[place] as number]?.push(place);
  const hanging = new Map<number, string[]>();
  network.outlets.forEach((outlet, at) => {
    const place = tree.outletPlace[at] as number;
    hanging.set(place, [...(hanging.get(place) ?? []), outlet.id]);
  });
  const order: string[] = [];
  const waiting = [0];
  for (let place = waiting.pop(); place !== undefined; place = waiting.pop()) {
    order.push(...(hanging.get(place) ?? []));
    // ends that hang here come before the tube goes on, and an earlier branch before a later one: they are taken last off the pile
    const isEnd = (at: number): number => (after[at]?.length === 0 ? 1 : 0);
    const next = [...(after[place] ?? [])].sort((one, other) => isEnd(one) - isEnd(other) || other - one);
    waiting.push(...next);
  }
  return order;
}

export type FittedValve = {
  readonly id: string;
  /** The valve's loss coefficient as measured; null where the measured flow is more than the line as entered can give. */
  readonly lossK: number | null;
  readonly excess_m: number;
};

const MOST_ROUNDS = 60;

/**
 * Loss coefficients of the valves from measured flows. Where every outlet was measured the flows give every head by one
 * sweep and each K follows, K = 2 g A2 (H - z)/q2. Outlets not measured keep their K and are solved between sweeps.
 *
 * Source: energy balance.
 * @throws InputError when a measured flow is negative or at an outlet that is not on the line
 */
export function fitValves(
  line: ReadyLine,
  measured_L_per_h: ReadonlyMap<string, number>,
  presentK: ReadonlyMap<string, number>,
): readonly FittedValve[] {
  const { network, tree } = line;
  for (const [id, flow] of measured_L_per_h) {
    if (!network.outlets.some((outlet) => outlet.id === id))
      refuse(`measured.${id}`, 'not-on-the-line', `${id} is not an outlet of this line.`);
    if (!(flow >= 0)) refuse(`measured.${id}`, 'too-small', 'A measured flow is zero or more.');
  }
  const q = new Float64Array(network.outlets.length);
  const flow = new Float64Array(tree.places.length);
  const head = new Float64Array(tree.places.length);
  const valves = new Map(presentK);
  let fitted: readonly FittedValve[] = [];
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const solution = measured_L_per_h.size === network.outlets.length ? null : solveReady(line, { lossK: valves });
    network.outlets.forEach((outlet, at) => {
      const known = measured_L_per_h.get(outlet.id) ?? (solution === null ? 0 : flowAt(solution, outlet.id));
      q[at] = convert(known, 'L_per_h', 'm3_per_s');
    });
    tubeFlows(tree, q, flow);
    const pump_m = network.pump === null ? 0 : pumpHead(network.pump, flow[0] as number).head_m;
    headsFrom(tree, network.level_m + pump_m, flow, head);
    let change = 0;
    fitted = network.outlets.flatMap((outlet, at) => {
      if (!measured_L_per_h.has(outlet.id)) return [];
      const valve = valveOf(outlet, q[at] as number, head[tree.outletPlace[at] as number] as number);
      const next = valve.lossK ?? valves.get(outlet.id) ?? outlet.lossK;
      const before = valves.get(outlet.id) ?? outlet.lossK;
      if (Number.isFinite(next)) change = Math.max(change, Math.abs(next - before) / next);
      valves.set(outlet.id, next);
      return [valve];
    });
    if (solution === null || change < 1e-6) break;
  }
  return fitted;
}

function valveOf(outlet: LineOutlet, flow_m3_per_s: number, head_m: number): FittedValve {
  if (flow_m3_per_s === 0) return { id: outlet.id, lossK: Number.POSITIVE_INFINITY, excess_m: 0 };
  const emitters_m = outlet.emitters === undefined ? 0 : outletHead_m(outletLaw(outlet, 0), flow_m3_per_s);
  const forValve_m = head_m - outlet.outlet_m - emitters_m;
  if (forValve_m <= 0) return { id: outlet.id, lossK: null, excess_m: -forValve_m };
  const lossK = (2 * STANDARD_GRAVITY_M_PER_S2 * boreArea_m2(outlet.bore_m) ** 2 * forValve_m) / flow_m3_per_s ** 2;
  return { id: outlet.id, lossK, excess_m: 0 };
}
