import { and, count, eq, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { material, offer } from '../schema/materials.ts';

export type MaterialRow = typeof material.$inferSelect;
export type MaterialChange = Partial<Omit<typeof material.$inferInsert, 'id' | 'revision'>>;

/** All materials by name, with how many offers of them are in use. */
export function materialsOfFarm(db: FarmDb): readonly (MaterialRow & { readonly offers: number })[] {
  const offers = new Map(
    db
      .select({ id: offer.materialId, n: count() })
      .from(offer)
      .where(eq(offer.retired, false))
      .groupBy(offer.materialId)
      .all()
      .map((row) => [row.id, row.n]),
  );
  return db
    .select()
    .from(material)
    .orderBy(material.name)
    .all()
    .map((row) => ({ ...row, offers: offers.get(row.id) ?? 0 }));
}

export function addMaterial(db: FarmDb, row: typeof material.$inferInsert): void {
  db.insert(material).values(row).run();
}

/** Writes a material when its revision is still `revision`; false when it was changed meanwhile. */
export function changeMaterial(db: FarmDb, materialId: string, revision: number, values: MaterialChange): boolean {
  const result = db
    .update(material)
    .set({ ...values, revision: sql`${material.revision} + 1` })
    .where(and(eq(material.id, materialId), eq(material.revision, revision)))
    .run();
  return result.changes === 1;
}
