import Database from 'better-sqlite3';
import { farmFileErrorOf } from './errors.ts';
import { identifyFarmFile } from './identify.ts';

export type FarmPreview = {
  readonly farm: string;
  readonly counts: readonly { readonly what: string; readonly count: number }[];
  /** The newest changes, latest first. */
  readonly changes: readonly { readonly note: string; readonly madeAt: string }[];
};

const counted = [
  ['bed', 'beds'],
  ['planting', 'plantings'],
  ['harvest', 'harvest entries'],
  ['soil_test', 'soil tests'],
  ['purchase', 'purchases'],
  ['labour_entry', 'labour entries'],
] as const;

const SHOWN_CHANGES = 8;

/** Looks into a farm file that is not open, through a connection that cannot write. A table an older file lacks is not counted. */
export function previewFarm(path: string): FarmPreview {
  identifyFarmFile(path, Number.MAX_SAFE_INTEGER);
  let sqlite: Database.Database | undefined;
  try {
    sqlite = new Database(path, { readonly: true, timeout: 0 });
    const has = sqlite.prepare<[string], unknown>(`SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = ?`);
    const there = (table: string): boolean => has.get(table) !== undefined;
    const db = sqlite;
    const counts = counted.flatMap(([table, what]) =>
      there(table) ? [{ what, count: db.prepare<[], { n: number }>(`SELECT count(*) AS n FROM "${table}"`).get()?.n ?? 0 }] : [],
    );
    const changes = there('undo_step')
      ? db
          .prepare<[number], { note: string; madeAt: string }>(
            'SELECT note, made_at AS madeAt FROM undo_step WHERE undone = 0 ORDER BY id DESC LIMIT ?',
          )
          .all(SHOWN_CHANGES)
      : [];
    const farm = there('farm') ? (db.prepare<[], { name: string }>('SELECT name FROM farm').get()?.name ?? '') : '';
    return { farm, counts, changes };
  } catch (error) {
    throw farmFileErrorOf(error, path);
  } finally {
    sqlite?.close();
  }
}
