import { type Column, choice, date, quantity, text } from '../../table/column.ts';
import type { BedRow } from './bed-types.ts';
import { kindChoices, placeChoices, sunChoices, wateringChoices } from './bed-words.ts';
import { LoadCell } from './load-cell.tsx';

/** A round bed has one size, a polygon its own corners. */
const hasLength = (row: BedRow): boolean => row.outline.shape !== 'polygon' && row.outline.shape !== 'hexagon';
const hasWidth = (row: BedRow): boolean => row.outline.shape !== 'polygon' && row.outline.shape !== 'round';

export const bedColumns: readonly Column<BedRow>[] = [
  text('code', 'Bed', { width: 84, edit: true }),
  text('name', 'Name', { width: 120, edit: true, mayBeEmpty: true, shown: false }),
  text('block', 'Block', { width: 64 }),
  text('design', 'Design', { width: 190 }),
  choice('kind', 'Kind', kindChoices, { shown: false }),
  choice('watering', 'Watering', wateringChoices, { shown: false }),
  quantity('length_m', 'Length', { edit: hasLength, width: 84 }),
  quantity('width_m', 'Width', { edit: hasWidth, width: 84 }),
  quantity('depth_m', 'Depth', { edit: true, width: 84, shown: false, hint: 'Height of the wall or mound' }),
  quantity('fillDepth_m', 'Fill depth', { edit: true, width: 92, hint: 'Surface of the fill above the floor' }),
  quantity('area_m2', 'Area', { total: 'sum', width: 84 }),
  quantity('fill_L', 'Fill', { total: 'sum', width: 90, hint: 'Settled' }),
  quantity('topUp_L', 'Top-up', { total: 'sum', width: 90, hint: 'Loose, this season' }),
  quantity('drop_m', 'Drop', {
    edit: true,
    width: 84,
    hint: 'Last measured, below the wanted surface; an entry is kept under today’s date',
  }),
  quantity('water_L', 'Water', { total: 'sum', width: 84, shown: false, hint: 'In basin or reservoir when filled' }),
  quantity('wet_kg', 'Wet weight', { total: 'sum', width: 96, hint: 'Fill full of water, basin included' }),
  quantity('load_kg_per_m2', 'Floor load', {
    width: 96,
    draw: (row) => <LoadCell row={row} />,
  }),
  quantity('floorLimit_kg_per_m2', 'Floor limit', { edit: true, mayBeEmpty: true, width: 96, shown: false }),
  choice('place', 'Stands on', placeChoices, { edit: true, width: 96, shown: false }),
  choice('sun', 'Sun', sunChoices, { edit: true, width: 100, shown: false }),
  date('builtDate', 'Built', { edit: true, width: 104, shown: false }),
  text('fault', 'Does not fit', { width: 220, shown: false }),
];
