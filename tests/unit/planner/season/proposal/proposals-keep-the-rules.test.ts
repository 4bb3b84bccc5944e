import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkPlan } from '../../../../../planner/season/check-plan.ts';
import { evaluatePlan } from '../../../../../planner/season/optimise/evaluate.ts';
import { optimiseSeason } from '../../../../../planner/season/optimise/optimise.ts';
import type { PlanPlanting } from '../../../../../planner/season/plan.ts';
import { buildInstance, presentInstance } from '../../../../../planner/season/proposal/build-instance.ts';
import { comparePlans, planKey, proposedPlantings } from '../../../../../planner/season/proposal/compare-plans.ts';
import type { FarmSeason } from '../../../../../planner/season/proposal/farm-season.ts';
import { ruledOut } from '../../../../../planner/season/proposal/ruled-out.ts';
import { aFarmSeason } from '../../../../builders/a-farm-season.ts';

const search = { seed: 1, moves: 40, gapGoal: 0, solver: null, shouldStop: () => false };

function proposed(farm: FarmSeason) {
  const built = buildInstance(farm);
  const found = optimiseSeason(built.instance, search);
  return { built, found, plantings: proposedPlantings(planKey(farm, built), found.plan) };
}

describe('proposals over random farms', () => {
  test('pass the same checker as the season board, beside everything that stands', () => {
    let planted = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), (seed) => {
        const farm = aFarmSeason(seed);
        const { plantings } = proposed(farm);
        planted += plantings.length;
        const cropOf = new Map(farm.crops.map((crop) => [crop.needs.cropId, crop]));
        const fresh = plantings.map((each): PlanPlanting => {
          const crop = cropOf.get(each.cropId);
          if (crop === undefined) throw new Error('a crop from nowhere');
          const span = { bedId: each.bedId, fromShare: each.fromShare, toShare: each.toShare, plants: 1, mostPlants: null };
          return { id: each.key, crop: crop.needs, raised: crop.timing.method === 'transplant', ...each.dates, spans: [span] };
        });
        const ids = new Set(fresh.map(({ id }) => id));
        expect(ids.size).toBe(fresh.length);
        const findings = checkPlan({ beds: farm.beds, plantings: [...farm.plantings, ...fresh], rules: farm.rules });
        const ours = findings.filter((each) => ids.has(each.plantingId) || (each.otherId !== null && ids.has(each.otherId)));
        expect(ours.filter(({ weight }) => weight === 'clash' || weight === 'barred')).toEqual([]);
        expect(ours.filter(({ code }) => code.startsWith('frost'))).toEqual([]);
        for (const { inBed, sow } of fresh) expect((sow ?? inBed) >= farm.today).toBe(true);
      }),
      { numRuns: 40 },
    );
    expect(planted).toBeGreaterThan(200);
  });

  test('accepted, they earn by the present plan’s measure what they promised', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const farm = aFarmSeason(seed);
      const { built, found, plantings } = proposed(farm);
      const accepted = plantings.map((each) => ({
        id: each.key,
        crop: (farm.crops.find(({ needs }) => needs.cropId === each.cropId) ?? farm.crops[0])?.needs as PlanPlanting['crop'],
        raised: false,
        ...each.dates,
        spans: [{ bedId: each.bedId, fromShare: each.fromShare, toShare: each.toShare, plants: 0, mostPlants: null }],
        isFree: true,
      }));
      const instance = presentInstance(farm, built, [...farm.plantings, ...accepted]);
      expect(evaluatePlan(instance, []).margin_minor).toBeCloseTo(found.margin_minor, 3);
    }
  });

  test('what rules beds out agrees with where the crop may stand', () => {
    const farm = aFarmSeason(7, { beds: 20 });
    const { instance } = buildInstance({ ...farm, plantings: [], beds: farm.beds.map((bed) => ({ ...bed, splitAt: [] })) });
    ruledOut(farm).forEach(({ fit }, c) => {
      const family = instance.crops[c]?.family ?? -1;
      expect(instance.units.filter((unit) => unit.cropsFit.includes(c) && !unit.barredFamilies.includes(family))).toHaveLength(
        fit,
      );
    });
  });
});

describe('a proposal beside the present plan', () => {
  test('a plan compared with itself stays as it is; taken away all goes; with nothing before all is new', () => {
    const farm = aFarmSeason(4);
    const { plantings } = proposed(farm);
    const present = plantings.map((each) => ({
      plantingId: each.key,
      cropId: each.cropId,
      bedId: each.bedId,
      fromShare: each.fromShare,
      toShare: each.toShare,
      inBed: each.dates.inBed,
      free: each.dates.free,
    }));
    expect(comparePlans(present, plantings).every(({ kind }) => kind === 'stays')).toBe(true);
    expect(comparePlans(present, []).every(({ kind }) => kind === 'goes')).toBe(true);
    expect(comparePlans([], plantings).every(({ kind }) => kind === 'new')).toBe(true);
    expect(plantings.length).toBeGreaterThan(3);
  });

  test('every present and every proposed planting appears in exactly one line', () => {
    const farm = aFarmSeason(9);
    const { plantings } = proposed(farm);
    const { plantings: others } = proposed({ ...farm, wage_minor_per_h: 4000 });
    const present = others.map((each) => ({
      plantingId: `old ${each.key}`,
      cropId: each.cropId,
      bedId: each.bedId,
      fromShare: each.fromShare,
      toShare: each.toShare,
      inBed: each.dates.inBed,
      free: each.dates.free,
    }));
    const moves = comparePlans(present, plantings);
    expect(moves.flatMap((move) => (move.kind === 'goes' ? [] : [move.proposed.key])).sort()).toEqual(
      plantings.map(({ key }) => key).sort(),
    );
    expect(moves.flatMap((move) => (move.kind === 'new' ? [] : [move.present.plantingId])).sort()).toEqual(
      present.map(({ plantingId }) => plantingId).sort(),
    );
  });
});
