import type { FarmDb } from '../../db/file/open-farm.ts';
import { materialFacts } from '../../db/repositories/stock.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { unpricedNeeds } from '../../planner/orders/unpriced-needs.ts';
import { problemOfSeason } from './problem-of-season.ts';

/** A material that the season wants and that no price is known for, with how much is still to be had. */
export type UnpricedMaterialNeed = {
  readonly materialId: string;
  readonly material: string;
  readonly baseUnit: string;
  readonly amount: number;
  /** How many needs of it there are. */
  readonly needs: number;
  /** The keys of those needs. */
  readonly keys: readonly string[];
};

/** What of the season's needs has no price: the list and the budget are at least what they say. @throws Refusal when the season is gone */
export function unpricedOfSeason(db: FarmDb, seasonId: string, today: IsoDate): readonly UnpricedMaterialNeed[] {
  const { problem, single, needs } = problemOfSeason(db, seasonId, today, { mostSuppliers: null, inTime: false });
  const stock = new Map(problem.stock.map((each) => [each.materialId, each.amount]));
  const found = new Map(unpricedNeeds(single, stock, problem.offers).map((each) => [each.needId, each.amount]));
  const facts = materialFacts(db);
  const open = needs.flatMap((need) => {
    const amount = found.get(need.key);
    return amount === undefined ? [] : [{ key: need.key, materialId: need.materialId, amount }];
  });
  return [...Map.groupBy(open, (each) => each.materialId)]
    .map(
      ([materialId, of]): UnpricedMaterialNeed => ({
        materialId,
        material: facts.get(materialId)?.name ?? '',
        baseUnit: facts.get(materialId)?.baseUnit ?? 'count',
        amount: of.reduce((sum, each) => sum + each.amount, 0),
        needs: of.length,
        keys: of.map((each) => each.key),
      }),
    )
    .toSorted((a, b) => a.material.localeCompare(b.material));
}

/** How many needs have no price, and of what; empty where every need has one. */
export function saysUnpriced(unpriced: readonly UnpricedMaterialNeed[]): string {
  const needs = unpriced.reduce((sum, each) => sum + each.needs, 0);
  return needs === 0
    ? ''
    : `No price is known for ${needs} ${needs === 1 ? 'need' : 'needs'}: ${unpriced.map((each) => each.material).join(', ')}. It comes to at least what stands here.`;
}
