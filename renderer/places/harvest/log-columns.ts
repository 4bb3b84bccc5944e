import { type Column, choice, date, derived, money, quantity, text } from '../../table/column.ts';
import { say } from '../../words/say.ts';
import type { HarvestLogRow } from './harvest-types.ts';

export const logColumns = (
  outlets: readonly { readonly outletId: string; readonly name: string }[],
): readonly Column<HarvestLogRow>[] => [
  date('date', say('Day'), { edit: true, width: 110 }),
  text('crop', say('Crop'), { width: 150 }),
  text('bed', say('Bed'), { width: 80 }),
  derived('count', 'amount', say('Amount'), (row) => row.amount, { edit: true, width: 90 }),
  text('unit', say('Unit'), { width: 90 }),
  quantity('weight_kg', say('Weight'), { total: 'sum' }),
  text('grade', say('Grade'), { edit: true, width: 90 }),
  choice(
    'outletId',
    say('Goes to'),
    outlets.map((each) => ({ value: each.outletId, text: each.name })),
    { edit: true, mayBeEmpty: true, width: 150 },
  ),
  money('price_minor', say('Price a unit'), { edit: true, mayBeEmpty: true }),
  quantity('culls_kg', say('Culls'), { edit: true, total: 'sum' }),
  quantity('labour_min', say('Took'), { edit: true, mayBeEmpty: true, total: 'sum' }),
  text('lot', say('Lot'), { width: 170 }),
  text('picker', say('Picker'), { edit: true, width: 80 }),
  text('note', say('Note'), { edit: true }),
];
