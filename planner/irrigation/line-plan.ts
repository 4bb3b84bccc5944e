import { convert } from '../units/convert.ts';
import { barbK, FITTING_K } from './fitting-loss.ts';
import { headOfPressure_m } from './head-and-pressure.ts';
import type { EmitterGroup, LineNetwork, LineOutlet } from './line-network.ts';
import { inParallel, type PumpCurve, type PumpCurveKind, type PumpPoint, pumpCurve } from './pump-curve.ts';
import { kinematicViscosity_m2_per_s } from './water-properties.ts';

/** A place on the line as drawn: the source, a tee or an end. */
export type PlanNode = {
  readonly id: string;
  readonly kind: 'source' | 'tee' | 'end';
  readonly name: string;
  readonly x_m: number;
  readonly y_m: number;
  readonly elevation_m: number;
  readonly zone: number;
  readonly position: number;
};

/** A length of tube as bought and laid. `fittingK` is bends and divisions; a barbed tee's bore adds its own loss. */
export type PlanRun = {
  readonly id: string;
  readonly fromNodeId: string;
  readonly toNodeId: string;
  readonly length_m: number;
  readonly insideDiameter_m: number;
  readonly roughness_m: number;
  readonly fittingK: number;
  readonly teeBore_m: number | null;
  readonly materialId: string | null;
};

export type PlanOutlet = {
  readonly id: string;
  readonly nodeId: string;
  readonly bedId: string | null;
  readonly kind: 'open-end' | 'drip' | 'hand';
  readonly outlet_m: number;
  readonly bore_m: number;
  readonly drowned: boolean;
  /** The valve fully open, without its end. */
  readonly openK: number;
  /** The valve as it stands; null for fully open. */
  readonly setK: number | null;
  readonly wantShare: number;
  readonly emitters: number | null;
  readonly emitter_L_per_h: number | null;
  readonly emitterExponent: number | null;
  readonly emitterHead_m: number | null;
  readonly emitterCv: number | null;
};

export type PlanPump = {
  readonly curveKind: PumpCurveKind;
  readonly points: readonly PumpPoint[];
  readonly power_W: number;
  readonly inletHeight_m: number;
  readonly count: number;
};

export type PlanSupply = {
  readonly supply: 'reservoir' | 'tap';
  readonly highLevel_m: number | null;
  readonly lowLevel_m: number | null;
  readonly tapHead_m: number | null;
  readonly tapFlow_L_per_min: number | null;
  readonly reserveHead_m: number;
  readonly water_C: number;
};

/** A whole line as the grower draws it. */
export type LinePlan = {
  readonly supply: PlanSupply;
  readonly pump: PlanPump | null;
  readonly nodes: readonly PlanNode[];
  readonly runs: readonly PlanRun[];
  readonly outlets: readonly PlanOutlet[];
};

/** Where the water stands: full, down to the stop level, or at any height. */
export type WaterLevel = 'full' | 'low' | { readonly level_m: number };

/** Static head of a tap nobody measured, 3 bar (common practice, no source). */
const USUAL_TAP_HEAD_M = headOfPressure_m(convert(3, 'bar', 'Pa'));

/** Loss coefficient of a run's fittings: bends and divisions as entered, and the barbed tee's bore. */
export function runFittingK(run: Pick<PlanRun, 'fittingK' | 'teeBore_m' | 'insideDiameter_m'>): number {
  return (
    run.fittingK +
    (run.teeBore_m === null || run.teeBore_m >= run.insideDiameter_m ? 0 : barbK(run.teeBore_m, run.insideDiameter_m))
  );
}

/** Loss coefficient of a valve with its end: an open end adds its exit, an emitter's own law holds instead. */
export function outletLossK(outlet: Pick<PlanOutlet, 'kind'>, valveK: number): number {
  return outlet.kind === 'drip' ? valveK : valveK + FITTING_K.exit;
}

/** The valve's own coefficient out of valve and end together; never below zero. */
export function valveKOf(outlet: Pick<PlanOutlet, 'kind'>, lossK: number): number {
  return outlet.kind === 'drip' ? lossK : Math.max(0, lossK - FITTING_K.exit);
}

function emittersOf(outlet: PlanOutlet): EmitterGroup | null {
  if (outlet.kind !== 'drip') return null;
  return {
    count: outlet.emitters ?? 1,
    flowEach_L_per_h: outlet.emitter_L_per_h ?? 0,
    atHead_m: outlet.emitterHead_m ?? 0,
    exponent: outlet.emitterExponent ?? 0.5,
  };
}

/** The curve behind the line: the pump's, a tap's own falling head, or none. @throws InputError naming the pump's point */
export function supplyCurve(plan: Pick<LinePlan, 'supply' | 'pump'>): PumpCurve | null {
  if (plan.supply.supply === 'tap')
    return pumpCurve('rated', [
      { flow_L_per_h: 0, head_m: plan.supply.tapHead_m ?? USUAL_TAP_HEAD_M },
      { flow_L_per_h: convert(plan.supply.tapFlow_L_per_min ?? 0, 'L_per_min', 'L_per_h'), head_m: 0 },
    ]);
  if (plan.pump === null) return null;
  return inParallel(pumpCurve(plan.pump.curveKind, plan.pump.points), plan.pump.count);
}

/** Height of the water the line starts from. */
export function levelOf(plan: LinePlan, level: WaterLevel): number {
  if (typeof level === 'object') return level.level_m;
  const source_m = plan.nodes.find((node) => node.kind === 'source')?.elevation_m ?? 0;
  if (plan.supply.supply === 'tap') return source_m;
  return (level === 'full' ? plan.supply.highLevel_m : plan.supply.lowLevel_m) ?? source_m;
}

/** Outlets that hang on the tubing; hand filling does not. */
export const pipedOutlets = (plan: LinePlan): readonly PlanOutlet[] => plan.outlets.filter((outlet) => outlet.kind !== 'hand');

/**
 * The network to solve, valves as they stand. Hand-filled outlets are left out. Indexes of its tubes are those of the
 * plan's runs, those of its outlets those of {@link pipedOutlets}, so a fault's path finds its row.
 * @throws InputError when the pump's curve does not fall
 */
export function networkOf(plan: LinePlan, level: WaterLevel = 'full'): LineNetwork {
  return {
    source: plan.nodes.find((node) => node.kind === 'source')?.id ?? '',
    level_m: levelOf(plan, level),
    pump: supplyCurve(plan),
    viscosity_m2_per_s: kinematicViscosity_m2_per_s(plan.supply.water_C),
    tubes: plan.runs.map((run) => ({
      id: run.id,
      from: run.fromNodeId,
      to: run.toNodeId,
      length_m: run.length_m,
      insideDiameter_m: run.insideDiameter_m,
      roughness_m: run.roughness_m,
      fittingK: runFittingK(run),
    })),
    outlets: pipedOutlets(plan).map((outlet): LineOutlet => {
      const emitters = emittersOf(outlet);
      return {
        id: outlet.id,
        node: outlet.nodeId,
        outlet_m: outlet.outlet_m,
        bore_m: outlet.bore_m,
        lossK: outletLossK(outlet, outlet.setK ?? outlet.openK),
        ...(outlet.drowned ? { drowned: true } : {}),
        ...(emitters === null ? {} : { emitters }),
      };
    }),
  };
}

/** The zones of a line in order, each with its piped outlets; they run one after the other. */
export function zonesOf(plan: LinePlan): readonly { readonly zone: number; readonly outlets: ReadonlySet<string> }[] {
  const zoneOfNode = new Map(plan.nodes.map((node) => [node.id, node.zone]));
  const zones = new Map<number, Set<string>>();
  for (const outlet of pipedOutlets(plan)) {
    const zone = zoneOfNode.get(outlet.nodeId) ?? 1;
    zones.set(zone, (zones.get(zone) ?? new Set()).add(outlet.id));
  }
  return [...zones].sort(([one], [other]) => one - other).map(([zone, outlets]) => ({ zone, outlets }));
}
