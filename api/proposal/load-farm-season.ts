import { farmOfFile } from '../../db/repositories/farm.ts';
import {
  clearedPlantings,
  cropsByName,
  demandOfSeason,
  factsOfCrops,
  familiesBefore,
  harvestByPlanting,
  minutesByPlanting,
  type PlantingRow,
  plantingsBetween,
  type SeasonRow,
  saleUnits,
  seasonById,
  sharesOfBeds,
  spansBetween,
} from '../../db/repositories/proposal-facts.ts';
import { addDays, dateOfDay, dayNumber, dayOfYear, type IsoDate, mondayOf, yearOf } from '../../planner/calendar.ts';
import { dayLength_h } from '../../planner/climate/day-length.ts';
import { knownFacts } from '../../planner/crops/crop-facts.ts';
import { dayLengthClock, type GrowthClock } from '../../planner/season/growth-clock.ts';
import type { Method } from '../../planner/season/maturity.ts';
import type { PlanRules } from '../../planner/season/plan.ts';
import type { FarmSeason, PresentPlanting, SeasonBed } from '../../planner/season/proposal/farm-season.ts';
import { type LoadedBed, loadBeds } from '../beds/load-beds.ts';
import { Refusal } from '../errors.ts';
import type { Ctx } from '../procedure.ts';
import { type CropCounted, type CropRecord, cropFigures, needsOf } from './crop-figures-of.ts';
import { frostOfFarm } from './frost-of-farm.ts';
import { type OwnFigures, rememberedFigures } from './own-figures.ts';
import { waterOfFarm } from './water-of-farm.ts';

export type LoadedSeason = {
  readonly farm: FarmSeason;
  readonly season: SeasonRow;
  readonly own: OwnFigures;
  readonly counted: readonly CropCounted[];
  readonly leftOut: readonly { readonly cropId: string; readonly name: string; readonly because: string }[];
  readonly beds: readonly LoadedBed[];
  readonly crops: ReadonlyMap<string, CropRecord>;
  readonly rows: ReadonlyMap<string, PlantingRow>;
  readonly notes: readonly string[];
};

/** Everything a proposal for a season rests on, as plain data and figures. @throws Refusal when the season is gone */
export function loadFarmSeason(ctx: Pick<Ctx, 'db' | 'today'>, seasonId: string): LoadedSeason {
  const { db, today } = ctx;
  const season = seasonById(db, seasonId);
  const farmRow = farmOfFile(db);
  if (season === undefined || farmRow === undefined) throw new Refusal({ code: 'not-found', what: 'season' });
  const own = rememberedFigures(ctx);
  const start = season.startDate as IsoDate;
  const end = addDays(season.endDate as IsoDate, 1);
  const rules: PlanRules = { start, end, ...frostOfFarm(db, farmRow, yearOf(start)), gapYears: {}, mayRepeatCrop: false };

  const crops = cropRecords(ctx);
  const beds = loadBeds(db).filter(({ figures }) => figures !== null);
  const area_m2 = new Map(beds.map((bed) => [bed.bed.id, bed.figures?.area_m2 ?? 0]));
  const rows = plantingsBetween(db, mondayOf(start), end);
  const plantings = presentPlantings(ctx, season, crops, rows);

  const wanted = demandOfSeason(db, seasonId);
  const records = {
    cleared: clearedPlantings(db, today),
    harvests: harvestByPlanting(db),
    minutes: minutesByPlanting(db),
    units: saleUnits(db),
    area_m2,
  };
  const methods = new Map<string, Method>(
    [...records.cleared, ...rows.filter(({ seasonId: of }) => of === seasonId)].map((row) => [row.cropId, row.method] as const),
  );
  const counted: CropCounted[] = [];
  const leftOut: { cropId: string; name: string; because: string }[] = [];
  const asked = new Set([...wanted.map(({ cropId }) => cropId), ...plantings.map(({ crop }) => crop.cropId)]);
  for (const cropId of [...asked].sort()) {
    const crop = crops.get(cropId);
    if (crop === undefined) continue;
    const found = cropFigures(crop, wanted, records, own.crops[cropId], methods.get(cropId) ?? null);
    if ('because' in found) leftOut.push({ cropId, name: crop.name, because: found.because });
    else counted.push(found);
  }

  const water = waterOfFarm(ctx, farmRow, crops, own);
  return {
    season,
    own,
    counted,
    leftOut,
    beds,
    crops,
    rows: new Map(rows.map((row) => [row.id, row])),
    notes: water.notes,
    farm: {
      rules,
      today,
      beds: seasonBeds(ctx, start, beds, water.zoneOfBed, water.zoneNames.length - 1),
      plantings,
      crops: counted.map(({ figures }) => figures),
      clock: clockOfPlace(farmRow.latitude_deg, start, end),
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

function cropRecords({ db }: Pick<Ctx, 'db'>): ReadonlyMap<string, CropRecord> {
  const facts = Map.groupBy(factsOfCrops(db), (fact) => fact.cropId);
  return new Map(
    cropsByName(db).map((crop) => [
      crop.id,
      {
        cropId: crop.id,
        name: crop.name,
        family: crop.family,
        group: crop.cropGroup,
        facts: knownFacts(facts.get(crop.id) ?? [], null),
      },
    ]),
  );
}

/** The plan as it is. What is only planned, not pinned and not begun may be changed; all else stands. */
function presentPlantings(
  { db, today }: Pick<Ctx, 'db' | 'today'>,
  season: SeasonRow,
  crops: ReadonlyMap<string, CropRecord>,
  rows: readonly PlantingRow[],
): PresentPlanting[] {
  const spans = Map.groupBy(
    spansBetween(db, mondayOf(season.startDate as IsoDate), addDays(season.endDate as IsoDate, 1)),
    (span) => span.plantingId,
  );
  return rows.flatMap((row): PresentPlanting[] => {
    const crop = crops.get(row.cropId);
    if (crop === undefined) return [];
    return [
      {
        id: row.id,
        crop: needsOf(crop),
        raised: row.method === 'transplant',
        sow: row.sowDate as IsoDate | null,
        inBed: row.inBedDate as IsoDate,
        firstHarvest: row.firstHarvestDate as IsoDate,
        lastHarvest: row.lastHarvestDate as IsoDate,
        free: row.clearDate as IsoDate,
        spans: (spans.get(row.id) ?? []).map(({ bedId, fromShare, toShare, plants }) => ({
          bedId,
          fromShare,
          toShare,
          plants,
          mostPlants: null,
        })),
        isFree:
          row.seasonId === season.id &&
          row.state === 'planned' &&
          !row.pinned &&
          row.inBedDate >= today &&
          (row.sowDate === null || row.sownActual === null),
      },
    ];
  });
}

function seasonBeds(
  { db }: Pick<Ctx, 'db'>,
  start: IsoDate,
  beds: readonly LoadedBed[],
  zoneOfBed: ReadonlyMap<string, number>,
  noZone: number,
): SeasonBed[] {
  const families = Map.groupBy(familiesBefore(db, start), ({ bedId }) => bedId);
  const shares = Map.groupBy(sharesOfBeds(db), ({ bedId }) => bedId);
  const blocks = [...new Set(beds.map(({ block }) => block.id))];
  return beds.map(({ bed, design, block, spec, figures }, position) => ({
    id: bed.id,
    code: bed.code,
    blockId: block.id,
    area_m2: figures?.area_m2 ?? 0,
    soilDepth_m: spec.fillDepth_m,
    sun: bed.sun ?? block.sun,
    hasTrellis: bed.trellis ?? design.trellis,
    isCovered: bed.covered ?? block.covered,
    built: bed.builtDate as IsoDate,
    retired: bed.retiredDate as IsoDate | null,
    lastYearOf: Object.fromEntries((families.get(bed.id) ?? []).map(({ family, last }) => [family, yearOf(last as IsoDate)])),
    block: blocks.indexOf(block.id),
    position,
    zone: zoneOfBed.get(bed.id) ?? noZone,
    splitAt: (shares.get(bed.id) ?? [])
      .flatMap(({ fromShare, toShare }) => [fromShare, toShare])
      .filter((at) => at > 0 && at < 1),
  }));
}

/** Days long enough to grow count, from a year before the season to a year after. */
function clockOfPlace(latitude_deg: number, start: IsoDate, end: IsoDate): GrowthClock {
  const first = dayNumber(start) - 366;
  const days = dayNumber(end) - first + 366;
  return dayLengthClock(
    first,
    Array.from({ length: days }, (_, at) => dayLength_h(latitude_deg, dayOfYear(dateOfDay(first + at)))),
  );
}
