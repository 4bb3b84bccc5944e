import type { HeadPart } from '../../../planner/irrigation/head-budget.ts';
import type { LineOption } from '../../../planner/irrigation/line-options.ts';
import type { LinePart } from '../../../planner/irrigation/line-parts.ts';
import type { api } from '../../client/api.ts';
import type { OutputOf } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';

/** One line whole, as the program answers it. */
export type LineData = OutputOf<typeof api.waterLines.one>;
export type LineList = OutputOf<typeof api.waterLines.list>;

export const optionTitles: Readonly<Record<LineOption['kind'], string>> = {
  'as-it-is': say('As it is, valves set'),
  'wider-main': say('Wider main'),
  'wider-tees': say('Tees as wide as the tube'),
  'two-branches': say('Two branches from the source'),
  'second-pump': say('One more pump beside it'),
  'two-zones': say('Two zones, one after the other'),
};

export const partTitles: Readonly<Record<LinePart['what'], string>> = {
  tube: say('Tube'),
  tee: say('Tee'),
  adapter: say('Adapter'),
  valve: say('Valve'),
  clamp: say('Clamp'),
  bulkhead: say('Bulkhead fitting'),
  strainer: say('Strainer'),
  vent: say('Vent or air gap'),
  plug: say('End plug'),
  pump: say('Pump'),
};

export const headPartTitles: Readonly<Record<HeadPart['what'], string>> = {
  lift: say('lift to the outlet'),
  tube: say('friction in the main'),
  fittings: say('tees and fittings of the main'),
  lateral: say('the lateral of the last bed'),
  valve: say('left for the valve'),
};
