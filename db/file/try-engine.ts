import Database from 'better-sqlite3';
import { drizzle } from 'drizzle-orm/better-sqlite3';
import { migrate } from 'drizzle-orm/better-sqlite3/migrator';

/**
 * Tries the database engine where no file is touched, in memory: every migration from the first, a row written, read and found again by the
 * engine's own check. Answers the engine's version.
 * @throws whatever the engine says
 */
export function tryEngine(migrations: string): string {
  const sqlite = new Database(':memory:');
  try {
    sqlite.pragma('foreign_keys = OFF');
    migrate(drizzle(sqlite), { migrationsFolder: migrations });
    sqlite
      .prepare(
        `INSERT INTO season (id, name, start_date, end_date, state) VALUES ('try', 'try', '2026-01-01', '2026-12-31', 'planning')`,
      )
      .run();
    const read = sqlite.prepare<[], string>('SELECT name FROM season').pluck().all();
    const verdict = sqlite.pragma('integrity_check', { simple: true });
    const broken = sqlite.pragma('foreign_key_check') as readonly unknown[];
    if (read.join() !== 'try' || verdict !== 'ok' || broken.length > 0)
      throw new Error(
        `The engine read ${read.length} rows, says ${String(verdict)}, and finds ${broken.length} rows that point to nothing.`,
      );
    return sqlite.prepare<[], string>('SELECT sqlite_version()').pluck().get() ?? '';
  } finally {
    sqlite.close();
  }
}
