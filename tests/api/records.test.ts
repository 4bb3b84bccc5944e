import { afterAll, beforeAll, expect, test } from 'vitest';
import { createApp } from '../../api/http/app.ts';
import { isLotCode } from '../../planner/costs/lot-code.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

let program: TestProgram;
beforeAll(() => {
  program = aProgram({ beds: 24, years: 2 });
});
afterAll(() => program.end());

const aLot = async () => {
  const [first] = await program.api.records.lotsLike({ part: 'LETT' });
  if (first === undefined) throw new Error('the sample farm has lots of lettuce');
  return first.code;
};

test('a lot traces back in one step to its harvest, planting, bed and buyers', async () => {
  const code = await aLot();
  expect(isLotCode(code)).toBe(true);
  const back = await program.api.records.traceBack({ code });
  expect(back.harvests).toHaveLength(1);
  expect(back.beds).toHaveLength(1);
  expect(back.harvests[0]?.crop).toBe('Lettuce, leaf');
  for (const input of back.inputs) {
    expect(input.date >= back.since).toBe(true);
    expect(input.bed).toBe(back.beds[0]);
  }
  await expect(program.api.records.traceBack({ code: 'NONE-2026001-A1' })).rejects.toThrow('There is no lot');
});

test('what a bed got in the 120 days before is in the trace', async () => {
  const lots = await program.api.records.lotsLike({ part: '' });
  const backs = await Promise.all(lots.map((lot) => program.api.records.traceBack({ code: lot.code })));
  expect(backs.length).toBeGreaterThan(5);
  for (const back of backs) {
    const first = back.harvests[0]?.date ?? '';
    expect((Date.parse(first) - Date.parse(back.since)) / 86_400_000).toBe(120);
  }
});

test('a bed traces forward to every lot from it and to who got them; the two directions agree', async () => {
  const code = await aLot();
  const back = await program.api.records.traceBack({ code });
  const { beds } = await program.api.records.starts();
  const id = beds.find((bed) => bed.code === back.beds[0])?.id ?? '';
  const forward = await program.api.records.traceForward({ kind: 'bed', id });
  expect(forward.lots.map((lot) => lot.lot)).toContain(code);
  expect(forward.sales.filter((sale) => sale.lot === code)).toHaveLength(back.sales.length);
});

test('both traces and the logs can be fetched as sheets', async () => {
  const app = createApp({ program: program.program, pages: program.folder });
  const code = await aLot();
  for (const path of [
    `trace-back.csv?lot=${code}`,
    'trace-forward.csv?kind=bed&id=bed-a-1',
    'harvest-records.csv',
    'sale-records.csv',
    'log-records.csv',
  ]) {
    const answer = await app.fetch(new Request(`http://x/export/${path}`));
    expect([path, answer.status]).toEqual([path, 200]);
    expect((await answer.text()).split('\r\n')[0]).toContain('farm');
  }
});

test('a record is appended with its time of entry and corrected by another, never written over', async () => {
  const entry = { kind: 'cleaning' as const, date: '2026-11-20', who: 'AN', observed: 'knives and crates, 200 ppm chlorine' };
  const { logId } = await program.api.records.append(entry);
  await program.api.records.append({ ...entry, observed: '100 ppm, strip misread', correctsId: logId });
  const log = await program.api.records.log();
  const first = log.rows.find((row) => row.logId === logId);
  expect(first).toMatchObject({
    observed: entry.observed,
    corrected: true,
    late_days: 5,
    createdAt: '2026-11-25T09:00:00',
    keepUntil: '2031-11-25',
  });
  await program.api.records.review({ logId, reviewedBy: 'JM' });
  await expect(program.api.records.review({ logId, reviewedBy: 'KT' })).rejects.toThrow('another window');
  await expect(program.api.records.append({ ...entry, who: ' ' })).rejects.toThrow('Say who did it');
});

test('the yearly review takes full years only and leaves the verdict to the agency', async () => {
  const { years, figures } = await program.api.records.exemption({ limit_minor: 50_000_000 });
  expect(years.map((each) => each.year)).toEqual(['2025']);
  expect(figures?.meanAll_minor).toBeGreaterThan(0);
  expect(figures?.underLimit).toBe(true);
});
