import { requireRange, requireWhole } from '../errors.ts';
import { significant } from '../units/significant.ts';
import { computed, practice, type Working } from '../working.ts';

/** How much of its depth a fill loses in its first season and in each later one. */
export type Settling = { readonly firstShare: number; readonly laterShare: number };

/**
 * Settling by kind of fill. All common practice, no source: the grower's own measured drops are worth more.
 * Seen for scale: garden pages report 2 to 4 in lost in the first season with 30 to 50 % organic matter.
 */
export const settlingByFill = {
  'own-soil': { firstShare: 0.15, laterShare: 0.01 },
  'raised-bed-mix': { firstShare: 0.15, laterShare: 0.06 },
  'potting-mix': { firstShare: 0.2, laterShare: 0.08 },
  compost: { firstShare: 0.3, laterShare: 0.2 },
  'wood-core-rotted': { firstShare: 0.2, laterShare: 0.08 },
  'wood-core-fresh': { firstShare: 0.1, laterShare: 0.05 },
  'mulch-wood-chips': { firstShare: 0.25, laterShare: 0.25 },
  'mulch-bark': { firstShare: 0.15, laterShare: 0.15 },
  'mulch-leaves': { firstShare: 0.6, laterShare: 0.6 },
  'mulch-straw': { firstShare: 0.6, laterShare: 0.6 },
} as const satisfies Record<string, Settling>;

/**
 * Loose volume to place so that a volume is left once it has settled: V_l = V_s/(1 - s).
 *
 *   V_s   volume wanted when settled   L    0 or more
 *   s     share of depth lost          -    0 to 0.9
 *
 * Source: definition.
 * @throws InputError naming the field
 */
export function looseForSettled_L(settled_L: number, settlingShare: number): number {
  requireRange('settled_L', settled_L, 0, 1e9, 'L');
  requireRange('settlingShare', settlingShare, 0, 0.9, '');
  return settled_L / (1 - settlingShare);
}

/** Volume left of a loose volume once settled. @throws InputError */
export function settledFromLoose_L(loose_L: number, settlingShare: number): number {
  requireRange('loose_L', loose_L, 0, 1e9, 'L');
  requireRange('settlingShare', settlingShare, 0, 0.9, '');
  return loose_L * (1 - settlingShare);
}

/**
 * Depth that is left of a fill after whole seasons: d = d0 (1 - s1)(1 - s2)^(y - 1); d0 at y = 0.
 * @throws InputError naming the field
 */
export function depthAfter_m(placed_m: number, settling: Settling, seasons: number): number {
  requireRange('placed_m', placed_m, 0, 5, 'm');
  requireWhole('seasons', seasons, 0, 200);
  requireRange('firstShare', settling.firstShare, 0, 0.9, '');
  requireRange('laterShare', settling.laterShare, 0, 0.9, '');
  if (seasons === 0) return placed_m;
  return placed_m * (1 - settling.firstShare) * (1 - settling.laterShare) ** (seasons - 1);
}

/**
 * Settling learned from a measured drop: the share of the depth lost. The mean over beds of one design, weighted by depth,
 * is what the next fill of that design should reckon with.
 * @throws InputError when nothing was measured or a drop is more than its depth
 */
export function settlingFromDrops(drops: readonly { readonly depth_m: number; readonly drop_m: number }[]): number {
  requireWhole('drops', drops.length, 1, 1e6);
  drops.forEach(({ depth_m, drop_m }, at) => {
    requireRange(`drops.${at}.depth_m`, depth_m, 1e-6, 5, 'm');
    requireRange(`drops.${at}.drop_m`, drop_m, 0, depth_m, 'm');
  });
  const depth_m = drops.reduce((sum, each) => sum + each.depth_m, 0);
  return drops.reduce((sum, each) => sum + each.drop_m, 0) / depth_m;
}

/** Settling of a fill of several layers: their mean, weighted by settled volume; 0 of an empty bed. */
export function meanSettling(layers: readonly { readonly settled_L: number; readonly share: number }[]): number {
  const whole_L = layers.reduce((sum, layer) => sum + layer.settled_L, 0);
  return whole_L === 0 ? 0 : layers.reduce((sum, layer) => sum + layer.settled_L * layer.share, 0) / whole_L;
}

export function explainLoose(settled_L: number, settlingShare: number, name: string): Working {
  const result = { value: looseForSettled_L(settled_L, settlingShare), unit: 'bulk_L' };
  return {
    title: `${name}: loose volume to place`,
    formula: 'V_l = V_s/(1 − s)',
    symbols: [
      {
        symbol: 'V_s',
        name: 'volume of the layer once settled',
        figure: { value: settled_L, unit: 'bulk_L' },
        origin: computed('geometry of the bed'),
      },
      {
        symbol: 's',
        name: 'settling of the first season',
        figure: { value: settlingShare, unit: 'share' },
        origin: practice('the recipe or the material library; settling figures are common practice, no source'),
      },
    ],
    steps: [
      {
        text: 'Placed loose so that the depth is right after settling',
        figures: `${significant(settled_L, 4)} L ÷ ${significant(1 - settlingShare, 3)}`,
        result,
      },
    ],
    sources: ['Definition; settling common practice, no source'],
    notes: [],
    result,
  };
}
