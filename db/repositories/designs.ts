import { and, asc, count, eq, isNull, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { bed, design, designLayer, designPart } from '../schema/beds.ts';
import { material } from '../schema/materials.ts';
import type { LayerRecord } from './beds.ts';
import { insertAll } from './insert-all.ts';

export type NewDesign = typeof design.$inferInsert;
export type DesignLayerRow = typeof designLayer.$inferInsert;
export type DesignPartRow = typeof designPart.$inferInsert;

export function designsOfFarm(db: FarmDb) {
  return db.select().from(design).orderBy(asc(design.name)).all();
}

export function designOfId(db: FarmDb, designId: string) {
  return db.select().from(design).where(eq(design.id, designId)).get();
}

/** How many beds in use follow each design. */
export function bedsByDesign(db: FarmDb): ReadonlyMap<string, number> {
  const rows = db
    .select({ designId: bed.designId, beds: count() })
    .from(bed)
    .where(isNull(bed.retiredDate))
    .groupBy(bed.designId)
    .all();
  return new Map(rows.map((row) => [row.designId, row.beds]));
}

/** The fill recipes of all designs, bottom up. */
export function designLayers(db: FarmDb): readonly LayerRecord[] {
  return db
    .select({
      ownerId: designLayer.designId,
      position: designLayer.position,
      materialId: material.id,
      name: material.name,
      amountKind: designLayer.amountKind,
      amount: designLayer.amount,
      settlingShare: sql<number | null>`coalesce(${designLayer.settlingShare}, ${material.settlingFirstShare})`,
      laterShare: material.settlingLaterShare,
      swellShare: material.swellShare,
      isOwn: material.own,
      kind: material.kind,
      dusty: material.dusty,
      dryDensity_kg_per_m3: material.dryDensity_kg_per_m3,
      moistDensity_kg_per_m3: material.moistDensity_kg_per_m3,
      porosityShare: material.porosityShare,
    })
    .from(designLayer)
    .innerJoin(material, eq(material.id, designLayer.materialId))
    .orderBy(asc(designLayer.designId), asc(designLayer.position))
    .all();
}

export function designParts(db: FarmDb, designId: string) {
  return db
    .select({
      materialId: designPart.materialId,
      name: material.name,
      baseUnit: material.baseUnit,
      amount: designPart.amount,
      life_years: designPart.life_years,
      salvageShare: designPart.salvageShare,
    })
    .from(designPart)
    .innerJoin(material, eq(material.id, designPart.materialId))
    .where(eq(designPart.designId, designId))
    .orderBy(asc(designPart.position))
    .all();
}

export function addDesign(db: FarmDb, row: NewDesign): void {
  db.insert(design).values(row).run();
}

/** Writes a design when its revision is still `revision`; false when it was changed meanwhile. */
export function changeDesign(
  db: FarmDb,
  designId: string,
  revision: number,
  values: Partial<Omit<NewDesign, 'id' | 'revision'>>,
): boolean {
  const result = db
    .update(design)
    .set({ ...values, revision: sql`${design.revision} + 1` })
    .where(and(eq(design.id, designId), eq(design.revision, revision)))
    .run();
  return result.changes === 1;
}

/** Replaces recipe and parts of a design. */
export function setDesignContents(
  db: FarmDb,
  designId: string,
  layers: readonly DesignLayerRow[],
  parts: readonly DesignPartRow[],
): void {
  db.delete(designLayer).where(eq(designLayer.designId, designId)).run();
  db.delete(designPart).where(eq(designPart.designId, designId)).run();
  insertAll(db, designLayer, layers);
  insertAll(db, designPart, parts);
}
