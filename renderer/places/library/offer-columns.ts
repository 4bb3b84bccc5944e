import type { IsoDate } from '../../../planner/calendar.ts';
import { isStalePrice } from '../../../planner/orders/stale-price.ts';
import type { Reader } from '../../../planner/units/reader.ts';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import type { api } from '../../client/api.ts';
import type { OutputOf } from '../../client/use-read.ts';
import { type Column, count, date, derived, flag, money, quantity, text } from '../../table/column.ts';
import { say } from '../../words/say.ts';

export type OfferRow = OutputOf<typeof api.suppliers.offers>[number];

/** What one base unit costs in this package, in minor units. */
export const unitPrice_minor = (offer: Pick<OfferRow, 'price_minor' | 'packageAmount'>): number =>
  offer.price_minor / offer.packageAmount;

let kept: { readonly reader: Reader; readonly today: IsoDate; readonly columns: readonly Column<OfferRow>[] } | null = null;

/** The columns for one reader and day: a package's size is in its material's own unit, so it is printed whole. */
export function offerColumns(reader: Reader, today: IsoDate): readonly Column<OfferRow>[] {
  if (kept !== null && kept.reader === reader && kept.today === today) return kept.columns;
  const made: readonly Column<OfferRow>[] = [
    text('material', say('Material'), { width: 220 }),
    text('supplier', say('Supplier'), { width: 190 }),
    text('name', say('Package'), { edit: true, mayBeEmpty: false, width: 150 }),
    derived('text', 'holds', say('Holds'), (row) => reader.print(row.packageAmount, tradeUnit(row.baseUnit)), { width: 100 }),
    money('price_minor', say('Price'), { edit: true }),
    derived(
      'text',
      'unitPrice',
      say('For one unit'),
      (row) => reader.print(unitPrice_minor(row), row.baseUnit === 'count' ? 'minor' : `minor_per_${tradeUnit(row.baseUnit)}`),
      {
        width: 120,
      },
    ),
    count('minimumPackages', say('Least'), { edit: true, hint: say('The fewest packages it sells'), width: 70 }),
    count('lead_days', say('Days'), {
      edit: true,
      mayBeEmpty: true,
      hint: say('Days until it comes; empty: as the supplier’s'),
      width: 70,
    }),
    quantity('packageWeight_kg', say('Weight'), { edit: true, mayBeEmpty: true, width: 90 }),
    date('pricedDate', say('Priced on'), { edit: true }),
    derived(
      'text',
      'stale',
      say('Price is'),
      (row) => (isStalePrice(row.pricedDate as IsoDate, today) ? say('old: ask again') : ''),
      {
        width: 110,
        hint: say('Older than half a year'),
      },
    ),
    flag('retired', say('Not used'), { edit: true, width: 90 }),
  ];
  kept = { reader, today, columns: made };
  return made;
}
