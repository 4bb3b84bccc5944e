import { networkOf, outletLossK, pipedOutlets } from '../../planner/irrigation/line-plan.ts';
import { lineReport } from '../../planner/irrigation/line-report.ts';
import { type ReadyLine, readyLine, solveReady } from '../../planner/irrigation/line-solution.ts';
import { designValves } from '../../planner/irrigation/valve-design.ts';
import { aPlan } from '../builders/a-line.ts';
import type { Bench } from './bench.ts';

type Prepared = { readonly line: ReadyLine; readonly wishes: readonly { readonly share: number; readonly openK: number }[] };

const planOf = (beds: number) =>
  aPlan({
    rows: Math.ceil(beds / 20),
    bedsInRow: 20,
    arrangement: 'comb',
    mainDiameter_m: 0.0254,
    lateralDiameter_m: 0.0127,
    teeBore_m: 0.022,
  });

function prepared(beds: number): Prepared {
  const plan = planOf(beds);
  const line = readyLine(networkOf(plan));
  return { line, wishes: pipedOutlets(plan).map((outlet) => ({ share: 1, openK: outletLossK(outlet, outlet.openK) })) };
}

/** The floor of a solution: one pass over every tube with one root each. */
function floor({ line }: Prepared): number {
  let sum = 0;
  for (const tube of line.network.tubes) sum += Math.sqrt(tube.length_m);
  return sum;
}

const solve = ({ line }: Prepared): unknown => solveReady(line);
const design = ({ line, wishes }: Prepared): unknown => designValves(line, wishes);

export const benches: readonly Bench[] = [
  { name: 'water line: 300 outlets solved', prepare: () => prepared(300), run: solve, floor, target_ms: 2 },
  { name: 'water line: 300 valves set', prepare: () => prepared(300), run: design, floor, target_ms: 5 },
  { name: 'water line: 1,000 outlets solved', prepare: () => prepared(1000), run: solve, floor, target_ms: 10 },
  { name: 'water line: 1,000 valves set', prepare: () => prepared(1000), run: design, floor, target_ms: 15 },
  {
    name: 'water line: the page’s report of 300 outlets, as while dragging',
    prepare: () => planOf(300),
    run: (plan: ReturnType<typeof planOf>) => lineReport(plan),
    floor: (plan: ReturnType<typeof planOf>) => plan.runs.reduce((sum, run) => sum + Math.sqrt(run.length_m), 0),
    target_ms: 16,
  },
];
