import { index, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { bed, block } from './beds.ts';
import { flag, key, revision } from './columns.ts';
import { planting } from './plantings.ts';

export const labourEntry = sqliteTable(
  'labour_entry',
  {
    id: key(),
    date: text('date').notNull(),
    task: text('task').notNull(),
    minutes: real('minutes').notNull(),
    people: integer('people').notNull().default(1),
    wage_minor_per_h: integer('wage_minor_per_h').notNull(),
    standard: flag('standard').notNull().default(false),
    bedId: text('bed_id').references(() => bed.id),
    blockId: text('block_id').references(() => block.id),
    plantingId: text('planting_id').references(() => planting.id),
    harvestId: text('harvest_id'),
    who: text('who').notNull().default(''),
    note: text('note').notNull().default(''),
  },
  (t) => [index('labour_date').on(t.date), index('labour_planting').on(t.plantingId)],
);

/** Something to do. Made from the plan (`originKey` says of what) or by the grower. */
export const task = sqliteTable(
  'task',
  {
    id: key(),
    seasonId: text('season_id'),
    kind: text('kind').notNull(),
    title: text('title').notNull(),
    dueDate: text('due_date').notNull(),
    state: text('state', { enum: ['open', 'done', 'skipped'] })
      .notNull()
      .default('open'),
    doneDate: text('done_date'),
    originKey: text('origin_key'),
    plantingId: text('planting_id').references(() => planting.id, { onDelete: 'cascade' }),
    bedId: text('bed_id').references(() => bed.id, { onDelete: 'cascade' }),
    note: text('note').notNull().default(''),
    revision: revision(),
  },
  (t) => [index('task_due').on(t.dueDate), index('task_origin').on(t.originKey)],
);

/** Log entries that records regimes ask for: cleaning, training, inspection, illness, visitors, reviews. Appended, never changed. */
export const logEntry = sqliteTable('log_entry', {
  id: key(),
  kind: text('kind').notNull(),
  date: text('date').notNull(),
  time: text('time').notNull().default(''),
  createdAt: text('created_at').notNull(),
  place: text('place').notNull().default(''),
  who: text('who').notNull().default(''),
  observed: text('observed').notNull().default(''),
  details: text('details', { mode: 'json' }).$type<Readonly<Record<string, string>>>().notNull(),
  correctsId: text('corrects_id'),
  reviewedBy: text('reviewed_by'),
  reviewedDate: text('reviewed_date'),
});
