import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fillSampleFarm } from '../../api/sample/fill-sample-farm.ts';
import { FarmFileError, type FarmFileReason } from '../../db/file/errors.ts';
import { APPLICATION_ID } from '../../db/file/identify.ts';
import { createFarm, openFarm } from '../../db/file/open-farm.ts';
import { FIXED_NOW, migrations, resources } from '../builders/a-farm.ts';

const options = { migrations, now: () => FIXED_NOW };
let folder: string;
let good: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'bedwright-refused-'));
  good = join(folder, 'good.bedwright');
  const farm = createFarm(good, options);
  farm.unrecorded(() => fillSampleFarm(farm, { resources, beds: 12, years: 1, seed: 3 }));
  farm.close();
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function refusal(path: string): FarmFileError {
  try {
    openFarm(path, options).close();
  } catch (error) {
    if (error instanceof FarmFileError) return error;
    throw error;
  }
  throw new Error(`${path} was opened`);
}

function expectRefusedUntouched(name: string, make: (path: string) => void, reason: FarmFileReason): void {
  const place = join(folder, `place-${name}`);
  mkdirSync(place);
  const path = join(place, `${name}.bedwright`);
  make(path);
  const before = readFileSync(path);
  const error = refusal(path);
  expect(error.reason).toBe(reason);
  expect(error.message).toContain(path);
  expect(readFileSync(path).equals(before)).toBe(true);
  expect(readdirSync(place).filter((each) => each.includes('backup'))).toEqual([]);
}

describe('a file that is no good farm is refused and left as it was', () => {
  test('an empty file', () => expectRefusedUntouched('empty', (path) => writeFileSync(path, ''), 'not-a-farm'));
  test('a text file', () => expectRefusedUntouched('text', (path) => writeFileSync(path, 'beds\n'.repeat(400)), 'not-a-farm'));
  test('another program’s database', () =>
    expectRefusedUntouched(
      'foreign',
      (path) => {
        const other = new Database(path);
        other.exec('CREATE TABLE thing(id); INSERT INTO thing VALUES (1)');
        other.close();
      },
      'not-a-farm',
    ));
  test('a farm of a newer version, by its version number', () =>
    expectRefusedUntouched(
      'newer',
      (path) => {
        copyFileSync(good, path);
        const file = new Database(path);
        file.pragma('journal_mode = DELETE');
        file.pragma('user_version = 9999');
        file.close();
      },
      'newer',
    ));
  test('a farm of a newer version, by its list of migrations', () =>
    expectRefusedUntouched(
      'newer-list',
      (path) => {
        copyFileSync(good, path);
        const file = new Database(path);
        file.pragma('journal_mode = DELETE');
        file.exec(`INSERT INTO __drizzle_migrations(hash, created_at) VALUES ('x', 9999999999999)`);
        file.close();
      },
      'newer',
    ));
  test('a farm cut short', () =>
    expectRefusedUntouched(
      'cut',
      (path) => {
        copyFileSync(good, path);
        truncateSync(path, 40_960);
      },
      'damaged',
    ));
  test('a farm with a damaged page', () =>
    expectRefusedUntouched(
      'flipped',
      (path) => {
        const bytes = readFileSync(good);
        bytes.fill(0xff, 4096 * 3, 4096 * 5);
        writeFileSync(path, bytes);
      },
      'damaged',
    ));
  test('a read-only farm', () => {
    expectRefusedUntouched(
      'readonly',
      (path) => {
        copyFileSync(good, path);
        chmodSync(path, 0o444);
      },
      'read-only',
    );
  });
  test('a folder, and no file at all', () => {
    const path = join(folder, 'folder.bedwright');
    mkdirSync(path);
    expect(refusal(path).reason).toBe('folder');
    expect(refusal(join(folder, 'nothing.bedwright')).reason).toBe('missing');
  });
  test('a farm that another copy has open', () => {
    const path = join(folder, 'shared.bedwright');
    copyFileSync(good, path);
    const first = openFarm(path, options);
    expect(refusal(path).reason).toBe('locked');
    first.close();
    openFarm(path, options).close();
  });
  test('a new farm never takes the place of a file', () => {
    const before = readFileSync(good);
    expect(() => createFarm(good, options)).toThrow(/already a file/);
    expect(readFileSync(good).equals(before)).toBe(true);
  });
});

test('a farm says in its header whose file it is', () => {
  expect(readFileSync(good).readUInt32BE(68)).toBe(APPLICATION_ID);
});
