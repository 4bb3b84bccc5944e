import type { FarmBlend } from '../../../planner/fertility/blend-answer.ts';
import type { Working } from '../../../planner/working.ts';
import { say } from '../../words/say.ts';

/** The working of what is to be bought: each package with its price, added up. */
export function explainBlendCost(blend: FarmBlend): Working {
  return {
    title: say('To buy for the blend'),
    formula: say('cost = Σ packages × price'),
    symbols: blend.packages.map((each) => ({
      symbol: `${each.packages} ×`,
      name: each.name,
      figure: { value: each.cost_minor / each.packages, unit: 'minor' },
      origin: { kind: 'entry' as const, text: say('your offers') },
    })),
    steps: [
      ...blend.packages.map((each) => ({
        text: each.name,
        figures: say('{packages} packages', { packages: each.packages }),
        result: { value: each.cost_minor, unit: 'minor' },
      })),
    ],
    result: { value: blend.cost_minor, unit: 'minor' },
    sources: [say('Linear programme with whole packages, in two solves: least missed, then least cost')],
    notes: [
      say('Stock is used first and costs nothing here: it is paid.'),
      say('Price breaks, delivery and tax are reckoned in Orders.'),
      say('{beds} beds in {groups} groups of like need.', { beds: blend.beds.length, groups: blend.groups }),
    ],
  };
}
