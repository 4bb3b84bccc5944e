import { ringOf } from '../../../planner/beds/extent.ts';
import type { LinePlan, PlanNode } from '../../../planner/irrigation/line-plan.ts';
import type { LineReport } from '../../../planner/irrigation/line-report.ts';
import type { Extent_m, Scale } from '../../draw/scale.ts';
import { extentOf, widened } from '../../draw/scale.ts';
import { say } from '../../words/say.ts';
import type { BedRow } from '../beds/bed-types.ts';

/** The part of the site that a line takes up, with a little room. */
export function lineExtent(plan: LinePlan): Extent_m {
  const extent = extentOf(plan.nodes);
  if (extent === undefined) return { minX_m: 0, minY_m: 0, maxX_m: 10, maxY_m: 6 };
  const least = 0.5;
  const grown = {
    minX_m: extent.minX_m - least,
    minY_m: extent.minY_m - least,
    maxX_m: extent.maxX_m + least,
    maxY_m: extent.maxY_m + least,
  };
  return widened(grown, 0.06);
}

/** A bed's outline as it lies, as an SVG path. */
export function bedPath(bed: BedRow, scale: Scale): string {
  const angle = (bed.turn_deg * Math.PI) / 180;
  const points = ringOf(bed.outline).map(([x, y]) => {
    const east = bed.x_m + x * Math.cos(angle) - y * Math.sin(angle);
    const north = bed.y_m + x * Math.sin(angle) + y * Math.cos(angle);
    return `${scale.x(east).toFixed(1)} ${scale.y(north).toFixed(1)}`;
  });
  return `M${points.join('L')}Z`;
}

/** Beds near enough to the line's extent to be drawn beside it. */
export function bedsNear(beds: readonly BedRow[], extent: Extent_m): readonly BedRow[] {
  return beds.filter((bed) => {
    const reach = Math.max(bed.length_m, bed.width_m);
    return (
      bed.x_m + reach > extent.minX_m &&
      bed.x_m - reach < extent.maxX_m &&
      bed.y_m + reach > extent.minY_m &&
      bed.y_m - reach < extent.maxY_m
    );
  });
}

export type FlowState = 'none' | 'dry' | 'back' | 'low' | 'even' | 'high';

/** What the marks of the outlets say. */
export const lineKey: readonly { readonly flow: FlowState; readonly name: string }[] = [
  { flow: 'even', name: say('its share, within 10 %') },
  { flow: 'low', name: say('less') },
  { flow: 'high', name: say('more') },
  { flow: 'dry', name: say('dry') },
];

/** How an outlet's flow stands to the share it should have among those of its zone. */
export function flowStates(plan: LinePlan, report: LineReport | null): ReadonlyMap<string, FlowState> {
  const states = new Map<string, FlowState>();
  if (report === null) return states;
  const shares = new Map(plan.outlets.map((outlet) => [outlet.id, outlet.wantShare]));
  for (const zone of report.zones) {
    const outlets = report.outlets.filter((outlet) => outlet.zone === zone.zone);
    const total = outlets.reduce((sum, outlet) => sum + Math.max(0, outlet.full.flow_L_per_h), 0);
    const wanted = outlets.reduce((sum, outlet) => sum + (shares.get(outlet.id) ?? 0), 0);
    for (const outlet of outlets) {
      const due = wanted === 0 ? 0 : (total * (shares.get(outlet.id) ?? 0)) / wanted;
      const flow = outlet.full.flow_L_per_h;
      const ratio = due === 0 ? 1 : flow / due;
      states.set(outlet.id, flow < 0 ? 'back' : outlet.full.dry ? 'dry' : ratio < 0.9 ? 'low' : ratio > 1.1 ? 'high' : 'even');
    }
  }
  return states;
}

/** Width of a run on the drawing by its bore, 1.2 to 6 points. */
export const runWidth = (insideDiameter_m: number): number => Math.max(1.2, Math.min(6, insideDiameter_m * 160));

/** The next place in a direction from one, for moving about with the arrow keys. */
export function nextPlace(nodes: readonly PlanNode[], from: PlanNode, dx: number, dy: number): PlanNode | undefined {
  let best: PlanNode | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const node of nodes) {
    const [x, y] = [node.x_m - from.x_m, node.y_m - from.y_m];
    const ahead = x * dx + y * dy;
    if (node.id === from.id || ahead <= 1e-9) continue;
    const aside = Math.abs(x * dy - y * dx);
    const cost = ahead + 2 * aside;
    if (cost < least) {
      least = cost;
      best = node;
    }
  }
  return best;
}
