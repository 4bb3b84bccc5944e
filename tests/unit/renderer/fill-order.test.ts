import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fillOrder } from '../../../renderer/places/harvest/fill-order.ts';

const lot = (lotId: string, date: string, left: number) => ({ lotId, date, left });
const order = { outletId: 'boxes', price_minor: 350 };

test('an order takes the oldest lots first and stops when it is full', () => {
  const lots = [lot('new', '2026-07-08', 10), lot('old', '2026-07-01', 4), lot('mid', '2026-07-05', 3)];
  const { lots: used, start } = fillOrder({ ...order, open: 6, lots });
  expect([...start.amounts]).toEqual([
    ['old', 4],
    ['mid', 2],
  ]);
  expect(used.map((each) => each.lotId)).toEqual(['old', 'mid']);
  expect(start).toMatchObject(order);
});

test('never more than the order wants, nor than a lot has left', () => {
  const lefts = fc.array(fc.integer({ min: 1, max: 400 }), { maxLength: 12 });
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 900 }), lefts, (open, amounts) => {
      const lots = amounts.map((left, at) => lot(`lot-${at}`, `2026-07-${String(10 + at)}`, left / 4));
      const { start } = fillOrder({ ...order, open, lots });
      const taken = [...start.amounts.values()].reduce((sum, each) => sum + each, 0);
      const there = lots.reduce((sum, each) => sum + each.left, 0);
      expect(taken).toBeCloseTo(Math.min(open, there), 6);
      for (const each of lots) expect(start.amounts.get(each.lotId) ?? 0).toBeLessThanOrEqual(each.left);
    }),
  );
});
