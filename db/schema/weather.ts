import { integer, primaryKey, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { key } from './columns.ts';

export const station = sqliteTable('station', {
  id: key(),
  name: text('name').notNull(),
  latitude_deg: real('latitude_deg').notNull(),
  longitude_deg: real('longitude_deg').notNull(),
  elevation_m: real('elevation_m').notNull(),
  windHeight_m: real('wind_height_m').notNull().default(2),
  source: text('source').notNull(),
});

/** One day at a station. Empty is not known; a quality flag is kept as read. */
export const weatherDay = sqliteTable(
  'weather_day',
  {
    stationId: text('station_id')
      .notNull()
      .references(() => station.id, { onDelete: 'cascade' }),
    date: text('date').notNull(),
    tmin_C: real('tmin_C'),
    tmax_C: real('tmax_C'),
    rain_mm: real('rain_mm'),
    wind_m_per_s: real('wind_m_per_s'),
    rhmin_share: real('rhmin_share'),
    rhmax_share: real('rhmax_share'),
    radiation_MJ_per_m2: real('radiation_MJ_per_m2'),
    dewPoint_C: real('dew_point_C'),
    flags: text('flags').notNull().default(''),
    filled: integer('filled', { mode: 'boolean' }).notNull().default(false),
  },
  (t) => [primaryKey({ columns: [t.stationId, t.date] })],
);
