import { and, asc, eq, isNull } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { material } from '../schema/materials.ts';
import { linePart, waterLine } from '../schema/water.ts';

const columns = {
  linePartId: linePart.id,
  lineId: linePart.lineId,
  materialId: linePart.materialId,
  name: material.name,
  baseUnit: material.baseUnit,
  amount: linePart.amount,
  price_minor: linePart.price_minor,
  unpricedAmount: linePart.unpricedAmount,
  life_years: linePart.life_years,
  installedDate: linePart.installedDate,
  removedDate: linePart.removedDate,
  reason: linePart.reason,
};

/** The parts of a line that wear, those that are gone included. */
export function partsOfLine(db: FarmDb, lineId: string) {
  return db
    .select(columns)
    .from(linePart)
    .innerJoin(material, eq(material.id, linePart.materialId))
    .where(eq(linePart.lineId, lineId))
    .orderBy(asc(material.name), asc(linePart.installedDate), asc(linePart.id))
    .all();
}

/** Parts that are in all lines now, with the line's name. */
export function linePartsInUse(db: FarmDb) {
  return db
    .select({ ...columns, line: waterLine.name })
    .from(linePart)
    .innerJoin(material, eq(material.id, linePart.materialId))
    .innerJoin(waterLine, eq(waterLine.id, linePart.lineId))
    .where(isNull(linePart.removedDate))
    .orderBy(asc(waterLine.name), asc(material.name), asc(linePart.id))
    .all();
}

export function linePartOfId(db: FarmDb, linePartId: string) {
  return db.select().from(linePart).where(eq(linePart.id, linePartId)).get();
}

export function addLinePart(db: FarmDb, row: typeof linePart.$inferInsert): void {
  db.insert(linePart).values(row).run();
}

/** Ends a part's time in its line. */
export function endLinePart(db: FarmDb, linePartId: string, date: string, reason: string): void {
  db.update(linePart)
    .set({ removedDate: date, reason })
    .where(and(eq(linePart.id, linePartId), isNull(linePart.removedDate)))
    .run();
}

/** Takes an entry back that was never a part of the line. */
export function removeLinePart(db: FarmDb, linePartId: string): void {
  db.delete(linePart).where(eq(linePart.id, linePartId)).run();
}
