import type { IsoDate } from '../../calendar.ts';
import type { GrowthClock } from '../growth-clock.ts';
import type { PlanBed, PlanPlanting, PlanRules } from '../plan.ts';
import type { CropFigures } from './crop-figures.ts';
import type { WaterUse } from './option-of-dates.ts';

/** A bed with where it lies, how it is split, and the water line that feeds it. */
export type SeasonBed = PlanBed & {
  readonly block: number;
  readonly position: number;
  /** Index of its water line among the zones; the last zone is for beds on none. */
  readonly zone: number;
  /** Places along its length at which it is split, 0 and 1 left out. */
  readonly splitAt: readonly number[];
};

/** A planting of the present plan. `isFree` may be moved or taken out by a proposal; the others stand. */
export type PresentPlanting = PlanPlanting & { readonly isFree: boolean };

/** The farm's season as the proposal takes it. */
export type FarmSeason = {
  readonly rules: PlanRules;
  /** Nothing is proposed to go into a bed before this day. */
  readonly today: IsoDate;
  readonly beds: readonly SeasonBed[];
  readonly plantings: readonly PresentPlanting[];
  readonly crops: readonly CropFigures[];
  readonly clock: GrowthClock;
  readonly waterUse: WaterUse;
  readonly zoneNames: readonly string[];
  readonly wage_minor_per_h: number;
  readonly labour_h_per_week: number;
  readonly overtimeMost_h: number;
  readonly overtimePremium_minor_per_h: number;
  /** Most water a week of each zone; `Infinity` where no limit is known. */
  readonly water_L_per_week: readonly number[];
  readonly bench_m2: number;
  readonly mostCrops: number | null;
  readonly caution: number;
};
