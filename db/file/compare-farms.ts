import Database from 'better-sqlite3';
import { farmFileErrorOf } from './errors.ts';
import { identifyFarmFile } from './identify.ts';

export type Step = { readonly note: string; readonly madeAt: string };

/** How many of one kind there are in the backup and now, and how many of them are not the same in both. */
export type KindOfRow = {
  readonly what: string;
  readonly inBackup: number;
  readonly inFarm: number;
  /** Here now, not in the backup: lost by going back. */
  readonly added: number;
  /** In the backup, not here now: come again by going back. */
  readonly removed: number;
  readonly changed: number;
};

export type FarmPreview = {
  readonly farm: string;
  readonly kinds: readonly KindOfRow[];
  /** The backup's own newest changes, latest first. */
  readonly changes: readonly Step[];
  /** Changes made since, latest first, at most {@link SHOWN_STEPS}; going back takes them all. */
  readonly since: readonly Step[];
  readonly sinceCount: number;
};

const SHOWN_STEPS = 8;

const compared = [
  ['farm', 'the farm’s settings'],
  ['bed', 'beds'],
  ['planting', 'plantings'],
  ['harvest', 'harvest entries'],
  ['soil_test', 'soil tests'],
  ['application', 'applications'],
  ['purchase', 'purchases'],
  ['stock_move', 'stock movements'],
  ['sale', 'sales'],
  ['labour_entry', 'labour entries'],
  ['task', 'tasks'],
  ['design', 'designs'],
  ['material', 'materials'],
  ['water_line', 'water lines'],
] as const;

type Row = Readonly<Record<string, unknown>>;

const hasTable = (sqlite: Database.Database, table: string): boolean =>
  sqlite.prepare<[string]>(`SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = ?`).get(table) !== undefined;

const columnsOf = (sqlite: Database.Database, table: string): readonly string[] =>
  sqlite.prepare<[], string>(`SELECT name FROM pragma_table_info('${table}')`).pluck().all();

/** Every row as text under its key. A row's `revision` counts up for ever and is no difference. */
function rowsOf(sqlite: Database.Database, table: string, columns: readonly string[]): Map<unknown, string> {
  const named = columns.map((name) => `"${name}"`).join(', ');
  const rows = sqlite.prepare<[], Row>(`SELECT ${named} FROM "${table}"`);
  const found = new Map<unknown, string>();
  for (const row of rows.iterate()) found.set(row['id'], JSON.stringify(Object.values(row)));
  return found;
}

function compareTable(now: Database.Database, then: Database.Database, table: string, what: string): KindOfRow {
  if (!hasTable(then, table)) {
    const count = now.prepare<[], number>(`SELECT count(*) FROM "${table}"`).pluck().get() ?? 0;
    return { what, inBackup: 0, inFarm: count, added: count, removed: 0, changed: 0 };
  }
  const old = new Set(columnsOf(then, table));
  const columns = columnsOf(now, table).filter((name) => old.has(name) && name !== 'revision');
  const [here, there] = [rowsOf(now, table, columns), rowsOf(then, table, columns)];
  let added = 0;
  let changed = 0;
  for (const [key, row] of here) {
    const before = there.get(key);
    if (before === undefined) added += 1;
    else if (before !== row) changed += 1;
  }
  return { what, inBackup: there.size, inFarm: here.size, added, changed, removed: there.size - (here.size - added) };
}

const stepsOf = (sqlite: Database.Database): readonly (Step & { readonly id: number })[] =>
  hasTable(sqlite, 'undo_step')
    ? sqlite
        .prepare<[], Step & { readonly id: number }>(
          'SELECT id, note, made_at AS madeAt FROM undo_step WHERE undone = 0 ORDER BY id DESC',
        )
        .all()
    : [];

const shown = (steps: readonly Step[]): readonly Step[] =>
  steps.slice(0, SHOWN_STEPS).map(({ note, madeAt }) => ({ note, madeAt }));

/**
 * Looks into a backup, through a connection that cannot write, and says what differs in the open farm. A table or column that
 * an older file lacks is no difference in what both have.
 */
export function compareFarms(now: Database.Database, backup: string): FarmPreview {
  identifyFarmFile(backup, Number.MAX_SAFE_INTEGER);
  let then: Database.Database | undefined;
  try {
    const opened = new Database(backup, { readonly: true, timeout: 0 });
    then = opened;
    const farm = hasTable(opened, 'farm') ? (opened.prepare<[], string>('SELECT name FROM farm').pluck().get() ?? '') : '';
    const before = stepsOf(opened);
    const known = new Set(before.map(({ id, madeAt, note }) => `${id} ${madeAt} ${note}`));
    const since = stepsOf(now).filter(({ id, madeAt, note }) => !known.has(`${id} ${madeAt} ${note}`));
    return {
      farm,
      kinds: compared.map(([table, what]) => compareTable(now, opened, table, what)),
      changes: shown(before),
      since: shown(since),
      sinceCount: since.length,
    };
  } catch (error) {
    throw farmFileErrorOf(error, backup);
  } finally {
    then?.close();
  }
}
