import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { loadMilpSolver } from '../../../../api/jobs/milp/highs.ts';
import { loadLpSolver } from '../../../../api/jobs/milp/open-lp.ts';
import {
  type BlendProblem,
  brokenLimits,
  leastCostBlend,
  wholeMeasureBlend,
} from '../../../../planner/fertility/least-cost-blend.ts';
import type { LpSolver } from '../../../../planner/lp.ts';
import type { MilpSolver } from '../../../../planner/milp.ts';
import { faultPaths } from '../../../builders/faults-of.ts';

let lp: LpSolver;
let milp: MilpSolver;
beforeAll(async () => {
  lp = await loadLpSolver(() => false);
  milp = await loadMilpSolver();
});

const content = fc.integer({ min: 0, max: 120 });
const material = fc.record({
  price: fc.integer({ min: 20, max: 900 }),
  contents: fc.record({ N: content, P2O5: content, K2O: content }),
});
const problem: fc.Arbitrary<BlendProblem> = fc
  .record({
    list: fc.array(material, { minLength: 2, maxLength: 5 }),
    minimum: fc.record({ N: fc.integer({ min: 1, max: 80 }), K2O: fc.integer({ min: 0, max: 80 }) }),
    most: fc.integer({ min: 5, max: 90 }),
  })
  .map(({ list, minimum, most }) => ({
    materials: list.map((each, at) => ({ ...each, name: `m${at}` })),
    minimum,
    maximum: { P2O5: most },
  }));

describe('the least-cost blend', () => {
  test('breaks no limit that it reports met', () => {
    fc.assert(
      fc.property(problem, (given) => {
        const found = leastCostBlend(given, lp);
        if (found.state === 'found') expect(brokenLimits(given, found.amounts)).toEqual([]);
        else expect(found.clash.length).toBeGreaterThan(0);
      }),
      { numRuns: 60 },
    );
  });
  test('never costs more when a material is added', () => {
    fc.assert(
      fc.property(problem, material, (given, extra) => {
        const before = leastCostBlend(given, lp);
        if (before.state !== 'found') return;
        const after = leastCostBlend({ ...given, materials: [...given.materials, { ...extra, name: 'extra' }] }, lp);
        if (after.state !== 'found') throw new Error('a further material cannot make it impossible');
        expect(after.cost).toBeLessThanOrEqual(before.cost * (1 + 1e-6) + 1e-4);
      }),
      { numRuns: 60 },
    );
  });
  test('whole measures cost no less than parts of measures, and keep every limit', () => {
    fc.assert(
      fc.property(problem, (given) => {
        const parts = leastCostBlend(given, lp);
        const whole = wholeMeasureBlend(given, milp, lp);
        if (parts.state !== 'found' || whole.state !== 'found') return;
        expect(whole.cost).toBeGreaterThanOrEqual(parts.cost * (1 - 1e-6) - 1e-4);
        expect(brokenLimits(given, whole.amounts)).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });
  test('the price of a limit is what one more unit of it costs', () => {
    const given: BlendProblem = {
      materials: [
        { name: 'meal', price: 300, contents: { N: 90 } },
        { name: 'pellet', price: 80, contents: { N: 15, P2O5: 30 } },
      ],
      minimum: { N: 60 },
      maximum: { P2O5: 20 },
    };
    const found = leastCostBlend(given, lp);
    const more = leastCostBlend({ ...given, minimum: { N: 61 } }, lp);
    if (found.state !== 'found' || more.state !== 'found') throw new Error('should be feasible');
    const price = found.binding.find((each) => each.of === 'N')?.price ?? Number.NaN;
    expect(more.cost - found.cost).toBeCloseTo(price, 4);
  });
  test('names the clash when nothing fits', () => {
    const found = leastCostBlend(
      { materials: [{ name: 'pellet', price: 80, contents: { N: 15, P2O5: 30 } }], minimum: { N: 60 }, maximum: { P2O5: 20 } },
      lp,
    );
    expect(found.state === 'cannot-be-met' && found.clash.length).toBeGreaterThan(0);
  });
  test('refuses no materials, prices below zero, and a most below the least', () => {
    expect(faultPaths(() => leastCostBlend({ materials: [], minimum: { N: 1 } }, lp))).toEqual(['materials']);
    const one = [{ name: 'a', price: -1, contents: { N: 1 } }];
    expect(faultPaths(() => leastCostBlend({ materials: one, minimum: { N: 1 } }, lp))).toEqual(['materials.0.price']);
    const fine = [{ name: 'a', price: 1, contents: { N: 1 } }];
    expect(faultPaths(() => leastCostBlend({ materials: fine, minimum: { N: 2 }, maximum: { N: 1 } }, lp))).toEqual([
      'maximum.N',
    ]);
  });
});
