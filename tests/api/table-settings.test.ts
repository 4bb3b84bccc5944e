import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { openFarm } from '../../db/file/open-farm.ts';
import { rememberedSettings } from '../../db/repositories/farm.ts';
import { aProgram, FIXED_NOW, migrations } from '../builders/a-farm.ts';

const t = aProgram({ beds: 4, years: 0 });
afterAll(() => t.end());

test('the columns of tables are kept in the farm file by table, and go where a copy of it goes', async () => {
  const beds = { hidden: { depth_m: true }, sort: [{ id: 'code', desc: true }] };
  await t.api.farm.remember({ name: 'table.Beds', value: beds });
  await t.api.farm.remember({ name: 'table.Outlets to beds', value: { hidden: {}, sort: [] } });
  await t.api.farm.remember({ name: 'tables', value: 'of another name' });
  const kept = { 'table.Beds': beds, 'table.Outlets to beds': { hidden: {}, sort: [] } };
  expect(await t.api.farm.rememberedUnder({ prefix: 'table.' })).toEqual(kept);
  const copy = join(t.folder, 'taken along.bedwright');
  t.farm.sqlite.exec(`VACUUM INTO '${copy}'`);
  const there = openFarm(copy, { migrations, now: () => FIXED_NOW });
  expect(rememberedSettings(there.db, 'table.')).toEqual(kept);
  there.close();
});

test('choosing columns is no step of undo', async () => {
  const before = await t.api.undo.state();
  await t.api.farm.remember({ name: 'table.Beds', value: { hidden: {}, sort: [] } });
  expect(await t.api.undo.state()).toEqual(before);
});
