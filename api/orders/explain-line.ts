import type { FarmDb } from '../../db/file/open-farm.ts';
import { stockBalances } from '../../db/repositories/bed-history.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { explainOrderLine } from '../../planner/orders/line-working.ts';
import { tradeUnit } from '../../planner/units/trade-unit.ts';
import type { Working } from '../../planner/working.ts';
import { Refusal } from '../errors.ts';
import { goodsToCome } from './goods-to-come.ts';
import { needsOfSeason } from './needs-of-season.ts';
import { shoppingView } from './shopping-view.ts';

/** The working of one line of the shopping list. @throws Refusal when the line is gone */
export function explainLine(db: FarmDb, seasonId: string, shoppingLineId: string, today: IsoDate): Working {
  const rows = shoppingView(db, seasonId, new Map()).flatMap((list) => list.rows);
  const row = rows.find((each) => each.shoppingLineId === shoppingLineId);
  if (row === undefined) throw new Refusal({ code: 'not-found', what: 'line' });
  const others = rows.filter((each) => each.materialId === row.materialId && each.shoppingLineId !== shoppingLineId);
  return explainOrderLine({
    material: row.material,
    package: row.offer,
    unit: row.baseUnit === 'count' ? '' : tradeUnit(row.baseUnit),
    needs: needsOfSeason(db, seasonId, today).needs.filter((need) => need.materialId === row.materialId),
    onHand: stockBalances(db).get(row.materialId) ?? 0,
    onTheWay: goodsToCome(db).get(row.materialId)?.onTheWay ?? 0,
    otherPackages: others.reduce((sum, each) => sum + each.amount, 0),
    packageAmount: row.packageAmount,
    packages: row.packages,
    price_minor: row.price_minor,
  });
}
