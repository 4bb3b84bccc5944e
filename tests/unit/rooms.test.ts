import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));

const may: Readonly<Record<string, { readonly value: readonly string[]; readonly type: readonly string[] }>> = {
  planner: { value: [], type: [] },
  db: { value: [], type: ['planner'] },
  api: { value: ['db', 'planner'], type: [] },
  electron: { value: ['api'], type: [] },
  renderer: { value: ['planner', 'resources'], type: ['api'] },
};

const tiers: Readonly<Record<string, number>> = {
  units: 0,
  words: 1,
  beds: 1,
  crops: 1,
  climate: 1,
  soil: 2,
  fertility: 2,
  water: 2,
  irrigation: 2,
  season: 2,
  orders: 3,
  costs: 3,
};

/** Packages that belong to one room. `db/` owns the database; the others may name its types. */
const owners: Readonly<Record<string, readonly string[]>> = {
  electron: ['electron'],
  'better-sqlite3': ['db'],
  'drizzle-orm': ['db'],
  react: ['renderer'],
};

const importLine =
  /(?:^|[;}\n])\s*(import|export)(\s+type)?\s*(?:[\w*{](?:(?!\b(?:im|ex)port\b)[^'"`;])*?\sfrom\s*)?(['"])([^'"]+)\3|\bimport\s*\(\s*(['"`])([^'"`]+)\5/g;

type Import = { readonly from: string; readonly typeOnly: boolean };

function importsOf(text: string): Import[] {
  return [...text.matchAll(importLine)].map((found) => ({ from: found[4] ?? found[6] ?? '', typeOnly: found[2] !== undefined }));
}

const roomOf = (path: string): string => path.split('/')[0] ?? '';
const plannerFolderOf = (path: string): string => (path.split('/').length > 2 ? (path.split('/')[1] ?? '') : '');

/** Every breach of the arrows in one file. */
function breaches(path: string, text: string): string[] {
  const room = roomOf(path);
  const allowed = may[room];
  if (allowed === undefined) return [];
  return importsOf(text).flatMap(({ from, typeOnly }) => {
    if (!from.startsWith('.')) {
      const name = from.startsWith('@') ? from.split('/').slice(0, 2).join('/') : (from.split('/')[0] ?? '');
      const owner = owners[name];
      const wrong = owner !== undefined && !owner.includes(room) && !typeOnly;
      const impure = room === 'planner' && from.startsWith('node:');
      return wrong || impure ? [`${path} imports ${from}`] : [];
    }
    const target = normalize(join(dirname(path), from));
    const targetRoom = roomOf(target);
    if (targetRoom === room) {
      if (room !== 'planner') return [];
      const own = plannerFolderOf(path);
      const other = plannerFolderOf(target);
      if (own === other || other === '') return [];
      const ownTier = own === '' ? 0 : tiers[own];
      const otherTier = tiers[other];
      if (ownTier === undefined || otherTier === undefined)
        return [`${path}: the planner has no folder ${ownTier === undefined ? own : other}`];
      return otherTier < ownTier || (own === '' && otherTier === 0) ? [] : [`${path} imports the sibling ${target}`];
    }
    const fine = allowed.value.includes(targetRoom) || (typeOnly && allowed.type.includes(targetRoom));
    return fine ? [] : [`${path} imports ${target}`];
  });
}

function filesBelow(folder: string): string[] {
  const full = join(root, folder);
  if (!existsSync(full)) return [];
  return readdirSync(full, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join(folder, name).replaceAll('\\', '/'));
}

const files = Object.keys(may)
  .flatMap(filesBelow)
  .map((path) => ({ path, text: readFileSync(join(root, path), 'utf8') }));

describe('the rooms', () => {
  test('import along the arrows only', () => {
    expect(files.length).toBeGreaterThan(50);
    expect(files.flatMap(({ path, text }) => breaches(path, text))).toEqual([]);
  });

  test('the planner knows no clock and no chance', () => {
    const impure = files.filter(
      ({ path, text }) =>
        path.startsWith('planner/') && path !== 'planner/calendar.ts' && /\bnew Date\s*\(|\bDate\.now|\bMath\.random/.test(text),
    );
    expect(impure.map(({ path }) => path)).toEqual([]);
  });

  test('no file is a barrel, and none is called for what it is not', () => {
    const named = files.filter(({ path }) => /(^|\/)(index|utils?|helpers?|common|misc)\.tsx?$/.test(path));
    expect(named.map(({ path }) => path)).toEqual([]);
  });

  test('no import cycle', () => {
    const graph = new Map(
      files.map(({ path, text }) => [
        path,
        importsOf(text)
          .filter(({ from, typeOnly }) => from.startsWith('.') && !typeOnly)
          .map(({ from }) => normalize(join(dirname(path), from))),
      ]),
    );
    const state = new Map<string, 'open' | 'done'>();
    const cycles: string[] = [];
    const visit = (path: string, trail: readonly string[]): void => {
      if (state.get(path) === 'done') return;
      if (state.get(path) === 'open') {
        cycles.push([...trail.slice(trail.indexOf(path)), path].join(' -> '));
        return;
      }
      state.set(path, 'open');
      for (const next of graph.get(path) ?? []) visit(next, [...trail, path]);
      state.set(path, 'done');
    };
    for (const path of graph.keys()) visit(path, []);
    expect(cycles).toEqual([]);
  });
});

describe('the rule itself', () => {
  test('sees every form of import', () => {
    const sample = `import a from './a.ts';\nimport type { B } from '../b.ts';\nimport { c, type D } from "./c.ts";\nimport * as e from './e.ts';\nimport './f.ts';\nexport { g } from './g.ts';\nexport type { H } from './h.ts';\nconst i = await import('./i.ts');`;
    expect(importsOf(sample).map(({ from }) => from)).toEqual([
      './a.ts',
      '../b.ts',
      './c.ts',
      './e.ts',
      './f.ts',
      './g.ts',
      './h.ts',
      './i.ts',
    ]);
    expect(importsOf(sample).filter(({ typeOnly }) => typeOnly)).toHaveLength(2);
  });
  test('catches one bad file per rule', () => {
    expect(breaches('planner/soil/x.ts', `import { y } from '../../db/file/y.ts';`)).toHaveLength(1);
    expect(breaches('planner/soil/x.ts', `import { y } from '../water/y.ts';`)).toHaveLength(1);
    expect(breaches('planner/soil/x.ts', `import { readFileSync } from 'node:fs';`)).toHaveLength(1);
    expect(breaches('db/file/x.ts', `import { y } from '../../planner/money.ts';`)).toHaveLength(1);
    expect(breaches('db/file/x.ts', `import type { Y } from '../../planner/money.ts';`)).toHaveLength(0);
    expect(breaches('renderer/app/x.ts', `import { y } from '../../api/router.ts';`)).toHaveLength(1);
    expect(breaches('renderer/app/x.ts', `import type { Router } from '../../api/router.ts';`)).toHaveLength(0);
    expect(breaches('electron/x.ts', `import { y } from '../db/file/y.ts';`)).toHaveLength(1);
    expect(breaches('api/x.ts', `import { app } from 'electron';`)).toHaveLength(1);
    expect(relative(root, root)).toBe('');
  });
});
