/**
 * How often a family may stand in one piece of bed within the season: `once`; `one-crop`, again and again but only with one
 * and the same crop; `not-back-to-back`, not as the very next planting; `free`.
 */
export type InSeasonRule = 'once' | 'one-crop' | 'not-back-to-back' | 'free';

export type FamilyRule = { readonly name: string; readonly inSeason: InSeasonRule };

/** Weeks a piece of bed is taken whatever is proposed: `fromWeek` up to but not counting `toWeek`. */
export type FixedSpan = {
  readonly fromWeek: number;
  readonly toWeek: number;
  /** Index of the family that stands there; null for a rest, a repair or a cover crop without a family rule. */
  readonly family: number | null;
  /** Index of the crop, where it is one of the season's crops. */
  readonly crop?: number | null;
};

/** The smallest piece planted alone: a bed, or one part of a bed that may be split. */
export type PlantingUnit = {
  readonly id: string;
  readonly bedId: string;
  /** Beds of one block in the order they lie; parts of one bed follow each other. */
  readonly block: number;
  readonly position: number;
  readonly part: number;
  readonly area_m2: number;
  readonly zone: number;
  /** Crops that this piece can carry: kind, depth, sun and trellis seen to by the caller. */
  readonly cropsFit: readonly number[];
  /** Families barred by what grew here before. */
  readonly barredFamilies: readonly number[];
  readonly fixed: readonly FixedSpan[];
  /** Seasons since each family last stood here; families never seen are left out. Only for the naming of beds. */
  readonly seasonsSince: Readonly<Record<number, number>>;
};

/** A crop put in at one week. Arrays run over its occupied weeks, the first being `startWeek`. */
export type PlantingOption = {
  readonly startWeek: number;
  /** Harvest of each occupied week in the crop's own unit, per m2. Its length is the time the bed is taken. */
  readonly harvest_per_m2: readonly number[];
  readonly labour_h_per_m2: readonly number[];
  readonly water_L_per_m2: readonly number[];
  /** Bench space in the weeks before `startWeek`, the last entry being the week just before. Empty when sown in place. */
  readonly bench_m2_per_m2: readonly number[];
  readonly cost_minor_per_m2: number;
};

/** What can be sold of a crop in one week: a standing order first, then market steps at falling prices. */
export type WeekDemand = {
  readonly week: number;
  readonly contract: number;
  readonly contractPrice_minor: number;
  /** Lost for each unit of the standing order that is not delivered, beside its price. */
  readonly penalty_minor: number;
  readonly tiers: readonly { readonly cap: number; readonly price_minor: number }[];
};

export type SeasonCrop = {
  readonly name: string;
  readonly family: number;
  /** Weeks after its harvest in which it can still be sold; 0 means the week of harvest only. */
  readonly shelf_weeks: number;
  readonly overhead_minor: number;
  /** Charge on each unit by which the harvest of a demand week differs from the week before. */
  readonly steadiness_minor: number;
  readonly options: readonly PlantingOption[];
  readonly demand: readonly WeekDemand[];
};

/** What stands whatever is proposed: plantings in the ground and those the grower pinned. */
export type StandingLoad = {
  readonly harvest: readonly (readonly number[])[];
  readonly labour_h: readonly number[];
  readonly water_L: readonly (readonly number[])[];
  readonly bench_m2: readonly number[];
  readonly cropsGrown: readonly number[];
  /** Direct costs; the wage of its hours comes on top. */
  readonly cost_minor: number;
};

/**
 * One season to be planned. Weeks count from 0. A crop's amounts are in its own selling unit. A missing limit is
 * `Infinity`.
 */
export type SeasonInstance = {
  readonly weeks: number;
  readonly families: readonly FamilyRule[];
  readonly units: readonly PlantingUnit[];
  readonly crops: readonly SeasonCrop[];
  readonly wage_minor_per_h: number;
  readonly labourCap_h: readonly number[];
  readonly overtimeMost_h: number;
  readonly overtimePremium_minor_per_h: number;
  /** Most water by zone and week. */
  readonly waterCap_L: readonly (readonly number[])[];
  readonly benchCap_m2: readonly number[];
  readonly mostCrops: number;
  readonly standing: StandingLoad | null;
};

/** A chosen plan: for each unit the plantings in it, each a crop and one of its options. */
export type PlannedPlanting = { readonly crop: number; readonly option: number };
export type SeasonPlan = readonly (readonly PlannedPlanting[])[];
