import { eq, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { farm, setting } from '../schema/farm.ts';

export type FarmRow = typeof farm.$inferSelect;
export type FarmChange = Partial<Omit<typeof farm.$inferInsert, 'id' | 'revision'>>;

/** The farm this file is; undefined in a file that was made but never named. */
export function farmOfFile(db: FarmDb): FarmRow | undefined {
  return db.select().from(farm).where(eq(farm.id, 1)).get();
}

/** Writes the farm's row when its revision is still `revision`. Answers false when it was changed meanwhile. */
export function changeFarm(db: FarmDb, values: FarmChange, revision: number): boolean {
  const result = db
    .update(farm)
    .set({ ...values, revision: sql`${farm.revision} + 1` })
    .where(sql`${farm.id} = 1 and ${farm.revision} = ${revision}`)
    .run();
  return result.changes === 1;
}

export function rememberedSetting(db: FarmDb, name: string): unknown {
  return db.select().from(setting).where(eq(setting.name, name)).get()?.value ?? null;
}

/** All remembered values whose names have one beginning, by name. */
export function rememberedSettings(db: FarmDb, prefix: string): Readonly<Record<string, unknown>> {
  const rows = db.select().from(setting).where(sql`substr(${setting.name}, 1, ${prefix.length}) = ${prefix}`).all();
  return Object.fromEntries(rows.map(({ name, value }) => [name, value]));
}

/** Remembers a value; null forgets it. */
export function rememberSetting(db: FarmDb, name: string, value: unknown): void {
  if (value === null) {
    db.delete(setting).where(eq(setting.name, name)).run();
    return;
  }
  db.insert(setting).values({ name, value }).onConflictDoUpdate({ target: setting.name, set: { value } }).run();
}
