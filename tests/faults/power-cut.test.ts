import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openFarm } from '../../db/file/open-farm.ts';
import { bed } from '../../db/schema/beds.ts';
import { aProgram, FIXED_NOW, migrations } from '../builders/a-farm.ts';

test('whatever of file and log a power cut leaves after any step opens, sound, with every finished change', {
  timeout: 120_000,
}, async () => {
  const t = aProgram({ beds: 12, years: 0 });
  const folder = mkdtempSync(join(tmpdir(), 'bedwright-cut-'));
  const { farm } = t;
  let cuts = 0;
  const cut = (least: number, most: number) => {
    const copy = join(folder, `cut-${cuts}.bedwright`);
    cuts += 1;
    copyFileSync(farm.path, copy);
    if (existsSync(`${farm.path}-wal`)) copyFileSync(`${farm.path}-wal`, `${copy}-wal`);
    const opened = openFarm(copy, { migrations, now: () => FIXED_NOW });
    const found = new Set(opened.sqlite.prepare<[], number>('SELECT x_m FROM bed').pluck().all());
    expect(found.size).toBe(1);
    const [value = Number.NaN] = found;
    expect(value).toBeGreaterThanOrEqual(least);
    expect(value).toBeLessThanOrEqual(most);
    expect(opened.sqlite.pragma('integrity_check', { simple: true })).toBe('ok');
    opened.close();
  };
  farm.change('start', () => farm.db.update(bed).set({ x_m: 0 }).run());
  for (let n = 1; n <= 40; n += 1) {
    farm.change(`step ${n}`, () => {
      farm.db.update(bed).set({ x_m: n }).run();
      if (n % 4 === 0) cut(n - 1, n - 1);
    });
    cut(n, n);
    if (n % 10 === 0) {
      farm.sqlite.pragma('wal_checkpoint(PASSIVE)');
      cut(n, n);
    }
  }
  expect(cuts).toBeGreaterThan(50);
  await t.end();
  rmSync(folder, { recursive: true, force: true });
});

test('a log cut in the middle gives the state of an earlier finished change, never half of one', {
  timeout: 120_000,
}, async () => {
  const t = aProgram({ beds: 12, years: 0 });
  const folder = mkdtempSync(join(tmpdir(), 'bedwright-log-'));
  t.farm.sqlite.pragma('wal_checkpoint(TRUNCATE)');
  t.farm.change('before', () => t.farm.db.update(bed).set({ x_m: 1 }).run());
  t.farm.change('after', () => t.farm.db.update(bed).set({ x_m: 2 }).run());
  const file = readFileSync(t.farm.path);
  const log = readFileSync(`${t.farm.path}-wal`);
  const bedsOf = (copy: string): string => {
    const opened = openFarm(copy, { migrations, now: () => FIXED_NOW });
    const found = opened.sqlite.prepare<[], number>('SELECT DISTINCT x_m FROM bed ORDER BY x_m').pluck().all();
    expect(opened.sqlite.pragma('integrity_check', { simple: true })).toBe('ok');
    opened.close();
    return JSON.stringify(found);
  };
  const alone = join(folder, 'alone.bedwright');
  writeFileSync(alone, file);
  const allowed = [bedsOf(alone), '[1]', '[2]'];
  const seen = new Set<string>();
  for (let part = 1; part <= 12; part += 1) {
    const copy = join(folder, `log-${part}.bedwright`);
    writeFileSync(copy, file);
    writeFileSync(`${copy}-wal`, log.subarray(0, Math.floor((log.length * part) / 12)));
    const found = bedsOf(copy);
    expect(allowed).toContain(found);
    seen.add(found);
  }
  expect(seen.size).toBeGreaterThan(1);
  await t.end();
  rmSync(folder, { recursive: true, force: true });
});
