import { copyFileSync, existsSync, readFileSync, truncateSync, unlinkSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { listBackups } from '../../db/file/backup.ts';
import { openFarm } from '../../db/file/open-farm.ts';
import { bed } from '../../db/schema/beds.ts';
import { aProgram, FIXED_NOW, migrations, type TestProgram } from '../builders/a-farm.ts';

let t: TestProgram;
let clock = FIXED_NOW;
beforeEach(() => {
  clock = FIXED_NOW;
  t = aProgram({ beds: 12, years: 0 }, () => clock);
});
afterEach(() => t.end());

const beds = () => JSON.stringify(t.program.farm(null).db.select().from(bed).all());

test('a restored backup equals what it was made from, and what stood in its place is kept too', async () => {
  const before = beds();
  const { path } = await t.api.files.backUp();
  t.farm.change('move', () => t.farm.db.update(bed).set({ x_m: -5 }).run());
  const moved = beds();
  await t.api.files.restore({ path });
  expect(beds()).toBe(before);
  const kept = listBackups(t.farm.path).find((each) => each.why === 'restore');
  await t.api.files.restore({ path: kept?.path ?? '' });
  expect(beds()).toBe(moved);
});

test('a damaged backup is refused and the farm stays as it is', async () => {
  const { path } = await t.api.files.backUp();
  truncateSync(path, 20_000);
  const before = beds();
  await expect(t.api.files.restore({ path })).rejects.toThrow(/cut short|damaged/);
  expect(beds()).toBe(before);
});

test('only a backup of this farm can be restored', async () => {
  await expect(t.api.files.restore({ path: join(t.folder, 'elsewhere.bedwright') })).rejects.toThrow(/no longer there/);
});

test('each day’s first opening makes one backup; a clock that jumps back makes no trouble', async () => {
  const path = t.farm.path;
  t.program.close('1');
  for (const day of ['2026-11-26', '2026-11-26', '2026-11-27', '2026-11-20', '2026-11-27']) {
    clock = `${day}T08:00:00`;
    openFarm(path, { migrations, now: () => clock }).close();
  }
  const days = listBackups(path)
    .filter((each) => each.why === 'daily')
    .map((each) => each.name.match(/\d{4}-\d\d-\d\d/)?.[0]);
  expect(days).toEqual(['2026-11-27', '2026-11-26', '2026-11-20']);
});

test('a copy is saved where nothing is yet, and opens', async () => {
  const target = join(t.folder, 'copy.bedwright');
  await t.api.files.saveCopy({ path: target });
  const copy = openFarm(target, { migrations, now: () => FIXED_NOW });
  expect(JSON.stringify(copy.db.select().from(bed).all())).toBe(beds());
  copy.close();
  const bytes = readFileSync(target);
  await expect(t.api.files.saveCopy({ path: target })).rejects.toThrow(/already a file/);
  expect(readFileSync(target).equals(bytes)).toBe(true);
});

test('a farm whose file vanished while it was open says so when it is opened again', () => {
  const path = t.farm.path;
  t.program.close('1');
  copyFileSync(path, `${path}.kept`);
  unlinkSync(path);
  expect(() => openFarm(path, { migrations, now: () => FIXED_NOW })).toThrow(/There is no file/);
  expect(existsSync(path)).toBe(false);
});
