import { afterAll, beforeAll, expect, test } from 'vitest';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

let t: TestProgram;
beforeAll(() => {
  t = aProgram({ beds: 24, years: 1 });
});
afterAll(() => t.end());

const inTable = (table: string, where = '1'): number =>
  t.farm.sqlite.prepare<[], number>(`SELECT count(*) FROM "${table}" WHERE ${where}`).pluck().get() ?? 0;

test('each thing with a name is found once, under its kind', async () => {
  const names = await t.api.find.names();
  const many = (kind: (typeof names)[number]['kind']): number => names.filter((each) => each.kind === kind).length;
  expect(many('bed')).toBe(inTable('bed', 'retired_date IS NULL'));
  expect(many('crop')).toBe(inTable('crop', 'hidden = 0'));
  expect(many('planting')).toBe(inTable('planting'));
  expect(many('material')).toBe(inTable('material'));
  expect(many('design')).toBe(inTable('design'));
  expect(many('supplier')).toBe(inTable('supplier'));
  expect(many('offer')).toBe(inTable('offer', 'retired = 0'));
  expect(many('season')).toBe(inTable('season'));
  expect(many('water-line')).toBe(inTable('water_line'));
  expect(many('soil-test')).toBe(inTable('soil_test'));
  expect(many('heap')).toBe(inTable('compost_batch'));
  for (const kind of ['bed', 'planting', 'offer', 'water-line', 'soil-test', 'heap'] as const)
    expect(many(kind), kind).toBeGreaterThan(0);
  expect(new Set(names.map((each) => `${each.kind} ${each.id}`)).size).toBe(names.length);
});

test('a retired bed is found no more, a new one at once', async () => {
  const bedId = (await t.api.beds.list())[0]?.bedId ?? '';
  await t.api.beds.retire({ bedIds: [bedId], date: '2026-11-25', because: 'shaded' });
  expect((await t.api.find.names()).some((each) => each.id === bedId)).toBe(false);
  await t.api.undo.undo();
  expect((await t.api.find.names()).some((each) => each.id === bedId)).toBe(true);
});

test('each need of the season planned last is found by its material', async () => {
  const found = await t.api.find.needs();
  const seasonId = found[0]?.seasonId ?? '';
  const { needs } = await t.api.orders.needs({ seasonId });
  expect(found.length).toBeGreaterThan(5);
  expect(found.map(({ key, name }) => [key, name])).toEqual(needs.map(({ key, material }) => [key, material]));
});
