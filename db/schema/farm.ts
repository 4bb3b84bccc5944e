import { sql } from 'drizzle-orm';
import { check, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { flag, key, revision } from './columns.ts';

/** One row: the farm this file is. */
export const farm = sqliteTable(
  'farm',
  {
    id: integer('id').primaryKey(),
    name: text('name').notNull(),
    invented: flag('invented').notNull().default(false),
    latitude_deg: real('latitude_deg').notNull(),
    longitude_deg: real('longitude_deg').notNull(),
    elevation_m: real('elevation_m').notNull(),
    coastal: flag('coastal').notNull().default(false),
    currency: text('currency').notNull().default('USD'),
    minorDigits: integer('minor_digits').notNull().default(2),
    unitSystem: text('unit_system', { enum: ['us', 'metric'] })
      .notNull()
      .default('us'),
    language: text('language').notNull().default('en-US'),
    wage_minor_per_h: integer('wage_minor_per_h').notNull().default(0),
    interest_share_per_year: real('interest_share_per_year').notNull().default(0),
    partsMethod: text('parts_method', { enum: ['straight-line', 'capital-recovery'] })
      .notNull()
      .default('straight-line'),
    overheadKey: text('overhead_key', { enum: ['area', 'bed-days', 'plants', 'hours', 'income'] })
      .notNull()
      .default('bed-days'),
    electricity_minor_per_kWh: real('electricity_minor_per_kWh').notNull().default(0),
    water_minor_per_m3: real('water_minor_per_m3').notNull().default(0),
    recordsRegime: text('records_regime', { enum: ['none', 'organic', 'produce-safety', 'both'] })
      .notNull()
      .default('none'),
    organicOnly: flag('organic_only').notNull().default(false),
    /** Month and day (`MM-DD`) entered by hand where there is no weather record: early, median and late. */
    lastFrostEarly: text('last_frost_early'),
    lastFrostMedian: text('last_frost_median'),
    lastFrostLate: text('last_frost_late'),
    firstFrostEarly: text('first_frost_early'),
    firstFrostMedian: text('first_frost_median'),
    firstFrostLate: text('first_frost_late'),
    stationId: text('station_id'),
    north_deg: real('north_deg').notNull().default(0),
    /** Outline of the site on the drawing, `[[x_m, y_m], ...]` as JSON. */
    siteOutline_m: text('site_outline_m', { mode: 'json' }).$type<readonly (readonly [number, number])[]>(),
    bucket_L: real('bucket_L').notNull().default(18.927),
    barrow_L: real('barrow_L').notNull().default(85),
    can_L: real('can_L').notNull().default(9),
    vehicle_L: real('vehicle_L'),
    vehicle_kg: real('vehicle_kg'),
    /** The mix that cell trays are filled with. */
    trayMixId: text('tray_mix_id').notNull().default('mix-seedling'),
    contact: text('contact').notNull().default(''),
    revision: revision(),
  },
  (t) => [
    check('farm_one_row', sql`${t.id} = 1`),
    check('farm_latitude', sql`${t.latitude_deg} between -90 and 90`),
    check('farm_longitude', sql`${t.longitude_deg} between -180 and 180`),
  ],
);

/** Yearly costs that no bed or planting carries by itself. */
export const overhead = sqliteTable('overhead', {
  id: key(),
  seasonId: text('season_id'),
  name: text('name').notNull(),
  date: text('date').notNull(),
  amount_minor: integer('amount_minor').notNull(),
  shareKey: text('share_key', { enum: ['area', 'bed-days', 'plants', 'hours', 'income'] })
    .notNull()
    .default('bed-days'),
  category: text('category').notNull().default('overhead'),
});

/** What the program remembers for this farm: chosen columns, sizes, the grower's answers to "ask me once". */
export const setting = sqliteTable('setting', {
  name: text('name').primaryKey(),
  value: text('value', { mode: 'json' }).notNull(),
});
