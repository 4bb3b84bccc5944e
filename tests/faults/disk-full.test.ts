import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { fillSampleFarm } from '../../api/sample/fill-sample-farm.ts';
import { FarmFileError } from '../../db/file/errors.ts';
import { createFarm, type FarmFile, openFarm } from '../../db/file/open-farm.ts';
import { bed } from '../../db/schema/beds.ts';
import { setting } from '../../db/schema/farm.ts';
import { FIXED_NOW, migrations, resources } from '../builders/a-farm.ts';

const options = { migrations, now: () => FIXED_NOW };
let folder: string;
let mounted = false;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'bedwright-full-'));
  mounted = process.getuid?.() === 0 && spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=9m', 'tmpfs', folder]).status === 0;
});
afterAll(() => {
  if (mounted) spawnSync('umount', [folder]);
  rmSync(folder, { recursive: true, force: true });
});

function aFarm(name: string): FarmFile {
  const farm = createFarm(join(folder, name), options);
  farm.unrecorded(() => fillSampleFarm(farm, { resources, beds: 12, years: 0, seed: 5 }));
  return farm;
}

/** Writes ever more until the disk says no. */
function writeUntilFull(farm: FarmFile): { readonly error: unknown; readonly written: number } {
  let written = 0;
  try {
    for (;;) {
      farm.change(`fill ${written}`, () => {
        farm.db
          .insert(setting)
          .values({ name: `fill${written}`, value: 'x'.repeat(60_000) })
          .run();
        farm.db.update(bed).set({ x_m: written }).run();
      });
      written += 1;
    }
  } catch (error) {
    return { error, written };
  }
}

function expectWhole(farm: FarmFile, written: number): void {
  expect(farm.sqlite.prepare(`SELECT count(*) FROM setting WHERE name LIKE 'fill%'`).pluck().get()).toBe(written);
  expect(farm.sqlite.prepare('SELECT DISTINCT x_m FROM bed').pluck().all()).toEqual([written - 1]);
  expect(farm.sqlite.pragma('integrity_check', { simple: true })).toBe('ok');
}

test('a full disk refuses the change in plain words, keeps what was there, and goes on when there is room', {
  timeout: 120_000,
}, (context) => {
  if (!mounted) return context.skip('a small disk can be mounted by root only');
  const farm = aFarm('disk.bedwright');
  const { error, written } = writeUntilFull(farm);
  expect(error).toBeInstanceOf(FarmFileError);
  expect((error as FarmFileError).reason).toBe('disk-full');
  expect((error as FarmFileError).message).toContain('full');
  expect(written).toBeGreaterThan(5);
  expectWhole(farm, written);
  farm.sqlite.close();
  spawnSync('mount', ['-o', 'remount,size=32m', folder]);
  const again = openFarm(join(folder, 'disk.bedwright'), options);
  expectWhole(again, written);
  again.change('after', () => again.db.update(bed).set({ x_m: 7 }).run());
  again.close();
});

test('a file that may grow no further refuses the change and keeps what was there', () => {
  const place = mkdtempSync(join(tmpdir(), 'bedwright-grow-'));
  const farm = createFarm(join(place, 'grow.bedwright'), options);
  farm.unrecorded(() => fillSampleFarm(farm, { resources, beds: 12, years: 0, seed: 5 }));
  const pages = Number(farm.sqlite.pragma('page_count', { simple: true }));
  farm.sqlite.pragma(`max_page_count = ${pages + 200}`);
  const { error, written } = writeUntilFull(farm);
  expect((error as FarmFileError).reason).toBe('disk-full');
  expectWhole(farm, written);
  farm.close();
  rmSync(place, { recursive: true, force: true });
});

test('a backup that finds no room says so and the farm stays open', { timeout: 120_000 }, (context) => {
  if (!mounted) return context.skip('a small disk can be mounted by root only');
  spawnSync('mount', ['-o', 'remount,size=40m', folder]);
  const farm = aFarm('backup.bedwright');
  spawnSync('mount', ['-o', 'remount,size=4m', folder]);
  spawnSync('dd', ['if=/dev/zero', `of=${join(folder, 'ballast')}`, 'bs=1M', 'count=64'], { stdio: 'ignore' });
  expect(() => farm.backup('by-hand')).toThrow(/backup .* could not be written/i);
  expect(farm.sqlite.prepare('SELECT count(*) FROM bed').pluck().get()).toBe(12);
  rmSync(join(folder, 'ballast'), { force: true });
  spawnSync('mount', ['-o', 'remount,size=64m', folder]);
  farm.close();
});
