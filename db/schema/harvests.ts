import { index, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { bed } from './beds.ts';
import { key, revision } from './columns.ts';
import { outlet, planting } from './plantings.ts';

/** A distinct part of a crop; its code is never used again. */
export const harvestLot = sqliteTable('harvest_lot', {
  id: key(),
  code: text('code').notNull().unique(),
  date: text('date').notNull(),
  parentCodes: text('parent_codes', { mode: 'json' }).$type<readonly string[]>(),
  note: text('note').notNull().default(''),
});

export const harvest = sqliteTable(
  'harvest',
  {
    id: key(),
    date: text('date').notNull(),
    plantingId: text('planting_id')
      .notNull()
      .references(() => planting.id),
    bedId: text('bed_id').references(() => bed.id),
    amount: real('amount').notNull(),
    unit: text('unit').notNull(),
    /** Net weight, where the unit's weight is known. */
    weight_kg: real('weight_kg'),
    culls_kg: real('culls_kg').notNull().default(0),
    cullReason: text('cull_reason').notNull().default(''),
    grade: text('grade').notNull().default('first'),
    outletId: text('outlet_id').references(() => outlet.id),
    price_minor: integer('price_minor'),
    labour_min: real('labour_min'),
    lotId: text('lot_id').references(() => harvestLot.id),
    picker: text('picker').notNull().default(''),
    conditions: text('conditions').notNull().default(''),
    note: text('note').notNull().default(''),
    createdAt: text('created_at').notNull(),
    revision: revision(),
  },
  (t) => [index('harvest_planting').on(t.plantingId), index('harvest_date').on(t.date), index('harvest_lot_index').on(t.lotId)],
);

export const sale = sqliteTable(
  'sale',
  {
    id: key(),
    date: text('date').notNull(),
    outletId: text('outlet_id')
      .notNull()
      .references(() => outlet.id),
    buyer: text('buyer').notNull().default(''),
    documentNumber: text('document_number').notNull().default(''),
    note: text('note').notNull().default(''),
    revision: revision(),
  },
  (t) => [index('sale_date').on(t.date)],
);

export const saleLine = sqliteTable(
  'sale_line',
  {
    id: key(),
    saleId: text('sale_id')
      .notNull()
      .references(() => sale.id, { onDelete: 'cascade' }),
    lotId: text('lot_id').references(() => harvestLot.id),
    harvestId: text('harvest_id').references(() => harvest.id),
    plantingId: text('planting_id').references(() => planting.id),
    amount: real('amount').notNull(),
    unit: text('unit').notNull(),
    price_minor: integer('price_minor').notNull(),
    /** What was paid for the line; amount times price rounded once, when it was written. */
    paid_minor: integer('paid_minor').notNull(),
    outcome: text('outcome', { enum: ['sold', 'unsold', 'spoiled', 'given'] })
      .notNull()
      .default('sold'),
  },
  (t) => [index('sale_line_sale').on(t.saleId), index('sale_line_planting').on(t.plantingId), index('sale_line_lot').on(t.lotId)],
);

/** The grower's own net weights of units of sale. */
export const saleUnit = sqliteTable('sale_unit', {
  id: key(),
  cropId: text('crop_id'),
  unit: text('unit').notNull(),
  net_kg: real('net_kg').notNull(),
  source: text('source').notNull().default('own weighing'),
});
