import { InputError } from '../../../planner/errors.ts';
import type { LinePlan } from '../../../planner/irrigation/line-plan.ts';
import { networkOf, zonesOf } from '../../../planner/irrigation/line-plan.ts';
import { type LineReport, lineReport } from '../../../planner/irrigation/line-report.ts';
import { readyLine } from '../../../planner/irrigation/line-solution.ts';
import { type SystemPoint, systemCurve } from '../../../planner/irrigation/system-curve.ts';

export type Solved = { readonly report: LineReport; readonly fault: null } | { readonly report: null; readonly fault: string };

/** The line's report, or in words why it cannot be solved yet. */
export function solved(plan: LinePlan): Solved {
  try {
    return { report: lineReport(plan), fault: null };
  } catch (error) {
    if (error instanceof InputError) return { report: null, fault: error.message };
    throw error;
  }
}

/** What the line takes at each head, in the first zone. */
export function systemOf(plan: LinePlan, report: LineReport | null): readonly SystemPoint[] {
  if (report === null || report.shutoff_m === null) return [];
  return systemCurve(readyLine(networkOf(plan, 'full')), report.shutoff_m, zonesOf(plan)[0]?.outlets);
}
