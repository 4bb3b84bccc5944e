import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { seasonLedger } from '../../api/costs/season-ledger.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

let program: TestProgram;
beforeAll(() => {
  program = aProgram({ beds: 48, years: 2 });
});
afterAll(() => program.end());

const seasonId = 'season-2026';
const groupings = ['bed', 'block', 'design', 'crop', 'planting', 'outlet'] as const;

describe('what a season earned', () => {
  test('every grouping adds up to the same income and the same cost: what was spent, to the minor unit', async () => {
    const ledger = seasonLedger(program.farm.db, seasonId);
    const spent = ledger.charges.reduce((sum, charge) => sum + charge.amount_minor, 0);
    const paid = (await program.api.sales.log({ from: '2026-01-01', to: '2026-12-31' })).reduce(
      (sum, line) => sum + line.paid_minor,
      0,
    );
    expect(spent).toBeGreaterThan(0);
    expect(paid).toBeGreaterThan(0);
    for (const by of groupings) {
      const { totals } = await program.api.costs.view({ seasonId, by });
      expect([by, totals.cost_minor]).toEqual([by, spent]);
      expect([by, totals.income_minor]).toEqual([by, paid]);
    }
  });

  test('holds labour, parts, fill, inputs, packing, power and overhead', () => {
    const kinds = new Set(seasonLedger(program.farm.db, seasonId).charges.map((charge) => charge.kind));
    for (const kind of ['parts', 'fill', 'inputs', 'packing', 'labour', 'power', 'overhead']) expect(kinds).toContain(kind);
  });

  test('the working of a row ends in its margin', async () => {
    const { rows } = await program.api.costs.view({ seasonId, by: 'bed' });
    const row = rows[0];
    if (row === undefined) throw new Error('expected beds');
    expect((await program.api.costs.explain({ seasonId, by: 'bed', id: row.id })).result.value).toBe(row.margin_minor);
  });

  test('hours for nobody show as such', async () => {
    await program.api.labour.add({ date: '2026-04-04', task: 'clean the shed', labour_min: 60 });
    const { rows } = await program.api.costs.view({ seasonId, by: 'bed' });
    expect(rows.find((row) => row.name === 'No bed')?.labour_minor).toBe(1900);
  });

  test('a new overhead reaches the beds whole and can be taken back', async () => {
    const before = (await program.api.costs.view({ seasonId, by: 'crop' })).totals.cost_minor;
    const { overheadId } = await program.api.costs.addOverhead({
      seasonId,
      name: 'Scales',
      date: '2026-03-01',
      amount_minor: 12_345,
      shareKey: 'hours',
    });
    expect((await program.api.costs.view({ seasonId, by: 'crop' })).totals.cost_minor).toBe(before + 12_345);
    await program.api.costs.removeOverhead({ overheadId });
    expect((await program.api.costs.view({ seasonId, by: 'crop' })).totals.cost_minor).toBe(before);
  });
});

test('income against plan: the causes add up to the difference for every crop', async () => {
  const rows = await program.api.costs.plan({ seasonId });
  expect(rows.length).toBeGreaterThan(5);
  for (const row of rows) expect(row.sum_minor).toBeCloseTo(row.actual_minor - row.plan_minor, 4);
});

test('a crop’s break-even, chance, ranging table and what matters most', async () => {
  const [crop] = await program.api.costs.plan({ seasonId });
  if (crop === undefined) throw new Error('expected crops');
  const stand = await program.api.costs.stand({ seasonId, cropId: crop.cropId });
  expect(stand.chance.covers_share).toBeGreaterThanOrEqual(0);
  expect(stand.chanceWorking.result.value).toBe(stand.chance.covers_share);
  expect(stand.ranging.net_minor).toHaveLength(3);
  expect(stand.tornado[0]?.swing_minor).toBeGreaterThanOrEqual(stand.tornado[1]?.swing_minor ?? 0);
  await expect(program.api.costs.stand({ seasonId, cropId: 'nonesuch' })).rejects.toThrow('no longer there');
});

test('seasons stand side by side', async () => {
  const { api } = program;
  const seasons = await Promise.all((await api.costs.seasons()).map(({ seasonId }) => api.costs.seasonSums({ seasonId })));
  expect(seasons.map((season) => season.name)).toEqual(['2025', '2026', '2027']);
  expect(seasons[0]?.income_minor).toBeGreaterThan(0);
});
