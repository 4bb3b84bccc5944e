import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { callerFactory } from '../../api/procedure.ts';
import { router } from '../../api/router.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';
import { changesOfProgram } from '../builders/change-inputs.ts';

type Procedure = { readonly _def: { readonly meta?: { readonly kind: string } } };
const changing = Object.entries(router._def.procedures as unknown as Readonly<Record<string, Procedure>>).flatMap(
  ([name, { _def }]) => (_def.meta?.kind === 'change' ? [name] : []),
);

let t: TestProgram;
beforeAll(() => {
  t = aProgram({ years: 1 });
});
afterAll(() => t.end());

/** Tables that hold no edits of the grower's. */
const apart = new Set(['undo_step', 'undo_change', '__drizzle_migrations', 'proposal']);

/** Every row of every table by its key, as one text a table. A row's `revision` only ever counts up, and is left out. */
function everything(): Readonly<Record<string, string>> {
  const { sqlite } = t.program.farm(null);
  const tables = sqlite
    .prepare<[], string>(`SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name`)
    .pluck()
    .all()
    .filter((name) => !apart.has(name));
  return Object.fromEntries(
    tables.map((table) => {
      const columns = sqlite.prepare<[], { name: string; pk: number }>(`PRAGMA table_info("${table}")`).all();
      const shown = columns.filter(({ name }) => name !== 'revision').map(({ name }) => `"${name}"`);
      const key = columns.filter(({ pk }) => pk > 0).map(({ name }) => `"${name}"`);
      const rows = sqlite
        .prepare(`SELECT ${shown.join(', ')} FROM "${table}" ORDER BY ${key.join(', ')}`)
        .raw()
        .all();
      return [table, rows.map((row) => JSON.stringify(row)).join('\n')];
    }),
  );
}

/** The tables that differ, so that a failure names them instead of printing the farm. */
const differing = (a: Readonly<Record<string, string>>, b: Readonly<Record<string, string>>): readonly string[] =>
  Object.keys(a).filter((table) => a[table] !== b[table]);

function closedAndOpened(): void {
  const path = join(t.folder, 'sample.bedwright');
  for (const { key } of t.program.farms()) t.program.close(key);
  t.program.open(path);
}

const state = () => t.program.farm(null).undoState();

type Call = (input: unknown) => Promise<unknown>;
const caller = () => callerFactory(router)(t.door) as unknown as Readonly<Record<string, Readonly<Record<string, Call>>>>;

describe('undo and redo of every change', () => {
  test('each changing procedure of the program has a call here', () => {
    expect(changing.length).toBeGreaterThan(100);
    expect(changesOfProgram(t).map(({ name }) => name)).toEqual(expect.arrayContaining(changing));
    expect(new Set(changesOfProgram(t).map(({ name }) => name)).size).toBe(changing.length);
  });

  test('no two changes go by the same name, and each name is a sentence with its thing in it', () => {
    const notes = changesOfProgram(t).map(({ note }) => note);
    expect(new Set(notes).size).toBe(notes.length);
    for (const note of notes) expect(note).toMatch(/^[A-Z][a-z]+ (?=.*\p{L}{3})/u);
  });

  test.each(changing)('%s', { timeout: 120_000 }, async (name) => {
    const found = changesOfProgram(t).find((each) => each.name === name);
    if (found === undefined) throw new Error(`Give ${name} an input in tests/builders/change-inputs.ts.`);
    const atRest = state().undo;
    const input = await found.input();
    const before = everything();
    const [group = '', leaf = ''] = name.split('.');
    const call = caller()[group]?.[leaf];
    if (call === undefined) throw new Error(`There is no procedure ${name}.`);
    await call(input);
    const after = everything();
    expect(differing(before, after), 'the call changed nothing').not.toEqual([]);
    expect(state()).toEqual({ undo: found.note, redo: null });

    expect(t.program.farm(null).undo()).toBe(found.note);
    expect(differing(before, everything()), 'not as before').toEqual([]);
    expect(state().redo).toBe(found.note);
    closedAndOpened();
    expect(t.program.farm(null).redo()).toBe(found.note);
    expect(differing(after, everything()), 'not as after, after a restart').toEqual([]);
    closedAndOpened();
    expect(t.program.farm(null).undo()).toBe(found.note);
    expect(differing(before, everything()), 'not as before, after a restart').toEqual([]);

    while (state().undo !== atRest && t.program.farm(null).undo() !== null);
  });
});
