import { z } from 'zod';
import { varietiesOfFarm } from '../../db/repositories/crops.ts';
import { openOutlets } from '../../db/repositories/demands.ts';
import { plantingOfId } from '../../db/repositories/plantings.ts';
import { outlineOfBed } from '../../planner/beds/bed-spec.ts';
import { explainPlants } from '../../planner/beds/plant-count.ts';
import { dayNumber } from '../../planner/calendar.ts';
import { numberOf, wordsOf } from '../../planner/crops/crop-facts.ts';
import { InputError } from '../../planner/errors.ts';
import { checkPlan } from '../../planner/season/check-plan.ts';
import { whatFits } from '../../planner/season/gap-suggestions.ts';
import { timingOf } from '../../planner/season/maturity.ts';
import { explainPlantingDates } from '../../planner/season/planting-dates.ts';
import { publishedIntervals } from '../../planner/season/succession.ts';
import { Refusal } from '../errors.ts';
import { read } from '../procedure.ts';
import { boardOf } from '../season/board-rows.ts';
import { spacingOf } from '../season/count-plants.ts';
import { growPlan, usualSpacing } from '../season/grow-plan.ts';
import { loadSeason } from '../season/load-season.ts';
import { newPlantings } from '../season/new-plantings.ts';
import { growEntry, isoDate, methods, spanEntry, successionEntry } from '../season/planting-entry.ts';
import { plantingSheet } from '../season/planting-sheet.ts';
import { stillWanted } from '../season/season-balance.ts';

const seasonId = z.string().nullable();

export const plantings = {
  /** The board of a season: the newest one when none is named. */
  board: read({ input: z.object({ seasonId }), run: ({ db, today }, input) => boardOf(loadSeason(db, input.seasonId), today) }),
  /** What can be chosen when a planting is added, with the usual spacing and method of each crop. */
  choices: read({
    input: z.object({ seasonId }),
    run({ db }, input) {
      const { shelf } = loadSeason(db, input.seasonId);
      const varieties = varietiesOfFarm(db).filter((each) => !each.retired);
      return {
        outlets: openOutlets(db),
        crops: shelf.crops
          .filter((crop) => !crop.hidden)
          .map((crop) => {
            const facts = shelf.facts(crop.id);
            const sow = wordsOf(facts, 'sow_method');
            return {
              cropId: crop.id,
              name: crop.name,
              family: crop.family,
              group: crop.cropGroup,
              varieties: varieties.filter((each) => each.cropId === crop.id).map(({ id, name }) => ({ varietyId: id, name })),
              method:
                sow === 'direct'
                  ? ('direct' as const)
                  : sow === 'transplant' || sow === 'both'
                    ? ('transplant' as const)
                    : ('set' as const),
              methods: methods.filter(
                (method) => method !== 'set' || (sow !== 'direct' && sow !== 'transplant' && sow !== 'both'),
              ),
              ...usualSpacing(facts),
              window_days: numberOf(facts, 'harvest_window_days'),
              succession_days: numberOf(facts, 'succession_days'),
              published: publishedIntervals[crop.id] ?? null,
              hasHeat: numberOf(facts, 'gdd_to_harvest_C_days') !== null && numberOf(facts, 'gdd_base_C') !== null,
              yieldUnit: wordsOf(facts, 'yield_unit') ?? 'kg',
            };
          }),
      };
    },
  }),
  /** What an entry would make, before it is made: dates, plants and what stands against it. */
  preview: read({
    input: z.object({
      seasonId: z.string(),
      entry: growEntry,
      spans: z.array(spanEntry),
      succession: successionEntry.nullable(),
    }),
    run({ db }, { seasonId: id, entry, spans, succession }) {
      const loaded = loadSeason(db, id);
      const { dates, datesInput } = growPlan(loaded, entry);
      const made = newPlantings(loaded, entry, spans, succession);
      const plans = made.rows.map((row) => ({
        id: row.id,
        crop: loaded.shelf.needs(entry.cropId, entry.varietyId),
        raised: entry.method === 'transplant',
        sow: (row.sowDate ?? null) as typeof dates.sow,
        inBed: row.inBedDate as typeof dates.inBed,
        firstHarvest: row.firstHarvestDate as typeof dates.inBed,
        lastHarvest: row.lastHarvestDate as typeof dates.inBed,
        free: row.clearDate as typeof dates.inBed,
        spans: made.spans
          .filter((span) => span.plantingId === row.id)
          .map((span) => ({
            bedId: span.bedId,
            fromShare: span.fromShare ?? 0,
            toShare: span.toShare ?? 1,
            plants: span.plants ?? 0,
            mostPlants: span.plants ?? 0,
          })),
      }));
      const beds = new Set(plans.flatMap((plan) => plan.spans.map((span) => span.bedId)));
      const near = loaded.plantings.filter((each) => each.spans.some((span) => beds.has(span.bedId)));
      const ids = new Set(plans.map((plan) => plan.id));
      const findings = checkPlan({ beds: loaded.beds, plantings: [...near, ...plans], rules: loaded.rules }).filter(
        (each) => ids.has(each.plantingId) || (each.otherId !== null && ids.has(each.otherId)),
      );
      const first = spans[0] && loaded.loadedBeds.find((each) => each.bed.id === spans[0]?.bedId);
      return {
        dates,
        working: explainPlantingDates(datesInput),
        plantsWorking:
          first === undefined || first.figures === null
            ? null
            : explainPlants({
                outline: outlineOfBed(first.spec),
                spacing: spacingOf(entry),
                ...(entry.margin_m === null ? {} : { edgeMargin_m: entry.margin_m }),
              }),
        plants: made.rows.reduce((sum, row) => sum + row.plants, 0),
        plantings: made.rows.map((row) => ({
          inBed: row.inBedDate,
          firstHarvest: row.firstHarvestDate,
          free: row.clearDate,
          plants: row.plants,
          beds: made.spans
            .filter((span) => span.plantingId === row.id)
            .map((span) => loaded.beds.find((bed) => bed.id === span.bedId)?.code ?? ''),
        })),
        unplaced: made.unplaced,
        findings,
      };
    },
  }),
  one: read({
    input: z.object({ plantingId: z.string() }),
    run({ db }, { plantingId }) {
      const record = plantingOfId(db, plantingId);
      if (record === undefined) throw new Refusal({ code: 'not-found', what: 'planting' });
      return plantingSheet(loadSeason(db, record.seasonId), record);
    },
  }),
  /** Crops that would fit into a gap of a bed, what is wanted most first. */
  whatFits: read({
    input: z.object({
      seasonId: z.string(),
      bedId: z.string(),
      fromShare: z.number().min(0).max(1),
      toShare: z.number().min(0).max(1),
      from: isoDate,
      to: isoDate,
    }),
    run({ db }, gap) {
      const loaded = loadSeason(db, gap.seasonId);
      const bed = loaded.beds.find((each) => each.id === gap.bedId);
      if (bed === undefined) throw new Refusal({ code: 'not-found', what: 'bed' });
      const wanted = stillWanted(db, loaded);
      const candidates = loaded.shelf.crops
        .filter((crop) => !crop.hidden)
        .flatMap((crop) => {
          const facts = loaded.shelf.facts(crop.id);
          const sow = wordsOf(facts, 'sow_method');
          const method = sow === 'direct' ? 'direct' : sow === 'transplant' || sow === 'both' ? 'transplant' : 'set';
          try {
            const timing = timingOf(facts, method, crop.name);
            return [{ crop: loaded.shelf.needs(crop.id), timing, stillWanted: wanted.get(crop.id) ?? 0 }];
          } catch (error) {
            // a crop whose days are not known cannot be suggested; it is counted in the answer
            if (error instanceof InputError) return [];
            throw error;
          }
        });
      const suggestions = whatFits({
        bed,
        fromShare: gap.fromShare,
        toShare: gap.toShare,
        gap: { from_day: dayNumber(gap.from), to_day: dayNumber(gap.to) },
        candidates,
        rules: loaded.rules,
        clock: loaded.clocks.byLight,
        others: loaded.plantings.filter((each) => each.spans.some((span) => span.bedId === gap.bedId)),
      });
      return {
        suggestions: suggestions.map((each) => ({
          cropId: each.cropId,
          cropName: loaded.shelf.crop(each.cropId).name,
          family: loaded.shelf.crop(each.cropId).family,
          method: candidates.find((one) => one.crop.cropId === each.cropId)?.timing.method ?? 'direct',
          ...each.dates,
          days: each.days,
          stillWanted: each.stillWanted,
          risks: each.findings.map((finding) => finding.message),
        })),
        notKnown: loaded.shelf.crops.filter((crop) => !crop.hidden).length - candidates.length,
      };
    },
  }),
};
