import { describe, expect, test } from 'vitest';
import { createMilp } from '../../../planner/milp.ts';
import { refusals, testRefusals } from '../../builders/faults-of.ts';

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

describe('a model put together', () => {
  testRefusals([
    ['columns.0.cost not-a-number', () => createMilp('minimise').column({ cost: Infinity })],
    ['columns.0 not-a-number', () => createMilp('minimise').column({ cost: 1, lower: Number.NaN })],
    ['columns.0 too-large', () => createMilp('minimise').column({ cost: 1, lower: 2, upper: 1 })],
    ['rows.0 not-a-number', () => createMilp('minimise').row({ upper: Number.NaN, entries: [] })],
    ['rows.0 no-such-column', () => createMilp('minimise').row({ upper: 1, entries: [[0, 1]] })],
  ]);
  test('numbers its columns and rows, leaves out what adds up to nothing, and refuses a coefficient that is none', () => {
    const milp = createMilp('minimise');
    expect([milp.column({ cost: 1 }), milp.column({ cost: 2, lower: 3, upper: 3 }), milp.columnCount()]).toEqual([0, 1, 2]);
    const row = milp.row({
      lower: 1,
      entries: [
        [0, 1],
        [0, -1],
        [1, 4],
      ],
    });
    expect([row, milp.row({ upper: 5, entries: [[0, 2]] })]).toEqual([0, 1]);
    expect(refusals(() => milp.row({ entries: [[0, Number.NaN]] }))).toEqual(['rows.2 not-a-number']);
    const model = milp.build();
    expect(model.sense).toBe('minimise');
    expect([[...model.columnLower], [...model.columnUpper], [...model.integer]]).toEqual([
      [0, 3],
      [Infinity, 3],
      [0, 0],
    ]);
    expect([[...model.rowLower], [...model.rowUpper]]).toEqual([
      [1, -Infinity],
      [Infinity, 5],
    ]);
    expect([[...model.rows.starts], [...model.rows.columns], [...model.rows.values]]).toEqual([
      [0, 1, 2],
      [1, 0],
      [4, 2],
    ]);
  });
});
