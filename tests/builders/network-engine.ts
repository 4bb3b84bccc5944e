import { Project, Workspace } from 'epanet-js';
import type { LineNetwork } from '../../planner/irrigation/line-network.ts';
import { convert } from '../../planner/units/convert.ts';

/** What an independent engine finds for a line: outlet flows, or that it did not come to rest. */
export type EngineAnswer =
  | { readonly state: 'solved'; readonly flow_L_per_h: readonly number[] }
  | { readonly state: 'not-solved' };

const GRAVITY = 9.80665;
/** The engine has 32.2 ft/s2 built in: lengths and fittings are stretched by the ratio, so that both lose the same head. */
const GRAVITY_RATIO = convert(32.2, 'ft', 'm') / GRAVITY;
/** Numbers of the engine's version 2.3 that the wrapper's typed lists lack. */
const EMITTER_BACK_FLOW = 24;
const EMITTER_FLOW = 29;
const RELATIVE_ERROR = 1;
const ACCURACY = 1e-5;

/** Every open end as an emitter of exponent 0.5 with valve and exit in its coefficient, back-flow off. */
function inputText(line: LineNetwork): string {
  const elevation = new Map(line.outlets.map((outlet) => [outlet.node, outlet.outlet_m]));
  const pump = line.pump;
  if (pump === null || pump.form !== 'power') throw new Error('the comparison needs a pump with a three-point curve');
  const last = convert(pump.lastFlow_m3_per_s, 'm3_per_s', 'L_per_s');
  const head = (flow_L_per_s: number): number =>
    pump.shutoff_m - pump.coefficient * convert(flow_L_per_s, 'L_per_s', 'm3_per_s') ** pump.exponent;
  const emitter = line.outlets.map((outlet) => {
    const area = (Math.PI / 4) * outlet.bore_m ** 2;
    return `${outlet.node} ${1000 * area * Math.sqrt((2 * GRAVITY) / outlet.lossK)}`;
  });
  return [
    '[JUNCTIONS]',
    `PUMPED 0`,
    ...line.tubes.map((tube) => `${tube.to} ${elevation.get(tube.to) ?? 0}`),
    '[RESERVOIRS]',
    `WATER ${line.level_m}`,
    '[PIPES]',
    ...line.tubes.map(
      (tube) =>
        `${tube.id} ${tube.from === line.source ? 'PUMPED' : tube.from} ${tube.to} ${tube.length_m * GRAVITY_RATIO} ${1000 * tube.insideDiameter_m} ${1000 * tube.roughness_m} ${tube.fittingK * GRAVITY_RATIO} OPEN`,
    ),
    '[PUMPS]',
    'PUMP WATER PUMPED HEAD CURVE',
    '[CURVES]',
    `CURVE 0 ${pump.shutoff_m}`,
    `CURVE ${last / 2} ${head(last / 2)}`,
    `CURVE ${last} ${Math.max(0, head(last))}`,
    '[EMITTERS]',
    ...emitter,
    '[OPTIONS]',
    'UNITS LPS',
    'HEADLOSS D-W',
    `VISCOSITY ${line.viscosity_m2_per_s}`,
    'TRIALS 500',
    `ACCURACY ${ACCURACY.toFixed(8)}`,
    'EMITTER EXPONENT 0.5',
    'UNBALANCED STOP',
    '[REPORT]',
    'STATUS NO',
    '[END]',
  ].join('\n');
}

/** The engine behind a small door; make a new one now and then, since it keeps memory. */
export async function networkEngine(): Promise<(line: LineNetwork) => EngineAnswer> {
  const workspace = new Workspace();
  await workspace.loadModule();
  return (line) => {
    const project = new Project(workspace);
    workspace.writeFile('line.inp', inputText(line));
    project.open('line.inp', 'report.rpt', 'out.bin');
    project.setOption(EMITTER_BACK_FLOW as never, 0);
    try {
      project.openH();
      project.initH(0);
      project.runH();
      const flow_L_per_h = line.outlets.map((outlet) => {
        const flow = project.getNodeValue(project.getNodeIndex(outlet.node), EMITTER_FLOW as never);
        return convert(flow, 'L_per_s', 'L_per_h');
      });
      const error = project.getStatistic(RELATIVE_ERROR as never);
      return error <= 10 * ACCURACY ? { state: 'solved', flow_L_per_h } : { state: 'not-solved' };
    } catch (error) {
      if (error instanceof Error && /balanced|converge|error 110|unsolvable/i.test(error.message)) return { state: 'not-solved' };
      throw error;
    } finally {
      project.close();
    }
  };
}
