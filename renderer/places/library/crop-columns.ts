import type { Reader } from '../../../planner/units/reader.ts';
import type { api } from '../../client/api.ts';
import type { InputOf, OutputOf } from '../../client/use-read.ts';
import { type Column, choice, count, derived, flag, quantity, text } from '../../table/column.ts';
import { say } from '../../words/say.ts';
import { yieldText } from './yield-text.ts';

export type CropLine = OutputOf<typeof api.crops.list>[number];
export type FactName = InputOf<typeof api.crops.setFact>['name'];

export const hardiness = [
  { value: 'hardy', text: say('hardy') },
  { value: 'half-hardy', text: say('half-hardy') },
  { value: 'tender', text: say('tender') },
  { value: 'very-tender', text: say('very tender') },
] as const;

export const cropColumns = (reader: Reader): readonly Column<CropLine>[] => [
  text('name', say('Crop'), { width: 180 }),
  text('family', say('Family'), { width: 130 }),
  choice('frost_tolerance', say('Frost'), hardiness, { edit: true }),
  count('maturity_min_days', say('Days, early'), { edit: true }),
  count('maturity_max_days', say('Days, late'), { edit: true }),
  text('days_counted_from', say('counted from'), { width: 110 }),
  count('harvest_window_days', say('Harvest days'), { edit: true }),
  count('weeks_indoors_max', say('Weeks indoors'), { edit: true }),
  quantity('intensive_m', say('Spacing in a bed'), { edit: true }),
  quantity('min_soil_depth_m', say('Soil at least'), { edit: true }),
  derived(
    'text',
    'yieldText',
    say('Yield'),
    (row) => (row.yield_typical_per_m2 === null ? '' : yieldText(row.yield_typical_per_m2, row.yield_unit ?? '', reader)),
    { width: 110 },
  ),
  count('yield_typical_per_m2', say('Yield a m²'), { edit: true, shown: false }),
  text('yield_unit', say('Yield counted in'), { width: 70, shown: false }),
  count('varieties', say('Varieties')),
  count('ownFacts', say('Own figures')),
  flag('hidden', say('Not grown'), { shown: false }),
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
