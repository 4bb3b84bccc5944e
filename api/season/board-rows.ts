import type { PlantingRecord } from '../../db/repositories/plantings.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import type { LoadedSeason } from './load-season.ts';

/** What the board shows of a planting beside its dates and places. */
export function boardRow(record: PlantingRecord) {
  return {
    plantingId: record.id,
    cropId: record.cropId,
    varietyId: record.varietyId,
    number: record.number,
    method: record.method,
    state: record.state,
    plants: record.plants,
    pinned: record.pinned,
    planned: {
      sow: record.sowDate,
      inBed: record.inBedDate,
      firstHarvest: record.firstHarvestDate,
      lastHarvest: record.lastHarvestDate,
      free: record.clearDate,
    },
    hasHappened: record.sownActual !== null || record.inBedActual !== null,
    yieldUnit: record.yieldUnit,
    yieldTypical: record.yieldTypical,
    revision: record.revision,
  };
}

/** The whole board: the plan as the checker reads it, and what is drawn beside. */
export function boardOf(loaded: LoadedSeason, today: IsoDate) {
  const { season, beds, plantings, rules, frost, records, loadedBeds } = loaded;
  const blocks = new Map(loadedBeds.map(({ block }) => [block.id, { blockId: block.id, code: block.code, name: block.name }]));
  return {
    season,
    today,
    beds,
    blocks: [...blocks.values()],
    plantings,
    rows: records.map(boardRow),
    rules,
    frost,
    families: [...new Set(loaded.shelf.crops.filter((crop) => !crop.hidden).map((crop) => crop.family))].sort(),
  };
}
