import { createMilp } from '../../planner/milp.ts';
import type { JobVoice } from './runners.ts';

/** The best of the workshop below, worked by hand: both limits met at 20 chairs and 10 tables. */
const BEST = 20 * 30 + 10 * 50;

/**
 * The smallest work that uses what long work needs, its thread and the solver: chairs at 30 and tables at 50 apiece from 40 planks (1 and 2 each)
 * and 50 screws (2 and 1 each). Answers what the solver found.
 * @throws when that is not the best
 */
export async function run(_data: unknown, { shouldStop }: JobVoice): Promise<number> {
  const { solveMilp } = await import('./milp/highs.ts');
  const milp = createMilp('maximise');
  const chairs = milp.column({ cost: 30, integer: true });
  const tables = milp.column({ cost: 50, integer: true });
  const planks = [[chairs, 1] as const, [tables, 2] as const];
  const screws = [[chairs, 2] as const, [tables, 1] as const];
  milp.row({ upper: 40, entries: planks });
  milp.row({ upper: 50, entries: screws });
  const answer = await solveMilp(milp.build(), { shouldStop });
  if (answer.state !== 'optimal') throw new Error(`The solver ended with "${answer.state}".`);
  if (Math.abs(answer.objective - BEST) > 1e-6)
    throw new Error(`The solver found ${answer.objective} where ${BEST} is the best.`);
  return answer.objective;
}
