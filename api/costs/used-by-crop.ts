import type { FarmDb } from '../../db/file/open-farm.ts';
import { groundOf } from '../../planner/costs/ground.ts';
import { type CostKind, spreadCharges } from '../../planner/costs/spread-charges.ts';
import { groundOfSeason, spendingOf, spentOnGround, weightsOf } from './season-parts.ts';

const isUsed = ({ kind }: { readonly kind: CostKind }): boolean => kind === 'seed' || kind === 'inputs' || kind === 'packing';

/** Seed, inputs and packing of a season by crop, and the ground that each crop took in it: the same as in Costs, without all else. */
export function usedByCrop(db: FarmDb, seasonId: string) {
  const ground = groundOfSeason(db, seasonId);
  const charges = spendingOf(db, seasonId).byWork.filter(isUsed);
  const byWork = charges.length === 0 ? [] : spreadCharges({ ...ground, plantings: weightsOf(db, seasonId), charges });
  const postings = [...spentOnGround(db, seasonId).filter(isUsed), ...byWork];
  const uses = [...groundOf(ground.beds, ground.stays).values()].flatMap((bed) => bed.uses);
  const cropOf = new Map(ground.plantings.map(({ plantingId, cropId }) => [plantingId, cropId]));
  const sumsOf = <Part extends { readonly plantingId: string | null }>(parts: readonly Part[], of: (part: Part) => number) => {
    const sums = new Map<string, number>();
    for (const part of parts) {
      const cropId = part.plantingId === null ? undefined : cropOf.get(part.plantingId);
      if (cropId !== undefined) sums.set(cropId, (sums.get(cropId) ?? 0) + of(part));
    }
    return sums;
  };
  return {
    cost_minor: sumsOf(postings, (posting) => posting.amount_minor),
    area_m2: sumsOf(uses, (use) => use.area_m2),
  };
}
