import type { FarmDb } from '../../db/file/open-farm.ts';
import { stockBalances } from '../../db/repositories/bed-history.ts';
import { feedingMaterials, offersInUse } from '../../db/repositories/feeding.ts';
import type { FeedMaterial } from '../../planner/fertility/farm-blend.ts';
import { analysisFault, reachableShares } from '../../planner/fertility/material-content.ts';
import type { SoilTables } from '../../planner/fertility/soil-tables.ts';
import { kgPerBaseUnit } from '../../planner/soil/base-unit.ts';
import { contentOf, seriesOf } from './credits.ts';

/** More of a meal or salt than this is never put on at once, composts tenfold. Common practice, no source. */
const MOST_CONCENTRATED_KG_PER_M2 = 0.5;
const MOST_BULKY_KG_PER_M2 = 5;
const CONCENTRATED_SHARE = 0.04;

/** What can feed or lime, with stock, least price, and what stands against its use. */
export function feedingChoices(db: FarmDb, organicOnly: boolean) {
  const stock = stockBalances(db);
  const offers = Map.groupBy(offersInUse(db), (offer) => offer.materialId);
  return feedingMaterials(db).map((material) => {
    const perUnit = kgPerBaseUnit(material);
    const own = offers.get(material.id) ?? [];
    const prices = perUnit === null ? [] : own.map((offer) => offer.price_minor / (offer.packageAmount * perUnit));
    const fault = analysisFault([material.nShare, material.p2o5Share, material.k2oShare, material.caShare]);
    return {
      materialId: material.id,
      name: material.name,
      kind: material.kind,
      nShare: material.nShare,
      p2o5Share: material.p2o5Share,
      k2oShare: material.k2oShare,
      firstYearNShare: material.firstYearNShare,
      neutralisingShare: material.neutralisingShare,
      finenessShare: material.finenessShare,
      density_kg_per_m3: material.moistDensity_kg_per_m3,
      stock_kg: Math.max(0, stock.get(material.id) ?? 0) * (perUnit ?? 0),
      price_minor_per_kg: prices.length === 0 ? null : Math.min(...prices),
      offers: own.length,
      organicUse: material.organicUse,
      animalOrigin: material.animalOrigin,
      dusty: material.dusty,
      source: material.source,
      notes: material.notes,
      fault:
        fault ?? (organicOnly && material.organicUse === 'not-allowed' ? 'Not allowed on this farm: organic use is set.' : null),
    };
  });
}

export type FeedingChoice = ReturnType<typeof feedingChoices>[number];

/** The chosen materials as the blend takes them; what cannot be bought and is not in stock is left out. */
export function feedMaterials(
  db: FarmDb,
  tables: SoilTables,
  ids: readonly string[],
  organicOnly: boolean,
): readonly FeedMaterial[] {
  const rows = new Map(feedingMaterials(db).map((row) => [row.id, row]));
  const offers = Map.groupBy(offersInUse(db), (offer) => offer.materialId);
  return feedingChoices(db, organicOnly).flatMap((choice): FeedMaterial[] => {
    const material = rows.get(choice.materialId);
    const perUnit = material === undefined ? null : kgPerBaseUnit(material);
    if (material === undefined || perUnit === null || !ids.includes(choice.materialId) || choice.fault !== null) return [];
    const own = (offers.get(material.id) ?? []).map((offer) => ({
      offerId: offer.id,
      package_kg: offer.packageAmount * perUnit,
      price_minor: offer.price_minor,
    }));
    if (own.length === 0 && choice.stock_kg <= 0) return [];
    const bulky = Math.max(material.nShare ?? 0, material.p2o5Share ?? 0, material.k2oShare ?? 0) < CONCENTRATED_SHARE;
    return [
      {
        materialId: material.id,
        name: material.name,
        available: reachableShares(contentOf(material), seriesOf(tables, material), 0),
        stock_kg: choice.stock_kg,
        offers: own,
        maxRate_kg_per_m2: material.maxRate_kg_per_m2 ?? (bulky ? MOST_BULKY_KG_PER_M2 : MOST_CONCENTRATED_KG_PER_M2),
        density_kg_per_m3: material.moistDensity_kg_per_m3,
      },
    ];
  });
}
