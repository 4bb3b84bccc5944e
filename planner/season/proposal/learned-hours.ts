import type { CropHours } from './crop-figures.ts';

/** A planting that was cleared, with the minutes written down for it and what it gave in the crop's unit. */
export type WorkedPlanting = {
  readonly area_m2: number;
  readonly weeks: number;
  readonly harvested: number;
  readonly minutes: readonly { readonly task: string; readonly minutes: number }[];
};

/** Hours where a farm has no records of a crop. Common practice, no source: the grower's own figures go before. */
export const USUAL_HOURS: CropHours = {
  plant_h_per_m2: 0.08,
  care_h_per_m2_week: 0.015,
  clear_h_per_m2: 0.05,
  harvest_h_per_unit: 0.05,
};

const MIN_PER_H = 60;
const planting: ReadonlySet<string> = new Set(['sow', 'set out', 'plant', 'transplant', 'pot on', 'prepare', 'bed preparation']);
const clearing: ReadonlySet<string> = new Set(['clear', 'clearing']);
const picking: ReadonlySet<string> = new Set(['harvest', 'pick', 'wash', 'pack']);

/**
 * Hours by area, by area and week, and by what is picked, from the farm's own records of a crop: sums of minutes over sums of
 * area, bed-weeks and harvest. A part without any minutes on record is usual, not zero.
 * Source: definition of a ratio of sums.
 */
export function learnedHours(plantings: readonly WorkedPlanting[]): CropHours | null {
  const worked = plantings.filter(({ minutes }) => minutes.length > 0);
  if (worked.length === 0) return null;
  const sum = (pick: (planting: WorkedPlanting) => number) => worked.reduce((total, each) => total + pick(each), 0);
  const minutes = (of: (task: string) => boolean) =>
    sum((each) => each.minutes.reduce((total, { task, minutes: m }) => (of(task) ? total + m : total), 0));
  const area_m2 = sum((each) => each.area_m2);
  const bedWeeks = sum((each) => each.area_m2 * each.weeks);
  const harvested = sum((each) => each.harvested);
  const over = (spent_min: number, by: number, usual: number) => (spent_min > 0 && by > 0 ? spent_min / MIN_PER_H / by : usual);
  const other = (task: string) => !planting.has(task) && !clearing.has(task) && !picking.has(task);
  return {
    plant_h_per_m2: over(
      minutes((task) => planting.has(task)),
      area_m2,
      USUAL_HOURS.plant_h_per_m2,
    ),
    care_h_per_m2_week: over(minutes(other), bedWeeks, USUAL_HOURS.care_h_per_m2_week),
    clear_h_per_m2: over(
      minutes((task) => clearing.has(task)),
      area_m2,
      USUAL_HOURS.clear_h_per_m2,
    ),
    harvest_h_per_unit: over(
      minutes((task) => picking.has(task)),
      harvested,
      USUAL_HOURS.harvest_h_per_unit,
    ),
  };
}
