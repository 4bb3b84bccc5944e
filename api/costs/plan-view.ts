import { earningRows } from '../../planner/costs/earning-rows.ts';
import { standOf } from '../../planner/costs/stand-figures.ts';
import { type RevenueVariance, revenueVariance } from '../../planner/costs/variance.ts';
import type { SeasonLedger } from './season-ledger.ts';

/** A crop's income against its plan, with the causes in parts that add up; amounts in the crop's own unit. */
export type PlanRow = RevenueVariance & {
  readonly cropId: string;
  readonly crop: string;
  readonly unit: string;
  readonly plannedAmount: number;
  readonly soldAmount: number;
  readonly cost_minor: number;
  readonly failed: number;
};

/** Every crop of the season against its plan. Plantings without a planned yield or price count with what they brought. */
export function planView(ledger: SeasonLedger): readonly PlanRow[] {
  const areaOf = new Map<string, number>();
  for (const stay of ledger.stays) areaOf.set(stay.plantingId, (areaOf.get(stay.plantingId) ?? 0) + stay.area_m2);
  const costs = new Map(
    earningRows(ledger.postings, ledger.incomes, { of: (_, plantingId) => plantingId }).map((row) => [row.id, row]),
  );
  const crops = Map.groupBy(ledger.plantings, (each) => `${each.cropId} ${each.yieldUnit}`);
  return [...crops.values()]
    .map((plantings): PlanRow => {
      const sum = (of: (each: (typeof plantings)[number]) => number): number =>
        plantings.reduce((all, each) => all + of(each), 0);
      const area = (each: (typeof plantings)[number]) => areaOf.get(each.plantingId) ?? 0;
      const sold = (each: (typeof plantings)[number]) => ledger.soldInUnit.get(each.plantingId) ?? 0;
      const income = (each: (typeof plantings)[number]) => costs.get(each.plantingId)?.income_minor ?? 0;
      const planned = (each: (typeof plantings)[number]) => each.yieldTypical ?? sold(each);
      const price = (each: (typeof plantings)[number]) =>
        each.price_minor ?? (sold(each) > 0 ? Math.max(0, income(each) / sold(each)) : 0);
      const grown = plantings.filter((each) => each.state !== 'failed');
      const variance = revenueVariance(
        standOf(
          sum(area),
          sum(planned),
          sum((each) => planned(each) * price(each)),
        ),
        standOf(
          grown.reduce((all, each) => all + area(each), 0),
          sum(sold),
          Math.max(0, sum(income)),
        ),
      );
      const first = plantings[0];
      return {
        ...variance,
        cropId: first?.cropId ?? '',
        crop: first?.crop ?? '',
        unit: first?.yieldUnit ?? '',
        plannedAmount: sum(planned),
        soldAmount: sum(sold),
        cost_minor: sum((each) => costs.get(each.plantingId)?.cost_minor ?? 0),
        failed: plantings.length - grown.length,
      };
    })
    .toSorted((a, b) => a.sum_minor - b.sum_minor || a.crop.localeCompare(b.crop));
}
