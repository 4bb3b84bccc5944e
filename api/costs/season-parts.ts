import { derived, derivedByKey, derivedRows, type RowsByKey } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import type { BedRecord } from '../../db/repositories/beds.ts';
import {
  harvestsOfLots,
  incomeOfLots,
  incomeOfPlantings,
  type LabourFact,
  labourBetween,
  plantingsWithPlan,
  staysOfSeason,
} from '../../db/repositories/cost-facts.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { seasonOfId } from '../../db/repositories/seasons.ts';
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
import { ofSeason } from '../season/of-season.ts';
import { bedsOfBooks, filledUntil, usedUntil } from './books.ts';
import { fedBeds, lineCharges } from './line-charges.ts';
import { linePartCosts } from './line-part-costs.ts';
import { labourCharges, lastingCharges, overheadCharges, usedCharges } from './season-charges.ts';
import { marksOf, unpricedCosts } from './unpriced-costs.ts';

// The parts of a season's books, each kept by itself: a picking changes no parts of beds, an hour no income, and what is planned for
// another season nothing at all.

/** The beds that stood in a season, for the days that they stood. */
export type SeasonBeds = readonly (BedSpan & { readonly record: BedRecord })[];

type Span = { readonly start: IsoDate; readonly end: IsoDate };

export const seasonOfBooks = (db: FarmDb, seasonId: string) =>
  derived(db, `ledger: season ${seasonId}`, () => {
    const season = seasonOfId(db, seasonId);
    const farm = farmOfFile(db);
    if (season === undefined || farm === undefined) throw new Refusal({ code: 'not-found', what: 'season' });
    const span: Span = { start: season.startDate as IsoDate, end: season.endDate as IsoDate };
    return { season, farm, span };
  });

/** The beds that stood in a season with all that is known of them. */
export const bedsOfSeason = (db: FarmDb, seasonId: string): SeasonBeds =>
  derived(db, `ledger: beds ${seasonId}`, () => bedsOf(db, seasonOfBooks(db, seasonId).span));

/** The ground of a season's beds: the same, whatever else is changed of a bed. */
const spansOfBeds = (db: FarmDb, seasonId: string): readonly BedSpan[] =>
  derivedRows(db, `ledger: spans ${seasonId}`, () =>
    bedsOfSeason(db, seasonId).map(({ bedId, area_m2, fromDay, toDay }) => ({ bedId, area_m2, fromDay, toDay })),
  );

/** The season's beds with what stood on them. */
export const groundOfSeason = (db: FarmDb, seasonId: string) =>
  derived(db, `ledger: ground ${seasonId}`, () => {
    const beds = spansOfBeds(db, seasonId);
    const areaOfBed = new Map(beds.map((bed) => [bed.bedId, bed.area_m2]));
    const stays = derivedRows(db, `ledger: stays ${seasonId}`, () => staysOfSeason(db, seasonId), ofSeason(seasonId)).map(
      (row): Stay => ({
        plantingId: row.plantingId,
        bedId: row.bedId,
        area_m2: (areaOfBed.get(row.bedId) ?? 0) * row.share,
        fromDay: dayNumber(row.from as IsoDate),
        toDay: dayNumber(row.to as IsoDate),
      }),
    );
    return { beds, stays, plantings: plantingsOfBooks(db, seasonId) };
  });

export type SeasonGround = ReturnType<typeof groundOfSeason>;

const plantingsOfBooks = (db: FarmDb, seasonId: string) =>
  derivedRows(db, `ledger: plantings ${seasonId}`, () => plantingsWithPlan(db, seasonId), ofSeason(seasonId));

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
export const workOf = (db: FarmDb, seasonId: string) =>
  derived(db, `ledger: work ${seasonId}`, () => {
    const { start, end } = seasonOfBooks(db, seasonId).span;
    const labour = labourOf(db, start, end);
    const hoursOf = new Map<string, number>();
    const harvestWages = new Map<string, number>();
    for (const row of labour)
      if (row.plantingId !== null) {
        hoursOf.set(row.plantingId, (hoursOf.get(row.plantingId) ?? 0) + row.labour_h);
        harvestWages.set(row.plantingId, (harvestWages.get(row.plantingId) ?? 0) + row.harvestWages_minor);
      }
    return { labour, hoursOf, harvestWages };
  });

const labourOf = (db: FarmDb, start: IsoDate, end: IsoDate): readonly LabourFact[] =>
  byPlanting(
    derivedByKey(db, `ledger: hours ${start} ${end}`, {
      tables: ['labour_entry'],
      read: (plantingIds) => labourBetween(db, start, end, plantingIds),
      keyOf: (row) => row.plantingId,
    }),
  );

/** In the order of their plantings, so that sums do not hang on what was written when. */
const byPlanting = <Row>(rows: RowsByKey<Row>): readonly Row[] =>
  [...rows].toSorted(([a], [b]) => ((a ?? '') < (b ?? '') ? -1 : 1)).flatMap(([, of]) => of);

/** What was sold of a season's plantings, by bed and by planting. */
export const salesOf = (db: FarmDb, seasonId: string) =>
  derived(db, `ledger: sales ${seasonId}`, () => {
    const { plantings, stays } = groundOfSeason(db, seasonId);
    const { span } = seasonOfBooks(db, seasonId);
    const sold = soldOf(db, seasonId);
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
  });

/** What was sold of the season's plantings, whatever is planned of them. */
const soldOf = (db: FarmDb, seasonId: string) =>
  byPlanting(
    derivedByKey(db, `ledger: sold ${seasonId}`, {
      tables: ['sale_line', 'harvest'],
      read: (plantingIds) => {
        const ofSeason = idsOfPlantings(db, seasonId);
        return incomeOfPlantings(
          db,
          plantingIds === 'all' ? [...ofSeason] : plantingIds.filter((id) => id !== null && ofSeason.has(id)),
        );
      },
      keyOf: (row) => row.plantingId,
    }),
  );

const idsOfPlantings = (db: FarmDb, seasonId: string): ReadonlySet<string> =>
  new Set(
    derivedRows(db, `ledger: planting ids ${seasonId}`, () =>
      plantingsOfBooks(db, seasonId).map(({ plantingId }) => ({ plantingId })),
    ).map(({ plantingId }) => plantingId),
  );

/** All that was spent but wages. */
export const spendingOf = (db: FarmDb, seasonId: string) =>
  derived(db, `ledger: spending ${seasonId}`, () => {
    const { season, farm, span } = seasonOfBooks(db, seasonId);
    const beds = spansOfBeds(db, seasonId);
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
export const spentOnGround = (db: FarmDb, seasonId: string): readonly Posting[] =>
  derived(db, `ledger: spent on ground ${seasonId}`, () => {
    const ground = groundOfSeason(db, seasonId);
    const plantings = ground.plantings.map(({ plantingId, plants }) => ({ plantingId, plants, labour_h: 0, income_minor: 0 }));
    return spreadCharges({ ...ground, plantings, charges: spendingOf(db, seasonId).byGround });
  });

/** What each planting weighs by its plants, hours and income. */
export function weightsOf(db: FarmDb, seasonId: string): readonly PlantingWeights[] {
  const { hoursOf } = workOf(db, seasonId);
  const { incomeOf } = salesOf(db, seasonId);
  return groundOfSeason(db, seasonId).plantings.map(({ plantingId, plants }) => ({
    plantingId,
    plants,
    labour_h: hoursOf.get(plantingId) ?? 0,
    income_minor: incomeOf.get(plantingId) ?? 0,
  }));
}

/** What was spent and hangs on hours and income, and the hours' own wages, brought to beds and plantings. */
export const spentByWork = (db: FarmDb, seasonId: string) =>
  derived(db, `ledger: spent by work ${seasonId}`, () => {
    const ground = groundOfSeason(db, seasonId);
    const plantings = weightsOf(db, seasonId);
    const { byWork, unpriced } = spendingOf(db, seasonId);
    const labour = labourCharges(workOf(db, seasonId).labour, blocksOfBeds(db, seasonId), ground.beds);
    const spread = (charges: readonly Charge[]) => spreadCharges({ ...ground, plantings, charges });
    return { labour, postings: [...spread(byWork), ...spread(labour)], marks: spread(marksOf(unpriced)) };
  });

/** The block that each of a season's beds lies in. */
const blocksOfBeds = (db: FarmDb, seasonId: string) =>
  derivedRows(db, `ledger: blocks ${seasonId}`, () =>
    bedsOfSeason(db, seasonId).map(({ bedId, record }) => ({ bedId, blockId: record.block.id })),
  );

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
