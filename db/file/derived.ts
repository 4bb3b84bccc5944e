import { isDeepStrictEqual } from 'node:util';
import type Database from 'better-sqlite3';
import type { BetterSQLite3Database } from 'drizzle-orm/better-sqlite3';
import type { TableWrites } from './table-writes.ts';

/** What one farm may keep at the most; the eldest goes first. A season loaded whole is one of them. */
const MOST_KEPT = 120;

/** A table that was read: how many of its rows had been written by then; of a table that was read for one key alone, that key. */
type TableRead = { readonly written: number; readonly only: string | null };

/** What something was worked out of. */
type Reads = {
  readonly tables: Map<number, TableRead>;
  /** The tables of which no other rows are read than those of one key. */
  readonly only: ReadonlyMap<number, string>;
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

const noReads = (only: Reads['only'] = new Map()): Reads => ({ tables: new Map(), only, rows: new Map() });

/** Notes that a query is about to read, for what is being worked out of its rows. */
export function noteRead(sqlite: Database.Database, sql: string, placeholders: number): void {
  const open = ofConnection.get(sqlite);
  const now = open?.making.at(-1);
  if (open === undefined || now === undefined) return;
  const tables = open.writes.readBy(sql, placeholders);
  if (tables === null) now.tables.set(UNWATCHED, { written: 0, only: null });
  else for (const table of tables) note(now, table, { written: open.writes.written(table), only: now.only.get(table) ?? null });
}

function note({ tables }: Reads, table: number, read: TableRead): void {
  const known = tables.get(table);
  // the earlier count stands: what was read first may have been written since
  tables.set(
    table,
    known === undefined
      ? read
      : { written: Math.min(read.written, known.written), only: read.only === known.only ? read.only : null },
  );
}

function add(to: Reads | undefined, { tables, rows }: Reads): void {
  if (to === undefined) return;
  for (const [table, read] of tables) note(to, table, read);
  for (const [name, read] of rows) if (!to.rows.has(name)) to.rows.set(name, read);
}

const isWritten = ({ writes }: Open, table: number, { written, only }: TableRead): boolean => {
  if (table === UNWATCHED) return true;
  if (writes.written(table) === written) return false;
  return only === null || (writes.keysSince(table, written)?.has(only) ?? true);
};

const stillStands = (open: Open, { tables, rows }: Reads): boolean => {
  // what was read past the query builder is not known
  if (tables.size === 0 && rows.size === 0) return false;
  for (const [table, read] of tables) if (isWritten(open, table, read)) return false;
  for (const { value, again } of rows.values()) if (again() !== value) return false;
  return true;
};

function made<T>(
  open: Open,
  name: string,
  make: (before: T | undefined) => T,
  before: T | undefined,
  from: readonly object[],
  only?: Reads['only'],
): Kept & { readonly value: T } {
  const reads = noReads(only);
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
function kept<T>(
  open: Open,
  name: string,
  make: (before: T | undefined, reads: Reads | undefined) => T,
  from: readonly object[] = [],
  only?: Reads['only'],
): Kept {
  // the name is the only key to a value, and each name is made by one maker
  const before = open.kept.get(name);
  if (before !== undefined && stillStands(open, before.reads)) return before;
  open.kept.delete(name);
  const now: Kept = made(open, name, (value) => make(value, before?.reads), before?.value as T | undefined, from, only);
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
 * @param read gives rows of text, numbers, flags and null; lists and parts in them are compared whole, which takes longer
 * @param only for a table whose rows are told apart: the one key whose rows `read` asks for. They are not even read again where rows
 * of other keys alone were written
 */
export function derivedRows<Row extends object>(
  db: BetterSQLite3Database,
  name: string,
  read: () => readonly Row[],
  only: Readonly<Record<string, string>> = {},
): readonly Row[] {
  const open = openFiles.get(db);
  if (open === undefined || open.sqlite.inTransaction) return read();
  const keys = new Map(Object.entries(only).map(([table, key]) => [open.writes.numberOf(table), key]));
  const make = (before: readonly Row[] | undefined): readonly Row[] => {
    const now = read();
    return before !== undefined && sameRows(before, now) ? before : now;
  };
  return handOut(open, name, () => kept(open, name, make, [], keys).value as readonly Row[]);
}

/** Rows by the key that their table tells them apart by. */
export type RowsByKey<Row> = ReadonlyMap<string | null, readonly Row[]>;

/**
 * Rows by the key that tells the rows of their table apart, kept as {@link derivedRows} keeps rows: after a write the rows of the written
 * keys alone are read again. The order of the keys is not to be relied on.
 * @param name says what they are, with everything that `read` depends on beside the farm's rows
 * @param read gives the rows of the keys, or of all
 */
export function derivedByKey<Row extends object>(
  db: BetterSQLite3Database,
  name: string,
  {
    tables,
    keyOf,
    read,
  }: {
    /** Those of the tables read that are told apart by this key: one row of theirs is read for its own key alone. */
    readonly tables: readonly string[];
    readonly keyOf: (row: Row) => string | null;
    readonly read: (keys: readonly (string | null)[] | 'all') => readonly Row[];
  },
): RowsByKey<Row> {
  const all = (): RowsByKey<Row> => Map.groupBy(read('all'), keyOf);
  const open = openFiles.get(db);
  if (open === undefined || open.sqlite.inTransaction) return all();
  const make = (before: RowsByKey<Row> | undefined, reads: Reads | undefined): RowsByKey<Row> => {
    const keys = reads === undefined ? null : writtenKeys(open, new Set(tables.map(open.writes.numberOf)), reads);
    return before === undefined || keys === null ? all() : withKeys(before, keys, Map.groupBy(read([...keys]), keyOf));
  };
  return handOut(open, name, () => kept(open, name, make).value as RowsByKey<Row>);
}

/** The keys whose rows were written since they were read; null where that is not known, or something else was written too. */
function writtenKeys(open: Open, keyed: ReadonlySet<number>, { tables, rows }: Reads): ReadonlySet<string | null> | null {
  for (const { value, again } of rows.values()) if (again() !== value) return null;
  const keys = new Set<string | null>();
  for (const [table, read] of tables) {
    if (!isWritten(open, table, read)) continue;
    const since = keyed.has(table) ? open.writes.keysSince(table, read.written) : null;
    if (since === null) return null;
    for (const key of since) keys.add(key);
  }
  return keys;
}

function withKeys<Row extends object>(
  before: RowsByKey<Row>,
  keys: ReadonlySet<string | null>,
  now: RowsByKey<Row>,
): RowsByKey<Row> {
  const changed = [...keys].filter((key) => !sameRows(before.get(key) ?? [], now.get(key) ?? []));
  if (changed.length === 0) return before;
  const result = new Map(before);
  for (const key of changed) {
    const rows = now.get(key);
    if (rows === undefined) result.delete(key);
    else result.set(key, rows);
  }
  return result;
}

/** Hands out rows, and notes that what is being made rests on them and not on their tables. */
function handOut<T extends object>(open: Open, name: string, again: () => T): T {
  const value = again();
  const reads: Reads = { ...noReads(), rows: new Map([[name, { value, again }]]) };
  add(open.making.at(-1), reads);
  open.readsOf.set(value, reads);
  return value;
}

/** Whether two lists of rows of one query hold the same. */
export function sameRows<Row extends object>(one: readonly Row[], other: readonly Row[]): boolean {
  return one.length === other.length && one.every((row, at) => sameRow(row, other[at] as Row));
}

/** Whether two rows of one query hold the same. */
export function sameRow<Row extends object>(one: Row, other: Row): boolean {
  for (const key in one) {
    const [a, b]: unknown[] = [one[key], other[key]];
    if (!Object.is(a, b) && !(typeof a === 'object' && isDeepStrictEqual(a, b))) return false;
  }
  return true;
}

/** Forgets what was kept, so that a bench can measure the work itself. */
export function forgetDerived(db: BetterSQLite3Database): void {
  openFiles.get(db)?.kept.clear();
}
