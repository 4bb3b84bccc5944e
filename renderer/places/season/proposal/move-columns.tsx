import { type Column, choice, date, quantity, text } from '../../../table/column.ts';
import { kindChoices, type MoveRow } from './move-rows.ts';

export const moveColumns: readonly Column<MoveRow>[] = [
  choice('kind', 'What happens', kindChoices, { width: 170 }),
  text('crop', 'Crop', { width: 170 }),
  text('fromBed', 'From bed', { width: 90 }),
  date('fromDate', 'In bed now'),
  text('toBed', 'To bed', { width: 90 }),
  date('toDate', 'In bed then'),
  date('freeDate', 'Free'),
  quantity('area_m2', 'Area', { total: 'sum' }),
];
