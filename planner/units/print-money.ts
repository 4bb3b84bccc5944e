import { grouped } from './significant.ts';

/** Decimal places of a currency by ISO 4217, e.g. 2 for USD, 0 for JPY. */
export function currencyPlaces(currency: string): number {
  return new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;
}

/**
 * Money from whole minor units, in the manner of the currency: `printMoney(123456, 'USD')` is `$1,234.56`.
 * @param more decimals beyond the currency's own, for a price of a very small unit
 */
export function printMoney(amount_minor: number, currency: string, more = 0): string {
  const places = currencyPlaces(currency);
  const form = new Intl.NumberFormat('en-US', {
    style: 'currency',
    currency,
    minimumFractionDigits: places,
    maximumFractionDigits: places + more,
  });
  return form.format(amount_minor / 10 ** places).replace('-', '−');
}

/** Money without a currency sign, two places: for columns whose header names the currency. */
export function printMinor(amount_minor: number, places = 2): string {
  const text = grouped(amount_minor / 10 ** places, places);
  const [whole = '0', rest = ''] = text.split('.');
  return places === 0 ? whole : `${whole}.${rest.padEnd(places, '0')}`;
}
