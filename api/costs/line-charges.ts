import type { FarmDb } from '../../db/file/open-farm.ts';
import { linesForCost, waterBetween } from '../../db/repositories/cost-facts.ts';
import type { FarmRow } from '../../db/repositories/farm.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { energyCost_minor } from '../../planner/costs/energy-cost.ts';
import { lineHours_h } from '../../planner/costs/line-hours.ts';
import type { Charge, ChargeTarget } from '../../planner/costs/spread-charges.ts';
import { roundMoney } from '../../planner/money.ts';
import { convert } from '../../planner/units/convert.ts';
import type { LinePartCost } from './line-part-costs.ts';

/**
 * What the water lines cost in a season: water as it was logged, power by their timers, and their parts over their years. What is a
 * line's is shared among the beds that it feeds by the water each is to get of it.
 */
export function lineCharges(
  db: FarmDb,
  farm: FarmRow,
  season: { readonly start: IsoDate; readonly end: IsoDate },
  fed: FedBeds,
  parts: readonly LinePartCost[],
): readonly Charge[] {
  const served = (lineId: string): ChargeTarget => ({ to: 'beds', weights: fed.get(lineId) ?? [] });
  const water = waterBetween(db, season.start, season.end).map(
    (row): Charge => ({
      kind: 'water',
      amount_minor: roundMoney(convert(row.volume_L, 'L', 'm3') * farm.water_minor_per_m3),
      target:
        row.bedId !== null
          ? { to: 'bed', bedId: row.bedId }
          : row.lineId !== null
            ? served(row.lineId)
            : { to: 'all', key: 'bed-days' },
    }),
  );
  const power = linesForCost(db).map((line): Charge => {
    const hours_h = lineHours_h(line.timers, season.start, season.end);
    return {
      kind: 'power',
      amount_minor: roundMoney(energyCost_minor(line.power_W, hours_h, farm.electricity_minor_per_kWh)),
      target: served(line.lineId),
    };
  });
  const lasting = [...Map.groupBy(parts, (part) => part.lineId)].map(
    ([lineId, of]): Charge => ({
      kind: 'line-parts',
      amount_minor: of.reduce((sum, part) => sum + part.cost_minor, 0),
      target: served(lineId),
    }),
  );
  return [...water, ...power, ...lasting];
}

/** The beds that each line feeds, with the water each is to get of it, in proportion. */
export type FedBeds = ReadonlyMap<string, readonly { readonly bedId: string; readonly weight: number }[]>;

/** The beds fed by each line, of those that stand in a season. */
export function fedBeds(db: FarmDb, standing: ReadonlySet<string>): FedBeds {
  return new Map(
    linesForCost(db).map((line) => [
      line.lineId,
      line.outlets.flatMap(({ bedId, want }) => (bedId === null || !standing.has(bedId) ? [] : [{ bedId, weight: want }])),
    ]),
  );
}
