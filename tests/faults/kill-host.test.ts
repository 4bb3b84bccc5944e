import { type ChildProcess, spawn } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { fillSampleFarm } from '../../api/sample/fill-sample-farm.ts';
import { type Random, seededRandom } from '../../api/sample/random.ts';
import { backupFolderOf } from '../../db/file/backup.ts';
import { createFarm, type FarmFile, openFarm } from '../../db/file/open-farm.ts';
import { FIXED_NOW, migrations, resources } from '../builders/a-farm.ts';

const options = { migrations, now: () => FIXED_NOW };
const host = fileURLToPath(new URL('../../api/serve.ts', import.meta.url));
const opener = fileURLToPath(new URL('./opener.ts', import.meta.url));
const ROWS_EACH = 60;
const KILLS = 4;
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'bedwright-kill-host-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

type Ask = (procedure: string, input: unknown) => Promise<boolean>;

/** Starts the real host on a farm and enters with its key. */
async function startHost(path: string): Promise<{ readonly child: ChildProcess; readonly ask: Ask }> {
  const child = spawn(process.execPath, [host, '--farm', path, '--port', '0'], {
    env: { ...process.env, BEDWRIGHT_HOME: folder, BEDWRIGHT_NOW: FIXED_NOW },
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  const { address, origin } = await new Promise<{ address: string; origin: string }>((resolve, reject) => {
    child.once('message', (said) => resolve(said as { address: string; origin: string }));
    child.once('exit', (code) => reject(new Error(`The host ended with ${code} before it listened.`)));
  });
  const cookie = (await fetch(address)).headers.get('set-cookie')?.split(';')[0] ?? '';
  const ask: Ask = async (procedure, input) => {
    const answer = await fetch(`${origin}/trpc/${procedure}?batch=1`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie, origin },
      body: JSON.stringify({ 0: input }),
    });
    const [said] = (await answer.json()) as { readonly error?: { readonly message: string } }[];
    if (said?.error !== undefined) throw new Error(`${procedure}: ${said.error.message}`);
    return true;
  };
  return { child, ask };
}

const ended = (child: ChildProcess): Promise<void> =>
  child.exitCode !== null || child.signalCode !== null
    ? Promise.resolve()
    : new Promise((done) => child.once('exit', () => done()));

type Picked = { readonly crop: string; readonly bed: string; readonly date: string };

/** A harvest of the farm, to log more like it. */
function picked(farm: FarmFile): Picked {
  const row = farm.sqlite
    .prepare<[], Picked>(
      `SELECT crop.name AS crop, bed.code AS bed, harvest.date AS date FROM harvest JOIN planting ON planting.id = harvest.planting_id
       JOIN crop ON crop.id = planting.crop_id JOIN bed ON bed.id = harvest.bed_id ORDER BY harvest.date DESC LIMIT 1`,
    )
    .get();
  if (row === undefined) throw new Error('The sample farm has no harvest.');
  return row;
}

/** Asks for imports and single changes in turn until the host is killed, and answers the marks of all that was acknowledged or asked. */
async function askUntilKilled(path: string, random: Random, from: number, like: Picked) {
  const { child, ask } = await startHost(path);
  const acknowledged: string[] = [];
  const asked: string[] = [];
  const killAfter = random.whole(2, 14);
  for (let n = from; child.signalCode === null; n += 1) {
    const mark = `mark-${n}`;
    const harvests = Array.from({ length: ROWS_EACH }, () => `${like.date},${like.bed},"${like.crop}",1,kg,${mark}`);
    asked.push(mark);
    const answer = ask('harvest.importAll', { text: ['date,bed,crop,amount,unit,note', ...harvests].join('\n') });
    if (acknowledged.length >= killAfter) setTimeout(() => child.kill('SIGKILL'), random.between(0, 25));
    const taken = await answer.catch((error: unknown) => {
      if (error instanceof TypeError) return false;
      throw error;
    });
    if (!taken) break;
    acknowledged.push(mark);
  }
  child.kill('SIGKILL');
  await ended(child);
  return { acknowledged, asked };
}

test('the host killed among imports keeps each one whole or not at all, and all it acknowledged', {
  timeout: 180_000,
}, async () => {
  const path = join(folder, 'imports.bedwright');
  const made = createFarm(path, options);
  made.unrecorded(() => fillSampleFarm(made, { resources, beds: 8, years: 1, seed: 5 }));
  const like = picked(made);
  made.close();
  const random = seededRandom(11);
  let from = 0;
  for (let kill = 0; kill < KILLS; kill += 1) {
    const { acknowledged, asked } = await askUntilKilled(path, random, from, like);
    const farm = openFarm(path, options);
    const kept = farm.sqlite.prepare<[string], number>('SELECT count(*) FROM harvest WHERE note = ?').pluck();
    for (const mark of acknowledged) expect(kept.get(mark), mark).toBe(ROWS_EACH);
    for (const mark of asked) expect([0, ROWS_EACH], mark).toContain(kept.get(mark));
    expect(acknowledged.length).toBeGreaterThan(1);
    expect(farm.sqlite.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(farm.sqlite.pragma('foreign_key_check')).toEqual([]);
    expect(farm.undoState().undo).toBe('Import a file of harvests');
    farm.close();
    from += asked.length;
  }
});

/** The migrations with one more that takes far longer than a test waits: it is always killed in its middle. */
function migrationsWithASlowOne(): string {
  const place = join(folder, 'slow-migrations');
  cpSync(migrations, place, { recursive: true });
  const file = join(place, 'meta', '_journal.json');
  const journal = JSON.parse(readFileSync(file, 'utf8')) as { entries: { idx: number; when: number; tag: string }[] };
  const last = journal.entries.at(-1);
  if (last === undefined) throw new Error('There are no migrations.');
  journal.entries.push({ ...last, idx: last.idx + 1, when: last.when + 1000, tag: 'slow' });
  writeFileSync(file, JSON.stringify(journal));
  writeFileSync(
    join(place, 'slow.sql'),
    [
      'ALTER TABLE `bed` ADD `half` text;',
      "UPDATE `bed` SET `half` = 'done';",
      'DELETE FROM `harvest`;',
      'INSERT INTO `setting`(`name`, `value`) WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 2000000000) SELECT i, i FROM n;',
    ].join('--> statement-breakpoint\n'),
  );
  return place;
}

test('a program killed in the middle of a migration leaves the farm as it was, and its backup beside it', {
  timeout: 180_000,
}, async () => {
  const path = join(folder, 'migration.bedwright');
  const made = createFarm(path, options);
  made.unrecorded(() => fillSampleFarm(made, { resources, beds: 8, years: 1, seed: 6 }));
  const harvests = made.sqlite.prepare('SELECT count(*) FROM harvest').pluck().get();
  made.close();
  const slow = migrationsWithASlowOne();
  const random = seededRandom(12);
  const backups = () =>
    existsSync(backupFolderOf(path)) ? readdirSync(backupFolderOf(path)).filter((name) => name.includes('migration')) : [];
  for (let kill = 0; kill < 4; kill += 1) {
    const child = spawn(process.execPath, [opener, path, slow], { stdio: ['ignore', 'pipe', 'inherit'] });
    const log = `${path}-wal`;
    const began = () => existsSync(log) && statSync(log).size > 0 && backups().length > 0;
    while (child.exitCode === null && !began()) await new Promise((done) => setTimeout(done, 5));
    await new Promise((done) => setTimeout(done, random.between(0, 250)));
    expect(child.exitCode).toBeNull();
    child.kill('SIGKILL');
    await ended(child);
    const farm = openFarm(path, options);
    expect(farm.sqlite.prepare(`SELECT count(*) FROM pragma_table_info('bed') WHERE name = 'half'`).pluck().get()).toBe(0);
    expect(farm.sqlite.prepare('SELECT count(*) FROM harvest').pluck().get()).toBe(harvests);
    expect(farm.sqlite.pragma('integrity_check', { simple: true })).toBe('ok');
    farm.close();
  }
  expect(backups().length).toBeGreaterThan(0);
});
