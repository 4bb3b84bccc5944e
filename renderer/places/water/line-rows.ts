import type { LinePlan } from '../../../planner/irrigation/line-plan.ts';
import type { LineReport } from '../../../planner/irrigation/line-report.ts';
import { relengthened } from '../../../planner/irrigation/run-length.ts';
import { convert } from '../../../planner/units/convert.ts';
import { say } from '../../words/say.ts';
import type { LineData } from './line-data.ts';

export type RunRow = {
  readonly runId: string;
  readonly nodeId: string;
  readonly from: string;
  readonly to: string;
  readonly length_m: number;
  readonly insideDiameter_mm: number;
  readonly teeBore_mm: number | null;
  readonly fittingK: number;
  readonly elevation_m: number;
  readonly zone: number;
  readonly flow_L_per_h: number | null;
  readonly velocity_m_per_s: number | null;
  readonly regime: string;
  readonly loss_m: number | null;
  readonly head_m: number | null;
};

const regimeNames = { laminar: 'smooth', transition: say('in between'), turbulent: 'turbulent' } as const;

const millimetres = (metres: number | null): number | null => (metres === null ? null : convert(metres, 'm', 'mm'));

/** Each run with the place it leads to and what flows in it. */
export function runRows(plan: LinePlan, report: LineReport | null): readonly RunRow[] {
  const nodes = new Map(plan.nodes.map((node) => [node.id, node]));
  return plan.runs.map((run, at): RunRow => {
    const to = nodes.get(run.toNodeId);
    const solved = report?.runs[at];
    return {
      runId: run.id,
      nodeId: run.toNodeId,
      from: nodes.get(run.fromNodeId)?.name ?? '',
      to: to?.name ?? '',
      length_m: run.length_m,
      insideDiameter_mm: convert(run.insideDiameter_m, 'm', 'mm'),
      teeBore_mm: millimetres(run.teeBore_m),
      fittingK: run.fittingK,
      elevation_m: to?.elevation_m ?? 0,
      zone: to?.zone ?? 1,
      flow_L_per_h: solved?.flow_L_per_h ?? null,
      velocity_m_per_s: solved?.velocity_m_per_s ?? null,
      regime: solved === undefined ? '' : `${regimeNames[solved.regime]}${solved.tooFast ? say(', too fast') : ''}`,
      loss_m: solved?.loss_m ?? null,
      head_m: solved?.headAtEnd_m ?? null,
    };
  });
}

export type OutletRow = {
  readonly outletId: string;
  readonly nodeId: string;
  readonly code: string;
  readonly kind: string;
  readonly zone: number;
  readonly outlet_m: number;
  readonly bore_mm: number;
  readonly openK: number;
  readonly setK: number | null;
  readonly want: number;
  readonly water_L: number | null;
  readonly drowned: boolean;
  readonly emitters: number | null;
  readonly emitter_L_per_h: number | null;
  readonly emitterExponent: number | null;
  readonly emitterHead_m: number | null;
  readonly emitterCv: number | null;
  readonly now_L_per_h: number | null;
  readonly low_L_per_h: number | null;
  readonly design_L_per_h: number | null;
  readonly pressure_m: number | null;
  readonly note: string;
};

/** Each outlet as set and as it flows. */
export function outletRows(data: LineData, plan: LinePlan, report: LineReport | null): readonly OutletRow[] {
  const flows = new Map(report?.outlets.map((outlet) => [outlet.id, outlet]) ?? []);
  const facts = new Map(data.facts.map((fact) => [fact.outletId, fact]));
  const zones = new Map(plan.nodes.map((node) => [node.id, node.zone]));
  return plan.outlets.map((outlet): OutletRow => {
    const flow = flows.get(outlet.id);
    const fact = facts.get(outlet.id);
    return {
      outletId: outlet.id,
      nodeId: outlet.nodeId,
      code: fact?.code ?? '',
      kind: outlet.kind,
      zone: zones.get(outlet.nodeId) ?? 1,
      outlet_m: outlet.outlet_m,
      bore_mm: convert(outlet.bore_m, 'm', 'mm'),
      openK: outlet.openK,
      setK: outlet.setK,
      want: outlet.wantShare,
      water_L: fact === undefined || fact.wanted_L === 0 ? null : fact.wanted_L,
      drowned: outlet.drowned,
      emitters: outlet.emitters,
      emitter_L_per_h: outlet.emitter_L_per_h,
      emitterExponent: outlet.emitterExponent,
      emitterHead_m: outlet.emitterHead_m,
      emitterCv: outlet.emitterCv,
      now_L_per_h: flow?.full.flow_L_per_h ?? null,
      low_L_per_h: flow?.low.flow_L_per_h ?? null,
      design_L_per_h: flow?.design_L_per_h ?? null,
      pressure_m: flow?.full.surplus_m ?? null,
      note: noteOf(flow),
    };
  });
}

function noteOf(flow: LineReport['outlets'][number] | undefined): string {
  if (flow === undefined) return '';
  if (flow.missing_m > 0) return say('beyond the reach');
  if (flow.full.dry) return say('dry as set');
  if (flow.full.flow_L_per_h < 0) return say('runs back');
  return flow.full.uncertain ? 'uncertain' : '';
}

/** The plan with one place moved, its runs taken anew from the drawing: what is solved while it is being dragged. */
export function withMoved(plan: LinePlan, nodeId: string, to: { readonly x_m: number; readonly y_m: number }): LinePlan {
  const nodes = plan.nodes.map((node) => (node.id === nodeId ? { ...node, ...to } : node));
  const changed = new Map(relengthened(plan.runs, nodes, nodeId).map((run) => [run.id, run]));
  return { ...plan, nodes, runs: plan.runs.map((run) => changed.get(run.id) ?? run) };
}

/** Cautions that this line calls for, by what it is made of. */
export function cautionsOfLine(data: Pick<LineData, 'line' | 'power' | 'pump'>): readonly string[] {
  const ids = ['estimate-limits'];
  const { line, power } = data;
  if (power?.kind === 'mains' || (power === null && data.pump !== null)) ids.push('electricity-near-water');
  if (power?.kind === 'engine') ids.push('generator-carbon-monoxide', 'electricity-near-water');
  if (power?.battery === 'lithium-iron-phosphate' || power?.battery === 'other-lithium') ids.push('power-pack-heat');
  if (line.supplySource === 'public') ids.push('backflow');
  else ids.push('hose-sanitation-and-drinking');
  if (line.supplySource === 'roof' || line.roofArea_m2 !== null) ids.push('rain-water-on-food');
  if (line.supply === 'reservoir') ids.push('standing-water-children', 'mosquitoes');
  if (line.supply === 'reservoir' && !line.foodGrade) ids.push('food-grade-containers');
  return ids;
}
