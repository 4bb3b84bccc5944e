import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { FarmBlendOutcome } from '../../planner/fertility/solve-farm-blend.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

let program: TestProgram;
beforeAll(() => {
  program = aProgram({ beds: 24 });
});
afterAll(() => program.end());

async function blended(seasonId: string): Promise<FarmBlendOutcome> {
  const { jobId } = await program.api.feeding.blend({ seasonId });
  for (let look = 0; look < 600; look += 1) {
    const view = await program.api.jobs.get({ jobId });
    if (view.state === 'done') return view.result as FarmBlendOutcome;
    if (view.state !== 'running') throw new Error(view.message);
    await new Promise((done) => setTimeout(done, 100));
  }
  throw new Error('the blend never ended');
}

describe('from budget to stock', () => {
  test('a blend goes on the cards, is given, and leaves stock by what was given', { timeout: 60_000 }, async () => {
    const { api } = program;
    const { season } = await api.feeding.plan({});
    const budget = await api.feeding.budget({ seasonId: season.seasonId });
    expect(budget.some((row) => row.feedN_kg > 0)).toBe(true);
    const outcome = await blended(season.seasonId);
    if (outcome.state !== 'found') throw new Error(outcome.because);
    const doses = outcome.blend.beds.flatMap((bed) => bed.doses.map((dose) => ({ bedId: bed.bedId, ...dose })));
    expect(doses.length).toBeGreaterThan(0);
    await api.feeding.accept({ seasonId: season.seasonId, doses });
    const cards = await api.applications.planned({ seasonId: season.seasonId });
    const sum = (list: readonly { amount_kg: number }[]) => list.reduce((total, each) => total + each.amount_kg, 0);
    expect(sum(cards)).toBeCloseTo(
      doses.reduce((total, dose) => total + dose.dose_kg, 0),
      6,
    );

    const first = cards[0];
    if (first === undefined) throw new Error('no card');
    const stock = async () =>
      (await api.feeding.plan({})).materials.find((each) => each.materialId === first.materialId)?.stock_kg ?? 0;
    const before = await stock();
    await api.applications.done({ applicationBedIds: [first.applicationBedId], date: '2026-11-25', who: 'AN' });
    expect(await stock()).toBeCloseTo(Math.max(0, before - first.amount_kg), 6);
    const log = await api.applications.log();
    expect(log.filter((row) => row.date === '2026-11-25' && row.state === 'done').map((row) => row.bedId)).toEqual([first.bedId]);
    expect(await api.applications.planned({ seasonId: season.seasonId })).toHaveLength(cards.length - 1);

    await api.undo.undo();
    expect(await stock()).toBeCloseTo(before, 6);
    expect(await api.applications.planned({ seasonId: season.seasonId })).toHaveLength(cards.length);
  });
  test('a second blend takes the place of the first on the cards, not beside it', { timeout: 60_000 }, async () => {
    const { api } = program;
    const { season } = await api.feeding.plan({});
    const doses = [{ bedId: (await api.feeding.budget({}))[0]?.bedId ?? '', materialId: 'feather-meal', dose_kg: 1 }];
    await api.feeding.accept({ seasonId: season.seasonId, doses });
    expect(await api.applications.planned({})).toHaveLength(1);
  });
  test('without a chosen material the blend says so at the field', async () => {
    const { api } = program;
    const { season, plan } = await api.feeding.plan({});
    await api.feeding.setPlan({ ...plan, materialIds: [] });
    await expect(api.feeding.blend({ seasonId: season.seasonId })).rejects.toThrow(/chosen materials/);
    await api.undo.undo();
  });
  test('the working of a budget ends in the figure of the table', async () => {
    const { api } = program;
    const row = (await api.feeding.budget({})).find((each) => each.feedN_kg > 0);
    if (row === undefined) throw new Error('no bed wants nitrogen');
    const working = await api.feeding.explainBudget({ bedId: row.bedId, nutrient: 'N' });
    expect(working.result.value).toBeCloseTo(row.feedN_kg, 12);
  });
});

describe('lime', () => {
  test('is planned for the beds that want it, and its working ends in the dose', async () => {
    const { api } = program;
    const { season } = await api.feeding.plan({});
    const rows = (await api.feeding.ph({})).filter((row) => row.act === 'lime');
    expect(rows.length).toBeGreaterThan(0);
    const first = rows[0];
    if (first === undefined) throw new Error('no lime');
    const working = await api.feeding.explainPh({ bedId: first.bedId });
    expect(working.result.value).toBeCloseTo(first.dose_kg ?? Number.NaN, 12);
    const before = (await api.applications.planned({})).length;
    const { planned } = await api.feeding.planPh({
      seasonId: season.seasonId,
      bedIds: rows.map((row) => row.bedId),
      date: '2026-12-01',
    });
    expect(planned).toBe(rows.reduce((sum, row) => sum + row.applications, 0));
    expect((await api.applications.planned({})).length).toBe(before + planned);
  });
});
