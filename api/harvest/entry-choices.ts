import type { FarmDb } from '../../db/file/open-farm.ts';
import {
  bedsOfPlantings,
  lastHarvest,
  plantingsToHarvest,
  recordHarvests,
  saleUnitsOfFarm,
} from '../../db/repositories/harvests.ts';
import { outletsOfFarm } from '../../db/repositories/sales.ts';
import { addDays, type IsoDate } from '../../planner/calendar.ts';
import { listedUnits } from './listed-units.ts';

/** A unit a crop can be entered in: what one weighs, where that is known, and whose word that is. */
export type UnitChoice = {
  readonly unit: string;
  readonly net_kg: number | null;
  readonly source: string;
  readonly listed: boolean;
};

const LATE_DAYS = 21;

/** Everything that the entry line chooses from, for a day: plantings that stand or stood lately, outlets, units, the last entry. */
export function entryChoices(db: FarmDb, date: IsoDate, now: string, resources: string) {
  const beds = Map.groupBy(bedsOfPlantings(db, addDays(date, -LATE_DAYS), date), (row) => row.plantingId);
  const own = saleUnitsOfFarm(db);
  const listed = Map.groupBy(listedUnits(resources), (unit) => unit.cropId);
  const records = recordHarvests(db);
  const plantings = plantingsToHarvest(db, addDays(date, -LATE_DAYS), date)
    .filter((each) => each.state !== 'failed')
    .map((each) => ({
      ...each,
      beds: (beds.get(each.plantingId) ?? []).map(({ bedId, code }) => ({ bedId, code })),
      inWindow: each.firstHarvest <= date && date <= each.lastHarvest,
      record: records.get(`${each.cropId} ${each.yieldUnit}`) ?? null,
    }));
  const crops = new Set(plantings.map((each) => each.cropId));
  const units = Object.fromEntries(
    [...crops].map((cropId): [string, readonly UnitChoice[]] => {
      const yieldUnits = plantings.filter((each) => each.cropId === cropId).map((each) => each.yieldUnit);
      const mine = own.filter((each) => each.cropId === cropId || each.cropId === null);
      const choices: UnitChoice[] = [
        ...mine.map((each) => ({ unit: each.unit, net_kg: each.net_kg, source: each.source, listed: false })),
        ...[...yieldUnits, 'kg', 'lb'].map((unit) => ({ unit, net_kg: null, source: '', listed: false })),
        ...(listed.get(cropId) ?? []).map((each) => ({
          unit: each.unit,
          net_kg: each.net_kg,
          source: each.source,
          listed: true,
        })),
      ];
      return [cropId, [...new Map(choices.toReversed().map((choice) => [choice.unit, choice])).values()].toReversed()];
    }),
  );
  const outlets = outletsOfFarm(db)
    .filter((each) => !each.retired)
    .map((each) => ({ outletId: each.id, name: each.name, kind: each.kind }));
  return { date, plantings, units, outlets, last: lastHarvest(db, now) ?? null };
}
