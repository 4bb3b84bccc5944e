import type { FarmDb } from '../../db/file/open-farm.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { allPlantings } from '../../db/repositories/plantings.ts';
import { daysBetween, type IsoDate } from '../../planner/calendar.ts';
import type { KnownFacts } from '../../planner/crops/crop-facts.ts';
import { heatOfDay } from '../../planner/season/heat.ts';
import { calibratedHeat_C_days } from '../../planner/season/learned.ts';
import { farmTemperatures } from './farm-frost.ts';
import { heatRuleOf } from './season-clocks.ts';

export type CalibratedHeat = { readonly mean_C_days: number; readonly plantings: number };

/**
 * A crop's heat sum to first harvest from the farm's own plantings and its weather record. A planting counts only when every
 * day of it is on record. Null when the base temperature is not known or no planting can be counted.
 */
export function calibrateHeat(db: FarmDb, cropId: string, facts: KnownFacts): CalibratedHeat | null {
  const farm = farmOfFile(db);
  const rule = heatRuleOf(facts);
  if (farm === undefined || rule === null) return null;
  const days = farmTemperatures(db, farm);
  const sums = allPlantings(db).flatMap((record): number[] => {
    const { inBedActual: from, firstHarvestActual: to } = record;
    if (record.cropId !== cropId || record.state === 'failed' || from === null || to === null || to <= from) return [];
    const own = days.filter((day) => day.date >= from && day.date < to).map((day) => heatOfDay(day, rule));
    if (own.length < daysBetween(from as IsoDate, to as IsoDate) || own.some((heat) => heat === null)) return [];
    return [own.reduce<number>((sum, heat) => sum + (heat ?? 0), 0)];
  });
  return sums.length === 0 ? null : { mean_C_days: calibratedHeat_C_days(sums), plantings: sums.length };
}
