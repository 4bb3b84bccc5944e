import { and, asc, desc, eq, gt, isNotNull, lt, ne, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { design } from '../schema/beds.ts';
import { material } from '../schema/materials.ts';
import { planting, plantingBed } from '../schema/plantings.ts';
import { lineOutlet, timerEvent, waterLine, waterTest } from '../schema/water.ts';

/** Which line serves which bed. A bed on two lines counts with the first. */
export function lineOfBeds(db: FarmDb): ReadonlyMap<string, string> {
  const rows = db
    .select({ bedId: lineOutlet.bedId, lineId: lineOutlet.lineId })
    .from(lineOutlet)
    .where(isNotNull(lineOutlet.bedId))
    .orderBy(asc(lineOutlet.position), asc(lineOutlet.id))
    .all();
  const first = new Map<string, string>();
  for (const { bedId, lineId } of rows) if (bedId !== null && !first.has(bedId)) first.set(bedId, lineId);
  return first;
}

/** What stands in each bed at some time between two days, of whatever season, as its water needs it; failed plantings left out. */
export function plantedBetween(db: FarmDb, from: string, to: string) {
  return db
    .select({
      bedId: plantingBed.bedId,
      cropId: planting.cropId,
      share: sql<number>`${plantingBed.toShare} - ${plantingBed.fromShare}`,
      plants: plantingBed.plants,
      inBedDate: sql<string>`coalesce(${planting.inBedActual}, ${planting.inBedDate})`,
      clearDate: sql<string>`coalesce(${planting.clearedActual}, ${planting.clearDate})`,
      inRow_m: planting.inRow_m,
      row_m: planting.row_m,
    })
    .from(plantingBed)
    .innerJoin(planting, eq(planting.id, plantingBed.plantingId))
    .where(and(lt(planting.inBedDate, to), gt(planting.clearDate, from), ne(planting.state, 'failed')))
    .orderBy(asc(plantingBed.plantingId), asc(plantingBed.id))
    .all();
}

/** The farm's supplies as the demand needs them. */
export function suppliesOfFarm(db: FarmDb) {
  return db
    .select({
      lineId: waterLine.id,
      name: waterLine.name,
      supply: waterLine.supply,
      reservoir_L: waterLine.reservoir_L,
      usableShare: waterLine.usableShare,
      tapFlow_L_per_min: waterLine.tapFlow_L_per_min,
    })
    .from(waterLine)
    .orderBy(asc(waterLine.name))
    .all();
}

/** What the timers do, by line and month. */
export function timersOfFarm(db: FarmDb) {
  return db
    .select({
      lineId: timerEvent.lineId,
      month: timerEvent.month,
      every_days: timerEvent.every_days,
      run_min: timerEvent.run_min,
      zone: timerEvent.zone,
    })
    .from(timerEvent)
    .orderBy(asc(timerEvent.lineId), asc(timerEvent.month), asc(timerEvent.start))
    .all();
}

/** The mulch material of each design that has one. */
export function mulchOfDesigns(db: FarmDb) {
  return db
    .select({ designId: design.id, name: material.name, kind: material.kind })
    .from(design)
    .innerJoin(material, eq(material.id, design.mulchMaterialId))
    .all();
}

/** Readings of the irrigation water's conductivity, the latest first. */
export function conductivityTests(db: FarmDb) {
  return db
    .select()
    .from(waterTest)
    .where(eq(waterTest.analyte, 'conductivity'))
    .orderBy(desc(waterTest.date), desc(waterTest.id))
    .all();
}

export function addWaterTest(db: FarmDb, row: typeof waterTest.$inferInsert): void {
  db.insert(waterTest).values(row).run();
}

export function removeWaterTest(db: FarmDb, testId: string): boolean {
  return (
    db
      .delete(waterTest)
      .where(and(eq(waterTest.id, testId), eq(waterTest.analyte, 'conductivity')))
      .run().changes === 1
  );
}
