import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import {
  addCrop,
  addVariety,
  changeCrop,
  changeVariety,
  cropOfId,
  cropsOfFarm,
  cropValues,
  dropFact,
  putFact,
  varietiesOfFarm,
} from '../../db/repositories/crops.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { type CropFact, knownFacts, numberFacts, wordFacts } from '../../planner/crops/crop-facts.ts';
import { markOfSource, printedSource } from '../../planner/crops/crop-sources.ts';
import { titleOfFact } from '../../planner/crops/required-fact.ts';
import { refuse } from '../../planner/errors.ts';
import { type LearnedOfCrop, restsOn } from '../../planner/season/learned.ts';
import { Refusal } from '../errors.ts';
import { change, nothing, read } from '../procedure.ts';
import { calibrateHeat } from '../season/calibrate-heat.ts';
import { cropShelf } from '../season/crop-shelf.ts';
import { requireFact } from '../season/fact-limits.ts';
import { learnedOfFarm } from '../season/learned-of-farm.ts';

const factName = z.enum([...numberFacts, ...wordFacts]);
const isNumberFact = (name: string): name is (typeof numberFacts)[number] => (numberFacts as readonly string[]).includes(name);

/** What the days of a record are counted from: it knows when the crop went into the bed. */
const countedFrom = { direct: 'seed', transplant: 'transplant', set: 'planting' } as const;

/** A crop grown in more than one way is taken by the way with the most plantings on record. */
function isBestOfItsVariety(each: LearnedOfCrop, all: readonly LearnedOfCrop[]): boolean {
  const count = (one: LearnedOfCrop): number => one.toHarvest_days?.plantings ?? 0;
  const rivals = all.filter((one) => one.varietyId === each.varietyId);
  return rivals.find((one) => count(one) === Math.max(...rivals.map(count))) === each;
}

export const crops = {
  /** Every crop with its most used figures, the grower's own laid over the library's. */
  list: read({
    input: nothing,
    run({ db }) {
      const shelf = cropShelf(db);
      const varieties = Map.groupBy(varietiesOfFarm(db), (each) => each.cropId);
      return shelf.crops.map((crop) => {
        const facts = shelf.facts(crop.id);
        const number = (name: (typeof numberFacts)[number]) => facts.get(name)?.number ?? null;
        const words = (name: (typeof wordFacts)[number]) => facts.get(name)?.words ?? '';
        return {
          cropId: crop.id,
          name: crop.name,
          botanicalName: crop.botanicalName,
          family: crop.family,
          group: crop.cropGroup,
          hidden: crop.hidden,
          own: crop.own,
          frost_tolerance: words('frost_tolerance'),
          sow_method: words('sow_method'),
          days_counted_from: words('days_counted_from'),
          yield_unit: words('yield_unit'),
          maturity_min_days: number('maturity_min_days'),
          maturity_max_days: number('maturity_max_days'),
          harvest_window_days: number('harvest_window_days'),
          weeks_indoors_max: number('weeks_indoors_max'),
          intensive_m: number('intensive_m'),
          in_row_m: number('in_row_m'),
          row_m: number('row_m'),
          yield_typical_per_m2: number('yield_typical_per_m2'),
          min_soil_depth_m: number('min_soil_depth_m'),
          varieties: (varieties.get(crop.id) ?? []).length,
          ownFacts: [...facts.values()].filter((fact) => fact.origin !== 'library').length,
          revision: crop.revision,
        };
      });
    },
  }),
  /** One crop or variety whole: each figure with where it comes from, the library's beside the grower's. */
  one: read({
    input: z.object({ cropId: z.string(), varietyId: z.string().nullable() }),
    run({ db }, { cropId, varietyId }) {
      const crop = cropOfId(db, cropId);
      if (crop === undefined) throw new Refusal({ code: 'not-found', what: 'crop' });
      const values: readonly CropFact[] = cropValues(db, cropId);
      const facts = knownFacts(values, varietyId);
      const shipped = knownFacts(
        values.filter((value) => value.origin === 'library'),
        null,
      );
      const learned = learnedOfFarm(db, cropId);
      return {
        crop,
        varieties: varietiesOfFarm(db).filter((each) => each.cropId === cropId),
        learned: learned.map((each) => ({
          ...each,
          restsOn: {
            toHarvest: each.toHarvest_days === null ? '' : restsOn(each.toHarvest_days),
            window: each.window_days === null ? '' : restsOn(each.window_days),
            yields: each.yield_per_m2 === null ? '' : restsOn(each.yield_per_m2),
          },
        })),
        facts: [...numberFacts, ...wordFacts].map((name) => {
          const fact = facts.get(name);
          const library = shipped.get(name);
          return {
            name,
            title: isNumberFact(name) ? titleOfFact(name) : name.replaceAll('_', ' '),
            isNumber: isNumberFact(name),
            number: fact?.number ?? null,
            words: fact?.words ?? null,
            origin: fact?.origin ?? null,
            source: fact === undefined ? '' : fact.origin === 'library' ? printedSource(fact.source) : fact.source,
            mark: fact === undefined || fact.origin !== 'library' ? null : markOfSource(fact.source),
            libraryNumber: library?.number ?? null,
            libraryWords: library?.words ?? null,
          };
        }),
      };
    },
  }),
  /** The grower's own figure over the library's; empty takes it away again. */
  setFact: change({
    note: ({ cropId }, { db }) => `Set your own figure of ${nameOf(db, 'crop', cropId)}`,
    input: z.object({
      cropId: z.string(),
      varietyId: z.string().nullable(),
      name: factName,
      number: z.number().nullable(),
      words: z.string().trim().max(200).nullable(),
      source: z.string().trim().max(200),
    }),
    run({ db }, { cropId, varietyId, name, number, words, source }) {
      if (cropOfId(db, cropId) === undefined) throw new Refusal({ code: 'not-found', what: 'crop' });
      const place = { cropId, varietyId, name, origin: 'own' as const };
      const isEmpty = isNumberFact(name) ? number === null : words === null || words === '';
      if (isEmpty) dropFact(db, place);
      else {
        requireFact(name, number, words);
        putFact(db, newId<string>(), place, { number, words, source });
      }
      return { cropId };
    },
  }),
  /** Takes what the records taught as figures of the crop, with what they rest on as the source. */
  takeLearned: change({
    note: ({ cropId }, { db }) => `Take figures of ${nameOf(db, 'crop', cropId)} from your records`,
    input: z.object({ cropId: z.string() }),
    run({ db }, { cropId }) {
      const learned = learnedOfFarm(db, cropId);
      let taken = 0;
      for (const each of learned) {
        if (isBestOfItsVariety(each, learned) && each.toHarvest_days !== null) {
          const { least, most } = each.toHarvest_days;
          const source = restsOn(each.toHarvest_days);
          putFact(
            db,
            newId<string>(),
            { cropId, varietyId: each.varietyId, name: 'days_counted_from', origin: 'learned' },
            { number: null, words: countedFrom[each.method], source },
          );
          for (const [name, number] of [
            ['maturity_min_days', least],
            ['maturity_max_days', most],
          ] as const)
            putFact(
              db,
              newId<string>(),
              { cropId, varietyId: each.varietyId, name, origin: 'learned' },
              { number, words: null, source },
            );
          taken += 1;
        }
        const put = (name: (typeof numberFacts)[number], number: number, source: string) => {
          putFact(
            db,
            newId<string>(),
            { cropId, varietyId: each.varietyId, name, origin: 'learned' },
            { number, words: null, source },
          );
          taken += 1;
        };
        if (each.yield_per_m2 !== null) {
          const source = restsOn(each.yield_per_m2);
          put('yield_low_per_m2', each.yield_per_m2.least, source);
          put('yield_typical_per_m2', each.yield_per_m2.mean, source);
          put('yield_high_per_m2', each.yield_per_m2.most, source);
        }
        if (each.window_days !== null) put('harvest_window_days', Math.round(each.window_days.mean), restsOn(each.window_days));
      }
      const heat = calibrateHeat(db, cropId, cropShelf(db).facts(cropId));
      if (heat !== null) {
        putFact(
          db,
          newId<string>(),
          { cropId, varietyId: null, name: 'gdd_to_harvest_C_days', origin: 'learned' },
          { number: Math.round(heat.mean_C_days), words: null, source: `${heat.plantings} plantings with weather on record` },
        );
        taken += 1;
      }
      if (taken === 0) refuse('cropId', 'not-known', 'There is no finished planting of this crop on record yet.');
      return { taken };
    },
  }),
  add: change({
    note: ({ name }) => `Add crop ${name}`,
    input: z.object({
      name: z.string().trim().min(1, 'A crop needs a name.').max(80),
      family: z.string().trim().min(1, 'Its family is needed for rotation.').max(60),
      group: z.string().trim().min(1, 'Choose a group.').max(40),
      botanicalName: z.string().trim().max(120),
    }),
    run({ db }, { name, family, group, botanicalName }) {
      if (cropsOfFarm(db).some((crop) => crop.name.toLowerCase() === name.toLowerCase()))
        refuse('name', 'taken', `There is a crop ${name} already.`);
      const id = newId<string>();
      addCrop(db, { id, name, family, cropGroup: group, botanicalName, own: true });
      return { cropId: id };
    },
  }),
  set: change({
    note: ({ cropId }, { db }) => `Change crop ${nameOf(db, 'crop', cropId)}`,
    input: z.object({
      cropId: z.string(),
      revision: z.int(),
      values: z
        .object({
          name: z.string().trim().min(1, 'A crop needs a name.').max(80),
          family: z.string().trim().min(1, 'Its family is needed for rotation.').max(60),
          hidden: z.boolean(),
          notes: z.string().max(4000),
        })
        .partial(),
    }),
    run({ db }, { cropId, revision, values }) {
      const given = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
      if (!changeCrop(db, cropId, revision, given)) throw new Refusal({ code: 'changed-meanwhile', what: 'crop' });
      return { cropId };
    },
  }),
  addVariety: change({
    note: ({ name }) => `Add variety ${name}`,
    input: z.object({ cropId: z.string(), name: z.string().trim().min(1, 'A variety needs a name.').max(80) }),
    run({ db }, { cropId, name }) {
      if (cropOfId(db, cropId) === undefined) throw new Refusal({ code: 'not-found', what: 'crop' });
      if (varietiesOfFarm(db).some((each) => each.cropId === cropId && each.name === name))
        refuse('name', 'taken', `There is a variety ${name} of this crop already.`);
      const id = newId<string>();
      addVariety(db, { id, cropId, name });
      return { varietyId: id };
    },
  }),
  setVariety: change({
    note: ({ varietyId }, { db }) => `Change variety ${nameOf(db, 'variety', varietyId)}`,
    input: z.object({
      varietyId: z.string(),
      revision: z.int(),
      values: z.object({ name: z.string().trim().min(1).max(80), notes: z.string().max(2000), retired: z.boolean() }).partial(),
    }),
    run({ db }, { varietyId, revision, values }) {
      const given = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
      if (!changeVariety(db, varietyId, revision, given)) throw new Refusal({ code: 'changed-meanwhile', what: 'variety' });
      return { varietyId };
    },
  }),
};
