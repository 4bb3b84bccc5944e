import { dayNumber, type IsoDate, isLeapYear, yearOf } from '../calendar.ts';
import { requireRange, requireWhole } from '../errors.ts';

/**
 * The day until which a record is to be kept: the same day a number of years later; 29 February goes to the 28th where that year
 * has none (our rule).
 *
 * Source: 7 U.S.C. 6519(a)(2), not less than 5 years for organic records.
 * @throws InputError on a number of years that is not whole
 */
export function keepUntil(created: IsoDate, years: number): IsoDate {
  requireWhole('years', years, 0, 100);
  const year = yearOf(created) + years;
  const day = created.slice(5);
  return `${String(year).padStart(4, '0')}-${day === '02-29' && !isLeapYear(year) ? '02-28' : day}` as IsoDate;
}

/** Years that organic records are kept at least. Source: 7 U.S.C. 6519(a)(2). */
export const ORGANIC_RECORD_YEARS = 5;
/** Years that produce-safety records are kept. Source: 21 CFR 112.164, from memory. */
export const PRODUCE_SAFETY_RECORD_YEARS = 2;

/** One year's sales of food by kind of buyer. */
export type YearOfSales = { readonly qualified_minor: number; readonly others_minor: number };

export type ExemptionFigures = {
  readonly meanQualified_minor: number;
  readonly meanOthers_minor: number;
  readonly meanAll_minor: number;
  readonly mostlyQualified: boolean;
  readonly underLimit: boolean;
};

/**
 * The figures of the yearly review of the qualified exemption: means over the years given, whether sales to qualified
 * end-users exceed those to others, whether all is under the limit. Arithmetic only: whether a farm is exempt is for the
 * agency to say.
 *
 * Source: 21 CFR 112.5(a)(1) and (2); the limit adjusted for inflation is entered by the reader.
 * @throws InputError naming the field
 */
export function exemptionFigures(years: readonly YearOfSales[], limit_minor: number): ExemptionFigures {
  requireWhole('years', years.length, 1, 100);
  requireRange('limit_minor', limit_minor, 0, Infinity, '');
  const mean = (of: (year: YearOfSales) => number): number => years.reduce((sum, year) => sum + of(year), 0) / years.length;
  const qualified = mean((year) => year.qualified_minor);
  const others = mean((year) => year.others_minor);
  const all = qualified + others;
  return {
    meanQualified_minor: qualified,
    meanOthers_minor: others,
    meanAll_minor: all,
    mostlyQualified: qualified > others,
    underLimit: all < limit_minor,
  };
}

/** Days by which a record was entered after what it tells of; 0 on the same day. */
export function lateBy_days(happened: IsoDate, entered: IsoDate): number {
  return Math.max(0, dayNumber(entered) - dayNumber(happened));
}
