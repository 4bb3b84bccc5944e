import { derived } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import type { FarmRow } from '../../db/repositories/farm.ts';
import type { SeasonRecord } from '../../db/repositories/seasons.ts';
import type { IncomeLine } from '../../planner/costs/earning-rows.ts';
import type { Stay } from '../../planner/costs/ground.ts';
import type { Charge, Posting } from '../../planner/costs/spread-charges.ts';
import type { FedBeds } from './line-charges.ts';
import type { LinePartCost } from './line-part-costs.ts';
import {
  bedsOfSeason,
  groundOfSeason,
  type SeasonBeds,
  type SeasonGround,
  salesOf,
  seasonOfBooks,
  spendingOf,
  spentByWork,
  spentOnGround,
  workOf,
} from './season-parts.ts';
import type { Unpriced } from './unpriced-costs.ts';

/** A season's costs and incomes, each brought to its bed and planting. */
export type SeasonLedger = {
  readonly season: SeasonRecord;
  readonly farm: FarmRow;
  readonly beds: SeasonBeds;
  readonly stays: readonly Stay[];
  readonly plantings: SeasonGround['plantings'];
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
  const { season, farm } = seasonOfBooks(db, seasonId);
  const { stays, plantings } = groundOfSeason(db, seasonId);
  const { labour, hoursOf, harvestWages } = workOf(db, seasonId);
  const { incomes, soldInUnit } = salesOf(db, seasonId);
  const spent = spendingOf(db, seasonId);
  const worked = spentByWork(db, seasonId);
  return {
    season,
    farm,
    beds: bedsOfSeason(db, seasonId),
    stays,
    plantings,
    charges: [...spent.charges, ...worked.labour],
    lineParts: spent.lineParts,
    fed: spent.fed,
    postings: [...spentOnGround(db, seasonId), ...worked.postings],
    unpriced: spent.unpriced,
    marks: worked.marks,
    incomes,
    soldInUnit,
    hoursOf,
    labour_h: labour.reduce((sum, row) => sum + row.labour_h, 0),
    harvestWages,
  };
}
