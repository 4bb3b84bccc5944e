import type { FarmDb } from '../../db/file/open-farm.ts';
import { applicationsPlanned } from '../../db/repositories/applications.ts';
import { seasonOfId, seasonsOfFarm } from '../../db/repositories/seasons.ts';
import { type MaterialFacts, materialFacts, needsByHand, usedOfKinds } from '../../db/repositories/stock.ts';
import { addDays, type IsoDate } from '../../planner/calendar.ts';
import { mulchVolume_L } from '../../planner/orders/mulch-volume.ts';
import type { FarmNeed } from '../../planner/orders/needs.ts';
import { fillNeedsOfFarm } from '../beds/fill-needs-of-farm.ts';
import { type LoadedBed, loadBeds } from '../beds/load-beds.ts';
import { Refusal } from '../errors.ts';
import { bedPlanNeeds } from './bed-plan-needs.ts';
import { type Gathered, gathered, inBaseUnit, type OpenNeed } from './gathered.ts';
import { partNeeds } from './part-needs.ts';
import { seedNeeds } from './seed-needs.ts';

/** Mulch goes on some hundred days into the year, fill before the first plantings. Common practice, no source. */
const MULCH_AFTER_DAYS = 110;
const FILL_AFTER_DAYS = 45;

/** All that the farm needs for a season, each with its reason and the day it is wanted. @throws Refusal when the season is gone */
export function needsOfSeason(db: FarmDb, seasonId: string, today: IsoDate): Gathered {
  const season = seasonOfId(db, seasonId);
  if (season === undefined) throw new Refusal({ code: 'not-found', what: 'season' });
  const start = season.startDate as IsoDate;
  const end = season.endDate as IsoDate;
  const beds = loadBeds(db);
  const facts = materialFacts(db);
  const seeds = seedNeeds(db, seasonId);
  const { needs, open } = gathered([
    ...fillAndTopUp(db, facts, today, addDays(start, FILL_AFTER_DAYS), beds),
    ...bedPlanNeeds(db, facts, end),
    ...partNeeds(db, end),
    ...amendments(db, facts, end),
    ...mulches(facts, beds, addDays(start, MULCH_AFTER_DAYS)),
    ...seeds.needs,
    ...seeds.open,
    ...usedAgain(db, seasonId, start),
    ...byHand(db, seasonId, start),
  ]);
  return { needs: needs.filter((need) => need.amount > 0), open };
}

function byHand(db: FarmDb, seasonId: string, start: IsoDate): readonly FarmNeed[] {
  return needsByHand(db, seasonId).map((row) => ({
    key: row.id,
    source: 'hand',
    materialId: row.materialId,
    amount: row.amount ?? 0,
    reason: row.reason || 'Added by hand',
    wanted: (row.wantedDate ?? start) as IsoDate,
  }));
}

function fillAndTopUp(
  db: FarmDb,
  facts: MaterialFacts,
  today: IsoDate,
  wanted: IsoDate,
  beds: readonly LoadedBed[],
): readonly (FarmNeed | OpenNeed)[] {
  return fillNeedsOfFarm(db, today, beds)
    .filter((need) => !need.isOwn)
    .map((need) =>
      inBaseUnit(facts, {
        key: `${need.kind}:${need.bedId}:${need.materialId}`,
        source: need.kind === 'first-fill' ? 'fill' : 'top-up',
        materialId: need.materialId,
        loose_L: need.loose_L,
        reason: need.reason,
        wanted,
      }),
    );
}

/** Doses planned up to a day: what is for a later season is bought for that. */
function amendments(db: FarmDb, facts: MaterialFacts, until: IsoDate): readonly (FarmNeed | OpenNeed)[] {
  return applicationsPlanned(db)
    .filter((row) => row.application.date <= until)
    .map((row) =>
      inBaseUnit(facts, {
        key: `dose:${row.applicationBedId}`,
        source: 'amendment',
        materialId: row.material.id,
        mass_kg: row.amount_kg,
        reason: `Dose of ${row.code}${row.application.reason === '' ? '' : `: ${row.application.reason}`}`,
        wanted: row.application.date as IsoDate,
      }),
    );
}

function mulches(facts: MaterialFacts, beds: readonly LoadedBed[], wanted: IsoDate): readonly (FarmNeed | OpenNeed)[] {
  return beds.flatMap((bed) => {
    const { mulchMaterialId, mulchDepth_m } = bed.design;
    if (mulchMaterialId === null || mulchDepth_m === null || bed.figures === null) return [];
    return [
      inBaseUnit(facts, {
        key: `mulch:${bed.bed.id}`,
        source: 'mulch',
        materialId: mulchMaterialId,
        loose_L: mulchVolume_L(bed.figures.area_m2, mulchDepth_m),
        reason: `Mulch of ${bed.bed.code}`,
        wanted,
      }),
    ];
  });
}

/** As much packing and as many covers as the season before used. */
function usedAgain(db: FarmDb, seasonId: string, start: IsoDate): readonly FarmNeed[] {
  const seasons = seasonsOfFarm(db);
  const before = seasons[seasons.findIndex((each) => each.id === seasonId) - 1];
  if (before === undefined) return [];
  return usedOfKinds(db, ['packing', 'cover'], before.startDate, before.endDate).map((row) => ({
    key: `${row.kind}:${row.materialId}`,
    source: row.kind === 'cover' ? 'cover' : 'packing',
    materialId: row.materialId,
    amount: Math.ceil(row.amount),
    reason: `As much as ${before.name} used`,
    wanted: addDays(start, FILL_AFTER_DAYS),
  }));
}
