import type Database from 'better-sqlite3';
import type { BetterSQLite3Database } from 'drizzle-orm/better-sqlite3';
import type { TableWrites } from './table-writes.ts';

/** What one farm may keep at the most; the eldest goes first. A season loaded whole is one of them. */
const MOST_KEPT = 60;

/** The tables that something was worked out of, each with how many of its rows had been written by then. */
type Reads = Map<number, number>;
type Kept = { readonly value: unknown; readonly reads: Reads };

type Open = {
  readonly sqlite: Database.Database;
  readonly writes: TableWrites;
  readonly kept: Map<string, Kept>;
  /** Of each value that was handed out, what it was worked out of: another may be made from it. */
  readonly readsOf: WeakMap<object, Reads>;
  /** What is being worked out now, the innermost last. */
  readonly making: Reads[];
};

const openFiles = new WeakMap<BetterSQLite3Database, Open>();
const ofConnection = new WeakMap<Database.Database, Open>();

/** Lets what is worked out of an open file's rows be kept by {@link derived}. */
export function keepDerived(db: BetterSQLite3Database, sqlite: Database.Database, writes: TableWrites): void {
  const open = { sqlite, writes, kept: new Map(), readsOf: new WeakMap(), making: [] };
  openFiles.set(db, open);
  ofConnection.set(sqlite, open);
}

/** A table that is not watched: all that rests on it is made anew each time. */
const UNWATCHED = -1;

/** Notes that a query is about to read, for what is being worked out of its rows. */
export function noteRead(sqlite: Database.Database, sql: string, placeholders: number): void {
  const open = ofConnection.get(sqlite);
  const now = open?.making.at(-1);
  if (open === undefined || now === undefined) return;
  const tables = open.writes.readBy(sql, placeholders);
  if (tables === null) now.set(UNWATCHED, 0);
  else for (const table of tables) if (!now.has(table)) now.set(table, open.writes.written(table));
}

function add(to: Reads | undefined, reads: Reads): void {
  // the earlier count stands: what was read first may have been written since
  if (to !== undefined) for (const [table, written] of reads) to.set(table, Math.min(written, to.get(table) ?? written));
}

const stillStands = ({ writes }: Open, reads: Reads): boolean => {
  // what was read past the query builder is not known
  if (reads.size === 0) return false;
  for (const [table, written] of reads) if (table === UNWATCHED || writes.written(table) !== written) return false;
  return true;
};

function made<T>(
  open: Open,
  name: string,
  make: (before: T | undefined) => T,
  before: T | undefined,
  from: readonly object[],
): { readonly value: T; readonly reads: Reads } {
  const reads: Reads = new Map();
  for (const each of from) {
    const known = open.readsOf.get(each);
    if (known === undefined) throw new RangeError(`What “${name}” is made from was not itself derived.`);
    add(reads, known);
  }
  open.making.push(reads);
  try {
    return { value: make(before), reads };
  } finally {
    open.making.pop();
  }
}

/**
 * What `make` works out of the farm's rows and of nothing else, kept until a row of a table that it read is written: by a change, an
 * undo, a redo or a setting. Which tables it reads is noted while it works. Inside a transaction it is made anew each time, since it
 * may be rolled back. Whoever gets it must not alter it.
 * @param name says what it is, with everything that `make` depends on beside the rows
 * @param make is given what was kept before, though rows were written since: it may take over the parts that it finds to be the same
 * @param from derived values that `make` is given instead of reading them
 */
export function derived<T>(
  db: BetterSQLite3Database,
  name: string,
  make: (before: T | undefined) => T,
  from: readonly object[] = [],
): T {
  const open = openFiles.get(db);
  if (open === undefined || open.sqlite.inTransaction) return make(undefined);
  const { kept, making } = open;
  // the name is the only key to a value, and each name is made by one maker
  const before = kept.get(name);
  if (before !== undefined && stillStands(open, before.reads)) {
    add(making.at(-1), before.reads);
    return before.value as T;
  }
  kept.delete(name);
  const { value, reads } = made(open, name, make, before?.value as T | undefined, from);
  add(making.at(-1), reads);
  if (typeof value === 'object' && value !== null) open.readsOf.set(value, reads);
  const [eldest] = kept.keys();
  if (kept.size >= MOST_KEPT && eldest !== undefined) kept.delete(eldest);
  kept.set(name, { value, reads });
  return value;
}

/** Forgets what was kept, so that a bench can measure the work itself. */
export function forgetDerived(db: BetterSQLite3Database): void {
  openFiles.get(db)?.kept.clear();
}
