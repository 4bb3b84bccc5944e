import type { FarmDb } from '../../db/file/open-farm.ts';
import { demandOfSeason } from '../../db/repositories/demands.ts';
import { daysBetween, type IsoDate } from '../../planner/calendar.ts';
import { type Balance, balanceByWeek, type Expected, type Wanted } from '../../planner/season/demand.ts';
import { harvestByWeek, harvestForm } from '../../planner/season/harvest-spread.ts';
import type { LoadedSeason } from './load-season.ts';

/** What every planting is expected to give, by week. Plantings whose yield is not known are left out. */
export function expectedHarvest(loaded: LoadedSeason): readonly Expected[] {
  return loaded.records.flatMap((record, at): Expected[] => {
    const plan = loaded.plantings[at];
    if (record.yieldTypical === null || plan === undefined || record.state === 'failed') return [];
    const { firstHarvest, lastHarvest } = plan;
    return [
      {
        cropId: record.cropId,
        unit: record.yieldUnit,
        weeks: harvestByWeek({
          firstHarvest,
          lastHarvest,
          form: harvestForm(loaded.shelf.crop(record.cropId).cropGroup, daysBetween(firstHarvest, lastHarvest)),
          total: {
            low: record.yieldLow ?? record.yieldTypical,
            typical: record.yieldTypical,
            high: record.yieldHigh ?? record.yieldTypical,
          },
        }),
      },
    ];
  });
}

export function wantedOf(db: FarmDb, seasonId: string): readonly Wanted[] {
  return demandOfSeason(db, seasonId).map(({ demand }) => ({
    cropId: demand.cropId,
    unit: demand.unit,
    from: demand.fromDate as IsoDate,
    to: demand.toDate as IsoDate,
    perWeek: demand.amountPerWeek,
  }));
}

export const seasonBalance = (db: FarmDb, loaded: LoadedSeason): readonly Balance[] =>
  balanceByWeek(wantedOf(db, loaded.season.id), expectedHarvest(loaded));

/** Amounts short over the season, by crop: what a gap had best be filled with. */
export function stillWanted(db: FarmDb, loaded: LoadedSeason): ReadonlyMap<string, number> {
  const short = new Map<string, number>();
  for (const row of seasonBalance(db, loaded)) if (row.over < 0) short.set(row.cropId, (short.get(row.cropId) ?? 0) - row.over);
  return short;
}
