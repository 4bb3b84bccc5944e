import type { FarmDb } from '../../db/file/open-farm.ts';
import { openPurchaseLines } from '../../db/repositories/stock.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { goodsOnTheWay, type OnTheWay } from '../../planner/orders/on-the-way.ts';

/** What is ordered and not here yet, by material: it serves the needs as stock does, and is not bought again. */
export const goodsToCome = (db: FarmDb): ReadonlyMap<string, OnTheWay> =>
  goodsOnTheWay(openPurchaseLines(db).map((line) => ({ ...line, orderedDate: line.orderedDate as IsoDate })));
