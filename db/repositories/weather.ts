import { and, asc, eq, gte, lte, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { station, weatherDay } from '../schema/weather.ts';
import { insertAll } from './insert-all.ts';

export type StationRow = typeof station.$inferSelect;
export type NewStation = typeof station.$inferInsert;
export type WeatherDayRow = typeof weatherDay.$inferSelect;
export type NewWeatherDay = typeof weatherDay.$inferInsert;

/** Stations of the farm with the reach of their records. */
export function stationsOfFarm(db: FarmDb) {
  return db
    .select({
      stationId: station.id,
      name: station.name,
      latitude_deg: station.latitude_deg,
      longitude_deg: station.longitude_deg,
      elevation_m: station.elevation_m,
      windHeight_m: station.windHeight_m,
      source: station.source,
      days: sql<number>`count(${weatherDay.date})`,
      filled: sql<number>`coalesce(sum(${weatherDay.filled}), 0)`,
      from: sql<string | null>`min(${weatherDay.date})`,
      to: sql<string | null>`max(${weatherDay.date})`,
    })
    .from(station)
    .leftJoin(weatherDay, eq(weatherDay.stationId, station.id))
    .groupBy(station.id)
    .orderBy(asc(station.name))
    .all();
}

export function stationOfId(db: FarmDb, stationId: string): StationRow | undefined {
  return db.select().from(station).where(eq(station.id, stationId)).get();
}

export function daysOfStation(db: FarmDb, stationId: string): readonly WeatherDayRow[] {
  return db.select().from(weatherDay).where(eq(weatherDay.stationId, stationId)).orderBy(asc(weatherDay.date)).all();
}

export function dayOfStation(db: FarmDb, stationId: string, date: string): WeatherDayRow | undefined {
  return db
    .select()
    .from(weatherDay)
    .where(and(eq(weatherDay.stationId, stationId), eq(weatherDay.date, date)))
    .get();
}

export function addStation(db: FarmDb, row: NewStation): void {
  db.insert(station).values(row).run();
}

export function changeStation(db: FarmDb, stationId: string, values: Partial<NewStation>): boolean {
  return db.update(station).set(values).where(eq(station.id, stationId)).run().changes === 1;
}

export function removeStation(db: FarmDb, stationId: string): boolean {
  return db.delete(station).where(eq(station.id, stationId)).run().changes === 1;
}

/** Puts days in the place of whatever the record has between the first and the last of them. */
export function replaceDays(db: FarmDb, stationId: string, days: readonly NewWeatherDay[]): void {
  const first = days[0]?.date;
  const last = days.at(-1)?.date;
  if (first === undefined || last === undefined) return;
  db.delete(weatherDay)
    .where(and(eq(weatherDay.stationId, stationId), gte(weatherDay.date, first), lte(weatherDay.date, last)))
    .run();
  insertAll(db, weatherDay, days);
}
