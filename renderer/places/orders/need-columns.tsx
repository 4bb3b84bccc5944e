import type { api } from '../../client/api.ts';
import type { Reader } from '../../client/reader.tsx';
import type { OutputOf } from '../../client/use-read.ts';
import { type Column, choice, date, derived, flag, text } from '../../table/column.ts';
import { say } from '../../words/say.ts';

export type NeedRow = OutputOf<typeof api.orders.needs>['needs'][number];

const sources = [
  { value: 'fill', text: 'First fill' },
  { value: 'top-up', text: 'Top-up' },
  { value: 'new-bed', text: 'New bed' },
  { value: 'worn-part', text: 'Worn part' },
  { value: 'line-part', text: 'Water line' },
  { value: 'amendment', text: 'Dose' },
  { value: 'mulch', text: 'Mulch' },
  { value: 'seed', text: 'Seed' },
  { value: 'start', text: 'Starts' },
  { value: 'tray', text: 'Trays' },
  { value: 'cover', text: 'Covers' },
  { value: 'packing', text: 'Packing' },
  { value: 'hand', text: 'By hand' },
] as const;

/** Columns of the needs; amounts are in each material's own unit, so they are drawn with it. */
export function needColumns(
  reader: Reader,
  suppliers: readonly { readonly supplierId: string; readonly name: string }[],
): readonly Column<NeedRow>[] {
  return [
    text('material', say('Material'), { width: 175 }),
    choice('source', say('For'), sources, { width: 100 }),
    text('reason', say('Reason'), { width: 215 }),
    derived('text', 'amountText', say('Amount'), (row) => reader.print(row.amount, row.baseUnit), {
      width: 95,
      hint: say('Before stock is taken off'),
    }),
    derived('text', 'onHandText', say('On hand'), (row) => reader.print(row.onHand, row.baseUnit), {
      width: 110,
      hint: say('Of the material, for all its needs together'),
    }),
    date('wanted', 'Wanted', { edit: true, width: 110, hint: 'Empty it to go back to the computed day', mayBeEmpty: true }),
    date('orderBy', 'Order by', {
      width: 105,
      hint: 'So that the slowest of its offers is in time',
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
      say('Must come from'),
      suppliers.map((each) => ({ value: each.supplierId, text: each.name })),
      { edit: true, mayBeEmpty: true, width: 150 },
    ),
    flag('left', 'Leave out', { edit: true, width: 95 }),
    derived('text', 'standInText', 'Stand-ins', (row) => row.standIns.join(', '), {
      width: 150,
      hint: 'What may serve instead: its stock is used, and it may be bought',
    }),
    flag('standInsAllowed', 'May stand in', { edit: true, width: 105 }),
  ];
}
