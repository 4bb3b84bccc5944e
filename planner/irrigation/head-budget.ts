import { fittingLoss_m } from './fitting-loss.ts';
import type { LineSolution, ReadyLine } from './line-solution.ts';

export type HeadPart = {
  /** What takes the head. */
  readonly what: 'lift' | 'tube' | 'fittings' | 'lateral' | 'valve';
  readonly insideDiameter_m: number | null;
  readonly head_m: number;
  readonly share: number;
};

export type HeadBudget = {
  readonly outletId: string;
  readonly source_m: number;
  readonly parts: readonly HeadPart[];
  readonly bottleneck: HeadPart | null;
};

/**
 * Where the head goes on the way to one outlet: lift, friction and fittings by bore, the last run, and what is left for
 * the valve. The bottleneck is the largest of these that is not the valve.
 *
 *   H_pump = (z_outlet - level) + sum of friction + sum of fittings + valve and end
 *
 * Source: energy balance along the path.
 */
export function headBudget(
  line: ReadyLine,
  solution: Extract<LineSolution, { state: 'converged' }>,
  outletId: string,
): HeadBudget {
  const { network, tree } = line;
  const at = network.outlets.findIndex((outlet) => outlet.id === outletId);
  const outlet = network.outlets[at];
  const flow = solution.outlets[at];
  if (outlet === undefined || flow === undefined) return { outletId, source_m: 0, parts: [], bottleneck: null };
  const parts = new Map<string, { what: HeadPart['what']; insideDiameter_m: number | null; head_m: number }>();
  const add = (what: HeadPart['what'], insideDiameter_m: number | null, head_m: number) => {
    const key = `${what} ${insideDiameter_m}`;
    const before = parts.get(key);
    parts.set(key, { what, insideDiameter_m, head_m: (before?.head_m ?? 0) + head_m });
  };
  const last = tree.outletPlace[at] as number;
  for (let place = last; place > 0; place = tree.parent[place] as number) {
    const tube = network.tubes[tree.tube[place] as number];
    const solved = solution.tubes[tree.tube[place] as number];
    if (tube === undefined || solved === undefined) continue;
    const fittings_m = fittingLoss_m(tube.fittingK, solved.velocity_m_per_s);
    if (place === last) add('lateral', tube.insideDiameter_m, solved.loss_m);
    else {
      add('tube', tube.insideDiameter_m, solved.loss_m - fittings_m);
      add('fittings', tube.insideDiameter_m, fittings_m);
    }
  }
  const lift_m = outlet.outlet_m - network.level_m;
  if (lift_m > 0) add('lift', null, lift_m);
  add('valve', outlet.bore_m, flow.surplus_m);
  const source_m = solution.pumpHead_m + Math.max(0, -lift_m);
  const listed = [...parts.values()]
    .map((part): HeadPart => ({ ...part, share: source_m > 0 ? part.head_m / source_m : 0 }))
    .sort((one, other) => other.head_m - one.head_m);
  return { outletId, source_m, parts: listed, bottleneck: listed.find((part) => part.what !== 'valve') ?? null };
}
