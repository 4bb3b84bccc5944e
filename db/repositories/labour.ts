import { and, asc, desc, eq, gte, lte, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { bed, block } from '../schema/beds.ts';
import { crop } from '../schema/crops.ts';
import { planting } from '../schema/plantings.ts';
import { labourEntry } from '../schema/work.ts';
import { insertAll } from './insert-all.ts';

export type NewLabour = typeof labourEntry.$inferInsert;

/** Hours worked between two days, the newest first, at most `most`. */
export function labourLog(db: FarmDb, from: string, to: string, most: number) {
  return db
    .select({
      labourId: labourEntry.id,
      date: labourEntry.date,
      task: labourEntry.task,
      labour_min: labourEntry.minutes,
      people: labourEntry.people,
      wage_minor_per_h: labourEntry.wage_minor_per_h,
      standard: labourEntry.standard,
      bed: bed.code,
      block: block.code,
      crop: crop.name,
      number: planting.number,
      who: labourEntry.who,
      note: labourEntry.note,
    })
    .from(labourEntry)
    .leftJoin(planting, eq(planting.id, labourEntry.plantingId))
    .leftJoin(crop, eq(crop.id, planting.cropId))
    .leftJoin(bed, eq(bed.id, labourEntry.bedId))
    .leftJoin(block, eq(block.id, labourEntry.blockId))
    .where(and(gte(labourEntry.date, from), lte(labourEntry.date, to)))
    .orderBy(desc(labourEntry.date), desc(labourEntry.id))
    .limit(most)
    .all();
}

export function addLabour(db: FarmDb, rows: readonly NewLabour[]): void {
  insertAll(db, labourEntry, rows);
}

export function removeLabour(db: FarmDb, labourId: string): void {
  db.delete(labourEntry).where(eq(labourEntry.id, labourId)).run();
}

/** Writes the time that a harvest took, or takes it away. */
export function setLabourOfHarvest(db: FarmDb, harvestId: string, row: NewLabour | null): void {
  db.delete(labourEntry).where(eq(labourEntry.harvestId, harvestId)).run();
  if (row !== null) db.insert(labourEntry).values(row).run();
}

/** Tasks that were entered before, the most frequent first. */
export function tasksEntered(db: FarmDb): readonly string[] {
  return db
    .select({ task: labourEntry.task, n: sql<number>`count(*)` })
    .from(labourEntry)
    .groupBy(labourEntry.task)
    .orderBy(sql`count(*) desc`, asc(labourEntry.task))
    .limit(40)
    .all()
    .map((row) => row.task);
}

/** Minutes of each planting by task, all people together; standard times apart. */
export function minutesByPlanting(db: FarmDb, seasonId: string | null) {
  return db
    .select({
      plantingId: labourEntry.plantingId,
      task: labourEntry.task,
      standard: labourEntry.standard,
      labour_min: sql<number>`sum(${labourEntry.minutes} * ${labourEntry.people})`,
    })
    .from(labourEntry)
    .innerJoin(planting, eq(planting.id, labourEntry.plantingId))
    .where(seasonId === null ? undefined : eq(planting.seasonId, seasonId))
    .groupBy(labourEntry.plantingId, labourEntry.task, labourEntry.standard)
    .all();
}

/** Takes away standard times of a season, to be worked out anew. */
export function removeStandardTimes(db: FarmDb, seasonId: string): void {
  db.run(
    sql`delete from ${labourEntry} where ${labourEntry.standard} = 1 and ${labourEntry.plantingId} in (select id from ${planting} where ${planting.seasonId} = ${seasonId})`,
  );
}
