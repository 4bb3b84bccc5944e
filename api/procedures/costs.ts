import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { addOverhead, overheadsOfSeason, removeOverhead } from '../../db/repositories/cost-facts.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { outletsOfFarm } from '../../db/repositories/sales.ts';
import { seasonsOfFarm } from '../../db/repositories/seasons.ts';
import { materialFacts } from '../../db/repositories/stock.ts';
import { unitPrices } from '../../db/repositories/unit-prices.ts';
import { setUnknownPrice } from '../../db/repositories/unpriced.ts';
import { isIsoDate } from '../../planner/calendar.ts';
import { explainEarning } from '../../planner/costs/per-measure.ts';
import { litresPerBaseUnit } from '../../planner/soil/base-unit.ts';
import { bedsOnSite } from '../costs/beds-on-site.ts';
import { earningView, type GroupBy, groupings } from '../costs/earning-view.ts';
import { explainLinePart, explainLineShares } from '../costs/line-part-costs.ts';
import { planView } from '../costs/plan-view.ts';
import { seasonLedger } from '../costs/season-ledger.ts';
import { seasonOfBooks, spendingOf } from '../costs/season-parts.ts';
import { standView } from '../costs/stand-view.ts';
import { type Unpriced, unpricedByMaterial } from '../costs/unpriced-costs.ts';
import { Refusal } from '../errors.ts';
import { change, nothing, read } from '../procedure.ts';

const inSeason = z.object({ seasonId: z.string().min(1) });
const byGroup = inSeason.extend({ by: z.enum(groupings) });

function viewOf(db: FarmDb, seasonId: string, by: GroupBy) {
  const ledger = seasonLedger(db, seasonId);
  const outlets = new Map(outletsOfFarm(db).map((each) => [each.id, each.name]));
  return { ledger, rows: earningView(ledger, by, outlets) };
}

const unpricedWithOffers = (db: FarmDb, unpriced: readonly Unpriced[]) => {
  const offers = unitPrices(db);
  return unpricedByMaterial(db, unpriced).map((each) => ({ ...each, offer_minor: offers.get(each.materialId) ?? null }));
};

const sum = <Row>(rows: readonly Row[], of: (row: Row) => number): number => rows.reduce((all, row) => all + of(row), 0);

export const costs = {
  seasons: read({
    input: nothing,
    run: ({ db }) =>
      seasonsOfFarm(db).map((each) => ({
        seasonId: each.id,
        name: each.name,
        state: each.state,
        startDate: each.startDate,
        endDate: each.endDate,
      })),
  }),
  /** What each bed, block, design, crop, planting or outlet earned. The rows add up to the season. */
  view: read({
    input: byGroup,
    run({ db }, { seasonId, by }) {
      const { ledger, rows } = viewOf(db, seasonId, by);
      return {
        season: ledger.season.name,
        by,
        rows,
        totals: {
          income_minor: sum(rows, (row) => row.income_minor),
          direct_minor: sum(rows, (row) => row.direct_minor),
          cost_minor: sum(rows, (row) => row.cost_minor),
          contribution_minor: sum(rows, (row) => row.contribution_minor),
          margin_minor: sum(rows, (row) => row.margin_minor),
          labour_h: ledger.labour_h,
          labour_minor: sum(rows, (row) => row.labour_minor),
          area_m2: sum(ledger.beds, (bed) => bed.area_m2),
        },
        /** What has no price that anyone knows, with the lowest price on offer where there is one. */
        unpriced: unpricedWithOffers(db, ledger.unpriced),
        method: {
          parts: ledger.farm.partsMethod,
          overheadKey: ledger.farm.overheadKey,
          interest_share: ledger.farm.interest_share_per_year,
        },
      };
    },
  }),
  explain: read({
    input: byGroup.extend({ id: z.string() }),
    run({ db }, { seasonId, by, id }) {
      const { ledger, rows } = viewOf(db, seasonId, by);
      const row = rows.find((each) => each.id === id);
      if (row === undefined) throw new Refusal({ code: 'not-found', what: 'row' });
      return explainEarning(row, by === 'bed' ? explainLineShares(ledger.lineParts, ledger.fed, id) : []);
    },
  }),
  /** Parts of the water lines with what each costs in the season, and how many beds share it. */
  lineParts: read({
    input: inSeason,
    run({ db }, { seasonId }) {
      const { lineParts, fed } = spendingOf(db, seasonId);
      return lineParts.map((part) => ({ ...part, beds: fed.get(part.lineId)?.length ?? 0 }));
    },
  }),
  explainLinePart: read({
    input: inSeason.extend({ linePartId: z.string() }),
    run({ db }, { seasonId, linePartId }) {
      const { farm, span } = seasonOfBooks(db, seasonId);
      const part = spendingOf(db, seasonId).lineParts.find((each) => each.linePartId === linePartId);
      if (part === undefined) throw new Refusal({ code: 'not-found', what: 'part' });
      return explainLinePart(part, farm, span);
    },
  }),
  /** What one season came to, to be set beside others. */
  seasonSums: read({
    input: inSeason,
    run({ db }, { seasonId }) {
      const { ledger, rows } = viewOf(db, seasonId, 'crop');
      const { season, labour_h } = ledger;
      const income = sum(rows, (row) => row.income_minor);
      const cost = sum(rows, (row) => row.cost_minor);
      const labour = sum(rows, (row) => row.labour_minor);
      return {
        seasonId: season.id,
        name: season.name,
        state: season.state,
        income_minor: income,
        direct_minor: sum(rows, (row) => row.direct_minor),
        bed_minor: sum(rows, (row) => row.bed_minor),
        water_minor: sum(rows, (row) => row.water_minor),
        overhead_minor: sum(rows, (row) => row.overhead_minor),
        cost_minor: cost,
        margin_minor: income - cost,
        labour_h,
        return_minor_per_h: labour_h > 0 ? (income - cost + labour) / labour_h : null,
        area_m2: sum(ledger.beds, (bed) => bed.area_m2),
        /** How many things in it have no price that anyone knows. */
        unpriced: ledger.unpriced.length,
      };
    },
  }),
  /** Every bed's outline on the site with what it earned. */
  map: read({
    input: inSeason,
    run({ db }, { seasonId }) {
      const { ledger, rows } = viewOf(db, seasonId, 'bed');
      return bedsOnSite(ledger, rows);
    },
  }),
  plan: read({ input: inSeason, run: ({ db }, { seasonId }) => planView(seasonLedger(db, seasonId)) }),
  stand: read({
    input: inSeason.extend({ cropId: z.string().min(1), correlation: z.number().min(-1).max(1).default(0) }),
    run: ({ db }, { seasonId, cropId, correlation }) => standView(db, seasonLedger(db, seasonId), cropId, correlation),
  }),
  /** Gives a price to all that has none of a material; nothing where it cost nothing. */
  priceUnknown: change({
    note: ({ materialId }, { db }) => `Enter the price of ${nameOf(db, 'material', materialId)}`,
    input: z.object({
      materialId: z.string().min(1, 'Choose a material.'),
      price_minor: z.number('Enter a price.').nonnegative('A price cannot be negative.').max(1e9, 'This is too much.'),
    }),
    run({ db }, { materialId, price_minor }) {
      const material = materialFacts(db).get(materialId);
      if (material === undefined) throw new Refusal({ code: 'not-found', what: 'material' });
      const perUnit_L = litresPerBaseUnit(material);
      return { priced: setUnknownPrice(db, materialId, price_minor, perUnit_L === null ? null : 1 / perUnit_L) };
    },
  }),
  overheads: read({ input: inSeason, run: ({ db }, { seasonId }) => overheadsOfSeason(db, seasonId) }),
  addOverhead: change({
    note: ({ name }) => `Add the cost ${name}`,
    input: inSeason.extend({
      name: z.string().trim().min(1, 'Name the cost.').max(120),
      date: z.string().refine(isIsoDate, 'A calendar date is needed.'),
      amount_minor: z
        .int('Money is kept in whole minor units.')
        .refine((value) => value !== 0, 'An amount is more than nothing.'),
      shareKey: z.enum(['area', 'bed-days', 'plants', 'hours', 'income']),
      category: z.string().trim().max(60).default('overhead'),
    }),
    run({ db }, input) {
      const overheadId = newId<string>();
      addOverhead(db, { ...input, id: overheadId });
      return { overheadId };
    },
  }),
  removeOverhead: change({
    note: ({ overheadId }, { db }) => `Take away the cost ${nameOf(db, 'overhead', overheadId)}`,
    input: z.object({ overheadId: z.string() }),
    run({ db }, { overheadId }) {
      removeOverhead(db, overheadId);
      return { overheadId };
    },
  }),
};
