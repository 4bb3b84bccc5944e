import { expect, test } from 'vitest';
import type { Bill } from '../../../planner/orders/bill.ts';
import { whyCheaper } from '../../../renderer/places/orders/why-cheaper.ts';

const part = (supplierId: string, goods_minor: number, delivery_minor: number) => ({
  supplierId,
  lines: [],
  goods_minor,
  delivery_minor,
  tax_minor: 0,
  total_minor: goods_minor + delivery_minor,
  underMinimum_minor: 0,
});
/** 60.00 and 10.00 of goods from two yards, each brought for 5.00: 80.00 in all. */
const bill: Bill = { suppliers: [part('a', 6000, 500), part('b', 1000, 500)], total_minor: 8000 };
const reader = { money: (minor: number | null | undefined) => ((minor ?? 0) / 100).toFixed(2) };
const why = (single: { readonly goods_minor: number; readonly total_minor: number } | null) =>
  whyCheaper(
    {
      plan: { state: 'found', bought: [], bill, served: [], gapShare: 0 } as never,
      single: single === null ? null : { supplierId: 'a', short: 0, ...single },
      saving_minor: single === null ? null : single.total_minor - bill.total_minor,
    },
    bill,
    (id) => `yard ${id}`,
    reader,
  ).slice(bill.suppliers.length);

test('what a list saves is split into goods and what it takes to bring them', () => {
  // all from one yard: 90.00 of goods and one delivery of 5.00; the list: 70.00 and two deliveries, 15.00 less in all
  expect(why({ goods_minor: 9000, total_minor: 9500 })).toEqual([
    'It saves 15.00 against everything from yard a.',
    'Goods cost 20.00 less, deliveries and tax 5.00 more.',
  ]);
  // the one yard brings it for 15.00: the list's two deliveries are 5.00 less
  expect(why({ goods_minor: 9000, total_minor: 10_500 })).toEqual([
    'It saves 25.00 against everything from yard a.',
    'Goods cost 20.00 less, deliveries and tax 5.00 less.',
  ]);
  // the one yard's goods are dearer to bring than the two yards' are to buy
  expect(why({ goods_minor: 6500, total_minor: 8800 })[1]).toBe('Goods cost 5.00 more, deliveries and tax 13.00 less.');
});

test('a list of one supplier, and a list that no single supplier can serve, say so', () => {
  expect(why({ goods_minor: 7500, total_minor: 8000 })[0]).toContain('as cheap');
  expect(why(null)).toEqual(['No single supplier sells everything on the list.']);
});
