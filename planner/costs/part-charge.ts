import { dayNumber, type IsoDate } from '../calendar.ts';
import { computed, type Working } from '../working.ts';
import type { Asset } from './depreciation.ts';
import { explainYearlyCost, type PartsMethod, yearlyCost_minor } from './yearly-cost.ts';

const DAYS_PER_YEAR = 365;
const DAYS_PER_LIFE_YEAR = 365.25;

/** Something that lasts, in a bed or a water line from one day on, until it came out or its life is over. */
export type LastingPart = Asset & { readonly from: IsoDate; readonly until: IsoDate | null };

type Span = { readonly start: IsoDate; readonly end: IsoDate };

/**
 * What a part costs in a season: its yearly cost for the days on which it stood within its life, `A x days / 365`, and no more
 * than a year in a season of a year. A part taken out before its life is over leaves the rest of its value uncharged here: enter
 * it as a loss where it was not resold.
 *
 * Not rounded: parts of a bed, or of a line, are added up first, then rounded once.
 * Common practice, no source.
 * @throws InputError naming the field
 */
export function seasonCharge_minor(
  part: LastingPart,
  season: Span,
  method: PartsMethod,
  interest_share_per_year: number,
): number {
  const days = daysCharged(part, season);
  return days === 0 ? 0 : yearlyCost_minor(part, method, interest_share_per_year) * Math.min(1, days / DAYS_PER_YEAR);
}

/** Whether a part costs anything in a season. */
export const isChargedIn = (part: LastingPart, season: Span): boolean => daysCharged(part, season) > 0;

/** Days of a season on which a part stood within its life. */
function daysCharged(part: LastingPart, season: Span): number {
  const first = Math.max(dayNumber(part.from), dayNumber(season.start));
  const wornOut = dayNumber(part.from) + Math.round(part.life_years * DAYS_PER_LIFE_YEAR);
  const out = part.until === null ? Infinity : dayNumber(part.until);
  return Math.max(0, Math.min(out, wornOut, dayNumber(season.end) + 1) - first);
}

/** Working of {@link seasonCharge_minor}. @throws InputError naming the field */
export function explainSeasonCharge(
  name: string,
  part: LastingPart,
  season: Span,
  method: PartsMethod,
  interest_share_per_year: number,
): Working {
  const days = daysCharged(part, season);
  return {
    title: `${name}: cost of the season`,
    formula: 'C = A min(1, d / 365)',
    symbols: [
      {
        symbol: 'A',
        name: 'cost of a year',
        figure: { value: yearlyCost_minor(part, method, interest_share_per_year), unit: 'minor' },
        origin: computed('price over the service life'),
      },
      {
        symbol: 'd',
        name: 'days of the season in place, within its life',
        figure: { value: days, unit: 'days' },
        origin: computed('the day it went in, its life and the season'),
      },
    ],
    steps: [],
    result: { value: seasonCharge_minor(part, season, method, interest_share_per_year), unit: 'minor' },
    sources: ['common practice, no source'],
    notes: [],
    parts: [explainYearlyCost(part, method, interest_share_per_year)],
  };
}
