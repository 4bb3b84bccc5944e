import { and, asc, eq, gt, isNull, lt, ne } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { crop, cropValue } from '../schema/crops.ts';
import { material, offer } from '../schema/materials.ts';
import { planting, plantingBed, season } from '../schema/plantings.ts';
import { feedingPlan } from '../schema/soil.ts';
import { among, type Keys } from './among.ts';
import { bedsInUse } from './beds.ts';

export type FeedingPlanRow = typeof feedingPlan.$inferSelect;

export function feedingPlanOf(db: FarmDb, seasonId: string): FeedingPlanRow | undefined {
  return db.select().from(feedingPlan).where(eq(feedingPlan.seasonId, seasonId)).get();
}

export function setFeedingPlan(db: FarmDb, row: typeof feedingPlan.$inferInsert): void {
  const { id: _, ...values } = row;
  db.insert(feedingPlan).values(row).onConflictDoUpdate({ target: feedingPlan.seasonId, set: values }).run();
}

export function seasonsOfFarm(db: FarmDb) {
  return db.select().from(season).orderBy(asc(season.startDate)).all();
}

/** Plantings that stand on beds in use at some time between two dates, one row a bed. */
export function plantingsOnBeds(db: FarmDb, from: string, to: string) {
  const inUse = new Set(bedsInUse(db).map(({ bed }) => bed.id));
  return plantingsStanding(db, from, to).filter(({ bedId }) => inUse.has(bedId));
}

/** Plantings that stand on beds, in use or not, at some time between two dates, one row a bed. */
export function plantingsStanding(db: FarmDb, from: string, to: string, seasonIds: Keys = 'all') {
  return db
    .select({
      bedId: plantingBed.bedId,
      plantingId: planting.id,
      seasonId: planting.seasonId,
      cropId: planting.cropId,
      crop: crop.name,
      cropGroup: crop.cropGroup,
      family: crop.family,
      share: { from: plantingBed.fromShare, to: plantingBed.toShare },
      inBedDate: planting.inBedDate,
      firstHarvestDate: planting.firstHarvestDate,
      clearDate: planting.clearDate,
      yieldUnit: planting.yieldUnit,
      yieldTypical: planting.yieldTypical,
      touchesSoil: planting.touchesSoil,
      state: planting.state,
      bedPlants: plantingBed.plants,
      plants: planting.plants,
    })
    .from(plantingBed)
    .innerJoin(planting, eq(planting.id, plantingBed.plantingId))
    .innerJoin(crop, eq(crop.id, planting.cropId))
    .where(
      and(
        lt(planting.inBedDate, to),
        gt(planting.clearDate, from),
        ne(planting.state, 'failed'),
        among(planting.seasonId, seasonIds),
      ),
    )
    .orderBy(asc(plantingBed.bedId), asc(planting.inBedDate), asc(planting.id))
    .all();
}

/** What a kilogram of produce removes, by crop, from the crop library and the grower's own figures over it. */
export function removalFacts(db: FarmDb) {
  return db
    .select({ cropId: cropValue.cropId, name: cropValue.name, number: cropValue.number, origin: cropValue.origin })
    .from(cropValue)
    .where(isNull(cropValue.varietyId))
    .all()
    .filter((row) => row.name.startsWith('removal_') || row.name === 'yield_typical_per_m2' || row.name === 'piece_kg');
}

/** Materials that can feed or lime: whatever has an analysis or a neutralising value. */
export function feedingMaterials(db: FarmDb) {
  return db
    .select()
    .from(material)
    .where(eq(material.retired, false))
    .orderBy(asc(material.name))
    .all()
    .filter(
      (row) =>
        [row.nShare, row.p2o5Share, row.k2oShare, row.neutralisingShare, row.sShare].some(
          (share) => share !== null && share > 0,
        ) || row.id.startsWith('sulfur'),
    );
}

export function offersInUse(db: FarmDb) {
  return db.select().from(offer).where(eq(offer.retired, false)).orderBy(asc(offer.materialId), asc(offer.id)).all();
}
