import type { Reader } from '../../../planner/units/reader.ts';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import type { api } from '../../client/api.ts';
import type { OutputOf } from '../../client/use-read.ts';
import { type Column, choice, date, derived, flag, text } from '../../table/column.ts';
import { sayKnown } from '../../words/known.ts';
import { say } from '../../words/say.ts';

export type NeedRow = OutputOf<typeof api.orders.needs>['needs'][number];

const sources = [
  { value: 'fill', text: say('First fill') },
  { value: 'top-up', text: say('Top-up') },
  { value: 'new-bed', text: say('New bed') },
  { value: 'worn-part', text: say('Worn part') },
  { value: 'line-part', text: say('Water line') },
  { value: 'amendment', text: say('Dose') },
  { value: 'mulch', text: say('Mulch') },
  { value: 'seed', text: say('Seed') },
  { value: 'start', text: say('Starts') },
  { value: 'tray', text: say('Trays') },
  { value: 'tray-mix', text: say('Mix for trays') },
  { value: 'cover', text: say('Covers') },
  { value: 'packing', text: say('Packing') },
  { value: 'hand', text: say('By hand') },
] as const;

/** What is on the way of a need's material, and by when all of it should be here; empty where nothing is. */
export const sayOnTheWay = ({ onTheWay, expectedDate, baseUnit }: NeedRow, reader: Reader): string =>
  expectedDate === null
    ? ''
    : say('{amount}, by {date}', { amount: reader.print(onTheWay, tradeUnit(baseUnit)), date: reader.date(expectedDate) });

/** Columns of the needs; amounts are in each material's own unit, so they are drawn with it. */
export function needColumns(
  reader: Reader,
  suppliers: readonly { readonly supplierId: string; readonly name: string }[],
  { isChanged, isToCome }: { readonly isChanged: boolean; readonly isToCome: boolean },
): readonly Column<NeedRow>[] {
  return [
    text('material', say('Material'), { width: 175 }),
    choice('source', say('For'), sources, { width: 100 }),
    derived('text', 'reasonText', say('Reason'), (row) => reader.datesIn(sayKnown(row.reason)), { width: 215 }),
    derived('text', 'amountText', say('Amount'), (row) => reader.print(row.amount, tradeUnit(row.baseUnit)), {
      width: 95,
      hint: say('Before stock is taken off; open the need for another amount'),
      draw: (row) =>
        row.changed ? (
          <span
            className="state-mark"
            title={say('Computed: {amount}', { amount: reader.print(row.computed, tradeUnit(row.baseUnit)) })}
          >
            {reader.print(row.amount, tradeUnit(row.baseUnit))}
          </span>
        ) : (
          reader.print(row.amount, tradeUnit(row.baseUnit))
        ),
    }),
    ...(isChanged
      ? [
          derived<NeedRow>(
            'text',
            'whyAmount',
            say('Why this amount'),
            (row) =>
              row.changed
                ? say('{why} (computed {amount})', {
                    why: row.amountReason,
                    amount: reader.print(row.computed, tradeUnit(row.baseUnit)),
                  })
                : '',
            { width: 180 },
          ),
        ]
      : []),
    derived('text', 'onHandText', say('On hand'), (row) => reader.print(row.onHand, tradeUnit(row.baseUnit)), {
      width: 110,
      hint: say('Of the material, for all its needs together'),
    }),
    ...(isToCome
      ? [
          derived<NeedRow>('text', 'onTheWayText', say('On the way'), (row) => sayOnTheWay(row, reader), {
            width: 190,
            hint: say('Ordered and not here yet: it is not bought again'),
          }),
        ]
      : []),
    date('wanted', say('Wanted'), {
      edit: true,
      width: 110,
      hint: say('Empty it to go back to the computed day'),
      mayBeEmpty: true,
    }),
    date('orderBy', say('Order by'), {
      width: 105,
      hint: say('So that the slowest of its offers is in time'),
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
    derived('text', 'standInText', say('Stand-ins'), (row) => row.standIns.join(', '), {
      width: 150,
      hint: say('What may serve instead: its stock is used, and it may be bought'),
    }),
    flag('standInsAllowed', say('May stand in'), { edit: true, width: 105 }),
  ];
}
