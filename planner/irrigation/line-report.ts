import { convert } from '../units/convert.ts';
import type { HeadBudget } from './head-budget.ts';
import { headBudget } from './head-budget.ts';
import { type LinePlan, networkOf, outletLossK, pipedOutlets, supplyCurve, valveKOf, zonesOf } from './line-plan.ts';
import { type OutletFlow, readyLine, solveReady, type TubeFlow } from './line-solution.ts';
import { VELOCITY_LIMIT_M_PER_S } from './pipe-flow.ts';
import { mostFlow_m3_per_s, pumpHead, shutoffHead_m } from './pump-curve.ts';
import {
  christiansenUniformity,
  distributionUniformity,
  emissionUniformity,
  ratingOf,
  type UniformityRating,
} from './uniformity.ts';
import { designValves } from './valve-design.ts';

export type OutletReport = {
  readonly id: string;
  readonly zone: number;
  /** As the valves stand, reservoir full and at its lowest. */
  readonly full: OutletFlow;
  readonly low: OutletFlow;
  /** With the valves set as designed, at the lowest level. */
  readonly design_L_per_h: number;
  readonly designValveK: number;
  readonly missing_m: number;
};

export type Uniformity = { readonly du: number; readonly cu: number; readonly rating: UniformityRating };

export type ZoneReport = {
  readonly zone: number;
  readonly now: { readonly total_L_per_h: number; readonly pumpHead_m: number; readonly beyondCurve: boolean } | null;
  readonly design: { readonly total_L_per_h: number; readonly pumpHead_m: number } | null;
  readonly nowUniformity: Uniformity | null;
  readonly designUniformity: Uniformity | null;
  readonly decides: string | null;
  readonly budget: HeadBudget | null;
};

export type LineReport = {
  readonly outlets: readonly OutletReport[];
  /** Each run in the zone in which it carries most, reservoir full, valves as they stand. */
  readonly runs: readonly (TubeFlow & { readonly tooFast: boolean })[];
  readonly zones: readonly ZoneReport[];
  readonly emissionUniformity: number | null;
  readonly shutoff_m: number | null;
  readonly most_L_per_h: number | null;
  readonly curve: readonly { readonly flow_L_per_h: number; readonly head_m: number }[];
  readonly curveIsGuess: boolean;
  readonly problem: string | null;
};

/**
 * All that a page shows of a line: flows as the valves stand and as they should be, full and low, uniformity, operating
 * points, where the head goes.
 * @throws InputError with every fault of the line at its field
 */
export function lineReport(plan: LinePlan): LineReport {
  const outlets = pipedOutlets(plan);
  const full = readyLine(networkOf(plan, 'full'));
  const low = readyLine(networkOf(plan, 'low'));
  const wishes = outlets.map((outlet) => ({ share: outlet.wantShare, openK: outletLossK(outlet, outlet.openK) }));
  const zones = zonesOf(plan);
  const reports = new Map<string, OutletReport>();
  const runs: (TubeFlow & { tooFast: boolean })[] = [];
  const zoneReports: ZoneReport[] = [];
  const curve = supplyCurve(plan);
  let problem: string | null = null;
  for (const zone of zones) {
    const atFull = solveReady(full, { openOutlets: zone.outlets });
    const atLow = solveReady(low, { openOutlets: zone.outlets });
    const design = designValves(low, wishes, plan.supply.reserveHead_m, zone.outlets);
    const designed = solveReady(low, {
      openOutlets: zone.outlets,
      lossK: new Map(design.settings.map((setting) => [setting.id, setting.lossK])),
    });
    if (atFull.state === 'no-solution' || atLow.state === 'no-solution') {
      problem = atFull.state === 'no-solution' ? atFull.because : atLow.state === 'no-solution' ? atLow.because : null;
      continue;
    }
    outlets.forEach((outlet, at) => {
      if (!zone.outlets.has(outlet.id)) return;
      const setting = design.settings[at];
      const [flowFull, flowLow] = [atFull.outlets[at], atLow.outlets[at]];
      if (setting === undefined || flowFull === undefined || flowLow === undefined) return;
      reports.set(outlet.id, {
        id: outlet.id,
        zone: zone.zone,
        full: flowFull,
        low: flowLow,
        design_L_per_h: setting.flow_L_per_h,
        designValveK: valveKOf(outlet, setting.lossK),
        missing_m: setting.missing_m,
      });
    });
    atFull.tubes.forEach((tube, at) => {
      if (runs[at] === undefined || Math.abs(tube.flow_L_per_h) > Math.abs(runs[at].flow_L_per_h))
        runs[at] = { ...tube, tooFast: tube.velocity_m_per_s > VELOCITY_LIMIT_M_PER_S };
    });
    const relative = (flow: (id: string) => number): Uniformity | null =>
      uniformityOf(
        outlets
          .filter((outlet) => zone.outlets.has(outlet.id) && outlet.wantShare > 0)
          .map((outlet) => flow(outlet.id) / outlet.wantShare),
      );
    zoneReports.push({
      zone: zone.zone,
      now: { total_L_per_h: atFull.total_L_per_h, pumpHead_m: atFull.pumpHead_m, beyondCurve: atFull.beyondCurve },
      design: designed.state === 'converged' ? { total_L_per_h: designed.total_L_per_h, pumpHead_m: designed.pumpHead_m } : null,
      nowUniformity: relative((id) => Math.max(0, reports.get(id)?.full.flow_L_per_h ?? 0)),
      designUniformity: relative((id) => reports.get(id)?.design_L_per_h ?? 0),
      decides: design.decides,
      budget: designed.state === 'converged' && design.decides !== null ? headBudget(low, designed, design.decides) : null,
    });
  }
  return {
    outlets: outlets.flatMap((outlet) => reports.get(outlet.id) ?? []),
    runs,
    zones: zoneReports,
    emissionUniformity: emitterUniformity(plan, reports),
    shutoff_m: curve === null ? null : shutoffHead_m(curve),
    most_L_per_h: curve === null ? null : convert(mostFlow_m3_per_s(curve), 'm3_per_s', 'L_per_h'),
    curve: curve === null ? [] : sampleCurve(curve),
    curveIsGuess: curve?.guess ?? false,
    problem,
  };
}

function uniformityOf(flows: readonly number[]): Uniformity | null {
  if (flows.length === 0 || flows.every((flow) => flow === 0)) return null;
  const du = distributionUniformity(flows);
  return { du, cu: christiansenUniformity(flows), rating: ratingOf(du) };
}

/** EU over the drip outlets: their spread as made, and the least over the mean flow for what each should give. */
function emitterUniformity(plan: LinePlan, reports: ReadonlyMap<string, OutletReport>): number | null {
  const drip = plan.outlets.filter((outlet) => outlet.kind === 'drip' && outlet.emitterCv !== null);
  if (drip.length === 0) return null;
  const each = drip.map(
    (outlet) =>
      Math.max(0, reports.get(outlet.id)?.full.flow_L_per_h ?? 0) / ((outlet.emitters ?? 1) * (outlet.emitter_L_per_h ?? 1)),
  );
  const mean = each.reduce((sum, flow) => sum + flow, 0) / each.length;
  if (mean === 0) return null;
  return emissionUniformity({
    manufacturingCv: Math.max(...drip.map((outlet) => outlet.emitterCv ?? 0)),
    emittersPerPlant: 1,
    leastOverMeanFlow: Math.min(...each) / mean,
  });
}

const CURVE_STEPS = 40;

function sampleCurve(curve: NonNullable<ReturnType<typeof supplyCurve>>): LineReport['curve'] {
  const most = mostFlow_m3_per_s(curve);
  return Array.from({ length: CURVE_STEPS + 1 }, (_, at) => {
    const flow = (most * at) / CURVE_STEPS;
    return { flow_L_per_h: convert(flow, 'm3_per_s', 'L_per_h'), head_m: Math.max(0, pumpHead(curve, flow).head_m) };
  });
}
