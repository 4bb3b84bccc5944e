import { computed, entry, source, type Working } from '../working.ts';
import { headBudget } from './head-budget.ts';
import { type LinePlan, networkOf, zonesOf } from './line-plan.ts';
import { readyLine, solveReady } from './line-solution.ts';

const partNames = {
  lift: 'lift from the water to the outlet',
  tube: 'friction in the main',
  fittings: 'tees and fittings of the main',
  lateral: 'the last run to the bed',
  valve: 'left for valve and end',
} as const;

/**
 * How the flow at one bed came about, reservoir full and valves as they stand: what the source gives at that total flow, what
 * the way takes, and what is left to drive the water through valve and end. Undefined for an outlet that is not solved.
 * @throws InputError with every fault of the line at its field
 */
export function explainBedFlow(plan: LinePlan, outletId: string): Working | undefined {
  const line = readyLine(networkOf(plan, 'full'));
  const openOutlets = zonesOf(plan).find((zone) => zone.outlets.has(outletId))?.outlets;
  const solution = solveReady(line, openOutlets === undefined ? {} : { openOutlets });
  const outlet = line.network.outlets.find((each) => each.id === outletId);
  if (solution.state === 'no-solution' || outlet === undefined) return undefined;
  const flow = solution.outlets.find((each) => each.id === outletId);
  if (flow === undefined) return undefined;
  const budget = headBudget(line, solution, outletId);
  return {
    title: 'Flow at the bed',
    formula: outlet.emitters === undefined ? 'q = A sqrt(2 g h / K)' : 'h = K v^2 / (2 g) + h0 (q / (N q0))^(1/x)',
    symbols: [
      {
        symbol: 'h',
        name: 'head left over the outlet',
        figure: { value: flow.surplus_m, unit: 'm' },
        origin: computed('the solved line'),
      },
      {
        symbol: 'K',
        name: 'loss coefficient of valve and end',
        figure: { value: outlet.lossK, unit: '' },
        origin: entry('the valve as it stands; an open end is 1'),
      },
      { symbol: 'D', name: 'bore, A = pi/4 D^2', figure: { value: outlet.bore_m, unit: 'm_short' }, origin: entry() },
      { symbol: 'z', name: 'height of the outlet', figure: { value: outlet.outlet_m, unit: 'm' }, origin: entry() },
      {
        symbol: 'nu',
        name: 'viscosity by the water’s temperature',
        figure: { value: line.network.viscosity_m2_per_s, unit: 'm2_per_s' },
        origin: source('Patek et al. 2009 (memory)'),
      },
    ],
    steps: [
      {
        text: 'source gives, at the total flow',
        figures: 'pump curve, or the fall of the water',
        result: { value: budget.source_m, unit: 'm' },
      },
      ...budget.parts.map((part) => ({
        text: partNames[part.what],
        figures: part.insideDiameter_m === null ? '' : `${(part.insideDiameter_m * 1000).toPrecision(3)} mm inside`,
        result: { value: part.head_m, unit: 'm' },
      })),
      { text: 'all beds of the zone together', figures: 'sum of q', result: { value: solution.total_L_per_h, unit: 'L_per_h' } },
    ],
    result: { value: flow.flow_L_per_h, unit: 'L_per_h' },
    sources: [
      'Darcy-Weisbach with 64/Re, Dunlop’s cubic and Swamee-Jain (Hydraulic Institute; EPANET 2.2 user manual)',
      'Energy balance along every path, solved together for all beds',
    ],
    notes: [
      'Two figures are worth trusting: losses of tees scatter by a quarter.',
      ...(flow.uncertain
        ? ['A tube on the way is near the change from smooth to turbulent flow: take the flow as uncertain by 30 %.']
        : []),
    ],
  };
}
