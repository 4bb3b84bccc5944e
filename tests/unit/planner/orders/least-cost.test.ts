import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { loadMilpSolver } from '../../../../api/jobs/milp/highs.ts';
import type { MilpSolver } from '../../../../planner/milp.ts';
import { billOf, explainBill } from '../../../../planner/orders/bill.ts';
import { exactBasket } from '../../../../planner/orders/exact-basket.ts';
import { leastCost } from '../../../../planner/orders/least-cost.ts';
import { purchaseModel } from '../../../../planner/orders/purchase-model.ts';
import { readPurchase } from '../../../../planner/orders/purchase-plan.ts';
import type { PurchaseProblem } from '../../../../planner/orders/purchase-problem.ts';

let solve: MilpSolver;
beforeAll(async () => {
  solve = await loadMilpSolver();
});

const whole = (min: number, max: number) => fc.integer({ min, max });

/** Small problems: two materials, up to two suppliers, breaks, fees, thresholds, minimum orders, a need that takes either. */
const anyProblem: fc.Arbitrary<PurchaseProblem> = fc
  .record({
    needs: fc.array(fc.record({ amount: whole(1, 30), of: fc.constantFrom('a', 'b', 'either') }), { minLength: 1, maxLength: 3 }),
    stock: whole(0, 10),
    offers: fc.array(
      fc.record({
        supplierId: fc.constantFrom('north', 'south'),
        materialId: fc.constantFrom('a', 'b'),
        packageAmount: whole(3, 12),
        price: whole(100, 900),
        least: whole(1, 2),
        breakAt: fc.option(whole(3, 6), { nil: null }),
      }),
      { minLength: 2, maxLength: 4 },
    ),
    fees: fc.tuple(whole(0, 600), whole(0, 600)),
    free: fc.tuple(fc.option(whole(500, 3000), { nil: null }), fc.option(whole(500, 3000), { nil: null })),
    minimum: fc.tuple(whole(0, 900), whole(0, 900)),
    mostSuppliers: fc.option(whole(1, 2), { nil: null }),
  })
  .map((draw) => ({
    needs: draw.needs.map((need, at) => ({
      id: `need-${at}`,
      amount: need.amount,
      materials: (need.of === 'either' ? ['a', 'b'] : [need.of]).map((materialId) => ({ materialId, ratio: 1 })),
    })),
    stock: [{ materialId: 'a', amount: draw.stock }],
    offers: draw.offers.map((offer, at) => ({
      id: `offer-${at}`,
      supplierId: offer.supplierId,
      materialId: offer.materialId,
      packageAmount: offer.packageAmount,
      steps: [
        { fromPackages: offer.least, price_minor: offer.price },
        ...(offer.breakAt === null ? [] : [{ fromPackages: offer.breakAt, price_minor: Math.round(offer.price * 0.8) }]),
      ],
    })),
    suppliers: ['north', 'south'].map((id, at) => ({
      id,
      deliveryFee_minor: draw.fees[at] ?? 0,
      freeFrom_minor: draw.free[at] ?? null,
      minimumOrder_minor: draw.minimum[at] ?? 0,
      taxShare: 0,
    })),
    mostSuppliers: draw.mostSuppliers,
  }));

const exactly = (problem: PurchaseProblem) => {
  const built = purchaseModel(problem);
  return readPurchase(problem, built, solve(built.model, { relativeGap: 1e-9 }));
};

describe('the basket of least cost', () => {
  test('is the one that trying every basket finds', () => {
    fc.assert(
      fc.property(anyProblem, (problem) => {
        const all = exactBasket(problem);
        const plan = exactly(problem);
        if (plan.state !== 'found') throw new Error('the model is always feasible');
        const short = plan.served.some((each) => each.short > 0);
        if (all.state === 'no-solution') expect(short).toBe(true);
        else {
          expect(short).toBe(false);
          expect(plan.bill.total_minor).toBe(all.total_minor);
        }
      }),
      { numRuns: 60, seed: 60 },
    );
  });

  test('covers every need less stock, or says what is short', () => {
    fc.assert(
      fc.property(anyProblem, (problem) => {
        const plan = exactly(problem);
        if (plan.state !== 'found') throw new Error('the model is always feasible');
        plan.served.forEach((served, at) => {
          const got = served.uses.reduce((sum, use) => sum + use.amount, 0) + served.short;
          expect(got).toBeGreaterThanOrEqual((problem.needs[at]?.amount ?? 0) * (1 - 1e-5));
        });
        for (const materialId of ['a', 'b']) {
          const used = plan.served
            .flatMap((each) => each.uses)
            .reduce((sum, use) => sum + (use.materialId === materialId ? use.amount : 0), 0);
          const bought = problem.offers.reduce((sum, offer) => {
            const packages = plan.bought.find((each) => each.offerId === offer.id)?.packages ?? 0;
            return sum + (offer.materialId === materialId ? packages * offer.packageAmount : 0);
          }, 0);
          const stock = problem.stock.find((each) => each.materialId === materialId)?.amount ?? 0;
          expect(used).toBeLessThanOrEqual((bought + stock) * (1 + 1e-5) + 1e-6);
        }
      }),
      { numRuns: 60, seed: 61 },
    );
  });

  test('the total is the sum of its lines, fees and tax', () => {
    fc.assert(
      fc.property(anyProblem, (problem) => {
        const plan = exactly({ ...problem, suppliers: problem.suppliers.map((each) => ({ ...each, taxShare: 0.0825 })) });
        if (plan.state !== 'found') throw new Error('the model is always feasible');
        const sum = plan.bill.suppliers.reduce(
          (total, each) =>
            total +
            each.lines.reduce((goods, line) => goods + line.packages * line.price_minor, 0) +
            each.delivery_minor +
            each.tax_minor,
          0,
        );
        expect(plan.bill.total_minor).toBe(sum);
        expect(explainBill(problem, plan.bought).result.value).toBe(billOf(problem, plan.bought).total_minor);
      }),
      { numRuns: 30, seed: 62 },
    );
  });

  test('taking an offer away never makes it cheaper', () => {
    fc.assert(
      fc.property(anyProblem, fc.nat(), (problem, pick) => {
        const all = exactBasket(problem);
        const fewer = exactBasket({ ...problem, offers: problem.offers.filter((_, at) => at !== pick % problem.offers.length) });
        if (fewer.state === 'no-solution') return;
        expect(all.state).toBe('found');
        if (all.state === 'found') expect(fewer.total_minor).toBeGreaterThanOrEqual(all.total_minor);
      }),
      { numRuns: 60, seed: 63 },
    );
  });

  const twoShops: PurchaseProblem = {
    needs: [
      { id: 'compost', amount: 12, materials: [{ materialId: 'compost', ratio: 1 }] },
      { id: 'mix', amount: 20, materials: [{ materialId: 'mix', ratio: 1 }] },
    ],
    stock: [],
    offers: [
      ['north', 'compost', 650],
      ['north', 'mix', 900],
      ['south', 'compost', 600],
      ['south', 'mix', 980],
    ].map(([supplierId, materialId, price]) => ({
      id: `${supplierId} ${materialId}`,
      supplierId: String(supplierId),
      materialId: String(materialId),
      packageAmount: 1,
      steps: [{ fromPackages: 1, price_minor: Number(price) }],
    })),
    suppliers: [
      { id: 'north', deliveryFee_minor: 2500, freeFrom_minor: 25_000, minimumOrder_minor: 0, taxShare: 0 },
      { id: 'south', deliveryFee_minor: 1500, freeFrom_minor: 20_000, minimumOrder_minor: 0, taxShare: 0 },
    ],
    mostSuppliers: null,
  };

  test('tells what it saves against one supplier for everything', () => {
    const found = leastCost(twoShops, solve);
    expect(found.plan).toMatchObject({ state: 'found', proven: true });
    expect(found.single).toEqual({ supplierId: 'north', goods_minor: 25_800, total_minor: 25_800, short: 0 });
    expect(found.saving_minor).toBe(0);
  });

  test('a need that must come from one supplier does', () => {
    const found = leastCost(
      { ...twoShops, needs: twoShops.needs.map((need) => (need.id === 'compost' ? { ...need, supplierIds: ['south'] } : need)) },
      solve,
    );
    if (found.plan.state !== 'found') throw new Error('expected a plan');
    expect(found.plan.bought).toContainEqual({ offerId: 'south compost', packages: 12 });
  });

  test('a stand-in of half the strength takes twice as much', () => {
    const found = leastCost(
      {
        ...twoShops,
        needs: [{ id: 'feed', amount: 10, materials: [{ materialId: 'compost', ratio: 2 }] }],
      },
      solve,
    );
    if (found.plan.state !== 'found') throw new Error('expected a plan');
    expect(found.plan.bought).toEqual([{ offerId: 'south compost', packages: 20 }]);
  });

  test('what nobody offers is short, and the rest is bought', () => {
    const found = leastCost(
      { ...twoShops, needs: [...twoShops.needs, { id: 'rare', amount: 3, materials: [{ materialId: 'rare', ratio: 1 }] }] },
      solve,
    );
    if (found.plan.state !== 'found') throw new Error('expected a plan');
    expect(found.plan.served.find((each) => each.needId === 'rare')?.short).toBeCloseTo(3, 6);
    expect(found.plan.bill.total_minor).toBe(25_800);
  });

  test('a package of nothing, prices that do not rise and an unknown supplier are all told at once', () => {
    const bad = { ...twoShops, offers: [{ id: 'x', supplierId: 'nobody', materialId: 'mix', packageAmount: 0, steps: [] }] };
    expect(() => purchaseModel(bad)).toThrow(
      'A package must hold more than nothing. This offer has no supplier. An offer needs a price.',
    );
  });
});
