import { and, asc, eq, isNotNull } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { crop } from '../schema/crops.ts';
import { demand, outlet } from '../schema/plantings.ts';
import { station, weatherDay } from '../schema/weather.ts';

export type NewDemand = typeof demand.$inferInsert;

/** What outlets want over a season, by crop. */
export function demandOfSeason(db: FarmDb, seasonId: string) {
  return db
    .select({ demand, outletName: outlet.name, cropName: crop.name })
    .from(demand)
    .innerJoin(outlet, eq(outlet.id, demand.outletId))
    .innerJoin(crop, eq(crop.id, demand.cropId))
    .where(eq(demand.seasonId, seasonId))
    .orderBy(asc(crop.name), asc(outlet.name), asc(demand.fromDate))
    .all();
}

export function addDemand(db: FarmDb, row: NewDemand): void {
  db.insert(demand).values(row).run();
}

export function changeDemand(db: FarmDb, demandId: string, values: Partial<Omit<NewDemand, 'id'>>): boolean {
  return db.update(demand).set(values).where(eq(demand.id, demandId)).run().changes === 1;
}

export function removeDemand(db: FarmDb, demandId: string): boolean {
  return db.delete(demand).where(eq(demand.id, demandId)).run().changes === 1;
}

export function openOutlets(db: FarmDb) {
  return db
    .select({ id: outlet.id, name: outlet.name, kind: outlet.kind })
    .from(outlet)
    .where(eq(outlet.retired, false))
    .orderBy(asc(outlet.name))
    .all();
}

export function addOutlet(db: FarmDb, row: typeof outlet.$inferInsert): void {
  db.insert(outlet).values(row).run();
}

/** Daily extremes of a station, in order of date. Days without a minimum are left out. */
export function dailyExtremes(db: FarmDb, stationId: string) {
  return db
    .select({ date: weatherDay.date, tmin_C: weatherDay.tmin_C, tmax_C: weatherDay.tmax_C })
    .from(weatherDay)
    .where(and(eq(weatherDay.stationId, stationId), isNotNull(weatherDay.tmin_C)))
    .orderBy(asc(weatherDay.date))
    .all();
}

export function stationName(db: FarmDb, stationId: string): string | undefined {
  return db.select({ name: station.name }).from(station).where(eq(station.id, stationId)).get()?.name;
}
