import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { rememberSetting } from '../../db/repositories/farm.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { addPlantings, plantingsOfSeason, spansOfSeason } from '../../db/repositories/plantings.ts';
import { addSeason, changeSeason, seasonsOfFarm } from '../../db/repositories/seasons.ts';
import { daysBetween, type IsoDate, yearOf } from '../../planner/calendar.ts';
import { refuse } from '../../planner/errors.ts';
import { sameDayInYear } from '../../planner/season/next-season.ts';
import { Refusal } from '../errors.ts';
import { act, change, ctxOf, nothing, read } from '../procedure.ts';
import { copiedPlantings } from '../season/copied-plantings.ts';
import { learnedOfFarm, plantedAreas_m2 } from '../season/learned-of-farm.ts';
import { BOARD_CHOICES, boardChoices, chosenSeason } from '../season/load-season.ts';
import { isoDate } from '../season/planting-entry.ts';

const name = z.string().trim().min(1, 'A season needs a name.').max(60, 'Sixty letters at most.');

function requireOrder(startDate: IsoDate, endDate: IsoDate): void {
  const days = daysBetween(startDate, endDate);
  if (days < 1) refuse('endDate', 'dates-out-of-order', `A season ends after it starts on ${startDate}.`);
  if (days > 800) refuse('endDate', 'too-large', 'A season of more than 800 days is planned as two.');
}

export const seasons = {
  list: read({ input: nothing, run: ({ db }) => seasonsOfFarm(db) }),
  rules: read({ input: nothing, run: ({ db }) => boardChoices(db) }),
  setRules: act({
    input: z.object({
      frostRisk: z.number().min(0.01, 'A chance from 0.01 to 0.5 is needed.').max(0.5, 'A chance from 0.01 to 0.5 is needed.'),
      gapYears: z.record(z.string(), z.int().min(0).max(50)),
      mayRepeatCrop: z.boolean(),
    }),
    run(door, rules) {
      const { farm, db } = ctxOf(door);
      farm.unrecorded(() => rememberSetting(db, BOARD_CHOICES, rules));
      return rules;
    },
  }),
  add: change({
    note: ({ name: given }) => `Add season ${given}`,
    input: z.object({ name, startDate: isoDate, endDate: isoDate }),
    run({ db }, entry) {
      requireOrder(entry.startDate, entry.endDate);
      if (seasonsOfFarm(db).some((each) => each.name === entry.name))
        refuse('name', 'taken', `There is a season ${entry.name} already.`);
      const id = newId<string>();
      addSeason(db, { id, ...entry, state: 'planning' });
      return { seasonId: id };
    },
  }),
  set: change({
    note: ({ seasonId }, { db }) => `Change season ${nameOf(db, 'season', seasonId)}`,
    input: z.object({
      seasonId: z.string(),
      revision: z.int(),
      values: z
        .object({
          name,
          startDate: isoDate,
          endDate: isoDate,
          state: z.enum(['planning', 'running', 'closed']),
          benchArea_m2: z.number().min(0, 'This cannot be negative.').nullable(),
          labour_h_per_week: z
            .number()
            .min(0, 'This cannot be negative.')
            .max(2000, 'That is more than a week holds.')
            .nullable(),
        })
        .partial(),
    }),
    run({ db }, { seasonId, revision, values }) {
      const present = chosenSeason(db, seasonId);
      requireOrder(values.startDate ?? (present.startDate as IsoDate), values.endDate ?? (present.endDate as IsoDate));
      const given = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
      if (!changeSeason(db, seasonId, revision, given)) throw new Refusal({ code: 'changed-meanwhile', what: 'season' });
      return { seasonId };
    },
  }),
  /** The next season as a copy of one, moved by whole years, with what the records taught. */
  copy: change({
    note: ({ name: given }) => `Plan season ${given} as a copy`,
    input: z.object({
      fromSeasonId: z.string(),
      name,
      years: z.int('Whole years are needed.').min(1, 'A season is copied to a later year.').max(20),
      keepBeds: z.boolean(),
      useLearned: z.boolean(),
    }),
    run({ db }, { fromSeasonId, name: given, years, keepBeds, useLearned }) {
      const from = chosenSeason(db, fromSeasonId);
      if (seasonsOfFarm(db).some((each) => each.name === given)) refuse('name', 'taken', `There is a season ${given} already.`);
      const later = (date: string): IsoDate => sameDayInYear(date as IsoDate, yearOf(date as IsoDate) + years);
      const id = newId<string>();
      addSeason(db, {
        id,
        name: given,
        startDate: later(from.startDate),
        endDate: later(from.endDate),
        state: 'planning',
        copiedFromId: from.id,
        benchArea_m2: from.benchArea_m2,
        labour_h_per_week: from.labour_h_per_week,
      });
      const copied = copiedPlantings({
        seasonId: id,
        records: plantingsOfSeason(db, from.id).filter((record) => record.state !== 'failed'),
        spans: keepBeds ? spansOfSeason(db, from.id) : [],
        years,
        learned: useLearned ? learnedOfFarm(db) : [],
        area_m2: plantedAreas_m2(db),
      });
      addPlantings(db, copied.rows, copied.spans);
      return { seasonId: id, plantings: copied.rows.length, corrected: copied.corrected };
    },
  }),
};
