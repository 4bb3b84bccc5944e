import type { IsoDate } from '../calendar.ts';
import type { HardinessClass } from '../crops/hardiness.ts';

/** What a crop asks of a bed. Null = not known or asks for nothing. */
export type CropNeeds = {
  readonly cropId: string;
  readonly cropName: string;
  readonly family: string;
  readonly soilDepth_m: number | null;
  readonly needsTrellis: boolean;
  readonly bearsShade: boolean;
  readonly hardiness: HardinessClass | null;
};

export type PlanBed = {
  readonly id: string;
  readonly code: string;
  readonly blockId: string;
  readonly area_m2: number;
  readonly soilDepth_m: number;
  readonly sun: 'full' | 'light-shade' | 'shade';
  readonly hasTrellis: boolean;
  readonly isCovered: boolean;
  readonly built: IsoDate | null;
  readonly retired: IsoDate | null;
  /** The last year in which each family stood here, before the season that is planned. */
  readonly lastYearOf: Readonly<Record<string, number>>;
};

/** The span of a bed's length that a planting stands on, and how many plants of it. */
export type PlanSpan = {
  readonly bedId: string;
  readonly fromShare: number;
  readonly toShare: number;
  readonly plants: number;
  /** The most that fit by the exact layout; null when it was not counted. */
  readonly mostPlants: number | null;
};

export type PlanPlanting = {
  readonly id: string;
  readonly crop: CropNeeds;
  readonly raised: boolean;
  readonly sow: IsoDate | null;
  readonly inBed: IsoDate;
  readonly firstHarvest: IsoDate;
  readonly lastHarvest: IsoDate;
  /** First day on which the bed is free again. */
  readonly free: IsoDate;
  readonly spans: readonly PlanSpan[];
};

export type PlanRules = {
  readonly start: IsoDate;
  readonly end: IsoDate;
  /** Last spring frost and first autumn frost of this season at the chance the grower chose; null when not known. */
  readonly lastFrost: IsoDate | null;
  readonly firstFrost: IsoDate | null;
  /** Last and first night at or below -2.2 C, for what bears a light freeze. */
  readonly firstHardFrost: IsoDate | null;
  /** From when on days are warm enough for each class to grow; left out where no weather is on record. */
  readonly warmFrom?: Readonly<Record<HardinessClass, IsoDate | null>>;
  /** Years between by family, where the grower or a known disease says other than usual. */
  readonly gapYears: Readonly<Record<string, number>>;
  /** True when cuts of one and the same crop may follow each other within the season. */
  readonly mayRepeatCrop: boolean;
};

export type Plan = {
  readonly beds: readonly PlanBed[];
  readonly plantings: readonly PlanPlanting[];
  readonly rules: PlanRules;
};

export type FindingCode =
  | 'overlap'
  | 'dates-out-of-order'
  | 'outside-season'
  | 'no-such-bed'
  | 'bad-share'
  | 'too-many-plants'
  | 'shallow-soil'
  | 'too-little-sun'
  | 'no-trellis'
  | 'rotation-years'
  | 'rotation-season'
  | 'frost-spring'
  | 'frost-autumn'
  | 'too-cool'
  | 'unplaced';

/**
 * How much it weighs: a `clash` cannot be done at all, `barred` breaks a rule of the grower's, a `risk` may go wrong,
 * a `note` only wants to be seen.
 */
export type Weight = 'clash' | 'barred' | 'risk' | 'note';

export type Finding = {
  readonly code: FindingCode;
  readonly weight: Weight;
  readonly plantingId: string;
  /** The other planting of an overlap or of a rotation within the season. */
  readonly otherId: string | null;
  readonly bedId: string | null;
  readonly from: IsoDate | null;
  readonly to: IsoDate | null;
  readonly message: string;
};
