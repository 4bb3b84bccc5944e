import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { fillSampleFarm } from '../../api/sample/fill-sample-farm.ts';
import { seededRandom } from '../../api/sample/random.ts';
import { createFarm, openFarm } from '../../db/file/open-farm.ts';
import { FIXED_NOW, migrations, resources } from '../builders/a-farm.ts';

const options = { migrations, now: () => FIXED_NOW };
const KILLS = 12;
const WRITES_WANTED = 1000;
let folder: string;
let path: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'bedwright-kill-'));
  path = join(folder, 'farm.bedwright');
  const farm = createFarm(path, options);
  farm.unrecorded(() => fillSampleFarm(farm, { resources, beds: 12, years: 0, seed: 5 }));
  farm.close();
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Lets the writer acknowledge some changes, kills it without warning, and answers with the last change acknowledged. */
function writeAndKill(from: number, after: number): Promise<number> {
  const writer = spawn(process.execPath, [new URL('./writer.ts', import.meta.url).pathname, path, migrations, String(from)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let said = '';
  return new Promise((resolve, reject) => {
    writer.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      if (said.split('\n').length - 2 >= after) writer.kill('SIGKILL');
    });
    writer.on('exit', () => {
      const lines = said.split('\n').filter((line) => /^\d+$/.test(line));
      const last = lines.at(-1);
      if (last === undefined) reject(new Error('The writer ended before it wrote.'));
      else resolve(Number(last));
    });
  });
}

test('a killed program loses no acknowledged change and leaves a sound file', { timeout: 180_000 }, async () => {
  const random = seededRandom(7);
  let next = 0;
  for (let kill = 0; kill < KILLS || next < WRITES_WANTED; kill += 1) {
    const acknowledged = await writeAndKill(next, random.whole(40, Math.ceil((2 * WRITES_WANTED) / KILLS) - 40));
    const farm = openFarm(path, options);
    const kept = new Set(farm.sqlite.prepare<[], string>(`SELECT name FROM setting WHERE name GLOB 'n[0-9]*'`).pluck().all());
    for (let n = 0; n <= acknowledged; n += 1) expect(kept.has(`n${n}`), `change ${n}`).toBe(true);
    const newest = Math.max(...[...kept].map((name) => Number(name.slice(1))));
    expect(new Set(farm.sqlite.prepare('SELECT x_m FROM bed').pluck().all())).toEqual(new Set([newest]));
    expect(farm.sqlite.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(farm.sqlite.pragma('foreign_key_check')).toEqual([]);
    expect(farm.undoState().undo).toBe(`change ${newest}`);
    farm.close();
    next = newest + 1;
  }
  expect(next).toBeGreaterThanOrEqual(WRITES_WANTED);
});
