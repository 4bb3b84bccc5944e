import type { FarmDb } from '../../db/file/open-farm.ts';
import { dailyExtremes, stationName } from '../../db/repositories/demands.ts';
import type { FarmRow } from '../../db/repositories/farm.ts';
import { addDays, dateOfYearDay, dayOfYear, type IsoDate } from '../../planner/calendar.ts';
import { frostDays, frostYears } from '../../planner/climate/frost-dates.ts';
import { frostDate } from '../../planner/climate/frost-quantiles.ts';
import { HARD_FREEZE_C, LIGHT_FREEZE_C } from '../../planner/crops/hardiness.ts';
import type { TemperatureDay } from '../../planner/season/heat-record.ts';
import { frostAtRisk } from '../../planner/season/manual-frost.ts';

/** Frost dates of a season's year at a chance, and where they come from. */
export type FarmFrost = {
  readonly lastFrost: IsoDate | null;
  readonly firstFrost: IsoDate | null;
  readonly firstHardFrost: IsoDate | null;
  readonly from: 'weather-record' | 'entered' | 'not-known';
  readonly years: number;
  readonly stationName: string | null;
};

/** Daily extremes of the farm's own station; none when no station is chosen. */
export function farmTemperatures(db: FarmDb, farm: FarmRow): readonly TemperatureDay[] {
  return farm.stationId === null ? [] : dailyExtremes(db, farm.stationId).map((day) => ({ ...day, date: day.date as IsoDate }));
}

/** A season's frost dates: from the record where there is one, else from what was entered by hand. */
export function farmFrost(
  db: FarmDb,
  farm: FarmRow,
  temperatures: readonly TemperatureDay[],
  year: number,
  risk: number,
): FarmFrost {
  const light = frostYears(temperatures, LIGHT_FREEZE_C);
  if (light.length > 0) {
    const hard = frostYears(temperatures, HARD_FREEZE_C);
    const at = (side: 'spring' | 'fall', years: typeof light): IsoDate | null => {
      const day = frostDate(side, frostDays(years, side), risk).day;
      return day === null ? null : dateOfYearDay(year, Math.round(day));
    };
    return {
      lastFrost: at('spring', light),
      firstFrost: at('fall', light),
      firstHardFrost: at('fall', hard),
      from: 'weather-record',
      years: light.length,
      stationName: farm.stationId === null ? null : (stationName(db, farm.stationId) ?? null),
    };
  }
  const entered = (monthDay: string | null): number | null =>
    monthDay === null ? null : dayOfYear(`${year}-${monthDay}` as IsoDate);
  const spring = frostAtRisk(
    'spring',
    { early: entered(farm.lastFrostEarly), median: entered(farm.lastFrostMedian), late: entered(farm.lastFrostLate) },
    risk,
  );
  const fall = frostAtRisk(
    'fall',
    { early: entered(farm.firstFrostEarly), median: entered(farm.firstFrostMedian), late: entered(farm.firstFrostLate) },
    risk,
  );
  const date = (day: number | null): IsoDate | null =>
    day === null ? null : addDays(`${year}-01-01` as IsoDate, Math.round(day) - 1);
  return {
    lastFrost: date(spring),
    firstFrost: date(fall),
    firstHardFrost: null,
    from: spring === null && fall === null ? 'not-known' : 'entered',
    years: 0,
    stationName: null,
  };
}
