import { requireRange } from '../errors.ts';

/**
 * Nitrogen that organic materials free in each year of a run of yearly dressings.
 *
 *   A(y) = sum over j = 0..y of N(j) x s(y - j)
 *
 *   N(j)   organic nitrogen put on in year j      kg (or kg/m2)
 *   s(k)   share freed k years after, s(0) the year of dressing; beyond the series nothing more is counted
 *
 * Series by kind of material are common practice, no source (`decay_series_organic_N` of the soil tables).
 */
export function releaseByYear(organicN_kg: readonly number[], series: readonly number[]): readonly number[] {
  for (const [at, amount] of organicN_kg.entries()) requireRange(`organicN_kg.${at}`, amount, 0, Infinity, 'kg');
  for (const [at, share] of series.entries()) requireRange(`series.${at}`, share, 0, 1, '');
  return organicN_kg.map((_, year) =>
    organicN_kg.slice(0, year + 1).reduce((sum, amount, put) => sum + amount * (series[year - put] ?? 0), 0),
  );
}

/** Share of a material's organic nitrogen freed so many years after it was put on; 0 is the same year. */
export function releasedShare(series: readonly number[], yearsAfter: number): number {
  return yearsAfter < 0 ? 0 : (series[yearsAfter] ?? 0);
}

/**
 * The series a material follows, by its kind and first-year share where a maker or table gives one: the listed later
 * years stand behind the first year's own figure.
 */
export function seriesFor(
  table: Readonly<Record<string, readonly number[]>>,
  material: { readonly kind: string; readonly animalOrigin: string; readonly firstYearNShare: number | null },
): readonly number[] {
  const first = material.firstYearNShare;
  if (first === null) return [];
  const name =
    material.animalOrigin === 'raw'
      ? 'manure-cattle'
      : first >= 0.65
        ? 'animal-meal'
        : first >= 0.45
          ? 'plant-meal'
          : first > 0.15
            ? 'compost-poultry'
            : 'compost-stable';
  // what is available at once (mineral fertilizer) has nothing left for later years
  if (first >= 0.95) return [first];
  const later = (table[name] ?? []).slice(1);
  let left = 1 - first;
  const capped = later.map((share) => {
    const given = Math.min(share, left);
    left -= given;
    return given;
  });
  return [first, ...capped];
}
