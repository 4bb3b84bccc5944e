import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { bedsOfDesign, changeBed } from '../../db/repositories/beds.ts';
import {
  addDesign,
  bedsByDesign,
  changeDesign,
  designLayers,
  designOfId,
  designParts,
  designsOfFarm,
  setDesignContents,
} from '../../db/repositories/designs.ts';
import { materialChoices } from '../../db/repositories/material-choices.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { InputError } from '../../planner/errors.ts';
import { bedFigures } from '../../planner/soil/bed-figures.ts';
import { recipeOf, specOfDesign } from '../beds/bed-spec-of.ts';
import { layerEntry } from '../beds/layer-entry.ts';
import { Refusal } from '../errors.ts';
import { change, nothing, read } from '../procedure.ts';

const size = z.number('A size is needed here.');
const maybe = size.nullable();
const designEntry = z.object({
  name: z.string().trim().min(1, 'A design needs a name.').max(80),
  kind: z.enum(['in-ground', 'framed', 'bag', 'trough', 'mound']),
  outline: z.enum(['rectangle', 'round', 'oval', 'hexagon', 'polygon', 'half-ellipsoid', 'ridge']),
  length_m: size,
  width_m: size,
  bottomLength_m: maybe,
  bottomWidth_m: maybe,
  polygon_m: z
    .array(z.tuple([z.number(), z.number()]).readonly())
    .readonly()
    .nullable(),
  depth_m: size,
  fillDepth_m: size,
  topWidth_m: maybe,
  watering: z.enum(['top', 'drip', 'basin', 'reservoir']),
  basinLength_m: maybe,
  basinWidth_m: maybe,
  basinDepth_m: maybe,
  basinFill_m: maybe,
  reservoirDepth_m: maybe,
  overflow_m: maybe,
  reservoirVoid_share: maybe,
  mulchMaterialId: z.string().nullable(),
  mulchDepth_m: maybe,
  barrierOverlap_m: maybe,
  wallMaterial: z.string().trim().max(80),
  fillLife_years: z.number().positive('A life must be more than zero.').max(200),
  notes: z.string().max(4000),
});
const partEntry = z.object({
  materialId: z.string().min(1, 'Choose a material.'),
  amount: z.number().positive('An amount must be more than zero.'),
  life_years: z.number().positive('A life must be more than zero.').max(100),
  salvageShare: z.number().min(0).max(1),
});
export const designContents = { values: designEntry, layers: z.array(layerEntry).max(12), parts: z.array(partEntry).max(40) };
type Contents = {
  readonly layers: readonly z.output<typeof layerEntry>[];
  readonly parts: readonly z.output<typeof partEntry>[];
};

function writeContents(db: FarmDb, designId: string, { layers, parts }: Contents): void {
  setDesignContents(
    db,
    designId,
    layers.map((layer, position) => ({ id: newId(), designId, position, ...layer })),
    parts.map((part, position) => ({ id: newId(), designId, position, ...part })),
  );
}

/** @throws InputError at each field that does not fit, a name that is taken included */
function requireDesign(db: FarmDb, designId: string): void {
  const row = designOfId(db, designId);
  if (row === undefined) throw new Refusal({ code: 'not-found', what: 'design' });
  bedFigures(specOfDesign(row), recipeOf(designLayers(db).filter((layer) => layer.ownerId === designId)), row.barrierOverlap_m);
}

function requireFreeName(db: FarmDb, name: string, but: string | null): void {
  if (designsOfFarm(db).some((row) => row.name === name && row.id !== but))
    throw new InputError([{ path: 'name', code: 'in-use', message: `There is a design called ${name} already.` }]);
}

/** Adds a design with its layers and parts, and answers its key. @throws InputError */
export function addNewDesign(
  db: FarmDb,
  { values, layers, parts }: Contents & { readonly values: z.output<typeof designEntry> },
): string {
  requireFreeName(db, values.name, null);
  const designId = newId();
  addDesign(db, { id: designId, ...values });
  writeContents(db, designId, { layers, parts });
  requireDesign(db, designId);
  return designId;
}

export const designs = {
  list: read({
    input: nothing,
    run({ db }) {
      const beds = bedsByDesign(db);
      const layers = Map.groupBy(designLayers(db), (layer) => layer.ownerId);
      return designsOfFarm(db).map((row) => {
        const spec = specOfDesign(row);
        const { area_m2, fill_L, loose_L, wet_kg } = figuresOrNothing(spec, recipeOf(layers.get(row.id) ?? []));
        return {
          designId: row.id,
          name: row.name,
          kind: row.kind,
          outline: row.outline,
          watering: row.watering,
          length_m: row.length_m,
          width_m: row.width_m,
          depth_m: row.depth_m,
          fillDepth_m: row.fillDepth_m,
          area_m2,
          fill_L,
          loose_L,
          wet_kg,
          beds: beds.get(row.id) ?? 0,
          retired: row.retired,
        };
      });
    },
  }),
  one: read({
    input: z.object({ designId: z.string() }),
    run({ db }, { designId }) {
      const row = designOfId(db, designId);
      if (row === undefined) throw new Refusal({ code: 'not-found', what: 'design' });
      const { id: _, retired: __, revision, trellis: ___, coreShare: ____, ...values } = row;
      return {
        designId,
        revision,
        values,
        layers: designLayers(db)
          .filter((layer) => layer.ownerId === designId)
          .map(({ materialId, amountKind, amount, settlingShare }) => ({ materialId, amountKind, amount, settlingShare })),
        parts: designParts(db, designId).map(({ materialId, amount, life_years, salvageShare }) => ({
          materialId,
          amount,
          life_years,
          salvageShare,
        })),
        beds: bedsOfDesign(db, designId)
          .filter((bed) => bed.retiredDate === null)
          .map((bed) => ({ bedId: bed.id, code: bed.code })),
      };
    },
  }),
  materials: read({ input: nothing, run: ({ db }) => materialChoices(db) }),
  add: change({
    note: ({ values }) => `Add design ${values.name}`,
    input: z.object(designContents),
    run: ({ db }, input) => ({ designId: addNewDesign(db, input) }),
  }),
  /**
   * Changes a design. Beds that do not follow stay as they are: they keep the design as it was, under a name that says so.
   */
  set: change({
    note: ({ values }) => `Change design ${values.name}`,
    input: z.object({ designId: z.string(), revision: z.int(), ...designContents, stay: z.array(z.string()).max(5000) }),
    run({ db, today }, { designId, revision, values, stay, ...rest }) {
      const before = designOfId(db, designId);
      if (before === undefined) throw new Refusal({ code: 'not-found', what: 'design' });
      requireFreeName(db, values.name, designId);
      if (stay.length > 0) keepAsItWas(db, before, stay, today);
      if (!changeDesign(db, designId, revision, values)) throw new Refusal({ code: 'changed-meanwhile', what: 'design' });
      writeContents(db, designId, rest);
      requireDesign(db, designId);
      return { designId };
    },
  }),
  /** A design that is no longer built is kept for the beds that have it. */
  retire: change({
    note: ({ designId, retired }, { db }) =>
      retired
        ? `Retire design ${nameOf(db, 'design', designId)}`
        : `Take design ${nameOf(db, 'design', designId)} into use again`,
    input: z.object({ designId: z.string(), revision: z.int(), retired: z.boolean() }),
    run({ db }, { designId, revision, retired }) {
      if (!changeDesign(db, designId, revision, { retired })) throw new Refusal({ code: 'changed-meanwhile', what: 'design' });
      return { designId };
    },
  }),
};

function keepAsItWas(
  db: FarmDb,
  before: NonNullable<ReturnType<typeof designOfId>>,
  stay: readonly string[],
  today: string,
): void {
  const taken = new Set(designsOfFarm(db).map((row) => row.name));
  const plain = `${before.name}, as before ${today}`;
  const name =
    [plain, ...Array.from({ length: 99 }, (_, at) => `${plain} (${at + 2})`)].find((each) => !taken.has(each)) ?? newId();
  const id = newId();
  const { id: _, revision: __, ...row } = before;
  addDesign(db, { ...row, id, name });
  writeContents(db, id, {
    layers: designLayers(db).filter((layer) => layer.ownerId === before.id),
    parts: designParts(db, before.id),
  } as Contents);
  const staying = new Set(stay);
  for (const bed of bedsOfDesign(db, before.id)) if (staying.has(bed.id)) changeBed(db, bed.id, bed.revision, { designId: id });
}

type Known = Pick<ReturnType<typeof bedFigures>, 'area_m2' | 'fill_L' | 'loose_L' | 'wet_kg'>;

function figuresOrNothing(...[spec, recipe]: Parameters<typeof bedFigures>): {
  readonly [key in keyof Known]: Known[key] | null;
} {
  try {
    return bedFigures(spec, recipe);
  } catch (error) {
    // a design that does not fit is listed without figures; its form tells the fault
    if (error instanceof InputError) return { area_m2: null, fill_L: null, loose_L: null, wet_kg: null };
    throw error;
  }
}
