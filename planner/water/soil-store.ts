import { requireRange } from '../errors.ts';
import { entry, library, source, type Working } from '../working.ts';

export type SoilStoreInput = {
  readonly fieldCapacityShare: number;
  readonly wiltingShare: number;
  readonly rootDepth_m: number;
};

/**
 * Water that roots can take out of the soil between drained and wilting.
 *
 *   TAW = 1000 (FC - WP) Zr
 *
 *   FC, WP   water at field capacity and wilting point   m3/m3   0 to 1
 *   Zr       rooted depth                                 m       0 to 5
 *
 * Source: FAO-56 eq. 82; checked with Example 36.
 * @throws InputError naming the field
 */
export function totalAvailable_mm(input: SoilStoreInput): number {
  requireRange('fieldCapacityShare', input.fieldCapacityShare, 0, 1, '');
  requireRange('wiltingShare', input.wiltingShare, 0, input.fieldCapacityShare, '');
  requireRange('rootDepth_m', input.rootDepth_m, 0, 5, 'm');
  return 1000 * (input.fieldCapacityShare - input.wiltingShare) * input.rootDepth_m;
}

/** The part that is taken without stress, `p TAW`. Source: FAO-56 eq. 83. */
export const readilyAvailable_mm = (available_mm: number, p: number): number => p * available_mm;

/** p on a day of other use than 5 mm, `p + 0.04 (5 - ETc)` held to 0.1 to 0.8. Source: FAO-56, text at Table 22. */
export const adjustedP = (pTable: number, etc_mm_per_day: number): number =>
  Math.min(0.8, Math.max(0.1, pTable + 0.04 * (5 - etc_mm_per_day)));

/**
 * How far a crop short of water still uses what it would: 1 down to RAW, then straight to 0 at TAW.
 *
 *   Ks = (TAW - Dr) / ((1 - p) TAW)
 *
 * Source: FAO-56 eq. 84; checked with Example 37.
 */
export function stressShare(depletion_mm: number, available_mm: number, p: number): number {
  if (depletion_mm <= p * available_mm) return 1;
  if (available_mm <= 0 || p >= 1) return 0;
  return Math.max(0, (available_mm - depletion_mm) / ((1 - p) * available_mm));
}

/** How {@link totalAvailable_mm} came to its figure. */
export function explainTotalAvailable(input: SoilStoreInput & { readonly p: number }): Working {
  const taw = totalAvailable_mm(input);
  return {
    title: 'Water the roots can reach',
    formula: 'TAW = 1000 (FC − WP) Zr;  RAW = p TAW',
    symbols: [
      {
        symbol: 'FC',
        name: 'water held when drained',
        figure: { value: input.fieldCapacityShare, unit: 'share' },
        origin: library('the fill material or texture'),
      },
      {
        symbol: 'WP',
        name: 'water held at wilting',
        figure: { value: input.wiltingShare, unit: 'share' },
        origin: library('the fill material or texture'),
      },
      {
        symbol: 'Zr',
        name: 'rooted depth',
        figure: { value: input.rootDepth_m, unit: 'm_short' },
        origin: entry('crop and bed, the lesser'),
      },
      {
        symbol: 'p',
        name: 'share taken without stress',
        figure: { value: input.p, unit: 'share' },
        origin: source('FAO-56 Table 22'),
      },
    ],
    steps: [
      {
        text: 'taken without stress',
        figures: `${input.p} × ${taw.toPrecision(3)} mm`,
        result: { value: readilyAvailable_mm(taw, input.p), unit: 'mm' },
      },
    ],
    result: { value: taw, unit: 'mm' },
    sources: ['FAO Irrigation and Drainage Paper 56 (1998), eq. 82, 83'],
    notes: [],
  };
}
