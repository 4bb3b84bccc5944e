import type { UnitSystem } from '../../planner/units/system.ts';
import { paperSizes_mm } from '../labels/label-sheets.ts';

export type Paper = 'a4' | 'letter';

/** Where office paper is Letter; elsewhere A4 (Unicode CLDR, supplemental data, paperSize "US-Letter"; from memory). */
const letterRegions = new Set(['BZ', 'CA', 'CL', 'CO', 'CR', 'GT', 'MX', 'NI', 'PA', 'PH', 'PR', 'SV', 'US', 'VE']);

/** The farm's paper: that of the country its dates and numbers are written for; where it names none, by its units. */
export function paperOf({ system, locale }: { readonly system: UnitSystem; readonly locale: string }): Paper {
  const { region } = new Intl.Locale(locale);
  if (region === undefined) return system === 'us' ? 'letter' : 'a4';
  return letterRegions.has(region) ? 'letter' : 'a4';
}

const PX_PER_MM = 96 / 25.4;
const PX_PER_PT = 96 / 72;

/** Head, foot and sides of a page of the program's PDFs, and the heading over a drawing. */
const TAKEN_PX = { sides: 2 * 36 * PX_PER_PT, headAndFoot: (54 + 44) * PX_PER_PT, heading: 44 };

export type Room = { readonly width: number; readonly height: number };

export const sizeOfPaper_px = (paper: Paper): Room => {
  const { width, height } = paperSizes_mm[paper];
  return { width: width * PX_PER_MM, height: height * PX_PER_MM };
};

/** The room that a page has for one drawing with a heading over it, in pixels at true size. */
export function roomOn(paper: Paper, across: boolean): Room {
  const { width, height } = sizeOfPaper_px(paper);
  const [wide, high] = across ? [height, width] : [width, height];
  return {
    width: Math.floor(wide - TAKEN_PX.sides),
    height: Math.floor(high - TAKEN_PX.headAndFoot - TAKEN_PX.heading),
  };
}
