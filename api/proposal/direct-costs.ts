import type { FarmDb } from '../../db/file/open-farm.ts';
import { seasonsOfFarm } from '../../db/repositories/seasons.ts';
import { NOBODY } from '../../planner/costs/earning-rows.ts';
import { earningView } from '../costs/earning-view.ts';
import { seasonLedger } from '../costs/season-ledger.ts';

/**
 * What seed, inputs and packing of each crop came to for each m2 in the latest season that is over, from Costs. Wages are not in it: the proposal
 * counts hours by themselves. Empty while no season is over.
 */
export function directCosts_minor_per_m2(db: FarmDb, startDate: string): ReadonlyMap<string, number> {
  const before = seasonsOfFarm(db).findLast((season) => season.state !== 'planning' && season.startDate < startDate);
  if (before === undefined) return new Map();
  return new Map(
    earningView(seasonLedger(db, before.id), 'crop', new Map()).flatMap((row) =>
      row.id === NOBODY || row.area_m2 <= 0
        ? []
        : [[row.id, Math.max(0, row.direct_minor - row.labour_minor) / row.area_m2] as const],
    ),
  );
}
