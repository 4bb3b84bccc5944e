import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

let program: TestProgram;
beforeAll(() => {
  program = aProgram({ beds: 12 });
});
afterAll(() => program.end());

const sheet = {
  date: '2026-11-20',
  laboratory: 'Invented laboratory',
  sample: 'North end',
  kind: 'soil' as const,
  method: 'olsen' as const,
  depth_m: 0.15,
  texture: 'loam',
  ph: 6.1,
  bufferPh: 6.4,
  bufferMethod: 'sikora' as const,
  organicMatterShare: 0.04,
  cec_meq_per_100g: 12,
  ec_dS_per_m: 0.4,
  lead_mg_per_kg: null,
  note: '',
};

describe('laboratory sheets', () => {
  test('one sheet speaks for several beds and reads by its own method', async () => {
    const { api } = program;
    const bedIds = (await api.feeding.budget({})).slice(0, 3).map((row) => row.bedId);
    const values = [
      { nutrient: 'P', value: 12, unit: 'ppm' as const },
      { nutrient: 'K', value: 300, unit: 'lb/acre' as const },
    ];
    const { testId } = await api.soilTests.add({ ...sheet, values, bedIds });
    const found = await api.soilTests.one({ testId });
    expect(found.beds).toHaveLength(3);
    expect(found.values.find((each) => each.nutrient === 'P')?.reading?.class).toBe('low');
    expect(found.values.find((each) => each.nutrient === 'K')).toMatchObject({ enteredValue: 300, enteredUnit: 'lb/acre' });
    await api.soilTests.save({ testId, revision: found.revision, test: { ...sheet, ph: 6.3, values, bedIds } });
    expect((await api.soilTests.one({ testId })).ph).toBe(6.3);
    await expect(api.soilTests.save({ testId, revision: found.revision, test: { ...sheet, values, bedIds } })).rejects.toThrow(
      /another window/,
    );
    const trend = await api.soilTests.trend({ bedId: bedIds[0] ?? '' });
    expect(trend.map((each) => each.date)).toEqual([...trend.map((each) => each.date)].sort());
  });
  test('an impossible pH, meq of phosphorus, and a buffer without its name are refused at their fields', async () => {
    const { api } = program;
    const bedIds = (await api.feeding.budget({})).slice(0, 1).map((row) => row.bedId);
    const add = (change: object) => api.soilTests.add({ ...sheet, values: [], bedIds, ...change });
    await expect(add({ ph: 14 })).rejects.toThrow(/between 2.5 and 10.5/);
    await expect(add({ values: [{ nutrient: 'P', value: 3, unit: 'meq/100g' }] })).rejects.toThrow(/no meaning for P/);
    await expect(add({ bufferMethod: null })).rejects.toThrow(/Which buffer/);
    await expect(add({ bedIds: [] })).rejects.toThrow(/Choose the beds/);
  });
  test('a file is checked whole, by line and column, and nothing is written while a line is wrong', async () => {
    const { api } = program;
    const before = (await api.soilTests.list()).length;
    const code = (await api.feeding.budget({}))[0]?.code ?? '';
    const csv = `date,sample,beds,method,pH,P ppm,K (lb/acre)\n2026-10-01,one,${code},mehlich-3,6.2,40,220\n2026-10-01,two,Z-99,mehlich-3,16,4O,220\n`;
    const look = await api.soilTests.lookIntoFile({ csv });
    expect(look.faults.map((fault) => fault.path)).toEqual(
      expect.arrayContaining(['line 3, beds', 'line 3, P ppm', 'line 3, ph']),
    );
    await expect(api.soilTests.importFile({ csv })).rejects.toThrow(/Line 3/);
    expect(await api.soilTests.list()).toHaveLength(before);
    const mixedUp = await api.soilTests.lookIntoFile({ csv: `date,sample,beds,P ppm,Ca ppm\n2026-10-01,one,${code},900,6.5\n` });
    expect(mixedUp.faults).toEqual([]);
    expect(mixedUp.warnings.join(' ')).toMatch(/lb\/acre.*meq/);
    const good = csv.split('\n').slice(0, 2).join('\n');
    expect(await api.soilTests.importFile({ csv: good })).toEqual({ added: 1 });
    const added = (await api.soilTests.list()).find((each) => each.sample === 'one');
    expect(added?.values.map((each) => each.enteredUnit).sort()).toEqual(['lb/acre', 'ppm']);
  });
});

describe('compost and tea', () => {
  test('a heap keeps its log and counts it against the rule', async () => {
    const { api } = program;
    const { batchId, code } = await api.compost.start({
      startedDate: '2026-10-01',
      method: 'in-vessel',
      parts: [
        { materialId: 'grass-clippings-loose', amount_kg: 60 },
        { materialId: 'straw', amount_kg: 20 },
      ],
    });
    expect(code).toBe('C-2026-2');
    for (const day of ['02', '03', '04'])
      await api.compost.addReading({ batchId, date: `2026-10-${day}`, temperature_C: 58, turned: false });
    const heap = (await api.compost.batches()).find((each) => each.batchId === batchId);
    expect(heap?.rule).toMatchObject({ daysInBand: 3, longestRun_days: 3, met: true });
    expect(heap?.mix?.carbonToNitrogen).toBeGreaterThan(10);
    await expect(api.compost.addReading({ batchId, date: '2026-09-30', temperature_C: 50, turned: false })).rejects.toThrow(
      /before the heap/,
    );
    await expect(api.compost.addReading({ batchId, date: '2026-10-05', temperature_C: 300, turned: false })).rejects.toThrow(
      /above the most/,
    );
  });
  test('a tea batch is sized from its beds and says by when it is used', async () => {
    const { api } = program;
    const bedIds = (await api.feeding.budget({})).slice(0, 4).map((row) => row.bedId);
    const input = {
      bedIds,
      drench_L_per_m2: 1,
      waterParts: 4,
      compost_kg_per_L: 0.06,
      tank_L: 20,
      startedAt: '2026-11-25T18:00',
      brew_h: 30,
    };
    const plan = await api.compost.planTea(input);
    expect(plan.latestUseAt).toBe('2026-11-27T04:00');
    expect(plan.beds.reduce((sum, bed) => sum + bed.volume_L, 0)).toBeCloseTo(plan.drench_L, 9);
    const { code } = await api.compost.brewTea({ ...input, compostBatchId: null });
    expect((await api.compost.tea())[0]).toMatchObject({ code, useByAt: '2026-11-27T04:00' });
  });
  test('raw manure on a bed shows against its next harvest', async () => {
    const { api } = program;
    const row = (await api.feeding.budget({})).find((each) => each.crops !== '');
    await api.applications.enter({
      materialId: 'manure-cattle',
      bedIds: [row?.bedId ?? ''],
      rate_kg_per_m2: 2,
      date: '2027-03-01',
      incorporatedDate: '2027-03-02',
    });
    const found = (await api.applications.intervals()).find((each) => each.bedId === row?.bedId);
    expect(found).toMatchObject({ date: '2027-03-02', incorporated: true });
    expect([90, 120]).toContain(found?.interval_days);
  });
});
