import type { CropRow, CropValueRow } from '../library/read-crops.ts';

/** The library's facts of a crop as the generator wants them. */
export type SampleFacts = {
  readonly family: string;
  readonly yieldPerM2: number | null;
  readonly inRow_m: number;
  readonly row_m: number;
  readonly weeksIndoors: number;
  readonly name: string;
  readonly needsTrellis: boolean;
};

const FALLBACK_SPACING_M = 0.25;

export function factsByCrop(library: {
  readonly crops: readonly CropRow[];
  readonly values: readonly CropValueRow[];
}): ReadonlyMap<string, SampleFacts> {
  const numbers = new Map(library.values.map((value) => [`${value.cropId}:${value.name}`, value.number ?? null]));
  const number = (cropId: string, name: string) => numbers.get(`${cropId}:${name}`) ?? null;
  return new Map(
    library.crops.map((crop) => {
      const intensive = number(crop.id, 'intensive_m');
      const inRow = intensive ?? number(crop.id, 'in_row_m') ?? FALLBACK_SPACING_M;
      return [
        crop.id,
        {
          family: crop.family,
          name: crop.name,
          needsTrellis: number(crop.id, 'trellis') === 1,
          yieldPerM2: number(crop.id, 'yield_typical_per_m2'),
          inRow_m: inRow,
          row_m: intensive ?? number(crop.id, 'row_m') ?? inRow,
          weeksIndoors: number(crop.id, 'weeks_indoors_max') ?? 5,
        },
      ];
    }),
  );
}
