import { derived, derivedRows } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { type BedRecord, bedRecordsOf, bedsInUse, bedsRetired, type LayerRecord, ownLayers } from '../../db/repositories/beds.ts';
import { designLayers } from '../../db/repositories/designs.ts';
import type { BedSpec } from '../../planner/beds/bed-spec.ts';
import { InputError } from '../../planner/errors.ts';
import { type BedFigures, bedFigures } from '../../planner/soil/bed-figures.ts';
import { Refusal } from '../errors.ts';
import { hasOwnMeasures, type Recipe, recipeOf, specOfBed } from './bed-spec-of.ts';

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

/** Figures that beds as designed share, so that they are worked out once for each design. */
type Known = Map<string, Pick<LoadedBed, 'recipe' | 'figures' | 'fault'>>;

/** Every bed in use (or every retired one) with its figures. */
export const loadBeds = (db: FarmDb, which: 'in-use' | 'retired' = 'in-use'): readonly LoadedBed[] =>
  derived(db, `beds ${which}`, (before: Loaded | undefined) => bedsOf(db, which, before)).beds;

type Loaded = {
  readonly beds: readonly LoadedBed[];
  readonly ofRecord: ReadonlyMap<BedRecord, LoadedBed>;
  readonly layers: readonly (readonly LayerRecord[])[];
};

/** A bed of which nothing was written, nor of its layers, is the same as before. */
function bedsOf(db: FarmDb, which: 'in-use' | 'retired', before: Loaded | undefined): Loaded {
  const layersOfDesigns = derivedRows(db, 'layers of designs', () => designLayers(db));
  const layersOfBeds = derivedRows(db, 'layers of beds', () => ownLayers(db));
  const sameLayers = before?.layers[0] === layersOfDesigns && before.layers[1] === layersOfBeds;
  const same = sameLayers ? before.ofRecord : new Map<BedRecord, LoadedBed>();
  const [ofDesigns, ofBeds] = [byOwner(layersOfDesigns), byOwner(layersOfBeds)];
  const known: Known = new Map();
  const ofRecord = new Map(
    (which === 'in-use' ? bedsInUse(db) : bedsRetired(db)).map((record) => [
      record,
      same.get(record) ?? withFigures(record, ofDesigns, ofBeds, known),
    ]),
  );
  return { beds: [...ofRecord.values()], ofRecord, layers: [layersOfDesigns, layersOfBeds] };
}

/** The beds of these ids with their figures. @throws Refusal when one is gone */
export function loadBedsOf(db: FarmDb, bedIds: readonly string[]): ReadonlyMap<string, LoadedBed> {
  const ofDesigns = byOwner(designLayers(db));
  const ofBeds = byOwner(ownLayers(db));
  const known: Known = new Map();
  const loaded = new Map(
    bedRecordsOf(db, bedIds).map((record) => [record.bed.id, withFigures(record, ofDesigns, ofBeds, known)]),
  );
  if (bedIds.some((bedId) => !loaded.has(bedId))) throw new Refusal({ code: 'not-found', what: 'bed' });
  return loaded;
}

/** One bed with its figures. @throws Refusal when it is gone */
export function loadBed(db: FarmDb, bedId: string): LoadedBed {
  const bed = loadBedsOf(db, [bedId]).get(bedId);
  if (bed === undefined) throw new Refusal({ code: 'not-found', what: 'bed' });
  return bed;
}

function withFigures(
  record: BedRecord,
  ofDesigns: ReadonlyMap<string, readonly LayerRecord[]>,
  ofBeds: ReadonlyMap<string, readonly LayerRecord[]>,
  known: Known,
): LoadedBed {
  const spec = specOfBed(record);
  const own = ofBeds.get(record.bed.id);
  if (own === undefined && !hasOwnMeasures(record.bed)) {
    const shared = known.get(record.design.id) ?? figuresOf(spec, recipeOf(ofDesigns.get(record.design.id) ?? []), record);
    known.set(record.design.id, shared);
    return { ...record, spec, hasOwnRecipe: false, ...shared };
  }
  const recipe = recipeOf(own ?? ofDesigns.get(record.design.id) ?? []);
  return { ...record, spec, hasOwnRecipe: own !== undefined, ...figuresOf(spec, recipe, record) };
}

function figuresOf(spec: BedSpec, recipe: Recipe, { design }: BedRecord): Pick<LoadedBed, 'recipe' | 'figures' | 'fault'> {
  try {
    return { recipe, figures: bedFigures(spec, recipe, design.barrierOverlap_m), fault: null };
  } catch (error) {
    // a bed with measures that do not fit stays in the list with its fault shown, so that it can be mended there
    if (error instanceof InputError) return { recipe, figures: null, fault: error.message };
    throw error;
  }
}
