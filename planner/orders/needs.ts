import { addDays, daysBetween, type IsoDate } from '../calendar.ts';
import type { PurchaseNeed, PurchaseSupplier } from './purchase-problem.ts';

/** Where a need comes from. */
export type NeedSource =
  | 'fill'
  | 'top-up'
  | 'new-bed'
  | 'worn-part'
  | 'line-part'
  | 'amendment'
  | 'mulch'
  | 'seed'
  | 'start'
  | 'tray'
  | 'tray-mix'
  | 'cover'
  | 'packing'
  | 'hand';

/** Something the farm needs for the season, and why. Amounts are in the material's base unit. */
export type FarmNeed = {
  /** Stays the same while the plan does: choices about the need are kept under it. */
  readonly key: string;
  readonly source: NeedSource;
  readonly materialId: string;
  readonly amount: number;
  readonly reason: string;
  readonly wanted: IsoDate;
};

/** What the grower decided about a need. */
export type NeedChoice = {
  readonly amount: number | null;
  readonly supplierId: string | null;
  readonly left: boolean;
  /** Another day than the computed one. */
  readonly wanted: IsoDate | null;
  /** Whether a stand-in may serve it. */
  readonly standIns: boolean;
};

/** Stand-ins that the grower allows for a material, with how much of each does the work of one unit. */
export type StandIn = { readonly materialId: string; readonly insteadId: string; readonly ratio: number };

/** Days from ordering to having a material, at each supplier that offers it. */
export type Lead = { readonly supplierId: string; readonly materialId: string; readonly lead_days: number };

/** The last day on which something can be ordered to be there in time. */
export function orderBy(wanted: IsoDate, lead_days: number): IsoDate {
  return addDays(wanted, -lead_days);
}

/** Suppliers that can bring something by a day when it is ordered today. */
export function inTime(
  suppliers: readonly Pick<Lead, 'supplierId' | 'lead_days'>[],
  today: IsoDate,
  wanted: IsoDate,
): readonly string[] {
  const left = daysBetween(today, wanted);
  return [...new Set(suppliers.filter((each) => each.lead_days <= left).map((each) => each.supplierId))];
}

/**
 * The needs as the purchase model takes them: the grower's amounts and days over the computed ones, left-out ones gone, stand-ins
 * where the grower allows them, and only suppliers that will do. A need that no supplier can bring in time keeps all suppliers:
 * late is better than never, and the page says so.
 */
export function purchaseNeeds(input: {
  readonly needs: readonly FarmNeed[];
  readonly choices: ReadonlyMap<string, NeedChoice>;
  readonly standIns: readonly StandIn[];
  readonly leads: readonly Lead[];
  readonly today: IsoDate;
  readonly mustBeInTime: boolean;
}): readonly PurchaseNeed[] {
  const standIns = Map.groupBy(input.standIns, (each) => each.materialId);
  const leads = Map.groupBy(input.leads, (each) => each.materialId);
  return input.needs.flatMap((need): readonly PurchaseNeed[] => {
    const choice = input.choices.get(need.key);
    if (choice?.left === true) return [];
    const materials = [
      { materialId: need.materialId, ratio: 1 },
      ...(choice?.standIns === false
        ? []
        : (standIns.get(need.materialId) ?? []).map((each) => ({ materialId: each.insteadId, ratio: each.ratio }))),
    ];
    const sellers = materials.flatMap((each) => leads.get(each.materialId) ?? []);
    const timely = input.mustBeInTime ? inTime(sellers, input.today, choice?.wanted ?? need.wanted) : [];
    const all = new Set(sellers.map((each) => each.supplierId)).size;
    const chosen = choice?.supplierId ?? null;
    const only = chosen !== null ? [chosen] : timely.length > 0 && timely.length < all ? timely : undefined;
    return [
      {
        id: need.key,
        amount: choice?.amount ?? need.amount,
        materials,
        ...(only === undefined ? {} : { supplierIds: only }),
      },
    ];
  });
}

/** Needs of one material put together for the solver: same material, same suppliers, same stand-ins. Keeps the model small. */
export function pooledNeeds(needs: readonly PurchaseNeed[]): {
  readonly pooled: readonly PurchaseNeed[];
  readonly members: ReadonlyMap<string, readonly PurchaseNeed[]>;
} {
  const members = Map.groupBy(needs, (need) => JSON.stringify([need.materials, need.supplierIds ?? null]));
  return {
    pooled: [...members].map(([key, of]) => {
      const first = of[0];
      const amount = of.reduce((sum, need) => sum + need.amount, 0);
      return { ...(first ?? { materials: [] }), id: key, amount };
    }),
    members,
  };
}

/** Free delivery and minimum as the model wants them: a supplier one picks up from asks no fee. */
export function supplierTerms(supplier: {
  readonly id: string;
  readonly deliveryFee_minor: number;
  readonly freeDeliveryFrom_minor: number | null;
  readonly minimumOrder_minor: number;
  readonly tax_share: number;
  readonly pickUp: boolean;
}): PurchaseSupplier {
  return {
    id: supplier.id,
    deliveryFee_minor: supplier.pickUp ? 0 : supplier.deliveryFee_minor,
    freeFrom_minor: supplier.freeDeliveryFrom_minor,
    minimumOrder_minor: supplier.minimumOrder_minor,
    taxShare: supplier.tax_share,
  };
}
