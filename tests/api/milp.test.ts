import { expect, test } from 'vitest';
import { solveMilp } from '../../api/jobs/milp/highs.ts';
import { loadLpSolver } from '../../api/jobs/milp/open-lp.ts';
import { createMilp, type MilpModel } from '../../planner/milp.ts';

/** Worked by hand: chairs + 2 tables <= 40, 2 chairs + tables <= 50; 30 and 50 a piece; best at 20 and 10. */
function workshop(integer = true): MilpModel {
  const milp = createMilp('maximise');
  const chairs = milp.column({ cost: 30, integer });
  const tables = milp.column({ cost: 50, integer });
  milp.row({
    upper: 40,
    entries: [
      [chairs, 1],
      [tables, 2],
    ],
  });
  milp.row({
    upper: 50,
    entries: [
      [chairs, 2],
      [tables, 1],
    ],
  });
  return milp.build();
}

/** A knapsack whose halves matter: the linear answer splits an item, the whole-number answer may not. */
function knapsack(count: number): MilpModel {
  const milp = createMilp('maximise');
  const items = Array.from({ length: count }, (_, at) => milp.column({ cost: 60 + ((at * 37) % 41), upper: 1, integer: true }));
  for (let row = 0; row < 6; row++)
    milp.row({ upper: count * 6, entries: items.map((item, at) => [item, 15 + ((at * 29 + row * 17) % 23)] as const) });
  return milp.build();
}

test('the workshop is solved to its best, with a closed gap', async () => {
  const answer = await solveMilp(workshop());
  expect(answer.state).toBe('optimal');
  if (answer.state !== 'optimal') return;
  expect(answer.objective).toBeCloseTo(1100, 9);
  expect([...answer.values]).toEqual([20, 10]);
  expect(answer.gap).toBe(0);
});

test('what cannot be is said, not thrown', async () => {
  const milp = createMilp('minimise');
  const x = milp.column({ cost: 1, upper: 1 });
  milp.row({ lower: 2, entries: [[x, 1]] });
  expect(await solveMilp(milp.build())).toEqual({ state: 'no-solution', because: 'infeasible' });
});

test('a stop at once ends the solve; improvements are told on the way and the same seed gives the same plan', async () => {
  const told: number[] = [];
  const first = await solveMilp(knapsack(40), {
    relativeGap: 0.01,
    randomSeed: 3,
    onImprovement: ({ objective }) => told.push(objective),
  });
  const again = await solveMilp(knapsack(40), { relativeGap: 0.01, randomSeed: 3 });
  expect(first).toEqual(again);
  expect(told.length).toBeGreaterThan(0);
  if (first.state !== 'optimal') throw new Error('not solved');
  expect(first.bound).toBeGreaterThanOrEqual(first.objective - 1e-6);
  const stopped = await solveMilp(knapsack(200), { shouldStop: () => true });
  expect(stopped.state).not.toBe('optimal');
});

test('an open linear model takes columns and rows, and its duals price one more unit', async () => {
  const lp = (await loadLpSolver(() => false))(workshop(false));
  const start = lp.solve('fresh');
  if (start.state !== 'optimal') throw new Error('not solved');
  expect(start.solution.objective).toBeCloseTo(1100, 9);
  expect(start.solution.rowDuals[0]).toBeCloseTo(70 / 3, 9);
  lp.addColumns([
    {
      cost: 100,
      lower: 0,
      upper: Infinity,
      entries: [
        [0, 1],
        [1, 1],
      ],
    },
  ]);
  const richer = lp.solve('columns-added');
  if (richer.state !== 'optimal') throw new Error('not solved');
  expect(richer.solution.objective).toBeCloseTo(4000, 9);
  lp.setColumnBounds([2], [0], [10]);
  lp.addRows([{ upper: 5, entries: [[0, 1]] }]);
  const bounded = lp.solve('bounds-changed');
  if (bounded.state !== 'optimal') throw new Error('not solved');
  expect(bounded.solution.values[0]).toBeLessThanOrEqual(5 + 1e-9);
  lp.close();
});
