import { requireRange } from '../errors.ts';
import { significant } from '../units/significant.ts';
import { computed, practice, type Working } from '../working.ts';

/**
 * How much more room soil takes once dug, by what it is: share of its volume in the bank.
 * Source: earthwork handbooks (memory); one page read gives common earth 20 to 30 %. The grower's own soil: measure a hole
 * and the heap from it.
 */
export const swellByGround = {
  'sand-gravel-dry': 0.12,
  'loam-common-earth': 0.25,
  clay: 0.35,
  'topsoil-with-roots': 0.45,
  'peat-muck': 0.3,
} as const;

export type Ground = keyof typeof swellByGround;

/**
 * Loose volume of soil dug from the bank: V_l = V_b (1 + w).
 *
 *   V_b   volume undug            L (or any volume)   0 or more
 *   w     swell, bank to loose    -                   0 to 1
 *
 * Source: earthwork practice; swell and shrink are two properties and are not chained as one.
 * @throws InputError naming the field
 */
export function looseFromBank(bank: number, swellShare: number): number {
  requireSwell(bank, swellShare);
  return bank * (1 + swellShare);
}

/** Volume that soil gains when dug: V_b w. It takes this much more room in the truck. @throws InputError */
export function gainFromSwell(bank: number, swellShare: number): number {
  requireSwell(bank, swellShare);
  return bank * swellShare;
}

/** Volume to dig for a loose volume: V_b = V_l/(1 + w). @throws InputError naming the field */
export function bankFromLoose(loose: number, swellShare: number): number {
  requireSwell(loose, swellShare);
  return loose / (1 + swellShare);
}

/** Load factor of earthwork tables: 1/(1 + w). @throws InputError naming the field */
export function loadFactor(swellShare: number): number {
  requireSwell(1, swellShare);
  return 1 / (1 + swellShare);
}

/** Volume once compacted, from the bank: V_c = V_b (1 - k), k the shrink from bank to compacted. @throws InputError */
export function compactedFromBank(bank: number, shrinkShare: number): number {
  requireRange('bank', bank, 0, 1e9, '');
  requireRange('shrinkShare', shrinkShare, 0, 0.9, '');
  return bank * (1 - shrinkShare);
}

/** Volume to dig for a compacted volume: V_b = V_c/(1 - k). @throws InputError */
export function bankFromCompacted(compacted: number, shrinkShare: number): number {
  requireRange('compacted', compacted, 0, 1e9, '');
  requireRange('shrinkShare', shrinkShare, 0, 0.9, '');
  return compacted / (1 - shrinkShare);
}

function requireSwell(volume: number, swellShare: number): void {
  requireRange('volume', volume, 0, 1e9, '');
  requireRange('swellShare', swellShare, 0, 1, '');
}

export function explainDig(loose_L: number, swellShare: number, swellFrom = practice()): Working {
  const result = { value: bankFromLoose(loose_L, swellShare), unit: 'bulk_L' };
  return {
    title: 'Own soil to dig',
    formula: 'V_b = V_l/(1 + w)',
    symbols: [
      { symbol: 'V_l', name: 'loose soil wanted', figure: { value: loose_L, unit: 'bulk_L' }, origin: computed() },
      { symbol: 'w', name: 'swell from bank to loose', figure: { value: swellShare, unit: 'share' }, origin: swellFrom },
    ],
    steps: [{ text: 'The hole that gives it', figures: `${significant(loose_L, 4)} L ÷ ${1 + swellShare}`, result }],
    sources: ['Earthwork practice; swell figures from memory of earthwork handbooks'],
    notes: ['Measure a hole and its heap once: your own swell is worth more than a table.'],
    result,
  };
}

/** Depth of the hole that a volume dug from the bank leaves over an area. @throws InputError */
export function holeDepth_m(bank_m3: number, area_m2: number): number {
  requireRange('bank_m3', bank_m3, 0, 1e6, 'm3');
  requireRange('area_m2', area_m2, 1e-6, 1e6, 'm2');
  return bank_m3 / area_m2;
}
