import type { FarmDb } from '../../db/file/open-farm.ts';
import type { FarmRow } from '../../db/repositories/farm.ts';
import { weatherOfStation } from '../../db/repositories/proposal-facts.ts';
import { dateOfYearDay, type IsoDate } from '../../planner/calendar.ts';
import { frostDays, frostYears } from '../../planner/climate/frost-dates.ts';
import { type FrostSide, frostDate } from '../../planner/climate/frost-quantiles.ts';
import { HARD_FREEZE_C, LIGHT_FREEZE_C } from '../../planner/crops/hardiness.ts';
import type { PlanRules } from '../../planner/season/plan.ts';

/** A freeze after (spring) or before (autumn) the day in one year of ten. Common practice, no source. */
const RISK = 0.1;

/** The frost dates a plan is held against: those entered by hand, else from the farm's weather record; null when neither is known. */
export function frostOfFarm(
  db: FarmDb,
  farm: FarmRow,
  year: number,
): Pick<PlanRules, 'lastFrost' | 'firstFrost' | 'firstHardFrost'> {
  const days =
    farm.stationId === null
      ? []
      : weatherOfStation(db, farm.stationId).days.map(({ date, tmin_C }) => ({ date: date as IsoDate, tmin_C }));
  const fromRecord = (side: FrostSide, threshold_C: number): IsoDate | null => {
    if (days.length === 0) return null;
    const { day } = frostDate(side, frostDays(frostYears(days, threshold_C), side), RISK);
    return day === null ? null : dateOfYearDay(year, Math.round(day));
  };
  const byHand = (monthDay: string | null): IsoDate | null => (monthDay === null ? null : (`${year}-${monthDay}` as IsoDate));
  return {
    lastFrost: byHand(farm.lastFrostLate ?? farm.lastFrostMedian) ?? fromRecord('spring', LIGHT_FREEZE_C),
    firstFrost: byHand(farm.firstFrostEarly ?? farm.firstFrostMedian) ?? fromRecord('fall', LIGHT_FREEZE_C),
    firstHardFrost: fromRecord('fall', HARD_FREEZE_C) ?? byHand(farm.firstFrostLate ?? farm.firstFrostMedian),
  };
}
