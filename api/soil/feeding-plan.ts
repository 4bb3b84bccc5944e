import type { FarmDb } from '../../db/file/open-farm.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { type FeedingPlanRow, feedingMaterials, feedingPlanOf, seasonsOfFarm } from '../../db/repositories/feeding.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { Refusal } from '../errors.ts';

export type FeedingPlan = Omit<FeedingPlanRow, 'id'>;

/** What growers commonly have at hand, where nothing was chosen: the library's meals, mineral potash and phosphate. */
const usual = [
  'feather-meal',
  'soybean-meal',
  'bone-meal-steamed',
  'rock-phosphate',
  'potassium-sulfate',
  'langbeinite',
  'kelp-meal',
];

/** The season's wishes for feeding, or those to start from. */
export function feedingPlanFor(db: FarmDb, seasonId: string): FeedingPlan {
  const kept = feedingPlanOf(db, seasonId);
  if (kept !== undefined) {
    const { id: _, ...plan } = kept;
    return plan;
  }
  const materials = new Set(feedingMaterials(db).map((each) => each.id));
  const first = (ids: readonly string[]) => ids.find((id) => materials.has(id)) ?? null;
  return {
    seasonId,
    needBy: 'soil-test',
    tolerance_share: 0.15,
    materialIds: usual.filter((id) => materials.has(id)),
    scoop_L: 0.25,
    splits: 1,
    splitWeeks: 4,
    firstDate: null,
    targetPh: 6.5,
    limeMaterialId: first(['lime-pelleted', 'lime-dolomitic', 'lime-calcitic']),
    sulfurMaterialId: first(['sulfur-elemental']),
    organicOnly: farmOfFile(db)?.organicOnly ?? false,
    waterNitrateN_mg_per_L: null,
    water_L_per_m2: null,
  };
}

/** The season asked for, or the one to be planned: running or planned around today. @throws Refusal when there is none */
export function seasonOf(db: FarmDb, seasonId: string | undefined, today: IsoDate) {
  const seasons = seasonsOfFarm(db);
  const found =
    seasonId === undefined
      ? (seasons.find((each) => each.state === 'planning') ?? seasons.find((each) => each.endDate >= today) ?? seasons.at(-1))
      : seasons.find((each) => each.id === seasonId);
  if (found === undefined)
    throw new Refusal({ code: 'not-found', what: 'season' }, 'There is no season yet. Make one in Season first.');
  return found;
}
