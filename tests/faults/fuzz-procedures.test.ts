import type { Statement } from 'better-sqlite3';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { z } from 'zod';
import { createApp } from '../../api/http/app.ts';
import { router } from '../../api/router.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';
import { arbitraryInput } from './arbitrary-input.ts';
import { inputsTried, loopRound } from './inputs-tried.ts';

/** Inputs a procedure gets in `npm test`; `npm run fuzz` gives it more. */
const RUNS = Number(process.env['FUZZ'] ?? 12);
const SEED = Number(process.env['FUZZ_SEED'] ?? 42);

/** Threads of stopped jobs that may be ending at once. */
const MOST_JOBS = 3;

/** They open, close and write files: tried in `fuzz-files.test.ts`, in a folder of their own. */
const apart = /^files\./;

type Known = Readonly<Record<string, readonly string[]>>;
type AnyProcedure = { readonly _def: { readonly type: 'query' | 'mutation'; readonly inputs: readonly z.ZodType[] } };

const procedures = Object.entries(router._def.procedures as unknown as Readonly<Record<string, AnyProcedure>>).filter(
  ([name]) => !apart.test(name),
);

let t: TestProgram;
let app: ReturnType<typeof createApp>;
let keys: Known = {};
let counts: Statement<[]> | undefined;
const tried = inputsTried('procedures');

beforeAll(() => {
  t = aProgram({ beds: 8, years: 1 });
  app = createApp({ program: t.program, pages: t.folder });
  const idsOf = (table: string) => t.farm.sqlite.prepare<[], string>(`SELECT id FROM ${table} LIMIT 12`).pluck().all();
  keys = Object.fromEntries(
    [
      'bed',
      'block',
      'design',
      'material',
      'supplier',
      'offer',
      'crop',
      'season',
      'planting',
      'outlet',
      'harvest',
      'sale',
      'task',
      'application',
      'station',
    ].map((table) => [table, idsOf(table)]),
  );
  keys = {
    ...keys,
    line: idsOf('water_line'),
    test: idsOf('soil_test'),
    lot: idsOf('harvest_lot'),
    node: idsOf('line_node'),
    run: idsOf('line_run'),
    purchase: idsOf('purchase'),
  };
});
afterAll(async () => {
  tried.tell();
  await t.end();
});

const known = (field: string) => {
  const name = Object.keys(keys).find((each) => field.toLowerCase().startsWith(each) && /Ids?$/.test(field));
  const ids = name === undefined ? undefined : keys[name];
  return ids === undefined || ids.length === 0 ? null : fc.constantFrom(...ids);
};

type Said = {
  readonly result?: { readonly data?: { readonly jobId?: unknown } | null };
  readonly error?: {
    readonly message: string;
    readonly data: { readonly bedwright?: { readonly code: string; readonly reference?: string } };
  };
};

/** How many rows each table has and how often they were changed, cheap enough to be asked before and after each call. */
function rowsWritten(): unknown {
  counts ??= t.farm.sqlite.prepare(
    t.farm.sqlite
      .prepare<[], { readonly name: string; readonly revised: number }>(
        `SELECT name, EXISTS (SELECT 1 FROM pragma_table_info(sqlite_schema.name) WHERE name = 'revision') AS revised FROM sqlite_schema
         WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name NOT LIKE 'undo_%'`,
      )
      .all()
      .map(
        ({ name, revised }) =>
          `SELECT '${name}', count(*), ${revised === 1 ? 'total(revision)' : 'coalesce(max(rowid), 0)'} FROM "${name}"`,
      )
      .join(' UNION ALL '),
  );
  return counts.raw().all();
}

async function ask(name: string, input: unknown): Promise<{ readonly status: number; readonly text: string }> {
  const body = JSON.stringify(input === undefined ? {} : { 0: input });
  const answer = await app.fetch(
    new Request(`http://program/trpc/${name}?batch=1`, { method: 'POST', headers: { 'content-type': 'application/json' }, body }),
  );
  return { status: answer.status, text: await answer.text() };
}

describe('every procedure, given sense and nonsense', () => {
  test('there are procedures to try', () => expect(procedures.length).toBeGreaterThan(3));
  test.each(procedures)('%s answers or refuses in plain words', { timeout: 120_000 + RUNS * 3000 }, async (name, procedure) => {
    const schema = procedure._def.inputs[0];
    if (schema === undefined) throw new Error(`${name} does not check its input`);
    await fc.assert(
      fc.asyncProperty(arbitraryInput(schema, known), async (input) => {
        const before = rowsWritten();
        const { text } = await ask(name, input);
        const [said] = JSON.parse(text) as Said[];
        tried.add(name, said?.error?.data.bedwright?.code);
        const jobId = said?.result?.data?.jobId;
        if (typeof jobId === 'string' && jobId.startsWith('job-')) t.program.jobs.stop(jobId);
        do await loopRound();
        while (t.program.jobs.running() > MOST_JOBS);
        expect(text).not.toMatch(/\n\s+at |node_modules|\.ts:\d/);
        if (said?.error !== undefined) {
          const code = said.error.data.bedwright?.code;
          const detail = code === 'bug' ? t.logged.at(-1) : '';
          expect(code, `${said.error.message} ${detail}`).not.toBe('bug');
          expect(code).toBeDefined();
          expect(said.error.message.length).toBeGreaterThan(0);
          expect(rowsWritten(), 'a refused call wrote something').toEqual(before);
        }
      }),
      { numRuns: RUNS, seed: SEED },
    );
  });
  test('after all that the farm is sound', () => {
    expect(t.farm.sqlite.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(t.farm.sqlite.pragma('foreign_key_check')).toEqual([]);
  });
});
