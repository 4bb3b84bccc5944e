import { type ChildProcess, fork } from 'node:child_process';
import { copyFileSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test as base, expect } from '@playwright/test';
import { SAMPLE_FILE } from '../../api/program/start-program.ts';

/** A running host with its own data folder, one for each test. */
export type Host = { readonly address: string; readonly origin: string; readonly data: string };

/** As the launcher starts it. */
const hostFlags = JSON.parse(readFileSync(new URL('../../tools/host-flags.json', import.meta.url), 'utf8')) as string[];
const hostFile = new URL('../../dist/main/host.js', import.meta.url).pathname;

export function startHost(
  data: string,
  args: readonly string[] = [],
): Promise<{ readonly child: ChildProcess; readonly host: Host }> {
  const child = fork(hostFile, [...args], {
    env: { ...process.env, BEDWRIGHT_HOME: data, BEDWRIGHT_NOW: '2026-11-25T09:00:00' },
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    execArgv: hostFlags,
  });
  return new Promise((resolve, reject) => {
    child.once('message', (said) => resolve({ child, host: { ...(said as { address: string; origin: string }), data } }));
    child.once('exit', (code) => reject(new Error(`The host ended with ${code} before it answered.`)));
  });
}

async function endHost(child: ChildProcess): Promise<void> {
  const ended = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGTERM');
  await ended;
}

type Fixtures = { readonly host: Host; readonly noConsoleErrors: undefined };

/** Each test starts on a sample farm and a host of its own, in any order, and fails on any console error or page error. */
export const test = base.extend<Fixtures, { readonly sampleFarm: string }>({
  // making the sample farm takes a second or two, copying its file a few milliseconds: so once for each worker
  sampleFarm: [
    async ({ browserName: _ }, use) => {
      const data = mkdtempSync(join(tmpdir(), 'bedwright-sample-'));
      const { child } = await startHost(data);
      await endHost(child);
      await use(join(data, SAMPLE_FILE));
      rmSync(data, { recursive: true, force: true });
    },
    { scope: 'worker' },
  ],
  host: async ({ sampleFarm }, use) => {
    const data = mkdtempSync(join(tmpdir(), 'bedwright-e2e-'));
    copyFileSync(sampleFarm, join(data, SAMPLE_FILE));
    const { child, host } = await startHost(data);
    await use(host);
    await endHost(child);
    rmSync(data, { recursive: true, force: true });
  },
  noConsoleErrors: [
    async ({ page, host }, use) => {
      const errors: string[] = [];
      page.on('console', (message) => {
        // a refused change answers with an error status, which the browser notes; the page shows the refusal itself
        const refused =
          message.text().startsWith('Failed to load resource') && /\/(trpc|farm-file)\b/.test(message.location().url);
        if (message.type() === 'error' && !refused) errors.push(message.text());
      });
      page.on('pageerror', (error) => errors.push(error.message));
      await page.goto(host.address);
      await page.waitForURL((url) => url.pathname !== '/open');
      await use(undefined);
      expect(errors).toEqual([]);
    },
    { auto: true },
  ],
});

export { expect };
