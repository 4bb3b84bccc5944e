import type Database from 'better-sqlite3';

/** Tells which tables a query reads, and when a table was last written by this connection. */
export type TableWrites = {
  /** The tables, by number, that a query reads; null where one of them is not watched. */
  readonly readBy: (sql: string, placeholders: number) => ReadonlySet<number> | null;
  /** How many rows of a table were written since the file was opened. */
  readonly written: (table: number) => number;
};

type Step = { readonly opcode: string; readonly p2: number; readonly p3: number };
type Stored = { readonly name: string; readonly table: string; readonly rootpage: number; readonly type: string };

/** Tables whose rows are of no answer, or are not written through triggers. */
const isWatched = (name: string): boolean => !name.startsWith('sqlite_') && !name.startsWith('undo_') && !name.startsWith('__');

const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;
const MAIN = 0;
const HANDED_LIST = /\bjson_each\s*\(/i;

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
  sqlite.function('row_written', { deterministic: false }, (table: unknown) => {
    const written = Number(table);
    counts[written] = (counts[written] ?? 0) + 1;
    return null;
  });
  sqlite.exec(
    tables
      .flatMap((name, table) =>
        ['INSERT', 'UPDATE', 'DELETE'].map(
          (event) =>
            `CREATE TEMP TRIGGER ${quoted(`written_${name}_${event}`)} AFTER ${event} ON main.${quoted(name)} BEGIN SELECT row_written(${table}); END;`,
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
