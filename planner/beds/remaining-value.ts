import { daysBetween, type IsoDate } from '../calendar.ts';
import { requirePositive } from '../errors.ts';
import { roundMoney } from '../money.ts';

const DAYS_PER_YEAR = 365.25;

/**
 * What a part or a fill is still worth, straight line: P max(0, 1 - a/N), to the minor unit.
 *
 *   P   price paid         minor units
 *   a   age                years
 *   N   service life       years     more than 0
 *
 * Source: straight-line depreciation without salvage, common practice.
 * @throws InputError naming the field
 */
export function remainingValue_minor(price_minor: number, life_years: number, since: IsoDate, today: IsoDate): number {
  requirePositive('life_years', life_years, 'years');
  const age_years = daysBetween(since, today) / DAYS_PER_YEAR;
  return roundMoney(price_minor * Math.min(1, Math.max(0, 1 - age_years / life_years)));
}
