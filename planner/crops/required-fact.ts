import { refuse } from '../errors.ts';
import { entry, library, type Origin, source } from '../working.ts';
import { type KnownFacts, type NumberFact, numberOf } from './crop-facts.ts';
import { printedSource } from './crop-sources.ts';

const factTitles: Readonly<Record<NumberFact, string>> = {
  germ_days: 'days to emergence at the best temperature',
  germ_min_C: 'soil temperature for germination, least',
  germ_opt_C: 'soil temperature for germination, best',
  germ_max_C: 'soil temperature for germination, most',
  gdd_base_C: 'base temperature',
  gdd_upper_C: 'upper temperature limit',
  gdd_to_harvest_C_days: 'heat sum to first harvest, °C days',
  weeks_indoors_min: 'weeks from sowing to planting out, at least',
  weeks_indoors_max: 'weeks from sowing to planting out, at most',
  maturity_min_days: 'days to maturity of an early variety',
  maturity_max_days: 'days to maturity of a late variety',
  harvest_window_days: 'days from first to last harvest',
  succession_days: 'days between sowings',
  in_row_m: 'spacing in the row',
  row_m: 'distance between rows',
  intensive_m: 'spacing in a bed',
  sowing_depth_m: 'sowing depth',
  seeds_per_g: 'seeds per gram',
  germination_share: 'germination',
  field_emergence_share: 'emergence outdoors',
  yield_low_per_m2: 'low yield of a square metre',
  yield_typical_per_m2: 'typical yield of a square metre',
  yield_high_per_m2: 'high yield of a square metre',
  root_depth_m: 'root depth',
  height_m: 'height',
  trellis: 'climbs (1) or not (0)',
  kc_ini: 'crop coefficient, early',
  kc_mid: 'crop coefficient, full-grown',
  kc_end: 'crop coefficient, at the end',
  stage_ini_days: 'early stage, days',
  stage_dev_days: 'developing stage, days',
  stage_mid_days: 'full-grown stage, days',
  stage_late_days: 'late stage, days',
  depletion_share: 'water that may be used up before stress',
  salinity_threshold_dS_per_m: 'salt borne without loss',
  salinity_slope_share_per_dS_per_m: 'yield lost for each dS/m of salt beyond',
  removal_n_kg_per_kg: 'nitrogen taken away with the harvest',
  removal_p2o5_kg_per_kg: 'phosphate taken away with the harvest',
  removal_k2o_kg_per_kg: 'potash taken away with the harvest',
  min_soil_depth_m: 'least depth of soil',
  cells_per_tray: 'cells in a tray',
};

/** The fact's name as the reader sees it. */
export const titleOfFact = (name: NumberFact): string => factTitles[name];

/**
 * A fact that a computation can't do without.
 * @throws InputError at `path` when it is not known: blank stays "not known" and is asked for only here
 */
export function requiredFact(facts: KnownFacts, name: NumberFact, cropName: string, path: string = name): number {
  return (
    numberOf(facts, name) ??
    refuse(path, 'not-known', `${cropName}: the ${titleOfFact(name)} is not known. Enter it in the crop's row of the library.`)
  );
}

/** Where a fact came from, in the words of a working. */
export function originOfFact(facts: KnownFacts, name: NumberFact): Origin {
  const fact = facts.get(name);
  if (fact === undefined) return entry();
  if (fact.origin === 'own') return entry(fact.ofVariety ? 'your own figure for the variety' : 'your own figure for the crop');
  if (fact.origin === 'learned') return source(`the farm's own records: ${fact.source}`);
  return library(printedSource(fact.source));
}
