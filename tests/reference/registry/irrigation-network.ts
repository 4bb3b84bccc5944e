import { readFileSync } from 'node:fs';
import type { LineNetwork } from '../../../planner/irrigation/line-network.ts';
import { readyLine, solveLine } from '../../../planner/irrigation/line-solution.ts';
import { pumpCurve } from '../../../planner/irrigation/pump-curve.ts';
import { designValves } from '../../../planner/irrigation/valve-design.ts';
import { convert } from '../../../planner/units/convert.ts';
import type { Registry } from '../registry.ts';

type CaseTube = {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly length_m: number;
  readonly inner_diameter_mm: number;
  readonly roughness_mm: number;
  readonly minor_loss_K: number;
};
type CaseOutlet = {
  readonly bed: string;
  readonly at: string;
  readonly outlet_elevation_m: number;
  readonly reference_diameter_mm: number;
  readonly loss_K: number;
};
type CaseNetwork = {
  readonly kinematic_viscosity_m2_per_s: number;
  readonly outlets: readonly CaseOutlet[];
  readonly pump?: { readonly points: readonly { readonly flow_L_per_h: number; readonly head_m: number }[] } | null;
  readonly reservoir_level_m: number;
  readonly tubes: readonly CaseTube[];
};

/** The place that feeds others and that no tube feeds. */
const sourceOf = (tubes: readonly CaseTube[]): string =>
  tubes.find((tube) => !tubes.some((other) => other.to === tube.from))?.from ?? '';

const pumpOf = (points: readonly { readonly flow_L_per_h: number; readonly head_m: number }[]) =>
  pumpCurve(points.length === 1 ? 'one-point' : points.length === 3 ? 'three-points' : 'points', points);

const networkOf = (given: CaseNetwork): LineNetwork => ({
  source: sourceOf(given.tubes),
  level_m: given.reservoir_level_m,
  pump: given.pump === null || given.pump === undefined ? null : pumpOf(given.pump.points),
  viscosity_m2_per_s: given.kinematic_viscosity_m2_per_s,
  tubes: given.tubes.map((tube) => ({
    id: tube.id,
    from: tube.from,
    to: tube.to,
    length_m: tube.length_m,
    insideDiameter_m: convert(tube.inner_diameter_mm, 'mm', 'm'),
    roughness_m: convert(tube.roughness_mm, 'mm', 'm'),
    fittingK: tube.minor_loss_K,
  })),
  outlets: given.outlets.map((outlet) => ({
    id: outlet.bed,
    node: outlet.at,
    outlet_m: outlet.outlet_elevation_m,
    bore_m: convert(outlet.reference_diameter_mm, 'mm', 'm'),
    lossK: outlet.loss_K ?? 1,
  })),
});

const solve = (given: CaseNetwork) => {
  const solution = solveLine(networkOf(given));
  if (solution.state === 'no-solution') throw new Error(solution.because);
  return { flow_L_per_h: solution.outlets.map((outlet) => outlet.flow_L_per_h), total_L_per_h: solution.total_L_per_h };
};

/** A network given in full, or named: "as network-03 ..." stands for that case's inputs. */
function namedNetwork(given: CaseNetwork | string): CaseNetwork {
  if (typeof given !== 'string') return given;
  const cases = JSON.parse(
    readFileSync(new URL('../cases/irrigation-capacity.cases.json', import.meta.url), 'utf8'),
  ) as readonly { readonly id: string; readonly inputs: CaseNetwork }[];
  const found = cases.find((each) => each.id === /network-\d+/.exec(given)?.[0]);
  if (found === undefined) throw new Error(`no network is called "${given}"`);
  return found.inputs;
}

export const irrigationNetwork: Registry = {
  'irrigation-capacity.network-01': solve,
  'irrigation-capacity.valve-01': (i: {
    readonly network: CaseNetwork | string;
    readonly reservoir_level_m: number;
    readonly share: readonly number[];
    readonly least_outlet_loss_K: number;
    readonly least_surplus_head_m: number;
  }) => {
    const line = readyLine(networkOf({ ...namedNetwork(i.network), reservoir_level_m: i.reservoir_level_m }));
    const design = designValves(
      line,
      i.share.map((share) => ({ share, openK: i.least_outlet_loss_K })),
      i.least_surplus_head_m,
    );
    return {
      flow_L_per_h: design.settings.map((setting) => setting.flow_L_per_h),
      outlet_loss_K: design.settings.map((setting) => setting.lossK),
    };
  },
};
