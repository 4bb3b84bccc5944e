import type { api } from '../../client/api.ts';
import type { Reader } from '../../client/reader.tsx';
import type { OutputOf } from '../../client/use-read.ts';
import { type Column, count, date, derived, flag, money, quantity, text } from '../../table/column.ts';

export type OfferRow = OutputOf<typeof api.suppliers.offers>[number];

/** What one base unit costs in this package, in minor units. */
export const unitPrice_minor = (offer: Pick<OfferRow, 'price_minor' | 'packageAmount'>): number =>
  offer.price_minor / offer.packageAmount;

const kept = new Map<Reader, readonly Column<OfferRow>[]>();

/** The columns for one reader: a package's size is in its material's own unit, so it is printed whole. */
export function offerColumns(reader: Reader): readonly Column<OfferRow>[] {
  const known = kept.get(reader);
  if (known !== undefined) return known;
  const made: readonly Column<OfferRow>[] = [
    text('material', 'Material', { width: 220 }),
    text('supplier', 'Supplier', { width: 190 }),
    text('name', 'Package', { edit: true, mayBeEmpty: false, width: 150 }),
    derived('text', 'holds', 'Holds', (row) => reader.print(row.packageAmount, row.baseUnit), { width: 100 }),
    money('price_minor', 'Price', { edit: true }),
    derived(
      'text',
      'unitPrice',
      'For one unit',
      (row) => reader.print(unitPrice_minor(row), row.baseUnit === 'count' ? 'minor' : `minor_per_${row.baseUnit}`),
      {
        width: 120,
      },
    ),
    count('minimumPackages', 'Least', { edit: true, hint: 'The fewest packages it sells', width: 70 }),
    count('lead_days', 'Days', {
      edit: true,
      mayBeEmpty: true,
      hint: 'Days until it comes; empty: as the supplier’s',
      width: 70,
    }),
    quantity('packageWeight_kg', 'Weight', { edit: true, mayBeEmpty: true, width: 90 }),
    date('pricedDate', 'Priced on', { edit: true }),
    flag('retired', 'Not used', { edit: true, width: 90 }),
  ];
  kept.clear();
  kept.set(reader, made);
  return made;
}
