import { and, asc, eq, gt, isNotNull, lt, lte, ne, or, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { bedShare } from '../schema/beds.ts';
import { harvest, saleUnit } from '../schema/harvests.ts';
import { demand, planting, plantingBed } from '../schema/plantings.ts';
import { lineOutlet, pump, pumpPoint, waterLine } from '../schema/water.ts';
import { station, weatherDay } from '../schema/weather.ts';
import { labourEntry } from '../schema/work.ts';
import { among, type Keys } from './among.ts';

export type PlantingRow = typeof planting.$inferSelect;

/** Plantings that are in a bed at some time between two days, of whatever season, failed ones left out. */
export function plantingsBetween(
  db: FarmDb,
  start: string,
  end: string,
  seasonIds: Keys = 'all',
  withoutSeason: string | null = null,
): readonly PlantingRow[] {
  return db
    .select()
    .from(planting)
    .where(standingBetween(start, end, seasonIds, withoutSeason))
    .orderBy(asc(planting.inBedDate), asc(planting.id))
    .all();
}

/** Where those plantings stand. */
export function spansBetween(
  db: FarmDb,
  start: string,
  end: string,
  seasonIds: Keys = 'all',
  withoutSeason: string | null = null,
) {
  return db
    .select({
      seasonId: planting.seasonId,
      spanId: plantingBed.id,
      plantingId: plantingBed.plantingId,
      bedId: plantingBed.bedId,
      fromShare: plantingBed.fromShare,
      toShare: plantingBed.toShare,
      plants: plantingBed.plants,
    })
    .from(plantingBed)
    .innerJoin(planting, eq(planting.id, plantingBed.plantingId))
    .where(standingBetween(start, end, seasonIds, withoutSeason))
    .orderBy(asc(plantingBed.plantingId), asc(plantingBed.id))
    .all();
}

const standingBetween = (start: string, end: string, seasonIds: Keys, withoutSeason: string | null) =>
  and(
    lt(planting.inBedDate, end),
    gt(planting.clearDate, start),
    ne(planting.state, 'failed'),
    among(planting.seasonId, seasonIds),
    withoutSeason === null ? undefined : ne(planting.seasonId, withoutSeason),
  );

export function demandOfSeason(db: FarmDb, seasonId: string) {
  return db.select().from(demand).where(eq(demand.seasonId, seasonId)).orderBy(asc(demand.cropId), asc(demand.id)).all();
}

/** Shares at which beds are split. */
export function sharesOfBeds(db: FarmDb) {
  return db
    .select({ bedId: bedShare.bedId, fromShare: bedShare.fromShare, toShare: bedShare.toShare })
    .from(bedShare)
    .orderBy(asc(bedShare.bedId), asc(bedShare.fromShare))
    .all();
}

/** Area shares, yields and hours of plantings cleared before a day: what the farm's own records say of each crop. */
export function clearedPlantings(db: FarmDb, day: string, seasonIds: Keys = 'all') {
  return db
    .select({
      seasonId: planting.seasonId,
      plantingId: planting.id,
      cropId: planting.cropId,
      method: planting.method,
      bedId: plantingBed.bedId,
      share: sql<number>`${plantingBed.toShare} - ${plantingBed.fromShare}`,
      inBed: sql<string>`coalesce(${planting.inBedActual}, ${planting.inBedDate})`,
      free: sql<string>`coalesce(${planting.clearedActual}, ${planting.clearDate})`,
      firstHarvest: planting.firstHarvestActual,
      lastHarvest: planting.lastHarvestActual,
    })
    .from(planting)
    .innerJoin(plantingBed, eq(plantingBed.plantingId, planting.id))
    .where(and(eq(planting.state, 'cleared'), lte(planting.clearDate, day), among(planting.seasonId, seasonIds)))
    .orderBy(asc(planting.id), asc(plantingBed.id))
    .all();
}

/** What each planting gave, by unit, and the minutes of picking written beside it. */
export function harvestByPlanting(db: FarmDb, plantingIds: Keys = 'all') {
  return db
    .select({
      plantingId: harvest.plantingId,
      unit: harvest.unit,
      amount: sql<number>`sum(${harvest.amount})`,
      weight_kg: sql<number | null>`sum(${harvest.weight_kg})`,
    })
    .from(harvest)
    .where(among(harvest.plantingId, plantingIds))
    .groupBy(harvest.plantingId, harvest.unit)
    .orderBy(asc(harvest.plantingId), asc(harvest.unit))
    .all();
}

/** Minutes written down for each planting, by task. */
export function minutesByPlanting(db: FarmDb, plantingIds: Keys = 'all') {
  return db
    .select({
      plantingId: labourEntry.plantingId,
      task: labourEntry.task,
      minutes: sql<number>`sum(${labourEntry.minutes} * ${labourEntry.people})`,
    })
    .from(labourEntry)
    .where(and(isNotNull(labourEntry.plantingId), among(labourEntry.plantingId, plantingIds)))
    .groupBy(labourEntry.plantingId, labourEntry.task)
    .orderBy(asc(labourEntry.plantingId), asc(labourEntry.task))
    .all();
}

export function saleUnits(db: FarmDb) {
  return db.select({ cropId: saleUnit.cropId, unit: saleUnit.unit, net_kg: saleUnit.net_kg }).from(saleUnit).all();
}

/** Water lines with the most their pump can move, and the bed at each outlet. */
export function linesWithBeds(db: FarmDb) {
  return {
    lines: db
      .select({
        lineId: waterLine.id,
        name: waterLine.name,
        tapFlow_L_per_min: waterLine.tapFlow_L_per_min,
        pumpFlow_L_per_h: sql<number | null>`max(${pumpPoint.flow_L_per_h})`,
      })
      .from(waterLine)
      .leftJoin(pump, eq(pump.lineId, waterLine.id))
      .leftJoin(pumpPoint, eq(pumpPoint.pumpId, pump.id))
      .groupBy(waterLine.id)
      .orderBy(asc(waterLine.name), asc(waterLine.id))
      .all(),
    outlets: db
      .select({ lineId: lineOutlet.lineId, bedId: lineOutlet.bedId })
      .from(lineOutlet)
      .where(isNotNull(lineOutlet.bedId))
      .orderBy(asc(lineOutlet.id))
      .all(),
  };
}

/** The farm's weather station and all its days with temperatures. */
export function weatherOfStation(db: FarmDb, stationId: string) {
  const place = db.select().from(station).where(eq(station.id, stationId)).get();
  const days = db
    .select()
    .from(weatherDay)
    .where(and(eq(weatherDay.stationId, stationId), or(isNotNull(weatherDay.tmin_C), isNotNull(weatherDay.rain_mm))))
    .orderBy(asc(weatherDay.date))
    .all();
  return { place, days };
}
