import { eq, sql } from 'drizzle-orm';
import type { SQLiteColumn } from 'drizzle-orm/sqlite-core';
import type { FarmDb } from '../file/open-farm.ts';
import { bed, bedPart, bedPlan, design, stockpile } from '../schema/beds.ts';
import { crop, variety } from '../schema/crops.ts';
import { overhead } from '../schema/farm.ts';
import { saleUnit } from '../schema/harvests.ts';
import { material, offer, supplier } from '../schema/materials.ts';
import { outlet, planting, season } from '../schema/plantings.ts';
import { compostBatch, compostReading, soilTest, teaBatch } from '../schema/soil.ts';
import { needChoice, purchase, shoppingLine } from '../schema/stock.ts';
import { linePart, waterLine } from '../schema/water.ts';
import { station } from '../schema/weather.ts';
import { task } from '../schema/work.ts';

type Named = { readonly id: SQLiteColumn; readonly name: SQLiteColumn };

/** Things with a name or code of their own. */
const withName = {
  bed: { id: bed.id, name: bed.code },
  compostBatch: { id: compostBatch.id, name: compostBatch.code },
  crop: { id: crop.id, name: crop.name },
  design: { id: design.id, name: design.name },
  heap: { id: stockpile.id, name: stockpile.name },
  line: { id: waterLine.id, name: waterLine.name },
  material: { id: material.id, name: material.name },
  offer: { id: offer.id, name: offer.name },
  outlet: { id: outlet.id, name: outlet.name },
  overhead: { id: overhead.id, name: overhead.name },
  saleUnit: { id: saleUnit.id, name: saleUnit.unit },
  season: { id: season.id, name: season.name },
  soilTest: { id: soilTest.id, name: soilTest.sample },
  station: { id: station.id, name: station.name },
  supplier: { id: supplier.id, name: supplier.name },
  task: { id: task.id, name: task.title },
  teaBatch: { id: teaBatch.id, name: teaBatch.code },
  variety: { id: variety.id, name: variety.name },
} as const satisfies Record<string, Named>;

/** Things that are called by another thing which they belong to. */
const byOther = {
  bedPart: { id: bedPart.id, of: bedPart.materialId, other: withName.material },
  bedOfPart: { id: bedPart.id, of: bedPart.bedId, other: withName.bed },
  bedPlan: { id: bedPlan.id, of: bedPlan.designId, other: withName.design },
  compostReading: { id: compostReading.id, of: compostReading.batchId, other: withName.compostBatch },
  linePart: { id: linePart.id, of: linePart.materialId, other: withName.material },
  lineOfPart: { id: linePart.id, of: linePart.lineId, other: withName.line },
  need: { id: needChoice.id, of: needChoice.materialId, other: withName.material },
  planting: { id: planting.id, of: planting.cropId, other: withName.crop },
  purchase: { id: purchase.id, of: purchase.supplierId, other: withName.supplier },
  shoppingLine: { id: shoppingLine.id, of: shoppingLine.offerId, other: withName.offer },
} as const satisfies Record<string, { readonly id: SQLiteColumn; readonly of: SQLiteColumn; readonly other: Named }>;

export type NamedKind = keyof typeof withName | keyof typeof byOther;

/** What a thing is called, as steps of undo say it; empty when there is no such thing. */
export function nameOf(db: FarmDb, kind: NamedKind, id: string | null): string {
  if (id === null) return '';
  const name = (it: Named) => sql<string>`${it.name}`;
  if (kind in byOther) {
    const { id: key, of, other } = byOther[kind as keyof typeof byOther];
    return (
      db
        .select({ name: name(other) })
        .from(key.table)
        .innerJoin(other.id.table, eq(other.id, of))
        .where(eq(key, id))
        .get()?.name ?? ''
    );
  }
  const it = withName[kind as keyof typeof withName];
  return (
    db
      .select({ name: name(it) })
      .from(it.id.table)
      .where(eq(it.id, id))
      .get()?.name ?? ''
  );
}
