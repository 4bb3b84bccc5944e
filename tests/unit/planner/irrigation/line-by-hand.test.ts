import { describe, expect, test } from 'vitest';
import { afterTheStop, dryRun } from '../../../../planner/irrigation/after-the-stop.ts';
import { headBudget } from '../../../../planner/irrigation/head-budget.ts';
import { lineOptions, measureOption } from '../../../../planner/irrigation/line-options.ts';
import { type LinePlan, networkOf } from '../../../../planner/irrigation/line-plan.ts';
import { lineReport } from '../../../../planner/irrigation/line-report.ts';
import { readyLine, solveReady } from '../../../../planner/irrigation/line-solution.ts';
import { distributionUniformity } from '../../../../planner/irrigation/uniformity.ts';
import { aPlan } from '../../../builders/a-line.ts';

// eight beds in two rows past a half-inch tube: 2 m to the rim, 1.32 m from tee to tee, 1.65 m from row to row, 0.33 m to each bed
const prices = {
  tubes: [
    { insideDiameter_m: 0.0127, price_minor_per_m: 100 },
    { insideDiameter_m: 0.019, price_minor_per_m: 150 },
    { insideDiameter_m: 0.025, price_minor_per_m: null },
  ],
  tee_minor: 70,
  pump_minor: 4000,
};
const wanted = (plan: LinePlan) => new Map(plan.outlets.map((outlet) => [outlet.id, 10]));
const optionsOf = (plan: LinePlan, change: Partial<typeof prices> | { readonly tee_minor: null } = {}) =>
  lineOptions({ plan, prices: { ...prices, ...change }, wanted_L: wanted(plan) });
const find = (options: ReturnType<typeof optionsOf>, kind: string, bore: number | null = null) =>
  options.find((option) => option.kind === kind && option.mainDiameter_m === bore);
const changedRuns = (plan: LinePlan, option: ReturnType<typeof find>) =>
  (option?.plan.runs ?? []).filter((run, at) => JSON.stringify(run) !== JSON.stringify(plan.runs[at])).map((run) => run.id);

describe('ways to get more water, by hand', () => {
  const plan = aPlan();
  test('a wider main: all runs with more than one bed behind them, 11.57 m at 150 and seven tees at 70', () => {
    const wide = find(optionsOf(plan), 'wider-main', 0.019);
    expect(changedRuns(plan, wide)).toEqual([
      'run-source-rim',
      ...[1, 2, 3, 4, 5, 6, 7].map((at) => `run-${at === 1 ? 'rim' : `tee-${at - 1}`}-tee-${at}`),
    ]);
    expect(wide?.cost_minor).toBe(1736 + 490);
    const run = wide?.plan.runs[1];
    expect(run?.insideDiameter_m).toBe(0.019);
    // a tee keeps the share of the bore that it leaves free
    expect((run?.teeBore_m ?? 0) / 0.019).toBeCloseTo(0.0095 / 0.0127, 12);
    expect(wide?.plan.runs[0]?.teeBore_m).toBeNull();
    expect(find(optionsOf(plan), 'wider-main', 0.0127)).toBeUndefined();
    expect(find(optionsOf(plan, { tee_minor: null }), 'wider-main', 0.019)?.cost_minor).toBeNull();
    expect(find(optionsOf(plan), 'wider-main', 0.025)?.cost_minor).toBeNull();
  });
  test('a main that is wide already in part: only what is narrower is changed and paid', () => {
    const part = { ...plan, runs: plan.runs.map((run, at) => (at === 0 ? { ...run, insideDiameter_m: 0.019 } : run)) };
    const wide = find(optionsOf(part), 'wider-main', 0.019);
    expect(changedRuns(part, wide)).not.toContain('run-source-rim');
    expect(wide?.cost_minor).toBe(Math.round(9.57 * 150) + 490);
  });
  test('wider tees, a second pump, two zones and two branches, each with what it takes', () => {
    const options = optionsOf(plan);
    expect(find(options, 'wider-tees')).toMatchObject({ cost_minor: 560 });
    expect(find(options, 'wider-tees')?.plan.runs.every((run) => run.teeBore_m === null)).toBe(true);
    expect(find(options, 'second-pump')).toMatchObject({ cost_minor: 4000, plan: { pump: { count: 2 } } });
    expect(find(options, 'as-it-is')).toMatchObject({ cost_minor: 0, plan });
    const zoned = find(options, 'two-zones');
    expect(zoned?.cost_minor).toBe(0);
    expect(zoned?.plan.nodes.filter((node) => node.zone === 2).map((node) => node.id)).toEqual([
      'end-5',
      'end-6',
      'end-7',
      'end-8',
    ]);
    // from the rim straight to the fifth tee, which has half of the beds behind it: 4 x 1.32 + 1.65 m at 100 and a tee
    const branched = find(options, 'two-branches');
    expect(changedRuns(plan, branched)).toEqual(['run-tee-4-tee-5-branch']);
    const branch = branched?.plan.runs.find((run) => run.id.endsWith('-branch'));
    expect([branch?.fromNodeId, branch?.toNodeId]).toEqual(['rim', 'tee-5']);
    expect(branch?.length_m).toBeCloseTo(6.93, 9);
    expect(branched?.cost_minor).toBe(693 + 70);
    expect(find(optionsOf(plan, { tee_minor: null }), 'two-branches')?.cost_minor).toBeNull();
    expect(find(optionsOf(plan, { tubes: prices.tubes.slice(1) }), 'two-branches')?.cost_minor).toBeNull();
    expect(find(optionsOf(plan, { tee_minor: null }), 'wider-tees')?.cost_minor).toBeNull();
  });
  test('what a line has no place for is not offered', () => {
    const kinds = (given: LinePlan) => optionsOf(given).map((option) => option.kind);
    expect(kinds({ ...plan, runs: plan.runs.map((run) => ({ ...run, teeBore_m: null })) })).not.toContain('wider-tees');
    expect(kinds(aPlan({ rows: 1, bedsInRow: 2 }))).not.toContain('two-branches');
    expect(kinds(aPlan({ rows: 1, bedsInRow: 1 }))).not.toContain('two-zones');
    const zoned = { ...plan, nodes: plan.nodes.map((node) => (node.id === 'end-8' ? { ...node, zone: 2 } : node)) };
    expect(kinds(zoned)).not.toContain('two-zones');
    const tap: LinePlan = {
      ...plan,
      pump: null,
      supply: { ...plan.supply, supply: 'tap', tapHead_m: 10, tapFlow_L_per_min: 20 },
    };
    expect(kinds(tap)).not.toContain('second-pump');
  });
  test('what is measured: the least, the mean, the minutes of each zone in turn, beds that get nothing', () => {
    const now = measureOption(plan, wanted(plan));
    // ten litres at the least flow; every bed gets the same, valves set
    expect(now.programme_min).toBeCloseTo(600 / now.least_L_per_h, 6);
    expect(now.mean_L_per_h).toBeCloseTo(now.least_L_per_h, 6);
    expect(now.unserved).toBe(0);
    const zones = { ...plan, nodes: plan.nodes.map((node) => ({ ...node, zone: node.position > 9 ? 2 : 1 })) };
    const zoned = measureOption(zones, wanted(plan));
    const near = lineReport(zones).outlets.filter((outlet) => outlet.zone === 1);
    const far = lineReport(zones).outlets.filter((outlet) => outlet.zone === 2);
    const flows = [...near, ...far].map((outlet) => outlet.design_L_per_h);
    expect([near.length, far.length]).toEqual([4, 4]);
    expect(zoned.least_L_per_h).toBeCloseTo(Math.min(...flows), 9);
    expect(zoned.mean_L_per_h).toBeCloseTo(flows.reduce((sum, flow) => sum + flow, 0) / 8, 9);
    const minutes = (list: typeof near) => Math.max(...list.map((outlet) => 600 / outlet.design_L_per_h));
    expect(zoned.programme_min).toBeCloseTo(minutes(near) + minutes(far), 6);
    const high = { ...plan, outlets: plan.outlets.map((outlet, at) => (at === 7 ? { ...outlet, outlet_m: 5 } : outlet)) };
    expect(measureOption(high, wanted(plan)).unserved).toBe(1);
    const [first] = optionsOf(high);
    expect(first?.unserved).toBeLessThanOrEqual(1);
  });
});

describe('a line’s report, by hand', () => {
  const plan = aPlan();
  test('totals are the sums of the beds, uniformity that of their flows, each run carries what lies behind it', () => {
    const report = lineReport(plan);
    const [zone] = report.zones;
    const full = report.outlets.map((outlet) => outlet.full.flow_L_per_h);
    const design = report.outlets.map((outlet) => outlet.design_L_per_h);
    const sum = (list: readonly number[]) => list.reduce((total, each) => total + each, 0);
    expect(zone?.now?.total_L_per_h).toBeCloseTo(sum(full), 4);
    expect(zone?.design?.total_L_per_h).toBeCloseTo(sum(design), 2);
    expect(zone?.nowUniformity?.du).toBeCloseTo(distributionUniformity(full), 12);
    expect(zone?.designUniformity?.du).toBeCloseTo(1, 6);
    expect([zone?.nowUniformity?.rating, zone?.designUniformity?.rating]).toEqual(['poor', 'excellent']);
    expect(zone?.now?.beyondCurve).toBe(false);
    expect(zone?.decides).toBe('outlet-8');
    expect(report.runs.map((run) => run.id)).toEqual(plan.runs.map((run) => run.id));
    expect(report.runs[0]?.flow_L_per_h).toBeCloseTo(sum(full), 4);
    expect(report.runs[2]?.flow_L_per_h).toBeCloseTo(full[0] ?? Number.NaN, 4);
    expect(report.runs.map((run) => run.tooFast)).toEqual(report.runs.map((run) => run.velocity_m_per_s > 1.5 + 0.024));
    expect(report.problem).toBeNull();
    expect(report.emissionUniformity).toBeNull();
  });
  test('the pump’s curve from no flow to its most, in forty steps', () => {
    const { curve, shutoff_m, most_L_per_h, curveIsGuess } = lineReport(plan);
    expect(curve).toHaveLength(41);
    expect(curve[0]).toEqual({ flow_L_per_h: 0, head_m: 2.2 });
    expect(curve[40]?.flow_L_per_h).toBeCloseTo(1514, 6);
    expect(curve[40]?.head_m).toBeCloseTo(0, 9);
    expect(curve[20]?.flow_L_per_h).toBeCloseTo(757, 6);
    expect([shutoff_m, curveIsGuess]).toEqual([2.2, false]);
    expect(most_L_per_h).toBeCloseTo(1514, 6);
    const fall = lineReport({ ...plan, pump: null, supply: { ...plan.supply, highLevel_m: 1, lowLevel_m: 0.8 } });
    expect(fall).toMatchObject({ shutoff_m: null, most_L_per_h: null, curve: [], curveIsGuess: false });
  });
  // drip outlets of one kind: EU = (1 - 1.27 cv) least over mean, by what each should give
  test('emission uniformity of drip outlets; none where no spread is known', () => {
    const drip = (cv: number | null): LinePlan => ({
      ...plan,
      outlets: plan.outlets.map((outlet) => ({
        ...outlet,
        kind: 'drip' as const,
        emitters: 10,
        emitter_L_per_h: 2,
        emitterExponent: 0.5,
        emitterHead_m: 1,
        emitterCv: cv,
      })),
    });
    const report = lineReport(drip(0.05));
    const each = report.outlets.map((outlet) => outlet.full.flow_L_per_h / 20);
    const mean = each.reduce((sum, flow) => sum + flow, 0) / each.length;
    expect(report.emissionUniformity).toBeCloseTo((1 - 1.27 * 0.05) * (Math.min(...each) / mean), 9);
    expect(lineReport(drip(null)).emissionUniformity).toBeNull();
  });
  test('where the head goes adds up to what the source gives, and names the largest but the valve', () => {
    const line = readyLine(networkOf(plan, 'low'));
    const solution = solveReady(line);
    if (solution.state !== 'converged') throw new Error(solution.because);
    const budget = headBudget(line, solution, 'outlet-8');
    expect(budget.source_m).toBe(solution.pumpHead_m);
    expect(budget.parts.reduce((sum, part) => sum + part.head_m, 0)).toBeCloseTo(budget.source_m, 6);
    expect(budget.parts.reduce((sum, part) => sum + part.share, 0)).toBeCloseTo(1, 6);
    expect(budget.parts.map((part) => part.what).sort()).toEqual(['fittings', 'lateral', 'lift', 'tube', 'valve']);
    expect(budget.parts.find((part) => part.what === 'lift')?.head_m).toBeCloseTo(0.6, 9);
    expect(budget.parts.map((part) => part.head_m)).toEqual(budget.parts.map((part) => part.head_m).toSorted((a, b) => b - a));
    expect(budget.bottleneck).toEqual(budget.parts.find((part) => part.what !== 'valve'));
    expect(headBudget(line, solution, 'nobody')).toEqual({ outletId: 'nobody', source_m: 0, parts: [], bottleneck: null });
    // a bed below the water needs no lift: the source gives the fall besides
    const below = { ...plan, outlets: plan.outlets.map((outlet) => ({ ...outlet, outlet_m: -0.5 })) };
    const falling = readyLine(networkOf(below, 'low'));
    const fallen = solveReady(falling);
    if (fallen.state !== 'converged') throw new Error(fallen.because);
    const fall = headBudget(falling, fallen, 'outlet-8');
    expect(fall.parts.map((part) => part.what)).not.toContain('lift');
    expect(fall.source_m).toBeCloseTo(fallen.pumpHead_m + 0.2, 9);
  });
  test('after the stop: a tap has none; a vent hole leaks, and none leaks nothing; the inlet wants 5 cm over it', () => {
    const input = { plan, vented: false, ventHole_m: null, reservoirArea_m2: 1 };
    const tap: LinePlan = { ...plan, supply: { ...plan.supply, supply: 'tap', tapHead_m: 10, tapFlow_L_per_min: 20 } };
    expect(afterTheStop({ ...input, plan: tap })).toMatchObject({ ventAt: null, lost_L: 0, drainBack: [] });
    expect(afterTheStop(input).ventLeak_L_per_h).toBeNull();
    expect(afterTheStop({ ...input, ventHole_m: 0.003 }).ventLeak_L_per_h).toBeGreaterThan(0);
    expect(dryRun(-0.4, -0.3)).toEqual({ stopLevel_m: -0.35000000000000003, short_m: 0 });
    expect(dryRun(-0.4, -0.38).short_m).toBeCloseTo(0.03, 12);
  });
});
