import { and, asc, eq, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { season, succession } from '../schema/plantings.ts';

export type SeasonRecord = typeof season.$inferSelect;

/** Every season, the earliest first. */
export function seasonsOfFarm(db: FarmDb): readonly SeasonRecord[] {
  return db.select().from(season).orderBy(asc(season.startDate)).all();
}

export function seasonOfId(db: FarmDb, seasonId: string): SeasonRecord | undefined {
  return db.select().from(season).where(eq(season.id, seasonId)).get();
}

export function addSeason(db: FarmDb, row: typeof season.$inferInsert): void {
  db.insert(season).values(row).run();
}

export type SeasonChange = Partial<Omit<typeof season.$inferInsert, 'id' | 'revision'>>;

export function changeSeason(db: FarmDb, seasonId: string, revision: number, values: SeasonChange): boolean {
  const result = db
    .update(season)
    .set({ ...values, revision: sql`${season.revision} + 1` })
    .where(and(eq(season.id, seasonId), eq(season.revision, revision)))
    .run();
  return result.changes === 1;
}

export function addSuccession(db: FarmDb, row: typeof succession.$inferInsert): void {
  db.insert(succession).values(row).run();
}
