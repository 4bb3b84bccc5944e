import type { FarmDb } from '../../db/file/open-farm.ts';
import {
  applicationCosts,
  type FillFact,
  type LabourFact,
  overheadsOfSeason,
  partsBetween,
} from '../../db/repositories/cost-facts.ts';
import type { FarmRow } from '../../db/repositories/farm.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import type { BedSpan } from '../../planner/costs/ground.ts';
import { seasonCharge_minor } from '../../planner/costs/part-charge.ts';
import type { Charge } from '../../planner/costs/spread-charges.ts';
import { roundMoney } from '../../planner/money.ts';
import { fillingOf, stockCharges, type ValuedMove } from './stock-charges.ts';

type Span = { readonly start: IsoDate; readonly end: IsoDate };
type Spent = { readonly used: readonly ValuedMove[]; readonly fills: readonly FillFact[] };

const someOf = (charges: readonly Charge[]): readonly Charge[] => charges.filter((each) => each.amount_minor !== 0);

/** Parts and fill: what lasts for years, for the days of the season. */
export function lastingCharges(db: FarmDb, farm: FarmRow, season: Span, { used, fills }: Spent): readonly Charge[] {
  const charge = (bedId: string, kind: 'parts' | 'fill', sums: Map<string, number>): Charge => ({
    kind,
    amount_minor: roundMoney(sums.get(bedId) ?? 0),
    target: { to: 'bed', bedId },
  });
  const ofParts = new Map<string, number>();
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
    ofParts.set(part.bedId, (ofParts.get(part.bedId) ?? 0) + cost);
  }
  const fromStock = new Map(used.filter((move) => move.bedId !== null).map((move) => [fillingOf(move), move.cost_minor]));
  const ofFills = new Map<string, number>();
  for (const fill of fills) {
    const paid = fill.cost_minor > 0 ? fill.cost_minor : (fromStock.get(fillingOf(fill)) ?? 0);
    const cost = seasonCharge_minor(
      { purchase_minor: paid, salvage_minor: 0, life_years: fill.life_years, from: fill.date as IsoDate, until: null },
      season,
      farm.partsMethod,
      farm.interest_share_per_year,
    );
    ofFills.set(fill.bedId, (ofFills.get(fill.bedId) ?? 0) + cost);
  }
  return someOf([
    ...[...ofParts.keys()].map((bedId) => charge(bedId, 'parts', ofParts)),
    ...[...ofFills.keys()].map((bedId) => charge(bedId, 'fill', ofFills)),
  ]);
}

/** What was used of stock, and what was put on beds without going through it. */
export function usedCharges(db: FarmDb, farm: FarmRow, season: Span, { used, fills }: Spent): readonly Charge[] {
  const fillings = new Set(fills.map(fillingOf));
  const isFilling = (move: ValuedMove) => move.bedId !== null && fillings.has(fillingOf(move));
  const fromStock = stockCharges(used, season.start, season.end, isFilling, farm.overheadKey);
  // what went through the stock is charged at its ledger cost already
  const through = new Set(
    used.flatMap((move) => (move.applicationId === null ? [] : [`${move.applicationId} ${move.bedId ?? ''}`])),
  );
  const outside = applicationCosts(db, season.start, season.end).filter(
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
  return someOf([...fromStock, ...applied]);
}

/** Hours that were worked. */
export function labourCharges(
  labour: readonly LabourFact[],
  blocks: readonly BlockOfBed[],
  beds: readonly BedSpan[],
): readonly Charge[] {
  const areaOf = new Map(beds.map((bed) => [bed.bedId, bed.area_m2]));
  const weights = Map.groupBy(
    blocks.map(({ bedId, blockId }) => ({ bedId, blockId, weight: areaOf.get(bedId) ?? 0 })),
    ({ blockId }) => blockId,
  );
  return someOf(
    labour.map((row): Charge => ({ kind: 'labour', amount_minor: row.wages_minor, target: labourTarget(row, weights) })),
  );
}

export function overheadCharges(db: FarmDb, seasonId: string): readonly Charge[] {
  return someOf(
    overheadsOfSeason(db, seasonId).map(
      (row): Charge => ({ kind: 'overhead', amount_minor: row.amount_minor, target: { to: 'all', key: row.shareKey } }),
    ),
  );
}

type BlockOfBed = { readonly bedId: string; readonly blockId: string };

function labourTarget(
  row: LabourFact,
  weights: ReadonlyMap<string, readonly { bedId: string; weight: number }[]>,
): Charge['target'] {
  if (row.plantingId !== null && row.bedId !== null)
    return { to: 'planting-in-bed', plantingId: row.plantingId, bedId: row.bedId };
  if (row.plantingId !== null) return { to: 'planting', plantingId: row.plantingId };
  if (row.bedId !== null) return { to: 'bed', bedId: row.bedId };
  if (row.blockId !== null) return { to: 'beds', weights: weights.get(row.blockId) ?? [] };
  return { to: 'nobody' };
}
