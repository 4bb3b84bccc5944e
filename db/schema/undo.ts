import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

/** One named change of the grower's. `undone` steps lie after the present and can be redone. */
export const undoStep = sqliteTable('undo_step', {
  id: integer('id').primaryKey({ autoIncrement: true }),
  note: text('note').notNull(),
  madeAt: text('made_at').notNull(),
  undone: integer('undone', { mode: 'boolean' }).notNull().default(false),
});

/** The statements that take a step back, written by triggers in the step's own transaction. */
export const undoChange = sqliteTable(
  'undo_change',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    stepId: integer('step_id').notNull(),
    statement: text('statement').notNull(),
  },
  (t) => [index('undo_change_step').on(t.stepId)],
);
