import { derived } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import type { BedRecord } from '../../db/repositories/beds.ts';
import {
  harvestsOfLots,
  incomeOfLots,
  incomeOfSeason,
  labourBetween,
  plantingsWithPlan,
  staysOfSeason,
} from '../../db/repositories/cost-facts.ts';
import { type FarmRow, farmOfFile } from '../../db/repositories/farm.ts';
import { type SeasonRecord, seasonOfId } from '../../db/repositories/seasons.ts';
import { dayNumber, type IsoDate } from '../../planner/calendar.ts';
import type { IncomeLine } from '../../planner/costs/earning-rows.ts';
import type { BedSpan, Stay } from '../../planner/costs/ground.ts';
import { incomeByBed, incomeOfLot } from '../../planner/costs/income-by-bed.ts';
import {
  type Charge,
  followsWork,
  type PlantingWeights,
  type Posting,
  spreadCharges,
} from '../../planner/costs/spread-charges.ts';
import { Refusal } from '../errors.ts';
import { bedsOfBooks, filledUntil, usedUntil } from './books.ts';
import { type FedBeds, fedBeds, lineCharges } from './line-charges.ts';
import { type LinePartCost, linePartCosts } from './line-part-costs.ts';
import { labourCharges, lastingCharges, overheadCharges, usedCharges } from './season-charges.ts';
import { marksOf, type Unpriced, unpricedCosts } from './unpriced-costs.ts';

/** The beds that stood in a season, for the days that they stood. */
export type SeasonBeds = readonly (BedSpan & { readonly record: BedRecord })[];

/** A season's costs and incomes, each brought to its bed and planting. */
export type SeasonLedger = {
  readonly season: SeasonRecord;
  readonly farm: FarmRow;
  readonly beds: SeasonBeds;
  readonly stays: readonly Stay[];
  readonly plantings: ReturnType<typeof plantingsWithPlan>;
  readonly charges: readonly Charge[];
  /** Parts of the water lines, each with its cost of the season. */
  readonly lineParts: readonly LinePartCost[];
  readonly fed: FedBeds;
  /** What has no price that anyone knows: it is in none of the charges. */
  readonly unpriced: readonly Unpriced[];
  /** Where the costs of what has no price would come to rest; the amounts mean nothing. */
  readonly marks: readonly Posting[];
  readonly postings: readonly Posting[];
  readonly incomes: readonly IncomeLine[];
  readonly soldInUnit: ReadonlyMap<string, number>;
  readonly hoursOf: ReadonlyMap<string, number>;
  readonly labour_h: number;
  /** Wages of picking and packing by planting: they follow the yield. */
  readonly harvestWages: ReadonlyMap<string, number>;
};

/** Reads a season's books whole. Each part of them is kept by itself: a picking changes no parts, an hour no income. @throws Refusal when the season is gone */
export const seasonLedger = (db: FarmDb, seasonId: string): SeasonLedger =>
  derived(db, `ledger ${seasonId}`, () => ledgerOf(db, seasonId));

function ledgerOf(db: FarmDb, seasonId: string): SeasonLedger {
  const ground = groundOfSeason(db, seasonId);
  const { season, farm, span } = ground;
  const worked = workOf(db, seasonId, span);
  const { incomes, soldInUnit, incomeOf } = salesOf(db, seasonId, ground);
  const spent = spendingOf(db, seasonId);
  const weights = ground.plantings.map(
    (each): PlantingWeights => ({
      plantingId: each.plantingId,
      plants: each.plants,
      labour_h: worked.hoursOf.get(each.plantingId) ?? 0,
      income_minor: incomeOf.get(each.plantingId) ?? 0,
    }),
  );
  const spread = (charges: readonly Charge[]) => spreadCharges({ ...ground, plantings: weights, charges });
  const labour = labourCharges(worked.labour, ground.beds);
  return {
    season,
    farm,
    beds: ground.beds,
    stays: ground.stays,
    plantings: ground.plantings,
    charges: [...spent.charges, ...labour],
    lineParts: spent.lineParts,
    fed: spent.fed,
    postings: [...spentOnGround(db, seasonId), ...spread(spent.byWork), ...spread(labour)],
    unpriced: spent.unpriced,
    marks: spread(marksOf(spent.unpriced)),
    incomes,
    soldInUnit,
    hoursOf: worked.hoursOf,
    labour_h: worked.labour.reduce((sum, row) => sum + row.labour_h, 0),
    harvestWages: worked.harvestWages,
  };
}

type Span = { readonly start: IsoDate; readonly end: IsoDate };

/** The season with the beds that stood in it. */
const bedsOfSeason = (db: FarmDb, seasonId: string) =>
  derived(db, `ledger: beds ${seasonId}`, () => {
    const season = seasonOfId(db, seasonId);
    const farm = farmOfFile(db);
    if (season === undefined || farm === undefined) throw new Refusal({ code: 'not-found', what: 'season' });
    const span: Span = { start: season.startDate as IsoDate, end: season.endDate as IsoDate };
    return { season, farm, span, beds: bedsOf(db, span) };
  });

/** The season's beds with what stood on them. */
const groundOfSeason = (db: FarmDb, seasonId: string) =>
  derived(db, `ledger: ground ${seasonId}`, () => {
    const { season, farm, span, beds } = bedsOfSeason(db, seasonId);
    const areaOfBed = new Map(beds.map((bed) => [bed.bedId, bed.area_m2]));
    const stays = staysOfSeason(db, seasonId).map(
      (row): Stay => ({
        plantingId: row.plantingId,
        bedId: row.bedId,
        area_m2: (areaOfBed.get(row.bedId) ?? 0) * row.share,
        fromDay: dayNumber(row.from as IsoDate),
        toDay: dayNumber(row.to as IsoDate),
      }),
    );
    return { season, farm, span, beds, stays, plantings: plantingsWithPlan(db, seasonId) };
  });

type Ground = ReturnType<typeof groundOfSeason>;

function bedsOf(db: FarmDb, { start, end }: Span): SeasonBeds {
  return bedsOfBooks(db)
    .filter(({ record: { bed } }) => bed.builtDate <= end && (bed.retiredDate === null || bed.retiredDate > start))
    .map(({ record, area_m2 }) => ({
      bedId: record.bed.id,
      area_m2,
      fromDay: Math.max(dayNumber(start), dayNumber(record.bed.builtDate as IsoDate)),
      toDay: Math.min(
        dayNumber(end) + 1,
        record.bed.retiredDate === null ? Infinity : dayNumber(record.bed.retiredDate as IsoDate),
      ),
      record,
    }));
}

/** Hours and wages of a season, and by planting. */
const workOf = (db: FarmDb, seasonId: string, { start, end }: Span) =>
  derived(db, `ledger: work ${seasonId} ${start} ${end}`, () => {
    const labour = labourBetween(db, start, end);
    const hoursOf = new Map<string, number>();
    const harvestWages = new Map<string, number>();
    for (const row of labour)
      if (row.plantingId !== null) {
        hoursOf.set(row.plantingId, (hoursOf.get(row.plantingId) ?? 0) + row.labour_h);
        harvestWages.set(row.plantingId, (harvestWages.get(row.plantingId) ?? 0) + row.harvestWages_minor);
      }
    return { labour, hoursOf, harvestWages };
  });

/** What was sold of a season's plantings, by bed and by planting. */
const salesOf = (db: FarmDb, seasonId: string, ground: Ground) =>
  derived(
    db,
    `ledger: sales ${seasonId}`,
    () => {
      const { plantings, stays, span } = ground;
      const sold = derived(db, `ledger: sold ${seasonId}`, () => incomeOfSeason(db, seasonId));
      const ofLots = lotIncomes(db, span.start, span.end, new Set(plantings.map((each) => each.plantingId)));
      const incomes = incomeByBed([...sold, ...ofLots], stays);
      const incomeOf = new Map<string, number>();
      for (const { plantingId, paid_minor } of incomes)
        if (plantingId !== null) incomeOf.set(plantingId, (incomeOf.get(plantingId) ?? 0) + paid_minor);
      const unitOf = new Map(plantings.map((each) => [each.plantingId, each.yieldUnit]));
      const soldInUnit = new Map<string, number>();
      for (const row of sold)
        if (row.plantingId !== null && row.unit === unitOf.get(row.plantingId))
          soldInUnit.set(row.plantingId, (soldInUnit.get(row.plantingId) ?? 0) + row.amount);
      return { incomes, incomeOf, soldInUnit };
    },
    [ground],
  );

/** All that was spent but wages. */
const spendingOf = (db: FarmDb, seasonId: string) =>
  derived(db, `ledger: spending ${seasonId}`, () => {
    const { season, farm, span, beds } = bedsOfSeason(db, seasonId);
    const stock = { used: usedUntil(db, span.end), fills: filledUntil(db, span.end) };
    const fed = fedBeds(db, new Set(beds.map((bed) => bed.bedId)));
    const lineParts = linePartCosts(db, farm, span);
    const charges = [
      ...lastingCharges(db, farm, span, stock),
      ...usedCharges(db, farm, span, stock),
      ...overheadCharges(db, season.id),
      ...lineCharges(db, farm, span, fed, lineParts),
    ];
    // kinds are kept whole, so that a bed's and planting's sum of a kind is one posting
    const kindsByWork = new Set(charges.filter((each) => followsWork(each.target)).map((each) => each.kind));
    const [byWork = [], byGround = []] = [true, false].map((by) => charges.filter((each) => kindsByWork.has(each.kind) === by));
    const unpriced = unpricedCosts({ db, season: span, ...stock, lineParts, fed, overheadKey: farm.overheadKey });
    return { charges, byWork, byGround, lineParts, fed, unpriced };
  });

/** What was spent, brought to beds and plantings as far as that does not hang on hours and income. */
const spentOnGround = (db: FarmDb, seasonId: string): readonly Posting[] =>
  derived(db, `ledger: spent on ground ${seasonId}`, () => {
    const ground = groundOfSeason(db, seasonId);
    const plantings = ground.plantings.map(({ plantingId, plants }) => ({ plantingId, plants, labour_h: 0, income_minor: 0 }));
    return spreadCharges({ ...ground, plantings, charges: spendingOf(db, seasonId).byGround });
  });

/** Income of mixed lots, given to the plantings that went into them; of this season only. */
function lotIncomes(db: FarmDb, from: IsoDate, to: IsoDate, plantings: ReadonlySet<string>): readonly IncomeLine[] {
  const sales = incomeOfLots(db, from, to);
  if (sales.length === 0) return [];
  const harvests = Map.groupBy(harvestsOfLots(db, from, to), (row) => row.lotId);
  return sales.flatMap((line): readonly IncomeLine[] => {
    const of = harvests.get(line.lotId) ?? [];
    if (of.length === 0)
      return [{ plantingId: null, bedId: null, outletId: line.outletId, paid_minor: line.paid_minor, sold_kg: 0 }];
    return incomeOfLot(line.paid_minor, of)
      .filter((part) => plantings.has(part.plantingId))
      .map((part) => ({ ...part, outletId: line.outletId, sold_kg: 0 }));
  });
}
