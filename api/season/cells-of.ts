import type { PlantingRecord } from '../../db/repositories/plantings.ts';
import { numberOf } from '../../planner/crops/crop-facts.ts';
import { seedNeed } from '../../planner/season/seed-need.ts';
import { type TrayNeed, trayNeed, usualTray } from '../../planner/season/trays.ts';
import type { LoadedSeason } from './load-season.ts';
import { OVERAGE_SHARE } from './new-plantings.ts';

/** Trays of a raised planting: from the cells written down, else from the seed it needs. Null when that is not known. */
export function traysOf(loaded: LoadedSeason, record: PlantingRecord): (TrayNeed & { readonly cellsPerTray: number }) | null {
  if (record.method !== 'transplant') return null;
  const facts = loaded.shelf.facts(record.cropId, record.varietyId);
  const germination_share = numberOf(facts, 'germination_share');
  const cells =
    record.cells ??
    (germination_share === null || record.plants === 0
      ? null
      : seedNeed({
          plants: record.plants,
          germination_share,
          emergence_share: 1,
          seedsPerHole: record.seedsPerHole,
          overage_share: OVERAGE_SHARE,
        }).stations);
  if (cells === null) return null;
  const cellsPerTray = numberOf(facts, 'cells_per_tray') ?? usualTray(record.cropId);
  return { cellsPerTray, ...trayNeed({ cells, cellsPerTray }) };
}
