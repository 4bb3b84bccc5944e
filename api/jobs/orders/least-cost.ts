import { type LeastCost, leastCost } from '../../../planner/orders/least-cost.ts';
import type { PurchaseProblem } from '../../../planner/orders/purchase-problem.ts';
import { loadMilpSolver } from '../milp/highs.ts';
import type { JobVoice } from '../runners.ts';

/** The shopping list of least total cost; each better basket is told while the search goes on. */
export async function run(problem: PurchaseProblem, voice: JobVoice): Promise<LeastCost> {
  const solve = await loadMilpSolver();
  voice.progress({ share: null, text: 'Trying suppliers, packages and deliveries' });
  return leastCost(problem, solve, {
    shouldStop: voice.shouldStop,
    onBetter: (plan) => voice.best({ plan, single: null, saving_minor: null } satisfies LeastCost),
  });
}
