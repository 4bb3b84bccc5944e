import { and, asc, eq, isNull, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { crop, cropValue, variety } from '../schema/crops.ts';

export type CropRecord = typeof crop.$inferSelect;
export type CropValueRecord = typeof cropValue.$inferSelect;
export type VarietyRecord = typeof variety.$inferSelect;

export function cropsOfFarm(db: FarmDb): readonly CropRecord[] {
  return db.select().from(crop).orderBy(asc(crop.name)).all();
}

export function cropOfId(db: FarmDb, cropId: string): CropRecord | undefined {
  return db.select().from(crop).where(eq(crop.id, cropId)).get();
}

/** Every fact of every crop, or of one. */
export function cropValues(db: FarmDb, cropId?: string): readonly CropValueRecord[] {
  const all = db.select().from(cropValue);
  return cropId === undefined ? all.all() : all.where(eq(cropValue.cropId, cropId)).orderBy(asc(cropValue.name)).all();
}

export function varietiesOfFarm(db: FarmDb): readonly VarietyRecord[] {
  return db.select().from(variety).orderBy(asc(variety.name)).all();
}

export function addCrop(db: FarmDb, row: typeof crop.$inferInsert): void {
  db.insert(crop).values(row).run();
}

export function changeCrop(
  db: FarmDb,
  cropId: string,
  revision: number,
  values: Partial<Pick<CropRecord, 'name' | 'family' | 'cropGroup' | 'hidden' | 'notes' | 'botanicalName'>>,
): boolean {
  const result = db
    .update(crop)
    .set({ ...values, revision: sql`${crop.revision} + 1` })
    .where(and(eq(crop.id, cropId), eq(crop.revision, revision)))
    .run();
  return result.changes === 1;
}

export function addVariety(db: FarmDb, row: typeof variety.$inferInsert): void {
  db.insert(variety).values(row).run();
}

export function changeVariety(
  db: FarmDb,
  varietyId: string,
  revision: number,
  values: Partial<Pick<VarietyRecord, 'name' | 'notes' | 'retired'>>,
): boolean {
  const result = db
    .update(variety)
    .set({ ...values, revision: sql`${variety.revision} + 1` })
    .where(and(eq(variety.id, varietyId), eq(variety.revision, revision)))
    .run();
  return result.changes === 1;
}

export type FactPlace = {
  readonly cropId: string;
  readonly varietyId: string | null;
  readonly name: string;
  readonly origin: 'own' | 'learned';
};

const factAt = ({ cropId, varietyId, name, origin }: FactPlace) =>
  and(
    eq(cropValue.cropId, cropId),
    varietyId === null ? isNull(cropValue.varietyId) : eq(cropValue.varietyId, varietyId),
    eq(cropValue.name, name),
    eq(cropValue.origin, origin),
  );

/** Takes a fact of the grower's or of the records away: the library's shows again. */
export function dropFact(db: FarmDb, place: FactPlace): void {
  db.delete(cropValue).where(factAt(place)).run();
}

/** Writes a fact of the grower's or of the records in place of the one before. */
export function putFact(
  db: FarmDb,
  id: string,
  place: FactPlace,
  fact: { readonly number: number | null; readonly words: string | null; readonly source: string },
): void {
  dropFact(db, place);
  db.insert(cropValue)
    .values({ id, ...place, ...fact })
    .run();
}
