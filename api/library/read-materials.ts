import type { material } from '../../db/schema/materials.ts';
import { csvRecords } from './csv-records.ts';

export type MaterialRow = typeof material.$inferInsert;

const PERCENT = 0.01;

/** Sold and dug by volume, though not of a bulk kind in the table. */
const byVolume =
  /^(sand|gravel|peat|coir|perlite|vermiculite|pumice|biochar|bark|compost|vermicompost|leaf-mould|manure-(cattle|horse|sheep|hog|hen|turkey|duck|goose)$|garden-waste|food-scraps|coffee)/;
const dusty = /^(perlite|vermiculite|pumice|sand|basalt|lime|sulfur|wood-ash|gypsum|rock-phosphate|bone|greensand|oyster)/;
const raw = /^(manure-(cattle|horse|sheep|hog|hen|turkey|duck|goose)$|poultry-litter|manure-chicken)/;
const manufactured =
  /^(urea|ammonium|sodium-nitrate|calcium-nitrate|triple-super|map|dap|potassium-chloride|lime-hydrated|lime-burnt)/;

/** Settling in the first and in each later year, share of depth: common practice, no source; to be learned from measured drops. */
function settlingOf(id: string, kind: string): readonly [number, number] | null {
  if (/^(topsoil|soil)/.test(id)) return [0.15, 0.01];
  if (/^mix-(raised|landscape)/.test(id)) return [0.15, 0.06];
  if (/^(mix|peat|coir|bark)/.test(id)) return [0.2, 0.08];
  if (/^(compost|vermicompost|leaf-mould)/.test(id)) return [0.3, 0.2];
  if (id === 'wood-core-rotted') return [0.2, 0.08];
  if (id === 'roundwood-fresh') return [0.1, 0.05];
  if (id === 'wood-chips') return [0.25, 0.25];
  if (/^(straw|leaves|hay)/.test(id)) return [0.6, 0.6];
  if (kind === 'mulch') return [0.15, 0.15];
  if (/^(sand|gravel|perlite|pumice|vermiculite)/.test(id)) return [0, 0];
  return null;
}

/** Swell from bank to loose, share: clay 35 %, loam 25 %, topsoil with roots 45 %, sand 12 % (memory). */
function swellOf(id: string): number | null {
  if (id === 'soil-clay-loam') return 0.35;
  if (id === 'soil-sandy-loam') return 0.12;
  if (/^soil/.test(id)) return 0.25;
  return null;
}

const animalOriginOf = (id: string): MaterialRow['animalOrigin'] => {
  if (raw.test(id)) return 'raw';
  if (/^compost-(poultry|dairy|leaf-cannery)/.test(id)) return 'composted';
  if (/^(manure-.*-dried|blood|feather|bone|fish|hoof|crab)/.test(id)) return 'treated';
  return 'none';
};

/** The shipped soil, fill and amendment materials as rows of a farm file. */
export function readMaterialLibrary(resources: string): MaterialRow[] {
  return csvRecords(resources, 'materials.csv').map((record) => {
    const id = record['id'] ?? '';
    const kind = record['kind'] ?? '';
    const number = (column: string, factor = 1) => {
      const text = record[column] ?? '';
      return text === '' ? null : Number((Number(text) * factor).toPrecision(12));
    };
    const settling = settlingOf(id, kind);
    const volume = kind === 'bulk-mix' || kind === 'mulch' || kind === 'wood' || kind === 'other' || byVolume.test(id);
    return {
      id,
      name: record['name'] ?? '',
      kind,
      baseUnit: volume ? 'L' : 'kg',
      dryDensity_kg_per_m3: number('bulk_density_kg_m3_dry'),
      moistDensity_kg_per_m3: number('bulk_density_kg_m3_moist'),
      moistureShare: number('moisture_pct', PERCENT),
      swellShare: swellOf(id),
      settlingFirstShare: settling?.[0] ?? null,
      settlingLaterShare: settling?.[1] ?? null,
      voidShare: id === 'gravel-pea' ? 0.38 : null,
      nShare: number('N_pct', PERCENT),
      p2o5Share: number('P2O5_pct', PERCENT),
      k2oShare: number('K2O_pct', PERCENT),
      caShare: number('Ca_pct', PERCENT),
      firstYearNShare: number('first_year_N_availability_fraction'),
      cToN: number('C_to_N'),
      neutralisingShare: number('CCE_pct', PERCENT),
      organicUse: manufactured.test(id) ? 'not-allowed' : 'unknown',
      animalOrigin: animalOriginOf(id),
      dusty: dusty.test(id),
      own: id === 'soil-own-loose',
      source: `${record['source'] ?? ''} [${record['status'] ?? ''}]`,
      notes: record['notes'] ?? '',
    };
  });
}
