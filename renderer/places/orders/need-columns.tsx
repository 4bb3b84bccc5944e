import type { api } from '../../client/api.ts';
import type { Reader } from '../../client/reader.tsx';
import type { OutputOf } from '../../client/use-read.ts';
import { type Column, choice, date, derived, flag, text } from '../../table/column.ts';

export type NeedRow = OutputOf<typeof api.orders.needs>['needs'][number];

const sources = [
  { value: 'fill', text: 'First fill' },
  { value: 'top-up', text: 'Top-up' },
  { value: 'worn-part', text: 'Worn part' },
  { value: 'amendment', text: 'Dose' },
  { value: 'mulch', text: 'Mulch' },
  { value: 'seed', text: 'Seed' },
  { value: 'tray', text: 'Trays' },
  { value: 'packing', text: 'Packing' },
  { value: 'hand', text: 'By hand' },
] as const;

/** Columns of the needs; amounts are in each material's own unit, so they are drawn with it. */
export function needColumns(
  reader: Reader,
  suppliers: readonly { readonly supplierId: string; readonly name: string }[],
): readonly Column<NeedRow>[] {
  return [
    text('material', 'Material', { width: 175 }),
    choice('source', 'For', sources, { width: 100 }),
    text('reason', 'Reason', { width: 215 }),
    derived('text', 'amountText', 'Amount', (row) => reader.print(row.amount, row.baseUnit), {
      width: 95,
      hint: 'Before stock is taken off',
    }),
    derived('text', 'onHandText', 'On hand', (row) => reader.print(row.onHand, row.baseUnit), {
      width: 110,
      hint: 'Of the material, for all its needs together',
    }),
    date('wanted', 'Wanted', { width: 110 }),
    date('orderBy', 'Order by', {
      width: 105,
      hint: 'So that the slowest supplier is in time',
      draw: (row) =>
        row.late ? (
          <span className="state-mark" data-tone="warn">
            {reader.date(row.orderBy)}
          </span>
        ) : (
          reader.date(row.orderBy)
        ),
    }),
    choice(
      'supplierId',
      'Must come from',
      suppliers.map((each) => ({ value: each.supplierId, text: each.name })),
      { edit: true, mayBeEmpty: true, width: 150 },
    ),
    flag('left', 'Leave out', { edit: true, width: 95 }),
    derived('text', 'standInText', 'Stand-ins', (row) => row.standIns.join(', '), { shown: false }),
  ];
}
