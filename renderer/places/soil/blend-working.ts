import type { FarmBlend } from '../../../planner/fertility/blend-answer.ts';
import type { Working } from '../../../planner/working.ts';

/** The working of what is to be bought: each package with its price, added up. */
export function explainBlendCost(blend: FarmBlend): Working {
  return {
    title: 'To buy for the blend',
    formula: 'cost = Σ packages × price',
    symbols: blend.packages.map((each) => ({
      symbol: `${each.packages} ×`,
      name: each.name,
      figure: { value: each.cost_minor / each.packages, unit: 'minor' },
      origin: { kind: 'entry' as const, text: 'your offers' },
    })),
    steps: [
      ...blend.packages.map((each) => ({
        text: each.name,
        figures: `${each.packages} packages`,
        result: { value: each.cost_minor, unit: 'minor' },
      })),
    ],
    result: { value: blend.cost_minor, unit: 'minor' },
    sources: ['Linear programme with whole packages, in two solves: least missed, then least cost'],
    notes: [
      'Stock is used first and costs nothing here: it is paid.',
      'Price breaks, delivery and tax are reckoned in Orders.',
      `${blend.beds.length} beds in ${blend.groups} groups of like need.`,
    ],
  };
}
