import type Database from 'better-sqlite3';
import type { BetterSQLite3Database } from 'drizzle-orm/better-sqlite3';
import type { TableWrites } from './table-writes.ts';

/** What one farm may keep at the most; the eldest goes first. A season loaded whole is one of them. */
const MOST_KEPT = 90;

/** What something was worked out of. */
type Reads = {
  /** The tables, each with how many of its rows had been written by then. */
  readonly tables: Map<number, number>;
  /** Rows that are kept by themselves, each with how they are read again. */
  readonly rows: Map<string, { readonly value: unknown; readonly again: () => unknown }>;
};
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

const noReads = (): Reads => ({ tables: new Map(), rows: new Map() });

/** Notes that a query is about to read, for what is being worked out of its rows. */
export function noteRead(sqlite: Database.Database, sql: string, placeholders: number): void {
  const open = ofConnection.get(sqlite);
  const now = open?.making.at(-1);
  if (open === undefined || now === undefined) return;
  const tables = open.writes.readBy(sql, placeholders);
  if (tables === null) now.tables.set(UNWATCHED, 0);
  else for (const table of tables) if (!now.tables.has(table)) now.tables.set(table, open.writes.written(table));
}

function add(to: Reads | undefined, { tables, rows }: Reads): void {
  if (to === undefined) return;
  // the earlier count stands: what was read first may have been written since
  for (const [table, written] of tables) to.tables.set(table, Math.min(written, to.tables.get(table) ?? written));
  for (const [name, read] of rows) if (!to.rows.has(name)) to.rows.set(name, read);
}

const stillStands = ({ writes }: Open, { tables, rows }: Reads): boolean => {
  // what was read past the query builder is not known
  if (tables.size === 0 && rows.size === 0) return false;
  for (const [table, written] of tables) if (table === UNWATCHED || writes.written(table) !== written) return false;
  for (const { value, again } of rows.values()) if (again() !== value) return false;
  return true;
};

function made<T>(
  open: Open,
  name: string,
  make: (before: T | undefined) => T,
  before: T | undefined,
  from: readonly object[],
): { readonly value: T; readonly reads: Reads } {
  const reads = noReads();
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

/** What was kept under the name, or is made and kept now. */
function kept<T>(open: Open, name: string, make: (before: T | undefined) => T, from: readonly object[]): Kept {
  // the name is the only key to a value, and each name is made by one maker
  const before = open.kept.get(name);
  if (before !== undefined && stillStands(open, before.reads)) return before;
  open.kept.delete(name);
  const now: Kept = made(open, name, make, before?.value as T | undefined, from);
  const [eldest] = open.kept.keys();
  if (open.kept.size >= MOST_KEPT && eldest !== undefined) open.kept.delete(eldest);
  open.kept.set(name, now);
  return now;
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
  const { value, reads } = kept(open, name, make, from);
  add(open.making.at(-1), reads);
  if (typeof value === 'object' && value !== null) open.readsOf.set(value, reads);
  return value as T;
}

/**
 * Rows that are kept as {@link derived} keeps a value, and that what rests on them outlives: where their tables are written they are
 * read again, and where they are then the same as before, all that was worked out of them still stands. So a planting moved in one
 * season leaves the books of another alone.
 * @param name says what they are, with everything that `read` depends on beside the farm's rows
 * @param read gives flat rows: of text, numbers, booleans and null
 */
export function derivedRows<Row extends Readonly<Record<string, string | number | boolean | null>>>(
  db: BetterSQLite3Database,
  name: string,
  read: () => readonly Row[],
): readonly Row[] {
  const open = openFiles.get(db);
  if (open === undefined || open.sqlite.inTransaction) return read();
  const again = (): readonly Row[] =>
    kept<readonly Row[]>(
      open,
      name,
      (before) => {
        const now = read();
        return before !== undefined && sameRows(before, now) ? before : now;
      },
      [],
    ).value as readonly Row[];
  const value = again();
  const reads: Reads = { tables: new Map(), rows: new Map([[name, { value, again }]]) };
  add(open.making.at(-1), reads);
  open.readsOf.set(value, reads);
  return value;
}

function sameRows<Row extends object>(one: readonly Row[], other: readonly Row[]): boolean {
  return one.length === other.length && one.every((row, at) => sameRow(row, other[at] as Row));
}

function sameRow<Row extends object>(one: Row, other: Row): boolean {
  for (const key in one) if (!Object.is(one[key], other[key])) return false;
  return true;
}

/** Forgets what was kept, so that a bench can measure the work itself. */
export function forgetDerived(db: BetterSQLite3Database): void {
  openFiles.get(db)?.kept.clear();
}
