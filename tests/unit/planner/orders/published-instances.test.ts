import { readFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { loadMilpSolver } from '../../../../api/jobs/milp/highs.ts';
import type { MilpSolver } from '../../../../planner/milp.ts';
import { exactBasket } from '../../../../planner/orders/exact-basket.ts';
import { leastCost } from '../../../../planner/orders/least-cost.ts';
import type { PurchaseProblem } from '../../../../planner/orders/purchase-problem.ts';

type Instance = {
  readonly name: string;
  readonly instance: {
    readonly materials: readonly { readonly id: number; readonly stock: number }[];
    readonly needs: readonly { readonly qty: number; readonly materials: readonly number[] }[];
    readonly offers: readonly {
      readonly id: number;
      readonly material: number;
      readonly supplier: number;
      readonly size: number;
      readonly breaks: readonly (readonly [number, number])[];
    }[];
    readonly suppliers: readonly {
      readonly id: number;
      readonly fee: number;
      readonly freeFrom: number | null;
      readonly minOrder: number;
    }[];
  };
  readonly bestKnown: number;
  readonly provenLowerBound: number;
};

const file = new URL('../../../reference/optimiser.instances.json', import.meta.url);
const { purchases } = JSON.parse(readFileSync(file, 'utf8')) as { purchases: { instances: readonly Instance[] } };
const cents = (amount: number): number => Math.round(amount * 100);

const problemOf = ({ instance }: Instance): PurchaseProblem => ({
  needs: instance.needs.map((need, at) => ({
    id: `n${at}`,
    amount: need.qty,
    materials: need.materials.map((id) => ({ materialId: `m${id}`, ratio: 1 })),
  })),
  stock: instance.materials.map((each) => ({ materialId: `m${each.id}`, amount: each.stock })),
  offers: instance.offers.map((offer) => ({
    id: `o${offer.id}`,
    supplierId: `s${offer.supplier}`,
    materialId: `m${offer.material}`,
    packageAmount: offer.size,
    steps: offer.breaks.map(([fromPackages, price]) => ({ fromPackages, price_minor: cents(price) })),
  })),
  suppliers: instance.suppliers.map((each) => ({
    id: `s${each.id}`,
    deliveryFee_minor: cents(each.fee),
    freeFrom_minor: each.freeFrom === null ? null : cents(each.freeFrom),
    minimumOrder_minor: cents(each.minOrder),
    taxShare: 0,
  })),
  mostSuppliers: null,
});

const named = (name: string): Instance => {
  const found = purchases.instances.find((each) => each.name === name);
  if (found === undefined) throw new Error(`no instance ${name}`);
  return found;
};

let solve: MilpSolver;
beforeAll(async () => {
  solve = await loadMilpSolver();
});

// generated instances with their proven bounds; common practice, no published source
test('the tiny instance costs what complete enumeration finds', () => {
  const tiny = named('d-buy-tiny');
  const all = exactBasket(problemOf(tiny));
  expect(all).toMatchObject({ state: 'found', total_minor: cents(tiny.bestKnown) });
  const found = leastCost(problemOf(tiny), solve);
  expect(found.plan).toMatchObject({ state: 'found', bill: { total_minor: cents(tiny.bestKnown) } });
});

test('20 materials at 4 suppliers: within the gap asked for, never below the proven bound', () => {
  const small = named('d-buy-small');
  const { plan } = leastCost(problemOf(small), solve);
  if (plan.state !== 'found') throw new Error('expected a plan');
  expect(plan.bill.total_minor).toBeGreaterThanOrEqual(cents(small.provenLowerBound));
  // the search stops within half a per cent of the best possible
  expect(plan.bill.total_minor).toBeLessThanOrEqual(cents(small.bestKnown) * 1.0051);
  expect(plan.served.every((each) => each.short === 0)).toBe(true);
});
