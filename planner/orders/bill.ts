import { roundMoney } from '../money.ts';
import { entry, type Working } from '../working.ts';
import { type Bought, type PurchaseProblem, type PurchaseSupplier, priceAt_minor } from './purchase-problem.ts';

export type BillLine = {
  readonly offerId: string;
  readonly packages: number;
  readonly price_minor: number;
  readonly loads_minor: number;
  readonly total_minor: number;
};

export type SupplierBill = {
  readonly supplierId: string;
  readonly lines: readonly BillLine[];
  readonly goods_minor: number;
  readonly delivery_minor: number;
  readonly tax_minor: number;
  readonly total_minor: number;
  /** What is missing to the least that the supplier takes an order for. */
  readonly underMinimum_minor: number;
};

export type Bill = { readonly suppliers: readonly SupplierBill[]; readonly total_minor: number };

/** What the goods of a bill cost, without delivery and tax. */
export const goodsOf_minor = (bill: Bill): number => bill.suppliers.reduce((sum, each) => sum + each.goods_minor, 0);

/**
 * What a basket costs, worked out from the price lists alone: price step of the number bought, fees of loads, delivery
 * unless the goods reach the free threshold, tax on the goods.
 *
 * The optimiser's own objective is never shown: this is. Used to check it to the minor unit.
 */
export function billOf(problem: PurchaseProblem, bought: readonly Bought[]): Bill {
  const packagesOf = new Map(bought.map((each) => [each.offerId, each.packages]));
  const suppliers = problem.suppliers.flatMap((supplier) => {
    const lines = problem.offers.flatMap((offer) => {
      const packages = packagesOf.get(offer.id) ?? 0;
      if (offer.supplierId !== supplier.id || packages <= 0) return [];
      const price = priceAt_minor(offer, packages) ?? offer.steps[0]?.price_minor ?? 0;
      const loads = offer.trip === undefined ? 0 : Math.ceil(packages / offer.trip.packages) * offer.trip.fee_minor;
      return [{ offerId: offer.id, packages, price_minor: price, loads_minor: loads, total_minor: packages * price + loads }];
    });
    return lines.length === 0 ? [] : [supplierBill(supplier, lines)];
  });
  return { suppliers, total_minor: suppliers.reduce((sum, each) => sum + each.total_minor, 0) };
}

/** Delivery, tax and total of one supplier's lines. */
export function supplierBill(supplier: PurchaseSupplier, lines: readonly BillLine[]): SupplierBill {
  const goods = lines.reduce((sum, line) => sum + line.packages * line.price_minor, 0);
  const loads = lines.reduce((sum, line) => sum + line.loads_minor, 0);
  const free = supplier.freeFrom_minor !== null && goods >= supplier.freeFrom_minor;
  const delivery = (free ? 0 : supplier.deliveryFee_minor) + loads;
  const tax = roundMoney(goods * supplier.taxShare);
  return {
    supplierId: supplier.id,
    lines,
    goods_minor: goods,
    delivery_minor: delivery,
    tax_minor: tax,
    total_minor: goods + delivery + tax,
    underMinimum_minor: Math.max(0, supplier.minimumOrder_minor - goods),
  };
}

/** Working of the total of {@link billOf}. */
export function explainBill(problem: PurchaseProblem, bought: readonly Bought[]): Working {
  const bill = billOf(problem, bought);
  const sum = (of: (each: SupplierBill) => number): number => bill.suppliers.reduce((total, each) => total + of(each), 0);
  const money = (symbol: string, name: string, value: number) => ({
    symbol,
    name,
    figure: { value, unit: 'minor' },
    origin: entry('the price lists you entered'),
  });
  return {
    title: 'What the list costs',
    formula: 'total = goods + delivery + tax',
    symbols: [
      money(
        'goods',
        'packages at their price',
        sum((each) => each.goods_minor),
      ),
      money(
        'delivery',
        'delivery and loads',
        sum((each) => each.delivery_minor),
      ),
      money(
        'tax',
        'tax on the goods',
        sum((each) => each.tax_minor),
      ),
    ],
    steps: bill.suppliers.map((each) => ({
      text: each.supplierId,
      figures: `${each.goods_minor} + ${each.delivery_minor} + ${each.tax_minor}`,
      result: { value: each.total_minor, unit: 'minor' },
    })),
    result: { value: bill.total_minor, unit: 'minor' },
    sources: [],
    notes: ['Each line is rounded to the minor unit; totals are sums of rounded lines.'],
  };
}
