import type { FarmDb } from '../../db/file/open-farm.ts';
import { applicationsWithoutCost, type FillFact, partsBetween } from '../../db/repositories/cost-facts.ts';
import { materialFacts } from '../../db/repositories/stock.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import type { ShareKey } from '../../planner/costs/allocate.ts';
import { isChargedIn } from '../../planner/costs/part-charge.ts';
import type { Charge, ChargeTarget } from '../../planner/costs/spread-charges.ts';
import { kgPerBaseUnit, litresPerBaseUnit } from '../../planner/soil/base-unit.ts';
import type { FedBeds } from './line-charges.ts';
import { type LinePartCost, lastingLinePart } from './line-part-costs.ts';
import { fillingOf, targetOf, usesOf, type ValuedMove } from './stock-charges.ts';

type Span = { readonly start: IsoDate; readonly end: IsoDate };

/** Something in the season's costs whose price nobody knows, and what its cost would belong to. */
export type Unpriced = {
  readonly materialId: string;
  readonly what: 'fill' | 'bed-part' | 'line-part' | 'used' | 'dose';
  /** In the material's base unit; null where it is not known how much of that it is. */
  readonly amount: number | null;
  readonly target: ChargeTarget;
};

/** What of a season's costs has no price that anyone knows: it is in no sum, so the sums are the least that the season cost. */
export function unpricedCosts(input: {
  readonly db: FarmDb;
  readonly season: Span;
  readonly used: readonly ValuedMove[];
  readonly fills: readonly FillFact[];
  readonly lineParts: readonly LinePartCost[];
  readonly fed: FedBeds;
  readonly overheadKey: ShareKey;
}): readonly Unpriced[] {
  const { db, season, used, fills } = input;
  const facts = materialFacts(db);
  const unitsOf = (materialId: string, measure: number, per: typeof litresPerBaseUnit): number | null => {
    const material = facts.get(materialId);
    const perUnit = material === undefined ? null : per(material);
    return perUnit === null ? null : measure / perUnit;
  };
  const fillings = new Set(fills.map(fillingOf));
  const isFilling = (move: ValuedMove) => move.bedId !== null && fillings.has(fillingOf(move));
  const lasts = (part: { readonly life_years: number; readonly from: string; readonly until: string | null }) =>
    isChargedIn(lastingLinePart({ ...part, price_minor: 0 }), season);
  return [
    ...fills
      .filter((fill) => fill.unpriced_L > 0 && lasts({ life_years: fill.life_years, from: fill.date, until: null }))
      .map(
        (fill): Unpriced => ({
          materialId: fill.materialId,
          what: 'fill',
          amount: unitsOf(fill.materialId, fill.unpriced_L, litresPerBaseUnit),
          target: { to: 'bed', bedId: fill.bedId },
        }),
      ),
    ...partsBetween(db, season.start, season.end)
      .filter((part) => part.unpricedAmount > 0 && lasts(part))
      .map(
        (part): Unpriced => ({
          materialId: part.materialId,
          what: 'bed-part',
          amount: part.unpricedAmount,
          target: { to: 'bed', bedId: part.bedId },
        }),
      ),
    ...input.lineParts
      .filter((part) => part.unpricedAmount > 0 && lasts(part))
      .map(
        (part): Unpriced => ({
          materialId: part.materialId,
          what: 'line-part',
          amount: part.unpricedAmount,
          target: { to: 'beds', weights: input.fed.get(part.lineId) ?? [] },
        }),
      ),
    ...usesOf(used, season.start, season.end, isFilling)
      .filter((move) => move.unpricedAmount > 0 && move.kind === 'use')
      .map(
        (move): Unpriced => ({
          materialId: move.materialId,
          what: 'used',
          amount: move.unpricedAmount,
          target: targetOf(move, input.overheadKey),
        }),
      ),
    ...applicationsWithoutCost(db, season.start, season.end).map(
      (row): Unpriced => ({
        materialId: row.materialId,
        what: 'dose',
        amount: unitsOf(row.materialId, row.amount_kg, kgPerBaseUnit),
        target:
          row.plantingId === null
            ? { to: 'bed', bedId: row.bedId }
            : { to: 'planting-in-bed', plantingId: row.plantingId, bedId: row.bedId },
      }),
    ),
  ];
}

/** Large enough that every bed and planting that would bear some of it gets some. */
const MARK_MINOR = 1_000_000;

/** Each unpriced thing as a mark that is shared by the rule of its cost: whoever gets some of the mark has a cost that is not known. */
export const marksOf = (unpriced: readonly Unpriced[]): readonly Charge[] =>
  unpriced.map(({ target }): Charge => ({ kind: 'inputs', amount_minor: MARK_MINOR, target }));

export type UnpricedMaterial = {
  readonly materialId: string;
  readonly material: string;
  readonly baseUnit: string;
  /** How many things of it have no price. */
  readonly things: number;
  /** Null where it is not known how much of the base unit it is. */
  readonly amount: number | null;
};

/** What has no price, material by material: one price mends all of it. */
export function unpricedByMaterial(db: FarmDb, unpriced: readonly Unpriced[]): readonly UnpricedMaterial[] {
  const facts = materialFacts(db);
  return [...Map.groupBy(unpriced, (each) => each.materialId)]
    .map(
      ([materialId, of]): UnpricedMaterial => ({
        materialId,
        material: facts.get(materialId)?.name ?? '',
        baseUnit: facts.get(materialId)?.baseUnit ?? 'count',
        things: of.length,
        amount: of.some((each) => each.amount === null) ? null : of.reduce((sum, each) => sum + (each.amount ?? 0), 0),
      }),
    )
    .toSorted((a, b) => a.material.localeCompare(b.material));
}
