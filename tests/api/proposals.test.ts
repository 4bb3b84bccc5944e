import { afterEach, describe, expect, test, vi } from 'vitest';
import type { VariantResult } from '../../api/jobs/season/compare.ts';
import type { ProposeResult } from '../../api/jobs/season/propose.ts';
import { loadSeason } from '../../api/season/load-season.ts';
import { plantingsOfSeason, spansOfSeason } from '../../db/repositories/plantings.ts';
import { checkPlan } from '../../planner/season/check-plan.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

vi.setConfig({ testTimeout: 300_000, hookTimeout: 120_000 });

let open: TestProgram[] = [];
afterEach(async () => {
  for (const each of open) await each.end();
  open = [];
});
const SEASON = 'season-2027';
const margin = { aim: 'most-margin', weight: 'clearly' } as const;

function aFarm(beds: number): TestProgram {
  const made = aProgram({ beds });
  open.push(made);
  return made;
}

async function finished(program: TestProgram, jobId: string) {
  for (let look = 0; look < 9600; look++) {
    const job = await program.api.jobs.get({ jobId });
    if (job.state !== 'running') return job;
    await new Promise((later) => setTimeout(later, 25));
  }
  throw new Error('The job does not end.');
}

async function aProposal(program: TestProgram, seed = 1) {
  const { jobId } = await program.api.proposals.propose({ seasonId: SEASON, goal: margin, effort: 'quick', seed });
  const job = await finished(program, jobId);
  expect(job.message).toBe('');
  expect(job.state).toBe('done');
  const { proposalId } = await program.api.proposals.keep({ jobId, seasonId: SEASON, goal: margin, effort: 'quick', seed });
  return { proposalId, result: job.result as ProposeResult };
}

describe('a proposal for the invented farm', () => {
  test('beats the present plan by its own figures, is proven to a bound, and is the same for the same seed', async () => {
    const program = aFarm(12);
    const { crops } = await program.api.proposals.overview({ seasonId: SEASON });
    const present = await program.api.proposals.present({ seasonId: SEASON });
    expect(crops.length).toBeGreaterThan(20);
    const first = await aProposal(program);
    const again = await aProposal(program);
    expect(again.result.plantings).toEqual(first.result.plantings);
    expect(first.result.figures.margin_minor).toBeGreaterThan(present.margin_minor);
    expect(first.result.reached_minor).toBeGreaterThanOrEqual(first.result.firstPlan_minor);
    expect(first.result.bound_minor ?? 0).toBeGreaterThanOrEqual(first.result.reached_minor);
    const kept = await program.api.proposals.overview({ seasonId: SEASON });
    expect(kept.kept).toHaveLength(2);
  });

  test('accepted whole it passes the board’s own checker, earns what it said, and one undo takes it back', async () => {
    const program = aFarm(16);
    const before = { rows: plantingsOfSeason(program.farm.db, SEASON), spans: spansOfSeason(program.farm.db, SEASON) };
    const findingsBefore = loadSeason(program.farm.db, SEASON);
    const had = checkPlan(findingsBefore).filter(({ weight }) => weight === 'clash' || weight === 'barred').length;
    const { proposalId, result } = await aProposal(program);
    const beds = [...new Set([...result.plantings.map(({ bedId }) => bedId), ...before.spans.map(({ bedId }) => bedId)])];
    const promised = await program.api.proposals.figuresWith({ proposalId, bedIds: beds });
    expect(Math.abs(promised.margin_minor - result.figures.margin_minor)).toBeLessThanOrEqual(1);
    const done = await program.api.proposals.accept({ proposalId, bedIds: beds });
    expect(done.added + done.changed).toBe(result.plantings.length);

    const after = loadSeason(program.farm.db, SEASON);
    expect(after.plantings).toHaveLength(result.plantings.length);
    const barred = checkPlan(after).filter(({ weight }) => weight === 'clash' || weight === 'barred');
    expect(barred).toEqual([]);
    expect(had).toBeGreaterThanOrEqual(0);
    for (const { spans } of after.plantings) expect(spans.every(({ plants }) => plants > 0)).toBe(true);
    const now = await program.api.proposals.present({ seasonId: SEASON });
    expect(Math.abs(now.margin_minor - result.figures.margin_minor)).toBeLessThanOrEqual(1);

    await program.api.undo.undo();
    const plain = (rows: readonly { revision?: number }[]) => rows.map(({ revision: _, ...rest }) => rest);
    expect(plain(plantingsOfSeason(program.farm.db, SEASON))).toEqual(plain(before.rows));
    expect(spansOfSeason(program.farm.db, SEASON)).toEqual(before.spans);
  });

  test('accepted for one bed it leaves the others as they were', async () => {
    const program = aFarm(12);
    const { proposalId, result } = await aProposal(program);
    const bedId = result.plantings[0]?.bedId ?? '';
    const others = () => spansOfSeason(program.farm.db, SEASON).filter((span) => span.bedId !== bedId);
    const before = others();
    await program.api.proposals.accept({ proposalId, bedIds: [bedId] });
    expect(others()).toEqual(before);
    expect(spansOfSeason(program.farm.db, SEASON).filter((span) => span.bedId === bedId)).toHaveLength(
      result.plantings.filter((each) => each.bedId === bedId).length,
    );
  });

  test('what is pinned stays where it is', async () => {
    const program = aFarm(12);
    const [first] = plantingsOfSeason(program.farm.db, SEASON);
    if (first === undefined) throw new Error('nothing planted');
    program.farm.sqlite.prepare('update planting set pinned = 1 where id = ?').run(first.id);
    const { proposalId } = await aProposal(program);
    const { moves } = await program.api.proposals.view({ proposalId });
    expect(moves.some((move) => move.kind !== 'new' && move.present.plantingId === first.id)).toBe(false);
  });

  test('variants come side by side, and what is not there is refused at its field', async () => {
    const program = aFarm(12);
    const variants = [
      { name: 'As it is', goal: margin, changes: [] },
      { name: 'A crop left out', goal: margin, changes: [{ kind: 'without' as const, cropId: 'tomato' }] },
    ];
    const { jobId } = await program.api.proposals.compare({ seasonId: SEASON, variants, seed: 1 });
    const job = await finished(program, jobId);
    const results = job.result as readonly VariantResult[];
    expect(results.map(({ name }) => name)).toEqual(['As it is', 'A crop left out']);
    const unknown = [{ name: 'x', goal: margin, changes: [{ kind: 'without' as const, cropId: 'no-such' }] }];
    await expect(program.api.proposals.compare({ seasonId: SEASON, variants: unknown, seed: 1 })).rejects.toThrow(
      /not among those/,
    );
  });

  test('stopping leaves nothing running and keeps the best plan so far', async () => {
    const program = aFarm(48);
    const { jobId } = await program.api.proposals.propose({ seasonId: SEASON, goal: margin, effort: 'thorough', seed: 1 });
    for (;;) {
      const job = await program.api.jobs.get({ jobId });
      if (job.best !== null || job.state !== 'running') break;
      await new Promise((later) => setTimeout(later, 10));
    }
    await program.api.jobs.stop({ jobId });
    const job = await finished(program, jobId);
    expect(job.state).toBe('stopped');
    expect(program.program.jobs.running()).toBe(0);
    const { proposalId } = await program.api.proposals.keep({
      jobId,
      seasonId: SEASON,
      goal: margin,
      effort: 'thorough',
      seed: 1,
    });
    const view = await program.api.proposals.view({ proposalId });
    expect(view.result.plantings.length).toBeGreaterThan(0);
  });
});

test('a farm without beds or demand gets an empty proposal and no fault', async () => {
  const program = aFarm(0);
  const { result } = await aProposal(program);
  expect(result.plantings).toEqual([]);
});
