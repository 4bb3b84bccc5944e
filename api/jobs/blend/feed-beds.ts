import type { FarmBlendInput } from '../../../planner/fertility/farm-blend.ts';
import { type FarmBlendOutcome, solveFarmBlend } from '../../../planner/fertility/solve-farm-blend.ts';
import { loadMilpSolver } from '../milp/highs.ts';
import { loadLpSolver } from '../milp/open-lp.ts';
import type { JobVoice } from '../runners.ts';

export type FeedBedsData = FarmBlendInput & { readonly scoop_L: number };

/** The farm's least-cost blend, in the worker. */
export async function run(data: FeedBedsData, voice: JobVoice): Promise<FarmBlendOutcome> {
  const solvers = { lp: await loadLpSolver(voice.shouldStop), milp: await loadMilpSolver() };
  return solveFarmBlend(data, data.scoop_L, solvers, {
    doing: (share, text) => voice.progress({ share, text }),
    best: (blend) => voice.best({ state: 'found', blend } satisfies FarmBlendOutcome),
    shouldStop: voice.shouldStop,
  });
}
