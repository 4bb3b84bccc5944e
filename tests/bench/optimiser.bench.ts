import { loadLpSolver } from '../../api/jobs/milp/open-lp.ts';
import { createMilp } from '../../planner/milp.ts';
import { greedyPlan } from '../../planner/season/optimise/construct.ts';
import { optimiseSeason } from '../../planner/season/optimise/optimise.ts';
import { compileSeason } from '../../planner/season/optimise/problem.ts';
import { createSearchState } from '../../planner/season/optimise/search-state.ts';
import { type PublishedSeason, publishedSeasons, seasonOf } from '../builders/published-season.ts';
import type { Bench } from './bench.ts';

const LIMIT_MS = 10_000;
const MARKS = [5, 2, 1, 0.7, 0.5] as const;
const wanted: Readonly<Record<string, number>> = { 'd-small': 2.5, 'd-medium': 1, 'd-large': 1 };
const solver = await loadLpSolver(() => false);

/** Time that this process had on the core, so that other work on the machine does not count. */
const onCore_ms = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** Ten seconds of search on one core; prints when each gap was reached. Gaps before a bound is known are judged by the file's. */
function gapOverTime(season: PublishedSeason): number {
  const instance = seasonOf(season);
  const from = onCore_ms();
  const since = () => onCore_ms() - from;
  const seen = new Map<number, number>();
  const stages = new Map<string, string>();
  const found = optimiseSeason(instance, {
    seed: 1,
    moves: 1_000_000,
    gapGoal: 0.001,
    solver,
    shouldStop: () => since() > LIMIT_MS,
    onProgress({ stage, margin_minor, bound_minor }) {
      const bound = Math.min(bound_minor ?? Infinity, season.provenUpperBound * 100);
      const gap = ((bound - margin_minor) / bound) * 100;
      stages.set(stage, `${stage} ${gap.toFixed(2)} % at ${(since() / 1000).toFixed(2)} s`);
      for (const mark of MARKS) if (gap <= mark && !seen.has(mark)) seen.set(mark, since());
    },
  });
  const gap = (found.gap ?? Number.NaN) * 100;
  const reached = MARKS.map(
    (mark) => `${mark} %: ${seen.has(mark) ? `${((seen.get(mark) ?? 0) / 1000).toFixed(1)} s` : 'not'}`,
  ).join(', ');
  const goal = wanted[season.instance.name] ?? 0;
  console.log(`    ${[...stages.values()].join('; ')}`);
  console.log(`    proven gap ${gap.toFixed(2)} % (wanted ${goal} %${gap <= goal ? '' : ', MISSED'}); reached ${reached}`);
  return gap;
}

/** The floor: the solver's own start and one tiny linear model. */
function tinyModel(): number {
  const milp = createMilp('maximise');
  const x = milp.column({ cost: 1, upper: 2 });
  milp.row({ upper: 1, entries: [[x, 1]] });
  const lp = solver(milp.build());
  const outcome = lp.solve('fresh');
  lp.close();
  return outcome.state === 'optimal' ? outcome.solution.objective : 0;
}

const nameOf = ({ instance }: PublishedSeason) =>
  `${instance.beds.length} beds x ${instance.crops.length} crops x ${instance.T} weeks`;

export const benches: readonly Bench[] = publishedSeasons().flatMap((season): Bench[] => [
  {
    name: `first plan, ${nameOf(season)}`,
    prepare: () => seasonOf(season),
    run: (instance: ReturnType<typeof seasonOf>) => greedyPlan(createSearchState(compileSeason(instance))),
    floor: (instance: ReturnType<typeof seasonOf>) => compileSeason(instance),
    target_ms: 300,
    rounds: 5,
  },
  {
    name: `gap in 10 s on one core, ${nameOf(season)}`,
    prepare: () => season,
    run: (each: PublishedSeason) => gapOverTime(each),
    floor: () => tinyModel(),
    rounds: 1,
  },
]);
