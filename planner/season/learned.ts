import { daysBetween, type IsoDate, yearOf } from '../calendar.ts';
import { refuse } from '../errors.ts';

/** A planting that has happened, as far as its records go. */
export type Happened = {
  readonly cropId: string;
  readonly varietyId: string | null;
  readonly method: 'direct' | 'transplant' | 'set';
  readonly wentIn: IsoDate | null;
  readonly firstPicked: IsoDate | null;
  readonly lastPicked: IsoDate | null;
  readonly area_m2: number;
  /** Everything harvested, in `unit`; null when nothing was written down. */
  readonly harvested: number | null;
  readonly unit: string;
};

/** Least, mean and most of a figure over plantings, with how many plantings and how many years it rests on. */
export type Learned = {
  readonly least: number;
  readonly mean: number;
  readonly most: number;
  readonly plantings: number;
  readonly years: number;
};

export type LearnedOfCrop = {
  readonly cropId: string;
  readonly varietyId: string | null;
  readonly method: Happened['method'];
  readonly unit: string;
  readonly toHarvest_days: Learned | null;
  readonly window_days: Learned | null;
  readonly yield_per_m2: Learned | null;
};

type Seen = { readonly value: number; readonly year: number };

function learned(seen: readonly Seen[]): Learned | null {
  if (seen.length === 0) return null;
  const values = seen.map((each) => each.value);
  return {
    least: Math.min(...values),
    mean: values.reduce((sum, value) => sum + value, 0) / values.length,
    most: Math.max(...values),
    plantings: values.length,
    years: new Set(seen.map((each) => each.year)).size,
  };
}

/**
 * What the farm's own records teach: days from bed to first harvest, days of harvest and yield of a square metre, by crop,
 * variety, method and unit, each with how many plantings and years it rests on. A planting without the record in question
 * is left out of that figure, never guessed. The mean is plain: with few plantings it is a hint, no law.
 */
export function learnedFrom(plantings: readonly Happened[]): readonly LearnedOfCrop[] {
  const groups = new Map<string, Happened[]>();
  for (const each of plantings) {
    const key = [each.cropId, each.varietyId ?? '', each.method, each.unit].join('/');
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, group]) => {
      const [one] = group;
      if (one === undefined) return [];
      const days = group.flatMap(({ wentIn, firstPicked }): Seen[] =>
        wentIn !== null && firstPicked !== null && firstPicked > wentIn
          ? [{ value: daysBetween(wentIn, firstPicked), year: yearOf(wentIn) }]
          : [],
      );
      const windows = group.flatMap(({ firstPicked, lastPicked }): Seen[] =>
        firstPicked !== null && lastPicked !== null && lastPicked >= firstPicked
          ? [{ value: daysBetween(firstPicked, lastPicked), year: yearOf(firstPicked) }]
          : [],
      );
      const yields = group.flatMap(({ harvested, area_m2, wentIn }): Seen[] =>
        harvested !== null && area_m2 > 0 && wentIn !== null ? [{ value: harvested / area_m2, year: yearOf(wentIn) }] : [],
      );
      const { cropId, varietyId, method, unit } = one;
      return [
        {
          cropId,
          varietyId,
          method,
          unit,
          toHarvest_days: learned(days),
          window_days: learned(windows),
          yield_per_m2: learned(yields),
        },
      ];
    });
}

/** How it is said in a list of sources: "3 plantings in 2 years". */
export const restsOn = ({ plantings, years }: Learned): string =>
  `${plantings} ${plantings === 1 ? 'planting' : 'plantings'} in ${years} ${years === 1 ? 'year' : 'years'}`;

/** A grower's heat sum to first harvest: the mean over his own plantings. @throws InputError when there is none */
export function calibratedHeat_C_days(sums_C_days: readonly number[]): number {
  if (sums_C_days.length === 0) refuse('sums_C_days', 'not-known', 'No planting with weather on record yet.');
  return sums_C_days.reduce((sum, each) => sum + each, 0) / sums_C_days.length;
}
