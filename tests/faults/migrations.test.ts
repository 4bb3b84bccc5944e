import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fillSampleFarm } from '../../api/sample/fill-sample-farm.ts';
import { backupFolderOf } from '../../db/file/backup.ts';
import { createFarm, openFarm } from '../../db/file/open-farm.ts';
import { FIXED_NOW, migrations, resources } from '../builders/a-farm.ts';

type Journal = { entries: { idx: number; when: number; tag: string }[] };
const journal = JSON.parse(readFileSync(join(migrations, 'meta', '_journal.json'), 'utf8')) as Journal;
const now = () => FIXED_NOW;
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'bedwright-migrations-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The migrations as a program of an earlier version had them: the first `count`. */
function migrationsUpTo(count: number, extra: readonly string[] = []): string {
  const place = join(folder, `migrations-${count}-${extra.length}`);
  cpSync(migrations, place, { recursive: true });
  const entries = journal.entries.slice(0, count);
  extra.forEach((sql, at) => {
    const tag = `9${at}_extra`;
    writeFileSync(join(place, `${tag}.sql`), sql);
    entries.push({
      ...(journal.entries[0] as Journal['entries'][number]),
      idx: count + at,
      when: (entries.at(-1)?.when ?? 0) + 1000,
      tag,
    });
  });
  mkdirSync(join(place, 'meta'), { recursive: true });
  writeFileSync(join(place, 'meta', '_journal.json'), JSON.stringify({ ...journal, entries }));
  return place;
}

type Column = {
  readonly name: string;
  readonly type: string;
  readonly notnull: number;
  readonly dflt_value: string | null;
  readonly pk: number;
};
type Key = { readonly table: string; readonly from: string };

/** Puts one row into every table, parents first, whatever the schema of that version is. */
function oneRowEach(file: Database.Database): Map<string, number> {
  file.pragma('foreign_keys = OFF');
  const tables = file
    .prepare<[], string>(
      `SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name NOT LIKE '\\_\\_%' ESCAPE '\\' AND name NOT LIKE 'undo_%'`,
    )
    .pluck()
    .all();
  for (const table of tables) {
    const columns = file.prepare<[], Column>(`PRAGMA table_info("${table}")`).all();
    const keys = file.prepare<[], Key>(`PRAGMA foreign_key_list("${table}")`).all();
    const values = columns.map((column) => {
      if (keys.some((each) => each.from === column.name)) return 'x';
      if (column.pk > 0 && column.type.toLowerCase() === 'text') return column.name === 'date' ? '2026-01-01' : 'x';
      return column.type.toLowerCase() === 'text' ? '1' : 1;
    });
    file
      .prepare(
        `INSERT INTO "${table}"(${columns.map((c) => `"${c.name}"`).join(',')}) VALUES (${columns.map(() => '?').join(',')})`,
      )
      .run(values);
  }
  expect(file.pragma('foreign_key_check')).toEqual([]);
  return new Map(tables.map((table) => [table, 1]));
}

describe('a farm of every earlier version', () => {
  test.each(journal.entries.map((entry, at) => [entry.tag, at + 1] as const))(
    'made by %s opens with every row kept, after a backup',
    (tag, count) => {
      const path = join(folder, `from-${tag}.bedwright`);
      const old = createFarm(path, { migrations: migrationsUpTo(count), now });
      old.close();
      const raw = new Database(path);
      const rows = oneRowEach(raw);
      raw.close();
      const farm = openFarm(path, { migrations, now });
      for (const [table, n] of rows) expect(farm.sqlite.prepare(`SELECT count(*) FROM "${table}"`).pluck().get(), table).toBe(n);
      expect(farm.sqlite.pragma('foreign_key_check')).toEqual([]);
      expect(farm.sqlite.pragma('integrity_check', { simple: true })).toBe('ok');
      expect(farm.sqlite.pragma('user_version', { simple: true })).toBe(journal.entries.length);
      expect(farm.sqlite.pragma('foreign_keys', { simple: true })).toBe(1);
      farm.close();
      const backups = readdirSync(backupFolderOf(path)).filter((name) => name.includes('migration'));
      expect(backups).toHaveLength(count < journal.entries.length ? 1 : 0);
    },
  );
});

/** The columns of a table by name, as this file has them. */
const columnsOf = (file: Database.Database, schema: string, table: string): string[] =>
  file.prepare<[string, string], string>('SELECT name FROM pragma_table_info(?, ?)').pluck().all(table, schema);

/** Copies the rows of an invented farm of today into a farm of an older version, as far as that version has the tables and columns. */
function copyRows(into: Database.Database, from: string): Map<string, { readonly columns: string; readonly rows: unknown[] }> {
  into.pragma('foreign_keys = OFF');
  into.prepare('ATTACH ? AS today').run(from);
  const tables = into
    .prepare<[], string>(
      `SELECT name FROM main.sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name NOT LIKE '\\_\\_%' ESCAPE '\\' AND name NOT LIKE 'undo_%'
       AND name IN (SELECT name FROM today.sqlite_schema)`,
    )
    .pluck()
    .all();
  const copied = new Map<string, { columns: string; rows: unknown[] }>();
  for (const table of tables) {
    const known = new Set(columnsOf(into, 'today', table));
    const columns = columnsOf(into, 'main', table)
      .filter((name) => known.has(name))
      .map((name) => `"${name}"`)
      .join(',');
    into.exec(`INSERT INTO main."${table}"(${columns}) SELECT ${columns} FROM today."${table}"`);
    copied.set(table, { columns, rows: into.prepare(`SELECT ${columns} FROM main."${table}" ORDER BY ${columns}`).raw().all() });
  }
  into.exec('DETACH today');
  return copied;
}

describe('an invented farm in every earlier version', () => {
  let today = '';
  beforeAll(() => {
    today = join(folder, 'today.bedwright');
    const farm = createFarm(today, { migrations, now });
    farm.unrecorded(() => fillSampleFarm(farm, { resources, beds: 24, years: 2, seed: 9 }));
    farm.close();
  });
  test.each(journal.entries.map((entry, at) => [entry.tag, at + 1] as const))('%s: every row is as it was', (tag, count) => {
    const path = join(folder, `sample-${tag}.bedwright`);
    createFarm(path, { migrations: migrationsUpTo(count), now }).close();
    const raw = new Database(path);
    const copied = copyRows(raw, today);
    raw.close();
    expect(copied.get('planting')?.rows.length).toBeGreaterThan(20);
    const farm = openFarm(path, { migrations, now });
    for (const [table, { columns, rows }] of copied)
      expect(farm.sqlite.prepare(`SELECT ${columns} FROM "${table}" ORDER BY ${columns}`).raw().all(), table).toEqual(rows);
    expect(farm.sqlite.pragma('foreign_key_check')).toEqual([]);
    farm.close();
  });
});

test('a migration that rebuilds a parent table keeps its children', () => {
  const path = join(folder, 'rebuild.bedwright');
  createFarm(path, { migrations, now }).close();
  const raw = new Database(path);
  oneRowEach(raw);
  const create = raw.prepare<[], string>(`SELECT sql FROM sqlite_schema WHERE name = 'block'`).pluck().get() ?? '';
  raw.close();
  const rebuild = `PRAGMA foreign_keys=OFF;--> statement-breakpoint
${create.replace(/CREATE TABLE [`"]block[`"]/, 'CREATE TABLE `__new_block`')};--> statement-breakpoint
INSERT INTO \`__new_block\` SELECT * FROM \`block\`;--> statement-breakpoint
DROP TABLE \`block\`;--> statement-breakpoint
ALTER TABLE \`__new_block\` RENAME TO \`block\`;--> statement-breakpoint
PRAGMA foreign_keys=ON;`;
  const farm = openFarm(path, { migrations: migrationsUpTo(journal.entries.length, [rebuild]), now });
  expect(farm.sqlite.prepare('SELECT count(*) FROM bed').pluck().get()).toBe(1);
  expect(farm.sqlite.prepare('SELECT count(*) FROM bed_part').pluck().get()).toBe(1);
  farm.close();
});

test('a migration that fails leaves the farm as it was, and its backup beside it', () => {
  const path = join(folder, 'fails.bedwright');
  createFarm(path, { migrations, now }).close();
  const raw = new Database(path);
  oneRowEach(raw);
  raw.close();
  const bad = 'ALTER TABLE `bed` ADD `odd` text;--> statement-breakpoint\nINSERT INTO no_such_table VALUES (1);';
  const extended = migrationsUpTo(journal.entries.length, [bad]);
  expect(() => openFarm(path, { migrations: extended, now })).toThrow(/could not be brought up to date; it is as it was before/);
  const farm = openFarm(path, { migrations, now });
  expect(farm.sqlite.prepare(`SELECT count(*) FROM pragma_table_info('bed') WHERE name = 'odd'`).pluck().get()).toBe(0);
  expect(farm.sqlite.prepare('SELECT count(*) FROM bed').pluck().get()).toBe(1);
  farm.close();
});

test('a migration killed by a cut between steps starts again at the next opening', () => {
  const path = join(folder, 'cut.bedwright');
  const first = createFarm(path, { migrations, now });
  first.sqlite.pragma('user_version = 0');
  first.close();
  const farm = openFarm(path, { migrations, now });
  expect(farm.sqlite.pragma('user_version', { simple: true })).toBe(journal.entries.length);
  farm.close();
});

test('parts put in from stock by an earlier version are paid for over their life; what had no price is known as such', () => {
  const whole = join(folder, 'whole.bedwright');
  const made = createFarm(whole, { migrations, now });
  made.unrecorded(() => fillSampleFarm(made, { resources, beds: 24, years: 1, seed: 9 }));
  made.close();
  const path = join(folder, 'parts-from-stock.bedwright');
  const before = journal.entries.findIndex((entry) => entry.tag.includes('parts_from_stock'));
  createFarm(path, { migrations: migrationsUpTo(before), now }).close();
  const raw = new Database(path);
  copyRows(raw, whole);
  const one = (sql: string): string => raw.prepare<[], string>(sql).pluck().get() ?? '';
  const lineId = one('SELECT id FROM water_line ORDER BY id');
  const bedId = one('SELECT id FROM bed ORDER BY id');
  raw.exec(`
    UPDATE material SET own = 1 WHERE id = 'hw-timer';
    INSERT INTO line_part (id, line_id, material_id, amount, price_minor, life_years, installed_date)
      VALUES ('timer', '${lineId}', 'hw-timer', 1, 900, 5, '2026-07-07'), ('gift', '${lineId}', 'hw-timer', 2, 0, 5, '2026-07-08');
    INSERT INTO bed_part (id, bed_id, material_id, amount, price_minor, life_years, installed_date)
      VALUES ('board', '${bedId}', 'hw-board', 3, 800, 5, '2026-07-07');
    INSERT INTO stock_move (id, material_id, date, kind, amount, value_minor, bed_id, reason)
      VALUES ('out-timer', 'hw-timer', '2026-07-07', 'use', -1, -900, NULL, 'Into the line'),
             ('out-board', 'hw-board', '2026-07-07', 'use', -3, -800, '${bedId}', 'Part replaced: rot'),
             ('counted', 'hw-timer', '2026-07-06', 'opening', 4, 0, NULL, 'count');
  `);
  raw.close();
  const farm = openFarm(path, { migrations, now });
  const get = (sql: string): unknown => farm.sqlite.prepare(sql).pluck().get();
  expect(get(`SELECT part_id FROM stock_move WHERE id = 'out-timer'`)).toBe('timer');
  expect(get(`SELECT part_id FROM stock_move WHERE id = 'out-board'`)).toBe('board');
  expect(get(`SELECT unpriced FROM stock_move WHERE id = 'counted'`)).toBe(1);
  expect(get(`SELECT unpriced_amount FROM line_part WHERE id = 'gift'`)).toBe(2);
  expect(get(`SELECT unpriced_amount FROM line_part WHERE id = 'timer'`)).toBe(0);
  // an edited material is no material of the farm's own ground
  expect(get(`SELECT group_concat(id) FROM material WHERE own = 1`)).toBe('soil-own-loose');
  farm.close();
});
