import type { FarmDb } from '../../db/file/open-farm.ts';
import { needChoices } from '../../db/repositories/stock.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { needsOfSeason } from './needs-of-season.ts';

/** For each material, the first day on which it is wanted, by the grower's choice before the computed day. */
export function wantedDays(db: FarmDb, seasonId: string, today: IsoDate): ReadonlyMap<string, IsoDate> {
  const choices = needChoices(db, seasonId);
  const days = new Map<string, IsoDate>();
  for (const need of needsOfSeason(db, seasonId, today).needs) {
    const choice = choices.get(need.key);
    if (choice?.left === true) continue;
    const wanted = (choice?.wantedDate ?? need.wanted) as IsoDate;
    const before = days.get(need.materialId);
    if (before === undefined || wanted < before) days.set(need.materialId, wanted);
  }
  return days;
}
