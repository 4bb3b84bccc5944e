import { and, asc, eq, ne, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { bed } from '../schema/beds.ts';
import { crop } from '../schema/crops.ts';
import { harvest } from '../schema/harvests.ts';
import { planting, plantingBed } from '../schema/plantings.ts';

/** Every harvest of each planting of a season, by day. */
export function harvestsOfSeason(db: FarmDb, seasonId: string) {
  return db
    .select({
      plantingId: planting.id,
      date: harvest.date,
      unit: harvest.unit,
      amount: harvest.amount,
      culls_kg: harvest.culls_kg,
    })
    .from(planting)
    .innerJoin(harvest, eq(harvest.plantingId, planting.id))
    .where(eq(planting.seasonId, seasonId))
    .orderBy(asc(harvest.plantingId), asc(harvest.date), asc(harvest.unit))
    .all();
}

export type Span = { readonly bedId: string; readonly code: string; readonly fromShare: number; readonly toShare: number };

/** Where every planting stands. */
export function spansByPlanting(db: FarmDb): ReadonlyMap<string, readonly Span[]> {
  const rows = db
    .select({
      plantingId: plantingBed.plantingId,
      bedId: plantingBed.bedId,
      code: bed.code,
      fromShare: plantingBed.fromShare,
      toShare: plantingBed.toShare,
    })
    .from(plantingBed)
    .innerJoin(bed, eq(bed.id, plantingBed.bedId))
    .orderBy(asc(bed.code))
    .all();
  return Map.groupBy(rows, (row) => row.plantingId);
}

/** Plantings of a season with the ground they stand on and what is expected of them. */
export function plantingGround(db: FarmDb, seasonId: string, spans: ReadonlyMap<string, readonly Span[]>) {
  return db
    .select({
      plantingId: planting.id,
      cropId: planting.cropId,
      crop: crop.name,
      number: planting.number,
      state: planting.state,
      method: planting.method,
      plants: planting.plants,
      plantsActual: planting.plantsActual,
      yieldUnit: planting.yieldUnit,
      yieldLow: planting.yieldLow,
      yieldTypical: planting.yieldTypical,
      yieldHigh: planting.yieldHigh,
      price_minor: planting.price_minor,
      inBed: sql<string>`coalesce(${planting.inBedActual}, ${planting.inBedDate})`,
      clear: sql<string>`coalesce(${planting.clearedActual}, ${planting.clearDate})`,
    })
    .from(planting)
    .innerJoin(crop, eq(crop.id, planting.cropId))
    .where(eq(planting.seasonId, seasonId))
    .orderBy(asc(crop.name), asc(planting.inBedDate), asc(planting.id))
    .all()
    .map((row) => ({ ...row, spans: spans.get(row.plantingId) ?? [] }));
}

/** What plantings of all other seasons gave, in the unit they were planned in. */
export function yieldHistory(db: FarmDb, seasonId: string, spans: ReadonlyMap<string, readonly Span[]>) {
  return db
    .select({
      plantingId: planting.id,
      cropId: planting.cropId,
      unit: planting.yieldUnit,
      amount: sql<number>`sum(${harvest.amount})`,
    })
    .from(harvest)
    .innerJoin(planting, and(eq(planting.id, harvest.plantingId), eq(planting.yieldUnit, harvest.unit)))
    .where(and(ne(planting.seasonId, seasonId), ne(planting.state, 'failed')))
    .groupBy(planting.id)
    .all()
    .map((row) => ({ ...row, spans: spans.get(row.plantingId) ?? [] }));
}
