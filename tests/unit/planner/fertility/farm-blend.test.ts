import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { loadMilpSolver } from '../../../../api/jobs/milp/highs.ts';
import { loadLpSolver } from '../../../../api/jobs/milp/open-lp.ts';
import { type BedNeed, groupBeds } from '../../../../planner/fertility/bed-groups.ts';
import type { FarmBlend } from '../../../../planner/fertility/blend-answer.ts';
import { type FarmBlendInput, type FeedMaterial, neededRange } from '../../../../planner/fertility/farm-blend.ts';
import { solveFarmBlend } from '../../../../planner/fertility/solve-farm-blend.ts';
import type { LpSolver } from '../../../../planner/lp.ts';
import type { MilpSolver } from '../../../../planner/milp.ts';
import { faultPaths } from '../../../builders/faults-of.ts';

let solvers: { lp: LpSolver; milp: MilpSolver };
beforeAll(async () => {
  solvers = { lp: await loadLpSolver(() => false), milp: await loadMilpSolver() };
});

const silent = { doing: () => undefined, best: () => undefined, shouldStop: () => false };
const masses = (N: number, P2O5: number, K2O: number) => ({ N, P2O5, K2O, Ca: 0, Mg: 0, S: 0 });
const material = (
  materialId: string,
  N: number,
  P2O5: number,
  K2O: number,
  package_kg: number,
  price_minor: number,
): FeedMaterial => ({
  materialId,
  name: materialId,
  available: masses(N, P2O5, K2O),
  stock_kg: 0,
  offers: [{ offerId: `${materialId}-bag`, package_kg, price_minor }],
  maxRate_kg_per_m2: 5,
  density_kg_per_m3: 600,
});
const meal = material('meal', 0.09, 0.005, 0.002, 10, 3000);
const bone = material('bone', 0.012, 0.22, 0, 10, 2500);
const potash = material('potash', 0, 0, 0.5, 10, 2800);
const pellet = material('pellet', 0.015, 0.03, 0.02, 20, 1600);

const bed = (at: number, area_m2: number, n: number, p: number, k: number): BedNeed => ({
  bedId: `bed-${String(at).padStart(4, '0')}`,
  area_m2,
  need: masses((n * area_m2) / 1000, (p * area_m2) / 1000, (k * area_m2) / 1000),
});
const anyBeds = fc
  .array(
    fc.tuple(
      fc.integer({ min: 1, max: 8 }),
      fc.integer({ min: 4, max: 20 }),
      fc.integer({ min: 0, max: 15 }),
      fc.integer({ min: 0, max: 20 }),
    ),
    {
      minLength: 1,
      maxLength: 12,
    },
  )
  .map((list) => list.map(([area, n, p, k], at) => bed(at, area, n, p, k)));

function blendOf(
  beds: readonly BedNeed[],
  materials: readonly FeedMaterial[],
  toleranceShare = 0.15,
): { input: FarmBlendInput; blend: FarmBlend } {
  const input: FarmBlendInput = { groups: groupBeds(beds), materials, nutrients: ['N', 'P2O5', 'K2O'], toleranceShare };
  const outcome = solveFarmBlend(input, 0.25, solvers, silent);
  if (outcome.state !== 'found') throw new Error(outcome.because);
  return { input, blend: outcome.blend };
}

describe('the farm’s blend', () => {
  test('a nutrient reported met lies within its range, by the doses on the card', () => {
    fc.assert(
      fc.property(anyBeds, (beds) => {
        const { blend } = blendOf(beds, [meal, bone, potash, pellet]);
        for (const fed of blend.beds) {
          const area = beds.find((each) => each.bedId === fed.bedId)?.area_m2 ?? 0;
          for (const nutrient of ['N', 'P2O5', 'K2O'] as const) {
            const range = neededRange(fed.need[nutrient], area, 0.15);
            const brought = fed.doses.reduce(
              (sum, dose) =>
                sum +
                dose.dose_kg *
                  ([meal, bone, potash, pellet].find((m) => m.materialId === dose.materialId)?.available[nutrient] ?? 0),
              0,
            );
            expect(brought).toBeCloseTo(fed.brings[nutrient], 9);
            if (fed.standing[nutrient] === 'met') {
              expect(brought).toBeGreaterThanOrEqual(range.least_kg - 1e-8);
              expect(brought).toBeLessThanOrEqual(range.most_kg + 1e-8);
            }
          }
        }
      }),
      { numRuns: 12 },
    );
  });
  test('doses add up to no more than stock and bags', () => {
    fc.assert(
      fc.property(anyBeds, (beds) => {
        const { blend } = blendOf(beds, [{ ...meal, stock_kg: 2 }, bone, potash]);
        for (const used of blend.materials) {
          const given = blend.beds.flatMap((fed) => fed.doses).filter((dose) => dose.materialId === used.materialId);
          expect(given.reduce((sum, dose) => sum + dose.dose_kg, 0)).toBeCloseTo(used.used_kg, 9);
          expect(used.left_kg).toBeGreaterThanOrEqual(-1e-8);
        }
      }),
      { numRuns: 12 },
    );
  });
  test('stock is used before anything is bought', () => {
    const { blend } = blendOf(
      [bed(1, 10, 10, 2, 2)],
      [
        { ...meal, stock_kg: 50 },
        { ...bone, stock_kg: 5 },
        { ...potash, stock_kg: 5 },
      ],
    );
    expect(blend.cost_minor).toBe(0);
  });
  test('says what cannot be met: no potash without a material that has it', () => {
    const { blend } = blendOf([bed(1, 4, 10, 0, 15)], [meal]);
    expect(blend.missing.map((each) => [each.nutrient, each.standing])).toContainEqual(['K2O', 'under']);
    expect(blend.leastMiss).toBeGreaterThan(0.5);
  });
  test('beds of one need by area fall into one group, whatever their size or order', () => {
    const beds = [bed(1, 2, 10, 5, 5), bed(2, 7, 10, 5, 5), bed(3, 3, 4, 5, 5)];
    expect(
      groupBeds(beds)
        .map((group) => group.beds.length)
        .sort(),
    ).toEqual([1, 2]);
    expect(groupBeds([...beds].reverse())).toEqual(groupBeds(beds));
  });
  test('a thousand unlike beds come down to eighty groups at most, each bed in one', () => {
    const beds = Array.from({ length: 1000 }, (_, at) => bed(at, 1 + (at % 9), 4 + (at % 37) / 2, (at % 23) / 2, (at % 31) / 2));
    const groups = groupBeds(beds);
    expect(groups.length).toBeLessThanOrEqual(80);
    expect(new Set(groups.flatMap((group) => group.beds.map((each) => each.bedId))).size).toBe(1000);
  });
  test('refuses no material, and no bed', () => {
    expect(faultPaths(() => blendOf([bed(1, 4, 10, 0, 15)], []))).toEqual(['materialIds']);
    expect(faultPaths(() => blendOf([], [meal]))).toEqual(['beds']);
  });
});
