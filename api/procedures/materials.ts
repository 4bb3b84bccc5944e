import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { addMaterial, changeMaterial, materialsOfFarm } from '../../db/repositories/materials.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { baseUnits } from '../../db/schema/materials.ts';
import { Refusal } from '../errors.ts';
import { change, nothing, read } from '../procedure.ts';

const share = z.number().min(0, 'A share lies between 0 and 100 %.').max(1, 'A share lies between 0 and 100 %.').nullable();
const positive = z.number().positive('This must be more than zero.').nullable();

const materialFields = z.object({
  name: z.string().trim().min(1, 'A material needs a name.').max(120),
  kind: z.string().trim().min(1, 'Say what kind of material this is.').max(40),
  dryDensity_kg_per_m3: positive,
  moistDensity_kg_per_m3: positive,
  moistureShare: share,
  capacityShare: share,
  porosityShare: share,
  voidShare: share,
  swellShare: z.number().min(-0.5).max(2).nullable(),
  settlingFirstShare: share,
  settlingLaterShare: share,
  nShare: share,
  p2o5Share: share,
  k2oShare: share,
  caShare: share,
  mgShare: share,
  sShare: share,
  firstYearNShare: share,
  cToN: positive,
  neutralisingShare: z.number().min(0, 'This cannot be negative.').max(2, 'Above 200 % nothing neutralises.').nullable(),
  finenessShare: share,
  organicUse: z.enum(['allowed', 'not-allowed', 'unknown']),
  animalOrigin: z.enum(['none', 'raw', 'composted', 'treated']),
  dusty: z.boolean(),
  /** Dug or won on the farm: it is never bought and costs nothing but the work. */
  own: z.boolean(),
  registrationNumber: z.string().max(60).nullable(),
  insideDiameter_m: positive,
  boreDiameter_m: positive,
  power_W: z.number().nonnegative('This cannot be negative.').nullable(),
  life_years: positive,
  maxRate_kg_per_m2: positive,
  cropId: z.string().min(1).nullable(),
  varietyId: z.string().min(1).nullable(),
  seedsPer_g: positive,
  germinationShare: share,
  cells: z.int().positive().nullable(),
  retired: z.boolean(),
  notes: z.string().max(2000),
});

export const materials = {
  list: read({ input: nothing, run: ({ db }) => materialsOfFarm(db) }),
  setMany: change({
    note: ({ edits }, { db }) =>
      edits.length === 1
        ? `Change material ${nameOf(db, 'material', edits[0]?.materialId ?? null)}`
        : `Change ${edits.length} materials`,
    input: z.object({
      edits: z
        .array(z.object({ materialId: z.string(), revision: z.int(), values: materialFields.partial() }))
        .min(1)
        .max(2000),
    }),
    run({ db }, { edits }) {
      const sources = new Map(materialsOfFarm(db).map((row) => [row.id, row.source]));
      for (const { materialId, revision, values } of edits) {
        const source = sourceOfEdited(sources.get(materialId) ?? '', Object.keys(values));
        const given = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
        if (!changeMaterial(db, materialId, revision, { ...given, source })) {
          throw new Refusal({ code: 'changed-meanwhile', what: 'material' });
        }
      }
      return { changed: edits.length };
    },
  }),
  add: change({
    note: ({ name }) => `Add material ${name}`,
    input: materialFields
      .partial()
      .required({ name: true, kind: true })
      .extend({ baseUnit: z.enum(baseUnits) }),
    run({ db }, values) {
      const materialId = newId();
      const given = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
      addMaterial(db, {
        ...given,
        name: values.name,
        kind: values.kind,
        baseUnit: values.baseUnit,
        id: materialId,
        source: YOURS,
      });
      return { materialId };
    },
  }),
};

const YOURS = 'your entry';
/** What says nothing about the material's nature: the source of its figures stays what it was. */
const unsourced: readonly string[] = ['name', 'kind', 'retired', 'own', 'notes', 'cropId', 'varietyId'];

/** Where the figures come from once the grower has written some of them. */
const sourceOfEdited = (source: string, edited: readonly string[]): string =>
  source.includes(YOURS) || edited.every((name) => unsourced.includes(name)) ? source : `${source}; in part ${YOURS}`;
