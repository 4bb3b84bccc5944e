import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { eq } from 'drizzle-orm';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { listBackups } from '../../db/file/backup.ts';
import { bed } from '../../db/schema/beds.ts';
import { task } from '../../db/schema/work.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

let t: TestProgram;
beforeEach(() => {
  t = aProgram({ beds: 12, years: 0 });
});
afterEach(() => t.end());

const beds = () => JSON.stringify(t.program.farm(null).db.select().from(bed).all());

test('a moved farm is whole at the new place, stays open, and its backups are found again', async () => {
  await t.api.files.backUp();
  const before = beds();
  const old = t.farm.path;
  const made = listBackups(old).filter((each) => each.why === 'by-hand');
  const target = join(t.folder, 'elsewhere', 'Renamed farm.bedwright');
  await t.api.files.move({ path: target });
  expect(beds()).toBe(before);
  expect(existsSync(old)).toBe(false);
  expect(t.program.farm(null).path).toBe(target);
  const moved = (await t.api.files.backups()).filter((each) => each.why === 'by-hand');
  expect(moved.map((each) => each.size_B)).toEqual(made.map((each) => each.size_B));
  await t.api.files.restore({ path: moved[0]?.path ?? '' });
  expect(beds()).toBe(before);
});

test('a farm is never moved over another file, and stays where it is', async () => {
  const target = join(t.folder, 'taken.bedwright');
  writeFileSync(target, 'something else');
  const before = beds();
  await expect(t.api.files.move({ path: target })).rejects.toThrow(/already a file/);
  expect(beds()).toBe(before);
  expect(existsSync(t.farm.path)).toBe(true);
});

test('looking into a backup counts what is in it, tells what differs now, and changes nothing', async () => {
  t.farm.change('Move all beds', () => t.farm.db.update(bed).set({ x_m: 3 }).run());
  const { path } = await t.api.files.backUp();
  const same = await t.api.files.preview({ path });
  expect(same.kinds.find((each) => each.what === 'beds')).toMatchObject({
    inBackup: 12,
    inFarm: 12,
    added: 0,
    removed: 0,
    changed: 0,
  });
  expect(same.changes[0]?.note).toBe('Move all beds');
  expect(same.sinceCount).toBe(0);

  const [first, second] = t.farm.db.select().from(bed).all();
  t.farm.change('Move a bed', () =>
    t.farm.db
      .update(bed)
      .set({ x_m: 9 })
      .where(eq(bed.id, first?.id ?? ''))
      .run(),
  );
  t.farm.change('Add and take away', () => {
    t.farm.sqlite.prepare('DELETE FROM bed_part WHERE bed_id = ?').run(second?.id);
    t.farm.db.insert(task).values({ id: 'task-new', kind: 'own', title: 'Mend the gate', dueDate: '2026-11-26' }).run();
  });
  const preview = await t.api.files.preview({ path });
  expect(preview.kinds.find((each) => each.what === 'beds')).toMatchObject({ inBackup: 12, inFarm: 12, changed: 1 });
  expect(preview.kinds.find((each) => each.what === 'tasks')).toMatchObject({ added: 1, removed: 0, changed: 0 });
  expect(preview.since.map((each) => each.note)).toEqual(['Add and take away', 'Move a bed']);
  await t.api.undo.undo();
  expect((await t.api.files.preview({ path })).sinceCount).toBe(1);
  await expect(t.api.files.preview({ path: t.farm.path })).rejects.toThrow(/no longer there/);
});
