import type { FarmDb } from '../../db/file/open-farm.ts';
import type { Keys } from '../../db/repositories/among.ts';
import { allPlantings, allSpans, harvestSums } from '../../db/repositories/plantings.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { type LearnedOfCrop, learnedFrom } from '../../planner/season/learned.ts';
import { loadBeds } from '../beds/load-beds.ts';

/** What the farm's own records teach, over every planting that has happened, of all crops or of one. */
export function learnedOfFarm(db: FarmDb, cropId: string | null = null): readonly LearnedOfCrop[] {
  const plantings = allPlantings(db, cropId);
  const ids = cropId === null ? 'all' : plantings.map(({ id }) => id);
  const areas = plantedAreas_m2(db, ids);
  const sums = new Map(harvestSums(db, ids).map((sum) => [`${sum.plantingId} ${sum.unit}`, sum.amount]));
  return learnedFrom(
    plantings
      .filter((record) => record.state !== 'failed')
      .map((record) => ({
        cropId: record.cropId,
        varietyId: record.varietyId,
        method: record.method,
        wentIn: record.inBedActual as IsoDate | null,
        firstPicked: record.firstHarvestActual as IsoDate | null,
        lastPicked: record.lastHarvestActual as IsoDate | null,
        area_m2: areas.get(record.id) ?? 0,
        harvested: sums.get(`${record.id} ${record.yieldUnit}`) ?? null,
        unit: record.yieldUnit,
      })),
  );
}

/** Area that each planting (or each of these) stands on, retired beds counted too. */
export function plantedAreas_m2(db: FarmDb, plantingIds: Keys = 'all'): ReadonlyMap<string, number> {
  const beds = new Map([...loadBeds(db), ...loadBeds(db, 'retired')].map(({ bed, figures }) => [bed.id, figures?.area_m2 ?? 0]));
  const areas = new Map<string, number>();
  for (const span of allSpans(db, plantingIds)) {
    const area_m2 = (beds.get(span.bedId) ?? 0) * (span.toShare - span.fromShare);
    areas.set(span.plantingId, (areas.get(span.plantingId) ?? 0) + area_m2);
  }
  return areas;
}
