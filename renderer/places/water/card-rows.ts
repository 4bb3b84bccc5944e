import { InputError } from '../../../planner/errors.ts';
import { networkOf, outletLossK, pipedOutlets } from '../../../planner/irrigation/line-plan.ts';
import type { LineReport } from '../../../planner/irrigation/line-report.ts';
import { readyLine } from '../../../planner/irrigation/line-solution.ts';
import { branchByBranch, type CardStep, cardSteps, nearToFar } from '../../../planner/irrigation/setup-card.ts';
import { turnsFor } from '../../../planner/irrigation/valve-calibration.ts';
import type { LineData } from './line-data.ts';

export type Walk = 'near-to-far' | 'by-branch';

export type CardRow = CardStep & {
  readonly code: string;
  readonly zone: number;
  readonly turns: number | null;
  readonly missing_m: number;
};

/** Turns for a wanted coefficient where this very valve was read at three settings; else null. */
function turnsOf(readings: LineData['facts'][number]['readings'], wantedK: number): number | null {
  if (!Number.isFinite(wantedK)) return null;
  try {
    return turnsFor(readings, wantedK);
  } catch (error) {
    if (error instanceof InputError) return null;
    throw error;
  }
}

/**
 * The card's rows in walking order, zone after zone: each outlet's flow to see now, while those before it are set and those
 * after it stand as they do. Handed out row by row, since each is a solution of the whole line.
 */
export function* cardRows(data: LineData, report: LineReport, walk: Walk): Generator<CardRow, void> {
  const line = readyLine(networkOf(data.plan, 'full'));
  const byId = new Map(report.outlets.map((outlet) => [outlet.id, outlet]));
  const facts = new Map(data.facts.map((fact) => [fact.outletId, fact]));
  const outlets = pipedOutlets(data.plan);
  const order = walk === 'near-to-far' ? nearToFar(line) : branchByBranch(line);
  const shut = Number.POSITIVE_INFINITY;
  for (const zone of report.zones) {
    const inZone = (id: string): boolean => byId.get(id)?.zone === zone.zone;
    const designK = new Map(
      outlets.map((outlet) => [
        outlet.id,
        inZone(outlet.id) ? outletLossK(outlet, byId.get(outlet.id)?.designValveK ?? shut) : shut,
      ]),
    );
    const presentK = new Map(
      outlets.map((outlet) => [outlet.id, inZone(outlet.id) ? outletLossK(outlet, outlet.setK ?? outlet.openK) : shut]),
    );
    for (const step of cardSteps({ line, order: order.filter(inZone), designK, presentK }))
      yield {
        ...step,
        code: facts.get(step.id)?.code ?? '',
        zone: zone.zone,
        missing_m: byId.get(step.id)?.missing_m ?? 0,
        turns: turnsOf(facts.get(step.id)?.readings ?? [], byId.get(step.id)?.designValveK ?? shut),
      };
  }
}
