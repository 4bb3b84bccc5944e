import { and, asc, eq, inArray, isNotNull, isNull, sql } from 'drizzle-orm';
import { derived, derivedRows, sameRow } from '../file/derived.ts';
import type { FarmDb } from '../file/open-farm.ts';
import { bed, bedLayer, bedShare, block, design } from '../schema/beds.ts';
import { material } from '../schema/materials.ts';
import { insertAll } from './insert-all.ts';

export type BedRow = typeof bed.$inferSelect;
export type NewBed = typeof bed.$inferInsert;
export type DesignRow = typeof design.$inferSelect;
export type BlockRow = typeof block.$inferSelect;

/** A bed with the design it is built after and the block it lies in. */
export type BedRecord = { readonly bed: BedRow; readonly design: DesignRow; readonly block: BlockRow };

const selectBeds = (db: FarmDb) =>
  db
    .select({ bed, design, block })
    .from(bed)
    .innerJoin(design, eq(design.id, bed.designId))
    .innerJoin(block, eq(block.id, bed.blockId));

/**
 * Joins beds with their designs and blocks here rather than in SQL: a thousand beds share a handful of wide rows. A bed of which
 * nothing was written is the same record as before, so that what is worked out of it can be taken over.
 */
function withDesigns(db: FarmDb, beds: readonly BedRow[], before: readonly BedRecord[] = []): BedRecord[] {
  const designs = new Map(derivedRows(db, 'designs of beds', () => db.select().from(design).all()).map((row) => [row.id, row]));
  const blocks = new Map(derivedRows(db, 'blocks of beds', () => db.select().from(block).all()).map((row) => [row.id, row]));
  const known = new Map(before.map((record) => [record.bed.id, record]));
  return beds.flatMap((row) => {
    const [of, lies] = [designs.get(row.designId), blocks.get(row.blockId)];
    if (of === undefined || lies === undefined) return [];
    const same = known.get(row.id);
    if (same?.design === of && same.block === lies && sameRow(same.bed, row)) return [same];
    return [{ bed: row, design: of, block: lies }];
  });
}

/** Beds that are not retired, block by block in their order. */
export const bedsInUse = (db: FarmDb): readonly BedRecord[] =>
  derived(db, 'beds in use', (before: readonly BedRecord[] | undefined) => readBedsInUse(db, before));

function readBedsInUse(db: FarmDb, before: readonly BedRecord[] | undefined): readonly BedRecord[] {
  const rows = db.select().from(bed).where(isNull(bed.retiredDate)).orderBy(asc(bed.position), asc(bed.code)).all();
  return withDesigns(db, rows, before).sort(
    (a, b) => a.block.position - b.block.position || (a.block.code < b.block.code ? -1 : a.block.code > b.block.code ? 1 : 0),
  );
}

/** Beds taken out of use, the latest first. */
export function bedsRetired(db: FarmDb): readonly BedRecord[] {
  return withDesigns(
    db,
    db.select().from(bed).where(isNotNull(bed.retiredDate)).orderBy(sql`${bed.retiredDate} desc`, asc(bed.code)).all(),
  );
}

export function bedOfId(db: FarmDb, bedId: string): BedRecord | undefined {
  return selectBeds(db).where(eq(bed.id, bedId)).get();
}

/** Beds in use or retired with their designs, by their ids. */
export function bedRecordsOf(db: FarmDb, bedIds: readonly string[]): readonly BedRecord[] {
  return selectBeds(db)
    .where(inArray(bed.id, [...bedIds]))
    .all();
}

export function blocksOfFarm(db: FarmDb): readonly BlockRow[] {
  return db.select().from(block).orderBy(asc(block.position), asc(block.code)).all();
}

export function addBlock(db: FarmDb, row: typeof block.$inferInsert): void {
  db.insert(block).values(row).run();
}

/** Codes of beds in use, to keep a new one apart. */
export function codesInUse(db: FarmDb): ReadonlySet<string> {
  return new Set(
    db
      .select({ code: bed.code })
      .from(bed)
      .where(isNull(bed.retiredDate))
      .all()
      .map((row) => row.code),
  );
}

export function addBeds(db: FarmDb, rows: readonly NewBed[]): void {
  insertAll(db, bed, rows);
}

export type BedChange = Partial<Omit<NewBed, 'id' | 'revision'>>;

/** Writes one bed when its revision is still `revision`; false when it was changed meanwhile. */
export function changeBed(db: FarmDb, bedId: string, revision: number, values: BedChange): boolean {
  const result = db
    .update(bed)
    .set({ ...values, revision: sql`${bed.revision} + 1` })
    .where(and(eq(bed.id, bedId), eq(bed.revision, revision)))
    .run();
  return result.changes === 1;
}

export type BedPlace = { readonly bedId: string; readonly x_m: number; readonly y_m: number; readonly turn_deg: number };

/** Puts beds where they were dragged. The last drag counts; nothing else of a bed is touched. */
export function placeBeds(db: FarmDb, places: readonly BedPlace[]): number {
  const write = db
    .update(bed)
    .set({
      x_m: sql`${sql.placeholder('x_m')}`,
      y_m: sql`${sql.placeholder('y_m')}`,
      turn_deg: sql`${sql.placeholder('turn_deg')}`,
      revision: sql`${bed.revision} + 1`,
    })
    .where(eq(bed.id, sql.placeholder('bedId')))
    .prepare();
  return places.reduce((sum, place) => sum + write.run(place).changes, 0);
}

/** Writes the order of beds along the tubing or the path. */
export function orderBeds(db: FarmDb, bedIds: readonly string[]): void {
  const write = db
    .update(bed)
    .set({ position: sql`${sql.placeholder('position')}`, revision: sql`${bed.revision} + 1` })
    .where(eq(bed.id, sql.placeholder('bedId')))
    .prepare();
  bedIds.forEach((bedId, position) => {
    write.run({ bedId, position });
  });
}

export function bedsOfDesign(db: FarmDb, designId: string): readonly BedRow[] {
  return db.select().from(bed).where(eq(bed.designId, designId)).all();
}

/** Bed rows by their ids, in no order. */
export function bedsOfIds(db: FarmDb, bedIds: readonly string[]): readonly BedRow[] {
  return bedIds.length === 0
    ? []
    : db
        .select()
        .from(bed)
        .where(inArray(bed.id, [...bedIds]))
        .all();
}

const layerColumns = {
  position: bedLayer.position,
  materialId: material.id,
  name: material.name,
  amountKind: bedLayer.amountKind,
  amount: bedLayer.amount,
  settlingShare: sql<number | null>`coalesce(${bedLayer.settlingShare}, ${material.settlingFirstShare})`,
  laterShare: material.settlingLaterShare,
  swellShare: material.swellShare,
  isOwn: material.own,
  kind: material.kind,
  dusty: material.dusty,
  dryDensity_kg_per_m3: material.dryDensity_kg_per_m3,
  moistDensity_kg_per_m3: material.moistDensity_kg_per_m3,
  porosityShare: material.porosityShare,
};

/** Recipes that single beds have of their own, by bed. */
export function ownLayers(db: FarmDb) {
  return db
    .select({ ownerId: bedLayer.bedId, ...layerColumns })
    .from(bedLayer)
    .innerJoin(material, eq(material.id, bedLayer.materialId))
    .orderBy(asc(bedLayer.bedId), asc(bedLayer.position))
    .all();
}

export type LayerRecord = ReturnType<typeof ownLayers>[number];

export function sharesOfBed(db: FarmDb, bedId: string) {
  return db.select().from(bedShare).where(eq(bedShare.bedId, bedId)).orderBy(asc(bedShare.fromShare)).all();
}

/** Replaces how a bed is split. */
export function splitBed(db: FarmDb, bedId: string, shares: readonly (typeof bedShare.$inferInsert)[]): void {
  db.delete(bedShare).where(eq(bedShare.bedId, bedId)).run();
  insertAll(db, bedShare, shares);
}

/** Replaces a bed's own recipe; none means as its design. */
export function setOwnLayers(db: FarmDb, bedId: string, layers: readonly (typeof bedLayer.$inferInsert)[]): void {
  db.delete(bedLayer).where(eq(bedLayer.bedId, bedId)).run();
  insertAll(db, bedLayer, layers);
}
