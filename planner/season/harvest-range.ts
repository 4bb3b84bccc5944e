import { dateOfDay, dayNumber, type IsoDate } from '../calendar.ts';
import { empiricalQuantile } from '../climate/frost-quantiles.ts';
import { computed, library, type Working } from '../working.ts';
import { dayReaching, type GrowthClock, madeBetween } from './growth-clock.ts';
import type { DaysRange } from './maturity.ts';

export type DateRange = {
  readonly early: IsoDate;
  readonly likely: IsoDate;
  readonly late: IsoDate;
  /** From the years of weather on record, or from early and late varieties when there is no record. */
  readonly from: 'weather-record' | 'varieties';
  readonly years: number;
};

export type HarvestRangeInput = {
  readonly inBed: IsoDate;
  readonly likely: IsoDate;
  readonly toHarvest: DaysRange;
  /** Degree days of the place's normals over the season planned; null without a record. */
  readonly normals: GrowthClock | null;
  /** Degree days of each year of record, laid on the season planned. */
  readonly years: readonly GrowthClock[];
};

/** A record of fewer years says little about early and late. Common practice, no source. */
export const LEAST_YEARS = 3;

/**
 * How far the first harvest may move. The heat that the normals gather up to the likely date is looked for in each year of
 * record; early and late are the dates that one year in ten comes before and after. With fewer than three years, early
 * and late varieties give the range.
 * Source: quantiles of the farm's record; our rule.
 */
export function harvestRange(input: HarvestRangeInput): DateRange {
  const start = dayNumber(input.inBed);
  const { early_days, late_days } = input.toHarvest;
  const byVarieties: DateRange = {
    early: dateOfDay(Math.min(start + early_days, dayNumber(input.likely))),
    likely: input.likely,
    late: dateOfDay(Math.max(start + late_days, dayNumber(input.likely))),
    from: 'varieties',
    years: 0,
  };
  if (input.normals === null || input.years.length < LEAST_YEARS) return byVarieties;
  const heat = madeBetween(input.normals, start, dayNumber(input.likely));
  if (heat <= 0) return byVarieties;
  const reached = input.years.flatMap((year) => dayReaching(year, start, heat) ?? []);
  if (reached.length < LEAST_YEARS) return byVarieties;
  const at = (p: number): number => Math.round(empiricalQuantile(reached, p));
  return {
    early: dateOfDay(Math.min(at(0.1), dayNumber(input.likely))),
    likely: input.likely,
    late: dateOfDay(Math.max(at(0.9), dayNumber(input.likely))),
    from: 'weather-record',
    years: reached.length,
  };
}

export function explainHarvestRange(input: HarvestRangeInput): Working {
  const range = harvestRange(input);
  const days = (date: IsoDate) => ({ value: dayNumber(date) - dayNumber(input.inBed), unit: 'days' });
  const byRecord = range.from === 'weather-record';
  return {
    title: 'First harvest, early and late',
    formula: byRecord
      ? 'the heat of the normals up to the likely date, looked for in each year on record; 10 % and 90 % of the dates'
      : 'days of an early and of a late variety',
    symbols: [
      { symbol: 'early', name: 'early', figure: days(range.early), origin: byRecord ? computed() : library('the crop') },
      { symbol: 'late', name: 'late', figure: days(range.late), origin: byRecord ? computed() : library('the crop') },
    ],
    steps: [
      { text: `Early ${range.early}`, figures: `${range.years} years`, result: days(range.early) },
      { text: `Likely ${range.likely}`, figures: '', result: days(range.likely) },
      { text: `Late ${range.late}`, figures: `${range.years} years`, result: days(range.late) },
    ],
    result: days(range.likely),
    sources: [byRecord ? 'The weather record of this farm' : 'The crop library'],
    notes: [byRecord ? '' : 'There are fewer than three years of weather on record.'].filter((note) => note !== ''),
  };
}
