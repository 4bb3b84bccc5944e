import type { FarmRow } from '../../db/repositories/farm.ts';
import { massOf_kg } from '../../planner/beds/density.ts';
import { loads, tripsFor } from '../../planner/soil/loads.ts';
import { bankFromLoose } from '../../planner/soil/swell.ts';
import type { CoveredBedNeed } from './fill-needs-of-farm.ts';

/**
 * What is wanted of each material over all beds: from stock, to get, how heavy as handled, how many loads of the farm's
 * vehicle and barrow, and for own soil how much to dig from the bank.
 */
export function needsByMaterial(
  needs: readonly CoveredBedNeed[],
  farm: Pick<FarmRow, 'barrow_L' | 'vehicle_L' | 'vehicle_kg'>,
  moistDensity: ReadonlyMap<string, number>,
) {
  return [...Map.groupBy(needs, (need) => need.materialId)].map(([materialId, rows]) => {
    const sum = (read: (need: CoveredBedNeed) => number): number => rows.reduce((all, need) => all + read(need), 0);
    const [first] = rows;
    const wanted_L = sum((need) => need.wanted_L);
    const density = moistDensity.get(materialId) ?? null;
    return {
      materialId: materialId as string,
      material: first?.material ?? '',
      beds: new Set(rows.map((need) => need.bedId)).size,
      loose_L: sum((need) => need.loose_L),
      fromStock_L: sum((need) => need.fromStock_L),
      wanted_L,
      moist_kg: density === null ? null : massOf_kg(wanted_L, density),
      barrows: tripsFor(
        sum((need) => need.loose_L),
        farm.barrow_L,
      ),
      vehicleLoads: vehicleLoads(wanted_L, density, farm),
      dig_L: first?.isOwn === true && first.swellShare !== null ? bankFromLoose(wanted_L, first.swellShare) : null,
    };
  });
}

function vehicleLoads(
  volume_L: number,
  density: number | null,
  { vehicle_L, vehicle_kg }: Pick<FarmRow, 'vehicle_L' | 'vehicle_kg'>,
): number | null {
  if (vehicle_L === null || volume_L === 0) return null;
  if (density === null) return tripsFor(volume_L, vehicle_L);
  return loads({
    volume_L,
    density_kg_per_m3: density,
    box_L: vehicle_L,
    ...(vehicle_kg === null ? {} : { payload_kg: vehicle_kg }),
  }).loads;
}
