import { dayNumber } from '../../calendar.ts';
import { harvestByWeek } from '../harvest-spread.ts';
import type { PlantingOption } from '../optimise/instance.ts';
import type { PlantingDates } from '../planting-dates.ts';
import { type CropFigures, plannedYield_per_m2 } from './crop-figures.ts';
import { mondayOfWeek, type WeekGrid, weekFrom, weekOfDay } from './week-grid.ts';

/** Water in L that a square metre of a crop uses in the week that begins on a Monday (a day number) of its time in the bed. */
export type WaterUse = (cropId: string, inBed_day: number, free_day: number, monday_day: number) => number;

const WEEK_DAYS = 7;

/**
 * A planting of a crop on given dates, as weeks of the season: harvest spread over its window, hours, water and bench space
 * per square metre. Weeks begin on Mondays; the bed counts as taken from the Monday before it goes in to the Monday after
 * it is free, so that nothing proposed can overlap by days.
 */
export function optionOfDates(
  crop: CropFigures,
  dates: Pick<PlantingDates, 'sow' | 'inBed' | 'firstHarvest' | 'lastHarvest' | 'free'>,
  grid: WeekGrid,
  caution: number,
  waterUse: WaterUse,
): PlantingOption {
  const inBed_day = dayNumber(dates.inBed);
  const free_day = dayNumber(dates.free);
  const startWeek = weekOfDay(grid, inBed_day);
  const length = Math.max(1, weekFrom(grid, free_day) - startWeek);
  const typical = plannedYield_per_m2(crop.yield_per_m2, caution);
  const harvest = new Array<number>(length).fill(0);
  for (const week of harvestByWeek({
    firstHarvest: dates.firstHarvest,
    lastHarvest: dates.lastHarvest,
    form: crop.form,
    total: { low: typical, typical, high: typical },
  })) {
    const at = Math.min(length - 1, weekOfDay(grid, dayNumber(week.week)) - startWeek);
    harvest[at] = (harvest[at] ?? 0) + week.typical;
  }
  const { hours } = crop;
  const labour = harvest.map(
    (amount, at) =>
      hours.care_h_per_m2_week +
      hours.harvest_h_per_unit * amount +
      (at === 0 ? hours.plant_h_per_m2 : 0) +
      (at === length - 1 ? hours.clear_h_per_m2 : 0),
  );
  // a plan at hand may have dates out of order: the season's check says so, and here it is raised for no time
  const raised_weeks = dates.sow === null ? 0 : Math.max(0, Math.round((inBed_day - dayNumber(dates.sow)) / WEEK_DAYS));
  return {
    startWeek,
    harvest_per_m2: harvest,
    labour_h_per_m2: labour,
    water_L_per_m2: harvest.map((_, at) => waterUse(crop.needs.cropId, inBed_day, free_day, mondayOfWeek(grid, startWeek + at))),
    bench_m2_per_m2: crop.bench_m2_per_m2 > 0 ? new Array<number>(raised_weeks).fill(crop.bench_m2_per_m2) : [],
    cost_minor_per_m2: crop.direct_minor_per_m2,
  };
}

/** The same option with what lies outside the season cut off; null where nothing is left. For plantings that stand anyway. */
export function withinSeason(option: PlantingOption, weeks: number): PlantingOption | null {
  const from = Math.max(0, -option.startWeek);
  const to = Math.min(option.harvest_per_m2.length, weeks - option.startWeek);
  if (to <= from) return null;
  const cut = (list: readonly number[]) => list.slice(from, to);
  return {
    ...option,
    startWeek: option.startWeek + from,
    harvest_per_m2: cut(option.harvest_per_m2),
    labour_h_per_m2: cut(option.labour_h_per_m2),
    water_L_per_m2: cut(option.water_L_per_m2),
  };
}
