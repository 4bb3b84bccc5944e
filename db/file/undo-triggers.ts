import type Database from 'better-sqlite3';

/** Tables whose changes are not the grower's edits. */
const notRecorded = new Set(['undo_step', 'undo_change', '__drizzle_migrations', 'sqlite_sequence']);

type ColumnInfo = { readonly name: string; readonly pk: number };

const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;
const textOf = (words: string): string => `'${words.replaceAll("'", "''")}'`;

function triggersOf(table: string, columns: readonly ColumnInfo[]): string {
  const keys = columns.filter((column) => column.pk > 0);
  const where = (row: string) =>
    keys.map((k) => `${textOf(`${quoted(k.name)}=`)}||quote(${row}.${quoted(k.name)})`).join(`||' AND '||`);
  const kept = columns.filter((column) => column.name !== 'revision');
  const changes = kept.map(
    ({ name }) =>
      `CASE WHEN old.${quoted(name)} IS NOT new.${quoted(name)} THEN ${textOf(`,${quoted(name)}=`)}||quote(old.${quoted(name)}) ELSE '' END`,
  );
  const differs = kept.map(({ name }) => `old.${quoted(name)} IS NOT new.${quoted(name)}`).join(' OR ');
  const record = (statement: string) =>
    `INSERT INTO undo_change(step_id, statement) VALUES ((SELECT step FROM undo_now), ${statement});`;
  const recording = '(SELECT step FROM undo_now) IS NOT NULL';
  const t = quoted(table);
  const insertHead = textOf(`INSERT INTO ${t}(${columns.map((c) => quoted(c.name)).join(',')}) VALUES(`);
  const values = columns.map((c) => `quote(old.${quoted(c.name)})`).join(`||','||`);
  return `
    CREATE TEMP TRIGGER ${quoted(`undo_${table}_insert`)} AFTER INSERT ON main.${t} WHEN ${recording} BEGIN
      ${record(`${textOf(`DELETE FROM ${t} WHERE `)}||${where('new')}`)}
    END;
    CREATE TEMP TRIGGER ${quoted(`undo_${table}_update`)} AFTER UPDATE ON main.${t} WHEN ${recording} AND (${differs}) BEGIN
      ${record(`${textOf(`UPDATE ${t} SET `)}||substr(${changes.join('||')},2)||' WHERE '||${where('new')}`)}
    END;
    CREATE TEMP TRIGGER ${quoted(`undo_${table}_delete`)} AFTER DELETE ON main.${t} WHEN ${recording} BEGIN
      ${record(`${insertHead}||${values}||')'`)}
    END;`;
}

/**
 * Makes every table write, for each change, the statement that takes it back. The triggers are temporary: they live with the
 * connection, so that no migration meets or loses them, and are made anew at each opening. A row's `revision` is never
 * taken back, so that a stale window is refused after an undo too.
 */
export function createUndoTriggers(sqlite: Database.Database): void {
  sqlite.exec('CREATE TEMP TABLE undo_now(step INTEGER); INSERT INTO undo_now VALUES (NULL);');
  const tables = sqlite.prepare<[], { name: string }>(`SELECT name FROM main.sqlite_schema WHERE type = 'table'`).all();
  for (const { name } of tables) {
    if (notRecorded.has(name) || name.startsWith('sqlite_')) continue;
    const columns = sqlite.prepare<[], ColumnInfo>(`PRAGMA main.table_info(${quoted(name)})`).all();
    sqlite.exec(triggersOf(name, columns));
  }
}
