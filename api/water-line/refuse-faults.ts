import { InputError } from '../../planner/errors.ts';
import { lineFaults } from '../../planner/irrigation/line-faults.ts';
import { type LinePlan, networkOf, supplyCurve } from '../../planner/irrigation/line-plan.ts';

/** A line that is still being drawn may lack these. */
const unfinished: ReadonlySet<string> = new Set(['too-few', 'not-connected', 'not-on-the-line']);

/**
 * Refuses what no line can be: rings, runs without length or bore, outlets wider than their tube, a pump curve that rises.
 * @throws InputError with each fault at its field
 */
export function refuseFaults(plan: LinePlan): void {
  supplyCurve(plan);
  const faults = lineFaults(networkOf(plan)).filter((fault) => !unfinished.has(fault.code));
  if (faults.length > 0) throw new InputError(faults);
}
