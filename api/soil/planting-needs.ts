import type { SoilTestRecord } from '../../db/repositories/soil-tests.ts';
import { cropRates } from '../../planner/fertility/crop-rates.ts';
import type { PlantingNeed } from '../../planner/fertility/nutrient-budget.ts';
import { noNutrients } from '../../planner/fertility/nutrients.ts';
import { type HarvestedPart, harvestedPartOf, harvestRemoval } from '../../planner/fertility/removal.ts';
import type { SoilTables } from '../../planner/fertility/soil-tables.ts';
import type { TestClass } from '../../planner/fertility/test-class.ts';
import { convert } from '../../planner/units/convert.ts';
import type { PlantingOnBed } from './credits.ts';
import { classOn } from './test-view.ts';

/** Facts of crops that say what a harvest removes, by crop and name; the grower's own over the library's. */
export type RemovalFacts = ReadonlyMap<string, ReadonlyMap<string, number>>;

export function removalFactsOf(
  rows: readonly { readonly cropId: string; readonly name: string; readonly number: number | null; readonly origin: string }[],
): RemovalFacts {
  const facts = new Map<string, Map<string, number>>();
  const rank = ['library', 'learned', 'own'];
  for (const row of [...rows].sort((a, b) => rank.indexOf(a.origin) - rank.indexOf(b.origin))) {
    if (row.number === null) continue;
    const crop = facts.get(row.cropId) ?? new Map<string, number>();
    crop.set(row.name, row.number);
    facts.set(row.cropId, crop);
  }
  return facts;
}

/** Without a test the soil is taken as medium in both. Common practice, no source. */
const UNTESTED: TestClass = 'medium';

/** What the plantings of a bed ask of it, by recommendation or by what leaves with the harvest. */
export function plantingNeeds(
  plantings: readonly PlantingOnBed[],
  area_m2: number,
  test: SoilTestRecord | undefined,
  needBy: 'soil-test' | 'removal',
  tables: SoilTables,
  facts: RemovalFacts,
): readonly PlantingNeed[] {
  return plantings.map((planting) => {
    const part_m2 = area_m2 * (planting.share.to - planting.share.from);
    const removed = needBy === 'removal' ? byRemoval(planting, part_m2, tables, facts) : null;
    return removed ?? byRate(planting, part_m2, test, tables);
  });
}

function byRate(planting: PlantingOnBed, part_m2: number, test: SoilTestRecord | undefined, tables: SoilTables): PlantingNeed {
  const phosphorus = test === undefined ? undefined : classOn(test, 'P')?.class;
  const potassium = test === undefined ? undefined : classOn(test, 'K')?.class;
  const rates = cropRates(
    tables.fertilizer_by_class_midatlantic_lb_per_acre.rows,
    planting.cropId,
    phosphorus ?? UNTESTED,
    potassium ?? UNTESTED,
  );
  const classes = `P ${phosphorus ?? 'not tested, taken as medium'}, K ${potassium ?? 'not tested, taken as medium'}`;
  return {
    name: planting.crop,
    basis: `${rates.source} (${classes})`,
    area_m2: part_m2,
    by: 'rate',
    need: {
      ...noNutrients,
      N: rates.n_kg_per_m2 * part_m2,
      P2O5: rates.p2o5_kg_per_m2 * part_m2,
      K2O: rates.k2o_kg_per_m2 * part_m2,
    },
  };
}

/** `null` where neither the yield in kilograms nor the composition is known: then the recommendation stands. */
function byRemoval(planting: PlantingOnBed, part_m2: number, tables: SoilTables, facts: RemovalFacts): PlantingNeed | null {
  const known = facts.get(planting.cropId);
  const part = partOf(planting.cropId, known, tables);
  const harvest_kg = expectedYield_kg(planting, part_m2, known);
  if (part === null || harvest_kg === null) return null;
  const gone = harvestRemoval(part, harvest_kg);
  return {
    name: planting.crop,
    basis: 'USDA National Nutrient Database, release 26: what leaves with the expected harvest',
    area_m2: part_m2,
    by: 'removal',
    need: { ...noNutrients, N: gone.n_kg, P2O5: gone.p2o5_kg, K2O: gone.k2o_kg },
  };
}

function partOf(cropId: string, known: ReadonlyMap<string, number> | undefined, tables: SoilTables): HarvestedPart | null {
  const n = known?.get('removal_n_kg_per_kg');
  const p2o5 = known?.get('removal_p2o5_kg_per_kg');
  const k2o = known?.get('removal_k2o_kg_per_kg');
  if (n !== undefined && p2o5 !== undefined && k2o !== undefined) return { nShare: n, p2o5Share: p2o5, k2oShare: k2o };
  const rows = tables.removal_by_harvested_part.rows;
  return rows.some((row) => row.crop === cropId || row.crops_csv_id === cropId) ? harvestedPartOf(rows, cropId) : null;
}

function expectedYield_kg(
  planting: PlantingOnBed,
  part_m2: number,
  known: ReadonlyMap<string, number> | undefined,
): number | null {
  const share = planting.plants > 0 ? planting.bedPlants / planting.plants : 1;
  if (planting.yieldTypical !== null && planting.yieldUnit === 'kg') return planting.yieldTypical * share;
  if (planting.yieldTypical !== null && planting.yieldUnit === 'lb') return convert(planting.yieldTypical, 'lb', 'kg') * share;
  const each = known?.get('piece_kg');
  if (planting.yieldTypical !== null && each !== undefined) return planting.yieldTypical * share * each;
  const typical = known?.get('yield_typical_per_m2');
  return typical === undefined ? null : typical * part_m2;
}
