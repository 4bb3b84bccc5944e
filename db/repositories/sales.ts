import { and, asc, desc, eq, gte, inArray, lte, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { crop } from '../schema/crops.ts';
import { harvestLot, sale, saleLine } from '../schema/harvests.ts';
import { demand, outlet, planting, price } from '../schema/plantings.ts';
import { insertAll } from './insert-all.ts';

export type NewSaleLine = typeof saleLine.$inferInsert;

/** Lines of sales between two days, the newest first, at most `most`. */
export function saleLog(db: FarmDb, from: string, to: string, most: number) {
  return db
    .select({
      saleLineId: saleLine.id,
      saleId: sale.id,
      date: sale.date,
      outlet: outlet.name,
      buyer: sale.buyer,
      documentNumber: sale.documentNumber,
      crop: crop.name,
      lot: harvestLot.code,
      amount: saleLine.amount,
      unit: saleLine.unit,
      price_minor: saleLine.price_minor,
      paid_minor: saleLine.paid_minor,
      outcome: saleLine.outcome,
    })
    .from(saleLine)
    .innerJoin(sale, eq(sale.id, saleLine.saleId))
    .innerJoin(outlet, eq(outlet.id, sale.outletId))
    .leftJoin(harvestLot, eq(harvestLot.id, saleLine.lotId))
    .leftJoin(planting, eq(planting.id, saleLine.plantingId))
    .leftJoin(crop, eq(crop.id, planting.cropId))
    .where(and(gte(sale.date, from), lte(sale.date, to)))
    .orderBy(desc(sale.date), asc(sale.id), asc(saleLine.id))
    .limit(most)
    .all();
}

export function addSale(db: FarmDb, row: typeof sale.$inferInsert, lines: readonly NewSaleLine[]): void {
  db.insert(sale).values(row).run();
  insertAll(db, saleLine, lines);
}

export function removeSaleLines(db: FarmDb, saleLineIds: readonly string[]): void {
  for (const id of saleLineIds) db.delete(saleLine).where(eq(saleLine.id, id)).run();
  db.run(sql`delete from ${sale} where ${sale.id} not in (select ${saleLine.saleId} from ${saleLine})`);
}

/** Sales a day at an outlet, to number their documents. */
export function salesOnDay(db: FarmDb, date: string): number {
  return db.select({ id: sale.id }).from(sale).where(eq(sale.date, date)).all().length;
}

/** Harvests in lots, for giving their income to plantings. */
export function lotIdsOfCodes(db: FarmDb, codes: readonly string[]) {
  return codes.length === 0
    ? []
    : db
        .select({ lotId: harvestLot.id, code: harvestLot.code })
        .from(harvestLot)
        .where(inArray(harvestLot.code, [...codes]))
        .all();
}

export function outletsOfFarm(db: FarmDb) {
  return db.select().from(outlet).orderBy(asc(outlet.name)).all();
}

/** The price list: each crop and unit at each outlet from a day on. */
export function priceList(db: FarmDb) {
  return db
    .select({
      priceId: price.id,
      outletId: price.outletId,
      outlet: outlet.name,
      cropId: price.cropId,
      crop: crop.name,
      unit: price.unit,
      grade: price.grade,
      price_minor: price.price_minor,
      fromDate: price.fromDate,
    })
    .from(price)
    .innerJoin(outlet, eq(outlet.id, price.outletId))
    .innerJoin(crop, eq(crop.id, price.cropId))
    .orderBy(asc(crop.name), asc(outlet.name), asc(price.unit), desc(price.fromDate))
    .all();
}

/** The price in force for a crop at an outlet on a day, in a unit. */
export function priceFor(
  db: FarmDb,
  of: { outletId: string; cropId: string; unit: string; grade: string; date: string },
): number | null {
  const row = db
    .select({ price_minor: price.price_minor })
    .from(price)
    .where(
      and(
        eq(price.outletId, of.outletId),
        eq(price.cropId, of.cropId),
        eq(price.unit, of.unit),
        eq(price.grade, of.grade),
        lte(price.fromDate, of.date),
      ),
    )
    .orderBy(desc(price.fromDate))
    .limit(1)
    .get();
  return row?.price_minor ?? null;
}

export function addPrices(db: FarmDb, rows: readonly (typeof price.$inferInsert)[]): void {
  insertAll(db, price, rows);
}

export function setPrice(db: FarmDb, priceId: string, price_minor: number): void {
  db.update(price).set({ price_minor }).where(eq(price.id, priceId)).run();
}

/** What outlets take each week on a day: standing orders. */
export function standingOrders(db: FarmDb, date: string) {
  return db
    .select({
      demandId: demand.id,
      outletId: demand.outletId,
      outlet: outlet.name,
      cropId: demand.cropId,
      crop: crop.name,
      amountPerWeek: demand.amountPerWeek,
      unit: demand.unit,
      price_minor: demand.price_minor,
    })
    .from(demand)
    .innerJoin(outlet, eq(outlet.id, demand.outletId))
    .innerJoin(crop, eq(crop.id, demand.cropId))
    .where(and(eq(demand.kind, 'standing'), lte(demand.fromDate, date), gte(demand.toDate, date)))
    .orderBy(asc(outlet.name), asc(crop.name))
    .all();
}

/** What each outlet bought of each crop between two days, in the unit it was sold in. */
export function soldBetween(db: FarmDb, from: string, to: string) {
  return db
    .select({
      outletId: sale.outletId,
      cropId: planting.cropId,
      unit: saleLine.unit,
      amount: sql<number>`sum(${saleLine.amount})`,
    })
    .from(saleLine)
    .innerJoin(sale, eq(sale.id, saleLine.saleId))
    .innerJoin(planting, eq(planting.id, saleLine.plantingId))
    .where(and(gte(sale.date, from), lte(sale.date, to), eq(saleLine.outcome, 'sold')))
    .groupBy(sale.outletId, planting.cropId, saleLine.unit)
    .all();
}
