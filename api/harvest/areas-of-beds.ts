import type { FarmDb } from '../../db/file/open-farm.ts';
import { bedsInUse, bedsRetired } from '../../db/repositories/beds.ts';
import { outlineOfBed } from '../../planner/beds/bed-spec.ts';
import { footprint_m2 } from '../../planner/beds/footprint.ts';
import { InputError } from '../../planner/errors.ts';
import { specOfBed } from '../beds/bed-spec-of.ts';

/** Ground of every bed that is or was; 0 where its measures do not fit together (the bed shows that fault itself). */
export function areasOfBeds(db: FarmDb): ReadonlyMap<string, number> {
  return new Map([...bedsInUse(db), ...bedsRetired(db)].map((record) => [record.bed.id, areaOf(record)]));
}

export function areaOf(record: Parameters<typeof specOfBed>[0]): number {
  try {
    return footprint_m2(outlineOfBed(specOfBed(record)));
  } catch (error) {
    if (error instanceof InputError) return 0;
    throw error;
  }
}
