import { and, asc, desc, eq, gt, inArray, isNull, or, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { bed } from '../schema/beds.ts';
import { material, offer, offerBreak, substitute, supplier } from '../schema/materials.ts';
import { budget, materialLot, needChoice, purchase, purchaseLine, shoppingLine, stockMove } from '../schema/stock.ts';
import { insertAll } from './insert-all.ts';

export type NewMove = typeof stockMove.$inferInsert;

/** Every movement of a material in order: what comes in on a day before what goes out. */
export function movesOfMaterial(db: FarmDb, materialId: string) {
  return db
    .select({
      moveId: stockMove.id,
      date: stockMove.date,
      kind: stockMove.kind,
      amount: stockMove.amount,
      value_minor: stockMove.value_minor,
      lot: materialLot.code,
      bed: bed.code,
      who: stockMove.who,
      reason: stockMove.reason,
      flagged: stockMove.flagged,
      unpriced: stockMove.unpriced,
    })
    .from(stockMove)
    .leftJoin(materialLot, eq(materialLot.id, stockMove.lotId))
    .leftJoin(bed, eq(bed.id, stockMove.bedId))
    .where(eq(stockMove.materialId, materialId))
    .orderBy(asc(stockMove.date), sql`${stockMove.amount} < 0`, asc(stockMove.id))
    .all();
}

/** Ids of the materials that are dug or won on the farm: they cost nothing. */
export function materialsOfTheFarm(db: FarmDb): ReadonlySet<string> {
  const rows = db.select({ id: material.id }).from(material).where(eq(material.own, true)).all();
  return new Set(rows.map((row) => row.id));
}

/** Materials that ever moved, with their movements' sums. */
export function stockedMaterials(db: FarmDb) {
  return db
    .select({
      materialId: material.id,
      name: material.name,
      kind: material.kind,
      baseUnit: material.baseUnit,
      own: material.own,
      balance: sql<number>`sum(${stockMove.amount})`,
      lastDate: sql<string>`max(${stockMove.date})`,
      counted: sql<string | null>`max(case when ${stockMove.kind} in ('opening', 'correction') then ${stockMove.date} end)`,
      flagged: sql<number>`sum(${stockMove.flagged})`,
    })
    .from(stockMove)
    .innerJoin(material, eq(material.id, stockMove.materialId))
    .groupBy(material.id)
    .orderBy(asc(material.name))
    .all();
}

export function addMoves(db: FarmDb, rows: readonly NewMove[]): void {
  insertAll(db, stockMove, rows);
}

/** Takes back what a part took out of stock when it was put in. */
export function removeMovesOfPart(db: FarmDb, partId: string): void {
  db.delete(stockMove).where(eq(stockMove.partId, partId)).run();
}

/** Lots of materials with what is left of each. */
export function materialLots(db: FarmDb) {
  return db
    .select({
      lotId: materialLot.id,
      materialId: materialLot.materialId,
      material: material.name,
      baseUnit: material.baseUnit,
      code: materialLot.code,
      supplier: supplier.name,
      expiresDate: materialLot.expiresDate,
      germinationShare: materialLot.germinationShare,
      left: sql<number>`coalesce((select sum(m.amount) from stock_move m where m.lot_id = ${materialLot.id}), 0)`,
    })
    .from(materialLot)
    .innerJoin(material, eq(material.id, materialLot.materialId))
    .leftJoin(supplier, eq(supplier.id, materialLot.supplierId))
    .orderBy(asc(material.name), asc(materialLot.code))
    .all();
}

/** The lot of a material with this code, where it is known. */
export function lotOfCode(db: FarmDb, materialId: string, code: string) {
  return db
    .select()
    .from(materialLot)
    .where(and(eq(materialLot.materialId, materialId), eq(materialLot.code, code)))
    .get();
}

export function addMaterialLot(db: FarmDb, row: typeof materialLot.$inferInsert): void {
  db.insert(materialLot).values(row).run();
}

const ofSeason = (db: FarmDb, seasonId: string) =>
  db.select().from(needChoice).where(eq(needChoice.seasonId, seasonId)).orderBy(asc(needChoice.id)).all();

/** The needs added by hand. */
export const needsByHand = (db: FarmDb, seasonId: string) => ofSeason(db, seasonId).filter((row) => row.needKey === null);

/** What was decided about needs, computed ones and those added by hand, by the need's key. */
export const needChoices = (db: FarmDb, seasonId: string) =>
  new Map(ofSeason(db, seasonId).flatMap((row) => (row.needKey === null ? [] : [[row.needKey, row] as const])));

/** Writes what was decided about a need, in place of what was decided before. */
export function putNeedChoice(db: FarmDb, row: typeof needChoice.$inferInsert): void {
  if (row.needKey !== null && row.needKey !== undefined && row.seasonId !== null && row.seasonId !== undefined)
    db.delete(needChoice)
      .where(and(eq(needChoice.needKey, row.needKey), eq(needChoice.seasonId, row.seasonId)))
      .run();
  db.insert(needChoice).values(row).run();
}

/** Takes away a need added by hand, with what was decided about it. */
export function removeNeed(db: FarmDb, needChoiceId: string): void {
  db.delete(needChoice)
    .where(or(eq(needChoice.id, needChoiceId), eq(needChoice.needKey, needChoiceId)))
    .run();
}

export function standIns(db: FarmDb) {
  return db
    .select({
      materialId: substitute.materialId,
      insteadId: substitute.insteadId,
      ratio: substitute.ratio,
      instead: material.name,
    })
    .from(substitute)
    .innerJoin(material, eq(material.id, substitute.insteadId))
    .all();
}

export function addStandIn(db: FarmDb, row: typeof substitute.$inferInsert): void {
  db.insert(substitute).values(row).run();
}

export function removeStandIn(db: FarmDb, materialId: string, insteadId: string): void {
  db.delete(substitute)
    .where(and(eq(substitute.materialId, materialId), eq(substitute.insteadId, insteadId)))
    .run();
}

/** What tells how a material is to be handled. */
const handling = {
  name: material.name,
  kind: material.kind,
  dusty: material.dusty,
  animalOrigin: material.animalOrigin,
  registrationNumber: material.registrationNumber,
};

/** Offers in force with their breaks, as the purchase model wants them. */
export function offersInForce(db: FarmDb) {
  const breaks = Map.groupBy(db.select().from(offerBreak).orderBy(asc(offerBreak.fromPackages)).all(), (row) => row.offerId);
  return db
    .select({
      offer,
      supplierName: supplier.name,
      supplierLead_days: supplier.lead_days,
      material: material.name,
      baseUnit: material.baseUnit,
      density: material.moistDensity_kg_per_m3,
      kind: material.kind,
      handling,
    })
    .from(offer)
    .innerJoin(supplier, eq(supplier.id, offer.supplierId))
    .innerJoin(material, eq(material.id, offer.materialId))
    .where(and(eq(offer.retired, false), eq(supplier.retired, false)))
    .orderBy(asc(offer.id))
    .all()
    .map((row) => ({ ...row, breaks: breaks.get(row.offer.id) ?? [] }));
}

export type OfferInForce = ReturnType<typeof offersInForce>[number];

export function shoppingLines(db: FarmDb, seasonId: string) {
  return db.select().from(shoppingLine).where(eq(shoppingLine.seasonId, seasonId)).orderBy(asc(shoppingLine.id)).all();
}

/** Puts a new list in place of the lines that were not bought yet. */
export function replaceShoppingList(db: FarmDb, seasonId: string, rows: readonly (typeof shoppingLine.$inferInsert)[]): void {
  db.delete(shoppingLine)
    .where(and(eq(shoppingLine.seasonId, seasonId), isNull(shoppingLine.purchaseId)))
    .run();
  insertAll(db, shoppingLine, rows);
}

export function tickShoppingLine(db: FarmDb, shoppingLineId: string, ticked: boolean): void {
  db.update(shoppingLine).set({ ticked }).where(eq(shoppingLine.id, shoppingLineId)).run();
}

export function setShoppingPackages(db: FarmDb, shoppingLineId: string, packages: number): void {
  if (packages === 0) db.delete(shoppingLine).where(eq(shoppingLine.id, shoppingLineId)).run();
  else db.update(shoppingLine).set({ packages }).where(eq(shoppingLine.id, shoppingLineId)).run();
}

export function markBought(db: FarmDb, shoppingLineIds: readonly string[], purchaseId: string): void {
  for (const id of shoppingLineIds)
    db.update(shoppingLine).set({ purchaseId, ticked: true }).where(eq(shoppingLine.id, id)).run();
}

export function addPurchase(
  db: FarmDb,
  row: typeof purchase.$inferInsert,
  lines: readonly (typeof purchaseLine.$inferInsert)[],
): void {
  db.insert(purchase).values(row).run();
  insertAll(db, purchaseLine, lines);
}

export function purchaseOfId(db: FarmDb, purchaseId: string) {
  return db.select().from(purchase).where(eq(purchase.id, purchaseId)).get();
}

export function purchaseLines(db: FarmDb, purchaseId: string | null) {
  return db
    .select({
      lineId: purchaseLine.id,
      purchaseId: purchaseLine.purchaseId,
      supplier: supplier.name,
      supplierId: supplier.id,
      orderedDate: purchase.orderedDate,
      receivedDate: purchase.receivedDate,
      documentNumber: purchase.documentNumber,
      delivery_minor: purchase.delivery_minor,
      tax_minor: purchase.tax_minor,
      materialId: purchaseLine.materialId,
      material: material.name,
      baseUnit: material.baseUnit,
      category: purchaseLine.category,
      packages: purchaseLine.packages,
      receivedPackages: purchaseLine.receivedPackages,
      returnedPackages: purchaseLine.returnedPackages,
      packageAmount: purchaseLine.packageAmount,
      price_minor: purchaseLine.price_minor,
      density_kg_per_m3: material.moistDensity_kg_per_m3,
      handling,
    })
    .from(purchaseLine)
    .innerJoin(purchase, eq(purchase.id, purchaseLine.purchaseId))
    .innerJoin(supplier, eq(supplier.id, purchase.supplierId))
    .innerJoin(material, eq(material.id, purchaseLine.materialId))
    .where(purchaseId === null ? undefined : eq(purchaseLine.purchaseId, purchaseId))
    .orderBy(desc(purchase.orderedDate), asc(purchaseLine.purchaseId), asc(material.name))
    .all();
}

export type PurchaseLineRow = ReturnType<typeof purchaseLines>[number];

/** The season whose list each purchase was made from; purchases without a list are not in it. */
export function seasonsOfPurchases(db: FarmDb): ReadonlyMap<string, string> {
  const rows = db
    .selectDistinct({ purchaseId: shoppingLine.purchaseId, seasonId: shoppingLine.seasonId })
    .from(shoppingLine)
    .all();
  return new Map(rows.flatMap((row) => (row.purchaseId === null ? [] : [[row.purchaseId, row.seasonId] as const])));
}

/** Lines of purchases of which something is still to come, with the days that their supplier takes. */
export function openPurchaseLines(db: FarmDb) {
  return db
    .select({
      materialId: purchaseLine.materialId,
      orderedDate: purchase.orderedDate,
      ordered: purchaseLine.packages,
      received: purchaseLine.receivedPackages,
      packageAmount: purchaseLine.packageAmount,
      lead_days: sql<number>`coalesce(${offer.lead_days}, ${supplier.lead_days})`,
    })
    .from(purchaseLine)
    .innerJoin(purchase, eq(purchase.id, purchaseLine.purchaseId))
    .innerJoin(supplier, eq(supplier.id, purchase.supplierId))
    .leftJoin(offer, eq(offer.id, purchaseLine.offerId))
    .where(gt(purchaseLine.packages, purchaseLine.receivedPackages))
    .orderBy(asc(purchase.orderedDate), asc(purchaseLine.id))
    .all();
}

/** What is still to come of a purchase will not come: its lines are no more than what came, and it is complete. */
export function callOffRest(db: FarmDb, purchaseId: string, date: string): number {
  const { changes } = db
    .update(purchaseLine)
    .set({ packages: sql`${purchaseLine.receivedPackages}` })
    .where(and(eq(purchaseLine.purchaseId, purchaseId), gt(purchaseLine.packages, purchaseLine.receivedPackages)))
    .run();
  if (changes > 0) setReceived(db, purchaseId, date);
  return changes;
}

/** Nothing came of a purchase: it has neither delivery nor tax. */
export function dropCharges(db: FarmDb, purchaseId: string): void {
  db.update(purchase).set({ delivery_minor: 0, tax_minor: 0 }).where(eq(purchase.id, purchaseId)).run();
}

export function addReceived(db: FarmDb, lineId: string, packages: number, lotId: string | null): void {
  db.update(purchaseLine)
    .set({ receivedPackages: sql`${purchaseLine.receivedPackages} + ${packages}`, ...(lotId === null ? {} : { lotId }) })
    .where(eq(purchaseLine.id, lineId))
    .run();
}

export function addReturned(db: FarmDb, lineId: string, packages: number): void {
  db.update(purchaseLine)
    .set({ returnedPackages: sql`${purchaseLine.returnedPackages} + ${packages}` })
    .where(eq(purchaseLine.id, lineId))
    .run();
}

export function setReceived(db: FarmDb, purchaseId: string, receivedDate: string): void {
  db.update(purchase).set({ receivedDate }).where(eq(purchase.id, purchaseId)).run();
}

export function budgetsOfSeason(db: FarmDb, seasonId: string) {
  return db.select().from(budget).where(eq(budget.seasonId, seasonId)).orderBy(asc(budget.category), asc(budget.month)).all();
}

/** Sets a category's budget for the season, in place of the one before. */
export function putBudget(db: FarmDb, row: typeof budget.$inferInsert): void {
  db.delete(budget)
    .where(
      and(
        eq(budget.seasonId, row.seasonId),
        eq(budget.category, row.category),
        row.month === null || row.month === undefined ? isNull(budget.month) : eq(budget.month, row.month),
      ),
    )
    .run();
  db.insert(budget).values(row).run();
}

/** Materials of some kinds that were used between two days, to expect as much again. */
export function usedOfKinds(db: FarmDb, kinds: readonly string[], from: string, to: string) {
  return db
    .select({ materialId: stockMove.materialId, kind: material.kind, amount: sql<number>`-sum(${stockMove.amount})` })
    .from(stockMove)
    .innerJoin(material, eq(material.id, stockMove.materialId))
    .where(and(inArray(material.kind, [...kinds]), eq(stockMove.kind, 'use'), sql`${stockMove.date} between ${from} and ${to}`))
    .groupBy(stockMove.materialId)
    .orderBy(asc(stockMove.materialId))
    .all();
}

/** Materials that are the seed or the starts of a crop or variety, or a tray. */
export function seedAndTrayMaterials(db: FarmDb) {
  return db
    .select({
      materialId: material.id,
      name: material.name,
      kind: material.kind,
      baseUnit: material.baseUnit,
      cropId: material.cropId,
      varietyId: material.varietyId,
      seedsPer_g: material.seedsPer_g,
      germinationShare: material.germinationShare,
      cells: material.cells,
    })
    .from(material)
    .where(and(eq(material.retired, false), sql`(${material.kind} in ('seed', 'start') or ${material.cells} is not null)`))
    .orderBy(asc(material.id))
    .all();
}

export type MaterialFacts = ReturnType<typeof materialFacts>;

/** Material rows by id with what an order needs to know. */
export function materialFacts(db: FarmDb) {
  return new Map(
    db
      .select({
        id: material.id,
        name: material.name,
        kind: material.kind,
        baseUnit: material.baseUnit,
        own: material.own,
        moistDensity_kg_per_m3: material.moistDensity_kg_per_m3,
        /** What one base unit weighs by the newest offer that says it. */
        piece_kg: sql<number | null>`(select o.package_weight_kg / o.package_amount from offer o
          where o.material_id = ${material.id} and o.retired = 0 and o.package_weight_kg is not null
          order by o.priced_date desc, o.id limit 1)`,
      })
      .from(material)
      .all()
      .map((row) => [row.id, row] as const),
  );
}
