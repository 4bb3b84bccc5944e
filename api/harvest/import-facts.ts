import type { FarmDb } from '../../db/file/open-farm.ts';
import { bedsOfPlantings, plantingsToHarvest, recordHarvests, saleUnitsOfFarm } from '../../db/repositories/harvests.ts';
import { outletsOfFarm } from '../../db/repositories/sales.ts';
import type { ImportFacts } from './read-harvest-csv.ts';

/** All that reading a harvest file needs to know of the farm. */
export function importFacts(db: FarmDb, today: string): ImportFacts {
  const beds = Map.groupBy(bedsOfPlantings(db, '0000-01-01', today), (row) => row.plantingId);
  return {
    today,
    plantings: plantingsToHarvest(db, '0000-01-01', today).map((each) => ({
      plantingId: each.plantingId,
      cropId: each.cropId,
      crop: each.crop,
      number: each.number,
      inBed: each.inBed,
      clear: each.clear,
      cleared: each.cleared,
      yieldUnit: each.yieldUnit,
      yieldTypical: each.yieldTypical,
      beds: (beds.get(each.plantingId) ?? []).map(({ bedId, code }) => ({ bedId, code })),
    })),
    records: [...recordHarvests(db)],
    units: saleUnitsOfFarm(db).map(({ cropId, unit, net_kg }) => ({ cropId, unit, net_kg })),
    outlets: outletsOfFarm(db).map((each) => ({ outletId: each.id, name: each.name })),
  };
}
