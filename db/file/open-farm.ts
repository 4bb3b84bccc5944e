import { copyFileSync, cpSync, existsSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { type BetterSQLite3Database, drizzle } from 'drizzle-orm/better-sqlite3';
import { migrate } from 'drizzle-orm/better-sqlite3/migrator';
import { backupFolderOf, listBackups, makeBackup, renameBackups } from './backup.ts';
import { FarmFileError, farmFileErrorOf } from './errors.ts';
import { APPLICATION_ID, identifyFarmFile } from './identify.ts';
import { makeFolder } from './make-folder.ts';
import { queriesOn } from './row-session.ts';
import { stillThere } from './still-there.ts';
import { type UndoState, undoLog } from './undo.ts';
import { createUndoTriggers } from './undo-triggers.ts';

export type FarmDb = BetterSQLite3Database;

export type OpenOptions = {
  /** The folder of the generated migrations. */
  readonly migrations: string;
  /** The time as `YYYY-MM-DDTHH:MM:SS`, local. */
  readonly now: () => string;
};

/** An open farm file. */
export type FarmFile = {
  readonly path: string;
  readonly db: FarmDb;
  readonly sqlite: Database.Database;
  /** Runs one change as one transaction and one step of undo. */
  readonly change: <T>(note: string, run: () => T) => T;
  /** Runs writes that are no edit of the grower's (chosen columns, generated data) as one transaction, also within a change. */
  readonly unrecorded: <T>(run: () => T) => T;
  readonly undo: () => string | null;
  readonly redo: () => string | null;
  readonly undoState: () => UndoState;
  readonly backup: (why: 'daily' | 'migration' | 'by-hand' | 'restore') => string;
  /** Writes a consistent copy to a path where nothing is yet. */
  readonly saveCopy: (target: string) => void;
  /** Brings all that was written into the one file itself, as before the computer sleeps. It stays open. */
  readonly settle: () => void;
  readonly close: () => void;
};

type Journal = { readonly entries: readonly { readonly when: number; readonly tag: string }[] };

const journalOf = (migrations: string): Journal =>
  JSON.parse(readFileSync(join(migrations, 'meta', '_journal.json'), 'utf8')) as Journal;

function appliedMigrations(sqlite: Database.Database): { readonly count: number; readonly newest: number } {
  const known = sqlite.prepare(`SELECT 1 FROM sqlite_schema WHERE name = '__drizzle_migrations'`).get();
  if (known === undefined) return { count: 0, newest: 0 };
  const row = sqlite
    .prepare<[], { n: number; newest: number | null }>(
      'SELECT count(*) AS n, max(created_at) AS newest FROM __drizzle_migrations',
    )
    .get();
  return { count: row?.n ?? 0, newest: row?.newest ?? 0 };
}

/** Refuses a file that is not a whole farm file which this program knows; `name` is what the reader calls it. */
export function checkFarmFile(path: string, migrations: string, name: string): void {
  const journal = journalOf(migrations);
  try {
    identifyFarmFile(path, journal.entries.length);
    inspect(path, journal);
  } catch (error) {
    const known = farmFileErrorOf(error, path);
    if (!(known instanceof FarmFileError)) throw known;
    throw new FarmFileError(known.reason, name, known.message.replaceAll(path, name), { cause: error });
  }
}

/** Looks the whole file over through a connection that cannot write. */
function inspect(path: string, journal: Journal): void {
  const sqlite = new Database(path, { readonly: true, timeout: 0 });
  try {
    const verdict = sqlite.pragma('quick_check(1)', { simple: true });
    if (verdict !== 'ok') {
      throw new FarmFileError(
        'damaged',
        path,
        `${path} is damaged (${String(verdict)}) and was left as it is. Open the newest backup instead.`,
      );
    }
    const newestKnown = journal.entries.at(-1)?.when ?? 0;
    if (appliedMigrations(sqlite).newest > newestKnown) {
      throw new FarmFileError(
        'newer',
        path,
        `${path} was made by a newer version of this program. Update the program to open it.`,
      );
    }
  } finally {
    sqlite.close();
  }
}

function refuseReadOnly(path: string): void {
  const WRITE_BITS = 0o222;
  for (const place of [path, dirname(path)]) {
    if ((statSync(place).mode & WRITE_BITS) === 0) {
      throw new FarmFileError(
        'read-only',
        path,
        `${path} cannot be written: ${place === path ? 'the file' : 'its folder'} is read-only.`,
      );
    }
  }
}

function bringUpToDate(sqlite: Database.Database, path: string, options: OpenOptions, journal: Journal): void {
  const applied = appliedMigrations(sqlite);
  if (applied.count > 0 && applied.count < journal.entries.length) makeBackup(sqlite, path, 'migration', options.now());
  sqlite.pragma('foreign_keys = OFF');
  if (applied.count < journal.entries.length) {
    try {
      migrate(drizzle(sqlite), { migrationsFolder: options.migrations });
    } catch (error) {
      const known = farmFileErrorOf(error, path);
      if (known instanceof FarmFileError) throw known;
      throw new FarmFileError('migration', path, `${path} could not be brought up to date; it is as it was before.`, {
        cause: error,
      });
    }
    const broken = sqlite.pragma('foreign_key_check') as unknown[];
    if (broken.length > 0)
      throw new FarmFileError(
        'damaged',
        path,
        `${path} holds ${broken.length} rows that point to nothing. Open the newest backup instead.`,
      );
  }
  sqlite.pragma(`user_version = ${journal.entries.length}`);
  sqlite.pragma('foreign_keys = ON');
}

function connect(path: string): Database.Database {
  const sqlite = new Database(path, { timeout: 0 });
  sqlite.pragma('locking_mode = EXCLUSIVE');
  sqlite.pragma('journal_mode = WAL');
  sqlite.pragma('synchronous = FULL');
  sqlite.pragma('recursive_triggers = ON');
  sqlite.exec('BEGIN IMMEDIATE; COMMIT;');
  return sqlite;
}

function farmOf(sqlite: Database.Database, path: string, options: OpenOptions): FarmFile {
  createUndoTriggers(sqlite);
  const log = undoLog(sqlite, options.now);
  const requireStillThere = stillThere(path);
  const transact = <T>(run: () => T): T => {
    try {
      return sqlite.transaction(run).immediate();
    } catch (error) {
      throw farmFileErrorOf(error, path);
    }
  };
  const inTransaction = <T>(run: () => T): T => {
    requireStillThere();
    return transact(run);
  };
  return {
    path,
    db: queriesOn(sqlite),
    sqlite,
    change: (note, run) => inTransaction(() => log.recordStep(note, run)),
    unrecorded: (run) => inTransaction(() => log.aside(run)),
    undo: () => inTransaction(log.undo),
    redo: () => inTransaction(log.redo),
    undoState: log.state,
    backup: (why) => makeBackup(sqlite, path, why, options.now()),
    saveCopy: (target) => {
      try {
        makeFolder(dirname(target));
        sqlite.prepare('VACUUM INTO ?').run(target);
      } catch (error) {
        throw farmFileErrorOf(error, target);
      }
    },
    settle: () => {
      sqlite.pragma('wal_checkpoint(TRUNCATE)');
    },
    close: () => {
      if (!sqlite.open) return;
      transact(log.prune);
      sqlite.close();
    },
  };
}

/** Opens a farm file, bringing it up to date after a backup. Refuses with a {@link FarmFileError} and leaves the file as it was. */
export function openFarm(path: string, options: OpenOptions): FarmFile {
  const journal = journalOf(options.migrations);
  identifyFarmFile(path, journal.entries.length);
  let sqlite: Database.Database | undefined;
  try {
    inspect(path, journal);
    refuseReadOnly(path);
    sqlite = connect(path);
    bringUpToDate(sqlite, path, options, journal);
    const farm = farmOf(sqlite, path, options);
    const today = options.now().slice(0, 10);
    if (!listBackups(path).some((backup) => backup.why === 'daily' && backup.name.includes(` ${today} `))) farm.backup('daily');
    return farm;
  } catch (error) {
    sqlite?.close();
    throw farmFileErrorOf(error, path);
  }
}

/** Removes a farm file that was never finished, with what SQLite keeps beside it. */
export function removeFarmFile(path: string): void {
  for (const left of [path, `${path}-wal`, `${path}-shm`]) rmSync(left, { force: true });
}

/** Makes a new, empty farm file. Refuses to write over anything. */
export function createFarm(path: string, options: OpenOptions): FarmFile {
  if (existsSync(path)) throw new FarmFileError('exists', path, `There is already a file at ${path}. Choose another name.`);
  const journal = journalOf(options.migrations);
  let sqlite: Database.Database | undefined;
  try {
    makeFolder(dirname(path));
    refuseReadOnly(dirname(path));
    sqlite = new Database(path, { timeout: 0 });
    sqlite.pragma(`application_id = ${APPLICATION_ID}`);
    sqlite.pragma('user_version = 0');
    sqlite.close();
    sqlite = connect(path);
    bringUpToDate(sqlite, path, options, journal);
    return farmOf(sqlite, path, options);
  } catch (error) {
    sqlite?.close();
    removeFarmFile(path);
    throw farmFileErrorOf(error, path);
  }
}

/**
 * Puts a backup in the place of a farm file that is closed. The file as it stood is itself kept as a backup of the kind `restore` by the
 * caller before. The copy is checked first and moved into place in one step, so that a broken backup never replaces anything.
 */
export function replaceFarmFile(path: string, backup: string, options: OpenOptions): void {
  const journal = journalOf(options.migrations);
  const fresh = `${path}.restoring`;
  try {
    identifyFarmFile(backup, journal.entries.length);
    inspect(backup, journal);
    copyFileSync(backup, fresh);
    for (const left of [`${path}-wal`, `${path}-shm`]) rmSync(left, { force: true });
    renameSync(fresh, path);
  } catch (error) {
    rmSync(fresh, { force: true });
    throw farmFileErrorOf(error, path);
  }
}

/**
 * Moves a farm file that is closed, with its backups, to a place where nothing is yet. On another disk it is copied, the copy is
 * checked, and only then is the old one removed.
 */
export function moveFarmFile(from: string, to: string, options: OpenOptions): void {
  if (existsSync(to)) throw new FarmFileError('exists', to, `There is already a file at ${to}. Choose another name.`);
  const journal = journalOf(options.migrations);
  try {
    makeFolder(dirname(to));
    copyFileSync(from, to);
    identifyFarmFile(to, journal.entries.length);
    inspect(to, journal);
    const [oldBackups, newBackups] = [backupFolderOf(from), backupFolderOf(to)];
    if (existsSync(oldBackups) && !existsSync(newBackups)) {
      cpSync(oldBackups, newBackups, { recursive: true });
      renameBackups(newBackups, from, to);
    }
    removeFarmFile(from);
    if (existsSync(newBackups)) rmSync(oldBackups, { recursive: true, force: true });
  } catch (error) {
    throw farmFileErrorOf(error, to);
  }
}
