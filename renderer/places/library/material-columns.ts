import type { api } from '../../client/api.ts';
import type { OutputOf } from '../../client/use-read.ts';
import { type Column, choice, count, flag, quantity, share, text } from '../../table/column.ts';

export type MaterialRow = OutputOf<typeof api.materials.list>[number];

export const organicUses = [
  { value: 'allowed', text: 'allowed' },
  { value: 'not-allowed', text: 'not allowed' },
  { value: 'unknown', text: 'not known' },
] as const;

export const animalOrigins = [
  { value: 'none', text: 'none' },
  { value: 'raw', text: 'raw' },
  { value: 'composted', text: 'composted' },
  { value: 'treated', text: 'treated' },
] as const;

export const baseUnitChoices = [
  { value: 'L', text: 'volume' },
  { value: 'kg', text: 'weight' },
  { value: 'count', text: 'pieces' },
  { value: 'm', text: 'length' },
  { value: 'm2', text: 'area' },
] as const;

const own = { edit: true, mayBeEmpty: true } as const;

export const materialColumns: readonly Column<MaterialRow>[] = [
  text('name', 'Material', { edit: true, width: 250, mayBeEmpty: false }),
  text('kind', 'Kind', { edit: true, width: 100, mayBeEmpty: false }),
  choice('baseUnit', 'Counted by', baseUnitChoices, { width: 100 }),
  quantity('dryDensity_kg_per_m3', 'Dry', { ...own, hint: 'Bulk density, dry', width: 95 }),
  quantity('moistDensity_kg_per_m3', 'Moist', { ...own, hint: 'Bulk density as handled', width: 95 }),
  share('moistureShare', 'Moisture', { ...own, hint: 'Water in the material as handled, of its weight', width: 100 }),
  share('nShare', 'N', { ...own, hint: 'Total nitrogen, of the weight as handled', width: 70 }),
  share('p2o5Share', 'P₂O₅', { ...own, hint: 'Phosphate, of the weight as handled', width: 80 }),
  share('k2oShare', 'K₂O', { ...own, hint: 'Potash, of the weight as handled', width: 80 }),
  share('firstYearNShare', 'N in year 1', { ...own, hint: 'Share of the nitrogen plants can use in the first year', width: 110 }),
  choice('organicUse', 'Organic use', organicUses, { edit: true, width: 105 }),
  count('offers', 'Offers', { width: 75 }),
  quantity('life_years', 'Life', { ...own, width: 80, shown: false }),
  share('caShare', 'Ca', { ...own, shown: false }),
  share('mgShare', 'Mg', { ...own, shown: false }),
  share('sShare', 'S', { ...own, shown: false }),
  share('neutralisingShare', 'Neutralises', { ...own, hint: 'Calcium carbonate equivalent', shown: false }),
  share('settlingFirstShare', 'Settles, year 1', { ...own, shown: false }),
  share('settlingLaterShare', 'Settles, later years', { ...own, shown: false }),
  choice('animalOrigin', 'Animal origin', animalOrigins, { edit: true, shown: false }),
  flag('dusty', 'Dusty', { edit: true, shown: false }),
  flag('own', 'Own', { hint: 'Entered or changed by you', width: 70 }),
  flag('retired', 'Not used', { edit: true, width: 85 }),
  text('source', 'Source', { width: 320, shown: false }),
];
