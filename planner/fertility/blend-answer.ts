import type { MilpAnswer } from '../milp.ts';
import { bedDoses, type FedBed } from './bed-doses.ts';
import { type FarmBlendInput, type FarmBlendModel, groupRates, type LimitPrice, totalMiss } from './farm-blend.ts';
import type { Nutrient } from './nutrients.ts';

export type BoughtPackages = {
  readonly materialId: string;
  readonly name: string;
  readonly offerId: string;
  readonly packages: number;
  readonly bought_kg: number;
  readonly cost_minor: number;
};

export type UsedMaterial = {
  readonly materialId: string;
  readonly name: string;
  readonly used_kg: number;
  readonly fromStock_kg: number;
  readonly bought_kg: number;
  readonly left_kg: number;
};

/** The farm's blend: what each bed gets, what is bought for it, what binds and what is missing. */
export type FarmBlend = {
  /** `best`: proven to be within 0.5 % of the least cost. `best-so-far`: stopped before. */
  readonly state: 'best' | 'best-so-far';
  readonly beds: readonly FedBed[];
  readonly packages: readonly BoughtPackages[];
  readonly materials: readonly UsedMaterial[];
  readonly cost_minor: number;
  readonly prices: readonly LimitPrice[];
  /** Nutrients that these materials cannot bring within the tolerance, by how many beds and how much in all. */
  readonly missing: readonly {
    readonly nutrient: Nutrient;
    readonly standing: 'under' | 'over';
    readonly beds: number;
    readonly miss_kg: number;
  }[];
  readonly groups: number;
  /** Sum of misses as shares of the needs, from the first solve: 0 where every need can be met. */
  readonly leastMiss: number;
};

/** Reads a solved model into doses in whole measures and whole packages. `null` while there is no plan. */
export function readFarmBlend(
  input: FarmBlendInput,
  built: FarmBlendModel,
  answer: Pick<Extract<MilpAnswer, { values: Float64Array }>, 'values'>,
  scoop_L: number,
  prices: readonly LimitPrice[],
  state: FarmBlend['state'],
): FarmBlend {
  const { values } = answer;
  const bought = input.materials.map((material, i) =>
    material.offers.map((offer, o) => ({ offer, packages: Math.max(0, Math.round(values[built.packages[i]?.[o] ?? 0] ?? 0)) })),
  );
  const supply_kg = input.materials.map((material, i) =>
    (bought[i] ?? []).reduce((sum, each) => sum + each.packages * each.offer.package_kg, material.stock_kg),
  );
  const beds = bedDoses(input, groupRates(input, built, values), supply_kg, scoop_L);
  const packages = input.materials.flatMap((material, i) =>
    (bought[i] ?? []).flatMap(({ offer, packages: count }): BoughtPackages[] =>
      count === 0
        ? []
        : [
            {
              materialId: material.materialId,
              name: material.name,
              offerId: offer.offerId,
              packages: count,
              bought_kg: count * offer.package_kg,
              cost_minor: count * offer.price_minor,
            },
          ],
    ),
  );
  return {
    state,
    beds,
    packages,
    materials: usedMaterials(input, beds, packages),
    cost_minor: packages.reduce((sum, each) => sum + each.cost_minor, 0),
    prices,
    missing: missingOf(input, beds),
    groups: input.groups.length,
    leastMiss: totalMiss(built, values),
  };
}

function usedMaterials(
  input: FarmBlendInput,
  beds: readonly FedBed[],
  packages: readonly BoughtPackages[],
): readonly UsedMaterial[] {
  const used = new Map<string, number>();
  for (const bed of beds)
    for (const dose of bed.doses) used.set(dose.materialId, (used.get(dose.materialId) ?? 0) + dose.dose_kg);
  return input.materials.flatMap((material): UsedMaterial[] => {
    const used_kg = used.get(material.materialId) ?? 0;
    const bought_kg = packages.filter((p) => p.materialId === material.materialId).reduce((sum, p) => sum + p.bought_kg, 0);
    if (used_kg === 0 && bought_kg === 0) return [];
    const fromStock_kg = Math.min(material.stock_kg, used_kg);
    return [
      {
        materialId: material.materialId,
        name: material.name,
        used_kg,
        fromStock_kg,
        bought_kg,
        left_kg: material.stock_kg + bought_kg - used_kg,
      },
    ];
  });
}

function missingOf(input: FarmBlendInput, beds: readonly FedBed[]): FarmBlend['missing'] {
  return input.nutrients.flatMap((nutrient) =>
    (['under', 'over'] as const).flatMap((standing) => {
      const hit = beds.filter((bed) => bed.standing[nutrient] === standing);
      if (hit.length === 0) return [];
      const miss_kg = hit.reduce((sum, bed) => sum + Math.abs(bed.brings[nutrient] - bed.need[nutrient]), 0);
      return [{ nutrient, standing, beds: hit.length, miss_kg }];
    }),
  );
}
