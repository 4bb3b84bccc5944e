import type { FarmDb } from '../../db/file/open-farm.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { type OfferInForce, offersInForce, shoppingLines } from '../../db/repositories/stock.ts';
import { suppliersOfFarm } from '../../db/repositories/suppliers.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { type BillLine, supplierBill } from '../../planner/orders/bill.ts';
import { type LoadPlan, loadPlan } from '../../planner/orders/loads.ts';
import { orderBy, supplierTerms } from '../../planner/orders/needs.ts';
import { priceAt_minor } from '../../planner/orders/purchase-problem.ts';
import { kgPerBaseUnit, litresPerBaseUnit } from '../../planner/soil/base-unit.ts';
import { leadOf } from './leads.ts';
import { packageCautions } from './package-cautions.ts';
import { modelOffer } from './problem-of-season.ts';

export type ShoppingRow = {
  readonly shoppingLineId: string;
  readonly offerId: string;
  readonly materialId: string;
  readonly material: string;
  readonly offer: string;
  readonly packages: number;
  readonly packageAmount: number;
  readonly amount: number;
  readonly baseUnit: string;
  readonly price_minor: number;
  readonly total_minor: number;
  readonly reason: string;
  readonly ticked: boolean;
  readonly weight_kg: number | null;
  readonly volume_L: number | null;
  readonly pricedDate: string;
  /** Ids of the cautions that handling it calls for. */
  readonly cautions: readonly string[];
};

export type SupplierList = {
  readonly supplierId: string;
  readonly name: string;
  readonly contact: string;
  readonly pickUp: boolean;
  /** The last day to order on, so that the first thing wanted is there in time; null where nothing of it is wanted by a day. */
  readonly orderBy: IsoDate | null;
  readonly rows: readonly ShoppingRow[];
  readonly goods_minor: number;
  readonly delivery_minor: number;
  readonly tax_minor: number;
  readonly total_minor: number;
  readonly underMinimum_minor: number;
  readonly load: LoadPlan;
};

/** The season's shopping list by supplier: what is not bought yet, with fees, tax and loads. */
export function shoppingView(db: FarmDb, seasonId: string, wanted: ReadonlyMap<string, IsoDate>): readonly SupplierList[] {
  const offers = new Map(offersInForce(db).map((each) => [each.offer.id, each]));
  const farm = farmOfFile(db);
  const rows = shoppingLines(db, seasonId).flatMap((line) => {
    const offer = offers.get(line.offerId);
    return line.purchaseId !== null || offer === undefined ? [] : [{ offer, row: rowOf(line, offer) }];
  });
  return suppliersOfFarm(db).flatMap((supplier): readonly SupplierList[] => {
    const mine = rows.filter((each) => each.offer.offer.supplierId === supplier.id).map((each) => each.row);
    if (mine.length === 0) return [];
    const bill = billOfRows(supplier, mine);
    const days = rows.flatMap(({ offer }) => {
      const day = wanted.get(offer.offer.materialId);
      return offer.offer.supplierId !== supplier.id || day === undefined ? [] : [orderBy(day, leadOf(offer).lead_days)];
    });
    return [
      {
        supplierId: supplier.id,
        name: supplier.name,
        contact: supplier.contact,
        pickUp: supplier.pickUp,
        orderBy: days.toSorted()[0] ?? null,
        rows: mine.toSorted((a, b) => a.material.localeCompare(b.material) || a.offer.localeCompare(b.offer)),
        goods_minor: bill.goods_minor,
        delivery_minor: bill.delivery_minor,
        tax_minor: bill.tax_minor,
        total_minor: bill.total_minor,
        underMinimum_minor: bill.underMinimum_minor,
        load: loadPlan(mine, { carries_kg: farm?.vehicle_kg ?? null, holds_L: farm?.vehicle_L ?? null }),
      },
    ];
  });
}

/** What a supplier asks for some lines of its list, bought together. */
export function billOfRows(supplier: ReturnType<typeof suppliersOfFarm>[number], rows: readonly ShoppingRow[]) {
  return supplierBill(
    supplierTerms(supplier),
    rows.map(
      (row): BillLine => ({
        offerId: row.offerId,
        packages: row.packages,
        price_minor: row.price_minor,
        loads_minor: 0,
        total_minor: row.total_minor,
      }),
    ),
  );
}

function rowOf(line: ReturnType<typeof shoppingLines>[number], each: OfferInForce): ShoppingRow {
  const { offer } = each;
  const price_minor = priceAt_minor(modelOffer(each), line.packages) ?? offer.price_minor;
  const amount = line.packages * offer.packageAmount;
  return {
    shoppingLineId: line.id,
    offerId: offer.id,
    materialId: offer.materialId,
    material: each.material,
    offer: offer.name,
    packages: line.packages,
    packageAmount: offer.packageAmount,
    amount,
    baseUnit: each.baseUnit,
    price_minor,
    total_minor: line.packages * price_minor,
    reason: line.reason,
    ticked: line.ticked,
    weight_kg: weightOf(each, line.packages, amount),
    volume_L: volumeOf(each, amount),
    pricedDate: offer.pricedDate,
    cautions: packageCautions(each.handling, {
      packageAmount: offer.packageAmount,
      packageWeight_kg: offer.packageWeight_kg,
      baseUnit: each.baseUnit,
      density_kg_per_m3: each.density,
    }),
  };
}

function weightOf({ offer, baseUnit, density }: OfferInForce, packages: number, amount: number): number | null {
  if (offer.packageWeight_kg !== null) return offer.packageWeight_kg * packages;
  const per = kgPerBaseUnit({ baseUnit, moistDensity_kg_per_m3: density });
  return per === null ? null : amount * per;
}

function volumeOf({ baseUnit, density }: OfferInForce, amount: number): number | null {
  const per = litresPerBaseUnit({ baseUnit, moistDensity_kg_per_m3: density });
  return per === null ? null : amount * per;
}
