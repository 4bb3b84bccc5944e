import { type Column, choice, date, quantity, text } from '../../../table/column.ts';
import { say } from '../../../words/say.ts';
import { kindChoices, type MoveRow } from './move-rows.ts';

export const moveColumns: readonly Column<MoveRow>[] = [
  choice('kind', say('What happens'), kindChoices, { width: 170 }),
  text('crop', say('Crop'), { width: 170 }),
  text('fromBed', say('From bed'), { width: 90 }),
  date('fromDate', say('In bed now')),
  text('toBed', say('To bed'), { width: 90 }),
  date('toDate', say('In bed then')),
  date('freeDate', say('Free')),
  quantity('area_m2', say('Area'), { total: 'sum' }),
];
