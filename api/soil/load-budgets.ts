import { derived, derivedByKey, sameRows } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { type AppliedBed, applicationsDone, applicationsPlanned, topUpsOfFarm } from '../../db/repositories/applications.ts';
import { plantingsStanding, removalFacts } from '../../db/repositories/feeding.ts';
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

type Season = ReturnType<typeof seasonOf>;

/**
 * The nutrient budget of every bed in use for a season. With `'without-planned'` what is planned on dose cards but not yet
 * done is no credit: that is what a blend starts from.
 */
export const loadBudgets = (
  db: FarmDb,
  season: Season,
  tables: SoilTables,
  planned: Planned = 'with-planned',
): readonly LoadedBudget[] =>
  derived(db, `budgets ${season.id} ${season.startDate} ${season.endDate} ${planned}`, (before: Budgets | undefined) =>
    budgetsLoaded(db, season, tables, planned, before),
  ).budgets;

type Budgets = {
  readonly budgets: readonly LoadedBudget[];
  readonly ofBed: ReadonlyMap<LoadedBed, BudgetOfBed>;
  readonly around: Around;
};

/** A bed's budget with what stood in it before and stands in it now. */
type BudgetOfBed = Standing & { readonly budget: LoadedBudget };

type Standing = { readonly now: readonly PlantingOnBed[]; readonly before: readonly PlantingOnBed[] };

type Around = ReturnType<typeof aroundBeds>;

/** The budgets of a season, part by part, to be worked out ahead. */
export const partsOfBudgets = (db: FarmDb, season: Season, tables: SoilTables): readonly (() => unknown)[] => [
  () => aroundBeds(db, season, 'with-planned'),
  () => standingOf(db, season),
  () => loadBudgets(db, season, tables),
];

/** What the budgets rest on beside the beds themselves and what stands in them. */
const aroundBeds = (db: FarmDb, season: Season, planned: Planned) =>
  derived(db, `budgets: around beds ${season.id} ${planned}`, () => ({
    plan: feedingPlanFor(db, season.id),
    tests: testsByBed(soilTests(db)),
    applied: grouped(applicationsDone(db)),
    coming: planned === 'with-planned' ? grouped(applicationsPlanned(db)) : new Map<string, AppliedBed[]>(),
    fills: grouped(topUpsOfFarm(db)),
    facts: removalFactsOf(removalFacts(db)),
  }));

/** What stands in the beds in a season, and what stood there in the year before it. */
const standingOf = (db: FarmDb, season: Season): ((bedId: string) => Standing) =>
  derived(db, `budgets: standing ${season.id} ${season.startDate} ${season.endDate}`, () => {
    const stands = standingOnBeds(db, addDays(season.startDate as IsoDate, -365), season.endDate);
    const now = grouped(stands.filter((each) => each.seasonId === season.id));
    const before = grouped(stands.filter((each) => each.seasonId !== season.id && each.clearDate <= season.endDate));
    return (bedId) => ({ now: now.get(bedId) ?? [], before: before.get(bedId) ?? [] });
  });

function standingOnBeds(db: FarmDb, from: string, to: string): readonly PlantingOnBed[] {
  const stands = derivedByKey(db, `standing ${from} ${to}`, {
    tables: ['planting', 'planting_bed'],
    read: (seasonIds) => plantingsStanding(db, from, to, seasonIds),
    keyOf: (row) => row.seasonId,
  });
  return [...stands.values()].flat().sort(inBedOrder);
}

const inBedOrder = (a: PlantingOnBed, b: PlantingOnBed): number =>
  compare(a.bedId, b.bedId) || compare(a.inBedDate, b.inBedDate) || compare(a.plantingId, b.plantingId);
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** A bed of which nothing was written keeps its budget while what stands in it and all around is the same. */
function budgetsLoaded(db: FarmDb, season: Season, tables: SoilTables, planned: Planned, before: Budgets | undefined): Budgets {
  const around = aroundBeds(db, season, planned);
  const standing = standingOf(db, season);
  const known = before?.around === around ? before.ofBed : new Map<LoadedBed, BudgetOfBed>();
  const of = (bed: LoadedBed): BudgetOfBed => {
    const stands = standing(bed.bed.id);
    const same = known.get(bed);
    if (same !== undefined && sameRows(same.now, stands.now) && sameRows(same.before, stands.before)) return same;
    return { ...stands, budget: budgetOf(bed, stands, around, season, tables) };
  };
  const ofBed = new Map(loadBeds(db).map((bed) => [bed, of(bed)]));
  return { budgets: [...ofBed.values()].map(({ budget }) => budget), ofBed, around };
}

function budgetOf(bed: LoadedBed, { now, before }: Standing, around: Around, season: Season, tables: SoilTables): LoadedBudget {
  const { plan, facts } = around;
  const bedId = bed.bed.id;
  const area_m2 = bed.figures?.area_m2 ?? 0;
  const test = around.tests.get(bedId)?.find((each) => each.test.date <= season.endDate);
  const needs = plantingNeeds(now, area_m2, test, plan.needBy, tables, facts);
  const credits = creditsOf({
    bed,
    area_m2,
    test,
    applied: around.applied.get(bedId) ?? [],
    planned: around.coming.get(bedId) ?? [],
    topUps: around.fills.get(bedId) ?? [],
    before,
    plan,
    tables,
    seasonYear: yearOf(season.startDate as IsoDate),
    seasonStart: season.startDate,
  });
  return { bed, area_m2, test, plantings: now, needs, credits, budget: bedBudget(area_m2, needs, credits) };
}
