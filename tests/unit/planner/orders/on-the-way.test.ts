import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { goodsOnTheWay, type OrderedLine } from '../../../../planner/orders/on-the-way.ts';

const line = (change: Partial<OrderedLine>): OrderedLine => ({
  materialId: 'compost',
  orderedDate: '2027-02-26' as IsoDate,
  ordered: 10,
  received: 0,
  packageAmount: 40,
  lead_days: 3,
  ...change,
});

test('what was ordered less what came, in the base unit, by the last day of its lines', () => {
  expect(goodsOnTheWay([]).size).toBe(0);
  // ten bags of 40 L, of which four came: 240 L by 1 March; and one of 500 L by the 8th
  const found = goodsOnTheWay([
    line({ received: 4 }),
    line({ ordered: 1, packageAmount: 500, orderedDate: '2027-03-01' as IsoDate, lead_days: 7 }),
    line({ materialId: 'perlite', ordered: 2, packageAmount: 100 }),
    line({ ordered: 1, packageAmount: 1 }),
  ]);
  expect(found.get('compost')).toEqual({ onTheWay: 741, expectedDate: '2027-03-08' });
  expect(found.get('perlite')).toEqual({ onTheWay: 200, expectedDate: '2027-03-01' });
});

test('what is all here, or more than was ordered, is not on the way', () => {
  expect(goodsOnTheWay([line({ received: 10 }), line({ received: 12 }), line({ ordered: 0 })]).size).toBe(0);
  expect(goodsOnTheWay([line({ received: 12 }), line({ received: 9.5 })]).get('compost')?.onTheWay).toBe(20);
});

test('what came and what is to come are together what was ordered', () => {
  const packages = fc.integer({ min: 0, max: 50 });
  fc.assert(
    fc.property(fc.array(fc.tuple(packages, packages, fc.integer({ min: 1, max: 400 }))), (lines) => {
      const ordered = lines.map(([most, came, packageAmount]) =>
        line({ ordered: most, received: Math.min(most, came), packageAmount }),
      );
      const came = ordered.reduce((sum, each) => sum + each.received * each.packageAmount, 0);
      const all = ordered.reduce((sum, each) => sum + each.ordered * each.packageAmount, 0);
      expect(came + (goodsOnTheWay(ordered).get('compost')?.onTheWay ?? 0)).toBe(all);
    }),
  );
});
