import { and, asc, desc, eq, gte, inArray, lte, or, sql } from 'drizzle-orm';
import { union } from 'drizzle-orm/sqlite-core';
import type { FarmDb } from '../file/open-farm.ts';
import { bed } from '../schema/beds.ts';
import { crop, variety } from '../schema/crops.ts';
import { harvest, harvestLot, sale, saleLine } from '../schema/harvests.ts';
import { material, supplier } from '../schema/materials.ts';
import { outlet, planting, plantingBed } from '../schema/plantings.ts';
import { application, applicationBed, compostBatch, teaBatch, teaBatchBed } from '../schema/soil.ts';
import { materialLot } from '../schema/stock.ts';
import { lineOutlet, waterEntry, waterLine } from '../schema/water.ts';
import { logEntry } from '../schema/work.ts';

export function lotOfCode(db: FarmDb, code: string) {
  return db.select().from(harvestLot).where(eq(harvestLot.code, code)).get();
}

/** Codes of lots that hold a text, the newest first. */
export function lotsLike(db: FarmDb, part: string) {
  return db
    .select({ code: harvestLot.code, date: harvestLot.date, crop: sql<string>`min(${crop.name})` })
    .from(harvestLot)
    .innerJoin(harvest, eq(harvest.lotId, harvestLot.id))
    .innerJoin(planting, eq(planting.id, harvest.plantingId))
    .innerJoin(crop, eq(crop.id, planting.cropId))
    .where(sql`${harvestLot.code} like ${`%${part.toUpperCase()}%`}`)
    .groupBy(harvestLot.id)
    .orderBy(desc(harvestLot.date), asc(harvestLot.code))
    .limit(30)
    .all();
}

/** Harvests that went into lots, with planting, bed, seed lot and what is known of the day. */
export function harvestsIntoLots(db: FarmDb, lotIds: readonly string[]) {
  if (lotIds.length === 0) return [];
  return db
    .select({
      lotId: harvest.lotId,
      lot: harvestLot.code,
      harvestId: harvest.id,
      date: harvest.date,
      plantingId: harvest.plantingId,
      crop: crop.name,
      variety: variety.name,
      number: planting.number,
      inBed: sql<string>`coalesce(${planting.inBedActual}, ${planting.inBedDate})`,
      bedId: harvest.bedId,
      bed: bed.code,
      amount: harvest.amount,
      unit: harvest.unit,
      weight_kg: harvest.weight_kg,
      picker: harvest.picker,
      conditions: harvest.conditions,
      seedLot: materialLot.code,
      createdAt: harvest.createdAt,
    })
    .from(harvest)
    .innerJoin(harvestLot, eq(harvestLot.id, harvest.lotId))
    .innerJoin(planting, eq(planting.id, harvest.plantingId))
    .innerJoin(crop, eq(crop.id, planting.cropId))
    .leftJoin(variety, eq(variety.id, planting.varietyId))
    .leftJoin(bed, eq(bed.id, harvest.bedId))
    .leftJoin(materialLot, eq(materialLot.id, planting.seedLotId))
    .where(inArray(harvest.lotId, [...lotIds]))
    .orderBy(asc(harvest.date), asc(harvest.id))
    .all();
}

/** Beds that plantings stood on. */
export function bedsUnder(db: FarmDb, plantingIds: readonly string[]) {
  return plantingIds.length === 0
    ? []
    : db
        .selectDistinct({ plantingId: plantingBed.plantingId, bedId: plantingBed.bedId, bed: bed.code })
        .from(plantingBed)
        .innerJoin(bed, eq(bed.id, plantingBed.bedId))
        .where(inArray(plantingBed.plantingId, [...plantingIds]))
        .all();
}

/** What was put on beds between two days: materials with their lots, makers and amounts. */
export function inputsOnBeds(db: FarmDb, bedIds: readonly string[], from: string, to: string) {
  return bedIds.length === 0
    ? []
    : db
        .select({
          date: application.date,
          bed: bed.code,
          bedId: applicationBed.bedId,
          material: material.name,
          animalOrigin: material.animalOrigin,
          organicUse: material.organicUse,
          lot: materialLot.code,
          supplier: supplier.name,
          amount_kg: applicationBed.amount_kg,
          method: application.method,
          who: application.who,
          reason: application.reason,
        })
        .from(applicationBed)
        .innerJoin(application, eq(application.id, applicationBed.applicationId))
        .innerJoin(bed, eq(bed.id, applicationBed.bedId))
        .innerJoin(material, eq(material.id, application.materialId))
        .leftJoin(materialLot, eq(materialLot.id, application.lotId))
        .leftJoin(supplier, eq(supplier.id, materialLot.supplierId))
        .where(
          and(
            inArray(applicationBed.bedId, [...bedIds]),
            eq(application.state, 'done'),
            gte(application.date, from),
            lte(application.date, to),
          ),
        )
        .orderBy(asc(application.date), asc(bed.code))
        .all();
}

/** Tea put on beds between two days, with its compost batch and water. */
export function teaOnBeds(db: FarmDb, bedIds: readonly string[], from: string, to: string) {
  return bedIds.length === 0
    ? []
    : db
        .select({
          date: teaBatch.appliedDate,
          tea: teaBatch.code,
          compost: compostBatch.code,
          water: teaBatch.waterSource,
          additives: teaBatch.additives,
          bed: bed.code,
          volume_L: teaBatchBed.volume_L,
        })
        .from(teaBatchBed)
        .innerJoin(teaBatch, eq(teaBatch.id, teaBatchBed.batchId))
        .innerJoin(bed, eq(bed.id, teaBatchBed.bedId))
        .leftJoin(compostBatch, eq(compostBatch.id, teaBatch.compostBatchId))
        .where(and(inArray(teaBatchBed.bedId, [...bedIds]), gte(teaBatch.appliedDate, from), lte(teaBatch.appliedDate, to)))
        .orderBy(asc(teaBatch.appliedDate))
        .all();
}

/** Water of beds: the line that feeds each with its source, and what was logged between two days. */
export function waterOfBeds(db: FarmDb, bedIds: readonly string[], from: string, to: string) {
  if (bedIds.length === 0) return { lines: [], entries: [] };
  const lines = db
    .selectDistinct({
      bedId: lineOutlet.bedId,
      bed: bed.code,
      line: waterLine.name,
      source: waterLine.supplySource,
      kind: lineOutlet.kind,
    })
    .from(lineOutlet)
    .innerJoin(waterLine, eq(waterLine.id, lineOutlet.lineId))
    .innerJoin(bed, eq(bed.id, lineOutlet.bedId))
    .where(inArray(lineOutlet.bedId, [...bedIds]))
    .all();
  const entries = db
    .select({ bed: bed.code, entries: sql<number>`count(*)`, volume_L: sql<number>`sum(${waterEntry.volume_L})` })
    .from(waterEntry)
    .innerJoin(bed, eq(bed.id, waterEntry.bedId))
    .where(and(inArray(waterEntry.bedId, [...bedIds]), gte(waterEntry.date, from), lte(waterEntry.date, to)))
    .groupBy(bed.code)
    .all();
  return { lines, entries };
}

/** Where lots went: buyers with amounts, and what was thrown away or given. */
export function salesOfLots(db: FarmDb, lotIds: readonly string[]) {
  return lotIds.length === 0
    ? []
    : db
        .select({
          lotId: saleLine.lotId,
          lot: harvestLot.code,
          date: sale.date,
          outlet: outlet.name,
          buyer: sale.buyer,
          documentNumber: sale.documentNumber,
          amount: saleLine.amount,
          unit: saleLine.unit,
          outcome: saleLine.outcome,
        })
        .from(saleLine)
        .innerJoin(sale, eq(sale.id, saleLine.saleId))
        .innerJoin(outlet, eq(outlet.id, sale.outletId))
        .innerJoin(harvestLot, eq(harvestLot.id, saleLine.lotId))
        .where(inArray(saleLine.lotId, [...lotIds]))
        .orderBy(asc(sale.date), asc(saleLine.id))
        .all();
}

/** What can be traced forward: makers' lots, compost batches, beds. */
export function traceStarts(db: FarmDb) {
  return {
    lots: db
      .select({ id: materialLot.id, code: materialLot.code, name: material.name })
      .from(materialLot)
      .innerJoin(material, eq(material.id, materialLot.materialId))
      .orderBy(asc(material.name), asc(materialLot.code))
      .all(),
    batches: db.select({ id: compostBatch.id, code: compostBatch.code }).from(compostBatch).orderBy(asc(compostBatch.code)).all(),
    beds: db.select({ id: bed.id, code: bed.code }).from(bed).orderBy(asc(bed.code)).all(),
  };
}

/** Beds that got a maker's lot, or a batch as compost or tea, and from which day on. */
export function bedsWithLot(db: FarmDb, lotId: string) {
  return db
    .select({ bedId: applicationBed.bedId, bed: bed.code, from: sql<string>`min(${application.date})` })
    .from(application)
    .innerJoin(applicationBed, eq(applicationBed.applicationId, application.id))
    .innerJoin(bed, eq(bed.id, applicationBed.bedId))
    .where(and(eq(application.lotId, lotId), eq(application.state, 'done')))
    .groupBy(applicationBed.bedId)
    .all();
}

export function bedsWithBatch(db: FarmDb, batchId: string) {
  const tea = db
    .select({ bedId: teaBatchBed.bedId, bed: bed.code, from: sql<string>`min(${teaBatch.appliedDate})` })
    .from(teaBatch)
    .innerJoin(teaBatchBed, eq(teaBatchBed.batchId, teaBatch.id))
    .innerJoin(bed, eq(bed.id, teaBatchBed.bedId))
    .where(and(eq(teaBatch.compostBatchId, batchId), sql`${teaBatch.appliedDate} is not null`))
    .groupBy(teaBatchBed.bedId)
    .all();
  const spread = db
    .select({ bedId: applicationBed.bedId, bed: bed.code, from: sql<string>`min(${application.date})` })
    .from(compostBatch)
    .innerJoin(
      application,
      and(
        eq(application.materialId, compostBatch.materialId),
        gte(application.date, sql`coalesce(${compostBatch.curedDate}, ${compostBatch.startedDate})`),
      ),
    )
    .innerJoin(applicationBed, eq(applicationBed.applicationId, application.id))
    .innerJoin(bed, eq(bed.id, applicationBed.bedId))
    .where(and(eq(compostBatch.id, batchId), eq(application.state, 'done')))
    .groupBy(applicationBed.bedId)
    .all();
  return [...tea, ...spread];
}

/** Plantings raised from a seed lot. */
export function plantingsOfSeedLot(db: FarmDb, lotId: string): readonly string[] {
  return db
    .select({ id: planting.id })
    .from(planting)
    .where(eq(planting.seedLotId, lotId))
    .all()
    .map((row) => row.id);
}

/** Lots harvested from beds, or of plantings, on and after days. */
export function lotsOfBeds(db: FarmDb, bedIds: readonly string[], plantingIds: readonly string[]) {
  if (bedIds.length === 0 && plantingIds.length === 0) return [];
  const idOf = { id: harvest.id };
  // each way by its own index; one question with "or" over two tables would look at every harvest
  const harvestIds = union(
    db
      .select(idOf)
      .from(harvest)
      .where(or(inArray(harvest.bedId, [...bedIds]), inArray(harvest.plantingId, [...plantingIds]))),
    db
      .select(idOf)
      .from(plantingBed)
      .innerJoin(harvest, eq(harvest.plantingId, plantingBed.plantingId))
      .where(inArray(plantingBed.bedId, [...bedIds])),
  );
  return db
    .selectDistinct({
      lotId: harvestLot.id,
      lot: harvestLot.code,
      date: harvest.date,
      bedId: plantingBed.bedId,
      plantingId: harvest.plantingId,
      crop: crop.name,
      amount: harvest.amount,
      unit: harvest.unit,
    })
    .from(harvest)
    .innerJoin(harvestLot, eq(harvestLot.id, harvest.lotId))
    .innerJoin(planting, eq(planting.id, harvest.plantingId))
    .innerJoin(crop, eq(crop.id, planting.cropId))
    .innerJoin(plantingBed, eq(plantingBed.plantingId, planting.id))
    .where(inArray(harvest.id, harvestIds))
    .orderBy(asc(harvest.date), asc(harvestLot.code))
    .all();
}

/** Log entries of all kinds, the newest first. */
export function logEntries(db: FarmDb) {
  return db.select().from(logEntry).orderBy(desc(logEntry.date), desc(logEntry.time), desc(logEntry.createdAt)).all();
}

/** Appends an entry: nothing is written over. */
export function appendLog(db: FarmDb, row: typeof logEntry.$inferInsert): void {
  db.insert(logEntry).values(row).run();
}

export function reviewLog(db: FarmDb, logId: string, reviewedBy: string, reviewedDate: string): boolean {
  return (
    db
      .update(logEntry)
      .set({ reviewedBy, reviewedDate })
      .where(and(eq(logEntry.id, logId), sql`${logEntry.reviewedBy} is null`))
      .run().changes === 1
  );
}

/** Income by year and whether the outlet is a qualified end-user. */
export function salesByYear(db: FarmDb) {
  return db
    .select({
      year: sql<string>`substr(${sale.date}, 1, 4)`,
      qualified: outlet.qualifiedEndUser,
      paid_minor: sql<number>`sum(${saleLine.paid_minor})`,
    })
    .from(saleLine)
    .innerJoin(sale, eq(sale.id, saleLine.saleId))
    .innerJoin(outlet, eq(outlet.id, sale.outletId))
    .where(eq(saleLine.outcome, 'sold'))
    .groupBy(sql`substr(${sale.date}, 1, 4)`, outlet.qualifiedEndUser)
    .orderBy(sql`substr(${sale.date}, 1, 4)`)
    .all();
}
