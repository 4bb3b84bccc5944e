import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import {
  addCompostBatch,
  addCompostReading,
  changeCompostBatch,
  codesOfBatches,
  compostBatches,
  removeCompostReading,
} from '../../db/repositories/compost.ts';
import { materialsOfFarm } from '../../db/repositories/materials.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { isIsoDate } from '../../planner/calendar.ts';
import { InputError, requireRange } from '../../planner/errors.ts';
import { compostMix } from '../../planner/fertility/compost-mix.ts';
import { COMPOST_GOALS, explainCompostMix, goalReading, suggestParts } from '../../planner/fertility/compost-plan.ts';
import { Refusal } from '../errors.ts';
import { change, nothing, read } from '../procedure.ts';
import { batchCode } from '../soil/batch-times.ts';
import { compostView, partOf } from '../soil/compost-view.ts';

const isoDate = z.string().refine(isIsoDate, 'A calendar date is needed, as 2026-03-09.');
const parts = z
  .array(z.object({ materialId: z.string(), amount_kg: z.number().positive('More than zero.').max(1e6) }))
  .min(1, 'Put at least one material in.')
  .max(30);
const method = z.enum(['turned-windrow', 'static-aerated', 'in-vessel', 'cold', 'bought']);

/** Materials as parts of a heap. @throws InputError at each line whose material has no known C:N, nitrogen or moisture */
function heapParts(db: FarmDb, list: z.output<typeof parts>) {
  const known = new Map(materialsOfFarm(db).map((row) => [row.id, row]));
  const found = list.map(({ materialId, amount_kg }) => {
    const row = known.get(materialId);
    return row === undefined ? null : partOf(row, amount_kg);
  });
  const faults = found.flatMap((part, at) =>
    part === null
      ? [
          {
            path: `parts.${at}.materialId`,
            code: 'unknown',
            message: 'C:N, nitrogen or moisture of this material is not known. Enter them in the library.',
          },
        ]
      : [],
  );
  if (faults.length > 0) throw new InputError(faults);
  return found.filter((part) => part !== null);
}

export const compost = {
  batches: read({ input: nothing, run: ({ db }) => compostBatches(db).map(compostView) }),
  /** Materials that a heap can be made of: those whose C:N, nitrogen and moisture are known. */
  feedstocks: read({
    input: nothing,
    run: ({ db }) =>
      materialsOfFarm(db).flatMap((row) => {
        const part = row.retired || row.kind === 'bulk-mix' ? null : partOf(row, 1);
        return part === null
          ? []
          : [
              {
                materialId: row.id,
                name: row.name,
                carbonToNitrogen: part.carbonToNitrogen,
                moistureShare: part.moistureShare,
                density_kg_per_m3: row.moistDensity_kg_per_m3,
                source: row.source,
              },
            ];
      }),
  }),
  /** C:N and moisture of a mix, and how much of two further materials would bring it to its goals. */
  mix: read({
    input: z.object({
      parts,
      goalCarbonToNitrogen: z.number().min(10).max(60),
      goalMoistureShare: z.number().min(0.3).max(0.75),
      secondId: z.string().nullable(),
      thirdId: z.string().nullable(),
    }),
    run({ db }, { parts: list, goalCarbonToNitrogen, goalMoistureShare, secondId, thirdId }) {
      const there = heapParts(db, list);
      const mix = compostMix(there);
      const known = new Map(materialsOfFarm(db).map((row) => [row.id, row]));
      const further = [secondId, thirdId].map((id) => {
        const row = id === null ? undefined : known.get(id);
        return row === undefined ? null : partOf(row, 1);
      });
      const [second, third] = further;
      return {
        mix,
        carbonToNitrogen: goalReading(mix.carbonToNitrogen, COMPOST_GOALS.carbonToNitrogen),
        moisture: goalReading(mix.moistureShare, COMPOST_GOALS.moistureShare),
        working: explainCompostMix(there),
        suggestion:
          second === null || second === undefined || third === null || third === undefined
            ? null
            : suggestParts(there, second, third, goalMoistureShare, goalCarbonToNitrogen),
      };
    },
  }),
  start: change({
    note: ({ startedDate }) => `Start a compost heap on ${startedDate}`,
    input: z.object({
      startedDate: isoDate,
      method,
      place: z.string().max(120).default(''),
      note: z.string().max(2000).default(''),
      parts,
    }),
    run({ db }, { parts: list, ...head }) {
      const batchId = newId<string>();
      const code = batchCode('C', head.startedDate, codesOfBatches(db));
      addCompostBatch(
        db,
        { id: batchId, code, ...head },
        list.map((each) => ({ id: newId(), batchId, ...each })),
      );
      return { batchId, code };
    },
  }),
  finish: change({
    note: ({ batchId }, { db }) => `End the curing of compost ${nameOf(db, 'compostBatch', batchId)}`,
    input: z.object({ batchId: z.string(), revision: z.int(), curedDate: isoDate, made_L: z.number().positive().nullable() }),
    run({ db }, { batchId, revision, ...values }) {
      if (!changeCompostBatch(db, batchId, revision, values))
        throw new Refusal({ code: 'changed-meanwhile', what: 'compost batch' });
      return { batchId };
    },
  }),
  addReading: change({
    note: ({ batchId }, { db }) => `Log a reading of compost ${nameOf(db, 'compostBatch', batchId)}`,
    input: z.object({
      batchId: z.string(),
      date: isoDate,
      temperature_C: z.number().nullable(),
      turned: z.boolean(),
      moisture: z.string().max(60).default(''),
      who: z.string().max(60).default(''),
    }),
    run({ db }, input) {
      if (input.temperature_C !== null) requireRange('temperature_C', input.temperature_C, -40, 110, '°C');
      const batch = compostBatches(db).find((each) => each.batch.id === input.batchId);
      if (batch === undefined) throw new Refusal({ code: 'not-found', what: 'compost batch' });
      if (input.date < batch.batch.startedDate)
        throw new InputError([
          { path: 'date', code: 'too-early', message: 'A reading cannot come before the heap was started.' },
        ]);
      addCompostReading(db, { id: newId(), ...input });
      return { batchId: input.batchId };
    },
  }),
  removeReading: change({
    note: ({ readingId }, { db }) => `Take away a reading of compost ${nameOf(db, 'compostReading', readingId)}`,
    input: z.object({ readingId: z.string() }),
    run({ db }, { readingId }) {
      if (!removeCompostReading(db, readingId)) throw new Refusal({ code: 'not-found', what: 'reading' });
      return { readingId };
    },
  }),
} as const;
