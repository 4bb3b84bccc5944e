import { requireRange } from '../../errors.ts';

const DAYS = 7;
const MIN_PER_H = 60;

/**
 * The most a line can give in a week: its tap's or its pump's flow over the hours it may run.
 *
 *   V = 7 h Q
 *
 *   h   hours a day               h      0 to 24
 *   Q   flow, the larger of both  L/h    0 or more
 *
 * A pump's largest flow is at no head: what reaches the beds is less. Give the solved flow of the line where it is known.
 * Source: definition.
 * @returns null where neither flow is known
 */
export function weekSupply_L(
  line: { readonly tapFlow_L_per_min: number | null; readonly pumpFlow_L_per_h: number | null },
  run_h_per_day: number,
): number | null {
  requireRange('run_h_per_day', run_h_per_day, 0, 24, 'h');
  const flows = [line.pumpFlow_L_per_h, line.tapFlow_L_per_min === null ? null : line.tapFlow_L_per_min * MIN_PER_H].filter(
    (flow) => flow !== null,
  );
  return flows.length === 0 ? null : DAYS * run_h_per_day * Math.max(...flows);
}
