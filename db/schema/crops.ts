import { real, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { flag, key, revision } from './columns.ts';

export const crop = sqliteTable('crop', {
  id: key(),
  name: text('name').notNull().unique(),
  botanicalName: text('botanical_name').notNull().default(''),
  family: text('family').notNull(),
  cropGroup: text('crop_group').notNull(),
  life: text('life').notNull().default('annual'),
  own: flag('own').notNull().default(false),
  hidden: flag('hidden').notNull().default(false),
  notes: text('notes').notNull().default(''),
  revision: revision(),
});

/** One known fact of a crop, or of a variety, with its source. The grower's own stands over the library's. */
export const cropValue = sqliteTable(
  'crop_value',
  {
    id: key(),
    cropId: text('crop_id')
      .notNull()
      .references(() => crop.id, { onDelete: 'cascade' }),
    varietyId: text('variety_id').references(() => variety.id, { onDelete: 'cascade' }),
    name: text('name').notNull(),
    number: real('number'),
    words: text('words'),
    origin: text('origin', { enum: ['library', 'own', 'learned'] }).notNull(),
    source: text('source').notNull().default(''),
  },
  (t) => [uniqueIndex('crop_value_fact').on(t.cropId, t.varietyId, t.name, t.origin)],
);

export const variety = sqliteTable('variety', {
  id: key(),
  cropId: text('crop_id')
    .notNull()
    .references(() => crop.id, { onDelete: 'cascade' }),
  name: text('name').notNull(),
  notes: text('notes').notNull().default(''),
  retired: flag('retired').notNull().default(false),
  revision: revision(),
});
