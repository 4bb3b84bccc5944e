import { eq, like } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { needChoice } from '../../db/schema/stock.ts';
import { task } from '../../db/schema/work.ts';
import type { Fault } from '../../planner/errors.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

let program: TestProgram;
beforeAll(() => {
  program = aProgram({ beds: 48 });
});
afterAll(() => program.end());

const faultsOf = async (work: Promise<unknown>): Promise<readonly Fault[]> => {
  try {
    await work;
  } catch (error) {
    return (error as { cause?: { faults?: readonly Fault[] } }).cause?.faults ?? [];
  }
  return [];
};

const firstLine = async (): Promise<string> => (await program.api.waterLines.list()).lines[0]?.lineId ?? '';

const pump = {
  name: 'Small pump',
  materialId: null,
  curveKind: 'three-points' as const,
  power_W: 25,
  inletHeight_m: -0.4,
  count: 1,
  points: [
    { flow_L_per_h: 0, head_m: 2.2 },
    { flow_L_per_h: 950, head_m: 1.3 },
    { flow_L_per_h: 1514, head_m: 0 },
  ],
};

const layout = {
  bedIds: [],
  rows: 2,
  bedsInRow: 4,
  spacing_m: 1.2,
  rowSpacing_m: 1.5,
  arrangement: 'snake' as const,
  mainDiameter_m: 0.0127,
  lateralDiameter_m: 0.0127,
  lateral_m: 0.3,
  teeBore_m: 0.0095,
  outlet_m: 0.3,
  riser_m: 2,
};

describe('the sample line', () => {
  test('is read with the fill of every basin and solves', async () => {
    const lineId = await firstLine();
    const line = await program.api.waterLines.one({ lineId });
    expect(line.facts.length).toBeGreaterThan(4);
    expect(line.facts.every((fact) => fact.wantedFrom === 'basin' && fact.wanted_L > 1)).toBe(true);
    const report = await program.api.waterLines.report({ lineId });
    expect(report.problem).toBeNull();
    expect(report.outlets.length).toBe(line.facts.length);
    expect(report.outlets.every((outlet) => outlet.design_L_per_h > 0)).toBe(true);
  });

  test('valves set by the card give even beds; measured flows are fitted; all of it is undone', async () => {
    const lineId = await firstLine();
    await program.api.waterLines.setValves({ lineId });
    const set = await program.api.waterLines.report({ lineId });
    expect(set.zones[0]?.nowUniformity?.du).toBeGreaterThan(0.95);
    const flows = set.outlets.map((outlet) => ({ outletId: outlet.id, flow_L_per_h: outlet.full.flow_L_per_h * 0.9 }));
    await program.api.waterLines.measured({ lineId, date: '2026-11-25', flows });
    const fitted = await program.api.waterLines.report({ lineId });
    for (const [at, outlet] of fitted.outlets.entries())
      expect(outlet.full.flow_L_per_h).toBeCloseTo(flows[at]?.flow_L_per_h ?? 0, 3);
    await program.api.undo.undo();
    const back = await program.api.waterLines.report({ lineId });
    expect(back.outlets[0]?.full.flow_L_per_h).toBeCloseTo(set.outlets[0]?.full.flow_L_per_h ?? 0, 9);
  });

  test('a measured flow that the line cannot give is refused at its outlet, and nothing is kept', async () => {
    const lineId = await firstLine();
    const line = await program.api.waterLines.one({ lineId });
    const outletId = line.facts[0]?.outletId ?? '';
    const faults = await faultsOf(
      program.api.waterLines.measured({ lineId, date: '2026-11-25', flows: [{ outletId, flow_L_per_h: 90_000 }] }),
    );
    expect(faults.map((fault) => fault.path)).toEqual([`flows.${outletId}`]);
    expect((await program.api.waterLines.one({ lineId })).facts[0]?.measured_L_per_h).toBe(line.facts[0]?.measured_L_per_h);
  });

  test('a wider main is taken over as it was compared', async () => {
    const lineId = await firstLine();
    const before = await program.api.waterLines.report({ lineId });
    await program.api.waterLines.takeOption({ lineId, kind: 'wider-main', mainDiameter_m: 0.0254 });
    const after = await program.api.waterLines.report({ lineId });
    expect(Math.min(...after.outlets.map((outlet) => outlet.design_L_per_h))).toBeGreaterThan(
      Math.min(...before.outlets.map((outlet) => outlet.design_L_per_h)),
    );
  });
});

describe('drawing a line', () => {
  test('one barrel, one pump, two rows of four beds', async () => {
    const { lineId } = await program.api.waterLines.create({
      name: 'Trial',
      supply: { highLevel_m: 0, lowLevel_m: -0.3 },
      pump,
      layout,
    });
    const report = await program.api.waterLines.report({ lineId });
    expect(report.outlets).toHaveLength(8);
    expect(report.outlets[0]?.design_L_per_h).toBeGreaterThan(20);
    const { plan } = await program.api.waterLines.one({ lineId });
    const tee = plan.nodes.find((node) => node.kind === 'tee' && node.name.startsWith('Tee'));
    const { nodeId } = await program.api.waterLines.addBranch({
      lineId,
      fromNodeId: tee?.id ?? '',
      to: 'outlet',
      bedId: null,
      x_m: 3,
      y_m: 3,
      insideDiameter_m: 0.0127,
      outlet_m: 0.3,
    });
    expect((await program.api.waterLines.report({ lineId })).outlets).toHaveLength(9);
    const run = (await program.api.waterLines.one({ lineId })).plan.runs.find((each) => each.toNodeId === nodeId);
    await program.api.waterLines.setNodes({ lineId, edits: [{ id: nodeId, values: { x_m: 30 } }], relength: true });
    const longer = (await program.api.waterLines.one({ lineId })).plan.runs.find((each) => each.id === run?.id);
    expect(longer?.length_m).toBeGreaterThan((run?.length_m ?? 0) + 20);
    await program.api.waterLines.removePlace({ lineId, nodeId });
    expect((await program.api.waterLines.report({ lineId })).outlets).toHaveLength(8);
    await program.api.waterLines.remove({ lineId });
    expect((await program.api.waterLines.list()).lines.map((line) => line.name)).not.toContain('Trial');
  });

  test('a pump curve that rises, a run without length and an outlet wider than its tube are refused at the field', async () => {
    const rising = { ...pump, curveKind: 'points' as const, points: [...pump.points, { flow_L_per_h: 1600, head_m: 1 }] };
    const drawn = await faultsOf(program.api.waterLines.create({ name: 'Rising', supply: {}, pump: rising, layout }));
    expect(drawn.map((fault) => fault.code)).toEqual(['does-not-fall']);
    const lineId = await firstLine();
    const { plan } = await program.api.waterLines.one({ lineId });
    const [run, outlet] = [plan.runs[2], plan.outlets[1]];
    const zero = await faultsOf(
      program.api.waterLines.setRuns({ lineId, edits: [{ id: run?.id ?? '', values: { length_m: 0 } }] }),
    );
    expect(zero.map((fault) => fault.path)).toEqual(['tubes.2.length_m']);
    const wide = await faultsOf(
      program.api.waterLines.setOutlets({ lineId, edits: [{ id: outlet?.id ?? '', values: { bore_m: 0.05 } }] }),
    );
    expect(wide.map((fault) => fault.path)).toEqual(['outlets.1.bore_m']);
  });

  test('an edit without a value, or of a piece that the line has not, is refused and changes nothing', async () => {
    const lineId = await firstLine();
    const before = await program.api.waterLines.one({ lineId });
    const calls = [
      (edit: { id: string; values: { name?: string } }) =>
        program.api.waterLines.setNodes({ lineId, edits: [edit], relength: false }),
      (edit: { id: string; values: { length_m?: number } }) => program.api.waterLines.setRuns({ lineId, edits: [edit] }),
      (edit: { id: string; values: { wantShare?: number } }) => program.api.waterLines.setOutlets({ lineId, edits: [edit] }),
    ];
    const known = [before.plan.nodes[0]?.id ?? '', before.plan.runs[0]?.id ?? '', before.plan.outlets[0]?.id ?? ''];
    for (const [at, call] of calls.entries()) {
      await expect(call({ id: known[at] ?? '', values: {} })).rejects.toThrow(/at least one value/);
      await expect(call({ id: 'no such piece', values: { name: 'A', length_m: 1, wantShare: 1 } })).rejects.toMatchObject({
        cause: { detail: { code: 'not-found' } },
      });
    }
    expect(await program.api.waterLines.one({ lineId })).toEqual(before);
    await expect(program.api.demand.set({ edits: [{ demandId: 'none', values: {} }] })).rejects.toThrow(/at least one value/);
  });

  test('the source cannot be taken away alone', async () => {
    const lineId = await firstLine();
    const { plan } = await program.api.waterLines.one({ lineId });
    const source = plan.nodes.find((node) => node.kind === 'source')?.id ?? '';
    expect((await faultsOf(program.api.waterLines.removePlace({ lineId, nodeId: source }))).map((fault) => fault.path)).toEqual([
      'nodeId',
    ]);
  });
});

describe('running a line', () => {
  test('its programme follows the beds’ need: each month’s interval, minutes enough for the slowest bed', async () => {
    const lineId = await firstLine();
    await program.api.waterLines.setValves({ lineId });
    await program.api.waterLines.proposeTimers({ lineId, start: '05:00' });
    const { timers, facts } = await program.api.waterLines.one({ lineId });
    expect(timers.length).toBeGreaterThan(3);
    for (const month of [1, 5, 7, 9])
      expect(timers.find((timer) => timer.month === month)?.every_days ?? null).toBe(
        (await program.api.waterLines.need({ lineId, month })).every_days,
      );
    const need = await program.api.waterLines.need({ lineId, month: 7 });
    const report = await program.api.waterLines.report({ lineId });
    const run_min = timers.find((timer) => timer.month === 7)?.run_min ?? 0;
    for (const { outletId, run_L } of need.run_L) {
      const flow = report.outlets.find((outlet) => outlet.id === outletId)?.low.flow_L_per_h ?? 0;
      expect((flow * run_min) / 60).toBeGreaterThanOrEqual(run_L - 1e-6);
    }
    expect(facts.length).toBeGreaterThan(0);
  });

  test('shares follow what the beds need, and go back to equal', async () => {
    const lineId = await firstLine();
    await program.api.waterLines.sharesByNeed({ lineId, month: 7 });
    const shares = (await program.api.waterLines.one({ lineId })).plan.outlets.map((outlet) => outlet.wantShare);
    expect(Math.max(...shares)).toBe(1);
    expect(Math.min(...shares)).toBeLessThan(1);
    await program.api.waterLines.equalShares({ lineId });
    expect((await program.api.waterLines.one({ lineId })).plan.outlets.every((outlet) => outlet.wantShare === 1)).toBe(true);
    const winter = await faultsOf(program.api.waterLines.sharesByNeed({ lineId, month: 1 }));
    expect(winter.map((fault) => fault.path)).toEqual(['month']);
  });

  test('the reservoir runs through every year of record and says what comes after the stop', async () => {
    const lineId = await firstLine();
    const { line } = await program.api.waterLines.one({ lineId });
    const answer = await program.api.waterLines.reservoir({ lineId });
    expect(answer.years.length).toBeGreaterThan(2);
    for (const year of answer.years)
      for (const day of year.days) {
        expect(day.level_L).toBeGreaterThanOrEqual((line.reservoir_L ?? 0) * (1 - line.usableShare) - 1e-6);
        expect(day.level_L).toBeLessThanOrEqual((line.reservoir_L ?? 0) + 1e-6);
      }
    expect(answer.afterStop.runningOn).toEqual([]);
    await program.api.waterLines.setOutlets({
      lineId,
      edits: [{ id: (await program.api.waterLines.one({ lineId })).plan.outlets[0]?.id ?? '', values: { outlet_m: 0.1 } }],
    });
    await program.api.waterLines.setSupply({ lineId, values: { vented: false }, revision: line.revision });
    const siphoning = (await program.api.waterLines.reservoir({ lineId })).afterStop;
    expect(siphoning.runningOn).toHaveLength(1);
    expect(siphoning.lost_L).toBeCloseTo(250, 6);
  });

  test('a low level above the high one and a stale change are refused', async () => {
    const lineId = await firstLine();
    const { line } = await program.api.waterLines.one({ lineId });
    const faults = await faultsOf(
      program.api.waterLines.setSupply({ lineId, values: { lowLevel_m: 2 }, revision: line.revision }),
    );
    expect(faults.map((fault) => fault.path)).toEqual(['lowLevel_m']);
    await expect(
      program.api.waterLines.setSupply({ lineId, values: { notes: 'x' }, revision: line.revision - 1 }),
    ).rejects.toThrow(/changed in another window/);
  });

  test('coming refills become tasks, and are not doubled', async () => {
    const lineId = await firstLine();
    const { line } = await program.api.waterLines.one({ lineId });
    await program.api.waterLines.setSupply({
      lineId,
      values: { level_L: 150, levelDate: '2026-11-25' },
      revision: line.revision,
    });
    await program.api.waterLines.setTimers({
      lineId,
      timers: [{ month: 12, every_days: 1, start: '06:00', run_min: 10, zone: 1 }],
    });
    const { refills } = await program.api.waterLines.reservoir({ lineId });
    expect(refills.length).toBeGreaterThan(1);
    await program.api.waterLines.planRefills({ lineId });
    await program.api.waterLines.planRefills({ lineId });
    const tasks = program.farm.db.select().from(task).where(eq(task.kind, 'refill')).all();
    expect(tasks.map((each) => each.dueDate).sort()).toEqual(refills.map((refill) => refill.date));
  });

  test('parts that the library knows go into Orders once', async () => {
    const lineId = await firstLine();
    const { parts } = await program.api.waterLines.orderParts({ lineId });
    await program.api.waterLines.orderParts({ lineId });
    const rows = program.farm.db.select().from(needChoice).where(like(needChoice.needKey, 'line:%')).all();
    expect(rows).toHaveLength(parts);
    expect(parts).toBeGreaterThan(3);
  });

  test('power: what is entered is what is kept', async () => {
    const lineId = await firstLine();
    const power = {
      kind: 'battery' as const,
      battery: 'lead-acid' as const,
      capacity_Wh: 1000,
      usableShare: 0.5,
      inverterShare: 0.85,
      selfDischarge_share_per_month: 0.05,
      controller_W: 1,
      idle_W: 10,
      idleOff_h: null,
      panel_W: null,
      panelLossShare: null,
      peakSun_h: null,
      limit_W: 100,
    };
    await program.api.waterLines.setPower({ lineId, power });
    expect((await program.api.waterLines.one({ lineId })).power).toMatchObject(power);
  });
});
