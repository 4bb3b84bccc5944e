import { beforeAll, describe, expect, test } from 'vitest';
import { loadMilpSolver } from '../../../../api/jobs/milp/highs.ts';
import type { MilpSolver, MilpWishes } from '../../../../planner/milp.ts';
import { leastCost } from '../../../../planner/orders/least-cost.ts';
import { purchaseModel } from '../../../../planner/orders/purchase-model.ts';
import { readPurchase } from '../../../../planner/orders/purchase-plan.ts';
import type { PurchaseOffer, PurchaseProblem, PurchaseSupplier } from '../../../../planner/orders/purchase-problem.ts';

let solve: MilpSolver;
beforeAll(async () => {
  solve = await loadMilpSolver();
});

const shop = (id: string, change: Partial<PurchaseSupplier> = {}): PurchaseSupplier => ({
  id,
  deliveryFee_minor: 0,
  freeFrom_minor: null,
  minimumOrder_minor: 0,
  taxShare: 0,
  ...change,
});
const sells = (
  supplierId: string,
  materialId: string,
  price_minor: number,
  change: Partial<PurchaseOffer> = {},
): PurchaseOffer => ({
  id: `${supplierId} ${materialId}`,
  supplierId,
  materialId,
  packageAmount: 1,
  steps: [{ fromPackages: 1, price_minor }],
  ...change,
});
const need = (materialId: string, amount: number, supplierIds?: readonly string[]) => ({
  id: materialId,
  amount,
  materials: [{ materialId, ratio: 1 }],
  ...(supplierIds === undefined ? {} : { supplierIds }),
});
const problem: PurchaseProblem = {
  needs: [need('compost', 10)],
  stock: [],
  offers: [sells('north', 'compost', 1000), sells('south', 'compost', 1100)],
  suppliers: [shop('north'), shop('south')],
  mostSuppliers: null,
};
const bought = (of: PurchaseProblem) => {
  const { plan } = leastCost(of, solve);
  if (plan.state !== 'found') throw new Error(plan.because);
  return { ...plan, list: plan.bought.map((each) => `${each.packages} ${each.offerId}`) };
};

describe('the basket of least cost', () => {
  test('counts tax, delivery, loads and the minimum order', () => {
    expect(bought(problem).list).toEqual(['10 north compost']);
    const north = (change: Partial<PurchaseSupplier>) => ({ ...problem, suppliers: [shop('north', change), shop('south')] });
    expect(bought(north({ taxShare: 0.2 })).list).toEqual(['10 south compost']);
    expect(bought(north({ deliveryFee_minor: 1001 })).list).toEqual(['10 south compost']);
    expect(bought(north({ deliveryFee_minor: 5000, freeFrom_minor: 10_000 })).list).toEqual(['10 north compost']);
    expect(bought(north({ minimumOrder_minor: 12_000 })).list).toEqual(['10 south compost']);
    const loads = [sells('north', 'compost', 1000, { trip: { packages: 4, fee_minor: 300 } }), sells('south', 'compost', 1100)];
    // ten in three loads of 300 are 10,900, ten from the other 11,000; eight in two loads and two from the other 10,800
    expect(bought({ ...problem, offers: loads }).list).toEqual(['8 north compost', '2 south compost']);
  });

  test('takes stock first, also where a need must come from one supplier', () => {
    const stocked = { ...problem, stock: [{ materialId: 'compost', amount: 4 }] };
    expect(bought(stocked).list).toEqual(['6 north compost']);
    expect(bought({ ...stocked, needs: [need('compost', 10, ['south'])] }).list).toEqual(['6 south compost']);
    const apart = {
      ...problem,
      needs: [need('compost', 2, ['south']), need('straw', 3, ['north'])],
      offers: [sells('south', 'compost', 1100), sells('north', 'straw', 500)],
    };
    expect(bought(apart).list).toEqual(['2 south compost', '3 north straw']);
  });

  test('goes to the price step that costs less in all, and never below the least that is sold', () => {
    const steps = [
      { fromPackages: 1, price_minor: 1000 },
      { fromPackages: 12, price_minor: 800 },
    ];
    expect(bought({ ...problem, offers: [sells('north', 'compost', 0, { steps })] }).list).toEqual(['12 north compost']);
    const least = [{ fromPackages: 15, price_minor: 1000 }];
    expect(bought({ ...problem, offers: [sells('north', 'compost', 0, { steps: least })] }).list).toEqual(['15 north compost']);
    // fifteen at 700 are dearer than ten at 1,000
    const dear = [{ fromPackages: 15, price_minor: 700 }];
    expect(
      bought({ ...problem, offers: [sells('north', 'compost', 0, { steps: dear }), sells('south', 'compost', 1000)] }).list,
    ).toEqual(['10 south compost']);
  });

  test('goes to so many suppliers at most', () => {
    const two = {
      ...problem,
      needs: [need('compost', 1), need('straw', 1)],
      offers: [
        sells('north', 'compost', 100),
        sells('north', 'straw', 900),
        sells('south', 'compost', 900),
        sells('south', 'straw', 200),
      ],
    };
    expect(bought(two).list).toEqual(['1 north compost', '1 south straw']);
    expect(bought({ ...two, mostSuppliers: 1 }).list).toEqual(['1 north compost', '1 north straw']);
  });

  test('takes no more than there is, and says what is short of it', () => {
    const few = { ...problem, offers: [sells('north', 'compost', 1000, { availablePackages: 7 })] };
    const found = bought(few);
    expect(found.list).toEqual(['7 north compost']);
    expect(found.served[0]?.short).toBeCloseTo(3, 6);
    expect(found.served[0]?.uses[0]?.amount).toBeCloseTo(7, 6);
    expect(found.served[0]?.uses[0]?.materialId).toBe('compost');
  });

  test('a threshold of nothing makes no money: the bound stands at the total', () => {
    const found = bought({
      ...problem,
      suppliers: [shop('north'), shop('south', { deliveryFee_minor: 700, freeFrom_minor: 0 })],
    });
    expect(found.bill.total_minor).toBe(10_000);
    expect(found.bound_minor).toBeCloseTo(10_000, 3);
    expect(found.gapShare).toBeLessThan(1e-6);
  });
});

describe('an answer that is not proven', () => {
  const stopped = (of: PurchaseProblem, below: number) => {
    const built = purchaseModel(of);
    const answer = solve(built.model, { relativeGap: 1e-9 });
    if (answer.state === 'no-solution') throw new Error(answer.because);
    const plan = readPurchase(of, built, { ...answer, state: 'stopped', bound: answer.objective - below });
    if (plan.state !== 'found') throw new Error(plan.because);
    return plan;
  };
  test('tells its gap against the bill', () => {
    const plan = stopped(problem, 25);
    expect(plan.proven).toBe(false);
    expect(plan.bound_minor).toBeCloseTo(7500, 4);
    expect(plan.gapShare).toBeCloseTo(0.25, 6);
  });
  test('tells it also where something is short, without the penalty for it', () => {
    const plan = stopped({ ...problem, needs: [...problem.needs, need('rare', 3)] }, 25);
    expect(plan.bill.total_minor).toBe(10_000);
    expect(plan.bound_minor).toBeCloseTo(7500, 4);
    expect(plan.gapShare).toBeCloseTo(0.25, 6);
  });
  test('has no gap where nothing is bought', () => {
    const plan = stopped({ ...problem, stock: [{ materialId: 'compost', amount: 20 }] }, 0);
    expect(plan).toMatchObject({ bought: [], bound_minor: 0, gapShare: 0 });
  });
});

describe('a long search', () => {
  test('hands on each better basket and the wish to stop', () => {
    const seen: MilpWishes[] = [];
    const totals: number[] = [];
    const shouldStop = () => false;
    const watched: MilpSolver = (model, wishes) => {
      if (wishes !== undefined) seen.push(wishes);
      const answer = solve(model, wishes);
      if (answer.state !== 'no-solution') wishes?.onImprovement?.(answer);
      return answer;
    };
    leastCost(problem, watched, {
      shouldStop,
      onBetter: (plan) => {
        if (plan.state === 'found') totals.push(plan.bill.total_minor);
      },
    });
    expect(seen[0]?.shouldStop).toBe(shouldStop);
    expect(totals.at(-1)).toBe(10_000);
    seen.length = 0;
    leastCost(problem, watched);
    expect(seen[0]).not.toHaveProperty('shouldStop');
    expect(seen[0]).not.toHaveProperty('onImprovement');
  });

  test('stopped before any basket has none; stopped later it tries no single suppliers', () => {
    const none = leastCost(problem, () => ({ state: 'no-solution', because: 'stopped-before-any' }));
    expect(none).toEqual({ plan: { state: 'no-solution', because: 'stopped-before-any' }, single: null, saving_minor: null });
    const later = leastCost(problem, (model) => solve(model), { shouldStop: () => true });
    expect(later.plan.state).toBe('found');
    expect(later.single).toBeNull();
    expect(later.saving_minor).toBeNull();
  });

  test('is set against the cheapest single supplier that serves as much', () => {
    const two = {
      ...problem,
      needs: [need('compost', 1), need('straw', 1)],
      offers: [
        sells('north', 'compost', 100),
        sells('north', 'straw', 900),
        sells('south', 'compost', 900),
        sells('south', 'straw', 200),
        sells('west', 'straw', 1),
      ],
      suppliers: [shop('north'), shop('south'), shop('west', { deliveryFee_minor: 500 })],
    };
    const found = leastCost(two, solve);
    expect(found.single).toEqual({ supplierId: 'north', goods_minor: 1000, total_minor: 1000, short: 0 });
    expect(found.saving_minor).toBe(700);
  });
});
