import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { addTeaBatch, codesOfBatches, setTeaApplied, teaBatches } from '../../db/repositories/compost.ts';
import { plantingsOnBeds } from '../../db/repositories/feeding.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { addDays, daysBetween, type IsoDate, isIsoDate } from '../../planner/calendar.ts';
import { explainTeaBatch, tankFillings, teaBatch } from '../../planner/fertility/tea-batch.ts';
import { loadBeds } from '../beds/load-beds.ts';
import { Refusal } from '../errors.ts';
import { change, nothing, read } from '../procedure.ts';
import { batchCode, brewedAt, latestUse } from '../soil/batch-times.ts';

const isoDate = z.string().refine(isIsoDate, 'A calendar date is needed, as 2026-03-09.');
const clockTime = z.string().regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}/, 'A day and time are needed.');

const teaInput = z.object({
  bedIds: z.array(z.string()).min(1, 'Choose the beds to drench.').max(20_000),
  drench_L_per_m2: z.number().positive('A drench is more than zero.').max(20),
  waterParts: z.number().min(0).max(200),
  compost_kg_per_L: z.number().positive('Some compost is needed.').max(0.5),
  tank_L: z.number().positive('A tank holds more than zero.').max(20_000),
  startedAt: clockTime,
  brew_h: z.number().min(1).max(96),
  additives: z.string().max(300).default(''),
});

/** The beds of a tea batch with their share of the drench. */
function drenchedBeds(db: FarmDb, bedIds: readonly string[], drench_L_per_m2: number) {
  const wanted = new Set(bedIds);
  return loadBeds(db)
    .filter((each) => wanted.has(each.bed.id) && (each.figures?.area_m2 ?? 0) > 0)
    .map((each) => ({
      bedId: each.bed.id,
      code: each.bed.code,
      area_m2: each.figures?.area_m2 ?? 0,
      volume_L: (each.figures?.area_m2 ?? 0) * drench_L_per_m2,
    }));
}

const areaOf = (beds: readonly { readonly area_m2: number }[]) => beds.reduce((sum, bed) => sum + bed.area_m2, 0);

export const tea = {
  tea: read({
    input: nothing,
    run: ({ db }) =>
      teaBatches(db).map((each) => ({ ...each.tea, teaId: each.tea.id, compost: each.compost ?? '', beds: each.beds })),
  }),
  /** Size, times and harvest check of a tea batch; nothing is written. */
  planTea: read({
    input: teaInput,
    run({ db }, input) {
      const beds = drenchedBeds(db, input.bedIds, input.drench_L_per_m2);
      const sizes = {
        area_m2: areaOf(beds),
        drench_L_per_m2: input.drench_L_per_m2,
        teaParts: 1,
        waterParts: input.waterParts,
        compost_kg_per_L: input.compost_kg_per_L,
      };
      const batch = teaBatch(sizes);
      const applied = brewedAt(input.startedAt, input.brew_h).slice(0, 10) as IsoDate;
      const stands = plantingsOnBeds(db, applied, addDays(applied, 1)).filter((each) =>
        beds.some((bed) => bed.bedId === each.bedId),
      );
      const codes = new Map(beds.map((bed) => [bed.bedId, bed.code]));
      return {
        ...batch,
        fillings: tankFillings(batch.tea_L, input.tank_L),
        brewedAt: brewedAt(input.startedAt, input.brew_h),
        latestUseAt: latestUse(input.startedAt, input.brew_h),
        beds,
        working: explainTeaBatch(sizes),
        harvests: stands.map((each) => {
          const days = daysBetween(applied, each.firstHarvestDate as IsoDate);
          const wanted = input.additives === '' ? null : (each.touchesSoil ?? true) ? 120 : 90;
          return {
            code: codes.get(each.bedId) ?? '',
            crop: each.crop,
            firstHarvest: each.firstHarvestDate,
            days,
            wanted_days: wanted,
            short: wanted !== null && days < wanted,
          };
        }),
      };
    },
  }),
  brewTea: change({
    note: ({ bedIds }) => (bedIds.length === 1 ? 'Brew tea for one bed' : `Brew tea for ${bedIds.length} beds`),
    input: teaInput.extend({
      compostBatchId: z.string().nullable(),
      waterSource: z.string().max(120).default(''),
      note: z.string().max(2000).default(''),
    }),
    run({ db }, input) {
      const beds = drenchedBeds(db, input.bedIds, input.drench_L_per_m2);
      const batch = teaBatch({
        area_m2: areaOf(beds),
        drench_L_per_m2: input.drench_L_per_m2,
        teaParts: 1,
        waterParts: input.waterParts,
        compost_kg_per_L: input.compost_kg_per_L,
      });
      const batchId = newId<string>();
      const code = batchCode('T', input.startedAt.slice(0, 10), codesOfBatches(db));
      addTeaBatch(
        db,
        {
          id: batchId,
          code,
          compostBatchId: input.compostBatchId,
          startedAt: input.startedAt,
          useByAt: latestUse(input.startedAt, input.brew_h),
          tank_L: input.tank_L,
          compost_kg: batch.compost_kg,
          dilution: input.waterParts,
          additives: input.additives,
          waterSource: input.waterSource,
          note: input.note,
        },
        beds.map((bed) => ({ id: newId(), batchId, bedId: bed.bedId, volume_L: bed.volume_L })),
      );
      return { batchId, code };
    },
  }),
  teaApplied: change({
    note: ({ teaId }, { db }) => `Record tea ${nameOf(db, 'teaBatch', teaId)} as applied`,
    input: z.object({ teaId: z.string(), appliedDate: isoDate }),
    run({ db }, { teaId, appliedDate }) {
      if (!setTeaApplied(db, teaId, appliedDate)) throw new Refusal({ code: 'not-found', what: 'tea batch' });
      return { teaId };
    },
  }),
} as const;
