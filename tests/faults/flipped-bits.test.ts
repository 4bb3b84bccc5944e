import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { fillSampleFarm } from '../../api/sample/fill-sample-farm.ts';
import { seededRandom } from '../../api/sample/random.ts';
import { FarmFileError } from '../../db/file/errors.ts';
import { createFarm, openFarm } from '../../db/file/open-farm.ts';
import { FIXED_NOW, migrations, resources } from '../builders/a-farm.ts';

const options = { migrations, now: () => FIXED_NOW };
/** Files hurt in `npm test`; `FUZZ=300` for a long night (which found nothing either). */
const HURT_FILES = Number(process.env['FUZZ'] ?? 40);
/** The head of the file and its schema: where a flipped bit does the most. */
const HEAD_B = 8192;
let folder: string;
let good: Buffer;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'bedwright-flipped-'));
  const path = join(folder, 'good.bedwright');
  const farm = createFarm(path, options);
  farm.unrecorded(() => fillSampleFarm(farm, { resources, beds: 6, years: 0, seed: 3 }));
  farm.close();
  good = readFileSync(path);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Opens a farm and reads every row of every table. */
function readAll(path: string): void {
  const farm = openFarm(path, options);
  try {
    const tables = farm.sqlite.prepare<[], string>(`SELECT name FROM sqlite_schema WHERE type = 'table'`).pluck().all();
    for (const table of tables) farm.sqlite.prepare(`SELECT * FROM "${table.replaceAll('"', '""')}"`).all();
  } finally {
    farm.close();
  }
}

/**
 * A flipped bit in the text or number of a cell cannot be told from an entry, since SQLite keeps no checksums: such a file opens. Whatever
 * is found is refused in a sentence, and the file stays as it was.
 */
test('a farm with flipped bits is either read or refused in a sentence, never half opened', { timeout: 300_000 }, () => {
  const random = seededRandom(20261125);
  let refused = 0;
  for (let n = 0; n < HURT_FILES; n += 1) {
    const bytes = Buffer.from(good);
    const end = n % 2 === 0 ? HEAD_B : bytes.length;
    for (let flips = random.whole(1, 6); flips > 0; flips -= 1) {
      const at = random.whole(0, end - 1);
      bytes[at] = (bytes[at] ?? 0) ^ (1 << random.whole(0, 7));
    }
    const path = join(folder, `hurt-${n}.bedwright`);
    writeFileSync(path, bytes);
    try {
      readAll(path);
    } catch (error) {
      expect(error, `file ${n}: ${String(error)}`).toBeInstanceOf(FarmFileError);
      expect(readFileSync(path).equals(bytes), `file ${n} was changed`).toBe(true);
      refused += 1;
    }
    rmSync(path);
  }
  expect(refused).toBeGreaterThan(HURT_FILES / 10);
});
