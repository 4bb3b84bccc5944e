import { type Column, count, derived, money, quantity, text } from '../../../table/column.ts';
import { say } from '../../../words/say.ts';
import type { FigureRow, OwnFigures } from './proposal-types.ts';

const fromWords = {
  own: say('your figure'),
  records: say('your records'),
  library: 'library',
  usual: say('common practice'),
  none: say('not entered'),
} as const;

export const countedColumns: readonly Column<FigureRow>[] = [
  text('name', say('Crop'), { width: 170 }),
  text('unit', say('Unit'), { width: 70 }),
  derived('quantity', 'yield_per_m2', say('Yield per m²'), (row) => row.yield_per_m2, {
    width: 120,
    edit: true,
    mayBeEmpty: true,
    digits: 3,
  }),
  derived('quantity', 'planned_per_m2', say('Counted on, per m²'), (row) => row.planned_per_m2, {
    width: 150,
    digits: 3,
    hint: say('The yield less your caution'),
  }),
  derived('text', 'yieldFrom', say('Yield from'), (row) => fromWords[row.yieldFrom], { width: 120 }),
  quantity('plant_h_per_m2', say('Planting'), {
    width: 130,
    edit: true,
    mayBeEmpty: true,
    digits: 2,
  }),
  quantity('care_h_per_m2_week', say('Care, h per m² and week'), {
    width: 180,
    edit: true,
    mayBeEmpty: true,
    digits: 2,
  }),
  derived('quantity', 'harvest_h_per_unit', say('Harvest, h per unit'), (row) => row.harvest_h_per_unit, {
    width: 150,
    edit: true,
    mayBeEmpty: true,
    digits: 2,
  }),
  derived('text', 'hoursFrom', say('Hours from'), (row) => fromWords[row.hoursFrom], { width: 120 }),
  money('direct_minor_per_m2', say('Direct cost per m²'), {
    width: 150,
    edit: true,
    mayBeEmpty: true,
  }),
  count('shelf_weeks', say('Keeps, weeks'), {
    width: 120,
    edit: true,
    mayBeEmpty: true,
  }),
  money('price_minor', say('Best price')),
  derived('count', 'ordered', say('Ordered'), (row) => Math.round(row.ordered)),
  derived('count', 'marketMost', say('Market takes'), (row) => Math.round(row.marketMost)),
  count('startWeeks', say('Weeks to start'), {
    width: 120,
    hint: say('Weeks in which it can go into a bed this season'),
  }),
  count('plantings', say('Records of'), { hint: say('Cleared plantings that the figures rest on') }),
  derived('flag', 'leaveOut', say('Leave out'), () => false, { edit: true }),
];

const none = {
  yield_per_m2: null,
  plant_h_per_m2: null,
  care_h_per_m2_week: null,
  harvest_h_per_unit: null,
  direct_minor_per_m2: null,
  shelf_weeks: null,
  leaveOut: false,
} as const;

type CropEdit = { readonly row: { readonly cropId: string }; readonly key: string; readonly value: unknown };

/** The grower's own figures with edits of the table laid over. */
export function withEdits(own: OwnFigures, edits: readonly CropEdit[]): OwnFigures {
  const crops = { ...own.crops };
  for (const { row, key, value } of edits)
    crops[row.cropId] = { ...(crops[row.cropId] ?? none), [key]: value ?? (key === 'leaveOut' ? false : null) };
  return { ...own, crops };
}
