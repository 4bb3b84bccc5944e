import { and, asc, eq, gt, isNull } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { bed, block } from '../schema/beds.ts';
import { crop, variety } from '../schema/crops.ts';
import { planting, plantingBed } from '../schema/plantings.ts';

export type BedLabel = {
  readonly bedId: string;
  readonly code: string;
  readonly name: string;
  readonly block: string;
  /** What stands in the bed on the day, or comes next; empty when nothing does. */
  readonly crop: string;
  readonly variety: string;
  readonly from: string | null;
};

/** What a label of each bed in use says on a day, by code. A bed with several plantings names them all. */
export function bedLabels(db: FarmDb, today: string): readonly BedLabel[] {
  const beds = db
    .select({ bedId: bed.id, code: bed.code, name: bed.name, block: block.name })
    .from(bed)
    .innerJoin(block, eq(block.id, bed.blockId))
    .where(isNull(bed.retiredDate))
    .orderBy(asc(bed.code))
    .all();
  const plantings = db
    .select({
      bedId: plantingBed.bedId,
      crop: crop.name,
      variety: variety.name,
      from: planting.inBedDate,
    })
    .from(plantingBed)
    .innerJoin(planting, eq(planting.id, plantingBed.plantingId))
    .innerJoin(crop, eq(crop.id, planting.cropId))
    .leftJoin(variety, eq(variety.id, planting.varietyId))
    .where(and(gt(planting.clearDate, today), isNull(planting.clearedActual)))
    .orderBy(asc(planting.inBedDate), asc(crop.name))
    .all();
  const byBed = Map.groupBy(plantings, (row) => row.bedId);
  return beds.map((row) => {
    const all = byBed.get(row.bedId) ?? [];
    const now = all.filter((each) => each.from <= today);
    const shown = now.length > 0 ? now : all.slice(0, 1);
    return {
      ...row,
      crop: [...new Set(shown.map((each) => each.crop))].join(', '),
      variety: [...new Set(shown.flatMap((each) => (each.variety === null ? [] : [each.variety])))].join(', '),
      from: now.length > 0 ? null : (shown[0]?.from ?? null),
    };
  });
}
