import { marksOf } from './number-marks.ts';
import { grouped } from './significant.ts';

/** Decimal places of a currency by ISO 4217, e.g. 2 for USD, 0 for JPY. */
export function currencyPlaces(currency: string): number {
  return new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;
}

/**
 * Money from whole minor units, in the manner of the currency: `printMoney(123456, 'USD')` is `$1,234.56`.
 * @param more decimals beyond the currency's own, for a price of a very small unit
 */
export function printMoney(amount_minor: number, currency: string, more = 0, locale = 'en-US'): string {
  const places = currencyPlaces(currency);
  const form = new Intl.NumberFormat(locale, {
    style: 'currency',
    numberingSystem: 'latn',
    currency,
    minimumFractionDigits: places,
    maximumFractionDigits: places + more,
  });
  return form.format(amount_minor / 10 ** places).replace('-', '−');
}

/** Money without a currency sign, to the currency's places: for columns whose header names the currency. */
export function printMinor(amount_minor: number, places = 2, locale = 'en-US'): string {
  const marks = marksOf(locale);
  const text = grouped(amount_minor / 10 ** places, places, marks);
  const [whole = '0', rest = ''] = places === 0 ? [text] : text.split(marks.decimal);
  return places === 0 ? whole : `${whole}${marks.decimal}${rest.padEnd(places, '0')}`;
}

/** Money for an entry field: as {@link printMinor}, without marks between groups. */
export function printMinorForEntry(amount_minor: number, places: number, locale: string): string {
  const fixed = (amount_minor / 10 ** places).toFixed(places);
  return fixed.replace('-', '−').replace('.', marksOf(locale).decimal);
}
