import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { ProgramPlaces } from '../../api/program/program.ts';
import { exitCodeOf, printedResult, type SelfTestLine, selfTest } from '../../api/program/self-test.ts';
import { placesIn } from '../builders/a-farm.ts';

let data: string;
let places: ProgramPlaces;
beforeEach(() => {
  data = mkdtempSync(join(tmpdir(), 'bedwright-tested-'));
  places = placesIn(data);
});
afterEach(() => rmSync(data, { recursive: true, force: true }));

const broken = (lines: readonly SelfTestLine[]): readonly string[] => lines.filter(({ fine }) => !fine).map(({ what }) => what);
const folders = (): readonly string[] => readdirSync(tmpdir()).filter((name) => name.startsWith('bedwright-self-test-'));

test('all is fine here but what is broken on purpose, and nothing is left behind', async () => {
  const before = folders();
  const lines = await selfTest({ ...places, pages: join(data, 'none'), worker: pathToFileURL(join(data, 'none.js')) });
  expect(broken(lines)).toEqual(['the pages are there', 'long work runs in a thread of its own']);
  expect(lines).toHaveLength(9);
  expect(exitCodeOf(lines)).toBe(1);
  expect(printedResult(lines)).toMatch(/^NOT FINE: the pages are there \(.+\)$/m);
  expect(printedResult(lines)).toMatch(/Self-test failed: 2 of 9\.$/);
  expect(exitCodeOf(lines.filter(({ fine }) => fine))).toBe(0);
  expect(folders()).toEqual(before);
  expect(readdirSync(data)).toEqual([]);
});

test.each<[string, Partial<ProgramPlaces>, readonly string[]]>([
  ['the migrations', { migrations: '/nowhere' }, ['the database engine', 'a farm can be made', 'a change is kept', 'a backup']],
  ['the shipped data', { resources: '/nowhere' }, ['the shipped data', 'a farm can be made', 'a change is kept', 'a backup']],
  ['the fonts', { fonts: '/nowhere' }, ['a document can be made']],
])('without %s it says what that breaks', async (_what, lacking, wanted) => {
  const lines = await selfTest({ ...places, ...lacking });
  for (const beginning of wanted) expect(broken(lines).filter((what) => what.startsWith(beginning))).toHaveLength(1);
  expect(exitCodeOf(lines)).toBe(1);
});

test('a window in which no page is drawn is not fine', async () => {
  const lines = await selfTest(places, () => Promise.reject(new Error('The page broke off: crashed.')));
  expect(lines.find(({ what }) => what === 'a page is drawn in a window')).toMatchObject({
    fine: false,
    detail: 'The page broke off: crashed.',
  });
});
