import { derived } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { type CropRecord, type CropValueRecord, cropsOfFarm, cropValues } from '../../db/repositories/crops.ts';
import { type KnownFacts, knownFacts, numberOf, wordsOf } from '../../planner/crops/crop-facts.ts';
import { isHardinessClass } from '../../planner/crops/hardiness.ts';
import type { CropNeeds } from '../../planner/season/plan.ts';
import { Refusal } from '../errors.ts';

/** All crops of a farm with their facts. */
export type CropShelf = {
  readonly crops: readonly CropRecord[];
  readonly crop: (cropId: string) => CropRecord;
  readonly facts: (cropId: string, varietyId?: string | null) => KnownFacts;
  readonly needs: (cropId: string, varietyId?: string | null) => CropNeeds;
};

export const cropShelf = (db: FarmDb): CropShelf => derived(db, 'crop shelf', () => shelfOf(db));

function shelfOf(db: FarmDb): CropShelf {
  const crops = cropsOfFarm(db);
  const byId = new Map(crops.map((crop) => [crop.id, crop]));
  const values = Map.groupBy(cropValues(db), (value: CropValueRecord) => value.cropId);
  const known = new Map<string, KnownFacts>();
  const crop = (cropId: string): CropRecord => {
    const found = byId.get(cropId);
    if (found === undefined) throw new Refusal({ code: 'not-found', what: 'crop' });
    return found;
  };
  const facts = (cropId: string, varietyId: string | null = null): KnownFacts => {
    const key = `${cropId} ${varietyId ?? ''}`;
    const present = known.get(key) ?? knownFacts(values.get(cropId) ?? [], varietyId);
    known.set(key, present);
    return present;
  };
  return {
    crops,
    crop,
    facts,
    needs(cropId, varietyId = null) {
      const { name, family } = crop(cropId);
      const found = facts(cropId, varietyId);
      const hardiness = wordsOf(found, 'frost_tolerance') ?? '';
      return {
        cropId,
        cropName: name,
        family,
        soilDepth_m: numberOf(found, 'min_soil_depth_m'),
        needsTrellis: numberOf(found, 'trellis') === 1,
        bearsShade: wordsOf(found, 'shade_tolerance') === 'light-shade',
        hardiness: isHardinessClass(hardiness) ? hardiness : null,
      };
    },
  };
}
