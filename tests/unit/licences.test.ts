import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

type Lock = {
  readonly packages: Readonly<
    Record<
      string,
      { readonly version: string; readonly license?: string; readonly hasInstallScript?: boolean; readonly integrity?: string }
    >
  >;
};

const lock = JSON.parse(readFileSync(new URL('../../package-lock.json', import.meta.url), 'utf8')) as Lock;
const list = readFileSync(new URL('../../resources/licences.md', import.meta.url), 'utf8');
const packages = Object.entries(lock.packages).filter(([path]) => path !== '');

const permissive =
  /\b(MIT|ISC|Apache-2\.0|BSD|0BSD|CC0-1\.0|CC-BY-4\.0|BlueOak-1\.0\.0|Python-2\.0|Unlicense|WTFPL|MPL-2\.0|Artistic-2\.0)\b/;

/** Read in the packages themselves, whose lock entries name no licence. */
const readByHand: Readonly<Record<string, string>> = { 'node_modules/png-js': 'MIT', 'node_modules/suncalc': 'BSD-2-Clause' };

test('every package names a licence that lets the program be given away', () => {
  expect(packages.length).toBeGreaterThan(100);
  const odd = packages
    .filter(([path, entry]) => !permissive.test(entry.license ?? readByHand[path] ?? ''))
    .map(([path, entry]) => `${path}: ${entry.license ?? 'not named'}`);
  expect(odd).toEqual([]);
});

test('the list of licences is that of the lock file', () => {
  const missing = packages
    .map(([path, entry]) => `| ${path.slice(path.lastIndexOf('node_modules/') + 13)} | ${entry.version} |`)
    .filter((row) => !list.includes(row));
  expect(missing, 'run npm run licences').toEqual([]);
});

test('every package is held by its checksum', () => {
  expect(packages.filter(([, entry]) => entry.integrity === undefined).map(([path]) => path)).toEqual([]);
});
