import type { SQLiteTable } from 'drizzle-orm/sqlite-core';
import type { FarmDb } from '../file/open-farm.ts';

/** SQLite takes this many values in one statement at the most. */
const MOST_VALUES = 32_000;

/** Inserts any number of rows of one table, some hundred to a statement. Rows may leave out different columns. */
export function insertAll<T extends SQLiteTable>(db: FarmDb, table: T, rows: readonly T['$inferInsert'][]): void {
  const width = Math.max(1, ...rows.slice(0, 1).map((row) => Object.keys(row).length), 40);
  const step = Math.max(1, Math.floor(MOST_VALUES / width / 2));
  for (let at = 0; at < rows.length; at += step)
    db.insert(table)
      .values(rows.slice(at, at + step) as T['$inferInsert'][])
      .run();
}
