import { type ReadyLine, solveReady } from './line-solution.ts';

export type SystemPoint = { readonly flow_L_per_h: number; readonly head_m: number };

/**
 * What the line takes: the flow it passes at each head the pump might give, valves as they stand. It crosses the pump's
 * curve at the operating point.
 *
 * Found by giving the source that head in place of the pump. Source: energy balance; see `line-newton.ts`.
 */
export function systemCurve(
  line: ReadyLine,
  mostHead_m: number,
  openOutlets?: ReadonlySet<string>,
  steps = 16,
): readonly SystemPoint[] {
  const opening = openOutlets === undefined ? {} : { openOutlets };
  return Array.from({ length: steps + 1 }, (_, at) => (mostHead_m * at) / steps).flatMap((head_m) => {
    const network = { ...line.network, pump: null, level_m: line.network.level_m + head_m };
    const solution = solveReady({ ...line, network }, opening);
    return solution.state === 'converged' ? [{ flow_L_per_h: solution.total_L_per_h, head_m }] : [];
  });
}
