import { desc, eq, isNull } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { bed, block, design } from '../schema/beds.ts';
import { crop } from '../schema/crops.ts';
import { material, offer, supplier } from '../schema/materials.ts';
import { planting, season } from '../schema/plantings.ts';
import { compostBatch, soilTest } from '../schema/soil.ts';
import { waterLine } from '../schema/water.ts';

export type NamedThing = {
  readonly kind:
    | 'bed'
    | 'crop'
    | 'planting'
    | 'material'
    | 'design'
    | 'supplier'
    | 'offer'
    | 'season'
    | 'water-line'
    | 'soil-test'
    | 'heap';
  readonly id: string;
  readonly name: string;
  readonly detail: string;
  /** The day that tells it from others of its name: set in the bed, sampled, begun. */
  readonly date: string | null;
};

/** All that carries a name in the farm, for the box that finds things. */
export function namesOfFarm(db: FarmDb): readonly NamedThing[] {
  const beds = db
    .select({ id: bed.id, name: bed.code, own: bed.name, block: block.name, design: design.name })
    .from(bed)
    .innerJoin(block, eq(block.id, bed.blockId))
    .innerJoin(design, eq(design.id, bed.designId))
    .where(isNull(bed.retiredDate))
    .orderBy(bed.code)
    .all();
  const crops = db
    .select({ id: crop.id, name: crop.name, botanical: crop.botanicalName, family: crop.family })
    .from(crop)
    .where(eq(crop.hidden, false))
    .orderBy(crop.name)
    .all();
  const plantings = db
    .select({ id: planting.id, crop: crop.name, number: planting.number, season: season.name, date: planting.inBedDate })
    .from(planting)
    .innerJoin(crop, eq(crop.id, planting.cropId))
    .innerJoin(season, eq(season.id, planting.seasonId))
    .orderBy(planting.inBedDate, planting.id)
    .all();
  const materials = db
    .select({ id: material.id, name: material.name, detail: material.kind })
    .from(material)
    .orderBy(material.name)
    .all();
  const designs = db.select({ id: design.id, name: design.name, detail: design.kind }).from(design).orderBy(design.name).all();
  const suppliers = db.select({ id: supplier.id, name: supplier.name }).from(supplier).orderBy(supplier.name).all();
  const offers = db
    .select({ id: offer.id, name: offer.name, detail: supplier.name })
    .from(offer)
    .innerJoin(supplier, eq(supplier.id, offer.supplierId))
    .where(eq(offer.retired, false))
    .orderBy(offer.name)
    .all();
  const seasons = db.select({ id: season.id, name: season.name }).from(season).orderBy(desc(season.startDate)).all();
  const lines = db.select({ id: waterLine.id, name: waterLine.name }).from(waterLine).orderBy(waterLine.name).all();
  const tests = db
    .select({ id: soilTest.id, name: soilTest.sample, detail: soilTest.laboratory, date: soilTest.date })
    .from(soilTest)
    .orderBy(desc(soilTest.date), soilTest.sample)
    .all();
  const heaps = db
    .select({ id: compostBatch.id, name: compostBatch.code, detail: compostBatch.place, date: compostBatch.startedDate })
    .from(compostBatch)
    .orderBy(desc(compostBatch.startedDate))
    .all();
  const listed = (...parts: readonly (string | null)[]): string => parts.filter(Boolean).join(', ');
  return [
    ...of('bed', beds, (row) => ({ detail: listed(row.own, row.block, row.design) })),
    ...of('crop', crops, (row) => ({ detail: listed(row.botanical, row.family) })),
    ...plantings.map(
      (row): NamedThing => ({
        kind: 'planting',
        id: row.id,
        name: `${row.crop} ${row.number}`,
        detail: row.season,
        date: row.date,
      }),
    ),
    ...of('material', materials),
    ...of('design', designs),
    ...of('supplier', suppliers),
    ...of('offer', offers),
    ...of('season', seasons),
    ...of('water-line', lines),
    ...of('soil-test', tests),
    ...of('heap', heaps),
  ];
}

type Row = { readonly id: string; readonly name: string; readonly detail?: string | null; readonly date?: string | null };

const of = <R extends Row>(
  kind: NamedThing['kind'],
  rows: readonly R[],
  more: (row: R) => { readonly detail: string } = (row) => ({ detail: row.detail ?? '' }),
): readonly NamedThing[] => rows.map((row) => ({ kind, id: row.id, name: row.name, date: row.date ?? null, ...more(row) }));
