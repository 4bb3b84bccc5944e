import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import { networkOf } from '../../../../planner/irrigation/line-plan.ts';
import { readyLine, solveReady } from '../../../../planner/irrigation/line-solution.ts';
import {
  branchByBranch,
  catchOf_mL,
  fitValves,
  flowOfCatch_L_per_h,
  nearToFar,
  setUpCard,
} from '../../../../planner/irrigation/setup-card.ts';
import { distributionUniformity } from '../../../../planner/irrigation/uniformity.ts';
import { turnsFor } from '../../../../planner/irrigation/valve-calibration.ts';
import { designValves } from '../../../../planner/irrigation/valve-design.ts';
import { aPlan, aSnake } from '../../../builders/a-line.ts';
import { numbersFrom, randomLine } from '../../../builders/random-line.ts';

const equal = (beds: number, openK = 16) => Array.from({ length: beds }, () => ({ share: 1, openK }));
const flowsOf = (line: ReturnType<typeof readyLine>, lossK: ReadonlyMap<string, number>): readonly number[] => {
  const solution = solveReady(line, { lossK });
  if (solution.state === 'no-solution') throw new Error(solution.because);
  return solution.outlets.map((outlet) => outlet.flow_L_per_h);
};

/** Litres per hour of each bed as computed for the printed table of small lines (our own computation, no source). */
const perBed: readonly (readonly [insideDiameter_m: number, beds: number, flow: number])[] = [
  [0.0127, 4, 165],
  [0.0127, 8, 71],
  [0.0127, 20, 21],
  [0.0127, 50, 5.6],
  [0.01905, 8, 131],
  [0.01905, 30, 26],
];

describe('valves set for equal shares', () => {
  test.each(perBed)('%f m main, %i beds: %f L/h each', (insideDiameter_m, beds, flow) => {
    const snake = aSnake({ beds, insideDiameter_m });
    const design = designValves(readyLine(snake), equal(beds), 0.1);
    expect(design.settings[0]?.flow_L_per_h).toBeGreaterThan(flow * 0.97);
    expect(design.settings[0]?.flow_L_per_h).toBeLessThan(flow * 1.03);
  });

  test('solving the line with the designed valves gives the wished shares on any tree', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
        const network = randomLine(seed, 30);
        const line = readyLine(network);
        const next = numbersFrom(seed);
        const wishes = network.outlets.map(() => ({ share: 0.5 + next(), openK: 16 }));
        const design = designValves(line, wishes, 0.05);
        const flows = flowsOf(line, new Map(design.settings.map((setting) => [setting.id, setting.lossK])));
        const most = Math.max(...flows, 1e-9);
        for (const [at, setting] of design.settings.entries())
          expect(Math.abs((flows[at] ?? 0) - setting.flow_L_per_h)).toBeLessThan(1e-4 * most + 1e-4);
      }),
      { numRuns: 60 },
    );
  });

  test('an outlet above the reach is named with the head that is missing, the others are served', () => {
    const snake = aSnake();
    const high = { ...snake, outlets: snake.outlets.map((outlet, at) => (at === 4 ? { ...outlet, outlet_m: 2.5 } : outlet)) };
    const design = designValves(readyLine(high), equal(8), 0.1);
    expect(design.settings[4]?.missing_m).toBeCloseTo(2.5 + 0.1 - 2.2, 9);
    expect(design.settings[4]?.flow_L_per_h).toBe(0);
    expect(design.settings[3]?.flow_L_per_h).toBeGreaterThan(71);
  });

  test('a reserve of 0.10 m costs a few percent of flow and keeps a centimetre of height small', () => {
    const line = readyLine(aSnake({ teeK: 0.6 }));
    const without = designValves(line, equal(8), 0);
    const reserved = designValves(line, equal(8), 0.1);
    const ratio = (reserved.settings[0]?.flow_L_per_h ?? 0) / (without.settings[0]?.flow_L_per_h ?? 1);
    expect(ratio).toBeGreaterThan(0.96);
    expect(ratio).toBeLessThan(1);
    expect(Math.min(...reserved.settings.map((setting) => setting.surplus_m))).toBeCloseTo(0.1, 6);
  });

  test('a negative share is refused at its field', () => {
    expect(() =>
      designValves(readyLine(aSnake({ beds: 2 })), [
        { share: 1, openK: 16 },
        { share: -1, openK: 16 },
      ]),
    ).toThrowError(/shares.1/);
  });
});

describe('the set-up card', () => {
  const snake = aSnake();
  let line: ReturnType<typeof readyLine>;
  let designK: ReadonlyMap<string, number>;
  beforeEach(() => {
    line = readyLine(snake);
    designK = new Map(designValves(line, equal(8), 0.1).settings.map((setting) => [setting.id, setting.lossK]));
  });
  const openK = new Map(snake.outlets.map((outlet) => [outlet.id, outlet.lossK]));

  test('near to far, eight beds show 58, 59, 59, 59, 58, 55, 56 and at last 71 L/h (our own computation, no source)', () => {
    const order = nearToFar(line);
    expect(order).toEqual(snake.outlets.map((outlet) => outlet.id));
    const card = setUpCard({ line, order, designK, presentK: openK });
    [58, 59, 59, 59, 58, 55, 56, 71].forEach((see, at) => {
      expect(Math.abs((card[at]?.seeNow_L_per_h ?? 0) - see)).toBeLessThan(1);
    });
    expect(card.every((step) => Math.abs(step.final_L_per_h - 71.3) < 0.1)).toBe(true);
    const back = setUpCard({ line, order: [...order].reverse(), designK, presentK: openK });
    [9, 12, 17, 21, 28, 38, 52, 71].forEach((see, at) => {
      expect(Math.abs((back[at]?.seeNow_L_per_h ?? 0) - see)).toBeLessThan(1);
    });
  });

  test('branch by branch walks one branch to its end before the next', () => {
    const comb = readyLine(networkOf(aPlan({ rows: 2, bedsInRow: 3, arrangement: 'comb' })));
    const order = branchByBranch(comb);
    expect(order.slice(0, 3).toSorted()).toEqual(['outlet-1', 'outlet-2', 'outlet-3']);
    expect(order.toSorted()).toEqual(nearToFar(comb).toSorted());
    expect(order.indexOf('outlet-1')).toBeLessThan(order.indexOf('outlet-3'));
    expect(branchByBranch(line)).toEqual(nearToFar(line));
  });

  test('59 L/h is 490 mL in half a minute, there and back', () => {
    expect(catchOf_mL(59)).toBeCloseTo(491.7, 1);
    expect(flowOfCatch_L_per_h(catchOf_mL(59))).toBeCloseTo(59, 9);
    expect(() => flowOfCatch_L_per_h(100, 0)).toThrowError(/time_s/);
  });

  test('measured flows give back each K; a bed not measured keeps its own', () => {
    const truth = new Map([...designK].map(([id, k], at) => [id, k * (0.6 + 0.1 * at)]));
    const flows = flowsOf(line, truth);
    const all = new Map(snake.outlets.map((outlet, at) => [outlet.id, flows[at] ?? 0]));
    for (const valve of fitValves(line, all, openK)) expect(valve.lossK).toBeCloseTo(truth.get(valve.id) ?? 0, 2);
    const some = new Map([...all].slice(0, 5));
    for (const valve of fitValves(line, some, truth)) expect((valve.lossK ?? 0) / (truth.get(valve.id) ?? 1)).toBeCloseTo(1, 3);
  });

  test('a flow that the line as entered cannot give is told, not fitted', () => {
    const valve = fitValves(line, new Map(snake.outlets.map((outlet) => [outlet.id, 300])), openK)[7];
    expect(valve?.lossK).toBeNull();
    expect(valve?.excess_m).toBeGreaterThan(0);
    expect(() => fitValves(line, new Map([['nobody', 1]]), openK)).toThrowError(/measured.nobody|not an outlet/);
  });

  test('followed with noisy readings, measuring and redoing the card, the line comes to even flows', () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const next = numbersFrom(seed);
      const noisy = (value: number): number => value * (1 + 0.06 * (next() - 0.5));
      const order = nearToFar(line);
      const truth = new Map(openK);
      let believed = new Map(openK);
      for (let round = 0; round < 3; round += 1) {
        const card = setUpCard({ line, order, designK, presentK: believed });
        for (const step of card) {
          // The grower turns the true valve until the jug shows the card's figure, give or take the reading.
          const aim = noisy(step.seeNow_L_per_h);
          let low = 16;
          let high = 1e6;
          for (let turn = 0; turn < 60; turn += 1) {
            const middle = Math.sqrt(low * high);
            truth.set(step.id, middle);
            const at = snake.outlets.findIndex((outlet) => outlet.id === step.id);
            if ((flowsOf(line, truth)[at] ?? 0) > aim) low = middle;
            else high = middle;
          }
        }
        const measured = new Map(snake.outlets.map((outlet, at) => [outlet.id, noisy(flowsOf(line, truth)[at] ?? 0)]));
        believed = new Map(fitValves(line, measured, believed).map((valve) => [valve.id, valve.lossK ?? 16]));
      }
      expect(distributionUniformity(flowsOf(line, truth))).toBeGreaterThan(0.9);
    }
  });
});

describe('turns of a calibrated valve', () => {
  const readings = [
    { turns: 1, lossK: 2000 },
    { turns: 2, lossK: 200 },
    { turns: 4, lossK: 20 },
  ];
  test('log K straight between readings, nothing beyond them', () => {
    expect(turnsFor(readings, 200)).toBeCloseTo(2, 9);
    expect(turnsFor(readings, Math.sqrt(200 * 2000))).toBeCloseTo(1.5, 9);
    expect(turnsFor(readings, 5)).toBeNull();
  });
  test('two readings are not enough, and a valve goes one way', () => {
    expect(() => turnsFor(readings.slice(0, 2), 100)).toThrowError(/3 settings/);
    expect(() => turnsFor([...readings, { turns: 5, lossK: 50 }], 100)).toThrowError(/one way/);
  });
});
