import type { FarmDb } from '../../db/file/open-farm.ts';
import { purchaseLines, seasonsOfPurchases } from '../../db/repositories/stock.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import type { Spending } from '../../planner/orders/season-budget.ts';

/** All that was ever bought as spending: what came and stayed is spent, what is still to come is committed; fees and tax apart. */
export function spendingOfFarm(db: FarmDb): readonly Spending[] {
  const lines = purchaseLines(db, null);
  const seasons = seasonsOfPurchases(db);
  const of = (purchaseId: string, orderedDate: string) => ({
    date: orderedDate as IsoDate,
    seasonId: seasons.get(purchaseId) ?? null,
  });
  const goods = lines.flatMap((line): readonly Spending[] => {
    const common = { category: line.category, ...of(line.purchaseId, line.orderedDate) };
    const here = Math.round((line.receivedPackages - line.returnedPackages) * line.price_minor);
    const open = Math.round(Math.max(0, line.packages - line.receivedPackages) * line.price_minor);
    return [
      { ...common, amount_minor: here, received: true },
      { ...common, amount_minor: open, received: false },
    ];
  });
  const charges = [...Map.groupBy(lines, (line) => line.purchaseId).values()].flatMap((own): readonly Spending[] => {
    const [line] = own;
    if (line === undefined) return [];
    return [
      {
        category: 'delivery and tax',
        amount_minor: line.delivery_minor + line.tax_minor,
        received: own.some((each) => each.receivedPackages > 0),
        ...of(line.purchaseId, line.orderedDate),
      },
    ];
  });
  return [...goods, ...charges].filter((each) => each.amount_minor !== 0);
}
