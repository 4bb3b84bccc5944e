import { and, asc, eq, inArray, like, sql } from 'drizzle-orm';
import type { IsoDate } from '../../planner/calendar.ts';
import type { FarmDb } from '../file/open-farm.ts';
import { bed } from '../schema/beds.ts';
import { farm } from '../schema/farm.ts';
import { material, offer } from '../schema/materials.ts';
import { needChoice } from '../schema/stock.ts';
import {
  lineNode,
  lineOutlet,
  lineRun,
  powerSource,
  pump,
  pumpPoint,
  timerEvent,
  valveReading,
  waterLine,
} from '../schema/water.ts';
import { weatherDay } from '../schema/weather.ts';
import { task } from '../schema/work.ts';
import { insertAll } from './insert-all.ts';

export type WaterLineRow = typeof waterLine.$inferSelect;
export type NewWaterLine = typeof waterLine.$inferInsert;
export type LineChange = Partial<Omit<NewWaterLine, 'id' | 'revision'>>;
export type LineNodeRow = typeof lineNode.$inferSelect;
export type LineRunRow = typeof lineRun.$inferSelect;
export type LineOutletRow = typeof lineOutlet.$inferSelect;
export type NewNode = typeof lineNode.$inferInsert;
export type NewRun = typeof lineRun.$inferInsert;
export type NewOutlet = typeof lineOutlet.$inferInsert;
export type PumpRow = typeof pump.$inferSelect;
export type PowerRow = typeof powerSource.$inferSelect;
export type TimerRow = typeof timerEvent.$inferSelect;

/** Lines of the farm by name, with how many outlets each has. */
export function linesOfFarm(db: FarmDb) {
  return db
    .select({ lineId: waterLine.id, name: waterLine.name, outlets: sql<number>`count(${lineOutlet.id})` })
    .from(waterLine)
    .leftJoin(lineOutlet, eq(lineOutlet.lineId, waterLine.id))
    .groupBy(waterLine.id)
    .orderBy(asc(waterLine.name))
    .all();
}

/** Everything of one line; undefined when there is none of this id. */
export function lineOfId(db: FarmDb, lineId: string) {
  const line = db.select().from(waterLine).where(eq(waterLine.id, lineId)).get();
  if (line === undefined) return undefined;
  const pumpRow = db.select().from(pump).where(eq(pump.lineId, lineId)).orderBy(asc(pump.id)).get();
  const points =
    pumpRow === undefined
      ? []
      : db.select().from(pumpPoint).where(eq(pumpPoint.pumpId, pumpRow.id)).orderBy(asc(pumpPoint.flow_L_per_h)).all();
  return {
    line,
    pump: pumpRow,
    points,
    nodes: db.select().from(lineNode).where(eq(lineNode.lineId, lineId)).orderBy(asc(lineNode.position), asc(lineNode.id)).all(),
    runs: db
      .select({ run: lineRun })
      .from(lineRun)
      .innerJoin(lineNode, eq(lineNode.id, lineRun.toNodeId))
      .where(eq(lineRun.lineId, lineId))
      .orderBy(asc(lineNode.position), asc(lineRun.id))
      .all()
      .map(({ run }) => run),
    outlets: db
      .select()
      .from(lineOutlet)
      .where(eq(lineOutlet.lineId, lineId))
      .orderBy(asc(lineOutlet.position), asc(lineOutlet.id))
      .all(),
    power: db.select().from(powerSource).where(eq(powerSource.lineId, lineId)).orderBy(asc(powerSource.id)).get(),
    timers: db
      .select()
      .from(timerEvent)
      .where(eq(timerEvent.lineId, lineId))
      .orderBy(asc(timerEvent.month), asc(timerEvent.zone), asc(timerEvent.start))
      .all(),
  };
}

export type LineRecord = NonNullable<ReturnType<typeof lineOfId>>;

/** Beds in use that a line may serve, in the order of the farm. */
export function bedsForLines(db: FarmDb) {
  return db
    .select({ bedId: bed.id, code: bed.code, blockId: bed.blockId, x_m: bed.x_m, y_m: bed.y_m, elevation_m: bed.elevation_m })
    .from(bed)
    .where(sql`${bed.retiredDate} is null`)
    .orderBy(asc(bed.blockId), asc(bed.position), asc(bed.code))
    .all();
}

export function addLine(db: FarmDb, row: NewWaterLine): void {
  db.insert(waterLine).values(row).run();
}

/** Changes a line's own fields. False when it was changed meanwhile. */
export function changeLine(db: FarmDb, lineId: string, values: LineChange, revision: number): boolean {
  const result = db
    .update(waterLine)
    .set({ ...values, revision: sql`${waterLine.revision} + 1` })
    .where(and(eq(waterLine.id, lineId), eq(waterLine.revision, revision)))
    .run();
  return result.changes === 1;
}

export function removeLine(db: FarmDb, lineId: string): void {
  db.delete(waterLine).where(eq(waterLine.id, lineId)).run();
}

/** Puts a pump with its points in the place of the line's own; null takes it away. */
export function replacePump(
  db: FarmDb,
  lineId: string,
  row: typeof pump.$inferInsert | null,
  points: readonly (typeof pumpPoint.$inferInsert)[],
): void {
  db.delete(pump).where(eq(pump.lineId, lineId)).run();
  if (row === null) return;
  db.insert(pump).values(row).run();
  insertAll(db, pumpPoint, points);
}

export function replacePower(db: FarmDb, lineId: string, row: typeof powerSource.$inferInsert | null): void {
  db.delete(powerSource).where(eq(powerSource.lineId, lineId)).run();
  if (row !== null) db.insert(powerSource).values(row).run();
}

export function replaceTimers(db: FarmDb, lineId: string, rows: readonly (typeof timerEvent.$inferInsert)[]): void {
  db.delete(timerEvent).where(eq(timerEvent.lineId, lineId)).run();
  insertAll(db, timerEvent, rows);
}

/** Adds pieces of tubing in an order that keeps every reference whole. */
export function addPieces(
  db: FarmDb,
  pieces: { readonly nodes: readonly NewNode[]; readonly runs: readonly NewRun[]; readonly outlets: readonly NewOutlet[] },
): void {
  insertAll(db, lineNode, pieces.nodes);
  insertAll(db, lineRun, pieces.runs);
  insertAll(db, lineOutlet, pieces.outlets);
}

/** Takes places of the line away; their runs and outlets go with them. */
export function removeNodes(db: FarmDb, nodeIds: readonly string[]): void {
  for (const nodeId of nodeIds) db.delete(lineNode).where(eq(lineNode.id, nodeId)).run();
}

export function changeNode(db: FarmDb, nodeId: string, values: Partial<NewNode>): void {
  db.update(lineNode).set(values).where(eq(lineNode.id, nodeId)).run();
}

export function changeRun(db: FarmDb, runId: string, values: Partial<NewRun>): void {
  db.update(lineRun).set(values).where(eq(lineRun.id, runId)).run();
}

export function changeOutlet(db: FarmDb, outletId: string, values: Partial<NewOutlet>): void {
  db.update(lineOutlet).set(values).where(eq(lineOutlet.id, outletId)).run();
}

export function readingsOfOutlets(db: FarmDb, outletIds: readonly string[]) {
  if (outletIds.length === 0) return [];
  return db
    .select()
    .from(valveReading)
    .where(inArray(valveReading.outletId, [...outletIds]))
    .orderBy(asc(valveReading.turns))
    .all();
}

export function addReading(db: FarmDb, row: typeof valveReading.$inferInsert): void {
  db.insert(valveReading).values(row).run();
}

export function removeReading(db: FarmDb, readingId: string): void {
  db.delete(valveReading).where(eq(valveReading.id, readingId)).run();
}

/** Tubing, fittings and pumps with the least price of a base unit among the offers in force; null where nobody offers it. */
export function linePartsOnOffer(db: FarmDb) {
  return db
    .select({
      materialId: material.id,
      name: material.name,
      kind: material.kind,
      baseUnit: material.baseUnit,
      insideDiameter_m: material.insideDiameter_m,
      boreDiameter_m: material.boreDiameter_m,
      power_W: material.power_W,
      price_minor: sql<number | null>`min(${offer.price_minor} * 1.0 / ${offer.packageAmount})`,
    })
    .from(material)
    .leftJoin(offer, and(eq(offer.materialId, material.id), eq(offer.retired, false)))
    .where(and(inArray(material.kind, ['tubing', 'fitting', 'pump', 'power', 'hardware']), eq(material.retired, false)))
    .groupBy(material.id)
    .orderBy(asc(material.name))
    .all();
}

/** Prices of mains power and water, set for the farm. */
export function supplyPrices(db: FarmDb) {
  return db
    .select({ electricity_minor_per_kWh: farm.electricity_minor_per_kWh, water_minor_per_m3: farm.water_minor_per_m3 })
    .from(farm)
    .get();
}

/** Rain of every day of the farm's weather record; a day without a reading counts as dry. */
export function rainRecord(db: FarmDb): readonly { readonly date: IsoDate; readonly rain_mm: number }[] {
  return db
    .select({ date: weatherDay.date, rain_mm: sql<number>`coalesce(${weatherDay.rain_mm}, 0)` })
    .from(weatherDay)
    .innerJoin(farm, eq(farm.stationId, weatherDay.stationId))
    .orderBy(asc(weatherDay.date))
    .all()
    .map(({ date, rain_mm }) => ({ date: date as IsoDate, rain_mm }));
}

const refillKey = (lineId: string): string => `refill:${lineId}:`;

/** Puts the line's coming refills in the place of those still open. */
export function replaceRefillTasks(
  db: FarmDb,
  lineId: string,
  refills: readonly { readonly id: string; readonly title: string; readonly dueDate: string }[],
): void {
  db.delete(task)
    .where(and(like(task.originKey, `${refillKey(lineId)}%`), eq(task.state, 'open')))
    .run();
  insertAll(
    db,
    task,
    refills.map((refill) => ({ ...refill, kind: 'refill', originKey: `${refillKey(lineId)}${refill.dueDate}` })),
  );
}

const needKeyOf = (lineId: string): string => `line:${lineId}:`;

/** Puts the parts a line needs in the place of those it asked for before. */
export function replaceLineNeeds(
  db: FarmDb,
  lineId: string,
  needs: readonly { readonly id: string; readonly materialId: string; readonly amount: number; readonly reason: string }[],
): void {
  db.delete(needChoice)
    .where(like(needChoice.needKey, `${needKeyOf(lineId)}%`))
    .run();
  insertAll(
    db,
    needChoice,
    needs.map((need) => ({ ...need, needKey: `${needKeyOf(lineId)}${need.materialId}` })),
  );
}
