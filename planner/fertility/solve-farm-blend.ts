import type { LpSolver } from '../lp.ts';
import type { MilpSolver } from '../milp.ts';
import { type FarmBlend, readFarmBlend } from './blend-answer.ts';
import { type FarmBlendInput, farmBlendModel, limitPrices, totalMiss } from './farm-blend.ts';

export type BlendVoice = {
  readonly doing: (share: number, text: string) => void;
  readonly best: (blend: FarmBlend) => void;
  readonly shouldStop: () => boolean;
};

export type FarmBlendOutcome =
  | { readonly state: 'found'; readonly blend: FarmBlend }
  | { readonly state: 'none'; readonly because: string };

const WANTED_GAP = 0.005;
/** A limit by count, so that the same farm gives the same plan on every machine. */
const NODE_LIMIT = 20_000;

/**
 * Solves the farm's blend in its two steps: least missed, then least cost in whole packages. Hands out a plan after each
 * better one. See {@link farmBlendModel} for the mathematics.
 */
export function solveFarmBlend(
  input: FarmBlendInput,
  scoop_L: number,
  solvers: { readonly lp: LpSolver; readonly milp: MilpSolver },
  voice: BlendVoice,
): FarmBlendOutcome {
  voice.doing(0.05, 'What can be met at all');
  const first = farmBlendModel(input, null);
  const lp = solvers.lp(first.model);
  const least = lp.solve('fresh');
  lp.close();
  if (least.state === 'no-solution') return { state: 'none', because: 'The needs could not be set against these materials.' };
  const built = farmBlendModel(input, totalMiss(first, least.solution.values));
  voice.doing(0.2, 'The price of each limit');
  const relaxed = solvers.lp(built.model);
  const priced = relaxed.solve('fresh');
  relaxed.close();
  const prices = priced.state === 'optimal' ? limitPrices(input, built, priced.solution.rowDuals) : [];
  voice.doing(0.35, 'Least cost in whole packages');
  const answer = solvers.milp(built.model, {
    relativeGap: WANTED_GAP,
    nodeLimit: NODE_LIMIT,
    shouldStop: voice.shouldStop,
    onImprovement: (better) => {
      voice.best(readFarmBlend(input, built, better, scoop_L, prices, 'best-so-far'));
      voice.doing(0.6, 'A better plan found');
    },
  });
  if (answer.state === 'no-solution') return { state: 'none', because: 'No plan in whole packages was found.' };
  voice.doing(0.95, 'Doses for each bed');
  const blend = readFarmBlend(input, built, answer, scoop_L, prices, answer.state === 'optimal' ? 'best' : 'best-so-far');
  return { state: 'found', blend };
}
