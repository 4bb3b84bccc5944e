import { isNull, or, type SQL, sql } from 'drizzle-orm';
import type { SQLiteColumn } from 'drizzle-orm/sqlite-core';

/** The keys whose rows are asked for, or all; null is a key where the column may be empty. */
export type Keys = readonly (string | null)[] | 'all';

/** Rows whose column is one of the keys. They go as one list: the query is the same for any number of them. */
export function among(column: SQLiteColumn, keys: Keys): SQL | undefined {
  if (keys === 'all') return undefined;
  const listed = sql`${column} IN (SELECT value FROM json_each(${JSON.stringify(keys.filter((key) => key !== null))}))`;
  return keys.includes(null) ? or(listed, isNull(column)) : listed;
}
