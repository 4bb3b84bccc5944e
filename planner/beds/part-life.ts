import { addDays, type IsoDate } from '../calendar.ts';
import { requirePositive } from '../errors.ts';

const DAYS_PER_YEAR = 365.25;

/** The date by which a part has served its life. @throws InputError naming the field */
export function partDue(installedDate: IsoDate, life_years: number): IsoDate {
  requirePositive('life_years', life_years, 'years');
  return addDays(installedDate, Math.round(life_years * DAYS_PER_YEAR));
}
