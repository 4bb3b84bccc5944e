import { integer, text } from 'drizzle-orm/sqlite-core';

/** A key of our own making. Text, so that a key survives export, import and merging. */
export const key = () => text('id').primaryKey();

/** Counts changes of a row, so that a second window's stale save is refused and not merged by accident. */
export const revision = () => integer('revision').notNull().default(1);

/** True or false, stored as 1 or 0. */
export const flag = (name: string) => integer(name, { mode: 'boolean' });
