import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { _electron, expect, test } from '@playwright/test';

/** Set by the launcher where the runtime is there and there is a display. */
const executablePath = process.env['BEDWRIGHT_ELECTRON'] ?? '';
const root = new URL('../../', import.meta.url).pathname;

test.skip(executablePath === '', 'the desktop runtime or a display is missing here');

test('the real window opens the sample farm, changes it, and starts a worker', async () => {
  const data = mkdtempSync(join(tmpdir(), 'bedwright-window-'));
  const desktop = await _electron.launch({
    executablePath,
    args: [root],
    env: { ...process.env, BEDWRIGHT_HOME: data } as Record<string, string>,
  });
  const page = await desktop.firstWindow();
  const errors: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await expect(page.getByRole('navigation').getByRole('link', { name: 'Beds' })).toBeVisible();
  expect(
    await page.evaluate(() => [
      typeof (globalThis as Record<string, unknown>)['require'],
      typeof (globalThis as Record<string, unknown>)['process'],
    ]),
  ).toEqual(['undefined', 'undefined']);
  const saved = await page.evaluate(async () => {
    const ask = async (path: string, body: unknown) =>
      (
        await fetch(`/trpc/${path}?batch=1`, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify({ 0: body }),
        })
      ).json();
    const [farm] = (await ask('farm.get', undefined)) as [{ result: { data: { revision: number } } }];
    return ask('farm.set', { values: { elevation_m: 41 }, revision: farm.result.data.revision });
  });
  expect(saved).toMatchObject([{ result: { data: { changed: true } } }]);
  expect(errors).toEqual([]);
  await desktop.close();
  rmSync(data, { recursive: true, force: true });
});
