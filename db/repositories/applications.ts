import { and, asc, desc, eq, inArray } from 'drizzle-orm';
import { derived, derivedRows } from '../file/derived.ts';
import type { FarmDb } from '../file/open-farm.ts';
import { bed, bedFill } from '../schema/beds.ts';
import { material, supplier } from '../schema/materials.ts';
import { application, applicationBed } from '../schema/soil.ts';
import { materialLot, stockMove } from '../schema/stock.ts';
import { insertAll } from './insert-all.ts';

export type ApplicationRow = typeof application.$inferSelect;
export type NewApplication = typeof application.$inferInsert;
export type NewApplicationBed = typeof applicationBed.$inferInsert;

const select = (db: FarmDb) =>
  db
    .select({
      applicationBedId: applicationBed.id,
      applicationId: applicationBed.applicationId,
      bedId: applicationBed.bedId,
      code: bed.code,
      amount_kg: applicationBed.amount_kg,
      cost_minor: applicationBed.cost_minor,
      plantingId: applicationBed.plantingId,
    })
    .from(applicationBed)
    .innerJoin(application, eq(application.id, applicationBed.applicationId))
    .innerJoin(bed, eq(bed.id, applicationBed.bedId))
    .innerJoin(material, eq(material.id, application.materialId));

type Selected = ReturnType<ReturnType<typeof select>['all']>;

/** Joins applications and their materials here rather than in SQL: thousands of beds share a handful of wide rows. */
function withMaterials(db: FarmDb, rows: Readonly<Selected>) {
  const ids = [...new Set(rows.map((row) => row.applicationId))];
  const heads = new Map(
    ids.length === 0
      ? []
      : db
          .select({ application, material, lot: materialLot.code, supplier: supplier.name })
          .from(application)
          .innerJoin(material, eq(material.id, application.materialId))
          .leftJoin(materialLot, eq(materialLot.id, application.lotId))
          .leftJoin(supplier, eq(supplier.id, materialLot.supplierId))
          .where(ids.length > MOST_NAMED ? undefined : inArray(application.id, ids))
          .all()
          .map((head) => [head.application.id, head]),
  );
  return rows.flatMap(({ applicationId, ...row }) => {
    const head = heads.get(applicationId);
    return head === undefined ? [] : [{ ...row, ...head }];
  });
}

/** More than these are read whole: a list of them would be longer than a query may be. */
const MOST_NAMED = 500;

/** One bed's part of an application, with its material. */
export type AppliedBed = ReturnType<typeof applicationsDone>[number];

/** Everything put on beds so far, the oldest first. */
export const applicationsDone = (db: FarmDb) => derived(db, 'applications done', () => doneRead(db));

const doneRead = (db: FarmDb) =>
  withMaterials(
    db,
    derivedRows(db, 'applied on beds', () =>
      select(db).where(eq(application.state, 'done')).orderBy(asc(application.date), asc(bed.code), asc(applicationBed.id)).all(),
    ),
  );

/** What is still planned, by date and bed. */
export const applicationsPlanned = (db: FarmDb) => derived(db, 'applications planned', () => plannedRead(db));

const plannedRead = (db: FarmDb) =>
  withMaterials(
    db,
    derivedRows(db, 'to be applied on beds', () =>
      select(db)
        .where(eq(application.state, 'planned'))
        .orderBy(asc(application.date), asc(bed.code), asc(material.name), asc(applicationBed.id))
        .all(),
    ),
  );

/** All applications, the newest first. */
export function applicationsOfFarm(db: FarmDb) {
  return withMaterials(
    db,
    select(db).orderBy(desc(application.date), asc(material.name), asc(bed.code), asc(applicationBed.id)).all(),
  );
}

export function applicationBedsOfIds(db: FarmDb, ids: readonly string[]) {
  return ids.length === 0
    ? []
    : withMaterials(
        db,
        select(db)
          .where(inArray(applicationBed.id, [...ids]))
          .orderBy(asc(applicationBed.id))
          .all(),
      );
}

export function addApplications(db: FarmDb, rows: readonly NewApplication[], beds: readonly NewApplicationBed[]): void {
  insertAll(db, application, rows);
  insertAll(db, applicationBed, beds);
}

/** How many beds an application still has. */
export function bedsLeft(db: FarmDb, applicationId: string): number {
  return db.select({ id: applicationBed.id }).from(applicationBed).where(eq(applicationBed.applicationId, applicationId)).all()
    .length;
}

export function setApplicationCost(db: FarmDb, applicationBedId: string, applicationId: string, cost_minor: number): void {
  db.update(applicationBed).set({ applicationId, cost_minor }).where(eq(applicationBed.id, applicationBedId)).run();
}

export function removeApplication(db: FarmDb, applicationId: string): void {
  db.delete(application).where(eq(application.id, applicationId)).run();
}

/** Takes planned doses off the cards, and applications that are left without a bed. Done ones stay: they are records. */
export function removePlannedDoses(db: FarmDb, applicationBedIds: readonly string[]): void {
  const rows = applicationBedsOfIds(db, applicationBedIds).filter((row) => row.application.state === 'planned');
  for (const row of rows) db.delete(applicationBed).where(eq(applicationBed.id, row.applicationBedId)).run();
  for (const id of new Set(rows.map((row) => row.application.id))) if (bedsLeft(db, id) === 0) removeApplication(db, id);
}

/** Planned doses of a season that a blend made, to be replaced by another. */
export function removePlannedOfSeason(db: FarmDb, seasonId: string, reason: string): number {
  return db
    .delete(application)
    .where(and(eq(application.seasonId, seasonId), eq(application.state, 'planned'), eq(application.reason, reason)))
    .run().changes;
}

/** Value and amount of what is on hand of a material, to price what is used. */
export function stockValue(db: FarmDb, materialId: string): { readonly amount: number; readonly value_minor: number } {
  const moves = db
    .select({ amount: stockMove.amount, value_minor: stockMove.value_minor })
    .from(stockMove)
    .where(eq(stockMove.materialId, materialId))
    .all();
  return {
    amount: moves.reduce((sum, move) => sum + move.amount, 0),
    value_minor: moves.reduce((sum, move) => sum + move.value_minor, 0),
  };
}

/** Top-ups of beds with the material's analysis, for what they still free. */
export function topUpsOfFarm(db: FarmDb) {
  return db
    .select({ bedId: bedFill.bedId, date: bedFill.date, loose_L: bedFill.loose_L, material })
    .from(bedFill)
    .innerJoin(material, eq(material.id, bedFill.materialId))
    .where(eq(bedFill.kind, 'top-up'))
    .orderBy(asc(bedFill.date), asc(bedFill.id))
    .all();
}
