import type { FarmDb } from '../../db/file/open-farm.ts';
import { type BedRecord, bedOfId, bedsInUse, bedsRetired, type LayerRecord, ownLayers } from '../../db/repositories/beds.ts';
import { designLayers } from '../../db/repositories/designs.ts';
import type { BedSpec } from '../../planner/beds/bed-spec.ts';
import { InputError } from '../../planner/errors.ts';
import { type BedFigures, bedFigures } from '../../planner/soil/bed-figures.ts';
import { Refusal } from '../errors.ts';
import { type Recipe, recipeOf, specOfBed } from './bed-spec-of.ts';

/** A bed with its measures, recipe and all figures that follow. `fault` says why there are none. */
export type LoadedBed = BedRecord & {
  readonly spec: BedSpec;
  readonly recipe: Recipe;
  readonly hasOwnRecipe: boolean;
  readonly figures: BedFigures | null;
  readonly fault: string | null;
};

const byOwner = (rows: readonly LayerRecord[]): ReadonlyMap<string, readonly LayerRecord[]> =>
  Map.groupBy(rows, (row) => row.ownerId);

/** Every bed in use (or every retired one) with its figures. */
export function loadBeds(db: FarmDb, which: 'in-use' | 'retired' = 'in-use'): readonly LoadedBed[] {
  const ofDesigns = byOwner(designLayers(db));
  const ofBeds = byOwner(ownLayers(db));
  return (which === 'in-use' ? bedsInUse(db) : bedsRetired(db)).map((record) => withFigures(record, ofDesigns, ofBeds));
}

/** One bed with its figures. @throws Refusal when it is gone */
export function loadBed(db: FarmDb, bedId: string): LoadedBed {
  const record = bedOfId(db, bedId);
  if (record === undefined) throw new Refusal({ code: 'not-found', what: 'bed' });
  return withFigures(record, byOwner(designLayers(db)), byOwner(ownLayers(db)));
}

function withFigures(
  record: BedRecord,
  ofDesigns: ReadonlyMap<string, readonly LayerRecord[]>,
  ofBeds: ReadonlyMap<string, readonly LayerRecord[]>,
): LoadedBed {
  const spec = specOfBed(record);
  const own = ofBeds.get(record.bed.id);
  const recipe = recipeOf(own ?? ofDesigns.get(record.design.id) ?? []);
  const known = { ...record, spec, recipe, hasOwnRecipe: own !== undefined };
  try {
    return { ...known, figures: bedFigures(spec, recipe, record.design.barrierOverlap_m), fault: null };
  } catch (error) {
    // a bed with measures that do not fit stays in the list with its fault shown, so that it can be mended there
    if (error instanceof InputError) return { ...known, figures: null, fault: error.message };
    throw error;
  }
}
