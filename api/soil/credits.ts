import type { AppliedBed, topUpsOfFarm } from '../../db/repositories/applications.ts';
import type { plantingsOnBeds } from '../../db/repositories/feeding.ts';
import type { SoilTestRecord } from '../../db/repositories/soil-tests.ts';
import { type IsoDate, yearOf } from '../../planner/calendar.ts';
import { reachableShares } from '../../planner/fertility/material-content.ts';
import type { CreditKind, NutrientCredit } from '../../planner/fertility/nutrient-budget.ts';
import { addNutrients, mapNutrients, type NutrientMasses, noNutrients } from '../../planner/fertility/nutrients.ts';
import {
  ORGANIC_MATTER_N_SHARE,
  ORGANIC_MATTER_RELEASE_SHARE,
  organicMatterNitrogen,
} from '../../planner/fertility/organic-matter-nitrogen.ts';
import { seriesFor } from '../../planner/fertility/release-years.ts';
import { waterNitrogen_kg_per_m2 } from '../../planner/fertility/seasonal-nitrogen.ts';
import type { SoilTables } from '../../planner/fertility/soil-tables.ts';
import { convert } from '../../planner/units/convert.ts';
import type { LoadedBed } from '../beds/load-beds.ts';
import type { FeedingPlan } from './feeding-plan.ts';

type MaterialRow = AppliedBed['material'];
export type TopUp = ReturnType<typeof topUpsOfFarm>[number];
export type PlantingOnBed = ReturnType<typeof plantingsOnBeds>[number];

/** The plough layer that percentages of organic matter speak of: 2,000,000 lb an acre. */
const SLICE_KG_PER_M2 = convert(2_000_000, 'lb_per_acre', 'kg_per_m2');
/** Nitrogen that a legume leaves behind: dry beans 40 lb an acre (University of Nebraska); picked green, half of it (practice). */
const LEGUME_KG_PER_M2 = convert(20, 'lb_per_acre', 'kg_per_m2');
const LEGUME_COVER_KG_PER_M2 = convert(60, 'lb_per_acre', 'kg_per_m2');

export const contentOf = (material: MaterialRow) => ({
  nShare: material.nShare,
  p2o5Share: material.p2o5Share,
  k2oShare: material.k2oShare,
  caShare: material.caShare,
  mgShare: material.mgShare,
  sShare: material.sShare,
  firstYearNShare: material.firstYearNShare,
  isMineral: material.kind === 'mineral' || material.kind === 'liming',
});

export const seriesOf = (tables: SoilTables, material: MaterialRow): readonly number[] =>
  seriesFor(tables.decay_series_organic_N.rows, {
    kind: material.kind,
    animalOrigin: material.animalOrigin,
    firstYearNShare: material.firstYearNShare,
  });

/** What an amount of a material brings within reach so many years on, kg. */
export function broughtBy(tables: SoilTables, material: MaterialRow, mass_kg: number, yearsAfter: number): NutrientMasses {
  const shares = reachableShares(contentOf(material), seriesOf(tables, material), yearsAfter);
  return mapNutrients((name) => shares[name] * mass_kg);
}

export type CreditInput = {
  readonly bed: LoadedBed;
  readonly area_m2: number;
  readonly test: SoilTestRecord | undefined;
  readonly applied: readonly AppliedBed[];
  readonly planned: readonly AppliedBed[];
  readonly topUps: readonly TopUp[];
  readonly before: readonly PlantingOnBed[];
  readonly plan: FeedingPlan;
  readonly tables: SoilTables;
  readonly seasonYear: number;
  readonly seasonStart: string;
};

/** Everything that feeds a bed beside what is still to be given, each with its source. Nothing is a credit that brings nothing. */
export function creditsOf(input: CreditInput): readonly NutrientCredit[] {
  const credits = [organicMatter(input), earlier(input), topUps(input), legumes(input), thisSeason(input), water(input)];
  return credits.filter(
    (credit): credit is NutrientCredit => credit !== null && Object.values(credit.brings).some((kg) => kg > 0),
  );
}

const credit = (kind: CreditKind, name: string, brings: NutrientMasses, source: string): NutrientCredit => ({
  kind,
  name,
  brings,
  source,
});
const nitrogen = (kg: number): NutrientMasses => ({ ...noNutrients, N: kg });

function organicMatter({ test, bed, area_m2 }: CreditInput): NutrientCredit | null {
  const share = test?.test.organicMatterShare;
  // in a mix organic matter is the bed itself: none is counted until a test says otherwise
  if (
    share === undefined ||
    share === null ||
    test?.test.kind !== 'soil' ||
    bed.spec.kind === 'bag' ||
    bed.spec.kind === 'trough'
  )
    return null;
  const { released_kg_per_m2 } = organicMatterNitrogen({
    organicMatterShare: Math.min(share, 0.08),
    soil_kg_per_m2: SLICE_KG_PER_M2,
    nShareOfOrganicMatter: ORGANIC_MATTER_N_SHARE,
    releasedShare: ORGANIC_MATTER_RELEASE_SHARE,
  });
  return credit(
    'organic-matter',
    'Organic matter of the soil',
    nitrogen(released_kg_per_m2 * area_m2),
    '20 lb/acre of N for each percent, rule of thumb from memory; no more than 8 % counted',
  );
}

function sumOf(
  rows: readonly { readonly material: MaterialRow; readonly kg: number; readonly years: number }[],
  tables: SoilTables,
): NutrientMasses {
  return rows.reduce((sum, row) => addNutrients(sum, broughtBy(tables, row.material, row.kg, row.years)), noNutrients);
}

function earlier({ applied, seasonYear, tables }: CreditInput): NutrientCredit {
  const rows = applied
    .map((row) => ({ material: row.material, kg: row.amount_kg, years: seasonYear - yearOf(row.application.date as IsoDate) }))
    .filter((row) => row.years > 0);
  return credit(
    'earlier-dressings',
    'Dressings of earlier years',
    sumOf(rows, tables),
    'release series by kind of material: common practice, no source',
  );
}

function thisSeason({ applied, planned, seasonYear, tables }: CreditInput): NutrientCredit {
  const rows = [...applied, ...planned]
    .filter((row) => yearOf(row.application.date as IsoDate) === seasonYear)
    .map((row) => ({ material: row.material, kg: row.amount_kg, years: 0 }));
  return credit(
    'this-season',
    'Given and planned this season',
    sumOf(rows, tables),
    'analysis and first-year share of the material',
  );
}

function topUps({ topUps: fills, seasonYear, tables }: CreditInput): NutrientCredit {
  const rows = fills
    .filter((fill) => fill.material.kind === 'organic')
    .map((fill) => ({
      material: fill.material,
      kg: (fill.loose_L * (fill.material.moistDensity_kg_per_m3 ?? 0)) / 1000,
      years: seasonYear - yearOf(fill.date as IsoDate),
    }))
    .filter((row) => row.years >= 0);
  return credit(
    'top-ups',
    'Compost of top-ups',
    sumOf(rows, tables),
    'release series by kind of material: common practice, no source',
  );
}

function legumes({ before, area_m2 }: CreditInput): NutrientCredit | null {
  const beans = before.filter((each) => each.family === 'Fabaceae');
  if (beans.length === 0) return null;
  const kg = beans.reduce(
    (sum, each) =>
      sum +
      (each.share.to - each.share.from) * area_m2 * (each.cropGroup === 'cover-crop' ? LEGUME_COVER_KG_PER_M2 : LEGUME_KG_PER_M2),
    0,
  );
  return credit(
    'legumes',
    `Legumes before: ${[...new Set(beans.map((each) => each.crop))].join(', ')}`,
    nitrogen(kg),
    'after dry beans 40 lb/acre (University of Nebraska); half for beans and peas picked green, 60 for a cover crop: common practice',
  );
}

function water({ plan, area_m2 }: CreditInput): NutrientCredit | null {
  if (plan.waterNitrateN_mg_per_L === null || plan.water_L_per_m2 === null) return null;
  const kg = waterNitrogen_kg_per_m2(plan.water_L_per_m2, plan.waterNitrateN_mg_per_L) * area_m2;
  return credit('water', 'Nitrate in the irrigation water', nitrogen(kg), 'your water test times the season’s water');
}
