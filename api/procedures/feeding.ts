import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { addApplications, removePlannedOfSeason } from '../../db/repositories/applications.ts';
import { seasonsOfFarm, setFeedingPlan } from '../../db/repositories/feeding.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { addDays, type IsoDate, isIsoDate } from '../../planner/calendar.ts';
import { InputError } from '../../planner/errors.ts';
import { groupBeds } from '../../planner/fertility/bed-groups.ts';
import type { FarmBlendInput } from '../../planner/fertility/farm-blend.ts';
import { explainToFeed } from '../../planner/fertility/nutrient-budget.ts';
import { nutrientNames } from '../../planner/fertility/nutrients.ts';
import { explainPhPlan } from '../../planner/fertility/ph-plan.ts';
import { Refusal } from '../errors.ts';
import { change, job, read } from '../procedure.ts';
import { budgetView } from '../soil/budget-view.ts';
import { feedingChoices, feedMaterials } from '../soil/feed-materials.ts';
import { feedingPlanFor, seasonOf } from '../soil/feeding-plan.ts';
import { loadBudgets } from '../soil/load-budgets.ts';
import { phOfBeds } from '../soil/ph-of-beds.ts';
import { plannedApplications } from '../soil/plan-doses.ts';
import { soilTablesIn } from '../soil/soil-tables.ts';

const ofSeason = z.object({ seasonId: z.string().optional() });
const isoDate = z.string().refine(isIsoDate, 'A calendar date is needed, as 2026-03-09.');
const nutrient = z.enum(nutrientNames);

/** What planned doses of a blend and of lime are called; a new blend takes the place of these only. */
const BLEND_REASON = 'blend of the season';
const PH_REASON = 'soil test: pH';

const wishes = z.object({
  seasonId: z.string(),
  needBy: z.enum(['soil-test', 'removal']),
  tolerance_share: z.number().min(0.01, 'At least 1 %.').max(0.5, 'At most 50 %.'),
  materialIds: z.array(z.string()).max(200),
  scoop_L: z.number().min(0.005, 'At least 5 mL.').max(20, 'At most 20 L.'),
  splits: z.int().min(1, 'At least one dose.').max(6, 'At most six doses.'),
  splitWeeks: z.int().min(1).max(26),
  firstDate: isoDate.nullable(),
  targetPh: z.number().min(4.5, 'A target lies between pH 4.5 and 8.').max(8, 'A target lies between pH 4.5 and 8.'),
  limeMaterialId: z.string().nullable(),
  sulfurMaterialId: z.string().nullable(),
  organicOnly: z.boolean(),
  waterNitrateN_mg_per_L: z.number().min(0).max(200, 'Nitrate-N of water is 0 to 200 mg/L.').nullable(),
  water_L_per_m2: z.number().min(0).max(5000, 'A season’s water is 0 to 5,000 mm.').nullable(),
});

export const feeding = {
  /** The season's wishes and the materials to choose among. */
  plan: read({
    input: ofSeason,
    run({ db, today }, { seasonId }) {
      const season = seasonOf(db, seasonId, today);
      const plan = feedingPlanFor(db, season.id);
      return {
        season: { seasonId: season.id, name: season.name, startDate: season.startDate, endDate: season.endDate },
        seasons: seasonsOfFarm(db).map((each) => ({ seasonId: each.id, name: each.name })),
        plan,
        materials: feedingChoices(db, plan.organicOnly),
      };
    },
  }),
  setPlan: change({
    note: ({ seasonId }, { db }) => `Change the feeding plan of season ${nameOf(db, 'season', seasonId)}`,
    input: wishes,
    run({ db }, input) {
      setFeedingPlan(db, { id: newId(), ...input });
      return { seasonId: input.seasonId };
    },
  }),
  budget: read({
    input: ofSeason,
    run({ db, program, today }, { seasonId }) {
      const season = seasonOf(db, seasonId, today);
      return loadBudgets(db, season, soilTablesIn(program.places.resources)).map(budgetView);
    },
  }),
  explainBudget: read({
    input: z.object({ seasonId: z.string().optional(), bedId: z.string(), nutrient }),
    run({ db, program, today }, { seasonId, bedId, nutrient: of }) {
      const season = seasonOf(db, seasonId, today);
      const found = loadBudgets(db, season, soilTablesIn(program.places.resources)).find((each) => each.bed.bed.id === bedId);
      if (found === undefined) throw new Refusal({ code: 'not-found', what: 'bed' });
      return explainToFeed(of, found.area_m2, found.needs, found.credits);
    },
  }),
  ph: read({
    input: ofSeason,
    run({ db, program, today }, { seasonId }) {
      const season = seasonOf(db, seasonId, today);
      return phOfBeds(db, season.id, soilTablesIn(program.places.resources)).map(
        ({ bed, test, input, plan, material, materialId }) => ({
          bedId: bed.bed.id,
          code: bed.bed.code,
          block: bed.block.code,
          area_m2: bed.figures?.area_m2 ?? 0,
          testDate: test?.test.date ?? null,
          ph: test?.test.ph ?? null,
          bufferPh: test?.test.bufferPh ?? null,
          targetPh: input?.targetPh ?? null,
          act: plan?.act ?? 'none',
          method: plan?.method ?? '',
          material,
          materialId,
          dose_kg: plan?.material_kg ?? null,
          applications: plan?.applications ?? 0,
          heldAtEdge: plan?.heldAtEdge ?? false,
          note: plan?.note ?? (test === undefined ? 'No sheet with a pH speaks for this bed.' : 'The bed has no area.'),
        }),
      );
    },
  }),
  explainPh: read({
    input: z.object({ seasonId: z.string().optional(), bedId: z.string() }),
    run({ db, program, today }, { seasonId, bedId }) {
      const season = seasonOf(db, seasonId, today);
      const found = phOfBeds(db, season.id, soilTablesIn(program.places.resources)).find((each) => each.bed.bed.id === bedId);
      if (found?.input === null || found === undefined) throw new Refusal({ code: 'not-found', what: 'soil test' });
      return explainPhPlan(found.input);
    },
  }),
  /** Puts lime or sulfur for beds on their dose cards, in parts half a year apart where it is much. */
  planPh: change({
    note: ({ bedIds }) =>
      bedIds.length === 1 ? 'Plan lime or sulfur for one bed' : `Plan lime or sulfur for ${bedIds.length} beds`,
    input: z.object({ seasonId: z.string(), bedIds: z.array(z.string()).max(20_000), date: isoDate }),
    run({ db, program }, { seasonId, bedIds, date }) {
      const wanted = new Set(bedIds);
      const doses = phOfBeds(db, seasonId, soilTablesIn(program.places.resources)).flatMap(({ bed, plan, materialId }) =>
        wanted.has(bed.bed.id) && plan !== null && plan.act !== 'none' && materialId !== null
          ? [{ bedId: bed.bed.id, materialId, dose_kg: plan.material_kg, parts: plan.applications }]
          : [],
      );
      if (doses.length === 0)
        throw new InputError([
          { path: 'bedIds', code: 'missing', message: 'None of these beds wants lime or sulfur of the chosen materials.' },
        ]);
      let planned = 0;
      for (const [parts, list] of Map.groupBy(doses, (dose) => dose.parts)) {
        const rows = plannedApplications(
          list.map((dose) => ({ ...dose, date: date as IsoDate })),
          seasonId,
          PH_REASON,
          parts,
          26,
        );
        addApplications(db, rows.applications, rows.beds);
        planned += rows.beds.length;
      }
      return { planned };
    },
  }),
  /** Starts the blend for all beds that want feeding, or for some of them. */
  blend: job({
    kind: 'feed-beds',
    input: z.object({
      seasonId: z.string(),
      bedIds: z.array(z.string()).max(20_000).optional(),
      nutrients: z.array(nutrient).min(1, 'Choose at least one nutrient.').default(['N', 'P2O5', 'K2O']),
    }),
    gather({ db, program, today }, { seasonId, bedIds, nutrients }): FarmBlendInput & { readonly scoop_L: number } {
      const season = seasonOf(db, seasonId, today);
      const plan = feedingPlanFor(db, season.id);
      const tables = soilTablesIn(program.places.resources);
      const wanted = bedIds === undefined ? null : new Set(bedIds);
      const beds = loadBudgets(db, season, tables, 'without-planned')
        .filter((each) => each.area_m2 > 0 && each.needs.length > 0 && (wanted === null || wanted.has(each.bed.bed.id)))
        .map((each) => ({ bedId: each.bed.bed.id, area_m2: each.area_m2, need: each.budget.toFeed }));
      if (beds.length === 0)
        throw new InputError([{ path: 'bedIds', code: 'empty', message: 'No bed of this season has a planting to feed.' }]);
      const materials = feedMaterials(db, tables, plan.materialIds, plan.organicOnly);
      if (materials.length === 0)
        throw new InputError([
          {
            path: 'materialIds',
            code: 'empty',
            message: 'None of the chosen materials is in stock or on offer. Choose others, or add an offer in the library.',
          },
        ]);
      return { groups: groupBeds(beds), materials, nutrients, toleranceShare: plan.tolerance_share, scoop_L: plan.scoop_L };
    },
  }),
  /** Puts a blend's doses on the cards; those of an earlier blend of the season that are not done yet give way. */
  accept: change({
    note: ({ doses }) => (doses.length === 1 ? 'Put one dose on its card' : `Put ${doses.length} doses on the cards`),
    input: z.object({
      seasonId: z.string(),
      doses: z
        .array(z.object({ bedId: z.string(), materialId: z.string(), dose_kg: z.number().positive().max(100_000) }))
        .min(1, 'There is no dose to plan.')
        .max(200_000),
    }),
    run({ db, program, today }, { seasonId, doses }) {
      const season = seasonOf(db, seasonId, today);
      const plan = feedingPlanFor(db, season.id);
      const replaced = removePlannedOfSeason(db, season.id, BLEND_REASON);
      const starts = firstDates(
        loadBudgets(db, season, soilTablesIn(program.places.resources)),
        plan.firstDate,
        today,
        season.startDate,
      );
      const rows = plannedApplications(
        doses.map((dose) => ({ ...dose, date: starts.get(dose.bedId) ?? (season.startDate as IsoDate) })),
        season.id,
        BLEND_REASON,
        plan.splits,
        plan.splitWeeks,
      );
      addApplications(db, rows.applications, rows.beds);
      return { planned: rows.beds.length, replaced };
    },
  }),
} as const;

/** The day of a bed's first dose: the one chosen, else a week before its first planting, never before today. */
function firstDates(
  budgets: ReturnType<typeof loadBudgets>,
  chosen: string | null,
  today: IsoDate,
  seasonStart: string,
): ReadonlyMap<string, IsoDate> {
  return new Map(
    budgets.map(({ bed, plantings }) => {
      const first = plantings.map((each) => each.inBedDate).sort()[0];
      const date = chosen ?? (first === undefined ? seasonStart : addDays(first as IsoDate, -7));
      return [bed.bed.id, (date < today && chosen === null ? today : date) as IsoDate];
    }),
  );
}
