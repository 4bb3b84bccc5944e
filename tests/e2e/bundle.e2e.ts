import { execFile, fork } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';

type Said = {
  readonly id?: number;
  readonly loaded?: string;
  readonly status?: number;
  readonly text?: string;
  readonly policy?: string | null;
};

const file = (path: string) => new URL(path, import.meta.url).pathname;

test('the bundle of the desktop window serves page, procedures and worker under a stand-in for the runtime', async () => {
  const data = mkdtempSync(join(tmpdir(), 'bedwright-bundle-'));
  const child = fork(file('../../dist/main/main.js'), [], {
    execArgv: ['--import', file('./stand-in-runtime.mjs')],
    env: { ...process.env, BEDWRIGHT_HOME: data },
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  const heard: Said[] = [];
  child.on('message', (said) => heard.push(said as Said));
  const until = async (match: (said: Said) => boolean): Promise<Said> => {
    await expect.poll(() => heard.some(match), { timeout: 30_000 }).toBe(true);
    return heard.find(match) as Said;
  };
  let count = 0;
  const ask = (path: string, method = 'GET', body?: string): Promise<Said> => {
    count += 1;
    const id = count;
    child.send({ id, url: `bedwright://app${path}`, method, body });
    return until((said) => said.id === id);
  };
  try {
    expect((await until((said) => said.loaded !== undefined)).loaded).toBe('bedwright://app/?farm=1');
    const page = await ask('/beds');
    expect(page.status).toBe(200);
    expect(page.text).toContain('<div id="root"');
    expect(page.policy).toContain("default-src 'none'");
    const farm = await ask('/trpc/farm.get?batch=1', 'POST', '{}');
    expect(JSON.parse(farm.text ?? '')).toMatchObject([{ result: { data: { invented: true } } }]);
    const document = await ask('/export/shopping-list.pdf?season=season-2026');
    expect(document.status).toBe(200);
    expect(document.text?.slice(0, 5)).toBe('%PDF-');
  } finally {
    const ended = new Promise((resolve) => child.once('exit', resolve));
    child.kill('SIGKILL');
    await ended;
    rmSync(data, { recursive: true, force: true });
  }
});

/** `dist/main/main.js --self-test` under the stand-in: its exit code and what it printed. */
function selfTested(data: string, page: string): Promise<{ readonly code: number; readonly said: string }> {
  const args = ['--import', file('./stand-in-runtime.mjs'), file('../../dist/main/main.js'), '--self-test'];
  const env = { ...process.env, BEDWRIGHT_HOME: data, STAND_IN_PAGE: page };
  return new Promise((resolve) => {
    const child = execFile(process.execPath, args, { env }, (_error, stdout) =>
      resolve({ code: child.exitCode ?? -1, said: stdout }),
    );
  });
}

test('the window’s self-test tries a page too, leaves nothing behind, and ends with 1 when that breaks off', async () => {
  const data = mkdtempSync(join(tmpdir(), 'bedwright-bundle-'));
  const fine = await selfTested(data, 'drawn');
  expect(fine.said).toContain('fine: a page is drawn in a window (A page · of the stand-in)');
  expect(fine.said.trim()).toMatch(/Self-test passed: 10 of 10\.$/);
  expect(fine.code).toBe(0);
  const broken = await selfTested(data, 'gone');
  expect(broken.said).toContain('NOT FINE: a page is drawn in a window (The page broke off: crashed.)');
  expect(broken.said.trim()).toMatch(/Self-test failed: 1 of 10\.$/);
  expect(broken.code).toBe(1);
  expect(readdirSync(data)).toEqual([]);
  rmSync(data, { recursive: true, force: true });
});
