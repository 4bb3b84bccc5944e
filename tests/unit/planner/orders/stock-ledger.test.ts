import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  balanceOf,
  byFirstIn,
  byMovingAverage,
  explainUnitCost,
  type StockMovement,
  valueStock,
} from '../../../../planner/orders/stock-ledger.ts';

/** A ledger that never uses more than is there: each use is a share of what is left. */
const anyLedger = fc
  .array(
    fc.record({
      amount: fc.integer({ min: 1, max: 5000 }),
      value_minor: fc.integer({ min: 0, max: 500_000 }),
      uses: fc.array(fc.integer({ min: 1, max: 100 }), { maxLength: 4 }),
    }),
    { minLength: 1, maxLength: 12 },
  )
  .map((buys) => {
    const movements: StockMovement[] = [];
    let left = 0;
    for (const buy of buys) {
      movements.push({ kind: 'in', amount: buy.amount, value_minor: buy.value_minor });
      left += buy.amount;
      for (const percent of buy.uses) {
        const amount = percent === 100 ? left : Math.floor((left * percent) / 100);
        if (amount <= 0) continue;
        movements.push({ kind: 'out', amount });
        left -= amount;
      }
    }
    return movements;
  });

const valueIn = (movements: readonly StockMovement[]): number =>
  movements.reduce((sum, move) => sum + (move.kind === 'in' ? move.value_minor : 0), 0);

describe.each(['moving-average', 'first-in'] as const)('%s', (method) => {
  test('never makes or loses money: uses and what is left are what was paid', () => {
    fc.assert(
      fc.property(anyLedger, (movements) => {
        const found = valueStock(movements, method);
        const used = found.values_minor.reduce((sum, value, at) => sum + (movements[at]?.kind === 'out' ? value : 0), 0);
        expect(used + found.leftValue_minor).toBe(valueIn(movements));
        expect(found.leftValue_minor).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test('the balance is the sum of its movements', () => {
    fc.assert(
      fc.property(anyLedger, (movements) => {
        expect(valueStock(movements, method).left).toBeCloseTo(balanceOf(movements), 6);
      }),
    );
  });

  test('an empty stock has no value', () => {
    const movements: StockMovement[] = [
      { kind: 'in', amount: 3, value_minor: 100 },
      { kind: 'out', amount: 1 },
      { kind: 'out', amount: 1 },
      { kind: 'out', amount: 1 },
    ];
    expect(valueStock(movements, method)).toMatchObject({ left: 0, leftValue_minor: 0 });
  });

  test('more than is there is refused at its movement, unless it is flagged', () => {
    const movements: StockMovement[] = [
      { kind: 'in', amount: 5, value_minor: 500 },
      { kind: 'out', amount: 6 },
    ];
    expect(() => valueStock(movements, method)).toThrow('more than the 5 on hand');
    const flagged = valueStock([...movements.slice(0, 1), { kind: 'out', amount: 6, flagged: true }], method);
    expect(flagged.left).toBe(-1);
    expect(flagged.values_minor[1]).toBe(600);
  });
});

test('first in first out takes the oldest price, the average mixes them', () => {
  const movements: StockMovement[] = [
    { kind: 'in', amount: 25, value_minor: 3000 },
    { kind: 'in', amount: 50, value_minor: 5400 },
    { kind: 'out', amount: 20 },
  ];
  expect(byFirstIn(movements).values_minor[2]).toBe(2400);
  expect(byMovingAverage(movements).values_minor[2]).toBe(2240);
  expect(explainUnitCost(movements, 'kg').result.value).toBe(byMovingAverage(movements).unitCost_minor);
});

test('a named lot is taken from that lot’s own layers', () => {
  const movements: StockMovement[] = [
    { kind: 'in', amount: 10, value_minor: 1000, lot: 'a' },
    { kind: 'in', amount: 10, value_minor: 3000, lot: 'b' },
    { kind: 'out', amount: 5, lot: 'b' },
  ];
  expect(byFirstIn(movements).values_minor[2]).toBe(1500);
  expect(() => byFirstIn([...movements, { kind: 'out', amount: 6, lot: 'b' }])).toThrow('more than the 5 on hand');
});
