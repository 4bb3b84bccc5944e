import { expect, test } from 'vitest';
import { ownValue } from '../../../planner/own-value.ts';

test('a name that every object has is not in the table', () => {
  const table = { leafy: 'spinach' };
  expect(ownValue(table, 'leafy')).toBe('spinach');
  for (const name of ['constructor', '__proto__', 'toString', 'herb']) expect(ownValue<string>(table, name)).toBeUndefined();
});
