import { loadMilpSolver } from '../../api/jobs/milp/highs.ts';
import { loadLpSolver } from '../../api/jobs/milp/open-lp.ts';
import { type BedNeed, groupBeds } from '../../planner/fertility/bed-groups.ts';
import { type FarmBlendInput, type FeedMaterial, farmBlendModel } from '../../planner/fertility/farm-blend.ts';
import { solveFarmBlend } from '../../planner/fertility/solve-farm-blend.ts';
import type { LpSolver } from '../../planner/lp.ts';
import type { MilpSolver } from '../../planner/milp.ts';
import type { Bench } from './bench.ts';

const BEDS = 300;
const KINDS = 25;
const silent = { doing: () => undefined, best: () => undefined, shouldStop: () => false };

/** Three hundred beds of twenty-five needs and seven sizes. */
function manyNeeds(): readonly BedNeed[] {
  return Array.from({ length: BEDS }, (_, at): BedNeed => {
    const kind = at % KINDS;
    const area_m2 = 0.5 + (at % 7);
    const need = (g_per_m2: number) => (g_per_m2 * area_m2) / 1000;
    return {
      bedId: `bed-${String(at).padStart(4, '0')}`,
      area_m2,
      need: { N: need(6 + (kind % 5) * 3), P2O5: need((kind % 4) * 4), K2O: need((kind % 6) * 4), Ca: 0, Mg: 0, S: 0 },
    };
  });
}

/** Sixteen materials, each in a small and a large package. */
function manyMaterials(): readonly FeedMaterial[] {
  return Array.from({ length: 16 }, (_, at): FeedMaterial => {
    const strength = 0.02 + (at % 4) * 0.03;
    const of = (kind: number) => (at % 3 === kind ? strength * 3 : strength / 6);
    return {
      materialId: `m${at}`,
      name: `material ${at}`,
      available: { N: of(0), P2O5: of(1), K2O: of(2), Ca: 0, Mg: 0, S: 0 },
      stock_kg: at % 5 === 0 ? 4 : 0,
      offers: [
        { offerId: `m${at}-small`, package_kg: 2.268, price_minor: 1100 + at * 37 },
        { offerId: `m${at}-large`, package_kg: 22.68, price_minor: 4900 + at * 190 },
      ],
      maxRate_kg_per_m2: 0.5,
      density_kg_per_m3: 500 + at * 40,
    };
  });
}

type Prepared = { readonly input: FarmBlendInput; readonly lp: LpSolver; readonly milp: MilpSolver };

export const benches: readonly Bench[] = [
  {
    name: 'Blend of 300 beds, 16 materials, whole packages and measures',
    prepare: async (): Promise<Prepared> => ({
      input: {
        groups: groupBeds(manyNeeds()),
        materials: manyMaterials(),
        nutrients: ['N', 'P2O5', 'K2O'],
        toleranceShare: 0.15,
      },
      lp: await loadLpSolver(() => false),
      milp: await loadMilpSolver(),
    }),
    run: ({ input, lp, milp }: Prepared) => solveFarmBlend(input, 0.25, { lp, milp }, silent),
    floor: ({ input, lp }: Prepared) => {
      const open = lp(farmBlendModel(input, null).model);
      const answer = open.solve('fresh');
      open.close();
      return answer;
    },
    rounds: 3,
    target_ms: 2000,
  },
];
