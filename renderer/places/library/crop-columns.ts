import type { api } from '../../client/api.ts';
import type { InputOf, OutputOf } from '../../client/use-read.ts';
import { type Column, choice, count, flag, quantity, text } from '../../table/column.ts';

export type CropLine = OutputOf<typeof api.crops.list>[number];
export type FactName = InputOf<typeof api.crops.setFact>['name'];

export const hardiness = [
  { value: 'hardy', text: 'hardy' },
  { value: 'half-hardy', text: 'half-hardy' },
  { value: 'tender', text: 'tender' },
  { value: 'very-tender', text: 'very tender' },
] as const;

export const cropColumns: readonly Column<CropLine>[] = [
  text('name', 'Crop', { width: 180 }),
  text('family', 'Family', { width: 130 }),
  choice('frost_tolerance', 'Frost', hardiness, { edit: true }),
  count('maturity_min_days', 'Days, early', { edit: true }),
  count('maturity_max_days', 'Days, late', { edit: true }),
  text('days_counted_from', 'counted from', { width: 110 }),
  count('harvest_window_days', 'Harvest days', { edit: true }),
  count('weeks_indoors_max', 'Weeks indoors', { edit: true }),
  quantity('intensive_m', 'Spacing in a bed', { edit: true }),
  quantity('min_soil_depth_m', 'Soil at least', { edit: true }),
  count('yield_typical_per_m2', 'Yield a m²', { edit: true }),
  text('yield_unit', 'in', { width: 70 }),
  count('varieties', 'Varieties'),
  count('ownFacts', 'Own figures'),
  flag('hidden', 'Not grown', { shown: false }),
];

const editable: ReadonlySet<string> = new Set([
  'frost_tolerance',
  'maturity_min_days',
  'maturity_max_days',
  'harvest_window_days',
  'weeks_indoors_max',
  'intensive_m',
  'min_soil_depth_m',
  'yield_typical_per_m2',
]);

/** The fact that a column of the table holds; null for a column that is none. */
export const factOfKey = (key: string): FactName | null => (editable.has(key) ? (key as FactName) : null);
