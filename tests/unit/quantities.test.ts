import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { unitOfName } from '../../planner/units/symbol.ts';
import { bareNames } from './bare-names.ts';

const folder = new URL('../../planner/', import.meta.url);

/** Numbers declared in a type or an object argument: `readonly depth_m: number`. */
const declared = /readonly (\w+)\??: (?:readonly )?number\b/g;

/** Dimensionless by their ending: shares, coefficients, pH, counts of things. */
const bareEnding = /(?:Share|K|Cv|Ph|Count|Index|Ratio|Digits)$|^(?:kc|ks|kr|ke|ky|p|q|x|y|n|r|z|du|cu|sd|k)(?:[A-Z_]\w*)?$/;

function numbersIn(text: string): string[] {
  return [...text.matchAll(declared)].map((found) => found[1] ?? '');
}

const isNamed = (name: string): boolean =>
  unitOfName(name) !== undefined || /_[A-Za-z]/.test(name) || bareEnding.test(name) || bareNames.has(name);

test('every number of the planner says its unit in its name, or is listed as having none', () => {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
  const odd = files.flatMap((file) =>
    numbersIn(readFileSync(new URL(file, folder), 'utf8'))
      .filter((name) => !isNamed(name))
      .map((name) => `${file}: ${name}`),
  );
  expect(files.length).toBeGreaterThan(100);
  expect(odd).toEqual([]);
});

test('the rule sees a number without its unit', () => {
  expect(numbersIn('type A = { readonly depth: number; readonly depth_m: number; readonly soil?: readonly number[] };')).toEqual([
    'depth',
    'depth_m',
    'soil',
  ]);
  expect(isNamed('depth_m')).toBe(true);
  expect(isNamed('waterDepth')).toBe(false);
});
