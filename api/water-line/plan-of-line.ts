import type { LineRecord } from '../../db/repositories/water-lines.ts';
import type { LinePlan } from '../../planner/irrigation/line-plan.ts';

/** A line of the file as the planner takes it. */
export function planOfLine(record: LineRecord): LinePlan {
  const { line, pump } = record;
  return {
    supply: {
      supply: line.supply,
      highLevel_m: line.highLevel_m,
      lowLevel_m: line.lowLevel_m,
      tapHead_m: line.tapHead_m,
      tapFlow_L_per_min: line.tapFlow_L_per_min,
      reserveHead_m: line.reserveHead_m,
      water_C: line.water_C,
    },
    pump:
      pump === undefined
        ? null
        : {
            curveKind: pump.curveKind,
            points: record.points.map(({ flow_L_per_h, head_m }) => ({ flow_L_per_h, head_m })),
            power_W: pump.power_W,
            inletHeight_m: pump.inletHeight_m,
            count: pump.count,
          },
    nodes: record.nodes.map(({ id, kind, name, x_m, y_m, elevation_m, zone, position }) => ({
      id,
      kind,
      name,
      x_m,
      y_m,
      elevation_m,
      zone,
      position,
    })),
    runs: record.runs.map((run) => ({
      id: run.id,
      fromNodeId: run.fromNodeId,
      toNodeId: run.toNodeId,
      length_m: run.length_m,
      insideDiameter_m: run.insideDiameter_m,
      roughness_m: run.roughness_m,
      fittingK: run.fittingK,
      teeBore_m: run.teeBore_m,
      materialId: run.materialId,
    })),
    outlets: record.outlets.map((outlet) => ({
      id: outlet.id,
      nodeId: outlet.nodeId,
      bedId: outlet.bedId,
      kind: outlet.kind,
      outlet_m: outlet.outlet_m,
      bore_m: outlet.bore_m,
      drowned: outlet.drowned,
      openK: outlet.openK,
      setK: outlet.setK,
      wantShare: outlet.wantShare,
      emitters: outlet.emitters,
      emitter_L_per_h: outlet.emitter_L_per_h,
      emitterExponent: outlet.emitterExponent,
      emitterHead_m: outlet.emitterHead_m,
      emitterCv: outlet.emitterCv,
    })),
  };
}
