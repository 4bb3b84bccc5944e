import { expect, test } from 'vitest';
import { InputError } from '../../../planner/errors.ts';
import { createMilp } from '../../../planner/milp.ts';

test('columns and rows come out as sparse arrays, a column named twice added up', () => {
  const milp = createMilp('maximise');
  const chairs = milp.column({ cost: 30, integer: true });
  const tables = milp.column({ cost: 50, upper: 9 });
  milp.row({
    upper: 40,
    entries: [
      [chairs, 1],
      [tables, 1],
      [tables, 1],
    ],
  });
  const model = milp.build();
  expect([...model.cost]).toEqual([30, 50]);
  expect([...model.columnUpper]).toEqual([Infinity, 9]);
  expect([...model.integer]).toEqual([1, 0]);
  expect([...model.rowLower]).toEqual([-Infinity]);
  expect([...model.rows.columns]).toEqual([0, 1]);
  expect([...model.rows.values]).toEqual([1, 2]);
});

test('a row that names a missing column, and crossed bounds, are refused with their place', () => {
  const milp = createMilp('minimise');
  const path = (act: () => unknown) => {
    try {
      act();
    } catch (error) {
      return error instanceof InputError ? error.faults[0]?.path : error;
    }
    return 'nothing thrown';
  };
  expect(path(() => milp.row({ upper: 1, entries: [[0, 1]] }))).toBe('rows.0');
  expect(path(() => milp.column({ cost: 1, lower: 2, upper: 1 }))).toBe('columns.0');
  expect(path(() => milp.column({ cost: Number.NaN }))).toBe('columns.0.cost');
});
