import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { z } from 'zod';
import { createApp } from '../../api/http/app.ts';
import { router } from '../../api/router.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';
import { arbitraryInput } from './arbitrary-input.ts';
import { loopRound } from './inputs-tried.ts';

/** Steps of a session with farm files in `npm test`; `npm run fuzz` goes further. */
const RUNS = Number(process.env['FUZZ'] ?? 10);
const SEED = Number(process.env['FUZZ_SEED'] ?? 42);
const STEPS = 8;

type AnyProcedure = { readonly _def: { readonly inputs: readonly z.ZodType[] } };
const procedures = Object.entries(router._def.procedures as unknown as Readonly<Record<string, AnyProcedure>>).filter(
  // Picking a file in the system's own dialog waits for a person.
  ([name]) => name.startsWith('files.') && name !== 'files.choose',
);

let t: TestProgram;
let app: ReturnType<typeof createApp>;
const sandbox = mkdtempSync(join(tmpdir(), 'bedwright-fuzz-files-'));

beforeAll(() => {
  t = aProgram({ beds: 2, years: 0 });
  app = createApp({ program: t.program, pages: t.folder });
  mkdirSync(join(sandbox, 'folder.bedwright'));
  writeFileSync(join(sandbox, 'text.bedwright'), 'a letter, no farm');
  writeFileSync(join(sandbox, 'empty.bedwright'), '');
});
afterAll(async () => {
  await t.end();
  rmSync(sandbox, { recursive: true, force: true });
});

/** Paths in a folder of the test's own, and such as no file can have: nothing is written anywhere else. */
const somePath = fc.oneof(
  fc
    .constantFrom('a', 'b', 'c.bedwright', 'é €', 'folder', 'text', 'empty', 'a/b', 'no such folder/x', 'sample')
    .map((name) => join(sandbox, name)),
  fc.constantFrom('', ' ', '\0', `${sandbox}/\0`, `${sandbox}/${'x'.repeat(400)}`, '/proc/none/x', '/dev/null', sandbox),
);
const somePlace = fc.constantFrom('sample', 'a', 'b').map((name) => join(t.folder, name));
const known = (field: string): fc.Arbitrary<unknown> | null =>
  /path|folder|to$/i.test(field) ? fc.oneof(somePath, somePlace) : field === 'key' ? fc.constantFrom('1', '2', '3', 'x') : null;

type Said = {
  readonly error?: { readonly message: string; readonly data: { readonly bedwright?: { readonly code: string } } };
};

/** Small farms only, since their size is tried elsewhere, and no path that climbs out of the test's folders. */
function kept(input: unknown): unknown {
  if (typeof input !== 'object' || input === null) return input;
  const path =
    'path' in input && typeof input.path === 'string' && input.path.startsWith('..') ? { path: join(sandbox, 'up') } : {};
  const size = 'beds' in input && typeof input.beds === 'number' ? { beds: Math.min(input.beds, 2), years: 0 } : {};
  return { ...input, ...path, ...size };
}

const step = fc.constantFrom(...procedures).chain(([name, procedure]) => {
  const schema = procedure._def.inputs[0];
  if (schema === undefined) throw new Error(`${name} does not check its input`);
  return fc.tuple(fc.constant(name), arbitraryInput(schema, known).map(kept), fc.constantFrom(null, '1', '2', '9'));
});

test('opening, making, moving, copying and restoring in any order with any path never ends in a fault of our own', {
  timeout: 900_000,
}, async () => {
  expect(procedures.length).toBeGreaterThan(8);
  await fc.assert(
    fc.asyncProperty(fc.array(step, { maxLength: STEPS }), async (steps) => {
      for (const [name, input, farmKey] of steps) {
        const answer = await app.fetch(
          new Request(`http://program/trpc/${name}?batch=1`, {
            method: 'POST',
            headers: { 'content-type': 'application/json', ...(farmKey === null ? {} : { 'x-bedwright-farm': farmKey }) },
            body: JSON.stringify(input === undefined ? {} : { 0: input }),
          }),
        );
        const text = await answer.text();
        await loopRound();
        expect(text).not.toMatch(/\n\s+at |node_modules|\.ts:\d/);
        const [said] = JSON.parse(text) as Said[];
        const code = said?.error?.data.bedwright?.code;
        expect(code, `${name}: ${said?.error?.message} ${code === 'bug' ? t.logged.at(-1) : ''}`).not.toBe('bug');
        if (said?.error !== undefined) expect(code).toBeDefined();
      }
      for (const { key } of t.program.farms())
        expect(t.program.farm(key).sqlite.pragma('quick_check', { simple: true })).toBe('ok');
      for (const { key } of t.program.farms()) t.program.close(key);
      for (const place of [sandbox, t.folder])
        for (const name of readdirSync(place))
          if (!/^(text|empty|folder)\.bedwright$/.test(name)) rmSync(join(place, name), { recursive: true });
      t.program.create(join(t.folder, 'sample.bedwright'), () => undefined);
    }),
    { numRuns: RUNS, seed: SEED, endOnFailure: true },
  );
});
