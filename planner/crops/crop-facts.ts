/** Who says so: the shipped library, the grower, or the farm's own records. */
export type FactOrigin = 'library' | 'own' | 'learned';

/** One fact as the farm file holds it. `varietyId` null means it holds for every variety of the crop. */
export type CropFact = {
  readonly name: string;
  readonly varietyId: string | null;
  readonly number: number | null;
  readonly words: string | null;
  readonly origin: FactOrigin;
  readonly source: string;
};

/** Every fact of a crop that a number can hold, canonical unit in the name; shares run from 0 to 1. */
export const numberFacts = [
  'germ_days',
  'germ_min_C',
  'germ_opt_C',
  'germ_max_C',
  'gdd_base_C',
  'gdd_upper_C',
  'gdd_to_harvest_C_days',
  'weeks_indoors_min',
  'weeks_indoors_max',
  'maturity_min_days',
  'maturity_max_days',
  'harvest_window_days',
  'succession_days',
  'in_row_m',
  'row_m',
  'intensive_m',
  'sowing_depth_m',
  'seeds_per_g',
  'germination_share',
  'field_emergence_share',
  'yield_low_per_m2',
  'yield_typical_per_m2',
  'yield_high_per_m2',
  'root_depth_m',
  'height_m',
  'trellis',
  'kc_ini',
  'kc_mid',
  'kc_end',
  'stage_ini_days',
  'stage_dev_days',
  'stage_mid_days',
  'stage_late_days',
  'depletion_share',
  'salinity_threshold_dS_per_m',
  'salinity_slope_share_per_dS_per_m',
  'removal_n_kg_per_kg',
  'removal_p2o5_kg_per_kg',
  'removal_k2o_kg_per_kg',
  'min_soil_depth_m',
  'cells_per_tray',
] as const;

/** Facts told in words. */
export const wordFacts = [
  'season',
  'frost_tolerance',
  'sow_method',
  'days_counted_from',
  'yield_unit',
  'stage_basis',
  'shade_tolerance',
] as const;

export type NumberFact = (typeof numberFacts)[number];
export type WordFact = (typeof wordFacts)[number];

export type KnownFact = {
  readonly number: number | null;
  readonly words: string | null;
  readonly origin: FactOrigin;
  readonly source: string;
  /** True when it was told of the variety and not of the crop as a whole. */
  readonly ofVariety: boolean;
};

/** What is known of a crop or variety. A fact that is not there is not known; nothing is put in its place. */
export type KnownFacts = ReadonlyMap<string, KnownFact>;

/** The farther down the list, the nearer to the grower's own field. */
const rank = (fact: CropFact): number => {
  const ofVariety = fact.varietyId === null ? 0 : 10;
  const byOrigin = { library: 0, learned: 1, own: 2 }[fact.origin];
  return ofVariety + byOrigin;
};

/**
 * Lays the grower's own figures over the library's: a variety's figure goes before the crop's, and in each the
 * grower's own before what the records taught, before the library's.
 * @param varietyId null for the crop as a whole
 */
export function knownFacts(facts: readonly CropFact[], varietyId: string | null): KnownFacts {
  const best = new Map<string, CropFact>();
  for (const fact of facts) {
    if (fact.varietyId !== null && fact.varietyId !== varietyId) continue;
    const present = best.get(fact.name);
    if (present === undefined || rank(fact) > rank(present)) best.set(fact.name, fact);
  }
  return new Map(
    [...best].map(([name, fact]) => [
      name,
      {
        number: fact.number,
        words: fact.words,
        origin: fact.origin,
        source: fact.source,
        ofVariety: fact.varietyId !== null,
      },
    ]),
  );
}

export const numberOf = (facts: KnownFacts, name: NumberFact): number | null => facts.get(name)?.number ?? null;
export const wordsOf = (facts: KnownFacts, name: WordFact): string | null => facts.get(name)?.words ?? null;
