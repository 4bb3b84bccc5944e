import { convert } from '../units/convert.ts';
import { type Regime, regimeOf } from './friction-factor.ts';
import type { LineNetwork } from './line-network.ts';
import { solveByNewton } from './line-newton.ts';
import { type LineTree, lineTree } from './line-tree.ts';
import { type OutletLaw, outletLaw } from './outlet-law.ts';
import { velocity_m_per_s } from './pipe-flow.ts';
import { pumpHead, shutoffHead_m } from './pump-curve.ts';
import { reynoldsIn } from './tube-law.ts';

export type OutletFlow = {
  readonly id: string;
  readonly flow_L_per_h: number;
  /** Head in the line where the outlet hangs. */
  readonly head_m: number;
  /** Head over the open end (or the water over a drowned one): what valve, end and emitters take. */
  readonly surplus_m: number;
  readonly dry: boolean;
  /** Fed through a tube near the change from smooth to turbulent flow: uncertain by about 30 % of the tube's loss. */
  readonly uncertain: boolean;
};

export type TubeFlow = {
  readonly id: string;
  readonly flow_L_per_h: number;
  readonly velocity_m_per_s: number;
  readonly reynolds: number;
  readonly regime: Regime;
  readonly loss_m: number;
  readonly headAtEnd_m: number;
};

export type LineSolution =
  | {
      readonly state: 'converged';
      readonly iterations: number;
      readonly total_L_per_h: number;
      /** Head the pump adds at that flow; 0 without pump. */
      readonly pumpHead_m: number;
      readonly beyondCurve: boolean;
      readonly outlets: readonly OutletFlow[];
      readonly tubes: readonly TubeFlow[];
    }
  | { readonly state: 'no-solution'; readonly because: string };

/** Outlets that give water now; none named means all. */
export type Opening = { readonly openOutlets?: ReadonlySet<string>; readonly lossK?: ReadonlyMap<string, number> };

/** A network made ready: put in order once, solved as often as its valves change. */
export type ReadyLine = { readonly network: LineNetwork; readonly tree: LineTree; readonly laws: readonly OutletLaw[] };

/** Puts a line in order for solving. @throws InputError with every fault at its field */
export function readyLine(network: LineNetwork): ReadyLine {
  const tree = lineTree(network);
  return { network, tree, laws: network.outlets.map((outlet) => outletLaw(outlet)) };
}

const flowFrom = (flow_m3_per_s: number): number => convert(flow_m3_per_s, 'm3_per_s', 'L_per_h');

/**
 * Flow and head everywhere on the line, valves as they stand.
 *
 * Two figures are worth trusting (fitting losses scatter by a quarter), and less where a tube is in the range between
 * smooth and turbulent flow.
 * Source: Darcy-Weisbach and the energy balance of every path; see `line-newton.ts`.
 */
export function solveReady(line: ReadyLine, opening: Opening = {}): LineSolution {
  const { network, tree } = line;
  const count = network.outlets.length;
  const closed = new Uint8Array(count);
  const twoWay = new Uint8Array(count);
  const outlet_m = new Float64Array(count);
  const laws = network.outlets.map((outlet, at) => {
    closed[at] = opening.openOutlets === undefined || opening.openOutlets.has(outlet.id) ? 0 : 1;
    twoWay[at] = outlet.drowned === true ? 1 : 0;
    outlet_m[at] = outlet.outlet_m;
    const lossK = opening.lossK?.get(outlet.id);
    if (lossK === Number.POSITIVE_INFINITY) closed[at] = 1;
    return lossK === undefined || closed[at] === 1 ? (line.laws[at] as OutletLaw) : outletLaw(outlet, lossK);
  });
  const answer = solveByNewton({ tree, level_m: network.level_m, pump: network.pump, laws, outlet_m, twoWay, closed });
  if (answer.state === 'no-solution') return { state: 'no-solution', because: answer.because };

  const unsure = new Uint8Array(tree.places.length);
  const tubes: TubeFlow[] = new Array(network.tubes.length);
  for (let place = 1; place < tree.places.length; place += 1) {
    const at = tree.tube[place] as number;
    const tube = network.tubes[at];
    if (tube === undefined) continue;
    const flow = answer.tubeFlow_m3_per_s[place] as number;
    const reynolds = reynoldsIn(tree.laws, place, flow);
    const regime = regimeOf(reynolds);
    const parent = tree.parent[place] as number;
    unsure[place] = regime === 'transition' || unsure[parent] === 1 ? 1 : 0;
    tubes[at] = {
      id: tube.id,
      flow_L_per_h: flowFrom(flow),
      velocity_m_per_s: velocity_m_per_s(Math.abs(flow), tube.insideDiameter_m),
      reynolds,
      regime,
      loss_m: (answer.head_m[parent] as number) - (answer.head_m[place] as number),
      headAtEnd_m: answer.head_m[place] as number,
    };
  }
  const outlets = network.outlets.map((outlet, at): OutletFlow => {
    const place = tree.outletPlace[at] as number;
    const flow = answer.outletFlow_m3_per_s[at] as number;
    const head_m = answer.head_m[place] as number;
    return {
      id: outlet.id,
      flow_L_per_h: flowFrom(flow),
      head_m,
      surplus_m: head_m - outlet.outlet_m,
      dry: flow === 0,
      uncertain: unsure[place] === 1,
    };
  });
  const total = answer.tubeFlow_m3_per_s[0] as number;
  return {
    state: 'converged',
    iterations: answer.iterations,
    total_L_per_h: flowFrom(total),
    pumpHead_m: network.pump === null ? 0 : pumpHead(network.pump, total).head_m,
    beyondCurve: network.pump !== null && total > network.pump.lastFlow_m3_per_s * (1 + 1e-9),
    outlets,
    tubes,
  };
}

/** {@link solveReady} for a line solved once. @throws InputError with every fault of the line at its field */
export function solveLine(network: LineNetwork, opening: Opening = {}): LineSolution {
  return solveReady(readyLine(network), opening);
}

/** Head the source can reach at no flow. An outlet above it stays dry, whatever the tubing. */
export function reach_m(network: LineNetwork): number {
  return network.level_m + (network.pump === null ? 0 : shutoffHead_m(network.pump));
}
