import { and, asc, desc, eq, isNull, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { bed, bedFill, bedMeasure, bedPart, stockpile } from '../schema/beds.ts';
import { material } from '../schema/materials.ts';
import { stockMove } from '../schema/stock.ts';
import { insertAll } from './insert-all.ts';

export type NewPart = typeof bedPart.$inferInsert;
export type NewFill = typeof bedFill.$inferInsert;
export type NewStockMove = typeof stockMove.$inferInsert;

/** Every part a bed has or had, the oldest first. */
export function partsOfBed(db: FarmDb, bedId: string) {
  return db
    .select({
      partId: bedPart.id,
      materialId: bedPart.materialId,
      name: material.name,
      baseUnit: material.baseUnit,
      amount: bedPart.amount,
      price_minor: bedPart.price_minor,
      unpricedAmount: bedPart.unpricedAmount,
      life_years: bedPart.life_years,
      salvageShare: bedPart.salvageShare,
      installedDate: bedPart.installedDate,
      removedDate: bedPart.removedDate,
      reason: bedPart.reason,
    })
    .from(bedPart)
    .innerJoin(material, eq(material.id, bedPart.materialId))
    .where(eq(bedPart.bedId, bedId))
    .orderBy(asc(bedPart.installedDate), asc(bedPart.id))
    .all();
}

/** Parts that stand in beds in use, with what is needed to tell when they are due. */
export function partsInUse(db: FarmDb) {
  return db
    .select({
      bedId: bedPart.bedId,
      code: bed.code,
      materialId: bedPart.materialId,
      name: material.name,
      amount: bedPart.amount,
      price_minor: bedPart.price_minor,
      life_years: bedPart.life_years,
      installedDate: bedPart.installedDate,
    })
    .from(bedPart)
    .innerJoin(bed, eq(bed.id, bedPart.bedId))
    .innerJoin(material, eq(material.id, bedPart.materialId))
    .where(and(isNull(bedPart.removedDate), isNull(bed.retiredDate)))
    .orderBy(asc(bed.code), asc(bedPart.id))
    .all();
}

export function partOfId(db: FarmDb, partId: string) {
  return db.select().from(bedPart).where(eq(bedPart.id, partId)).get();
}

export function addParts(db: FarmDb, rows: readonly NewPart[]): void {
  insertAll(db, bedPart, rows);
}

/** Ends a part's time in its bed. */
export function removePart(db: FarmDb, partId: string, date: string, reason: string): void {
  db.update(bedPart).set({ removedDate: date, reason }).where(eq(bedPart.id, partId)).run();
}

/** Ends all parts that still stand in a bed. */
export function removePartsOfBed(db: FarmDb, bedId: string, date: string, reason: string): void {
  db.update(bedPart)
    .set({ removedDate: date, reason })
    .where(and(eq(bedPart.bedId, bedId), isNull(bedPart.removedDate)))
    .run();
}

export function fillsOfBed(db: FarmDb, bedId: string) {
  return db
    .select({
      fillId: bedFill.id,
      date: bedFill.date,
      kind: bedFill.kind,
      materialId: bedFill.materialId,
      name: material.name,
      loose_L: bedFill.loose_L,
      cost_minor: bedFill.cost_minor,
      priced_minor: bedFill.priced_minor,
      unpriced_L: bedFill.unpriced_L,
    })
    .from(bedFill)
    .innerJoin(material, eq(material.id, bedFill.materialId))
    .where(eq(bedFill.bedId, bedId))
    .orderBy(asc(bedFill.date), asc(bedFill.position))
    .all();
}

export function addFills(db: FarmDb, rows: readonly NewFill[]): void {
  insertAll(db, bedFill, rows);
}

/** For each bed: when it was first filled and last filled or topped up, and what its fill has cost. */
export function fillDates(db: FarmDb) {
  return db
    .select({
      bedId: bedFill.bedId,
      firstDate: sql<string | null>`min(case when ${bedFill.kind} = 'first-fill' then ${bedFill.date} end)`,
      lastDate: sql<string>`max(${bedFill.date})`,
      cost_minor: sql<number>`sum(${bedFill.cost_minor})`,
    })
    .from(bedFill)
    .groupBy(bedFill.bedId)
    .all();
}

export function measuresOfBed(db: FarmDb, bedId: string) {
  return db.select().from(bedMeasure).where(eq(bedMeasure.bedId, bedId)).orderBy(desc(bedMeasure.date)).all();
}

/** The newest measured drop of each bed. */
export function latestDrops(db: FarmDb): readonly { readonly bedId: string; readonly date: string; readonly drop_m: number }[] {
  return db.all<{ bedId: string; date: string; drop_m: number }>(sql`
    select ${bedMeasure.bedId} as bedId, ${bedMeasure.date} as date, ${bedMeasure.drop_m} as drop_m from ${bedMeasure}
    join (select bed_id, max(date) as newest from bed_measure group by bed_id) latest
      on latest.bed_id = ${bedMeasure.bedId} and latest.newest = ${bedMeasure.date}
  `);
}

export function addMeasures(db: FarmDb, rows: readonly (typeof bedMeasure.$inferInsert)[]): void {
  insertAll(db, bedMeasure, rows);
}

/** What lies in stock of each material, in its base unit: the sum of its movements. */
export function stockBalances(db: FarmDb): ReadonlyMap<string, number> {
  const rows = db
    .select({ materialId: stockMove.materialId, balance: sql<number>`sum(${stockMove.amount})` })
    .from(stockMove)
    .groupBy(stockMove.materialId)
    .all();
  return new Map(rows.map((row) => [row.materialId, row.balance]));
}

export function addStockMoves(db: FarmDb, rows: readonly NewStockMove[]): void {
  insertAll(db, stockMove, rows);
}

export function stockpilesOfFarm(db: FarmDb) {
  return db
    .select({
      stockpileId: stockpile.id,
      name: stockpile.name,
      materialId: stockpile.materialId,
      material: material.name,
      shape: stockpile.shape,
      length_m: stockpile.length_m,
      width_m: stockpile.width_m,
      height_m: stockpile.height_m,
      measuredDate: stockpile.measuredDate,
    })
    .from(stockpile)
    .innerJoin(material, eq(material.id, stockpile.materialId))
    .orderBy(asc(stockpile.name), asc(stockpile.id))
    .all();
}

export function removeStockpile(db: FarmDb, stockpileId: string): void {
  db.delete(stockpile).where(eq(stockpile.id, stockpileId)).run();
}

export function addStockpile(db: FarmDb, row: typeof stockpile.$inferInsert): void {
  db.insert(stockpile).values(row).run();
}
