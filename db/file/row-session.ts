import type Database from 'better-sqlite3';
import { BetterSQLite3Database } from 'drizzle-orm/better-sqlite3';
import { BetterSQLiteSession, PreparedQuery } from 'drizzle-orm/better-sqlite3/session';
import { NoopCache } from 'drizzle-orm/cache/core';
import type { Logger } from 'drizzle-orm/logger';
import type { Query } from 'drizzle-orm/sql';
import { type PreparedQueryConfig, SQLiteSyncDialect } from 'drizzle-orm/sqlite-core';
import { keepDerived, noteRead } from './derived.ts';
import { type Fields, type NotNullable, rowMapper } from './row-mapper.ts';
import { countTableWrites } from './table-writes.ts';

type Answers = Omit<PreparedQueryConfig, 'statement' | 'run'>;
type NoSchema = Record<string, never>;
type Prepare = Parameters<BetterSQLiteSession<NoSchema, NoSchema>['prepareQuery']>;

/** A query whose rows are mapped by a plan made once; the library asks again for each cell what its column is. */
class PlannedQuery<T extends Answers> extends PreparedQuery<T> {
  /** Set by the select builder after it has made the query. */
  declare joinsNotNullableMap?: NotNullable;
  readonly #fields: Fields;
  #rows: ((rows: readonly unknown[][]) => unknown[]) | undefined;

  constructor(
    sqlite: Database.Database,
    logger: Logger,
    [query, fields, method, asArrays, , metadata, cache]: Prepare,
    planned: Fields,
  ) {
    super(sqlite.prepare(query.sql), query, logger, new NoopCache(), metadata, cache, fields, method, asArrays, undefined);
    this.#fields = planned;
  }

  override all(placeholderValues?: Record<string, unknown>): T['all'] {
    this.#rows ??= rowMapper(this.#fields, this.joinsNotNullableMap);
    return this.#rows(this.values(placeholderValues) as unknown[][]) as T['all'];
  }
}

class PlannedSession extends BetterSQLiteSession<NoSchema, NoSchema> {
  readonly #sqlite: Database.Database;
  readonly #logger: Logger;

  constructor(sqlite: Database.Database, dialect: SQLiteSyncDialect, logger: Logger) {
    super(sqlite, dialect, undefined, { logger });
    this.#sqlite = sqlite;
    this.#logger = logger;
  }

  override prepareQuery<T extends Answers>(
    query: Query,
    ...rest: Prepare extends [Query, ...infer R] ? R : never
  ): PreparedQuery<T> {
    const [fields, , , ownMapper] = rest;
    return fields === undefined || ownMapper !== undefined
      ? super.prepareQuery<T>(query, ...rest)
      : new PlannedQuery<T>(this.#sqlite, this.#logger, [query, ...rest], fields);
  }
}

/** The query builder on an open file. */
export function queriesOn(sqlite: Database.Database): BetterSQLite3Database {
  const dialect = new SQLiteSyncDialect();
  // the library tells its logger of each query just before it runs
  const logger: Logger = { logQuery: (query, values) => noteRead(sqlite, query, values.length) };
  const db = new BetterSQLite3Database('sync', dialect, new PlannedSession(sqlite, dialect, logger), undefined);
  keepDerived(db, sqlite, countTableWrites(sqlite));
  return db;
}
