import type { FarmDb } from '../../db/file/open-farm.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { needsOfSeason } from './needs-of-season.ts';

/** The first day from today on for which something is wanted; `null` where nothing is. */
export function nearestWanted(db: FarmDb, seasonId: string, today: IsoDate): IsoDate | null {
  const days = needsOfSeason(db, seasonId, today)
    .needs.map((need) => need.wanted)
    .filter((day) => day >= today)
    .sort();
  return days[0] ?? null;
}
