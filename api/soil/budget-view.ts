import { surplusNutrients } from '../../planner/fertility/nutrient-budget.ts';
import type { LoadedBudget } from './load-budgets.ts';
import { classOn } from './test-view.ts';

/** One bed's budget as a row of the table; masses in kilograms for the whole bed. */
export function budgetView(loaded: LoadedBudget) {
  const { bed, area_m2, test, budget, credits, plantings } = loaded;
  const by = (kind: string, nutrient: 'N' | 'P2O5' | 'K2O') =>
    credits.filter((each) => each.kind === kind).reduce((sum, each) => sum + each.brings[nutrient], 0);
  return {
    bedId: bed.bed.id,
    code: bed.bed.code,
    block: bed.block.code,
    area_m2,
    crops: [...new Set(plantings.map((each) => each.crop))].join(', '),
    testDate: test?.test.date ?? null,
    phosphorusClass: test === undefined ? '' : (classOn(test, 'P')?.class ?? ''),
    potassiumClass: test === undefined ? '' : (classOn(test, 'K')?.class ?? ''),
    needN_kg: budget.need.N,
    needP2O5_kg: budget.need.P2O5,
    needK2O_kg: budget.need.K2O,
    supplyN_kg: budget.supply.N,
    supplyP2O5_kg: budget.supply.P2O5,
    supplyK2O_kg: budget.supply.K2O,
    feedN_kg: budget.toFeed.N,
    feedP2O5_kg: budget.toFeed.P2O5,
    feedK2O_kg: budget.toFeed.K2O,
    surplus: surplusNutrients(budget).join(', '),
    parts: (['organic-matter', 'earlier-dressings', 'top-ups', 'legumes', 'this-season', 'water'] as const).map((kind) => ({
      kind,
      n_kg: by(kind, 'N'),
      p2o5_kg: by(kind, 'P2O5'),
      k2o_kg: by(kind, 'K2O'),
    })),
  };
}

export type BudgetView = ReturnType<typeof budgetView>;
