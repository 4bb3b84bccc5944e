import type { PlanNode, PlanRun } from './line-plan.ts';
import { SLACK_SHARE } from './line-wizard.ts';

/** The least length of a run between two places drawn on one spot. */
const LEAST_RUN_M = 0.05;

type Spot = Pick<PlanNode, 'x_m' | 'y_m' | 'elevation_m'>;

/** Length of tube between two places of the drawing: straight, with slack for bends, heat and fittings. */
export function runLength_m(from: Spot, to: Spot, slackShare = SLACK_SHARE): number {
  const straight_m = Math.hypot(from.x_m - to.x_m, from.y_m - to.y_m);
  return Math.max(LEAST_RUN_M, straight_m * (1 + slackShare));
}

/** Runs that begin or end at a place, with their lengths taken anew from the drawing. */
export function relengthened(runs: readonly PlanRun[], nodes: readonly PlanNode[], nodeId: string): readonly PlanRun[] {
  const places = new Map(nodes.map((node) => [node.id, node]));
  return runs.flatMap((run) => {
    if (run.fromNodeId !== nodeId && run.toNodeId !== nodeId) return [];
    const from = places.get(run.fromNodeId);
    const to = places.get(run.toNodeId);
    return from === undefined || to === undefined ? [] : [{ ...run, length_m: runLength_m(from, to) }];
  });
}

/** A place and everything behind it, away from the source. */
export function behind(runs: readonly Pick<PlanRun, 'fromNodeId' | 'toNodeId'>[], nodeId: string): readonly string[] {
  const after = Map.groupBy(runs, (run) => run.fromNodeId);
  const found = [nodeId];
  const seen = new Set(found);
  for (let at = 0; at < found.length; at += 1)
    for (const run of after.get(found[at] ?? '') ?? [])
      if (!seen.has(run.toNodeId)) {
        seen.add(run.toNodeId);
        found.push(run.toNodeId);
      }
  return found;
}
