import type { api } from '../../client/api.ts';
import type { Reader } from '../../client/reader.tsx';
import type { OutputOf } from '../../client/use-read.ts';
import { type Column, choice, date, derived, flag, text } from '../../table/column.ts';
import { say } from '../../words/say.ts';

export type NeedRow = OutputOf<typeof api.orders.needs>['needs'][number];

const sources = [
  { value: 'fill', text: say('First fill') },
  { value: 'top-up', text: say('Top-up') },
  { value: 'worn-part', text: say('Worn part') },
  { value: 'amendment', text: say('Dose') },
  { value: 'mulch', text: say('Mulch') },
  { value: 'seed', text: say('Seed') },
  { value: 'tray', text: say('Trays') },
  { value: 'packing', text: say('Packing') },
  { value: 'hand', text: say('By hand') },
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
    date('wanted', say('Wanted'), { width: 110 }),
    date('orderBy', say('Order by'), {
      width: 105,
      hint: say('So that the slowest supplier is in time'),
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
    flag('left', say('Leave out'), { edit: true, width: 95 }),
    derived('text', 'standInText', say('Stand-ins'), (row) => row.standIns.join(', '), { shown: false }),
  ];
}
