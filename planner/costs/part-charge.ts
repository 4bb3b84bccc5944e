import { dayNumber, type IsoDate } from '../calendar.ts';
import type { Asset } from './depreciation.ts';
import { type PartsMethod, yearlyCost_minor } from './yearly-cost.ts';

const DAYS_PER_YEAR = 365;
const DAYS_PER_LIFE_YEAR = 365.25;

/** Something that lasts, in a bed from one day on, until it came out or its life is over. */
export type LastingPart = Asset & { readonly from: IsoDate; readonly until: IsoDate | null };

/**
 * What a part costs in a season: its yearly cost for the days on which it stood within its life, `A x days / 365`, and no more
 * than a year in a season of a year. A part taken out before its life is over leaves the rest of its value uncharged here: enter
 * it as a loss where it was not resold.
 *
 * Not rounded: parts of a bed are added up first, then rounded once.
 * Common practice, no source.
 * @throws InputError naming the field
 */
export function seasonCharge_minor(
  part: LastingPart,
  season: { readonly start: IsoDate; readonly end: IsoDate },
  method: PartsMethod,
  interest_share_per_year: number,
): number {
  const first = Math.max(dayNumber(part.from), dayNumber(season.start));
  const wornOut = dayNumber(part.from) + Math.round(part.life_years * DAYS_PER_LIFE_YEAR);
  const out = part.until === null ? Infinity : dayNumber(part.until);
  const end = Math.min(out, wornOut, dayNumber(season.end) + 1);
  const days = Math.max(0, end - first);
  if (days === 0) return 0;
  return yearlyCost_minor(part, method, interest_share_per_year) * Math.min(1, days / DAYS_PER_YEAR);
}
