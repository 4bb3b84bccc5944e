import type { IsoDate } from '../../calendar.ts';
import type { HarvestForm, YieldRange } from '../harvest-spread.ts';
import type { Timing } from '../maturity.ts';
import type { CropNeeds } from '../plan.ts';

/** What one outlet takes of a crop each week, in the unit the crop is counted in. */
export type Order = {
  readonly kind: 'standing' | 'market';
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly perWeek: number;
  readonly price_minor: number;
  readonly penalty_minor: number;
};

/** Hours that a crop takes: by area when it goes in and when it is cleared, by area and week while it stands, by what is picked. */
export type CropHours = {
  readonly plant_h_per_m2: number;
  readonly care_h_per_m2_week: number;
  readonly clear_h_per_m2: number;
  readonly harvest_h_per_unit: number;
};

/** Everything the proposal counts with for one crop. */
export type CropFigures = {
  readonly needs: CropNeeds;
  readonly timing: Timing;
  readonly form: HarvestForm;
  readonly unit: string;
  readonly yield_per_m2: YieldRange;
  readonly hours: CropHours;
  /** Seed, young plants, feed and other direct costs, without hours. */
  readonly direct_minor_per_m2: number;
  /** Bench space that the young plants for a square metre of bed take. */
  readonly bench_m2_per_m2: number;
  readonly shelf_weeks: number;
  readonly overhead_minor: number;
  readonly orders: readonly Order[];
};

/**
 * The yield that is counted on: the typical one, lowered by the grower's caution.
 *
 *   y = typical - kappa (high - low) / 4
 *
 *   kappa      caution                              -    0 (count on the typical yield) to 2
 *   high-low   the span, taken as four deviations   unit/m2
 *
 * Taking the span as four standard deviations, and kappa 0.5, are common practice, no source.
 */
export function plannedYield_per_m2({ low, typical, high }: YieldRange, caution: number): number {
  return Math.max(0, typical - (caution * Math.max(0, high - low)) / 4);
}

/** The grower's usual caution. Common practice, no source. */
export const USUAL_CAUTION = 0.5;
