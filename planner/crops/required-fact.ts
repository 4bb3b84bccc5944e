import { refuse } from '../errors.ts';
import { entry, library, type Origin, source } from '../working.ts';
import { type KnownFacts, type NumberFact, numberOf } from './crop-facts.ts';
import { printedSource } from './crop-sources.ts';

const factTitles: Partial<Record<NumberFact, string>> = {
  maturity_min_days: 'days to maturity of an early variety',
  maturity_max_days: 'days to maturity of a late variety',
  harvest_window_days: 'days from first to last harvest',
  weeks_indoors_min: 'weeks from sowing to planting out, at least',
  weeks_indoors_max: 'weeks from sowing to planting out, at most',
  intensive_m: 'spacing in a bed',
  seeds_per_g: 'seeds per gram',
  germination_share: 'germination',
  gdd_base_C: 'base temperature',
  gdd_to_harvest_C_days: 'heat sum to first harvest',
  yield_typical_per_m2: 'typical yield',
};

/** The fact's name as the reader sees it. */
export const titleOfFact = (name: NumberFact): string => factTitles[name] ?? name.replaceAll('_', ' ');

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
