import { and, asc, desc, eq, inArray, sql } from 'drizzle-orm';
import { derived, derivedRows } from '../file/derived.ts';
import type { FarmDb } from '../file/open-farm.ts';
import { bed } from '../schema/beds.ts';
import { soilTest, soilTestBed, soilTestValue } from '../schema/soil.ts';
import { insertAll } from './insert-all.ts';

export type SoilTestRow = typeof soilTest.$inferSelect;
export type NewSoilTest = typeof soilTest.$inferInsert;
export type SoilTestValueRow = typeof soilTestValue.$inferSelect;
export type NewSoilTestValue = typeof soilTestValue.$inferInsert;

/** A laboratory sheet with its figures and the beds it speaks for. */
export type SoilTestRecord = {
  readonly test: SoilTestRow;
  readonly values: readonly SoilTestValueRow[];
  readonly beds: readonly { readonly bedId: string; readonly code: string }[];
};

/** Every soil test, the newest first. */
export const soilTests = (db: FarmDb): readonly SoilTestRecord[] => derived(db, 'soil tests', () => testsRead(db));

function testsRead(db: FarmDb): readonly SoilTestRecord[] {
  const values = Map.groupBy(db.select().from(soilTestValue).orderBy(asc(soilTestValue.nutrient)).all(), (row) => row.testId);
  const beds = Map.groupBy(
    derivedRows(db, 'beds of soil tests', () =>
      db
        .select({ testId: soilTestBed.testId, bedId: bed.id, code: bed.code })
        .from(soilTestBed)
        .innerJoin(bed, eq(bed.id, soilTestBed.bedId))
        .orderBy(asc(bed.code))
        .all(),
    ),
    (row) => row.testId,
  );
  return db
    .select()
    .from(soilTest)
    .orderBy(desc(soilTest.date), asc(soilTest.sample), asc(soilTest.id))
    .all()
    .map((test) => ({ test, values: values.get(test.id) ?? [], beds: beds.get(test.id) ?? [] }));
}

export function soilTestOfId(db: FarmDb, testId: string): SoilTestRecord | undefined {
  return soilTests(db).find((each) => each.test.id === testId);
}

/** Writes new sheets whole: heads, figures and beds. */
export function addSoilTests(
  db: FarmDb,
  tests: readonly NewSoilTest[],
  values: readonly NewSoilTestValue[],
  beds: readonly (typeof soilTestBed.$inferInsert)[],
): void {
  insertAll(db, soilTest, tests);
  insertAll(db, soilTestValue, values);
  insertAll(db, soilTestBed, beds);
}

/** Replaces a sheet where its revision is still `revision`; false when it was changed meanwhile. */
export function replaceSoilTest(
  db: FarmDb,
  test: NewSoilTest,
  revision: number,
  values: readonly NewSoilTestValue[],
  beds: readonly (typeof soilTestBed.$inferInsert)[],
): boolean {
  const { id, revision: _, ...head } = test;
  const result = db
    .update(soilTest)
    .set({ ...head, revision: sql`${soilTest.revision} + 1` })
    .where(and(eq(soilTest.id, id), eq(soilTest.revision, revision)))
    .run();
  if (result.changes !== 1) return false;
  db.delete(soilTestValue).where(eq(soilTestValue.testId, id)).run();
  db.delete(soilTestBed).where(eq(soilTestBed.testId, id)).run();
  insertAll(db, soilTestValue, values);
  insertAll(db, soilTestBed, beds);
  return true;
}

/** Takes sheets away, with their figures. @returns how many there were */
export function removeSoilTests(db: FarmDb, testIds: readonly string[]): number {
  if (testIds.length === 0) return 0;
  return db
    .delete(soilTest)
    .where(inArray(soilTest.id, [...testIds]))
    .run().changes;
}
