import { and, asc, eq, gte, lt, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { bed } from '../schema/beds.ts';
import { material } from '../schema/materials.ts';
import { application, applicationBed } from '../schema/soil.ts';
import { task } from '../schema/work.ts';

export type TaskRecord = typeof task.$inferSelect;
export type NewTask = typeof task.$inferInsert;

/** Every task that was written down: the grower's own, and those of the plan that were done, skipped or moved. */
export function writtenTasks(db: FarmDb): readonly TaskRecord[] {
  return db.select().from(task).orderBy(asc(task.dueDate), asc(task.id)).all();
}

export function taskOfId(db: FarmDb, taskId: string): TaskRecord | undefined {
  return db.select().from(task).where(eq(task.id, taskId)).get();
}

export function taskOfKey(db: FarmDb, originKey: string): TaskRecord | undefined {
  return db.select().from(task).where(eq(task.originKey, originKey)).get();
}

export function addTask(db: FarmDb, row: NewTask): void {
  db.insert(task).values(row).run();
}

export function changeTask(db: FarmDb, taskId: string, values: Partial<Omit<NewTask, 'id' | 'revision'>>): boolean {
  const result = db
    .update(task)
    .set({ ...values, revision: sql`${task.revision} + 1` })
    .where(eq(task.id, taskId))
    .run();
  return result.changes === 1;
}

export function removeTask(db: FarmDb, taskId: string): boolean {
  return db.delete(task).where(eq(task.id, taskId)).run().changes === 1;
}

/** Applications of amendments that are planned in a span of days, with the beds they are for. */
export function plannedFeeding(db: FarmDb, from: string, to: string) {
  return db
    .select({ id: application.id, date: application.date, material: material.name, bedId: bed.id, bedCode: bed.code })
    .from(application)
    .innerJoin(material, eq(material.id, application.materialId))
    .innerJoin(applicationBed, eq(applicationBed.applicationId, application.id))
    .innerJoin(bed, eq(bed.id, applicationBed.bedId))
    .where(and(eq(application.state, 'planned'), gte(application.date, from), lt(application.date, to)))
    .orderBy(asc(application.date), asc(bed.code))
    .all();
}
