import type Database from 'better-sqlite3';

/** Tells which tables a query reads, and when a table was last written by this connection. */
export type TableWrites = {
  /** The number of a table; it throws for a table that is not watched. */
  readonly numberOf: (name: string) => number;
  /** The tables, by number, that a query reads; null where one of them is not watched. */
  readonly readBy: (sql: string, placeholders: number) => ReadonlySet<number> | null;
  /** How many rows of a table were written since the file was opened. */
  readonly written: (table: number) => number;
  /**
   * By what the rows are told apart that were written since so many were; null where that is not known, or where the table's rows
   * are not told apart.
   */
  readonly keysSince: (table: number, written: number) => ReadonlySet<string | null> | null;
};

const ANY = '*';

/** What the rows of the large tables are told apart by, so that a write to one season or planting leaves the rest alone. */
const keyOfRow: Readonly<Record<string, (row: 'old' | 'new') => string>> = {
  planting: (row) => `${row}.season_id`,
  // gone with its planting, it may be of any season
  planting_bed: (row) => `coalesce((SELECT season_id FROM main.planting WHERE id = ${row}.planting_id), '${ANY}')`,
  harvest: (row) => `${row}.planting_id`,
  labour_entry: (row) => `${row}.planting_id`,
  sale_line: (row) => `${row}.planting_id`,
};

/** So many writes of a table are remembered by their keys at the least. */
const REMEMBERED = 2000;

/** The latest writes of one table by their keys. */
class KeyedWrites {
  #written: { readonly at: number; readonly key: string | null }[] = [];
  /** What was written up to here is forgotten. */
  #from = 0;

  add(at: number, key: string | null): void {
    if (key === ANY) {
      this.#written = [];
      this.#from = at;
      return;
    }
    this.#written.push({ at, key });
    if (this.#written.length < 2 * REMEMBERED) return;
    this.#written = this.#written.slice(-REMEMBERED);
    this.#from = (this.#written[0]?.at ?? at) - 1;
  }

  since(written: number): ReadonlySet<string | null> | null {
    if (written < this.#from) return null;
    return new Set(this.#written.filter(({ at }) => at > written).map(({ key }) => key));
  }
}

type Step = { readonly opcode: string; readonly p2: number; readonly p3: number };
type Stored = { readonly name: string; readonly table: string; readonly rootpage: number; readonly type: string };

/** Tables whose rows are of no answer, or are not written through triggers. */
const isWatched = (name: string): boolean => !name.startsWith('sqlite_') && !name.startsWith('undo_') && !name.startsWith('__');

const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;
const MAIN = 0;
const HANDED_LIST = /\bjson_each\s*\(/i;

/** What a written row was told apart by before and after. */
const rowsOfEvent = { INSERT: ['new'], UPDATE: ['old', 'new'], DELETE: ['old'] } as const;

/**
 * Counts the rows written to each table, by whatever way: a change, an undo, a cascade. The triggers are temporary, as those of
 * undo are. What a query reads is asked of the engine itself (`EXPLAIN`), so that no list of tables is kept by hand.
 */
export function countTableWrites(sqlite: Database.Database): TableWrites {
  const stored = sqlite
    .prepare<[], Stored>(`SELECT type, name, tbl_name AS "table", rootpage FROM main.sqlite_schema WHERE rootpage > 0`)
    .all();
  const tables = stored.filter(({ type, name }) => type === 'table' && isWatched(name)).map(({ name }) => name);
  const at = new Map(tables.map((name, table) => [name, table]));
  // an index has pages of its own, and a query may read nothing else
  const tableOfPage = new Map(stored.map(({ rootpage, table }) => [rootpage, at.get(table) ?? null]));
  const counts = new Float64Array(tables.length);
  const keyed = tables.map((name) => (keyOfRow[name] === undefined ? null : new KeyedWrites()));
  sqlite.function('row_written', { deterministic: false }, (table: unknown, key: unknown) => {
    const at = Number(table);
    const count = (counts[at] ?? 0) + 1;
    counts[at] = count;
    keyed[at]?.add(count, key === null ? null : String(key));
    return null;
  });
  const noted = (name: string, table: number, row: 'old' | 'new') =>
    `SELECT row_written(${table}, ${keyOfRow[name]?.(row) ?? 'NULL'});`;
  sqlite.exec(
    tables
      .flatMap((name, table) =>
        (Object.keys(rowsOfEvent) as (keyof typeof rowsOfEvent)[]).map(
          (event) =>
            `CREATE TEMP TRIGGER ${quoted(`written_${name}_${event}`)} AFTER ${event} ON main.${quoted(name)} BEGIN ${rowsOfEvent[event].map((row) => noted(name, table, row)).join(' ')} END;`,
        ),
      )
      .join('\n'),
  );
  const known = new Map<string, ReadonlySet<number> | null>();

  function explained(sql: string, placeholders: number): ReadonlySet<number> | null {
    const steps = sqlite.prepare<unknown[], Step>(`EXPLAIN ${sql}`).all(...Array.from({ length: placeholders }, () => null));
    const read = new Set<number>();
    // a list that was handed to the query is no table of the farm; any other virtual table is not known
    const lists = sql.split(HANDED_LIST).length - 1;
    if (steps.filter(({ opcode }) => opcode === 'VOpen').length > lists) return null;
    for (const { opcode, p2, p3 } of steps) {
      if ((opcode !== 'OpenRead' && opcode !== 'ReopenIdx') || p3 !== MAIN) continue;
      const table = tableOfPage.get(p2) ?? null;
      if (table === null) return null;
      read.add(table);
    }
    return read;
  }

  return {
    numberOf(name) {
      const table = at.get(name);
      if (table === undefined) throw new RangeError(`The table “${name}” is not watched.`);
      return table;
    },
    keysSince: (table, written) => keyed[table]?.since(written) ?? null,
    readBy(sql, placeholders) {
      const before = known.get(sql);
      if (before !== undefined) return before;
      const read = explained(sql, placeholders);
      known.set(sql, read);
      return read;
    },
    written: (table) => counts[table] ?? 0,
  };
}
