import type { HeadPart } from '../../../planner/irrigation/head-budget.ts';
import type { LineOption } from '../../../planner/irrigation/line-options.ts';
import type { LinePart } from '../../../planner/irrigation/line-parts.ts';
import type { api } from '../../client/api.ts';
import type { OutputOf } from '../../client/use-read.ts';

/** One line whole, as the program answers it. */
export type LineData = OutputOf<typeof api.waterLines.one>;
export type LineList = OutputOf<typeof api.waterLines.list>;

export const optionTitles: Readonly<Record<LineOption['kind'], string>> = {
  'as-it-is': 'As it is, valves set',
  'wider-main': 'Wider main',
  'wider-tees': 'Tees as wide as the tube',
  'two-branches': 'Two branches from the source',
  'second-pump': 'One more pump beside it',
  'two-zones': 'Two zones, one after the other',
};

export const partTitles: Readonly<Record<LinePart['what'], string>> = {
  tube: 'Tube',
  tee: 'Tee',
  adapter: 'Adapter',
  valve: 'Valve',
  clamp: 'Clamp',
  bulkhead: 'Bulkhead fitting',
  strainer: 'Strainer',
  vent: 'Vent or air gap',
  plug: 'End plug',
  pump: 'Pump',
};

export const headPartTitles: Readonly<Record<HeadPart['what'], string>> = {
  lift: 'lift to the outlet',
  tube: 'friction in the main',
  fittings: 'tees and fittings of the main',
  lateral: 'the lateral of the last bed',
  valve: 'left for the valve',
};
