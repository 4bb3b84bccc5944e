import { derived } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import type { PlantingRecord } from '../../db/repositories/plantings.ts';
import {
  clearedPlantings,
  demandOfSeason,
  harvestByPlanting,
  minutesByPlanting,
  plantingsBetween,
  saleUnits,
  sharesOfBeds,
  spansBetween,
} from '../../db/repositories/proposal-facts.ts';
import { type IsoDate, mondayOf } from '../../planner/calendar.ts';
import type { Method } from '../../planner/season/maturity.ts';
import { type BuiltSeason, buildInstance } from '../../planner/season/proposal/build-instance.ts';
import type { FarmSeason, PresentPlanting, SeasonBed } from '../../planner/season/proposal/farm-season.ts';
import type { Ctx } from '../procedure.ts';
import type { CropShelf } from '../season/crop-shelf.ts';
import { type LoadedSeason, loadSeason } from '../season/load-season.ts';
import { type CropCounted, cropFigures } from './crop-figures-of.ts';
import { directCosts_minor_per_m2 } from './direct-costs.ts';
import { type OwnFigures, rememberedFigures } from './own-figures.ts';
import { waterOfFarm } from './water-of-farm.ts';

type Asked = Pick<Ctx, 'db' | 'today'>;

export type LoadedProposal = {
  readonly farm: FarmSeason;
  readonly loaded: LoadedSeason;
  readonly own: OwnFigures;
  readonly counted: readonly CropCounted[];
  readonly leftOut: readonly { readonly cropId: string; readonly name: string; readonly because: string }[];
  readonly notes: readonly string[];
};

/** Everything a proposal for a season (or the newest) rests on, as plain data and figures. @throws Refusal when the season is gone */
export const loadFarmSeason = (ctx: Asked, seasonId: string | null): LoadedProposal =>
  derived(ctx.db, `proposal ${seasonId ?? ''} ${ctx.today}`, () => farmSeasonLoaded(ctx, seasonId));

/** The loaded season as the instance to be optimised. */
export const builtSeason = (ctx: Asked, proposal: LoadedProposal): BuiltSeason =>
  derived(ctx.db, `proposal built ${proposal.loaded.season.id} ${ctx.today}`, () => buildInstance(proposal.farm), [proposal]);

function farmSeasonLoaded(ctx: Asked, seasonId: string | null): LoadedProposal {
  const { db, today } = ctx;
  const loaded = loadSeason(db, seasonId);
  const { season, rules, shelf, clocks, farm: farmRow } = loaded;
  const own = rememberedFigures(ctx);
  const plantings = presentPlantings(db, loaded, today);
  const wanted = demandOfSeason(db, season.id);
  const records = {
    cleared: derived(db, `proposal: cleared ${today}`, () => clearedPlantings(db, today)),
    harvests: derived(db, 'proposal: harvests', () => Map.groupBy(harvestByPlanting(db), (row) => row.plantingId)),
    minutes: derived(db, 'proposal: minutes', () => Map.groupBy(minutesByPlanting(db), (row) => row.plantingId ?? '')),
    units: saleUnits(db),
    area_m2: new Map(loaded.beds.map((bed) => [bed.id, bed.area_m2])),
    direct_minor_per_m2: directCosts_minor_per_m2(db, season.startDate),
  };
  const methods = new Map<string, Method>(
    [...records.cleared, ...loaded.records].map((row) => [row.cropId, row.method] as const),
  );
  const counted: CropCounted[] = [];
  const leftOut: { cropId: string; name: string; because: string }[] = [];
  const asked = new Set([...wanted.map(({ cropId }) => cropId), ...plantings.map(({ crop }) => crop.cropId)]);
  for (const cropId of [...asked].sort()) {
    const found = cropFigures(shelf, cropId, wanted, records, own.crops[cropId], methods.get(cropId) ?? null);
    if ('because' in found) leftOut.push({ cropId, name: shelf.crop(cropId).name, because: found.because });
    else counted.push(found);
  }
  const water = waterOfFarm(db, farmRow, shelf, own);
  return {
    loaded,
    own,
    counted,
    leftOut,
    notes: water.notes,
    farm: {
      rules,
      today,
      beds: seasonBeds(db, loaded, water.zoneOfBed, water.zoneNames.length - 1),
      plantings,
      crops: counted.map(({ figures }) => figures),
      clock: clocks.byLight,
      waterUse: water.use,
      zoneNames: water.zoneNames,
      wage_minor_per_h: farmRow.wage_minor_per_h,
      labour_h_per_week: own.labour_h_per_week ?? season.labour_h_per_week ?? Infinity,
      overtimeMost_h: own.overtime_h_per_week,
      overtimePremium_minor_per_h: farmRow.wage_minor_per_h * own.overtimePremium_share,
      water_L_per_week: water.limit_L_per_week,
      bench_m2: season.benchArea_m2 ?? Infinity,
      mostCrops: own.mostCrops,
      caution: own.caution,
    },
  };
}

/** Only what is planned, not pinned and not begun may be changed. */
const mayChange = (record: PlantingRecord, today: IsoDate): boolean =>
  record.state === 'planned' &&
  !record.pinned &&
  record.inBedDate >= today &&
  record.sownActual === null &&
  record.inBedActual === null;

/** The season's plan as it is, with what other seasons still have standing in its beds. */
function presentPlantings(
  db: FarmDb,
  { season, rules, records, plantings, shelf }: LoadedSeason,
  today: IsoDate,
): PresentPlanting[] {
  const recordOf = new Map(records.map((record) => [record.id, record]));
  const own = plantings.flatMap((planting): PresentPlanting[] => {
    const record = recordOf.get(planting.id);
    return record === undefined || record.state === 'failed' ? [] : [{ ...planting, isFree: mayChange(record, today) }];
  });
  return [...own, ...fromOtherSeasons(db, season.id, mondayOf(rules.start), rules.end, shelf)];
}

function fromOtherSeasons(db: FarmDb, seasonId: string, start: IsoDate, end: IsoDate, shelf: CropShelf): PresentPlanting[] {
  const { plantings, spans } = derived(db, `proposal: between ${start} ${end}`, () => ({
    plantings: plantingsBetween(db, start, end),
    spans: Map.groupBy(spansBetween(db, start, end), (span) => span.plantingId),
  }));
  return plantings
    .filter((row) => row.seasonId !== seasonId)
    .map((row) => ({
      id: row.id,
      crop: shelf.needs(row.cropId, row.varietyId),
      raised: row.method === 'transplant',
      sow: row.sowDate as IsoDate | null,
      inBed: (row.inBedActual ?? row.inBedDate) as IsoDate,
      firstHarvest: row.firstHarvestDate as IsoDate,
      lastHarvest: row.lastHarvestDate as IsoDate,
      free: (row.clearedActual ?? row.clearDate) as IsoDate,
      spans: (spans.get(row.id) ?? []).map(({ bedId, fromShare, toShare, plants }) => ({
        bedId,
        fromShare,
        toShare,
        plants,
        mostPlants: null,
      })),
      isFree: false,
    }));
}

function seasonBeds(
  db: FarmDb,
  { beds, loadedBeds }: LoadedSeason,
  zoneOfBed: ReadonlyMap<string, number>,
  noZone: number,
): SeasonBed[] {
  const shares = Map.groupBy(sharesOfBeds(db), ({ bedId }) => bedId);
  const blocks = [...new Set(loadedBeds.map(({ block }) => block.id))];
  return beds
    .filter(({ area_m2 }) => area_m2 > 0)
    .map((bed, position) => ({
      ...bed,
      block: blocks.indexOf(bed.blockId),
      position,
      zone: zoneOfBed.get(bed.id) ?? noZone,
      splitAt: (shares.get(bed.id) ?? [])
        .flatMap(({ fromShare, toShare }) => [fromShare, toShare])
        .filter((at) => at > 0 && at < 1),
    }));
}
