import { type Column, choice, date, quantity, text } from '../../table/column.ts';
import { say } from '../../words/say.ts';
import type { BedRow } from './bed-types.ts';
import { kindChoices, placeChoices, sunChoices, wateringChoices } from './bed-words.ts';
import { LoadCell } from './load-cell.tsx';

/** A round bed has one size, a polygon its own corners. */
const hasLength = (row: BedRow): boolean => row.outline.shape !== 'polygon' && row.outline.shape !== 'hexagon';
const hasWidth = (row: BedRow): boolean => row.outline.shape !== 'polygon' && row.outline.shape !== 'round';

export const bedColumns: readonly Column<BedRow>[] = [
  text('code', say('Bed'), { width: 84, edit: true }),
  text('name', say('Name'), { width: 120, edit: true, mayBeEmpty: true, shown: false }),
  text('block', say('Block'), { width: 64 }),
  text('design', say('Design'), { width: 190 }),
  choice('kind', say('Kind'), kindChoices, { shown: false }),
  choice('watering', say('Watering'), wateringChoices, { shown: false }),
  quantity('length_m', say('Length'), { edit: hasLength, width: 84 }),
  quantity('width_m', say('Width'), { edit: hasWidth, width: 84 }),
  quantity('depth_m', say('Depth'), { edit: true, width: 84, shown: false, hint: say('Height of the wall or mound') }),
  quantity('fillDepth_m', say('Fill depth'), { edit: true, width: 92, hint: say('Surface of the fill above the floor') }),
  quantity('area_m2', say('Area'), { total: 'sum', width: 84 }),
  quantity('fill_L', say('Fill'), { total: 'sum', width: 90, hint: say('Settled') }),
  quantity('topUp_L', say('Top-up'), { total: 'sum', width: 90, hint: say('Loose, this season') }),
  quantity('drop_m', say('Drop'), {
    edit: true,
    width: 84,
    hint: say('Last measured, below the wanted surface; an entry is kept under today’s date'),
  }),
  quantity('water_L', say('Water'), { total: 'sum', width: 84, shown: false, hint: say('In basin or reservoir when filled') }),
  quantity('wet_kg', say('Wet weight'), { total: 'sum', width: 96, hint: say('Fill full of water, basin included') }),
  quantity('load_kg_per_m2', say('Floor load'), {
    width: 96,
    draw: (row) => <LoadCell row={row} />,
  }),
  quantity('floorLimit_kg_per_m2', say('Floor limit'), { edit: true, mayBeEmpty: true, width: 96, shown: false }),
  choice('place', say('Stands on'), placeChoices, { edit: true, width: 96, shown: false }),
  choice('sun', say('Sun'), sunChoices, { edit: true, width: 100, shown: false }),
  date('builtDate', say('Built'), { edit: true, width: 104, shown: false }),
  text('fault', say('Does not fit'), { width: 220, shown: false }),
];
