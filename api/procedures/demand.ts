import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { addDemand, addOutlet, changeDemand, demandOfSeason, openOutlets, removeDemand } from '../../db/repositories/demands.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { requiredFact } from '../../planner/crops/required-fact.ts';
import { refuse } from '../../planner/errors.ts';
import { benchByWeek } from '../../planner/season/bench.ts';
import { explainAreaForDemand } from '../../planner/season/demand.ts';
import { Refusal } from '../errors.ts';
import { change, read } from '../procedure.ts';
import { traysOf } from '../season/cells-of.ts';
import { loadSeason } from '../season/load-season.ts';
import { isoDate } from '../season/planting-entry.ts';
import { seasonBalance } from '../season/season-balance.ts';
import { someOf } from '../some-of.ts';

const amount = z.number().min(0, 'This cannot be negative.').max(1e7, 'That is more than any farm delivers.');
const money = z.int('Money is kept in whole minor units.').min(0, 'This cannot be negative.');

const demandEntry = z.object({
  outletId: z.string().min(1, 'Choose an outlet.'),
  cropId: z.string().min(1, 'Choose a crop.'),
  kind: z.enum(['standing', 'market']),
  fromDate: isoDate,
  toDate: isoDate,
  amountPerWeek: amount,
  unit: z.string().trim().min(1, 'A unit is needed.').max(20),
  price_minor: money,
  penalty_minor: money,
});

function requireOrder({ fromDate, toDate }: { readonly fromDate: string; readonly toDate: string }): void {
  if (toDate < fromDate) refuse('toDate', 'dates-out-of-order', `The last week cannot lie before the first (${fromDate}).`);
}

export const demand = {
  /** What outlets want, and how the plan meets it week by week. */
  list: read({
    input: z.object({ seasonId: z.string().nullable() }),
    run({ db }, input) {
      const loaded = loadSeason(db, input.seasonId);
      const names = new Map(loaded.shelf.crops.map((crop) => [crop.id, crop.name]));
      return {
        season: loaded.season,
        outlets: openOutlets(db),
        wanted: demandOfSeason(db, loaded.season.id).map(({ demand: row, outletName, cropName }) => ({
          ...row,
          outletName,
          cropName,
        })),
        balance: seasonBalance(db, loaded).map((row) => ({ ...row, cropName: names.get(row.cropId) ?? row.cropId })),
        notKnown: loaded.records.filter((record) => record.yieldTypical === null).length,
      };
    },
  }),
  /** The bed area that a demand takes, with its working. */
  area: read({
    input: z.object({
      cropId: z.string(),
      demand: amount,
      loss_share: z.number().min(0).max(0.95),
      seasonId: z.string().nullable(),
    }),
    run({ db }, input) {
      const { shelf } = loadSeason(db, input.seasonId);
      const yield_per_m2 = requiredFact(
        shelf.facts(input.cropId),
        'yield_typical_per_m2',
        shelf.crop(input.cropId).name,
        'cropId',
      );
      return { working: explainAreaForDemand({ demand: input.demand, loss_share: input.loss_share, yield_per_m2 }) };
    },
  }),
  /** Trays on the propagation bench by week. */
  bench: read({
    input: z.object({ seasonId: z.string().nullable() }),
    run({ db }, input) {
      const loaded = loadSeason(db, input.seasonId);
      const stays = loaded.records.flatMap((record, at) => {
        const plan = loaded.plantings[at];
        const trays = traysOf(loaded, record);
        if (trays === null || plan === undefined || plan.sow === null) return [];
        return [{ plantingId: record.id, from: plan.sow, to: plan.inBed, bench_m2: trays.bench_m2 }];
      });
      return { have_m2: loaded.season.benchArea_m2, weeks: benchByWeek(stays) };
    },
  }),
  add: change({
    note: ({ entry }, { db }) => `Add a demand for ${nameOf(db, 'crop', entry.cropId)}`,
    input: z.object({ seasonId: z.string(), entry: demandEntry }),
    run({ db }, { seasonId, entry }) {
      requireOrder(entry);
      const id = newId<string>();
      addDemand(db, { id, seasonId, ...entry });
      return { demandId: id };
    },
  }),
  set: change({
    note: ({ edits }) => (edits.length === 1 ? 'Change a demand' : `Change ${edits.length} demands`),
    input: z.object({
      edits: z
        .array(z.object({ demandId: z.string(), values: someOf(demandEntry.partial()) }))
        .min(1)
        .max(2000),
    }),
    run({ db }, { edits }) {
      for (const { demandId, values } of edits) {
        const given = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
        if (!changeDemand(db, demandId, given)) throw new Refusal({ code: 'not-found', what: 'demand' });
      }
      return { changed: edits.length };
    },
  }),
  remove: change({
    note: ({ demandIds }) => (demandIds.length === 1 ? 'Take a demand away' : `Take ${demandIds.length} demands away`),
    input: z.object({ demandIds: z.array(z.string()).min(1).max(2000) }),
    run({ db }, { demandIds }) {
      for (const id of demandIds) if (!removeDemand(db, id)) throw new Refusal({ code: 'not-found', what: 'demand' });
      return { removed: demandIds.length };
    },
  }),
  addOutlet: change({
    note: ({ name }) => `Add outlet ${name}`,
    input: z.object({
      name: z.string().trim().min(1, 'An outlet needs a name.').max(80),
      kind: z.enum(['box', 'stall', 'restaurant', 'shop', 'own-use', 'other']),
    }),
    run({ db }, entry) {
      if (openOutlets(db).some((each) => each.name === entry.name))
        refuse('name', 'taken', `There is an outlet ${entry.name} already.`);
      const id = newId<string>();
      addOutlet(db, { id, ...entry });
      return { outletId: id };
    },
  }),
};
