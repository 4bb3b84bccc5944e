import { copyFileSync, existsSync, readFileSync, renameSync, unlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openFarm } from '../../db/file/open-farm.ts';
import { aProgram, FIXED_NOW, migrations, type TestProgram } from '../builders/a-farm.ts';

let t: TestProgram;
beforeEach(() => {
  t = aProgram({ beds: 6, years: 0 });
});
afterEach(() => t.end());

const beds = () => t.api.beds.list();
async function setSun(sun: 'full' | 'shade'): Promise<void> {
  const [first] = await beds();
  if (first === undefined) throw new Error('the farm has no bed');
  await t.api.beds.setMany({ edits: [{ bedId: first.bedId, revision: first.revision, values: { sun } }] });
}

test('a farm moved away while it is open takes no change until it is back, and loses none', async () => {
  await setSun('shade');
  const before = JSON.stringify(await beds());
  const away = join(t.folder, 'away.bedwright');
  renameSync(t.farm.path, away);
  await expect(setSun('full')).rejects.toMatchObject({
    message: expect.stringMatching(/moved or deleted while .* Nothing of this change/),
  });
  await expect(t.api.undo.undo()).rejects.toMatchObject({ message: expect.stringMatching(/moved or deleted/) });
  expect(JSON.stringify(await beds())).toBe(before);
  expect(existsSync(t.farm.path)).toBe(false);
  renameSync(away, t.farm.path);
  await setSun('full');
  expect(JSON.stringify(await beds())).not.toBe(before);
});

test('a farm deleted while it is open can be saved whole in a new place', async () => {
  await setSun('shade');
  const before = JSON.stringify(await beds());
  unlinkSync(t.farm.path);
  await expect(setSun('full')).rejects.toMatchObject({ message: expect.stringMatching(/save a copy/) });
  const copy = join(t.folder, 'saved.bedwright');
  await t.api.files.saveCopy({ path: copy });
  t.program.close('1');
  const saved = openFarm(copy, { migrations, now: () => FIXED_NOW });
  expect(saved.sqlite.pragma('integrity_check', { simple: true })).toBe('ok');
  saved.close();
  await t.api.files.open({ path: copy });
  expect(JSON.stringify(await beds())).toBe(before);
});

test('another file put in the place of an open farm is never written to', async () => {
  const stranger = Buffer.from('a letter, no farm');
  copyFileSync(t.farm.path, join(t.folder, 'kept.bedwright'));
  unlinkSync(t.farm.path);
  writeFileSync(t.farm.path, stranger);
  await expect(setSun('full')).rejects.toMatchObject({ message: expect.stringMatching(/replaced by another file/) });
  expect(readFileSync(t.farm.path).equals(stranger)).toBe(true);
});
