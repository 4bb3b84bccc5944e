import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError, refuse, requirePositive, requireRange, requireWhole } from '../../../planner/errors.ts';
import { roundMoney, splitMoney } from '../../../planner/money.ts';
import { computed, entry, library, practice, source } from '../../../planner/working.ts';
import { faultsOf, refusals, testRefusals } from '../../builders/faults-of.ts';

describe('refusals', () => {
  testRefusals([
    ['depth_m not-a-number', () => requireRange('depth_m', Number.NaN, 0, 5, 'm')],
    ['depth_m not-a-number', () => requireRange('depth_m', Number.POSITIVE_INFINITY, 0, Infinity, 'm')],
    ['depth_m too-small (0.1 m)', () => requireRange('depth_m', 0.09, 0.1, 5, 'm')],
    ['depth_m too-large (5 m)', () => requireRange('depth_m', 5.01, 0.1, 5, 'm')],
    ['share too-large (1)', () => requireRange('share', 2, 0, 1, '')],
    ['scoop_L not-positive (0 L)', () => requirePositive('scoop_L', 0, 'L')],
    ['ratio not-positive (-1)', () => requirePositive('ratio', -1, '')],
    ['scoop_L not-a-number', () => requirePositive('scoop_L', Number.NaN, 'L')],
    ['count not-whole', () => requireWhole('count', 1.5, 1, 9)],
    ['count not-whole', () => requireWhole('count', Number.NaN, 1, 9)],
    ['count too-small (1)', () => requireWhole('count', 0, 1, 9)],
    ['count too-large (9)', () => requireWhole('count', 10, 1, 9)],
  ]);
  test('the limits themselves are taken', () => {
    const taken = () => {
      requireRange('depth_m', 0.1, 0.1, 5, 'm');
      requireRange('depth_m', 5, 0.1, 5, 'm');
      requirePositive('scoop_L', 1e-9, 'L');
      requireWhole('count', 1, 1, 9);
      requireWhole('count', 9, 1, 9);
    };
    expect(refusals(taken)).toEqual([]);
  });
  test('an error carries each fault, is named, and says them all', () => {
    const fault = { path: 'a', code: 'b', message: 'One thing.' };
    const error = new InputError([fault, { ...fault, message: 'Another.' }]);
    expect([error.name, error.message, error.faults.length]).toEqual(['InputError', 'One thing. Another.', 2]);
    expect(faultsOf(() => refuse('a', 'b', 'One thing.'))).toEqual([fault]);
  });
});

describe('money', () => {
  test('by largest remainder, equal ones to the earlier part; a debt as a credit', () => {
    const parts = (amount: number, weights: readonly number[]) => splitMoney(amount, weights).parts_minor;
    expect(parts(100, [1, 1, 1])).toEqual([34, 33, 33]);
    expect(parts(101, [1, 1, 1])).toEqual([34, 34, 33]);
    expect(parts(10, [1, 3, 2])).toEqual([2, 5, 3]);
    expect(parts(-100, [1, 1, 1])).toEqual([-34, -33, -33]);
    expect(parts(5, [0, 2])).toEqual([0, 5]);
    expect(parts(0, [1, 2])).toEqual([0, 0]);
    expect(splitMoney(7, [0, 0])).toEqual({ parts_minor: [0, 0], unallocated_minor: 7 });
    expect(splitMoney(7, [])).toEqual({ parts_minor: [], unallocated_minor: 7 });
    expect(splitMoney(7, [1]).unallocated_minor).toBe(0);
  });
  test('parts add up to the whole, each within one of its exact share', () => {
    const weights = fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), weights, (amount, list) => {
        const { parts_minor, unallocated_minor } = splitMoney(amount, list);
        const total = list.reduce((sum, each) => sum + each, 0);
        expect(parts_minor.reduce((sum, part) => sum + part, unallocated_minor)).toBe(amount);
        if (total > 0)
          for (const [at, part] of parts_minor.entries())
            expect(Math.abs(part - (amount * (list[at] ?? 0)) / total)).toBeLessThan(1 + 1e-6);
      }),
    );
  });
  test('halves go away from zero, nothing is never less than nothing', () => {
    expect([2.5, -2.5, 1.005 * 100, 2.4, -0.4].map(roundMoney)).toEqual([3, -3, 101, 2, 0]);
  });
  testRefusals([
    ['amount_minor not-whole', () => splitMoney(1.5, [1])],
    ['amount_minor not-whole', () => splitMoney(2 ** 60, [1])],
    ['weights.1 too-small', () => splitMoney(1, [1, -1])],
    ['weights.0 too-small', () => splitMoney(1, [Number.NaN])],
  ]);
});

test('where a figure comes from is of its kind, with words of its own where none are given', () => {
  const origins = [entry(), library('a'), source('b'), practice(), computed()];
  expect(origins.map(({ kind }) => kind)).toEqual(['entry', 'library', 'source', 'practice', 'computed']);
  expect(new Set(origins.map(({ text }) => text)).size).toBe(5);
});
