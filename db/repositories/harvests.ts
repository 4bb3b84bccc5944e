import { and, asc, desc, eq, gte, inArray, isNull, like, lte, max, or, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { bed, block } from '../schema/beds.ts';
import { crop } from '../schema/crops.ts';
import { harvest, harvestLot, saleLine, saleUnit } from '../schema/harvests.ts';
import { outlet, planting, plantingBed } from '../schema/plantings.ts';
import { insertAll } from './insert-all.ts';

export type HarvestRow = typeof harvest.$inferSelect;
export type NewHarvest = typeof harvest.$inferInsert;

/** Plantings that stood in a bed within the days, with what a harvest entry needs to know of them. */
export function plantingsToHarvest(db: FarmDb, from: string, to: string) {
  return db
    .select({
      plantingId: planting.id,
      seasonId: planting.seasonId,
      cropId: planting.cropId,
      crop: crop.name,
      number: planting.number,
      state: planting.state,
      inBed: sql<string>`coalesce(${planting.inBedActual}, ${planting.inBedDate})`,
      firstHarvest: planting.firstHarvestDate,
      lastHarvest: planting.lastHarvestDate,
      clear: planting.clearDate,
      cleared: planting.clearedActual,
      yieldUnit: planting.yieldUnit,
      yieldTypical: planting.yieldTypical,
      price_minor: planting.price_minor,
    })
    .from(planting)
    .innerJoin(crop, eq(crop.id, planting.cropId))
    .where(and(lte(sql`coalesce(${planting.inBedActual}, ${planting.inBedDate})`, to), gte(planting.clearDate, from)))
    .orderBy(asc(crop.name), asc(planting.inBedDate), asc(planting.number), asc(planting.id))
    .all();
}

export type PlantingToHarvest = ReturnType<typeof plantingsToHarvest>[number];

/** Beds of plantings, each with its code. */
export function bedsOfPlantings(db: FarmDb, from: string, to: string) {
  return db
    .select({ plantingId: plantingBed.plantingId, bedId: bed.id, code: bed.code })
    .from(plantingBed)
    .innerJoin(planting, eq(planting.id, plantingBed.plantingId))
    .innerJoin(bed, eq(bed.id, plantingBed.bedId))
    .where(and(lte(sql`coalesce(${planting.inBedActual}, ${planting.inBedDate})`, to), gte(planting.clearDate, from)))
    .orderBy(asc(bed.code))
    .all();
}

export function plantingFacts(db: FarmDb, plantingId: string) {
  return db
    .select({
      plantingId: planting.id,
      cropId: planting.cropId,
      crop: crop.name,
      number: planting.number,
      inBed: sql<string>`coalesce(${planting.inBedActual}, ${planting.inBedDate})`,
      cleared: planting.clearedActual,
      yieldUnit: planting.yieldUnit,
      yieldTypical: planting.yieldTypical,
      price_minor: planting.price_minor,
      state: planting.state,
      firstHarvestActual: planting.firstHarvestActual,
    })
    .from(planting)
    .innerJoin(crop, eq(crop.id, planting.cropId))
    .where(eq(planting.id, plantingId))
    .get();
}

/** The beds that a planting stands on, with block codes for lots. */
export function bedsOfPlanting(db: FarmDb, plantingId: string) {
  return db
    .selectDistinct({ bedId: bed.id, code: bed.code, block: block.code })
    .from(plantingBed)
    .innerJoin(bed, eq(bed.id, plantingBed.bedId))
    .innerJoin(block, eq(block.id, bed.blockId))
    .where(eq(plantingBed.plantingId, plantingId))
    .orderBy(asc(bed.code))
    .all();
}

/** The largest single harvest of a crop in a unit. */
export function recordHarvest(db: FarmDb, cropId: string, unit: string): number | null {
  const row = db
    .select({ most: max(harvest.amount) })
    .from(harvest)
    .innerJoin(planting, eq(planting.id, harvest.plantingId))
    .where(and(eq(planting.cropId, cropId), eq(harvest.unit, unit)))
    .get();
  return row?.most ?? null;
}

/** The largest single harvest of every crop and unit. */
export function recordHarvests(db: FarmDb): ReadonlyMap<string, number> {
  const rows = db
    .select({ plantingId: harvest.plantingId, unit: harvest.unit, most: sql<number>`max(${harvest.amount})` })
    .from(harvest)
    .groupBy(harvest.plantingId, harvest.unit)
    .all();
  const plantings = plantingNames(db);
  const records = new Map<string, number>();
  for (const { plantingId, unit, most } of rows) {
    const key = `${plantings.get(plantingId)?.cropId ?? ''} ${unit}`;
    records.set(key, Math.max(records.get(key) ?? 0, most));
  }
  return records;
}

const logColumns = {
  harvestId: harvest.id,
  date: harvest.date,
  plantingId: harvest.plantingId,
  bedId: harvest.bedId,
  amount: harvest.amount,
  unit: harvest.unit,
  weight_kg: harvest.weight_kg,
  culls_kg: harvest.culls_kg,
  cullReason: harvest.cullReason,
  grade: harvest.grade,
  outletId: harvest.outletId,
  price_minor: harvest.price_minor,
  labour_min: harvest.labour_min,
  lotId: harvest.lotId,
  lot: harvestLot.code,
  picker: harvest.picker,
  note: harvest.note,
  createdAt: harvest.createdAt,
  revision: harvest.revision,
};

const logOf = (db: FarmDb) => db.select(logColumns).from(harvest).leftJoin(harvestLot, eq(harvestLot.id, harvest.lotId));

/** Rows of the log with the words that the reader knows them by. */
function named(db: FarmDb, rows: ReturnType<ReturnType<typeof logOf>['all']>) {
  const plantings = plantingNames(db);
  const codes = bedCodes(db);
  const outlets = new Map(
    db
      .select({ id: outlet.id, name: outlet.name })
      .from(outlet)
      .all()
      .map(({ id, name }) => [id, name]),
  );
  return rows.map((row) => {
    const { crop: name, number } = plantings.get(row.plantingId) ?? { crop: '', number: 0 };
    return {
      ...row,
      crop: name,
      number,
      bed: row.bedId === null ? null : (codes.get(row.bedId) ?? null),
      outlet: row.outletId === null ? null : (outlets.get(row.outletId) ?? null),
    };
  });
}

/** The newest harvests between two days, at most `most` of them. */
export function harvestLog(db: FarmDb, from: string, to: string, most: number) {
  const rows = logOf(db)
    .where(and(gte(harvest.date, from), lte(harvest.date, to)))
    .orderBy(desc(harvest.date), desc(harvest.createdAt), sql`harvest.rowid desc`)
    .limit(most)
    .all();
  return named(db, rows);
}

export type LoggedHarvest = ReturnType<typeof harvestLog>[number];

/** The harvest entered last, to be repeated. */
export function lastHarvest(db: FarmDb, now: string): LoggedHarvest | undefined {
  const rows = logOf(db)
    .where(lte(harvest.createdAt, now))
    .orderBy(desc(harvest.createdAt), sql`harvest.rowid desc`)
    .limit(1)
    .all();
  return named(db, rows)[0];
}

export function harvestOfId(db: FarmDb, harvestId: string): HarvestRow | undefined {
  return db.select().from(harvest).where(eq(harvest.id, harvestId)).get();
}

export function countHarvests(db: FarmDb, from: string, to: string): number {
  return (
    db
      .select({ n: sql<number>`count(*)` })
      .from(harvest)
      .where(and(gte(harvest.date, from), lte(harvest.date, to)))
      .get()?.n ?? 0
  );
}

export function addHarvests(db: FarmDb, rows: readonly NewHarvest[], lots: readonly (typeof harvestLot.$inferInsert)[]): void {
  insertAll(db, harvestLot, lots);
  insertAll(db, harvest, rows);
}

export type HarvestChange = Partial<Omit<NewHarvest, 'id' | 'revision'>>;

/** Writes a harvest when its revision is still `revision`; false when it was changed meanwhile. */
export function changeHarvest(db: FarmDb, harvestId: string, revision: number, values: HarvestChange): boolean {
  const result = db
    .update(harvest)
    .set({ ...values, revision: sql`${harvest.revision} + 1` })
    .where(and(eq(harvest.id, harvestId), eq(harvest.revision, revision)))
    .run();
  return result.changes === 1;
}

/** Lines of sales that name a harvest. */
export function salesOfHarvest(db: FarmDb, harvestId: string): number {
  return db.select({ id: saleLine.id }).from(saleLine).where(eq(saleLine.harvestId, harvestId)).all().length;
}

export function removeHarvest(db: FarmDb, harvestId: string): void {
  db.delete(harvest).where(eq(harvest.id, harvestId)).run();
}

/** Lot codes that begin like one to be made, so that it is not given twice. */
export function lotCodesLike(db: FarmDb, stem: string): ReadonlySet<string> {
  return new Set(
    db
      .select({ code: harvestLot.code })
      .from(harvestLot)
      .where(like(harvestLot.code, `${stem}%`))
      .all()
      .map((row) => row.code),
  );
}

export function allLotCodes(db: FarmDb): ReadonlySet<string> {
  return new Set(
    db
      .select({ code: harvestLot.code })
      .from(harvestLot)
      .all()
      .map((row) => row.code),
  );
}

/** Crop of every planting, to be put beside thousands of rows: joining them in SQL costs several times as much. */
function plantingNames(db: FarmDb) {
  const crops = new Map(
    db
      .select({ id: crop.id, name: crop.name })
      .from(crop)
      .all()
      .map(({ id, name }) => [id, name]),
  );
  return new Map(
    db
      .select({ id: planting.id, cropId: planting.cropId, number: planting.number })
      .from(planting)
      .all()
      .map(({ id, cropId, number }) => [id, { cropId, number, crop: crops.get(cropId) ?? '' }]),
  );
}

const bedCodes = (db: FarmDb): ReadonlyMap<string, string> =>
  new Map(
    db
      .select({ id: bed.id, code: bed.code })
      .from(bed)
      .all()
      .map(({ id, code }) => [id, code]),
  );

const leastOf = (a: string, b: string): string => (a === '' || (b !== '' && b < a) ? b : a);

/** What was harvested into lots and what went out of them, for lots since a day or named; the newest first. */
export function lotBalances(
  db: FarmDb,
  which: { readonly since: string } | { readonly lotIds: readonly string[] },
): LotBalance[] {
  const wanted = 'since' in which ? gte(harvestLot.date, which.since) : inArray(harvestLot.id, [...which.lotIds]);
  const rows = db
    .select({
      lotId: harvestLot.id,
      code: harvestLot.code,
      date: harvestLot.date,
      plantingId: harvest.plantingId,
      unit: harvest.unit,
      amount: harvest.amount,
      weight_kg: harvest.weight_kg,
      bedId: harvest.bedId,
    })
    .from(harvestLot)
    .innerJoin(harvest, eq(harvest.lotId, harvestLot.id))
    .where(wanted)
    .orderBy(desc(harvestLot.date), asc(harvestLot.code))
    .all();
  const gone = new Map(
    db
      .select({ lotId: saleLine.lotId, amount: sql<number>`sum(${saleLine.amount})` })
      .from(saleLine)
      .where(inArray(saleLine.lotId, db.select({ id: harvestLot.id }).from(harvestLot).where(wanted)))
      .groupBy(saleLine.lotId)
      .all()
      .map(({ lotId, amount }) => [lotId, amount]),
  );
  const names = plantingNames(db);
  const codes = bedCodes(db);
  const lots = new Map<string, LotBalance>();
  for (const { lotId, code, date, plantingId, unit, amount, weight_kg, bedId } of rows) {
    const key = `${lotId} ${unit}`;
    const known = lots.get(key);
    const bedCode = bedId === null ? '' : (codes.get(bedId) ?? '');
    const { cropId, crop: name } = names.get(plantingId) ?? { cropId: '', crop: '' };
    lots.set(
      key,
      known === undefined
        ? {
            lotId,
            code,
            date,
            crop: name,
            cropId,
            plantingId,
            unit,
            harvested: amount,
            weight_kg,
            gone: gone.get(lotId) ?? 0,
            bed: bedCode,
          }
        : {
            ...known,
            plantingId: leastOf(known.plantingId, plantingId),
            harvested: known.harvested + amount,
            weight_kg: weight_kg === null ? known.weight_kg : (known.weight_kg ?? 0) + weight_kg,
            bed: leastOf(known.bed, bedCode),
          },
    );
  }
  return [...lots.values()];
}

export type LotBalance = {
  readonly lotId: string;
  readonly code: string;
  readonly date: string;
  readonly crop: string;
  readonly cropId: string;
  readonly plantingId: string;
  readonly unit: string;
  readonly harvested: number;
  readonly weight_kg: number | null;
  readonly gone: number;
  /** The first of the beds it came from; empty where none was named. */
  readonly bed: string;
};

/** Own net weights of units of sale. */
export function saleUnitsOfFarm(db: FarmDb) {
  return db
    .select({
      saleUnitId: saleUnit.id,
      cropId: saleUnit.cropId,
      crop: crop.name,
      unit: saleUnit.unit,
      net_kg: saleUnit.net_kg,
      source: saleUnit.source,
    })
    .from(saleUnit)
    .leftJoin(crop, eq(crop.id, saleUnit.cropId))
    .orderBy(asc(crop.name), asc(saleUnit.unit))
    .all();
}

/** Sets the weight of a unit of a crop (or of any crop). */
export function setSaleUnit(db: FarmDb, row: typeof saleUnit.$inferInsert): void {
  db.delete(saleUnit)
    .where(
      and(
        eq(saleUnit.unit, row.unit),
        row.cropId === null || row.cropId === undefined ? isNull(saleUnit.cropId) : eq(saleUnit.cropId, row.cropId),
      ),
    )
    .run();
  db.insert(saleUnit).values(row).run();
}

export function removeSaleUnit(db: FarmDb, saleUnitId: string): void {
  db.delete(saleUnit).where(eq(saleUnit.id, saleUnitId)).run();
}

/** Tells a planting that its harvest has begun, where nobody has said so yet. */
export function markHarvesting(db: FarmDb, plantingIds: readonly string[], dateOf: (plantingId: string) => string): void {
  for (const id of plantingIds)
    db.update(planting)
      .set({ state: 'harvesting', firstHarvestActual: sql`coalesce(${planting.firstHarvestActual}, ${dateOf(id)})` })
      .where(
        and(eq(planting.id, id), or(eq(planting.state, 'growing'), eq(planting.state, 'sown'), eq(planting.state, 'planned'))),
      )
      .run();
}
