import { fileURLToPath } from 'node:url';
import { readCropLibrary } from '../../../api/library/read-crops.ts';
import {
  type KnownFacts,
  knownFacts,
  type NumberFact,
  numberOf,
  type WordFact,
  wordsOf,
} from '../../../planner/crops/crop-facts.ts';
import { cropOfName } from '../../../planner/crops/crop-names.ts';

const shipped = readCropLibrary(fileURLToPath(new URL('../../../resources', import.meta.url)));
const factsById = new Map<string, KnownFacts>();

function factsOf(cropId: string): KnownFacts {
  const present = factsById.get(cropId);
  if (present !== undefined) return present;
  const rows = shipped.values
    .filter((value) => value.cropId === cropId)
    .map((value) => ({
      name: value.name,
      varietyId: null,
      number: value.number ?? null,
      words: value.words ?? null,
      origin: value.origin,
      source: value.source ?? '',
    }));
  const facts = knownFacts(rows, null);
  factsById.set(cropId, facts);
  return facts;
}

/** The shipped crop that a case means, with what the library knows of it. */
export function libraryCrop(name: string) {
  const crops = shipped.crops.map((crop) => ({ id: crop.id, name: crop.name, family: crop.family }));
  const crop = cropOfName(crops, name);
  if (crop === undefined) throw new Error(`the library has no ${name}`);
  const facts = factsOf(crop.id);
  return {
    id: crop.id,
    family: crop.family,
    number: (fact: NumberFact): number | null => numberOf(facts, fact),
    words: (fact: WordFact): string | null => wordsOf(facts, fact),
  };
}
