import type Database from 'better-sqlite3';
import type { BetterSQLite3Database } from 'drizzle-orm/better-sqlite3';

/** What one farm may keep at the most; the eldest goes first. A season loaded whole is one of them. */
const MOST_KEPT = 40;

type Kept = { readonly changes: () => number; at: number; readonly values: Map<string, unknown> };

const keptOf = new WeakMap<BetterSQLite3Database, { readonly sqlite: Database.Database; readonly kept: Kept }>();

/** Lets what is worked out of an open file's rows be kept by {@link derived}. */
export function keepDerived(db: BetterSQLite3Database, sqlite: Database.Database): void {
  // counts every row this connection wrote since it was opened, by whatever way; the file is locked, so that nobody else writes
  const total = sqlite.prepare<[], number>('SELECT total_changes()').pluck();
  keptOf.set(db, { sqlite, kept: { changes: () => total.get() ?? 0, at: -1, values: new Map() } });
}

/**
 * What `make` works out of the farm's rows and of nothing else, kept until any row of the file is written: a change, an undo, a
 * redo or a setting. Inside a transaction it is made anew each time, since it may be rolled back. Whoever gets it must not alter it.
 * @param name says what it is, with everything that `make` depends on beside the rows
 */
export function derived<T>(db: BetterSQLite3Database, name: string, make: () => T): T {
  const open = keptOf.get(db);
  if (open === undefined || open.sqlite.inTransaction) return make();
  const { kept } = open;
  const now = kept.changes();
  if (kept.at !== now) {
    kept.values.clear();
    kept.at = now;
  }
  // the name is the only key to a value, and each name is made by one maker
  if (kept.values.has(name)) return kept.values.get(name) as T;
  const value = make();
  const [eldest] = kept.values.keys();
  if (kept.values.size >= MOST_KEPT && eldest !== undefined) kept.values.delete(eldest);
  kept.values.set(name, value);
  return value;
}

/** Forgets what was kept, so that a bench can measure the work itself. */
export function forgetDerived(db: BetterSQLite3Database): void {
  keptOf.get(db)?.kept.values.clear();
}
