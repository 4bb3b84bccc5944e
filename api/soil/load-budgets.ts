import { derived } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { type AppliedBed, applicationsDone, applicationsPlanned, topUpsOfFarm } from '../../db/repositories/applications.ts';
import { plantingsOnBeds, removalFacts } from '../../db/repositories/feeding.ts';
import { type SoilTestRecord, soilTests } from '../../db/repositories/soil-tests.ts';
import { addDays, type IsoDate, yearOf } from '../../planner/calendar.ts';
import { type BedBudget, bedBudget, type NutrientCredit, type PlantingNeed } from '../../planner/fertility/nutrient-budget.ts';
import type { SoilTables } from '../../planner/fertility/soil-tables.ts';
import { type LoadedBed, loadBeds } from '../beds/load-beds.ts';
import { creditsOf, type PlantingOnBed } from './credits.ts';
import { feedingPlanFor, type seasonOf } from './feeding-plan.ts';
import { plantingNeeds, removalFactsOf } from './planting-needs.ts';
import { testsByBed } from './test-view.ts';

export type LoadedBudget = {
  readonly bed: LoadedBed;
  readonly area_m2: number;
  readonly test: SoilTestRecord | undefined;
  readonly plantings: readonly PlantingOnBed[];
  readonly needs: readonly PlantingNeed[];
  readonly credits: readonly NutrientCredit[];
  readonly budget: BedBudget;
};

type Planned = 'with-planned' | 'without-planned';

const grouped = <T extends { readonly bedId: string }>(rows: readonly T[]) => Map.groupBy(rows, (row) => row.bedId);

/**
 * The nutrient budget of every bed in use for a season. With `'without-planned'` what is planned on dose cards but not yet
 * done is no credit: that is what a blend starts from.
 */
export const loadBudgets = (
  db: FarmDb,
  season: ReturnType<typeof seasonOf>,
  tables: SoilTables,
  planned: Planned = 'with-planned',
): readonly LoadedBudget[] =>
  derived(db, `budgets ${season.id} ${season.startDate} ${season.endDate} ${planned}`, () =>
    budgetsLoaded(db, season, tables, planned),
  );

function budgetsLoaded(
  db: FarmDb,
  season: ReturnType<typeof seasonOf>,
  tables: SoilTables,
  planned: Planned,
): readonly LoadedBudget[] {
  const plan = feedingPlanFor(db, season.id);
  const yearBefore = addDays(season.startDate as IsoDate, -365);
  const stands = plantingsOnBeds(db, yearBefore, season.endDate);
  const now = grouped(stands.filter((each) => each.seasonId === season.id));
  const before = grouped(stands.filter((each) => each.seasonId !== season.id && each.clearDate <= season.endDate));
  const tests = testsByBed(soilTests(db));
  const applied = grouped(applicationsDone(db));
  const coming = planned === 'with-planned' ? grouped(applicationsPlanned(db)) : new Map<string, AppliedBed[]>();
  const fills = grouped(topUpsOfFarm(db));
  const facts = removalFactsOf(removalFacts(db));
  return loadBeds(db).map((bed) => {
    const bedId = bed.bed.id;
    const area_m2 = bed.figures?.area_m2 ?? 0;
    const test = tests.get(bedId)?.find((each) => each.test.date <= season.endDate);
    const plantings = now.get(bedId) ?? [];
    const needs = plantingNeeds(plantings, area_m2, test, plan.needBy, tables, facts);
    const credits = creditsOf({
      bed,
      area_m2,
      test,
      applied: applied.get(bedId) ?? [],
      planned: coming.get(bedId) ?? [],
      topUps: fills.get(bedId) ?? [],
      before: before.get(bedId) ?? [],
      plan,
      tables,
      seasonYear: yearOf(season.startDate as IsoDate),
      seasonStart: season.startDate,
    });
    return { bed, area_m2, test, plantings, needs, credits, budget: bedBudget(area_m2, needs, credits) };
  });
}
