import { index, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { bed } from './beds.ts';
import { flag, key, revision } from './columns.ts';
import { crop, variety } from './crops.ts';

export const season = sqliteTable('season', {
  id: key(),
  name: text('name').notNull().unique(),
  startDate: text('start_date').notNull(),
  endDate: text('end_date').notNull(),
  state: text('state', { enum: ['planning', 'running', 'closed'] }).notNull(),
  copiedFromId: text('copied_from_id'),
  benchArea_m2: real('bench_area_m2'),
  labour_h_per_week: real('labour_h_per_week'),
  revision: revision(),
});

/** A series of plantings of one crop. */
export const succession = sqliteTable('succession', {
  id: key(),
  seasonId: text('season_id')
    .notNull()
    .references(() => season.id, { onDelete: 'cascade' }),
  cropId: text('crop_id')
    .notNull()
    .references(() => crop.id),
  interval_days: integer('interval_days').notNull(),
  note: text('note').notNull().default(''),
});

export const planting = sqliteTable(
  'planting',
  {
    id: key(),
    seasonId: text('season_id')
      .notNull()
      .references(() => season.id),
    cropId: text('crop_id')
      .notNull()
      .references(() => crop.id),
    varietyId: text('variety_id').references(() => variety.id),
    successionId: text('succession_id').references(() => succession.id, { onDelete: 'set null' }),
    number: integer('number').notNull().default(1),
    method: text('method', { enum: ['direct', 'transplant', 'set'] }).notNull(),
    datesBy: text('dates_by', { enum: ['days', 'heat', 'hand'] })
      .notNull()
      .default('days'),
    sowDate: text('sow_date'),
    potOnDate: text('pot_on_date'),
    /** Sown or set out in the bed; the bed is taken from here. */
    inBedDate: text('in_bed_date').notNull(),
    firstHarvestDate: text('first_harvest_date').notNull(),
    lastHarvestDate: text('last_harvest_date').notNull(),
    /** First day the bed is free again. */
    clearDate: text('clear_date').notNull(),
    sownActual: text('sown_actual'),
    inBedActual: text('in_bed_actual'),
    firstHarvestActual: text('first_harvest_actual'),
    lastHarvestActual: text('last_harvest_actual'),
    clearedActual: text('cleared_actual'),
    layout: text('layout', { enum: ['square', 'staggered', 'rows'] })
      .notNull()
      .default('staggered'),
    inRow_m: real('in_row_m').notNull(),
    row_m: real('row_m').notNull(),
    margin_m: real('margin_m').notNull().default(0),
    plants: integer('plants').notNull(),
    plantsActual: integer('plants_actual'),
    seedsPerHole: integer('seeds_per_hole').notNull().default(1),
    cells: integer('cells'),
    yieldUnit: text('yield_unit').notNull().default('kg'),
    yieldLow: real('yield_low'),
    yieldTypical: real('yield_typical'),
    yieldHigh: real('yield_high'),
    price_minor: integer('price_minor'),
    state: text('state', { enum: ['planned', 'sown', 'growing', 'harvesting', 'cleared', 'failed'] })
      .notNull()
      .default('planned'),
    pinned: flag('pinned').notNull().default(false),
    seedLotId: text('seed_lot_id'),
    seedOrganic: text('seed_organic', { enum: ['yes', 'no', 'unknown'] })
      .notNull()
      .default('unknown'),
    touchesSoil: flag('touches_soil'),
    notes: text('notes').notNull().default(''),
    revision: revision(),
  },
  (t) => [index('planting_season').on(t.seasonId), index('planting_crop').on(t.cropId)],
);

/** The span of a bed's length (0 to 1) that a planting stands on. */
export const plantingBed = sqliteTable(
  'planting_bed',
  {
    id: key(),
    plantingId: text('planting_id')
      .notNull()
      .references(() => planting.id, { onDelete: 'cascade' }),
    bedId: text('bed_id')
      .notNull()
      .references(() => bed.id),
    fromShare: real('from_share').notNull().default(0),
    toShare: real('to_share').notNull().default(1),
    plants: integer('plants').notNull().default(0),
  },
  (t) => [index('planting_bed_bed').on(t.bedId), index('planting_bed_planting').on(t.plantingId)],
);

export const outlet = sqliteTable('outlet', {
  id: key(),
  name: text('name').notNull().unique(),
  kind: text('kind', { enum: ['box', 'stall', 'restaurant', 'shop', 'own-use', 'other'] }).notNull(),
  qualifiedEndUser: flag('qualified_end_user').notNull().default(false),
  contact: text('contact').notNull().default(''),
  retired: flag('retired').notNull().default(false),
});

export const price = sqliteTable('price', {
  id: key(),
  outletId: text('outlet_id')
    .notNull()
    .references(() => outlet.id, { onDelete: 'cascade' }),
  cropId: text('crop_id')
    .notNull()
    .references(() => crop.id),
  unit: text('unit').notNull(),
  grade: text('grade').notNull().default('first'),
  price_minor: integer('price_minor').notNull(),
  fromDate: text('from_date').notNull(),
});

/** What an outlet takes each week. */
export const demand = sqliteTable('demand', {
  id: key(),
  seasonId: text('season_id')
    .notNull()
    .references(() => season.id, { onDelete: 'cascade' }),
  outletId: text('outlet_id')
    .notNull()
    .references(() => outlet.id),
  cropId: text('crop_id')
    .notNull()
    .references(() => crop.id),
  kind: text('kind', { enum: ['standing', 'market'] }).notNull(),
  fromDate: text('from_date').notNull(),
  toDate: text('to_date').notNull(),
  amountPerWeek: real('amount_per_week').notNull(),
  unit: text('unit').notNull(),
  price_minor: integer('price_minor').notNull(),
  penalty_minor: integer('penalty_minor').notNull().default(0),
});

/** A plan the optimiser proposed, kept with what made it. */
export const proposal = sqliteTable('proposal', {
  id: key(),
  seasonId: text('season_id')
    .notNull()
    .references(() => season.id, { onDelete: 'cascade' }),
  madeAt: text('made_at').notNull(),
  goal: text('goal').notNull(),
  seed: integer('seed').notNull(),
  effort: text('effort').notNull(),
  program: text('program').notNull(),
  result: text('result', { mode: 'json' }).notNull(),
});
