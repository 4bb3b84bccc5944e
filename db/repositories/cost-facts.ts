import { and, asc, eq, gte, isNull, lte, or, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { bedFill, bedPart } from '../schema/beds.ts';
import { crop } from '../schema/crops.ts';
import { overhead } from '../schema/farm.ts';
import { harvest, harvestLot, sale, saleLine } from '../schema/harvests.ts';
import { material } from '../schema/materials.ts';
import { planting, plantingBed } from '../schema/plantings.ts';
import { application, applicationBed } from '../schema/soil.ts';
import { stockMove } from '../schema/stock.ts';
import { lineOutlet, linePart, pump, timerEvent, waterEntry, waterLine } from '../schema/water.ts';
import { labourEntry } from '../schema/work.ts';
import { among, type Keys } from './among.ts';

/** Plantings of a season with the ground they took. */
export function staysOfSeason(db: FarmDb, seasonId: string) {
  return db
    .select({
      plantingId: plantingBed.plantingId,
      bedId: plantingBed.bedId,
      share: sql<number>`${plantingBed.toShare} - ${plantingBed.fromShare}`,
      from: sql<string>`coalesce(${planting.inBedActual}, ${planting.inBedDate})`,
      to: sql<string>`coalesce(${planting.clearedActual}, ${planting.clearDate})`,
    })
    .from(plantingBed)
    .innerJoin(planting, eq(planting.id, plantingBed.plantingId))
    .where(eq(planting.seasonId, seasonId))
    .orderBy(asc(plantingBed.plantingId), asc(plantingBed.bedId), asc(plantingBed.fromShare))
    .all();
}

export function plantingsWithPlan(db: FarmDb, seasonId: string) {
  return db
    .select({
      plantingId: planting.id,
      cropId: planting.cropId,
      crop: crop.name,
      number: planting.number,
      state: planting.state,
      plants: sql<number>`coalesce(${planting.plantsActual}, ${planting.plants})`,
      yieldUnit: planting.yieldUnit,
      yieldLow: planting.yieldLow,
      yieldTypical: planting.yieldTypical,
      yieldHigh: planting.yieldHigh,
      price_minor: planting.price_minor,
    })
    .from(planting)
    .innerJoin(crop, eq(crop.id, planting.cropId))
    .where(eq(planting.seasonId, seasonId))
    .orderBy(asc(planting.id))
    .all();
}

/** Parts that were in a bed on some day between two. */
export function partsBetween(db: FarmDb, from: string, to: string) {
  return db
    .select({
      bedId: bedPart.bedId,
      materialId: bedPart.materialId,
      material: material.name,
      price_minor: bedPart.price_minor,
      unpricedAmount: bedPart.unpricedAmount,
      salvageShare: bedPart.salvageShare,
      life_years: bedPart.life_years,
      from: bedPart.installedDate,
      until: bedPart.removedDate,
    })
    .from(bedPart)
    .innerJoin(material, eq(material.id, bedPart.materialId))
    .where(and(lte(bedPart.installedDate, to), or(isNull(bedPart.removedDate), gte(bedPart.removedDate, from))))
    .orderBy(asc(bedPart.bedId), asc(bedPart.id))
    .all();
}

/** Parts that were in a water line on some day between two. */
export function linePartsBetween(db: FarmDb, from: string, to: string) {
  return db
    .select({
      linePartId: linePart.id,
      lineId: linePart.lineId,
      line: waterLine.name,
      materialId: linePart.materialId,
      material: material.name,
      price_minor: linePart.price_minor,
      unpricedAmount: linePart.unpricedAmount,
      life_years: linePart.life_years,
      from: linePart.installedDate,
      until: linePart.removedDate,
    })
    .from(linePart)
    .innerJoin(material, eq(material.id, linePart.materialId))
    .innerJoin(waterLine, eq(waterLine.id, linePart.lineId))
    .where(and(lte(linePart.installedDate, to), or(isNull(linePart.removedDate), gte(linePart.removedDate, from))))
    .orderBy(asc(waterLine.name), asc(material.name), asc(linePart.id))
    .all();
}

/** What was filled into beds up to a day. */
export function fillsUntil(db: FarmDb, to: string) {
  return db
    .select({
      bedId: bedFill.bedId,
      materialId: bedFill.materialId,
      date: bedFill.date,
      cost_minor: bedFill.cost_minor,
      unpriced_L: bedFill.unpriced_L,
    })
    .from(bedFill)
    .where(and(lte(bedFill.date, to), sql`${bedFill.kind} <> 'taken-out'`))
    .orderBy(asc(bedFill.bedId), asc(bedFill.date), asc(bedFill.id))
    .all();
}

/** A filling with the years that it is to last. */
export type FillFact = ReturnType<typeof fillsUntil>[number] & { readonly life_years: number };

/** Every stock movement up to a day in the order in which it happened: what comes in on a day before what goes out. */
export function movesUntil(db: FarmDb, to: string) {
  return db
    .select({
      moveId: stockMove.id,
      materialId: stockMove.materialId,
      materialKind: material.kind,
      date: stockMove.date,
      kind: stockMove.kind,
      amount: stockMove.amount,
      value_minor: stockMove.value_minor,
      bedId: stockMove.bedId,
      plantingId: stockMove.plantingId,
      applicationId: stockMove.applicationId,
      partId: stockMove.partId,
      unpriced: stockMove.unpriced,
    })
    .from(stockMove)
    .innerJoin(material, eq(material.id, stockMove.materialId))
    .where(lte(stockMove.date, to))
    .orderBy(asc(stockMove.materialId), asc(stockMove.date), sql`${stockMove.amount} < 0`, asc(stockMove.id))
    .all();
}

export type MoveFact = ReturnType<typeof movesUntil>[number];

/** What was put on beds between two days, at no cost and out of no stock, since nothing tells what its weight is in the material's unit. */
export function applicationsWithoutCost(db: FarmDb, from: string, to: string) {
  return db
    .select({
      materialId: application.materialId,
      bedId: applicationBed.bedId,
      plantingId: applicationBed.plantingId,
      amount_kg: applicationBed.amount_kg,
    })
    .from(applicationBed)
    .innerJoin(application, eq(application.id, applicationBed.applicationId))
    .innerJoin(material, eq(material.id, application.materialId))
    .where(
      and(
        eq(application.state, 'done'),
        gte(application.date, from),
        lte(application.date, to),
        eq(applicationBed.cost_minor, 0),
        eq(material.own, false),
        sql`not exists (select 1 from stock_move m where m.application_id = ${application.id})`,
      ),
    )
    .orderBy(asc(applicationBed.id))
    .all();
}

/** Applications done between two days with what they were said to cost. */
export function applicationCosts(db: FarmDb, from: string, to: string) {
  return db
    .select({
      applicationId: applicationBed.applicationId,
      bedId: applicationBed.bedId,
      plantingId: applicationBed.plantingId,
      cost_minor: applicationBed.cost_minor,
    })
    .from(applicationBed)
    .innerJoin(application, eq(application.id, applicationBed.applicationId))
    .where(
      and(
        eq(application.state, 'done'),
        gte(application.date, from),
        lte(application.date, to),
        sql`${applicationBed.cost_minor} <> 0`,
      ),
    )
    .orderBy(asc(applicationBed.id))
    .all();
}

const wagesOfEntry = sql`round(${labourEntry.minutes} * ${labourEntry.people} * ${labourEntry.wage_minor_per_h} / 60.0)`;

/** Hours and their wages between two days, by what they were for; each entry rounded to the minor unit, then added up. */
export function labourBetween(db: FarmDb, from: string, to: string, plantingIds: Keys = 'all') {
  return db
    .select({
      plantingId: labourEntry.plantingId,
      bedId: labourEntry.bedId,
      blockId: labourEntry.blockId,
      labour_h: sql<number>`sum(${labourEntry.minutes} * ${labourEntry.people}) / 60.0`,
      wages_minor: sql<number>`cast(sum(${wagesOfEntry}) as integer)`,
      /** Those of picking and packing. */
      harvestWages_minor: sql<number>`cast(sum(case when ${labourEntry.task} in ('harvest', 'pack') then ${wagesOfEntry} else 0 end) as integer)`,
    })
    .from(labourEntry)
    .where(and(gte(labourEntry.date, from), lte(labourEntry.date, to), among(labourEntry.plantingId, plantingIds)))
    .groupBy(labourEntry.plantingId, labourEntry.bedId, labourEntry.blockId)
    .orderBy(asc(labourEntry.plantingId), asc(labourEntry.bedId), asc(labourEntry.blockId))
    .all();
}

export type LabourFact = ReturnType<typeof labourBetween>[number];

export function overheadsOfSeason(db: FarmDb, seasonId: string) {
  return db.select().from(overhead).where(eq(overhead.seasonId, seasonId)).orderBy(asc(overhead.date), asc(overhead.id)).all();
}

export function addOverhead(db: FarmDb, row: typeof overhead.$inferInsert): void {
  db.insert(overhead).values(row).run();
}

export function removeOverhead(db: FarmDb, overheadId: string): void {
  db.delete(overhead).where(eq(overhead.id, overheadId)).run();
}

const soldWeight = sql<number>`coalesce(sum(case when ${harvest.weight_kg} is not null and ${harvest.amount} > 0 and ${harvest.unit} = ${saleLine.unit}
  then ${saleLine.amount} * ${harvest.weight_kg} / ${harvest.amount} when ${saleLine.unit} = 'kg' then ${saleLine.amount} else 0 end), 0)`;

/** Income of plantings by bed and outlet. The plantings are handed to the query: what they are planned to be is nothing to it. */
export function incomeOfPlantings(db: FarmDb, plantingIds: Keys) {
  return db
    .select({
      plantingId: saleLine.plantingId,
      bedId: harvest.bedId,
      outletId: sale.outletId,
      unit: saleLine.unit,
      amount: sql<number>`sum(${saleLine.amount})`,
      paid_minor: sql<number>`sum(${saleLine.paid_minor})`,
      sold_kg: soldWeight,
    })
    .from(saleLine)
    .innerJoin(sale, eq(sale.id, saleLine.saleId))
    .leftJoin(harvest, and(eq(harvest.id, saleLine.harvestId), eq(harvest.plantingId, saleLine.plantingId)))
    .where(and(among(saleLine.plantingId, plantingIds), eq(saleLine.outcome, 'sold')))
    .groupBy(saleLine.plantingId, harvest.bedId, sale.outletId, saleLine.unit)
    .orderBy(asc(saleLine.plantingId), asc(harvest.bedId), asc(sale.outletId), asc(saleLine.unit))
    .all();
}

/** Sales between two days of lots whose planting is not named on the line: to be given to the lot's harvests. */
export function incomeOfLots(db: FarmDb, from: string, to: string) {
  return db
    .select({ lotId: saleLine.lotId, outletId: sale.outletId, paid_minor: saleLine.paid_minor })
    .from(saleLine)
    .innerJoin(sale, eq(sale.id, saleLine.saleId))
    .where(and(isNull(saleLine.plantingId), eq(saleLine.outcome, 'sold'), gte(sale.date, from), lte(sale.date, to)))
    .all();
}

/** Harvests that went into lots. */
export function harvestsOfLots(db: FarmDb, from: string, to: string) {
  return db
    .select({ lotId: harvest.lotId, plantingId: harvest.plantingId, bedId: harvest.bedId, weight_kg: harvest.weight_kg })
    .from(harvest)
    .innerJoin(harvestLot, eq(harvestLot.id, harvest.lotId))
    .where(and(gte(harvestLot.date, from), lte(harvestLot.date, to)))
    .all();
}

/** Harvest of each planting of a season in the unit it is planned in. */
export function harvestOfSeason(db: FarmDb, seasonId: string) {
  return db
    .select({
      plantingId: planting.id,
      amount: sql<number>`coalesce(sum(${harvest.amount}), 0)`,
      weight_kg: sql<number | null>`sum(${harvest.weight_kg})`,
    })
    .from(planting)
    .innerJoin(harvest, and(eq(harvest.plantingId, planting.id), eq(harvest.unit, planting.yieldUnit)))
    .where(eq(planting.seasonId, seasonId))
    .groupBy(planting.id)
    .all();
}

/** Water given between two days, by line and bed. */
export function waterBetween(db: FarmDb, from: string, to: string) {
  return db
    .select({ lineId: waterEntry.lineId, bedId: waterEntry.bedId, volume_L: sql<number>`sum(${waterEntry.volume_L})` })
    .from(waterEntry)
    .where(and(gte(waterEntry.date, from), lte(waterEntry.date, to)))
    .groupBy(waterEntry.lineId, waterEntry.bedId)
    .all();
}

/** Lines with what runs them and whom they serve. */
export function linesForCost(db: FarmDb) {
  const lines = db.select({ lineId: waterLine.id, name: waterLine.name, source: waterLine.supplySource }).from(waterLine).all();
  const pumps = db
    .select({ lineId: pump.lineId, power_W: sql<number>`sum(${pump.power_W} * ${pump.count})` })
    .from(pump)
    .groupBy(pump.lineId)
    .all();
  const outlets = db
    .select({
      lineId: lineOutlet.lineId,
      bedId: lineOutlet.bedId,
      want: lineOutlet.wantShare,
      flow_L_per_h: lineOutlet.measured_L_per_h,
    })
    .from(lineOutlet)
    .orderBy(asc(lineOutlet.id))
    .all();
  const timers = db.select().from(timerEvent).all();
  return lines.map((line) => ({
    ...line,
    power_W: pumps.find((each) => each.lineId === line.lineId)?.power_W ?? 0,
    outlets: outlets.filter((each) => each.lineId === line.lineId),
    timers: timers.filter((each) => each.lineId === line.lineId),
  }));
}

/** Prices at which a crop was sold, one for each price and outlet, in its unit. */
export function pricesPaid(db: FarmDb, cropId: string, unit: string): readonly number[] {
  return db
    .selectDistinct({ price_minor: saleLine.price_minor })
    .from(saleLine)
    .innerJoin(planting, eq(planting.id, saleLine.plantingId))
    .where(and(eq(planting.cropId, cropId), eq(saleLine.unit, unit), eq(saleLine.outcome, 'sold')))
    .all()
    .map((row) => row.price_minor);
}
