import type { offer } from '../../db/schema/materials.ts';
import type { application, applicationBed } from '../../db/schema/soil.ts';
import { purchase, purchaseLine, type stockMove } from '../../db/schema/stock.ts';
import { unitPriceOf } from './suppliers.ts';

type OfferRow = typeof offer.$inferInsert;
type MoveRow = typeof stockMove.$inferInsert;
type SoilRows = {
  readonly applications: readonly (typeof application.$inferInsert)[];
  readonly applicationBeds: readonly (typeof applicationBed.$inferInsert)[];
};

const bought: readonly (readonly [materialId: string, perBed: number])[] = [
  ['mix-raised-bed', 12],
  ['compost-yard', 26],
  ['feather-meal', 0.42],
  ['lime-pelleted', 0.75],
  ['bone-meal-steamed', 0.1],
  ['potassium-sulfate', 0.08],
  ['straw', 20],
  ['wood-chips', 40],
  ['pack-box', 4],
  ['pack-bag', 30],
  ['tray-50', 0.3],
  ['hw-cover', 0.8],
];

/** Spring purchases of past years, what the applications used, and what was counted last. Invented. */
export function sampleStock(years: readonly number[], beds: number, offers: readonly OfferRow[], soil: SoilRows) {
  const purchases: (typeof purchase.$inferInsert)[] = [];
  const lines: (typeof purchaseLine.$inferInsert)[] = [];
  const moves: MoveRow[] = [
    {
      id: 'move-own-soil',
      materialId: 'soil-own-loose',
      date: `${years[0] ?? 2026}-01-05`,
      kind: 'opening',
      amount: 3200,
      reason: 'heap by the gate, measured',
      who: 'AN',
    },
  ];
  for (const year of years) {
    for (const [materialId, perBed] of bought) {
      const choices = offers.filter((each) => each.materialId === materialId);
      const chosen = choices.toSorted((a, b) => a.price_minor / a.packageAmount - b.price_minor / b.packageAmount)[0];
      if (chosen === undefined || beds === 0) continue;
      const purchaseId = `purchase-${year}-${chosen.supplierId}`;
      if (!purchases.some((each) => each.id === purchaseId)) {
        purchases.push({
          id: purchaseId,
          supplierId: chosen.supplierId,
          orderedDate: `${year}-02-24`,
          receivedDate: `${year}-03-03`,
          delivery_minor: 0,
          documentNumber: `INV-${year}-${purchases.length + 1}`,
        });
      }
      const packages = Math.max(1, Math.ceil((perBed * beds) / chosen.packageAmount));
      const lineId = `line-${year}-${materialId}`;
      lines.push({
        id: lineId,
        purchaseId,
        materialId,
        offerId: chosen.id,
        packages,
        receivedPackages: packages,
        packageAmount: chosen.packageAmount,
        price_minor: chosen.price_minor,
        category: materialId.startsWith('pack')
          ? 'packing'
          : materialId.startsWith('hw') || materialId.startsWith('tray')
            ? 'hardware'
            : 'soil and amendments',
      });
      moves.push({
        id: `move-${lineId}`,
        materialId,
        date: `${year}-03-03`,
        kind: 'purchase',
        amount: packages * chosen.packageAmount,
        value_minor: packages * chosen.price_minor,
        purchaseLineId: lineId,
        reason: 'received',
      });
      if (['feather-meal', 'lime-pelleted'].includes(materialId)) continue;
      const used = packages * chosen.packageAmount * 0.9;
      moves.push({
        id: `move-used-${lineId}`,
        materialId,
        date: `${year}-05-20`,
        kind: 'use',
        amount: -used,
        value_minor: -Math.round(0.9 * packages * chosen.price_minor),
        reason: 'used over the season',
      });
    }
  }
  const applied = new Map(soil.applications.map((each) => [each.id, each]));
  for (const row of soil.applicationBeds) {
    const done = applied.get(row.applicationId);
    if (done === undefined) continue;
    const value = Math.round(row.amount_kg * unitPriceOf(offers, done.materialId));
    moves.push({
      id: `move-${row.id}`,
      materialId: done.materialId,
      date: done.date,
      kind: 'use',
      amount: -row.amount_kg,
      value_minor: -value,
      bedId: row.bedId,
      applicationId: done.id,
      reason: 'application',
    });
  }
  return { purchaseTable: purchase, lineTable: purchaseLine, purchases, lines, moves };
}
