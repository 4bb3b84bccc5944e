import { derived } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import type { BedRecord } from '../../db/repositories/beds.ts';
import {
  applicationCosts,
  type fillsUntil,
  harvestsOfLots,
  incomeOfLots,
  incomeOfSeason,
  labourBetween,
  overheadsOfSeason,
  partsBetween,
  plantingsWithPlan,
  staysOfSeason,
} from '../../db/repositories/cost-facts.ts';
import { type FarmRow, farmOfFile } from '../../db/repositories/farm.ts';
import { type SeasonRecord, seasonOfId } from '../../db/repositories/seasons.ts';
import { dayNumber, type IsoDate } from '../../planner/calendar.ts';
import type { IncomeLine } from '../../planner/costs/earning-rows.ts';
import type { BedSpan, Stay } from '../../planner/costs/ground.ts';
import { incomeByBed, incomeOfLot } from '../../planner/costs/income-by-bed.ts';
import { seasonCharge_minor } from '../../planner/costs/part-charge.ts';
import { type Charge, type Posting, spreadCharges } from '../../planner/costs/spread-charges.ts';
import { roundMoney } from '../../planner/money.ts';
import { Refusal } from '../errors.ts';
import { type Books, booksOfFarm } from './books.ts';
import { type FedBeds, fedBeds, lineCharges } from './line-charges.ts';
import { type LinePartCost, linePartCosts } from './line-part-costs.ts';
import { fillingOf, stockCharges, type ValuedMove } from './stock-charges.ts';
import { marksOf, type Unpriced, unpricedCosts } from './unpriced-costs.ts';

/** A season's costs and incomes, each brought to its bed and planting. */
export type SeasonLedger = {
  readonly season: SeasonRecord;
  readonly farm: FarmRow;
  readonly beds: readonly (BedSpan & { readonly record: BedRecord })[];
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

/** Reads a season's books whole. @throws Refusal when the season is gone */
export const seasonLedger = (db: FarmDb, seasonId: string): SeasonLedger =>
  derived(db, `ledger ${seasonId}`, () => ledgerOf(db, seasonId));

function ledgerOf(db: FarmDb, seasonId: string): SeasonLedger {
  const season = seasonOfId(db, seasonId);
  const farm = farmOfFile(db);
  if (season === undefined || farm === undefined) throw new Refusal({ code: 'not-found', what: 'season' });
  const from = season.startDate as IsoDate;
  const to = season.endDate as IsoDate;
  const shared = booksOfFarm(db);
  const beds = bedsOf(shared, from, to);
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
  const plantings = plantingsWithPlan(db, seasonId);
  const sold = incomeOfSeason(db, seasonId);
  const incomes = incomeByBed([...sold, ...lotIncomes(db, from, to, new Set(plantings.map((each) => each.plantingId)))], stays);
  const labour = labourBetween(db, from, to);
  const hoursOf = new Map<string, number>();
  const harvestWages = new Map<string, number>();
  for (const row of labour)
    if (row.plantingId !== null) {
      hoursOf.set(row.plantingId, (hoursOf.get(row.plantingId) ?? 0) + row.labour_h);
      harvestWages.set(row.plantingId, (harvestWages.get(row.plantingId) ?? 0) + row.harvestWages_minor);
    }
  const incomeOf = new Map<string, number>();
  for (const income of incomes)
    if (income.plantingId !== null) incomeOf.set(income.plantingId, (incomeOf.get(income.plantingId) ?? 0) + income.paid_minor);
  const used = shared.usedUntil(to);
  const fills = shared.fillsUntil(to);
  const span = { start: from, end: to };
  const fed = fedBeds(db, new Set(beds.map((bed) => bed.bedId)));
  const lineParts = linePartCosts(db, farm, span);
  const charges = [
    ...lastingCharges(db, farm, span, used, fills),
    ...usedCharges(db, farm, season, used, fills),
    ...workCharges(db, season, beds, labour),
    ...lineCharges(db, farm, span, fed, lineParts),
  ];
  const unpriced = unpricedCosts({ db, season: span, used, fills, lineParts, fed, overheadKey: farm.overheadKey });
  const weights = plantings.map((each) => ({
    plantingId: each.plantingId,
    plants: each.plants,
    labour_h: hoursOf.get(each.plantingId) ?? 0,
    income_minor: incomeOf.get(each.plantingId) ?? 0,
  }));
  const spread = (of: readonly Charge[]) => spreadCharges({ beds, stays, plantings: weights, charges: of });
  const unitOf = new Map(plantings.map((each) => [each.plantingId, each.yieldUnit]));
  const soldInUnit = new Map<string, number>();
  for (const row of sold)
    if (row.plantingId !== null && row.unit === unitOf.get(row.plantingId))
      soldInUnit.set(row.plantingId, (soldInUnit.get(row.plantingId) ?? 0) + row.amount);
  return {
    season,
    farm,
    beds,
    stays,
    plantings,
    charges,
    lineParts,
    fed,
    postings: spread(charges),
    unpriced,
    marks: spread(marksOf(unpriced)),
    incomes,
    soldInUnit,
    hoursOf,
    labour_h: labour.reduce((sum, row) => sum + row.labour_h, 0),
    harvestWages,
  };
}

function bedsOf(books: Books, from: IsoDate, to: IsoDate): SeasonLedger['beds'] {
  return books.beds
    .filter(({ record: { bed } }) => bed.builtDate <= to && (bed.retiredDate === null || bed.retiredDate > from))
    .map(({ record, area_m2 }) => ({
      bedId: record.bed.id,
      area_m2,
      fromDay: Math.max(dayNumber(from), dayNumber(record.bed.builtDate as IsoDate)),
      toDay: Math.min(
        dayNumber(to) + 1,
        record.bed.retiredDate === null ? Infinity : dayNumber(record.bed.retiredDate as IsoDate),
      ),
      record,
    }));
}

type Span = { readonly start: IsoDate; readonly end: IsoDate };
type Fills = ReturnType<typeof fillsUntil>;

/** Parts and fill: what lasts for years, for the days of the season. */
function lastingCharges(db: FarmDb, farm: FarmRow, season: Span, used: readonly ValuedMove[], filled: Fills): readonly Charge[] {
  const charge = (bedId: string, kind: 'parts' | 'fill', sums: Map<string, number>): Charge => ({
    kind,
    amount_minor: roundMoney(sums.get(bedId) ?? 0),
    target: { to: 'bed', bedId },
  });
  const parts = new Map<string, number>();
  for (const part of partsBetween(db, season.start, season.end)) {
    const cost = seasonCharge_minor(
      {
        purchase_minor: part.price_minor,
        salvage_minor: part.price_minor * part.salvageShare,
        life_years: part.life_years,
        from: part.from as IsoDate,
        until: part.until as IsoDate | null,
      },
      season,
      farm.partsMethod,
      farm.interest_share_per_year,
    );
    parts.set(part.bedId, (parts.get(part.bedId) ?? 0) + cost);
  }
  const fromStock = new Map(used.filter((move) => move.bedId !== null).map((move) => [fillingOf(move), move.cost_minor]));
  const fills = new Map<string, number>();
  for (const fill of filled) {
    const paid = fill.cost_minor > 0 ? fill.cost_minor : (fromStock.get(fillingOf(fill)) ?? 0);
    const cost = seasonCharge_minor(
      { purchase_minor: paid, salvage_minor: 0, life_years: fill.life_years, from: fill.date as IsoDate, until: null },
      season,
      farm.partsMethod,
      farm.interest_share_per_year,
    );
    fills.set(fill.bedId, (fills.get(fill.bedId) ?? 0) + cost);
  }
  return [
    ...[...parts.keys()].map((bedId) => charge(bedId, 'parts', parts)),
    ...[...fills.keys()].map((bedId) => charge(bedId, 'fill', fills)),
  ].filter((each) => each.amount_minor !== 0);
}

/** What was used of stock, and what was put on beds without going through it. */
function usedCharges(
  db: FarmDb,
  farm: FarmRow,
  season: SeasonRecord,
  used: readonly ValuedMove[],
  filled: Fills,
): readonly Charge[] {
  const fillings = new Set(filled.map(fillingOf));
  const isFilling = (move: ValuedMove) => move.bedId !== null && fillings.has(fillingOf(move));
  const fromStock = stockCharges(used, season.startDate, season.endDate, isFilling, farm.overheadKey);
  // what went through the stock is charged at its ledger cost already
  const through = new Set(
    used.flatMap((move) => (move.applicationId === null ? [] : [`${move.applicationId} ${move.bedId ?? ''}`])),
  );
  const outside = applicationCosts(db, season.startDate, season.endDate).filter(
    (row) => !through.has(`${row.applicationId} ${row.bedId}`),
  );
  const applied = outside.map(
    (row): Charge => ({
      kind: 'inputs',
      amount_minor: row.cost_minor,
      target:
        row.plantingId === null
          ? { to: 'bed', bedId: row.bedId }
          : { to: 'planting-in-bed', plantingId: row.plantingId, bedId: row.bedId },
    }),
  );
  return [...fromStock, ...applied].filter((each) => each.amount_minor !== 0);
}

/** Hours and overheads. */
function workCharges(
  db: FarmDb,
  season: SeasonRecord,
  beds: SeasonLedger['beds'],
  labour: ReturnType<typeof labourBetween>,
): readonly Charge[] {
  const wages = labour.map((row): Charge => ({ kind: 'labour', amount_minor: row.wages_minor, target: labourTarget(row, beds) }));
  const overheads = overheadsOfSeason(db, season.id).map(
    (row): Charge => ({ kind: 'overhead', amount_minor: row.amount_minor, target: { to: 'all', key: row.shareKey } }),
  );
  return [...wages, ...overheads].filter((each) => each.amount_minor !== 0);
}

function labourTarget(row: ReturnType<typeof labourBetween>[number], beds: SeasonLedger['beds']): Charge['target'] {
  if (row.plantingId !== null && row.bedId !== null)
    return { to: 'planting-in-bed', plantingId: row.plantingId, bedId: row.bedId };
  if (row.plantingId !== null) return { to: 'planting', plantingId: row.plantingId };
  if (row.bedId !== null) return { to: 'bed', bedId: row.bedId };
  if (row.blockId !== null)
    return {
      to: 'beds',
      weights: beds
        .filter((bed) => bed.record.block.id === row.blockId)
        .map((bed) => ({ bedId: bed.bedId, weight: bed.area_m2 })),
    };
  return { to: 'nobody' };
}

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
