import { derived, derivedByKey, derivedRows } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { type FarmRow, farmOfFile, rememberedSetting } from '../../db/repositories/farm.ts';
import {
  familiesBefore,
  type PlantingRecord,
  plantedBefore,
  plantingsOfSeason,
  type SpanRecord,
  spansOfSeason,
} from '../../db/repositories/plantings.ts';
import { type SeasonRecord, seasonOfId, seasonsOfFarm } from '../../db/repositories/seasons.ts';
import { addDays, type IsoDate, yearOf } from '../../planner/calendar.ts';
import type { PlanBed, PlanPlanting, PlanRules } from '../../planner/season/plan.ts';
import { warmFrom } from '../../planner/season/warm-from.ts';
import { type LoadedBed, loadBeds } from '../beds/load-beds.ts';
import { Refusal } from '../errors.ts';
import { type CropShelf, cropShelf } from './crop-shelf.ts';
import { effectiveDates } from './effective-dates.ts';
import { type FarmFrost, farmFrost } from './farm-frost.ts';
import { ofSeason } from './of-season.ts';
import { type SeasonClocks, seasonClocks } from './season-clocks.ts';

/** What the grower chose for the season board, remembered with the farm. */
export type BoardChoices = {
  readonly frostRisk: number;
  readonly gapYears: Readonly<Record<string, number>>;
  readonly mayRepeatCrop: boolean;
};

export const BOARD_CHOICES = 'season.rules';
const usual: BoardChoices = { frostRisk: 0.5, gapYears: {}, mayRepeatCrop: true };

export function boardChoices(db: FarmDb): BoardChoices {
  const kept = rememberedSetting(db, BOARD_CHOICES);
  return kept !== null && typeof kept === 'object' ? { ...usual, ...(kept as Partial<BoardChoices>) } : usual;
}

/** What a season's plan rests on beside its beds and plantings. */
export type SeasonBasis = {
  readonly farm: FarmRow;
  readonly season: SeasonRecord;
  readonly shelf: CropShelf;
  readonly clocks: SeasonClocks;
  readonly frost: FarmFrost;
  readonly rules: PlanRules;
};

/** A season with everything its plan rests on, read once. */
export type LoadedSeason = SeasonBasis & {
  readonly loadedBeds: readonly LoadedBed[];
  readonly beds: readonly PlanBed[];
  readonly records: readonly PlantingRecord[];
  readonly spans: ReadonlyMap<string, readonly SpanRecord[]>;
  readonly plantings: readonly PlanPlanting[];
};

/** The season asked for, or the newest. @throws Refusal when there is none */
export function chosenSeason(db: FarmDb, seasonId: string | null): SeasonRecord {
  const found = seasonId === null ? seasonsOfFarm(db).at(-1) : seasonOfId(db, seasonId);
  if (found === undefined) throw new Refusal({ code: 'not-found', what: 'season' });
  return found;
}

/** @throws Refusal when the season is gone or there is none */
export function loadSeason(db: FarmDb, seasonId: string | null): LoadedSeason {
  const { id } = chosenSeason(db, seasonId);
  return derived(db, `season ${id}`, () => seasonLoaded(db, id));
}

/** What the season asked for (or the newest) rests on, whatever is planned in it. @throws Refusal when the season is gone or there is none */
export function seasonBasis(db: FarmDb, seasonId: string | null): SeasonBasis {
  const { id } = chosenSeason(db, seasonId);
  return derived(db, `season basis ${id}`, () => basisOf(db, id));
}

function basisOf(db: FarmDb, seasonId: string): SeasonBasis {
  const farm = farmOfFile(db);
  if (farm === undefined) throw new Refusal({ code: 'not-found', what: 'farm' });
  const season = chosenSeason(db, seasonId);
  const start = season.startDate as IsoDate;
  const choices = boardChoices(db);
  const clocks = seasonClocks(db, farm, start);
  const frost = farmFrost(db, farm, clocks.temperatures, yearOf(start), choices.frostRisk);
  const warm = warmFrom(clocks.temperatures, yearOf(start));
  const rules: PlanRules = {
    ...(warm === null ? {} : { warmFrom: warm }),
    start,
    end: addDays(season.endDate as IsoDate, 1),
    lastFrost: frost.lastFrost,
    firstFrost: frost.firstFrost,
    firstHardFrost: frost.firstHardFrost,
    gapYears: choices.gapYears,
    mayRepeatCrop: choices.mayRepeatCrop,
  };
  return { farm, season, shelf: cropShelf(db), clocks, frost, rules };
}

/** The season's plantings as they are written, read again only where a planting of this season was written. */
export const recordsOfSeason = (db: FarmDb, seasonId: string): readonly PlantingRecord[] =>
  derivedRows(db, `season: records ${seasonId}`, () => plantingsOfSeason(db, seasonId), ofSeason(seasonId));

/** Where the season's plantings stand. */
export const spansOfPlan = (db: FarmDb, seasonId: string): readonly SpanRecord[] =>
  derivedRows(db, `season: spans ${seasonId}`, () => spansOfSeason(db, seasonId), ofSeason(seasonId));

function seasonLoaded(db: FarmDb, seasonId: string): LoadedSeason {
  const basis = seasonBasis(db, seasonId);
  const { season } = basis;
  const loadedBeds = loadBeds(db);
  const records = recordsOfSeason(db, season.id);
  const spans = Map.groupBy(spansOfPlan(db, season.id), (span) => span.plantingId);
  return {
    ...basis,
    loadedBeds,
    beds: planBeds(db, loadedBeds, season.startDate as IsoDate),
    records,
    spans,
    plantings: plantingsOfPlan(db, season.id, basis),
  };
}

/** The season's plantings with their dates, whatever is changed of its beds. */
const plantingsOfPlan = (db: FarmDb, seasonId: string, basis: SeasonBasis): readonly PlanPlanting[] =>
  derived(
    db,
    `season: plantings ${seasonId}`,
    () => {
      const spans = Map.groupBy(spansOfPlan(db, seasonId), (span) => span.plantingId);
      return recordsOfSeason(db, seasonId).map((record) =>
        planPlanting(record, spans.get(record.id) ?? [], basis.shelf, basis.clocks),
      );
    },
    [basis],
  );

/** The families that stood in each bed before a season, each with the last day on which it went in. */
const familiesOfBeds = (db: FarmDb, start: IsoDate) =>
  derived(db, `families before ${start}`, () => {
    const planted = derivedByKey(db, `planted before ${start}`, {
      tables: ['planting', 'planting_bed'],
      read: (seasonIds) => plantedBefore(db, start, seasonIds),
      keyOf: (row) => row.seasonId,
    });
    return Map.groupBy(familiesBefore(db, start, [...planted.values()].flat()), (row) => row.bedId);
  });

/** Every bed in use as the plan sees it, with the families that stood there before the season. */
export function planBeds(db: FarmDb, beds: readonly LoadedBed[], start: IsoDate): readonly PlanBed[] {
  const families = familiesOfBeds(db, start);
  return beds.map(({ bed, block, design, spec, figures }) => ({
    id: bed.id,
    code: bed.code,
    blockId: bed.blockId,
    area_m2: figures?.area_m2 ?? 0,
    soilDepth_m: spec.fillDepth_m,
    sun: bed.sun ?? block.sun,
    hasTrellis: bed.trellis ?? design.trellis,
    isCovered: bed.covered ?? block.covered,
    built: bed.builtDate as IsoDate,
    retired: bed.retiredDate as IsoDate | null,
    lastYearOf: Object.fromEntries((families.get(bed.id) ?? []).map((row) => [row.family, yearOf(row.lastInBed as IsoDate)])),
  }));
}

function planPlanting(
  record: PlantingRecord,
  spans: readonly SpanRecord[],
  shelf: CropShelf,
  clocks: SeasonClocks,
): PlanPlanting {
  return {
    id: record.id,
    crop: shelf.needs(record.cropId, record.varietyId),
    raised: record.method === 'transplant',
    ...effectiveDates(record, clocks, shelf.facts(record.cropId, record.varietyId)),
    spans: spans.map(({ bedId, fromShare, toShare, plants }) => ({ bedId, fromShare, toShare, plants, mostPlants: null })),
  };
}
