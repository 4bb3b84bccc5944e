import type { FarmDb } from '../../db/file/open-farm.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { materialsOfFarm } from '../../db/repositories/materials.ts';
import { offersByName, suppliersOfFarm } from '../../db/repositories/suppliers.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import type { OfferFacts } from './read-offer-csv.ts';

export function offerFacts(db: FarmDb, today: IsoDate): OfferFacts {
  const farm = farmOfFile(db);
  return {
    today,
    system: farm?.unitSystem ?? 'metric',
    minorDigits: farm?.minorDigits ?? 2,
    suppliers: suppliersOfFarm(db),
    materials: materialsOfFarm(db),
    known: offersByName(db)
      .filter((each) => !each.retired)
      .map((each) => ({
        offerId: each.id,
        supplierId: each.supplierId,
        materialId: each.materialId,
        name: each.name,
        price_minor: each.price_minor,
      })),
  };
}
