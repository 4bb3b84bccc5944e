import { fork } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
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
