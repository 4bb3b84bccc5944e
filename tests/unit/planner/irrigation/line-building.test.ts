import { describe, expect, test } from 'vitest';
import { afterTheStop, dryRun, partingPlaces } from '../../../../planner/irrigation/after-the-stop.ts';
import { airGap_m, airGapBritish_m } from '../../../../planner/irrigation/air-gap.ts';
import { explainBedFlow } from '../../../../planner/irrigation/bed-flow-working.ts';
import { headBudget } from '../../../../planner/irrigation/head-budget.ts';
import { lineOptions } from '../../../../planner/irrigation/line-options.ts';
import { lineParts } from '../../../../planner/irrigation/line-parts.ts';
import {
  type LinePlan,
  networkOf,
  outletLossK,
  runFittingK,
  valveKOf,
  zonesOf,
} from '../../../../planner/irrigation/line-plan.ts';
import { lineReport } from '../../../../planner/irrigation/line-report.ts';
import { readyLine, solveLine } from '../../../../planner/irrigation/line-solution.ts';
import { rowsOfBeds, wizardLine } from '../../../../planner/irrigation/line-wizard.ts';
import { partsToOrder, pricesOfParts } from '../../../../planner/irrigation/part-prices.ts';
import { behind, relengthened, runLength_m } from '../../../../planner/irrigation/run-length.ts';
import { singleTubeFlow_m3_per_s, siphonTest, ventLeak_m3_per_s } from '../../../../planner/irrigation/siphon.ts';
import { systemCurve } from '../../../../planner/irrigation/system-curve.ts';
import {
  christiansenUniformity,
  distributionUniformity,
  emissionUniformity,
  explainDistributionUniformity,
  grossDepth_m,
  ratingOf,
} from '../../../../planner/irrigation/uniformity.ts';
import { aPlan } from '../../../builders/a-line.ts';

const wanted = (plan: LinePlan) => new Map(plan.outlets.map((outlet) => [outlet.id, 8.3]));
const prices = {
  tubes: [
    { insideDiameter_m: 0.0127, price_minor_per_m: 80 },
    { insideDiameter_m: 0.01905, price_minor_per_m: 150 },
    { insideDiameter_m: 0.0254, price_minor_per_m: null },
  ],
  tee_minor: 120,
  pump_minor: 3900,
};

describe('a line drawn from a dozen figures', () => {
  test('has a tee, a lateral and an outlet for every bed, and lengths of the drawing with slack', () => {
    const plan = aPlan({ rows: 2, bedsInRow: 4 });
    expect(plan.outlets).toHaveLength(8);
    expect(plan.runs).toHaveLength(1 + 2 * 8);
    const first = plan.runs.find((run) => run.toNodeId === 'tee-2');
    expect(first?.length_m).toBeCloseTo(1.2 * 1.1, 9);
    expect(solveLine(networkOf(plan)).state).toBe('converged');
  });
  test('as a comb gives the far bed more than as a snake', () => {
    const far = (arrangement: 'snake' | 'comb'): number =>
      lineReport(aPlan({ rows: 4, bedsInRow: 5, arrangement })).outlets[0]?.design_L_per_h ?? 0;
    expect(far('comb')).toBeGreaterThan(far('snake'));
  });
  test('beds in rows go to and fro, and nonsense is refused at its field', () => {
    expect(rowsOfBeds({ rows: 2, bedsInRow: 3, spacing_m: 1, rowSpacing_m: 2 }).map((bed) => bed.x_m)).toEqual([
      1, 2, 3, 3, 2, 1,
    ]);
    expect(() => rowsOfBeds({ rows: 0, bedsInRow: 3, spacing_m: 1, rowSpacing_m: 2 })).toThrowError(/rows/);
    expect(() => aPlan({ mainDiameter_m: 0 })).toThrowError(/mainDiameter_m/);
    const none = {
      source: { x_m: 0, y_m: 0 },
      beds: [],
      arrangement: 'snake' as const,
      mainDiameter_m: 0.0127,
      lateralDiameter_m: 0.0127,
      lateral_m: 0.3,
      teeBore_m: null,
      slackShare: 0.1,
      outlet_m: 0.3,
      riser_m: 1,
    };
    expect(() => wizardLine(none)).toThrowError(/beds/);
  });
  test('a moved place takes new lengths for its own runs only', () => {
    const plan = aPlan();
    const nodes = plan.nodes.map((node) => (node.id === 'end-3' ? { ...node, y_m: node.y_m + 5 } : node));
    const changed = relengthened(plan.runs, nodes, 'end-3');
    expect(changed.map((run) => run.id)).toEqual(['run-tee-3-end-3']);
    expect(changed[0]?.length_m).toBeCloseTo(5.3 * 1.1, 9);
    expect(runLength_m({ x_m: 0, y_m: 0, elevation_m: 0 }, { x_m: 0, y_m: 0, elevation_m: 0 })).toBeGreaterThan(0);
    expect(behind(plan.runs, 'tee-7')).toEqual(['tee-7', 'end-7', 'tee-8', 'end-8']);
  });
  test('a barbed tee adds the loss of its bore; a valve and its end are told apart', () => {
    expect(runFittingK({ fittingK: 0.6, teeBore_m: 0.0095, insideDiameter_m: 0.0127 })).toBeCloseTo(0.6 + 1.323, 3);
    expect(runFittingK({ fittingK: 0.6, teeBore_m: null, insideDiameter_m: 0.0127 })).toBe(0.6);
    for (const kind of ['open-end', 'drip', 'hand'] as const) expect(valveKOf({ kind }, outletLossK({ kind }, 15))).toBe(15);
  });
});

describe('the working of a bed’s flow', () => {
  test('ends in the flow of the report, and its steps add up', () => {
    const plan = aPlan();
    for (const outlet of lineReport(plan).outlets) {
      const working = explainBedFlow(plan, outlet.id);
      expect(working?.result.value).toBeCloseTo(outlet.full.flow_L_per_h, 9);
      const [first, ...rest] = working?.steps ?? [];
      const taken = rest.slice(0, -1).reduce((sum, step) => sum + step.result.value, 0);
      expect(taken).toBeCloseTo(first?.result.value ?? 0, 6);
    }
    expect(explainBedFlow(plan, 'nobody')).toBeUndefined();
  });
});

describe('what the page shows of a line', () => {
  const plan = aPlan();
  const report = () => lineReport(plan);
  test('least bed at the low level is below that at the full one, designed beds are even', () => {
    for (const outlet of report().outlets) expect(outlet.low.flow_L_per_h).toBeLessThan(outlet.full.flow_L_per_h);
    expect(report().zones[0]?.designUniformity?.du).toBeCloseTo(1, 4);
    expect(report().zones[0]?.nowUniformity?.rating).toBe('poor');
    expect(report().runs).toHaveLength(plan.runs.length);
  });
  test('the head on the way adds up to what the source gives, and the bottleneck is its largest part', () => {
    const budget = report().zones[0]?.budget;
    expect(budget?.parts.reduce((sum, part) => sum + part.head_m, 0)).toBeCloseTo(budget?.source_m ?? 0, 6);
    expect(budget?.bottleneck?.what).not.toBe('valve');
    const line = readyLine(networkOf(plan));
    const solution = solveLine(networkOf(plan));
    if (solution.state !== 'converged') throw new Error(solution.because);
    for (const outlet of solution.outlets) {
      const each = headBudget(line, solution, outlet.id);
      expect(each.parts.reduce((sum, part) => sum + part.head_m, 0)).toBeCloseTo(each.source_m, 6);
    }
  });
  test('the line’s own curve crosses the pump’s at the operating point', () => {
    const points = systemCurve(readyLine(networkOf(plan)), report().zones[0]?.now?.pumpHead_m ?? 0, undefined, 1);
    expect(points.at(-1)?.flow_L_per_h).toBeCloseTo(report().zones[0]?.now?.total_L_per_h ?? 0, 3);
  });
  test('two zones share no minute, and each bed belongs to one', () => {
    const zoned = { ...plan, nodes: plan.nodes.map((node) => (node.id === 'end-8' ? { ...node, zone: 2 } : node)) };
    expect(zonesOf(zoned).map((zone) => [zone.zone, zone.outlets.size])).toEqual([
      [1, 7],
      [2, 1],
    ]);
    const alone = lineReport(zoned).outlets.find((outlet) => outlet.zone === 2);
    expect(alone?.full.flow_L_per_h).toBeGreaterThan(
      report().outlets.find((outlet) => outlet.id === alone?.id)?.full.flow_L_per_h ?? 0,
    );
  });
  test('a tap gives its open flow to a short wide tube and no more than its static head lifts', () => {
    const tap: LinePlan = {
      ...aPlan({ mainDiameter_m: 0.0254, lateralDiameter_m: 0.0254, teeBore_m: null, rows: 1, bedsInRow: 1 }),
      pump: null,
      supply: { ...plan.supply, supply: 'tap', tapHead_m: 30, tapFlow_L_per_min: 12 },
    };
    const flow =
      lineReport({ ...tap, outlets: tap.outlets.map((outlet) => ({ ...outlet, openK: 0 })) }).outlets[0]?.full.flow_L_per_h ?? 0;
    expect(flow).toBeLessThan(720);
    expect(flow).toBeGreaterThan(700);
  });
});

describe('ways to get more water', () => {
  test('a wider main helps and costs its metres and tees; a bore without price has no cost', () => {
    const plan = aPlan();
    const options = lineOptions({ plan, prices, wanted_L: wanted(plan) });
    const find = (kind: string, bore: number | null = null) =>
      options.find((option) => option.kind === kind && option.mainDiameter_m === bore);
    const [now, wide] = [find('as-it-is'), find('wider-main', 0.01905)];
    expect(wide?.least_L_per_h).toBeGreaterThan(1.3 * (now?.least_L_per_h ?? 0));
    const main_m = plan.runs
      .filter((run) => run.toNodeId.startsWith('tee') || run.toNodeId === 'rim')
      .reduce((sum, run) => sum + run.length_m, 0);
    const last_m = plan.runs.find((run) => run.toNodeId === 'tee-8')?.length_m ?? 0;
    expect(wide?.cost_minor).toBeGreaterThan((main_m - last_m) * 150);
    expect(find('wider-main', 0.0254)?.cost_minor).toBeNull();
    expect(find('second-pump')?.cost_minor).toBe(3900);
    expect(find('second-pump')?.least_L_per_h).toBeGreaterThan(now?.least_L_per_h ?? 0);
    expect(find('two-branches')?.least_L_per_h).toBeGreaterThan(now?.least_L_per_h ?? 0);
    expect(find('wider-tees')?.least_L_per_h).toBeGreaterThan(now?.least_L_per_h ?? 0);
    for (let at = 1; at < options.length; at += 1)
      expect(options[at]?.programme_min ?? 0).toBeGreaterThanOrEqual(options[at - 1]?.programme_min ?? 0);
  });
  test('parts: tube by the metre, a tee where it divides, a valve for each bed, and adapters where bores change', () => {
    const plan = aPlan({ mainDiameter_m: 0.01905 });
    const parts = lineParts(plan);
    const amount = (what: string): number =>
      parts.filter((part) => part.what === what).reduce((sum, part) => sum + part.amount, 0);
    expect(amount('tube')).toBeCloseTo(
      plan.runs.reduce((sum, run) => sum + run.length_m, 0),
      9,
    );
    expect(amount('valve')).toBe(8);
    expect(amount('tee')).toBe(7);
    expect(amount('adapter')).toBe(1);
    expect(amount('clamp')).toBe(2 * plan.runs.length);
    expect(amount('pump')).toBe(1);
    expect(parts.find((part) => part.what === 'tee')?.toSize_m).toBe(0.0127);
  });
  test('parts are ordered as the materials that fit them, and only those', () => {
    const parts = lineParts(aPlan());
    const base = { kind: 'tubing', baseUnit: 'm', boreDiameter_m: null, price_minor: 98 };
    const offered = [
      { ...base, materialId: 'half', name: 'Tube, 1/2 in', insideDiameter_m: 0.0127 },
      { ...base, materialId: 'drip', name: 'Drip tube', insideDiameter_m: 0.0127 },
      {
        ...base,
        materialId: 'tee',
        name: 'Barbed tee',
        kind: 'fitting',
        baseUnit: 'count',
        insideDiameter_m: null,
        boreDiameter_m: 0.0095,
        price_minor: 145,
      },
    ];
    const wantedParts = partsToOrder(parts, offered, null);
    expect(wantedParts.map((part) => part.materialId).sort()).toEqual(['half', 'tee']);
    expect(pricesOfParts(offered)).toMatchObject({ tee_minor: 145, pump_minor: null });
    expect(pricesOfParts(offered).tubes[0]).toEqual({ insideDiameter_m: 0.0127, price_minor_per_m: 98 });
  });
});

describe('after the stop', () => {
  const low = (plan: LinePlan): LinePlan => ({
    ...plan,
    outlets: plan.outlets.map((outlet, at) => (at === 7 ? { ...outlet, outlet_m: -0.1 } : outlet)),
  });
  const input = { vented: false, ventHole_m: null, reservoirArea_m2: 0.5 };
  test('an outlet below the highest water goes on running until the level meets it', () => {
    const stop = afterTheStop({ plan: low(aPlan()), ...input });
    expect(stop.runningOn.map((outlet) => outlet.id)).toEqual(['outlet-8']);
    expect(stop.lost_L).toBeCloseTo(50, 6);
    expect(stop.ventAt).not.toBeNull();
    expect(afterTheStop({ plan: aPlan(), ...input }).runningOn).toEqual([]);
  });
  test('a vent ends it; its hole leaks while pumping', () => {
    const stop = afterTheStop({ plan: low(aPlan()), ...input, vented: true, ventHole_m: 0.003 });
    expect(stop.runningOn).toEqual([]);
    expect(stop.ventLeak_L_per_h).toBeGreaterThan(30);
  });
  test('a drowned outlet over the lowest water drains its basin back', () => {
    const plan = aPlan();
    const drowned = { ...plan, outlets: plan.outlets.map((outlet, at) => ({ ...outlet, drowned: at === 0 })) };
    expect(afterTheStop({ plan: drowned, ...input }).drainBack).toEqual(['outlet-1']);
  });
  test('a tap has neither siphon nor inlet; an inlet needs its cover; high crests part', () => {
    const tap: LinePlan = { ...aPlan(), pump: null, supply: { ...aPlan().supply, supply: 'tap', tapFlow_L_per_min: 10 } };
    expect(afterTheStop({ plan: tap, ...input }).runningOn).toEqual([]);
    expect(dryRun(-0.4, -0.3).short_m).toBe(0);
    expect(dryRun(-0.32, -0.3).short_m).toBeCloseTo(0.03, 9);
    expect(partingPlaces(aPlan())).toEqual([]);
    const crest = { ...aPlan(), nodes: aPlan().nodes.map((node) => (node.id === 'tee-2' ? { ...node, elevation_m: 9 } : node)) };
    expect(partingPlaces(crest).map((place) => place.nodeId)).toEqual(['tee-2']);
  });
  test('one tube’s flow grows with its head and its leak with its hole; air gaps keep their least', () => {
    const tube = {
      drivingHead_m: 0.5,
      length_m: 10,
      insideDiameter_m: 0.0127,
      lossK: 6,
      roughness_m: 1.5e-6,
      viscosity_m2_per_s: 1.004e-6,
    };
    expect(singleTubeFlow_m3_per_s({ ...tube, drivingHead_m: 1 })).toBeGreaterThan(singleTubeFlow_m3_per_s(tube));
    expect(singleTubeFlow_m3_per_s({ ...tube, drivingHead_m: 0 })).toBe(0);
    expect(() => singleTubeFlow_m3_per_s({ ...tube, length_m: 0 })).toThrowError(/length_m/);
    expect(ventLeak_m3_per_s(0.006, 1) / ventLeak_m3_per_s(0.003, 1)).toBeCloseTo(4, 9);
    expect(siphonTest({ outletElevation_m: 0.2, reservoirLevel_m: 0.6, vented: true }).siphons).toBe(false);
    expect(airGap_m(0.001)).toBeCloseTo(0.0254, 9);
    expect(airGapBritish_m(0.001)).toBe(0.02);
  });
});

describe('evenness', () => {
  test('equal flows are perfectly even; one poor bed in four lowers the low quarter alone', () => {
    expect(distributionUniformity([5, 5, 5, 5])).toBe(1);
    expect(christiansenUniformity([5, 5, 5, 5])).toBe(1);
    expect(distributionUniformity([10, 10, 10, 2])).toBeCloseTo(0.25, 9);
    expect(explainDistributionUniformity([10, 10, 10, 2]).result.value).toBeCloseTo(0.25, 9);
    expect(() => distributionUniformity([])).toThrowError(/at least one/);
    expect(() => distributionUniformity([0, 0])).toThrowError(/meanOfAll/);
  });
  test('bands after Merriam and Keller (memory), gross depth and emitters', () => {
    expect([0.95, 0.85, 0.75, 0.5].map(ratingOf)).toEqual(['excellent', 'good', 'fair', 'poor']);
    expect(grossDepth_m(0.02, 0.8)).toBeCloseTo(0.025, 9);
    expect(emissionUniformity({ manufacturingCv: 0, emittersPerPlant: 1, leastOverMeanFlow: 0.9 })).toBe(0.9);
    expect(() => grossDepth_m(0.02, 0)).toThrowError(/uniformity/);
    expect(() => emissionUniformity({ manufacturingCv: 0.1, emittersPerPlant: 0, leastOverMeanFlow: 1 })).toThrowError(
      /emittersPerPlant/,
    );
  });
});
