import { and, asc, desc, eq, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { bed } from '../schema/beds.ts';
import { material } from '../schema/materials.ts';
import { compostBatch, compostIngredient, compostReading, teaBatch, teaBatchBed } from '../schema/soil.ts';
import { insertAll } from './insert-all.ts';

export type CompostBatchRow = typeof compostBatch.$inferSelect;

/** Every heap with what went in and its temperature log. */
export function compostBatches(db: FarmDb) {
  const ingredients = Map.groupBy(
    db
      .select({ batchId: compostIngredient.batchId, amount_kg: compostIngredient.amount_kg, material })
      .from(compostIngredient)
      .innerJoin(material, eq(material.id, compostIngredient.materialId))
      .orderBy(asc(material.name))
      .all(),
    (row) => row.batchId,
  );
  const readings = Map.groupBy(
    db.select().from(compostReading).orderBy(asc(compostReading.date), asc(compostReading.id)).all(),
    (row) => row.batchId,
  );
  return db
    .select()
    .from(compostBatch)
    .orderBy(desc(compostBatch.startedDate), asc(compostBatch.code))
    .all()
    .map((batch) => ({ batch, ingredients: ingredients.get(batch.id) ?? [], readings: readings.get(batch.id) ?? [] }));
}

export function addCompostBatch(
  db: FarmDb,
  batch: typeof compostBatch.$inferInsert,
  ingredients: readonly (typeof compostIngredient.$inferInsert)[],
): void {
  db.insert(compostBatch).values(batch).run();
  insertAll(db, compostIngredient, ingredients);
}

/** Writes a heap's head where its revision is still `revision`. */
export function changeCompostBatch(
  db: FarmDb,
  batchId: string,
  revision: number,
  values: Partial<Omit<typeof compostBatch.$inferInsert, 'id' | 'revision'>>,
): boolean {
  return (
    db
      .update(compostBatch)
      .set({ ...values, revision: sql`${compostBatch.revision} + 1` })
      .where(and(eq(compostBatch.id, batchId), eq(compostBatch.revision, revision)))
      .run().changes === 1
  );
}

export function addCompostReading(db: FarmDb, row: typeof compostReading.$inferInsert): void {
  db.insert(compostReading).values(row).run();
}

export function removeCompostReading(db: FarmDb, readingId: string): boolean {
  return db.delete(compostReading).where(eq(compostReading.id, readingId)).run().changes === 1;
}

/** Tea batches with the beds drenched, the newest first. */
export function teaBatches(db: FarmDb) {
  const beds = Map.groupBy(
    db
      .select({ batchId: teaBatchBed.batchId, bedId: teaBatchBed.bedId, code: bed.code, volume_L: teaBatchBed.volume_L })
      .from(teaBatchBed)
      .innerJoin(bed, eq(bed.id, teaBatchBed.bedId))
      .orderBy(asc(bed.code))
      .all(),
    (row) => row.batchId,
  );
  return db
    .select({ tea: teaBatch, compost: compostBatch.code })
    .from(teaBatch)
    .leftJoin(compostBatch, eq(compostBatch.id, teaBatch.compostBatchId))
    .orderBy(desc(teaBatch.startedAt), asc(teaBatch.code))
    .all()
    .map((row) => ({ ...row, beds: beds.get(row.tea.id) ?? [] }));
}

export function addTeaBatch(
  db: FarmDb,
  batch: typeof teaBatch.$inferInsert,
  beds: readonly (typeof teaBatchBed.$inferInsert)[],
): void {
  db.insert(teaBatch).values(batch).run();
  insertAll(db, teaBatchBed, beds);
}

export function setTeaApplied(db: FarmDb, batchId: string, appliedDate: string): boolean {
  return db.update(teaBatch).set({ appliedDate }).where(eq(teaBatch.id, batchId)).run().changes === 1;
}

export function codesOfBatches(db: FarmDb): ReadonlySet<string> {
  return new Set([
    ...db
      .select({ code: compostBatch.code })
      .from(compostBatch)
      .all()
      .map((row) => row.code),
    ...db
      .select({ code: teaBatch.code })
      .from(teaBatch)
      .all()
      .map((row) => row.code),
  ]);
}
