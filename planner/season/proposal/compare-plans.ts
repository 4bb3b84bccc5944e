import { dayNumber, type IsoDate } from '../../calendar.ts';
import type { SeasonPlan } from '../optimise/instance.ts';
import type { PlantingDates } from '../planting-dates.ts';
import type { BuiltSeason } from './build-instance.ts';
import type { FarmSeason, PresentPlanting } from './farm-season.ts';

/** One planting of a proposal, on one piece of one bed. */
export type ProposedPlanting = {
  readonly key: string;
  readonly cropId: string;
  readonly bedId: string;
  readonly fromShare: number;
  readonly toShare: number;
  readonly area_m2: number;
  readonly dates: PlantingDates;
};

/** What a proposal does to the present plan, bed by bed. */
export type PlanMove =
  | {
      readonly kind: 'stays' | 'shifts' | 'moves';
      readonly proposed: ProposedPlanting;
      readonly present: PresentSpan;
      readonly days: number;
    }
  | { readonly kind: 'new'; readonly proposed: ProposedPlanting }
  | { readonly kind: 'goes'; readonly present: PresentSpan };

/** A present planting on one bed: what a proposal can take out of it. */
export type PresentSpan = {
  readonly plantingId: string;
  readonly cropId: string;
  readonly bedId: string;
  readonly fromShare: number;
  readonly toShare: number;
  readonly inBed: IsoDate;
  readonly free: IsoDate;
};

/** Within so many days a planting counts as staying where it is. */
const SAME_DAYS = 7;

/** What a plan's numbers stand for: the piece of each unit, the dates of each option, the crops. */
export type PlanKey = Pick<BuiltSeason, 'pieces' | 'dates'> & { readonly cropIds: readonly string[] };

export const planKey = (farm: FarmSeason, { pieces, dates }: BuiltSeason): PlanKey => ({
  pieces,
  dates,
  cropIds: farm.crops.map(({ needs }) => needs.cropId),
});

/** The plan's plantings by name and date. */
export function proposedPlantings(built: PlanKey, plan: SeasonPlan): readonly ProposedPlanting[] {
  return plan.flatMap((row, u) => {
    const piece = built.pieces[u];
    if (piece === undefined) return [];
    return row.flatMap(({ crop, option }) => {
      const dates = built.dates[crop]?.[option];
      const cropId = built.cropIds[crop];
      if (dates === undefined || cropId === undefined) return [];
      return [{ key: `${piece.bedId}:${Math.round(piece.fromShare * 1000)}:${dates.inBed}`, cropId, ...piece, dates }];
    });
  });
}

/** Spans of the present plan that a proposal may change. */
export const freeSpans = (plantings: readonly PresentPlanting[]): readonly PresentSpan[] =>
  plantings
    .filter(({ isFree }) => isFree)
    .flatMap(({ id, crop, inBed, free, spans }) =>
      spans.map(({ bedId, fromShare, toShare }) => ({
        plantingId: id,
        cropId: crop.cropId,
        bedId,
        fromShare,
        toShare,
        inBed,
        free,
      })),
    );

/**
 * Pairs each proposed planting with one of the present plan of the same crop: first in the same bed, the nearest in time; then
 * in any bed. What pairs with none is new; what no proposed planting pairs with goes.
 */
export function comparePlans(present: readonly PresentSpan[], proposed: readonly ProposedPlanting[]): readonly PlanMove[] {
  const left = new Set(present);
  const moves: PlanMove[] = [];
  const days = (a: ProposedPlanting, b: PresentSpan) => dayNumber(a.dates.inBed) - dayNumber(b.inBed);
  const nearest = (of: ProposedPlanting, inBed: boolean): PresentSpan | null => {
    let best: PresentSpan | null = null;
    for (const span of left) {
      if (span.cropId !== of.cropId || (inBed && span.bedId !== of.bedId)) continue;
      if (best === null || Math.abs(days(of, span)) < Math.abs(days(of, best))) best = span;
    }
    return best;
  };
  const unpaired: ProposedPlanting[] = [];
  for (const each of proposed) {
    const span = nearest(each, true);
    if (span === null) {
      unpaired.push(each);
      continue;
    }
    left.delete(span);
    const by = days(each, span);
    const samePiece = Math.abs(span.fromShare - each.fromShare) + Math.abs(span.toShare - each.toShare) < 1e-6;
    moves.push({ kind: Math.abs(by) <= SAME_DAYS && samePiece ? 'stays' : 'shifts', proposed: each, present: span, days: by });
  }
  for (const each of unpaired) {
    const span = nearest(each, false);
    if (span === null) moves.push({ kind: 'new', proposed: each });
    else {
      left.delete(span);
      moves.push({ kind: 'moves', proposed: each, present: span, days: days(each, span) });
    }
  }
  for (const span of left) moves.push({ kind: 'goes', present: span });
  return moves;
}
