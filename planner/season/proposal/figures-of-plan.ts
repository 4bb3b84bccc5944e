import { daysBetween } from '../../calendar.ts';
import type { PlanOutcome } from '../optimise/evaluate.ts';
import type { SeasonInstance } from '../optimise/instance.ts';
import type { PlanBed, PlanPlanting } from '../plan.ts';

const WEEK_DAYS = 7;

/** What a plan comes to, in the figures a grower compares. Money is rounded once, here. */
export type PlanFigures = {
  readonly margin_minor: number;
  readonly sales_minor: number;
  readonly missed_minor: number;
  readonly direct_minor: number;
  readonly wages_minor: number;
  /** Once for each crop grown at all. */
  readonly overhead_minor: number;
  readonly hours_h: number;
  readonly overtime_h: number;
  readonly water_L: number;
  readonly bedWeeks_m2: number;
  readonly crops: number;
  /** Share of the standing orders that is delivered, by what they are worth. */
  readonly ordersMet_share: number;
  readonly labour_h_by_week: readonly number[];
  readonly labourCap_h_by_week: readonly (number | null)[];
  readonly water_L_by_week: readonly (readonly number[])[];
  readonly waterCap_L_by_week: readonly (readonly (number | null)[])[];
  readonly byCrop: readonly CropFigure[];
};

export type CropFigure = {
  readonly crop: number;
  readonly area_m2: number;
  readonly harvest: number;
  readonly sold: number;
  readonly ordered: number;
  readonly delivered: number;
  readonly sales_minor: number;
};

const sum = (list: readonly number[]): number => list.reduce((total, each) => total + each, 0);

/** Area times weeks that plantings take of their beds: one m2 for one week is 1. Source: definition. */
export function bedWeeksOf_m2(plantings: readonly PlanPlanting[], beds: readonly Pick<PlanBed, 'id' | 'area_m2'>[]): number {
  const areaOf = new Map(beds.map(({ id, area_m2 }) => [id, area_m2]));
  return plantings.reduce((total, { inBed, free, spans }) => {
    const area_m2 = sum(spans.map(({ bedId, fromShare, toShare }) => (areaOf.get(bedId) ?? 0) * (toShare - fromShare)));
    return total + (area_m2 * daysBetween(inBed, free)) / WEEK_DAYS;
  }, 0);
}

/** @param bedWeeks_m2 area times weeks of the whole plan: the outcome knows only what was proposed */
export function figuresOfPlan(instance: SeasonInstance, outcome: PlanOutcome, bedWeeks_m2: number): PlanFigures {
  const worth = instance.crops.map((crop) =>
    crop.demand.reduce((total, week) => total + week.contract * (week.contractPrice_minor + week.penalty_minor), 0),
  );
  const missed = outcome.crops.map(({ crop, short }) =>
    short.reduce((total, { week, amount }) => {
      const of = instance.crops[crop]?.demand.find((each) => each.week === week);
      return total + amount * ((of?.contractPrice_minor ?? 0) + (of?.penalty_minor ?? 0));
    }, 0),
  );
  const all = sum(worth);
  const finite = (cap: number): number | null => (Number.isFinite(cap) ? cap : null);
  return {
    margin_minor: Math.round(outcome.margin_minor),
    sales_minor: Math.round(outcome.revenue_minor),
    missed_minor: Math.round(outcome.penalty_minor),
    direct_minor: Math.round(outcome.direct_minor),
    wages_minor: Math.round(outcome.wage_minor + outcome.overtime_minor),
    overhead_minor: Math.round(outcome.overhead_minor),
    hours_h: sum(outcome.labour_h),
    overtime_h: sum(outcome.labour_h.map((hours, week) => Math.max(0, hours - (instance.labourCap_h[week] ?? 0)))),
    water_L: sum(outcome.water_L.map(sum)),
    bedWeeks_m2,
    crops: outcome.crops.filter(({ harvest }) => harvest.some((amount) => amount > 0)).length,
    ordersMet_share: all > 0 ? 1 - sum(missed) / all : 1,
    labour_h_by_week: outcome.labour_h,
    labourCap_h_by_week: instance.labourCap_h.map(finite),
    water_L_by_week: outcome.water_L,
    waterCap_L_by_week: instance.waterCap_L.map((cap) => cap.map(finite)),
    byCrop: outcome.crops.map(({ crop, area_m2, harvest, sales, contract, contractSold, revenue_minor }) => ({
      crop,
      area_m2,
      harvest: sum(harvest),
      sold: sum(sales.map(({ amount }) => amount)),
      ordered: contract,
      delivered: contractSold,
      sales_minor: Math.round(revenue_minor),
    })),
  };
}
