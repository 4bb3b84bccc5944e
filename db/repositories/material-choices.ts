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
    })
    .from(material)
    .where(eq(material.retired, false))
    .orderBy(asc(material.name))
    .all();
}
