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

/** So many statements are kept ready: more than the program has queries of a fixed text. */
const MOST_READY = 500;

/**
 * Statements made ready once for each text: making one takes longer than most queries run, the more so where triggers stand behind
 * a table. One that gives its rows as arrays does so from then on, so these are kept apart.
 */
class ReadyStatements {
  readonly #sqlite: Database.Database;
  readonly #ready = new Map<string, Database.Statement>();

  constructor(sqlite: Database.Database) {
    this.#sqlite = sqlite;
  }

  of(sql: string, gives: 'arrays' | 'objects'): Database.Statement {
    const key = `${gives} ${sql}`;
    const known = this.#ready.get(key);
    if (known !== undefined) return known.reader ? known.raw(gives === 'arrays') : known;
    const made = this.#sqlite.prepare(sql);
    const [eldest] = this.#ready.keys();
    if (this.#ready.size >= MOST_READY && eldest !== undefined) this.#ready.delete(eldest);
    this.#ready.set(key, made);
    return made;
  }
}

/** A query whose rows are mapped by a plan made once; the library asks again for each cell what its column is. */
class PlannedQuery<T extends Answers> extends PreparedQuery<T> {
  /** Set by the select builder after it has made the query. */
  declare joinsNotNullableMap?: NotNullable;
  readonly #fields: Fields;
  #rows: ((rows: readonly unknown[][]) => unknown[]) | undefined;

  constructor(
    statement: Database.Statement,
    logger: Logger,
    [query, fields, method, asArrays, , metadata, cache]: Prepare,
    planned: Fields,
  ) {
    super(statement, query, logger, new NoopCache(), metadata, cache, fields, method, asArrays, undefined);
    this.#fields = planned;
  }

  override all(placeholderValues?: Record<string, unknown>): T['all'] {
    this.#rows ??= rowMapper(this.#fields, this.joinsNotNullableMap);
    return this.#rows(this.values(placeholderValues) as unknown[][]) as T['all'];
  }
}

class PlannedSession extends BetterSQLiteSession<NoSchema, NoSchema> {
  readonly #statements: ReadyStatements;
  readonly #logger: Logger;

  constructor(sqlite: Database.Database, dialect: SQLiteSyncDialect, logger: Logger) {
    super(sqlite, dialect, undefined, { logger });
    this.#statements = new ReadyStatements(sqlite);
    this.#logger = logger;
  }

  override prepareQuery<T extends Answers>(
    query: Query,
    ...rest: Prepare extends [Query, ...infer R] ? R : never
  ): PreparedQuery<T> {
    const [fields, method, asArrays, ownMapper, metadata, cache] = rest;
    const statement = this.#statements.of(query.sql, fields === undefined && ownMapper === undefined ? 'objects' : 'arrays');
    return fields === undefined || ownMapper !== undefined
      ? new PreparedQuery<T>(
          statement,
          query,
          this.#logger,
          new NoopCache(),
          metadata,
          cache,
          fields,
          method,
          asArrays,
          ownMapper,
        )
      : new PlannedQuery<T>(statement, this.#logger, [query, ...rest], fields);
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
