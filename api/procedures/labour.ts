import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import {
  addLabour,
  labourLog,
  minutesByPlanting,
  type NewLabour,
  removeLabour,
  removeStandardTimes,
  tasksEntered,
} from '../../db/repositories/labour.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { harvestsOfSeason, plantingGround, spansByPlanting } from '../../db/repositories/yields.ts';
import { isIsoDate } from '../../planner/calendar.ts';
import { missingTimes, standardTimes } from '../../planner/costs/standard-times.ts';
import { areasOfBeds } from '../harvest/areas-of-beds.ts';
import { change, nothing, read } from '../procedure.ts';

const isoDate = z.string().refine(isIsoDate, 'A calendar date is needed, as 2026-07-09.');
const MOST_LINES = 5000;

export const labour = {
  log: read({
    input: z.object({ from: isoDate, to: isoDate }),
    run: ({ db }, { from, to }) => labourLog(db, from, to, MOST_LINES),
  }),
  tasks: read({
    input: nothing,
    run: ({ db }) => [
      ...new Set([...tasksEntered(db), 'sow', 'set out', 'weed', 'water', 'harvest', 'pack', 'sell', 'clear', 'build']),
    ],
  }),
  add: change({
    note: ({ task, labour_min }) => `Log ${labour_min} minutes: ${task}`,
    input: z.object({
      date: isoDate,
      task: z.string().trim().min(1, 'Say what was done.').max(60),
      labour_min: z.number('Enter minutes.').positive('A time is more than nothing.').max(1440, 'A day has 1,440 minutes.'),
      people: z.int().min(1, 'One person at least.').max(100).default(1),
      wage_minor_per_h: z.int().nonnegative('A wage cannot be negative.').nullable().default(null),
      plantingId: z.string().nullable().default(null),
      bedId: z.string().nullable().default(null),
      blockId: z.string().nullable().default(null),
      who: z.string().max(60).default(''),
      note: z.string().max(500).default(''),
    }),
    run({ db }, { labour_min, wage_minor_per_h, ...input }) {
      const labourId = newId<string>();
      addLabour(db, [
        {
          ...input,
          id: labourId,
          minutes: labour_min,
          wage_minor_per_h: wage_minor_per_h ?? farmOfFile(db)?.wage_minor_per_h ?? 0,
        },
      ]);
      return { labourId };
    },
  }),
  remove: change({
    note: ({ labourIds }) =>
      labourIds.length === 1 ? 'Take an entry of hours away' : `Take ${labourIds.length} entries of hours away`,
    input: z.object({ labourIds: z.array(z.string()).min(1).max(5000) }),
    run({ db }, { labourIds }) {
      for (const id of labourIds) removeLabour(db, id);
      return { removed: labourIds.length };
    },
  }),
  /** Works out the season's standard times anew, for tasks that nobody logged. They are marked as such. */
  standard: change({
    note: ({ seasonId }, { db }) => `Fill in standard times of season ${nameOf(db, 'season', seasonId)}`,
    input: z.object({ seasonId: z.string() }),
    run({ db, today }, { seasonId }) {
      removeStandardTimes(db, seasonId);
      const wage_minor_per_h = farmOfFile(db)?.wage_minor_per_h ?? 0;
      const areas = areasOfBeds(db);
      const harvested = new Map<string, number>();
      for (const row of harvestsOfSeason(db, seasonId))
        harvested.set(row.plantingId, (harvested.get(row.plantingId) ?? 0) + row.amount);
      const plantings = plantingGround(db, seasonId, spansByPlanting(db)).map((row) => ({
        ...row,
        area_m2: row.spans.reduce((sum, span) => sum + (areas.get(span.bedId) ?? 0) * (span.toShare - span.fromShare), 0),
        harvested: harvested.get(row.plantingId) ?? 0,
      }));
      const of = new Map(plantings.map((row) => [row.plantingId, row]));
      const logged = minutesByPlanting(db, seasonId).flatMap((row) => {
        const planting = of.get(row.plantingId ?? '');
        return planting === undefined
          ? []
          : [
              {
                task: row.task,
                labour_min: row.labour_min,
                area_m2: planting.area_m2,
                harvested: planting.harvested,
                plantingId: planting.plantingId,
              },
            ];
      });
      const times = standardTimes(logged);
      const tasksOf = Map.groupBy(logged, (row) => row.plantingId);
      const rows = plantings
        .filter((row) => row.inBed <= today)
        .flatMap((row) =>
          missingTimes(
            { direct: row.method === 'direct', area_m2: row.area_m2, harvested: row.harvested, cleared: row.clear <= today },
            new Set((tasksOf.get(row.plantingId) ?? []).map((each) => each.task)),
            times,
          ).map(
            (time): NewLabour => ({
              id: newId(),
              date: row.inBed,
              task: time.task,
              minutes: time.labour_min,
              wage_minor_per_h,
              standard: true,
              plantingId: row.plantingId,
            }),
          ),
        );
      addLabour(db, rows);
      return { added: rows.length, times };
    },
  }),
};
