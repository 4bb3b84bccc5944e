import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { differences, type ReferenceCase, runCase } from './compare.ts';
import { registry } from './registry.ts';

const folder = new URL('./cases/', import.meta.url);

for (const file of readdirSync(folder)
  .filter((name) => name.endsWith('.cases.json'))
  .sort()) {
  const parsed: unknown = JSON.parse(readFileSync(new URL(file, folder), 'utf8'));
  const cases = (Array.isArray(parsed) ? parsed : (parsed as { cases: unknown }).cases) as ReferenceCase[];
  describe(file, () => {
    for (const each of cases) {
      test.skipIf(registry[each.fn] === undefined)(`${each.id}, after ${each.source}`, () => {
        const outcome = runCase(each, registry);
        expect(outcome.state === 'failed' ? outcome.differences : []).toEqual([]);
      });
    }
  });
}

describe('the comparison itself', () => {
  test('sees a number off by more than its tolerance', () => {
    expect(differences('a', 'a', 1.02, 1, { abs: 0.01 })).toHaveLength(1);
    expect(differences('a', 'a', 1.005, 1, { abs: 0.01 })).toHaveLength(0);
    expect(differences('a', 'a', [1, 2], [1, 3], { keys: { a: 0.5 } })).toHaveLength(1);
  });
  test('fails a case that expects nothing', () => {
    const empty = { id: 'x', fn: 'f', inputs: {}, expected: {}, tolerance: {}, source: '' };
    expect(runCase(empty, { f: () => ({}) }).state).toBe('failed');
  });
});
