import { eq, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { offer } from '../schema/materials.ts';

/** The lowest price of a base unit of each material among the offers in force, in minor units (not whole). */
export function unitPrices(db: FarmDb): ReadonlyMap<string, number> {
  const rows = db
    .select({ materialId: offer.materialId, price: sql<number>`min(${offer.price_minor} / ${offer.packageAmount})` })
    .from(offer)
    .where(eq(offer.retired, false))
    .groupBy(offer.materialId)
    .all();
  return new Map(rows.map((row) => [row.materialId, row.price]));
}
