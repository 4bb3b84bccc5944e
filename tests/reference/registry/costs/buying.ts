import { exactBasket } from '../../../../planner/orders/exact-basket.ts';
import type { PurchaseOffer, PurchaseProblem, PurchaseSupplier } from '../../../../planner/orders/purchase-problem.ts';
import { convert } from '../../../../planner/units/convert.ts';
import { forEach } from '../../for-each.ts';
import type { Registry } from '../../registry.ts';

const yd3 = (value: number): number => convert(value, 'yd3', 'L');
const ft3 = (value: number): number => convert(value, 'ft3', 'L');

type Terms = Partial<Omit<PurchaseSupplier, 'id'>>;
const supplier = (id: string, terms: Terms = {}): PurchaseSupplier => ({
  id,
  deliveryFee_minor: 0,
  freeFrom_minor: null,
  minimumOrder_minor: 0,
  taxShare: 0,
  ...terms,
});

const offer = (id: string, packageAmount: number, price_minor: number, more: Partial<PurchaseOffer> = {}): PurchaseOffer => ({
  id,
  supplierId: 'one',
  materialId: 'fill',
  packageAmount,
  steps: [{ fromPackages: 1, price_minor }],
  ...more,
});

const need = (amount: number, materialId = 'fill') => ({
  id: `need-${materialId}`,
  amount,
  materials: [{ materialId, ratio: 1 }],
});

/** Solves and gives the packages by offer, in the order asked for, and the cost. */
function solve(problem: Partial<PurchaseProblem> & Pick<PurchaseProblem, 'needs' | 'offers'>): {
  readonly cost_cents: number;
  readonly of: (id: string) => number;
} {
  const found = exactBasket({ stock: [], suppliers: [supplier('one')], mostSuppliers: null, ...problem });
  if (found.state === 'no-solution') throw new Error(found.because);
  return {
    cost_cents: found.total_minor,
    of: (id) => found.bought.find((each) => each.offerId === id)?.packages ?? 0,
  };
}

/** One bulk loader's delivery: its fee is taken once for any load. */
const bulkSuppliers = (delivery_cents: number): readonly PurchaseSupplier[] => [
  supplier('one'),
  supplier('loader', { deliveryFee_minor: delivery_cents }),
];

type BulkOrBags = {
  bulk: { price_cents_per_yd3: number; step_yd3: number; minimum_yd3?: number; delivery_cents?: number };
  bag: { size_ft3: number; price_cents: number };
};

/** Bulk by the step, at a fee for the load, or bags, or both. */
function bulkOrBags(needed_L: number, { bulk, bag }: BulkOrBags) {
  const found = solve({
    needs: [need(needed_L)],
    suppliers: bulkSuppliers(bulk.delivery_cents ?? 0),
    offers: [
      offer('bulk', yd3(bulk.step_yd3), 0, {
        supplierId: 'loader',
        steps: [
          {
            fromPackages: Math.max(1, Math.ceil((bulk.minimum_yd3 ?? 0) / bulk.step_yd3)),
            price_minor: Math.round(bulk.price_cents_per_yd3 * bulk.step_yd3),
          },
        ],
      }),
      offer('bag', ft3(bag.size_ft3), bag.price_cents),
    ],
  });
  return { bulk_yd3: found.of('bulk') * bulk.step_yd3, bags: found.of('bag'), cost_cents: found.cost_cents };
}

export const buying: Registry = {
  'soil.buy-01': forEach(
    (of: { need_ft3: number; offers: readonly { size_ft3: number; price_cents: number }[] }) => {
      const found = solve({
        needs: [need(of.need_ft3)],
        offers: of.offers.map((each, at) => offer(`${at}`, each.size_ft3, each.price_cents)),
      });
      return { counts: of.offers.map((_, at) => found.of(`${at}`)), cost_cents: found.cost_cents };
    },
    ['offers'],
  ),
  'soil.buy-02': forEach((of: BulkOrBags & { need_yd3: number }) => bulkOrBags(yd3(of.need_yd3), of)),
  'soil.also-buy-01': forEach((of: BulkOrBags & { need_ft3: number }) => bulkOrBags(ft3(of.need_ft3), of)),
  'soil.also-buy-02': forEach(
    (of: { need_l: number; offers: readonly { size_l: number; price_cents: number; available?: number }[] }) => {
      const found = solve({
        needs: [need(of.need_l)],
        offers: of.offers.map((each, at) =>
          offer(
            `${at}`,
            each.size_l,
            each.price_cents,
            each.available === undefined ? {} : { availablePackages: each.available },
          ),
        ),
      });
      return { counts: of.offers.map((_, at) => found.of(`${at}`)), cost_cents: found.cost_cents };
    },
    ['offers'],
  ),
  'soil.buy-05': forEach(
    (of: { need_bags: number; price_cents: number; breaks: readonly { from: number; price_cents: number }[] }) => {
      const steps = [
        { fromPackages: 1, price_minor: of.price_cents },
        ...of.breaks.map((each) => ({ fromPackages: each.from, price_minor: each.price_cents })),
      ];
      const found = solve({ needs: [need(of.need_bags)], offers: [offer('bag', 1, 0, { steps })] });
      return { bags: found.of('bag'), cost_cents: found.cost_cents };
    },
    ['breaks'],
  ),
  'soil.buy-06': forEach(
    (of: {
      need: { compost_bags: number; mix_bags: number };
      suppliers: readonly {
        id: string;
        compost_cents: number;
        mix_cents: number;
        delivery_cents: number;
        free_from_cents: number;
      }[];
    }) => {
      const found = solve({
        needs: [need(of.need.compost_bags, 'compost'), need(of.need.mix_bags, 'mix')],
        suppliers: of.suppliers.map((each) =>
          supplier(each.id, { deliveryFee_minor: each.delivery_cents, freeFrom_minor: each.free_from_cents }),
        ),
        offers: of.suppliers.flatMap((each) => [
          offer(`${each.id} compost`, 1, each.compost_cents, { supplierId: each.id, materialId: 'compost' }),
          offer(`${each.id} mix`, 1, each.mix_cents, { supplierId: each.id, materialId: 'mix' }),
        ]),
      });
      return {
        ...Object.fromEntries(
          of.suppliers.map(({ id }) => [id, { compost: found.of(`${id} compost`), mix: found.of(`${id} mix`) }]),
        ),
        cost_cents: found.cost_cents,
      };
    },
    ['suppliers'],
  ),
  'soil.buy-07': forEach((of: { need_bags: number; price_cents: number; delivery_cents: number; free_from_cents: number }) => {
    const found = solve({
      needs: [need(of.need_bags)],
      suppliers: [supplier('one', { deliveryFee_minor: of.delivery_cents, freeFrom_minor: of.free_from_cents })],
      offers: [offer('bag', 1, of.price_cents)],
    });
    return { bags: found.of('bag'), cost_cents: found.cost_cents };
  }),
  'soil.buy-08': forEach(
    (of: {
      need_yd3: number;
      offers: readonly { id: string; price_cents_per_yd3: number; trip_yd3: number; trip_cents: number }[];
    }) => {
      const found = solve({
        needs: [need(of.need_yd3)],
        offers: of.offers.map((each) =>
          offer(each.id, 1, each.price_cents_per_yd3, {
            trip: { packages: each.trip_yd3, fee_minor: each.trip_cents },
          }),
        ),
      });
      return {
        ...Object.fromEntries(of.offers.map(({ id }) => [`${id.replaceAll('-', '_')}_yd3`, found.of(id)])),
        cost_cents: found.cost_cents,
      };
    },
    ['offers'],
  ),
  'soil.buy-09': forEach(
    (of: { needs_bags: number; pallet: { bags: number; price_cents: number }; single_price_cents: number }) => {
      const found = solve({
        needs: [need(of.needs_bags)],
        offers: [offer('pallet', of.pallet.bags, of.pallet.price_cents), offer('single', 1, of.single_price_cents)],
      });
      return { pallets: found.of('pallet'), singles: found.of('single'), cost_cents: found.cost_cents };
    },
  ),
  'soil.buy-10': forEach(
    (of: { offers_kg_cents: readonly (readonly [number, number])[]; needs_kg: number }) => {
      const found = solve({
        needs: [need(of.needs_kg)],
        offers: of.offers_kg_cents.map(([size, price], at) => offer(`${at}`, size, price)),
      });
      return { counts: of.offers_kg_cents.map((_, at) => found.of(`${at}`)), cost_cents: found.cost_cents };
    },
    ['offers_kg_cents'],
  ),
  'soil.buy-11': forEach(
    (of: { need_bags: number; price_cents: number; minimum_order_cents: number; small_order_fee_cents: number }) => {
      const found = solve({
        needs: [need(of.need_bags)],
        suppliers: [supplier('one', { deliveryFee_minor: of.small_order_fee_cents, freeFrom_minor: of.minimum_order_cents })],
        offers: [offer('bag', 1, of.price_cents)],
      });
      return { bags: found.of('bag'), cost_cents: found.cost_cents };
    },
  ),
  'soil.buy-12': forEach(
    (of: { need_l: number; stock_l: number; offers: readonly { size_l: number; price_cents: number; available?: number }[] }) => {
      const found = solve({
        needs: [need(of.need_l)],
        stock: [{ materialId: 'fill', amount: of.stock_l }],
        offers: of.offers.map((each, at) =>
          offer(
            `${at}`,
            each.size_l,
            each.price_cents,
            each.available === undefined ? {} : { availablePackages: each.available },
          ),
        ),
      });
      return { counts: of.offers.map((_, at) => found.of(`${at}`)), cost_cents: found.cost_cents };
    },
    ['offers'],
  ),
};
