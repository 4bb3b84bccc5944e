import type { api } from '../../client/api.ts';
import type { OutputOf } from '../../client/use-read.ts';
import { type Column, choice, count, flag, quantity, share, text } from '../../table/column.ts';
import { say } from '../../words/say.ts';

export type MaterialRow = OutputOf<typeof api.materials.list>[number];

export const organicUses = [
  { value: 'allowed', text: say('allowed') },
  { value: 'not-allowed', text: say('not allowed') },
  { value: 'unknown', text: say('not known') },
] as const;

export const animalOrigins = [
  { value: 'none', text: say('none') },
  { value: 'raw', text: say('raw') },
  { value: 'composted', text: say('composted') },
  { value: 'treated', text: say('treated') },
] as const;

export const baseUnitChoices = [
  { value: 'L', text: say('volume') },
  { value: 'kg', text: say('weight') },
  { value: 'count', text: say('pieces') },
  { value: 'm', text: say('length') },
  { value: 'm2', text: say('area') },
] as const;

const own = { edit: true, mayBeEmpty: true } as const;

export const materialColumns: readonly Column<MaterialRow>[] = [
  text('name', say('Material'), { edit: true, width: 250, mayBeEmpty: false }),
  text('kind', say('Kind'), { edit: true, width: 100, mayBeEmpty: false }),
  choice('baseUnit', say('Counted by'), baseUnitChoices, { width: 100 }),
  quantity('dryDensity_kg_per_m3', say('Dry'), { ...own, hint: say('Bulk density, dry'), width: 95 }),
  quantity('moistDensity_kg_per_m3', say('Moist'), { ...own, hint: say('Bulk density as handled'), width: 95 }),
  share('moistureShare', say('Moisture'), { ...own, hint: say('Water in the material as handled, of its weight'), width: 100 }),
  share('nShare', 'N', { ...own, hint: say('Total nitrogen, of the weight as handled'), width: 70 }),
  share('p2o5Share', 'P₂O₅', { ...own, hint: say('Phosphate, of the weight as handled'), width: 80 }),
  share('k2oShare', 'K₂O', { ...own, hint: say('Potash, of the weight as handled'), width: 80 }),
  share('firstYearNShare', say('N in year 1'), {
    ...own,
    hint: say('Share of the nitrogen plants can use in the first year'),
    width: 110,
  }),
  choice('organicUse', say('Organic use'), organicUses, { edit: true, width: 105 }),
  count('offers', say('Offers'), { width: 75 }),
  quantity('life_years', say('Life'), { ...own, width: 80, shown: false }),
  share('caShare', 'Ca', { ...own, shown: false }),
  share('mgShare', 'Mg', { ...own, shown: false }),
  share('sShare', 'S', { ...own, shown: false }),
  share('neutralisingShare', say('Neutralises'), { ...own, hint: say('Calcium carbonate equivalent'), shown: false }),
  share('settlingFirstShare', say('Settles, year 1'), { ...own, shown: false }),
  share('settlingLaterShare', say('Settles, later years'), { ...own, shown: false }),
  choice('animalOrigin', say('Animal origin'), animalOrigins, { edit: true, shown: false }),
  flag('dusty', say('Dusty'), { edit: true, shown: false }),
  flag('own', say('Dug here'), { edit: true, hint: say('Dug or won on the farm: it is never bought'), width: 90 }),
  flag('retired', say('Not used'), { edit: true, width: 85 }),
  text('source', say('Source'), { width: 320, shown: false }),
];
