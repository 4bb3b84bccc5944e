import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LineNetwork } from '../../../../planner/irrigation/line-network.ts';
import { type LineSolution, reach_m, solveLine } from '../../../../planner/irrigation/line-solution.ts';
import { pumpCurve } from '../../../../planner/irrigation/pump-curve.ts';
import { aSnake, smallPumpPoints } from '../../../builders/a-line.ts';
import { randomLine } from '../../../builders/random-line.ts';

type Solved = Extract<LineSolution, { state: 'converged' }>;

function solved(line: LineNetwork, opening = {}): Solved {
  const solution = solveLine(line, opening);
  if (solution.state === 'no-solution') throw new Error(solution.because);
  return solution;
}

const aRandomLine = fc.integer({ min: 1, max: 1_000_000 }).map((seed) => randomLine(seed, 30));

describe('a line of tubes', () => {
  test('what the beds get is what the source gives, and what flows into a tee flows out of it', () => {
    fc.assert(
      fc.property(aRandomLine, (line) => {
        const solution = solved(line);
        const sum = solution.outlets.reduce((total, outlet) => total + outlet.flow_L_per_h, 0);
        expect(sum).toBeCloseTo(solution.total_L_per_h, 6);
        for (const [at, tube] of line.tubes.entries()) {
          const out = line.tubes.flatMap((other, i) => (other.from === tube.to ? [solution.tubes[i]?.flow_L_per_h ?? 0] : []));
          const beds = line.outlets.flatMap((outlet, i) =>
            outlet.node === tube.to ? [solution.outlets[i]?.flow_L_per_h ?? 0] : [],
          );
          expect([...out, ...beds].reduce((total, flow) => total + flow, 0)).toBeCloseTo(
            solution.tubes[at]?.flow_L_per_h ?? 0,
            6,
          );
        }
      }),
      { numRuns: 60 },
    );
  });

  test('head falls along the flow, and an open end never takes water in', () => {
    fc.assert(
      fc.property(aRandomLine, (line) => {
        const solution = solved(line);
        for (const tube of solution.tubes) {
          expect(tube.flow_L_per_h).toBeGreaterThanOrEqual(0);
          expect(tube.loss_m).toBeGreaterThanOrEqual(0);
        }
        for (const outlet of solution.outlets) {
          expect(outlet.flow_L_per_h).toBeGreaterThanOrEqual(0);
          if (outlet.dry) expect(outlet.surplus_m).toBeLessThan(1e-4);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('a wider tube throughout never lowers the far bed of a snake', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 20 }),
        fc.double({ min: 0.009, max: 0.02, noNaN: true }),
        fc.double({ min: 1.02, max: 2, noNaN: true }),
        (beds, bore, wider) => {
          const snake = aSnake({ beds, insideDiameter_m: bore });
          const wide = {
            ...snake,
            tubes: snake.tubes.map((tube) => ({ ...tube, insideDiameter_m: tube.insideDiameter_m * wider })),
          };
          const far = (line: LineNetwork): number => solved(line).outlets.at(-1)?.flow_L_per_h ?? 0;
          expect(far(wide)).toBeGreaterThanOrEqual(far(snake) - 1e-6);
        },
      ),
      { numRuns: 80 },
    );
  });

  test('shutting a bed never lowers another', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
        const line = randomLine(seed, 20);
        const all = solved(line);
        const shut = line.outlets[seed % line.outlets.length]?.id ?? '';
        const fewer = solved(line, { openOutlets: new Set(line.outlets.map((outlet) => outlet.id).filter((id) => id !== shut)) });
        for (const [at, outlet] of fewer.outlets.entries())
          if (outlet.id !== shut) expect(outlet.flow_L_per_h).toBeGreaterThanOrEqual((all.outlets[at]?.flow_L_per_h ?? 0) - 1e-5);
      }),
      { numRuns: 60 },
    );
  });

  test('with every outlet above what the pump reaches all are dry, and the reach is told', () => {
    const line = aSnake({ outlet_m: 3 });
    const solution = solved(line);
    expect(solution.total_L_per_h).toBe(0);
    expect(solution.outlets.every((outlet) => outlet.dry)).toBe(true);
    expect(reach_m(line)).toBeCloseTo(2.2, 9);
  });

  test('outlets three metres below the reservoir solve, and are beyond the pump curve', () => {
    const solution = solved(aSnake({ beds: 3, outlet_m: -3, openK: 2, insideDiameter_m: 0.02 }));
    expect(solution.total_L_per_h).toBeGreaterThan(1514);
    expect(solution.beyondCurve).toBe(true);
  });

  test('only an end under water runs back when it stands above the reservoir and nothing pumps', () => {
    const snake = { ...aSnake({ beds: 2 }), pump: null };
    expect(solved(snake).total_L_per_h).toBe(0);
    const drowned = { ...snake, outlets: snake.outlets.map((outlet) => ({ ...outlet, drowned: true })) };
    const back = solved(drowned);
    expect(back.outlets.every((outlet) => outlet.flow_L_per_h < 0)).toBe(true);
    expect(back.outlets.reduce((sum, outlet) => sum + outlet.flow_L_per_h, 0)).toBeCloseTo(back.total_L_per_h, 6);
  });

  test('a drip group gives its rated flow at its rated head', () => {
    const line: LineNetwork = {
      source: 'S',
      level_m: 5,
      pump: null,
      viscosity_m2_per_s: 1e-6,
      tubes: [{ id: 't', from: 'S', to: 'E', length_m: 0.01, insideDiameter_m: 0.05, roughness_m: 1.5e-6, fittingK: 0 }],
      outlets: [
        {
          id: 'strip',
          node: 'E',
          outlet_m: 0,
          bore_m: 0.05,
          lossK: 0,
          emitters: { count: 40, flowEach_L_per_h: 1, atHead_m: 5, exponent: 0.5 },
        },
      ],
    };
    expect(solved(line).total_L_per_h).toBeCloseTo(40, 2);
    const four = {
      ...line,
      outlets: line.outlets.map((outlet) => ({
        ...outlet,
        emitters: { count: 40, flowEach_L_per_h: 1, atHead_m: 20, exponent: 0.1 },
      })),
    };
    expect(solved(four).total_L_per_h).toBeCloseTo(40 * 0.25 ** 0.1, 2);
  });

  test('runs near the change from smooth to turbulent flow are marked, and the beds behind them', () => {
    const solution = solved(aSnake({ beds: 1, openK: 1200 }));
    const regime = solution.tubes[0]?.regime;
    expect(solution.outlets[0]?.uncertain).toBe(regime === 'transition');
    expect(solved(aSnake({ beds: 1, openK: 800 })).tubes.map((tube) => tube.regime)).toContain('transition');
  });

  test('a snake of a thousand beds and three hundred with every valve open come to rest', () => {
    for (const beds of [300, 1000]) expect(solved(aSnake({ beds, insideDiameter_m: 0.019 })).iterations).toBeLessThan(60);
  });

  test('drowned and open ends mixed on random lines come to rest', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
        const line = randomLine(seed, 40);
        const mixed = {
          ...line,
          pump: seed % 3 === 0 ? null : line.pump,
          outlets: line.outlets.map((outlet, at) => ({ ...outlet, drowned: (seed + at) % 2 === 0 })),
        };
        expect(solveLine(mixed).state).toBe('converged');
      }),
      { numRuns: 150 },
    );
  });
});

describe('a line that cannot be solved says so at the field', () => {
  const faultsOf = (line: LineNetwork): readonly string[] => {
    try {
      solveLine(line);
    } catch (error) {
      return (error as { faults: readonly { path: string; code: string }[] }).faults.map(
        (fault) => `${fault.path} ${fault.code}`,
      );
    }
    return [];
  };
  const snake = aSnake({ beds: 3 });
  const changed = (at: number, change: Partial<LineNetwork['tubes'][number]>): LineNetwork => ({
    ...snake,
    tubes: snake.tubes.map((tube, i) => (i === at ? { ...tube, ...change } : tube)),
  });

  test('a ring', () => {
    const ring = {
      ...snake,
      tubes: [...snake.tubes, { ...(snake.tubes[1] as LineNetwork['tubes'][number]), id: 'ring', from: 'T3', to: 'T1' }],
    };
    expect(faultsOf(ring)).toEqual([`tubes.${snake.tubes.length}.to loop`]);
    expect(faultsOf(changed(1, { to: 'PUMP' }))).toContain('tubes.1.to loop');
  });
  test('a run without length or bore, and one that hangs in the air', () => {
    expect(faultsOf(changed(2, { length_m: 0 }))).toEqual(['tubes.2.length_m not-positive']);
    expect(faultsOf(changed(2, { insideDiameter_m: -1 }))).toContain('tubes.2.insideDiameter_m not-positive');
    expect(faultsOf(changed(1, { from: 'nowhere' }))).toContain('tubes.1.from not-connected');
  });
  test('an outlet wider than its tube, off the line, or none at all', () => {
    const wide = { ...snake, outlets: snake.outlets.map((outlet, at) => (at === 1 ? { ...outlet, bore_m: 0.02 } : outlet)) };
    expect(faultsOf(wide)).toEqual(['outlets.1.bore_m wider-than-tube']);
    expect(faultsOf({ ...snake, outlets: [] })).toEqual(['outlets too-few']);
    expect(faultsOf({ ...snake, outlets: snake.outlets.map((outlet) => ({ ...outlet, node: 'x' })) })).toContain(
      'outlets.0.node not-on-the-line',
    );
  });
  test('a pump whose curve rises names the two points', () => {
    expect(() => pumpCurve('points', [...smallPumpPoints, { flow_L_per_h: 1600, head_m: 0.5 }])).toThrowError(
      /0 m at 1514 L\/h \(point 3\) and 0.5 m at 1600 L\/h \(point 4\)/,
    );
  });
});
