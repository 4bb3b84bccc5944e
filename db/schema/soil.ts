import { index, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { bed } from './beds.ts';
import { flag, key, revision } from './columns.ts';
import { material } from './materials.ts';
import { planting } from './plantings.ts';
import { materialLot } from './stock.ts';

export const soilTest = sqliteTable('soil_test', {
  id: key(),
  date: text('date').notNull(),
  laboratory: text('laboratory').notNull().default(''),
  sample: text('sample').notNull().default(''),
  kind: text('kind', { enum: ['soil', 'media'] })
    .notNull()
    .default('soil'),
  method: text('method').notNull().default('mehlich-3'),
  depth_m: real('depth_m'),
  texture: text('texture'),
  ph: real('ph'),
  bufferPh: real('buffer_ph'),
  bufferMethod: text('buffer_method'),
  organicMatterShare: real('organic_matter_share'),
  cec_meq_per_100g: real('cec_meq_per_100g'),
  ec_dS_per_m: real('ec_dS_per_m'),
  lead_mg_per_kg: real('lead_mg_per_kg'),
  note: text('note').notNull().default(''),
  revision: revision(),
});

export const soilTestValue = sqliteTable('soil_test_value', {
  id: key(),
  testId: text('test_id')
    .notNull()
    .references(() => soilTest.id, { onDelete: 'cascade' }),
  nutrient: text('nutrient').notNull(),
  value_mg_per_kg: real('value_mg_per_kg').notNull(),
  enteredValue: real('entered_value').notNull(),
  enteredUnit: text('entered_unit').notNull(),
});

export const soilTestBed = sqliteTable(
  'soil_test_bed',
  {
    id: key(),
    testId: text('test_id')
      .notNull()
      .references(() => soilTest.id, { onDelete: 'cascade' }),
    bedId: text('bed_id')
      .notNull()
      .references(() => bed.id, { onDelete: 'cascade' }),
  },
  (t) => [index('soil_test_bed_bed').on(t.bedId), index('soil_test_bed_test').on(t.testId)],
);

/** A material put on or into beds, planned or done. */
export const application = sqliteTable('application', {
  id: key(),
  seasonId: text('season_id'),
  materialId: text('material_id')
    .notNull()
    .references(() => material.id),
  lotId: text('lot_id').references(() => materialLot.id),
  date: text('date').notNull(),
  time: text('time').notNull().default(''),
  state: text('state', { enum: ['planned', 'done', 'skipped'] }).notNull(),
  method: text('method').notNull().default('broadcast'),
  incorporatedDate: text('incorporated_date'),
  reason: text('reason').notNull().default(''),
  who: text('who').notNull().default(''),
  weather: text('weather').notNull().default(''),
  equipment: text('equipment').notNull().default(''),
  targetPest: text('target_pest').notNull().default(''),
  reEntry_h: real('re_entry_h'),
  preHarvest_days: integer('pre_harvest_days'),
  note: text('note').notNull().default(''),
  revision: revision(),
});

export const applicationBed = sqliteTable(
  'application_bed',
  {
    id: key(),
    applicationId: text('application_id')
      .notNull()
      .references(() => application.id, { onDelete: 'cascade' }),
    bedId: text('bed_id')
      .notNull()
      .references(() => bed.id),
    plantingId: text('planting_id').references(() => planting.id),
    amount_kg: real('amount_kg').notNull(),
    cost_minor: integer('cost_minor').notNull().default(0),
  },
  (t) => [index('application_bed_bed').on(t.bedId), index('application_bed_application').on(t.applicationId)],
);

/** The grower's wishes for feeding: how needs are set and what may be used. */
export const feedingPlan = sqliteTable('feeding_plan', {
  id: key(),
  seasonId: text('season_id').notNull().unique(),
  needBy: text('need_by', { enum: ['soil-test', 'removal'] })
    .notNull()
    .default('soil-test'),
  tolerance_share: real('tolerance_share').notNull().default(0.1),
  materialIds: text('material_ids', { mode: 'json' }).$type<readonly string[]>().notNull(),
  scoop_L: real('scoop_L').notNull().default(0.25),
  splits: integer('splits').notNull().default(1),
  splitWeeks: integer('split_weeks').notNull().default(4),
  firstDate: text('first_date'),
  targetPh: real('target_ph').notNull().default(6.5),
  limeMaterialId: text('lime_material_id').references(() => material.id),
  sulfurMaterialId: text('sulfur_material_id').references(() => material.id),
  organicOnly: flag('organic_only').notNull().default(false),
  /** Nitrate-N of the irrigation water and how much of it a season brings, where the grower knows them. */
  waterNitrateN_mg_per_L: real('water_nitrate_n_mg_per_L'),
  water_L_per_m2: real('water_L_per_m2'),
});

export const compostBatch = sqliteTable('compost_batch', {
  id: key(),
  code: text('code').notNull().unique(),
  startedDate: text('started_date').notNull(),
  curedDate: text('cured_date'),
  method: text('method', { enum: ['turned-windrow', 'static-aerated', 'in-vessel', 'cold', 'bought'] }).notNull(),
  place: text('place').notNull().default(''),
  materialId: text('material_id').references(() => material.id),
  made_L: real('made_L'),
  note: text('note').notNull().default(''),
  revision: revision(),
});

export const compostIngredient = sqliteTable('compost_ingredient', {
  id: key(),
  batchId: text('batch_id')
    .notNull()
    .references(() => compostBatch.id, { onDelete: 'cascade' }),
  materialId: text('material_id')
    .notNull()
    .references(() => material.id),
  amount_kg: real('amount_kg').notNull(),
});

export const compostReading = sqliteTable('compost_reading', {
  id: key(),
  batchId: text('batch_id')
    .notNull()
    .references(() => compostBatch.id, { onDelete: 'cascade' }),
  date: text('date').notNull(),
  temperature_C: real('temperature_C'),
  turned: flag('turned').notNull().default(false),
  moisture: text('moisture').notNull().default(''),
  who: text('who').notNull().default(''),
});

export const teaBatch = sqliteTable('tea_batch', {
  id: key(),
  code: text('code').notNull().unique(),
  compostBatchId: text('compost_batch_id').references(() => compostBatch.id),
  startedAt: text('started_at').notNull(),
  useByAt: text('use_by_at').notNull(),
  tank_L: real('tank_L').notNull(),
  compost_kg: real('compost_kg').notNull(),
  dilution: real('dilution').notNull(),
  additives: text('additives').notNull().default(''),
  waterSource: text('water_source').notNull().default(''),
  appliedDate: text('applied_date'),
  note: text('note').notNull().default(''),
});

export const teaBatchBed = sqliteTable('tea_batch_bed', {
  id: key(),
  batchId: text('batch_id')
    .notNull()
    .references(() => teaBatch.id, { onDelete: 'cascade' }),
  bedId: text('bed_id')
    .notNull()
    .references(() => bed.id),
  volume_L: real('volume_L').notNull(),
});
