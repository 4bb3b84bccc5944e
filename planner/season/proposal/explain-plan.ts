import { computed, entry, type Working } from '../../working.ts';
import type { PlanFigures } from './figures-of-plan.ts';

const minor = (value: number) => ({ value, unit: 'minor' });

/**
 * How the margin of a plan comes about.
 *
 *   margin = sales - wages - direct costs - overhead - what missed orders cost
 *
 * Each part is rounded to whole minor units by itself, so they may differ from the margin by one or two.
 * Source: definition.
 */
export function explainPlanMargin(figures: PlanFigures): Working {
  const part = (symbol: string, name: string, value: number, from = computed('from the plan, week by week')) => ({
    symbol,
    name,
    figure: minor(value),
    origin: from,
  });
  return {
    title: 'Margin of the plan',
    formula: 'margin = sales - wages - direct costs - overhead - missed orders',
    symbols: [
      part('sales', 'what the harvest sells for: standing orders and market steps, dearest first', figures.sales_minor),
      part('wages', 'hours times the wage, overtime with its premium', figures.wages_minor),
      part('direct', 'seed, young plants, feed and other direct costs', figures.direct_minor, entry('your figures by crop')),
      part('overhead', 'once for each crop grown', figures.overhead_minor, entry('your figures by crop')),
      part('missed', 'penalties of standing orders not delivered', figures.missed_minor, entry('your standing orders')),
    ],
    steps: [
      {
        text: 'Margin',
        figures: 'sales - wages - direct - overhead - missed',
        result: minor(figures.margin_minor),
      },
    ],
    result: minor(figures.margin_minor),
    sources: ['Definition'],
    notes: [
      'The yield is the planned one: typical, lowered by your caution. What comes in will differ with weather and market.',
      'Fixed costs of beds, water and land are not in it: they are the same for every plan.',
    ],
  };
}

export type BoundInput = { readonly margin_minor: number; readonly bound_minor: number };

/**
 * The most by which any plan could be better: the proven bound less the plan's own value; never below 0.
 * Source: definition; for the bound see `optimise/column-generation.ts`.
 */
export const mostBetter_minor = ({ margin_minor, bound_minor }: BoundInput): number =>
  Math.max(0, Math.round(bound_minor - margin_minor));

/** How that is known. */
export function explainMostBetter(input: BoundInput): Working {
  const result = minor(mostBetter_minor(input));
  return {
    title: 'How much better a plan could be',
    formula: 'most better = bound - plan',
    symbols: [
      {
        symbol: 'bound',
        name: 'no plan can come to more: the season with parts of beds allowed',
        figure: minor(Math.round(input.bound_minor)),
        origin: computed('linear program, proven'),
      },
      {
        symbol: 'plan',
        name: 'what this plan comes to by the goal',
        figure: minor(Math.round(input.margin_minor)),
        origin: computed('whole beds'),
      },
    ],
    steps: [{ text: 'Apart', figures: 'bound - plan', result }],
    result,
    sources: ['Dantzig & Wolfe, Decomposition principle for linear programs, Operations Research 8, 1960 (from memory)'],
    notes: ['The best plan of whole beds may lie anywhere between the two.'],
  };
}
