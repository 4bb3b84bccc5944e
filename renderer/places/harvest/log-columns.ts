import { type Column, choice, date, derived, money, quantity, text } from '../../table/column.ts';
import type { HarvestLogRow } from './harvest-types.ts';

export const logColumns = (
  outlets: readonly { readonly outletId: string; readonly name: string }[],
): readonly Column<HarvestLogRow>[] => [
  date('date', 'Day', { edit: true, width: 110 }),
  text('crop', 'Crop', { width: 150 }),
  text('bed', 'Bed', { width: 80 }),
  derived('count', 'amount', 'Amount', (row) => row.amount, { edit: true, width: 90 }),
  text('unit', 'Unit', { width: 90 }),
  quantity('weight_kg', 'Weight', { total: 'sum' }),
  text('grade', 'Grade', { edit: true, width: 90 }),
  choice(
    'outletId',
    'Goes to',
    outlets.map((each) => ({ value: each.outletId, text: each.name })),
    { edit: true, mayBeEmpty: true, width: 150 },
  ),
  money('price_minor', 'Price a unit', { edit: true, mayBeEmpty: true }),
  quantity('culls_kg', 'Culls', { edit: true, total: 'sum' }),
  quantity('labour_min', 'Took', { edit: true, mayBeEmpty: true, total: 'sum' }),
  text('lot', 'Lot', { width: 170 }),
  text('picker', 'Picker', { edit: true, width: 80 }),
  text('note', 'Note', { edit: true }),
];
