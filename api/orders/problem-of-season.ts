import type { FarmDb } from '../../db/file/open-farm.ts';
import { stockBalances } from '../../db/repositories/bed-history.ts';
import { needChoices, type OfferInForce, offersInForce, standIns } from '../../db/repositories/stock.ts';
import { suppliersOfFarm } from '../../db/repositories/suppliers.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { type FarmNeed, pooledNeeds, purchaseNeeds, supplierTerms } from '../../planner/orders/needs.ts';
import type { PurchaseNeed, PurchaseOffer, PurchaseProblem } from '../../planner/orders/purchase-problem.ts';
import { goodsToCome } from './goods-to-come.ts';
import { leadOf } from './leads.ts';
import { needsOfSeason } from './needs-of-season.ts';

export type BuyingWishes = { readonly mostSuppliers: number | null; readonly inTime: boolean };

/** An offer as the purchase model takes it. */
export function modelOffer({ offer, breaks }: OfferInForce): PurchaseOffer {
  const above = breaks.filter((each) => each.fromPackages > offer.minimumPackages);
  const at = breaks.filter((each) => each.fromPackages <= offer.minimumPackages).at(-1);
  return {
    id: offer.id,
    supplierId: offer.supplierId,
    materialId: offer.materialId,
    packageAmount: offer.packageAmount,
    steps: [
      { fromPackages: offer.minimumPackages, price_minor: at?.price_minor ?? offer.price_minor },
      ...above.map((each) => ({ fromPackages: each.fromPackages, price_minor: each.price_minor })),
    ],
  };
}

/** What lies in stock and what is on the way: neither is bought again. */
function stockAndToCome(db: FarmDb): PurchaseProblem['stock'] {
  const balances = stockBalances(db);
  const toCome = goodsToCome(db);
  return [...new Set([...balances.keys(), ...toCome.keys()])].flatMap((materialId) => {
    const amount = Math.max(0, balances.get(materialId) ?? 0) + (toCome.get(materialId)?.onTheWay ?? 0);
    return amount > 0 ? [{ materialId, amount }] : [];
  });
}

/** The season's purchase as a problem of plain data, and the needs it stands for. */
export function problemOfSeason(
  db: FarmDb,
  seasonId: string,
  today: IsoDate,
  wishes: BuyingWishes,
): {
  readonly problem: PurchaseProblem;
  readonly needs: readonly FarmNeed[];
  /** Each need by itself, where the problem has those of one kind together. */
  readonly single: readonly PurchaseNeed[];
} {
  const { needs } = needsOfSeason(db, seasonId, today);
  const choices = new Map(
    [...needChoices(db, seasonId)].map(([key, row]) => [
      key,
      {
        amount: row.amount,
        supplierId: row.supplierId,
        left: row.left,
        wanted: row.wantedDate as IsoDate | null,
        standIns: row.standIns,
      },
    ]),
  );
  const suppliers = suppliersOfFarm(db).filter((each) => !each.retired);
  const offers = offersInForce(db);
  const single = purchaseNeeds({
    needs,
    choices,
    standIns: standIns(db),
    leads: offers.map(leadOf),
    today,
    mustBeInTime: wishes.inTime,
  });
  const { pooled } = pooledNeeds(single);
  const wanted = new Set(pooled.flatMap((need) => need.materials.map((each) => each.materialId)));
  return {
    needs,
    single,
    problem: {
      needs: pooled,
      stock: stockAndToCome(db).filter(({ materialId }) => wanted.has(materialId)),
      offers: offers.map(modelOffer).filter((each) => wanted.has(each.materialId)),
      suppliers: suppliers.map(supplierTerms),
      mostSuppliers: wishes.mostSuppliers,
    },
  };
}
