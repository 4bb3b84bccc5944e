import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PurchaseNeed } from '../../../../planner/orders/purchase-problem.ts';
import { unpricedNeeds } from '../../../../planner/orders/unpriced-needs.ts';

const need = (id: string, amount: number, ...materials: readonly (readonly [string, number])[]): PurchaseNeed => ({
  id,
  amount,
  materials: materials.map(([materialId, ratio]) => ({ materialId, ratio })),
});

describe('needs without a price', () => {
  test('are those that nobody sells, less what lies in stock', () => {
    const needs = [need('mix', 100, ['mix', 1]), need('lime', 5, ['lime', 1]), need('more mix', 50, ['mix', 1])];
    const offers = [{ materialId: 'lime', supplierId: 's' }];
    expect(unpricedNeeds(needs, new Map([['mix', 120]]), offers)).toEqual([{ needId: 'more mix', amount: 30 }]);
    expect(unpricedNeeds(needs, new Map(), offers)).toEqual([
      { needId: 'mix', amount: 100 },
      { needId: 'more mix', amount: 50 },
    ]);
  });

  test('have a price as soon as a stand-in is on offer; a stand-in in stock does its share of the work', () => {
    const straw = need('straw', 10, ['straw', 1], ['hay', 2]);
    expect(unpricedNeeds([straw], new Map(), [{ materialId: 'hay', supplierId: 's' }])).toEqual([]);
    expect(unpricedNeeds([straw], new Map([['hay', 8]]), [])).toEqual([{ needId: 'straw', amount: 6 }]);
  });

  test('are also those whose one supplier does not sell them', () => {
    const bound = { ...need('lime', 5, ['lime', 1]), supplierIds: ['yard'] };
    expect(unpricedNeeds([bound], new Map(), [{ materialId: 'lime', supplierId: 'other' }])).toHaveLength(1);
    expect(unpricedNeeds([bound], new Map(), [{ materialId: 'lime', supplierId: 'yard' }])).toEqual([]);
  });

  test('on any farm: an offer never adds one, none is more than its need, and without any offer they are all that the stock lacks', () => {
    const ids = ['a', 'b', 'c'] as const;
    const anyNeeds = fc
      .array(fc.record({ of: fc.constantFrom(...ids), amount: fc.double({ min: 0.1, max: 500, noNaN: true }) }), {
        maxLength: 12,
      })
      .map((rows) => rows.map(({ of, amount }, at) => need(`need-${at}`, amount, [of, 1])));
    const anyStock = fc.dictionary(fc.constantFrom(...ids), fc.double({ min: 0, max: 800, noNaN: true }));
    fc.assert(
      fc.property(anyNeeds, anyStock, fc.subarray([...ids]), (needs, rows, sold) => {
        const stock = new Map(Object.entries(rows));
        const offers = sold.map((materialId) => ({ materialId, supplierId: 's' }));
        const open = unpricedNeeds(needs, stock, offers);
        const without = unpricedNeeds(needs, stock, []);
        expect(open.length).toBeLessThanOrEqual(without.length);
        const wanted = new Map(needs.map((each) => [each.id, each.amount]));
        for (const { needId, amount } of open) expect(amount).toBeLessThanOrEqual(wanted.get(needId) ?? 0);
        const short = ids.reduce((sum, id) => {
          const all = needs.reduce((most, each) => most + (each.materials[0]?.materialId === id ? each.amount : 0), 0);
          return sum + Math.max(0, all - (stock.get(id) ?? 0));
        }, 0);
        expect(without.reduce((sum, each) => sum + each.amount, 0)).toBeCloseTo(short, 5);
      }),
    );
  });
});
