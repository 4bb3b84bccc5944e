import { eq, isNull } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { bed, block, design } from '../schema/beds.ts';
import { crop } from '../schema/crops.ts';
import { material, supplier } from '../schema/materials.ts';
import { planting, season } from '../schema/plantings.ts';

export type NamedThing = {
  readonly kind: 'bed' | 'crop' | 'planting' | 'material' | 'design' | 'supplier';
  readonly id: string;
  readonly name: string;
  readonly detail: string;
};

/** All that carries a name in the farm, for the box that finds things. */
export function namesOfFarm(db: FarmDb): readonly NamedThing[] {
  const beds = db
    .select({ id: bed.id, code: bed.code, name: bed.name, block: block.name, design: design.name })
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
    .select({ id: planting.id, crop: crop.name, number: planting.number, season: season.name, inBed: planting.inBedDate })
    .from(planting)
    .innerJoin(crop, eq(crop.id, planting.cropId))
    .innerJoin(season, eq(season.id, planting.seasonId))
    .orderBy(planting.inBedDate, planting.id)
    .all();
  const materials = db
    .select({ id: material.id, name: material.name, kind: material.kind })
    .from(material)
    .orderBy(material.name)
    .all();
  const designs = db.select({ id: design.id, name: design.name, kind: design.kind }).from(design).orderBy(design.name).all();
  const suppliers = db.select({ id: supplier.id, name: supplier.name }).from(supplier).orderBy(supplier.name).all();
  return [
    ...beds.map((row) => ({
      kind: 'bed' as const,
      id: row.id,
      name: row.code,
      detail: [row.name, row.block, row.design].filter(Boolean).join(', '),
    })),
    ...crops.map((row) => ({
      kind: 'crop' as const,
      id: row.id,
      name: row.name,
      detail: [row.botanical, row.family].filter(Boolean).join(', '),
    })),
    ...plantings.map((row) => ({
      kind: 'planting' as const,
      id: row.id,
      name: `${row.crop} ${row.number}`,
      detail: `${row.season}, in bed ${row.inBed}`,
    })),
    ...materials.map((row) => ({ kind: 'material' as const, id: row.id, name: row.name, detail: row.kind })),
    ...designs.map((row) => ({ kind: 'design' as const, id: row.id, name: row.name, detail: row.kind })),
    ...suppliers.map((row) => ({ kind: 'supplier' as const, id: row.id, name: row.name, detail: '' })),
  ];
}
