import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SeasonCrop } from '../../../../../planner/season/optimise/instance.ts';
import { createMarket } from '../../../../../planner/season/optimise/market.ts';
import { revenue_minor, soldByWeek } from '../../../../../planner/season/optimise/revenue.ts';
import { bestSales } from '../../../../../planner/season/optimise/transport.ts';

const WEEKS = 10;
const anyCrop = fc
  .record({
    shelf: fc.integer({ min: 0, max: 4 }),
    weeks: fc.uniqueArray(fc.integer({ min: 0, max: WEEKS - 1 }), { minLength: 1, maxLength: 8 }),
    steps: fc.array(fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 1, max: 9 }), fc.integer({ min: 0, max: 5 })), {
      minLength: 8,
      maxLength: 8,
    }),
  })
  .map(
    ({ shelf, weeks, steps }): SeasonCrop => ({
      name: 'a crop',
      family: 0,
      shelf_weeks: shelf,
      overhead_minor: 0,
      steadiness_minor: 0,
      options: [],
      demand: [...weeks]
        .sort((a, b) => a - b)
        .map((week, at) => {
          const [contract, price, cap] = steps[at] ?? [0, 1, 1];
          return {
            week,
            contract,
            contractPrice_minor: price * 100,
            penalty_minor: 50,
            tiers: [
              { cap, price_minor: price * 90 },
              { cap: 3, price_minor: price * 40 },
            ],
          };
        }),
    }),
  );
const anyHarvest = fc.array(fc.integer({ min: 0, max: 12 }), { minLength: WEEKS, maxLength: WEEKS });

/** Income less penalties of sales found by the transport problem. */
function byTransport(crop: SeasonCrop, harvest: readonly number[]): number {
  const sales = bestSales(crop, harvest);
  const income = sales.reduce((sum, sale) => sum + sale.amount * sale.price_minor, 0);
  const due = crop.demand.reduce((sum, week) => sum + week.contract * week.penalty_minor, 0);
  const spared = sales.reduce((sum, sale) => sum + (sale.contract ? sale.amount * 50 : 0), 0);
  return income - due + spared;
}

describe('what a weekly harvest earns', () => {
  test('the greedy by levels agrees with the transport problem', () => {
    fc.assert(
      fc.property(anyCrop, anyHarvest, (crop, harvest) => {
        expect(revenue_minor(createMarket(crop, WEEKS), Float64Array.from(harvest))).toBeCloseTo(byTransport(crop, harvest), 6);
      }),
      { numRuns: 400 },
    );
  });

  test('more harvest never earns less, and no more is sold than was harvested', () => {
    fc.assert(
      fc.property(anyCrop, anyHarvest, fc.integer({ min: 0, max: WEEKS - 1 }), (crop, harvest, week) => {
        const market = createMarket(crop, WEEKS);
        const more = harvest.map((amount, at) => amount + (at === week ? 2 : 0));
        expect(revenue_minor(market, Float64Array.from(more))).toBeGreaterThanOrEqual(
          revenue_minor(market, Float64Array.from(harvest)) - 1e-9,
        );
        const sum = (list: Iterable<number>) => [...list].reduce((total, amount) => total + amount, 0);
        expect(sum(soldByWeek(market, Float64Array.from(harvest)))).toBeLessThanOrEqual(sum(harvest) + 1e-9);
      }),
    );
  });

  test('worked by hand: 10 kg of week 0 keep one week; 4 go to the standing order of week 1, 6 to the market of week 0', () => {
    const crop: SeasonCrop = {
      name: 'a crop',
      family: 0,
      shelf_weeks: 1,
      overhead_minor: 0,
      steadiness_minor: 0,
      options: [],
      demand: [
        { week: 0, contract: 0, contractPrice_minor: 0, penalty_minor: 0, tiers: [{ cap: 8, price_minor: 200 }] },
        { week: 1, contract: 4, contractPrice_minor: 300, penalty_minor: 100, tiers: [] },
        { week: 2, contract: 1, contractPrice_minor: 300, penalty_minor: 100, tiers: [] },
      ],
    };
    expect(revenue_minor(createMarket(crop, 3), Float64Array.from([10, 0, 0]))).toBe(4 * 300 + 6 * 200 - 100);
  });
});
