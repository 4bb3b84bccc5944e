import type { Reader } from '../../../planner/units/reader.ts';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import type { api } from '../../client/api.ts';
import { farmOfAddress } from '../../client/farm-of-address.ts';
import type { OutputOf } from '../../client/use-read.ts';
import { languageSpoken } from '../../words/language.ts';
import { say } from '../../words/say.ts';

export type SupplierList = OutputOf<typeof api.orders.list>[number];

/** The list as plain text to send: a paragraph a supplier. */
export function listAsText(
  lists: readonly SupplierList[],
  reader: Pick<Reader, 'money' | 'print'>,
  unpriced: OutputOf<typeof api.orders.unpriced>,
): string {
  const missing = unpriced.map((each) => `${each.material}, ${reader.print(each.amount, tradeUnit(each.baseUnit))}`);
  const bought = lists.map((list) =>
    [
      list.name,
      ...list.rows.map(
        (row) =>
          `${row.packages} x ${row.offer} (${row.material}, ${reader.print(row.amount, tradeUnit(row.baseUnit))}): ${reader.money(row.total_minor)}`,
      ),
      say('Delivery {delivery}, tax {tax}, total {total}', {
        delivery: reader.money(list.delivery_minor),
        tax: reader.money(list.tax_minor),
        total: reader.money(list.total_minor),
      }),
    ].join('\n'),
  );
  return [...bought, ...(missing.length === 0 ? [] : [[say('No price known, in no list:'), ...missing].join('\n')])].join('\n\n');
}

/** Where a file of the open farm's list is fetched. */
export function exportOf(name: string, seasonId: string): string {
  const farm = farmOfAddress(window.location.search);
  const query = new URLSearchParams({
    season: seasonId,
    language: languageSpoken().code,
    ...(farm === undefined ? {} : { farm }),
  });
  return `/export/${name}?${query.toString()}`;
}
