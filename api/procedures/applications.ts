import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import {
  addApplications,
  applicationBedsOfIds,
  applicationsOfFarm,
  applicationsPlanned,
  removePlannedDoses,
} from '../../db/repositories/applications.ts';
import { feedingMaterials } from '../../db/repositories/feeding.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { isIsoDate } from '../../planner/calendar.ts';
import { bedDose_kg } from '../../planner/fertility/bed-dose.ts';
import { loadBeds } from '../beds/load-beds.ts';
import { Refusal } from '../errors.ts';
import { change, nothing, read } from '../procedure.ts';
import { doseView } from '../soil/card-view.ts';
import { feedingPlanFor, seasonOf } from '../soil/feeding-plan.ts';
import { manureOnBeds } from '../soil/manure-on-beds.ts';
import { markDone, writeUse } from '../soil/mark-done.ts';

const isoDate = z.string().refine(isIsoDate, 'A calendar date is needed, as 2026-03-09.');
const ids = z.array(z.string()).min(1, 'Choose at least one dose.').max(200_000);
const facts = {
  date: isoDate,
  time: z.string().max(8).default(''),
  who: z.string().max(60).default(''),
  method: z.string().max(80).default(''),
  incorporatedDate: isoDate.nullable().default(null),
  weather: z.string().max(200).default(''),
  lotId: z.string().nullable().default(null),
  note: z.string().max(2000).default(''),
};

export const applications = {
  /** What is planned, dose by dose, for the cards. */
  planned: read({
    input: z.object({ seasonId: z.string().optional() }),
    run({ db, today }, { seasonId }) {
      const { scoop_L } = feedingPlanFor(db, seasonOf(db, seasonId, today).id);
      return applicationsPlanned(db).map((row) => doseView(row, scoop_L));
    },
  }),
  /** Everything planned and done, the newest first. */
  log: read({
    input: nothing,
    run({ db }) {
      return applicationsOfFarm(db).map((row) => doseView(row, 0.25));
    },
  }),
  /** Materials that a dressing can be of, for entering one by hand. */
  materials: read({
    input: nothing,
    run: ({ db }) =>
      feedingMaterials(db).map((each) => ({
        materialId: each.id,
        name: each.name,
        animalOrigin: each.animalOrigin,
        dusty: each.dusty,
      })),
  }),
  done: change({
    note: ({ applicationBedIds }) =>
      applicationBedIds.length === 1 ? 'Record a dose as given' : `Record ${applicationBedIds.length} doses as given`,
    input: z.object({ applicationBedIds: ids, ...facts }),
    run({ db }, { applicationBedIds, ...given }) {
      const done = markDone(db, applicationBedIds, given);
      if (done.beds === 0) throw new Refusal({ code: 'changed-meanwhile', what: 'dose' });
      return done;
    },
  }),
  /** A dressing entered by hand: one amount by area on many beds. */
  enter: change({
    note: ({ materialId, bedIds }, { db }) =>
      bedIds.length === 1
        ? `Enter ${nameOf(db, 'material', materialId)} on one bed`
        : `Enter ${nameOf(db, 'material', materialId)} on ${bedIds.length} beds`,
    input: z.object({
      materialId: z.string().min(1, 'Choose a material.'),
      bedIds: z.array(z.string()).min(1, 'Choose at least one bed.').max(20_000),
      rate_kg_per_m2: z.number('A rate is needed.').positive('A rate is more than zero.').max(100, 'At most 100 kg/m².'),
      seasonId: z.string().nullable().default(null),
      reason: z.string().max(200).default(''),
      ...facts,
    }),
    run({ db }, { materialId, bedIds, rate_kg_per_m2, seasonId, reason, ...given }) {
      const areas = new Map(loadBeds(db).map((each) => [each.bed.id, each.figures?.area_m2 ?? 0]));
      const applicationId = newId();
      const beds = bedIds.map((bedId) => ({
        id: newId<string>(),
        applicationId,
        bedId,
        amount_kg: bedDose_kg(rate_kg_per_m2, areas.get(bedId) ?? 0),
      }));
      addApplications(db, [{ id: applicationId, seasonId, materialId, state: 'done', reason, ...given }], beds);
      const cost_minor = writeUse(
        db,
        applicationId,
        applicationBedsOfIds(
          db,
          beds.map((each) => each.id),
        ),
        given,
      );
      return { applicationId, cost_minor };
    },
  }),
  removePlanned: change({
    note: ({ applicationBedIds }) =>
      applicationBedIds.length === 1 ? 'Take a dose off its card' : `Take ${applicationBedIds.length} doses off their cards`,
    input: z.object({ applicationBedIds: ids }),
    run({ db }, { applicationBedIds }) {
      removePlannedDoses(db, applicationBedIds);
      return { removed: applicationBedIds.length };
    },
  }),
  /** Raw manure and fed tea against planned harvests. */
  intervals: read({ input: nothing, run: ({ db, today }) => manureOnBeds(db, today) }),
} as const;
