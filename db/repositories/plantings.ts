import { and, asc, eq, inArray, lt, max, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { bedFill } from '../schema/beds.ts';
import { crop } from '../schema/crops.ts';
import { harvest } from '../schema/harvests.ts';
import { planting, plantingBed } from '../schema/plantings.ts';
import { among, type Keys } from './among.ts';
import { insertAll } from './insert-all.ts';

export type PlantingRecord = typeof planting.$inferSelect;
export type NewPlanting = typeof planting.$inferInsert;
export type SpanRecord = typeof plantingBed.$inferSelect;
export type NewSpan = typeof plantingBed.$inferInsert;

export function plantingsOfSeason(db: FarmDb, seasonId: string): readonly PlantingRecord[] {
  return db
    .select()
    .from(planting)
    .where(eq(planting.seasonId, seasonId))
    .orderBy(asc(planting.inBedDate), asc(planting.id))
    .all();
}

/** Every planting, or those of one crop. */
export function allPlantings(db: FarmDb, cropId: string | null = null): readonly PlantingRecord[] {
  return db
    .select()
    .from(planting)
    .where(cropId === null ? undefined : eq(planting.cropId, cropId))
    .orderBy(asc(planting.inBedDate), asc(planting.id))
    .all();
}

export function plantingOfId(db: FarmDb, plantingId: string): PlantingRecord | undefined {
  return db.select().from(planting).where(eq(planting.id, plantingId)).get();
}

const inBedOrder = [asc(plantingBed.plantingId), asc(plantingBed.bedId), asc(plantingBed.fromShare)] as const;

export function spansOfSeason(db: FarmDb, seasonId: string): readonly SpanRecord[] {
  return db
    .select({ span: plantingBed })
    .from(plantingBed)
    .innerJoin(planting, eq(planting.id, plantingBed.plantingId))
    .where(eq(planting.seasonId, seasonId))
    .orderBy(...inBedOrder)
    .all()
    .map((row) => row.span);
}

/** Where every planting stands, or where these do. */
export function allSpans(db: FarmDb, plantingIds: Keys = 'all'): readonly SpanRecord[] {
  return db
    .select()
    .from(plantingBed)
    .where(among(plantingBed.plantingId, plantingIds))
    .orderBy(...inBedOrder)
    .all();
}

export function spansOfPlanting(db: FarmDb, plantingId: string): readonly SpanRecord[] {
  return db
    .select()
    .from(plantingBed)
    .where(eq(plantingBed.plantingId, plantingId))
    .orderBy(...inBedOrder)
    .all();
}

export function addPlantings(db: FarmDb, rows: readonly NewPlanting[], spans: readonly NewSpan[]): void {
  insertAll(db, planting, rows);
  insertAll(db, plantingBed, spans);
}

export type PlantingChange = Partial<Omit<NewPlanting, 'id' | 'revision'>>;

/** Writes one planting when its revision is still `revision`; false when it was changed meanwhile. */
export function changePlanting(db: FarmDb, plantingId: string, revision: number, values: PlantingChange): boolean {
  const result = db
    .update(planting)
    .set({ ...values, revision: sql`${planting.revision} + 1` })
    .where(and(eq(planting.id, plantingId), eq(planting.revision, revision)))
    .run();
  return result.changes === 1;
}

/** Replaces where a planting stands. */
export function replaceSpans(db: FarmDb, plantingId: string, spans: readonly NewSpan[]): void {
  db.delete(plantingBed).where(eq(plantingBed.plantingId, plantingId)).run();
  insertAll(db, plantingBed, spans);
}

/** Those of the plantings that something was harvested from: they are history and stay. */
export function harvestedAmong(db: FarmDb, plantingIds: readonly string[]): ReadonlySet<string> {
  if (plantingIds.length === 0) return new Set();
  const rows = db
    .selectDistinct({ id: harvest.plantingId })
    .from(harvest)
    .where(inArray(harvest.plantingId, [...plantingIds]))
    .all();
  return new Set(rows.map((row) => row.id));
}

export function removePlantings(db: FarmDb, plantingIds: readonly string[]): number {
  return plantingIds.reduce((sum, id) => sum + db.delete(planting).where(eq(planting.id, id)).run().changes, 0);
}

export type FamilyYear = { readonly bedId: string; readonly family: string; readonly lastInBed: string };

const went = sql<string>`coalesce(${planting.inBedActual}, ${planting.inBedDate})`;

/** What went into each bed before a date. */
export function plantedBefore(db: FarmDb, before: string, seasonIds: Keys = 'all') {
  return db
    .select({ seasonId: planting.seasonId, bedId: plantingBed.bedId, cropId: planting.cropId, went })
    .from(planting)
    .innerJoin(plantingBed, eq(plantingBed.plantingId, planting.id))
    .where(and(lt(went, before), among(planting.seasonId, seasonIds)))
    .all();
}

/** The last day on which each family went into each bed before a date, leaving out what stood there before its fill was renewed. */
export function familiesBefore(
  db: FarmDb,
  before: string,
  rows: Iterable<Pick<ReturnType<typeof plantedBefore>[number], 'bedId' | 'cropId' | 'went'>> = plantedBefore(db, before),
): readonly FamilyYear[] {
  const fills = db
    .select({ bedId: bedFill.bedId, date: max(bedFill.date) })
    .from(bedFill)
    .where(eq(bedFill.kind, 'first-fill'))
    .groupBy(bedFill.bedId)
    .all();
  const renewed = new Map(fills.map(({ bedId, date }) => [bedId, date]));
  const crops = db.select({ id: crop.id, family: crop.family }).from(crop).all();
  const familyOf = new Map(crops.map(({ id, family }) => [id, family]));
  // the latest of each is taken here: grouping thousands of rows by two texts costs the database three times as much
  const latest = new Map<string, Map<string, string>>();
  for (const { bedId, cropId, went: lastInBed } of rows) {
    const family = familyOf.get(cropId);
    const fill = renewed.get(bedId);
    if (family === undefined || (fill != null && lastInBed < fill)) continue;
    const ofBed = latest.get(bedId) ?? new Map<string, string>();
    latest.set(bedId, ofBed);
    if (lastInBed > (ofBed.get(family) ?? '')) ofBed.set(family, lastInBed);
  }
  return [...latest].flatMap(([bedId, ofBed]) => [...ofBed].map(([family, lastInBed]) => ({ bedId, family, lastInBed })));
}

export type HarvestSum = { readonly plantingId: string; readonly unit: string; readonly amount: number };

/** All that was harvested from each planting (or from these), by unit. */
export function harvestSums(db: FarmDb, plantingIds: Keys = 'all'): readonly HarvestSum[] {
  return db
    .select({ plantingId: harvest.plantingId, unit: harvest.unit, amount: sql<number>`sum(${harvest.amount})` })
    .from(harvest)
    .where(among(harvest.plantingId, plantingIds))
    .groupBy(harvest.plantingId, harvest.unit)
    .all();
}
