import { dayOfYear, type IsoDate, yearOf } from '../calendar.ts';

const LONGEST_CROP = 5;

/**
 * The code of a lot: crop, year and day of the year, bed, and a run number from the second lot on: `LETT-2026164-B14`,
 * `LETT-2026164-B14-2`. Letters A-Z and digits only, without I and O, which are read as figures.
 *
 * Our own form. A code is never used again; the text stays when a bed is renamed.
 * @param taken every code that the farm has given
 */
export function lotCode(
  lot: { readonly crop: string; readonly date: IsoDate; readonly place: string },
  taken: { readonly has: (code: string) => boolean },
): string {
  const day = `${yearOf(lot.date)}${String(dayOfYear(lot.date)).padStart(3, '0')}`;
  const stem = `${lettersOf(lot.crop).slice(0, LONGEST_CROP) || 'CR'}-${day}-${lettersOf(lot.place) || 'FARM'}`;
  if (!taken.has(stem)) return stem;
  let run = 2;
  while (taken.has(`${stem}-${run}`)) run += 1;
  return `${stem}-${run}`;
}

/** True for a code that keeps the rule of {@link lotCode}. */
export function isLotCode(code: string): boolean {
  return /^[A-HJ-NP-Z0-9]{1,5}-\d{7}-[A-HJ-NP-Z0-9]+(-\d+)?$/.test(code);
}

const lettersOf = (text: string): string =>
  text
    .normalize('NFD')
    .toUpperCase()
    .replace(/[^A-HJ-NP-Z0-9]/g, '');
