import type { OfferInForce } from '../../db/repositories/stock.ts';
import type { Lead } from '../../planner/orders/needs.ts';

/** Days from ordering an offer to having it: its own, else its supplier's. */
export const leadOf = ({ offer, supplierLead_days }: OfferInForce): Lead => ({
  supplierId: offer.supplierId,
  materialId: offer.materialId,
  lead_days: offer.lead_days ?? supplierLead_days,
});

/** For each material on offer, the days that the slowest of its offers takes. */
export function slowestLeads(offers: readonly OfferInForce[]): ReadonlyMap<string, number> {
  const slowest = new Map<string, number>();
  for (const { materialId, lead_days } of offers.map(leadOf))
    slowest.set(materialId, Math.max(lead_days, slowest.get(materialId) ?? 0));
  return slowest;
}
