import { derived } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import type { FarmRow } from '../../db/repositories/farm.ts';
import type { SeasonRecord } from '../../db/repositories/seasons.ts';
import type { IncomeLine } from '../../planner/costs/earning-rows.ts';
import type { Stay } from '../../planner/costs/ground.ts';
import { type Charge, type Posting, spreadCharges } from '../../planner/costs/spread-charges.ts';
import type { FedBeds } from './line-charges.ts';
import type { LinePartCost } from './line-part-costs.ts';
import { labourCharges } from './season-charges.ts';
import {
  groundOfSeason,
  type SeasonBeds,
  type SeasonGround,
  salesOf,
  spendingOf,
  spentOnGround,
  weightsOf,
  workOf,
} from './season-parts.ts';
import { marksOf, type Unpriced } from './unpriced-costs.ts';

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
  const ground = groundOfSeason(db, seasonId);
  const { season, farm, span } = ground;
  const worked = workOf(db, seasonId, span);
  const { incomes, soldInUnit } = salesOf(db, seasonId, ground);
  const spent = spendingOf(db, seasonId);
  const plantings = weightsOf(db, seasonId, ground);
  const spread = (charges: readonly Charge[]) => spreadCharges({ ...ground, plantings, charges });
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
