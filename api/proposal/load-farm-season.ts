import { derived, derivedByKey, derivedRows } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import type { Keys } from '../../db/repositories/among.ts';
import type { PlantingRecord } from '../../db/repositories/plantings.ts';
import {
  clearedPlantings,
  demandOfSeason,
  harvestByPlanting,
  minutesByPlanting,
  type PlantingRow,
  plantingsBetween,
  saleUnits,
  sharesOfBeds,
  spansBetween,
} from '../../db/repositories/proposal-facts.ts';
import { type IsoDate, mondayOf } from '../../planner/calendar.ts';
import type { Method } from '../../planner/season/maturity.ts';
import type { PlanRules } from '../../planner/season/plan.ts';
import {
  type BuiltSeason,
  buildInstance,
  type SeasonFrame,
  type SeasonTerms,
  seasonFrame,
} from '../../planner/season/proposal/build-instance.ts';
import type { FarmSeason, PresentPlanting, SeasonBed } from '../../planner/season/proposal/farm-season.ts';
import { loadBeds } from '../beds/load-beds.ts';
import type { Ctx } from '../procedure.ts';
import type { CropShelf } from '../season/crop-shelf.ts';
import { chosenSeason, type LoadedSeason, loadSeason, recordsOfSeason, seasonBasis } from '../season/load-season.ts';
import { type CropCounted, cropFigures, type Records } from './crop-figures-of.ts';
import { directCosts_minor_per_m2 } from './direct-costs.ts';
import { type OwnFigures, rememberedFigures } from './own-figures.ts';
import { waterOfFarm } from './water-of-farm.ts';

type Asked = Pick<Ctx, 'db' | 'today'>;

/** What a proposal counts with, whatever stands in the beds. */
export type ProposalTerms = {
  readonly terms: SeasonTerms;
  readonly own: OwnFigures;
  readonly counted: readonly CropCounted[];
  readonly leftOut: readonly { readonly cropId: string; readonly name: string; readonly because: string }[];
  readonly notes: readonly string[];
  readonly zoneOfBed: ReadonlyMap<string, number>;
};

export type LoadedProposal = Omit<ProposalTerms, 'terms' | 'zoneOfBed'> & {
  readonly farm: FarmSeason;
  readonly loaded: LoadedSeason;
};

/** Everything a proposal for a season (or the newest) rests on, as plain data and figures. @throws Refusal when the season is gone */
export function loadFarmSeason(ctx: Asked, seasonId: string | null): LoadedProposal {
  const { id } = chosenSeason(ctx.db, seasonId);
  return derived(ctx.db, `proposal ${id} ${ctx.today}`, () => farmSeasonLoaded(ctx, id));
}

/** The weeks, crops and limits of a proposal, whatever stands in the beds. */
export function frameOfSeason(ctx: Asked, seasonId: string | null): SeasonFrame {
  const { id } = chosenSeason(ctx.db, seasonId);
  return derived(ctx.db, `proposal frame ${id} ${ctx.today}`, () => seasonFrame(termsOfSeason(ctx, id).terms));
}

/** The loaded season as the instance to be optimised. */
export function builtSeason(ctx: Asked, seasonId: string | null): BuiltSeason {
  const { id } = chosenSeason(ctx.db, seasonId);
  return derived(ctx.db, `proposal built ${id} ${ctx.today}`, () =>
    buildInstance(loadFarmSeason(ctx, id).farm, frameOfSeason(ctx, id)),
  );
}

function farmSeasonLoaded(ctx: Asked, seasonId: string): LoadedProposal {
  const loaded = loadSeason(ctx.db, seasonId);
  const { terms, zoneOfBed, ...rest } = termsOfSeason(ctx, seasonId);
  return {
    ...rest,
    loaded,
    farm: {
      ...terms,
      beds: seasonBeds(ctx.db, loaded, zoneOfBed, terms.zoneNames.length - 1),
      plantings: presentPlantings(ctx.db, loaded, ctx.today),
    },
  };
}

const termsOfSeason = (ctx: Asked, seasonId: string): ProposalTerms =>
  derived(ctx.db, `proposal terms ${seasonId} ${ctx.today}`, () => termsRead(ctx, seasonId));

function termsRead(ctx: Asked, seasonId: string): ProposalTerms {
  const { db, today } = ctx;
  const { season, rules, shelf, clocks, farm } = seasonBasis(db, seasonId);
  const { own, counted, leftOut } = figuresOfCrops(ctx, seasonId);
  const water = waterOfFarm(db, farm, shelf, own);
  return {
    own,
    counted,
    leftOut,
    notes: water.notes,
    zoneOfBed: water.zoneOfBed,
    terms: {
      rules,
      today,
      crops: counted.map(({ figures }) => figures),
      clock: clocks.byLight,
      waterUse: water.use,
      zoneNames: water.zoneNames,
      wage_minor_per_h: farm.wage_minor_per_h,
      labour_h_per_week: own.labour_h_per_week ?? season.labour_h_per_week ?? Infinity,
      overtimeMost_h: own.overtime_h_per_week,
      overtimePremium_minor_per_h: farm.wage_minor_per_h * own.overtimePremium_share,
      water_L_per_week: water.limit_L_per_week,
      bench_m2: season.benchArea_m2 ?? Infinity,
      mostCrops: own.mostCrops,
      caution: own.caution,
    },
  };
}

/** The figures of every crop that is asked for or stands in the beds, and those of which too little is known. */
const figuresOfCrops = (ctx: Asked, seasonId: string) =>
  derived(ctx.db, `proposal figures ${seasonId} ${ctx.today}`, () => figuresRead(ctx, seasonId));

function figuresRead(ctx: Asked, seasonId: string) {
  const { db, today } = ctx;
  const { season, rules, shelf } = seasonBasis(db, seasonId);
  const own = rememberedFigures(ctx);
  const wanted = demandOfSeason(db, season.id);
  const areas = derivedRows(db, 'proposal: areas of beds', () =>
    loadBeds(db).map(({ bed, figures }) => ({ bedId: bed.id, area_m2: figures?.area_m2 ?? 0 })),
  );
  const cleared = clearedBefore(db, today);
  const records: Records = {
    cleared: Map.groupBy(cleared, (row) => row.cropId),
    harvests: harvestsKept(db),
    minutes: minutesKept(db),
    units: saleUnits(db),
    area_m2: new Map(areas.map(({ bedId, area_m2 }) => [bedId, area_m2])),
    direct_minor_per_m2: directCosts_minor_per_m2(db, season.startDate),
  };
  const grown = derivedRows(db, `proposal: grown ${season.id} ${today}`, () => grownInSeason(db, season.id, rules));
  const methods = new Map<string, Method>();
  for (const { cropId, method } of cleared) methods.set(cropId, method);
  for (const { cropId, method } of grown) if (method !== null) methods.set(cropId, method);
  const counted: CropCounted[] = [];
  const leftOut: { cropId: string; name: string; because: string }[] = [];
  const asked = new Set([
    ...wanted.map(({ cropId }) => cropId),
    ...grown.filter(({ stands }) => stands).map(({ cropId }) => cropId),
  ]);
  for (const cropId of [...asked].sort()) {
    const found = cropFigures(shelf, cropId, wanted, records, own.crops[cropId], methods.get(cropId) ?? null);
    if ('because' in found) leftOut.push({ cropId, name: shelf.crop(cropId).name, because: found.because });
    else counted.push(found);
  }
  return { own, counted, leftOut };
}

const harvestsKept = (db: FarmDb) =>
  derivedByKey(db, 'harvest by planting', {
    tables: ['harvest'],
    read: (plantingIds) => harvestByPlanting(db, plantingIds),
    keyOf: (row) => row.plantingId,
  });

const minutesKept = (db: FarmDb) =>
  derivedByKey(db, 'minutes by planting', {
    tables: ['labour_entry'],
    read: (plantingIds) => minutesByPlanting(db, plantingIds),
    keyOf: (row) => row.plantingId,
  });

/** What a season's proposal rests on, part by part, to be worked out ahead. */
export const partsOfProposal = (ctx: Asked, seasonId: string): readonly (() => unknown)[] => [
  () => clearedBefore(ctx.db, ctx.today),
  () => harvestsKept(ctx.db),
  () => minutesKept(ctx.db),
  () => directCosts_minor_per_m2(ctx.db, seasonBasis(ctx.db, seasonId).season.startDate),
  () => figuresOfCrops(ctx, seasonId),
  () => termsOfSeason(ctx, seasonId),
];

/** What the farm has cleared by a day, season by season. */
const clearedBefore = (db: FarmDb, today: IsoDate) =>
  derived(db, `proposal: cleared ${today}`, () =>
    [
      ...derivedByKey(db, `cleared before ${today}`, {
        tables: ['planting', 'planting_bed'],
        read: (seasonIds) => clearedPlantings(db, today, seasonIds),
        keyOf: (row) => row.seasonId,
      }).values(),
    ]
      .flat()
      .sort((a, b) => (a.plantingId < b.plantingId ? -1 : a.plantingId > b.plantingId ? 1 : 0)),
  );

/** The crops that stand in a season's beds, and how those of its own plantings are sown: its last planting of a crop says. */
function grownInSeason(db: FarmDb, seasonId: string, rules: PlanRules) {
  const own = recordsOfSeason(db, seasonId);
  const others = [...standingOfOthers(db, seasonId, rules).plantings.values()].flat();
  const methods = new Map(own.map(({ cropId, method }) => [cropId, method]));
  const standing = new Set([...own.filter(({ state }) => state !== 'failed'), ...others].map(({ cropId }) => cropId));
  return [...new Set([...methods.keys(), ...standing])]
    .sort()
    .map((cropId) => ({ cropId, method: methods.get(cropId) ?? null, stands: standing.has(cropId) }));
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
  return [...own, ...fromOtherSeasons(db, season.id, rules, shelf)];
}

/** Plantings of other seasons that stand in beds in this one, with where they stand. */
function standingOfOthers(db: FarmDb, seasonId: string, rules: PlanRules) {
  const [start, end] = [mondayOf(rules.start), rules.end];
  const tables = ['planting', 'planting_bed'];
  const others = (seasonIds: Keys): Keys => (seasonIds === 'all' ? 'all' : seasonIds.filter((id) => id !== seasonId));
  return {
    plantings: derivedByKey(db, `proposal: plantings beside ${seasonId} ${start} ${end}`, {
      tables,
      read: (seasonIds) => plantingsBetween(db, start, end, others(seasonIds), seasonId),
      keyOf: (row) => row.seasonId,
    }),
    spans: derivedByKey(db, `proposal: spans beside ${seasonId} ${start} ${end}`, {
      tables,
      read: (seasonIds) => spansBetween(db, start, end, others(seasonIds), seasonId),
      keyOf: (row) => row.seasonId,
    }),
  };
}

const byInBed = (a: PlantingRow, b: PlantingRow): number =>
  a.inBedDate < b.inBedDate ? -1 : a.inBedDate > b.inBedDate ? 1 : a.id < b.id ? -1 : 1;

function fromOtherSeasons(db: FarmDb, seasonId: string, rules: PlanRules, shelf: CropShelf): PresentPlanting[] {
  const others = standingOfOthers(db, seasonId, rules);
  const plantings = [...others.plantings.values()].flat().sort(byInBed);
  const spans = Map.groupBy([...others.spans.values()].flat(), (span) => span.plantingId);
  return plantings.map((row) => ({
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
