import type { FarmDb } from '../../db/file/open-farm.ts';
import { cropsOfFarm, cropValues } from '../../db/repositories/crops.ts';
import { type KnownFacts, knownFacts, numberOf } from '../../planner/crops/crop-facts.ts';
import { type CropWater, cropWater } from '../../planner/water/crop-water.ts';

export type CropOfFarm = { readonly name: string; readonly water: CropWater };

/** Water figures of the farm's crops, the grower's own over the library's. */
export function cropWaters(db: FarmDb): ReadonlyMap<string, CropOfFarm> {
  const facts = Map.groupBy(cropValues(db), (fact) => fact.cropId);
  return new Map(
    cropsOfFarm(db).map((crop) => [
      crop.id,
      { name: crop.name, water: waterOf(crop.id, crop.cropGroup, knownFacts(facts.get(crop.id) ?? [], null)) },
    ]),
  );
}

function waterOf(cropId: string, group: string, facts: KnownFacts): CropWater {
  const stages = (['stage_ini_days', 'stage_dev_days', 'stage_mid_days', 'stage_late_days'] as const).map((name) =>
    numberOf(facts, name),
  );
  const [a, b, c, d] = stages;
  return cropWater({
    cropId,
    group,
    kcIni: numberOf(facts, 'kc_ini'),
    kcMid: numberOf(facts, 'kc_mid'),
    kcEnd: numberOf(facts, 'kc_end'),
    stages_days: a != null && b != null && c != null && d != null && a + b + c + d > 0 ? [a, b, c, d] : null,
    rootDepth_m: numberOf(facts, 'root_depth_m'),
    height_m: numberOf(facts, 'height_m'),
    p: numberOf(facts, 'depletion_share'),
    saltThreshold_dS_per_m: numberOf(facts, 'salinity_threshold_dS_per_m'),
    saltSlope_share_per_dS_per_m: numberOf(facts, 'salinity_slope_share_per_dS_per_m'),
  });
}
