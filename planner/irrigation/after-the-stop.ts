import { convert } from '../units/convert.ts';
import { type LinePlan, levelOf, networkOf, pipedOutlets } from './line-plan.ts';
import { solveLine } from './line-solution.ts';
import { SIPHON_CREST_LIMIT_M, siphonLoss_L, ventLeak_m3_per_s } from './siphon.ts';

export type AfterTheStopInput = {
  readonly plan: LinePlan;
  readonly vented: boolean;
  readonly ventHole_m: number | null;
  readonly reservoirArea_m2: number | null;
};

export type AfterTheStop = {
  /** Outlets that go on running, with their flow at the moment of the stop (the idle pump's own loss left out). */
  readonly runningOn: readonly { readonly id: string; readonly flow_L_per_h: number; readonly below_m: number }[];
  readonly total_L_per_h: number;
  /** Water lost until the level meets the lowest running outlet or the inlet. Null without the reservoir's area. */
  readonly lost_L: number | null;
  /** Drowned outlets whose basins drain back into the reservoir at its lowest level. */
  readonly drainBack: readonly string[];
  /** The highest place of the line, where a vent belongs. */
  readonly ventAt: string | null;
  /** What an existing vent hole leaks while pumping, back into the reservoir. */
  readonly ventLeak_L_per_h: number | null;
};

/**
 * What a line does when the pump stops: siphoning out at the highest level, draining back at the lowest.
 *
 * The idle pump is taken as an open tube, so flows are an upper bound. A vented line takes air and stops.
 * Source: hydrostatics; the same tree solver.
 * @throws InputError with every fault of the line at its field
 */
export function afterTheStop(input: AfterTheStopInput): AfterTheStop {
  const { plan } = input;
  const none: AfterTheStop = { runningOn: [], total_L_per_h: 0, lost_L: 0, drainBack: [], ventAt: null, ventLeak_L_per_h: null };
  if (plan.supply.supply === 'tap' || plan.pump === null) return none;
  const high_m = levelOf(plan, 'full');
  const low_m = levelOf(plan, 'low');
  const open = pipedOutlets(plan);
  const drainBack = open
    .filter((outlet) => outlet.drowned && outlet.outlet_m > low_m && !input.vented)
    .map((outlet) => outlet.id);
  const highest = plan.nodes.reduce<LinePlan['nodes'][number] | null>(
    (top, node) => (node.kind === 'end' || (top !== null && node.elevation_m <= top.elevation_m) ? top : node),
    null,
  );
  const ventAt = highest?.name ?? null;
  const pumping = input.ventHole_m === null ? null : solveLine(networkOf(plan, 'full'));
  const ventLeak_L_per_h =
    input.ventHole_m === null || pumping === null || pumping.state !== 'converged'
      ? null
      : convert(
          ventLeak_m3_per_s(input.ventHole_m, Math.max(0, high_m + pumping.pumpHead_m - (highest?.elevation_m ?? high_m))),
          'm3_per_s',
          'L_per_h',
        );
  const crestTooHigh = highest !== null && highest.elevation_m - high_m > SIPHON_CREST_LIMIT_M;
  if (input.vented || crestTooHigh) return { ...none, drainBack, ventAt, ventLeak_L_per_h };

  const idle = solveLine({ ...networkOf({ ...plan, pump: null }, 'full') });
  if (idle.state !== 'converged') return { ...none, drainBack, ventAt, ventLeak_L_per_h };
  const runningOn = idle.outlets
    .filter((outlet) => outlet.flow_L_per_h > 0)
    .map((outlet) => ({
      id: outlet.id,
      flow_L_per_h: outlet.flow_L_per_h,
      below_m: high_m - (open.find((each) => each.id === outlet.id)?.outlet_m ?? high_m),
    }));
  const lowest_m = Math.min(...runningOn.map((outlet) => high_m - outlet.below_m));
  const lost_L =
    input.reservoirArea_m2 === null
      ? null
      : runningOn.length === 0
        ? 0
        : siphonLoss_L({
            reservoirArea_m2: input.reservoirArea_m2,
            reservoirLevel_m: high_m,
            outletElevation_m: lowest_m,
            inletElevation_m: plan.pump.inletHeight_m,
          });
  return {
    runningOn,
    total_L_per_h: runningOn.reduce((sum, outlet) => sum + outlet.flow_L_per_h, 0),
    lost_L,
    drainBack,
    ventAt,
    ventLeak_L_per_h,
  };
}

/** Water to keep over the pump's inlet, 5 cm (common practice, no source). */
export const INLET_COVER_M = 0.05;

/** The lowest level that keeps the inlet covered, and by how much the line's lowest level is under it (0 when it is not). */
export function dryRun(inletHeight_m: number, lowLevel_m: number): { readonly stopLevel_m: number; readonly short_m: number } {
  const stopLevel_m = inletHeight_m + INLET_COVER_M;
  return { stopLevel_m, short_m: Math.max(0, stopLevel_m - lowLevel_m) };
}

/** Suction below which water columns part, -6 m (common practice, no source). */
export const LEAST_PRESSURE_HEAD_M = -6;

/** Places of the line whose pressure falls under the limit while pumping. */
export function partingPlaces(plan: LinePlan): readonly { readonly nodeId: string; readonly pressure_m: number }[] {
  const solution = solveLine(networkOf(plan, 'low'));
  if (solution.state !== 'converged') return [];
  const headAt = new Map(plan.runs.map((run, at) => [run.toNodeId, solution.tubes[at]?.headAtEnd_m ?? Number.POSITIVE_INFINITY]));
  return plan.nodes.flatMap((node) => {
    const pressure_m = (headAt.get(node.id) ?? Number.POSITIVE_INFINITY) - node.elevation_m;
    return pressure_m < LEAST_PRESSURE_HEAD_M ? [{ nodeId: node.id, pressure_m }] : [];
  });
}
