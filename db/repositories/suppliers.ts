import { and, asc, count, desc, eq, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { material, offer, offerBreak, offerPrice, supplier } from '../schema/materials.ts';
import { insertAll } from './insert-all.ts';

export type SupplierRow = typeof supplier.$inferSelect;
export type SupplierChange = Partial<Omit<typeof supplier.$inferInsert, 'id' | 'revision'>>;
export type OfferChange = Partial<Omit<typeof offer.$inferInsert, 'id' | 'revision'>>;

/** All suppliers by name, with how many of their offers are in use. */
export function suppliersOfFarm(db: FarmDb): readonly (SupplierRow & { readonly offers: number })[] {
  const offers = new Map(
    db
      .select({ id: offer.supplierId, n: count() })
      .from(offer)
      .where(eq(offer.retired, false))
      .groupBy(offer.supplierId)
      .all()
      .map((row) => [row.id, row.n]),
  );
  return db
    .select()
    .from(supplier)
    .orderBy(asc(supplier.name))
    .all()
    .map((row) => ({ ...row, offers: offers.get(row.id) ?? 0 }));
}

export function addSupplier(db: FarmDb, row: typeof supplier.$inferInsert): void {
  db.insert(supplier).values(row).run();
}

/** Writes a supplier when its revision is still `revision`; false when it was changed meanwhile. */
export function changeSupplier(db: FarmDb, supplierId: string, revision: number, values: SupplierChange): boolean {
  const result = db
    .update(supplier)
    .set({ ...values, revision: sql`${supplier.revision} + 1` })
    .where(and(eq(supplier.id, supplierId), eq(supplier.revision, revision)))
    .run();
  return result.changes === 1;
}

/** All offers, with material and supplier by name. */
export function offersByName(db: FarmDb) {
  return db
    .select({
      id: offer.id,
      supplierId: offer.supplierId,
      supplier: supplier.name,
      materialId: offer.materialId,
      material: material.name,
      baseUnit: material.baseUnit,
      name: offer.name,
      packageAmount: offer.packageAmount,
      price_minor: offer.price_minor,
      minimumPackages: offer.minimumPackages,
      lead_days: offer.lead_days,
      packageWeight_kg: offer.packageWeight_kg,
      pricedDate: offer.pricedDate,
      retired: offer.retired,
      revision: offer.revision,
    })
    .from(offer)
    .innerJoin(supplier, eq(supplier.id, offer.supplierId))
    .innerJoin(material, eq(material.id, offer.materialId))
    .orderBy(asc(material.name), asc(supplier.name), asc(offer.packageAmount), asc(offer.id))
    .all();
}

export function offerBreaks(db: FarmDb, offerId: string) {
  return db.select().from(offerBreak).where(eq(offerBreak.offerId, offerId)).orderBy(asc(offerBreak.fromPackages)).all();
}

/** What an offer cost on earlier days, newest first. */
export function offerPrices(db: FarmDb, offerId: string) {
  return db.select().from(offerPrice).where(eq(offerPrice.offerId, offerId)).orderBy(desc(offerPrice.date)).all();
}

export function offerOfId(db: FarmDb, offerId: string) {
  return db.select().from(offer).where(eq(offer.id, offerId)).get();
}

export function addOffer(db: FarmDb, row: typeof offer.$inferInsert): void {
  db.insert(offer).values(row).run();
}

export function changeOffer(db: FarmDb, offerId: string, revision: number, values: OfferChange): boolean {
  const result = db
    .update(offer)
    .set({ ...values, revision: sql`${offer.revision} + 1` })
    .where(and(eq(offer.id, offerId), eq(offer.revision, revision)))
    .run();
  return result.changes === 1;
}

/** Keeps what an offer cost until now, before a new price is written over it. */
export function keepOfferPrice(db: FarmDb, row: typeof offerPrice.$inferInsert): void {
  db.insert(offerPrice).values(row).run();
}

export function setOfferBreaks(db: FarmDb, offerId: string, breaks: readonly (typeof offerBreak.$inferInsert)[]): void {
  db.delete(offerBreak).where(eq(offerBreak.offerId, offerId)).run();
  insertAll(db, offerBreak, breaks);
}
