import { derivedRows } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { seasonsOfFarm } from '../../db/repositories/seasons.ts';
import { usedByCrop } from '../costs/used-by-crop.ts';

/**
 * What seed, inputs and packing of each crop came to for each m2 in the latest season that is over, from Costs. Wages are not in it: the proposal
 * counts hours by themselves. Empty while no season is over.
 */
export function directCosts_minor_per_m2(db: FarmDb, startDate: string): ReadonlyMap<string, number> {
  const before = seasonsOfFarm(db).findLast((season) => season.state !== 'planning' && season.startDate < startDate);
  if (before === undefined) return new Map();
  const costs = derivedRows(db, `direct costs ${before.id}`, () => {
    const { area_m2, cost_minor } = usedByCrop(db, before.id);
    return [...area_m2].flatMap(([cropId, area]) =>
      area <= 0 ? [] : [{ cropId, direct_minor_per_m2: Math.max(0, cost_minor.get(cropId) ?? 0) / area }],
    );
  });
  return new Map(costs.map(({ cropId, direct_minor_per_m2 }) => [cropId, direct_minor_per_m2]));
}
