import { say } from '../words/say.ts';

/**
 * Common sheets of adhesive labels, in millimetres: how many across and down, the size of one, the way from one to the
 * next, and the margins of the first (common practice, no source; the inch sheets are exact to 0.01 mm).
 */
export type LabelSheet = {
  readonly id: string;
  readonly text: string;
  readonly paper: 'letter' | 'a4';
  readonly across: number;
  readonly down: number;
  readonly width_mm: number;
  readonly height_mm: number;
  readonly stepX_mm: number;
  readonly stepY_mm: number;
  readonly left_mm: number;
  readonly top_mm: number;
};

export const labelSheets: readonly LabelSheet[] = [
  {
    id: 'letter-30',
    text: say('Letter, 30 labels of 2 5/8 by 1 in'),
    paper: 'letter',
    across: 3,
    down: 10,
    width_mm: 66.68,
    height_mm: 25.4,
    stepX_mm: 69.85,
    stepY_mm: 25.4,
    left_mm: 4.76,
    top_mm: 12.7,
  },
  {
    id: 'letter-10',
    text: say('Letter, 10 labels of 4 by 2 in'),
    paper: 'letter',
    across: 2,
    down: 5,
    width_mm: 101.6,
    height_mm: 50.8,
    stepX_mm: 106.36,
    stepY_mm: 50.8,
    left_mm: 3.97,
    top_mm: 12.7,
  },
  {
    id: 'a4-21',
    text: say('A4, 21 labels of 63.5 by 38.1 mm'),
    paper: 'a4',
    across: 3,
    down: 7,
    width_mm: 63.5,
    height_mm: 38.1,
    stepX_mm: 66,
    stepY_mm: 38.1,
    left_mm: 7.25,
    top_mm: 15.15,
  },
  {
    id: 'a4-8',
    text: say('A4, 8 labels of 99.1 by 67.7 mm'),
    paper: 'a4',
    across: 2,
    down: 4,
    width_mm: 99.1,
    height_mm: 67.7,
    stepX_mm: 101.6,
    stepY_mm: 67.7,
    left_mm: 4.7,
    top_mm: 13.1,
  },
];

export const paperSizes_mm = { letter: { width: 215.9, height: 279.4 }, a4: { width: 210, height: 297 } } as const;

/** Where each label lies on its sheet: `skipped` labels of the first sheet are already used. */
export function placesOf(
  sheet: LabelSheet,
  labels: number,
  skipped: number,
): readonly { readonly page: number; readonly x_mm: number; readonly y_mm: number }[] {
  const onSheet = sheet.across * sheet.down;
  return Array.from({ length: labels }, (_, at) => {
    const slot = at + skipped;
    const within = slot % onSheet;
    return {
      page: Math.floor(slot / onSheet),
      x_mm: sheet.left_mm + (within % sheet.across) * sheet.stepX_mm,
      y_mm: sheet.top_mm + Math.floor(within / sheet.across) * sheet.stepY_mm,
    };
  });
}
