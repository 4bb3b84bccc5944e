import { derived } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import type { BedStore } from '../../planner/water/bed-store.ts';
import type { BedYear } from '../../planner/water/bed-year.ts';
import { type BedDrying, bedDrying, type IntervalTerms, spellStarts } from '../../planner/water/watering-interval.ts';
import type { WaterBed, WaterFarm } from './load-water.ts';
import { runOfYears, type WeatherRecord } from './weather-record.ts';

/** Longest interval looked for. A bed that lasts longer needs no timer. */
export const MOST_INTERVAL_DAYS = 21;

type Known = { readonly store: BedStore; readonly year: BedYear; readonly drying: BedDrying };

export type BedDryings = {
  readonly terms: IntervalTerms;
  readonly ofBed: ReadonlyMap<string, Known>;
  /** The bed run dry; the first time it is asked for, unless it is made as before. */
  readonly of: (bed: WaterBed) => BedDrying;
};

const sameTerms = (one: IntervalTerms, other: IntervalTerms): boolean =>
  one.weather === other.weather &&
  one.month === other.month &&
  one.confidence === other.confidence &&
  one.most_days === other.most_days &&
  one.standing_days === other.standing_days;

/** The farm's beds run dry through every spell of a month. A bed that is made as before is not run dry again. */
export const bedDryings = (
  db: FarmDb,
  farm: WaterFarm,
  record: WeatherRecord,
  { month, most_days }: Pick<IntervalTerms, 'month' | 'most_days'>,
): BedDryings =>
  derived(
    db,
    `dryings ${farm.season.id} ${month} ${most_days}`,
    (before: BedDryings | undefined) => {
      const { confidence, standing_days } = farm.choices;
      const terms = { weather: runOfYears(record), month, most_days, confidence, standing_days };
      return dryingsUnder(terms, before !== undefined && sameTerms(before.terms, terms) ? before.ofBed : new Map());
    },
    [farm, record],
  );

function dryingsUnder(terms: IntervalTerms, before: ReadonlyMap<string, Known>): BedDryings {
  const starts = spellStarts(terms);
  const ofBed = new Map<string, Known>();
  const isStill = (known: Known | undefined, { store, year }: WaterBed): boolean => known?.store === store && known.year === year;
  return {
    terms,
    ofBed,
    of(bed) {
      const known = [ofBed.get(bed.bedId), before.get(bed.bedId)].find((each) => isStill(each, bed));
      const found = known ?? { store: bed.store, year: bed.year, drying: bedDrying(bed, terms, starts) };
      ofBed.set(bed.bedId, found);
      return found.drying;
    },
  };
}
