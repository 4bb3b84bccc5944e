import { asc, eq } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { material } from '../schema/materials.ts';

/** Materials to choose from, by name, with what a fill recipe or parts list needs to know of each. */
export function materialChoices(db: FarmDb) {
  return db
    .select({
      materialId: material.id,
      name: material.name,
      kind: material.kind,
      baseUnit: material.baseUnit,
      settlingFirstShare: material.settlingFirstShare,
      life_years: material.life_years,
      own: material.own,
    })
    .from(material)
    .where(eq(material.retired, false))
    .orderBy(asc(material.name))
    .all();
}

/** Density of each material as handled, where it is known. */
export function moistDensities(db: FarmDb): ReadonlyMap<string, number> {
  const rows = db.select({ materialId: material.id, density: material.moistDensity_kg_per_m3 }).from(material).all();
  return new Map(rows.flatMap((row) => (row.density === null ? [] : [[row.materialId, row.density] as const])));
}
