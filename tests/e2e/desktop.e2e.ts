import { execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { _electron, type ElectronApplication, expect, type Page, test } from '@playwright/test';

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

test.describe('the desktop window', () => {
  let data: string;
  let desktop: ElectronApplication | undefined;
  const env = (): Record<string, string> => ({ ...process.env, BEDWRIGHT_HOME: data }) as Record<string, string>;
  const words = (...more: readonly string[]): string[] => [root, `--user-data-dir=${join(data, 'runtime')}`, ...more];

  async function start(...more: readonly string[]): Promise<{ readonly desktop: ElectronApplication; readonly page: Page }> {
    desktop = await _electron.launch({ executablePath, args: words(...more), env: env() });
    const page = await desktop.firstWindow();
    await expect(page.getByRole('navigation').getByRole('link', { name: 'Beds', exact: true })).toBeVisible();
    return { desktop, page };
  }
  function aFarm(name: string): string {
    const path = join(data, `${name}.bedwright`);
    const size = ['--beds', '6', '--years', '0', '--seed', '1'];
    execFileSync(process.execPath, [join(root, 'dist', 'main', 'farm.js'), '--out', path, ...size]);
    return path;
  }
  const clickMenu = (app: ElectronApplication, id: string): Promise<void> =>
    app.evaluate(({ Menu, BrowserWindow }, wanted) => {
      const [window] = BrowserWindow.getAllWindows();
      Menu.getApplicationMenu()?.getMenuItemById(wanted)?.click(undefined, window, window?.webContents);
    }, id);

  test.beforeEach(() => {
    data = mkdtempSync(join(tmpdir(), 'bedwright-window-'));
  });
  test.afterEach(async () => {
    await desktop?.close();
    desktop = undefined;
    rmSync(data, { recursive: true, force: true });
  });

  test('goes where its menu says', async () => {
    const { desktop: app, page } = await start();
    await clickMenu(app, 'beds');
    await expect(page.getByRole('heading', { name: 'Beds', level: 1 })).toBeVisible();
    await clickMenu(app, 'program');
    await expect(page.getByRole('region', { name: 'About this program' })).toContainText('Electron');
  });

  test('opens a farm named on its command line; a second start hands its farm to the first, in a second window', async () => {
    const [north, south] = [aFarm('north'), aFarm('south')];
    const { desktop: app } = await start(north);
    const second = app.waitForEvent('window');
    const other = spawn(executablePath, words(south), { env: env(), stdio: 'ignore' });
    const ended = new Promise((resolve) => other.once('exit', resolve));
    await expect((await second).getByRole('heading', { level: 1 })).toBeVisible();
    await ended;
    expect(app.windows()).toHaveLength(2);
    const recent = await app.evaluate(({ Menu }) =>
      (Menu.getApplicationMenu()?.items ?? []).flatMap((item) =>
        (item.submenu?.items ?? []).flatMap(({ submenu }) => (submenu?.items ?? []).map(({ label }) => label)),
      ),
    );
    expect(recent.filter((label) => /^(north|south) {2}\(/.test(label))).toHaveLength(2);
  });

  test('turns dark with the frame around it', async () => {
    const { desktop: app, page } = await start();
    const ground = (): Promise<string> => page.evaluate('getComputedStyle(document.body).backgroundColor');
    const light = await ground();
    await app.evaluate(({ nativeTheme }) => {
      nativeTheme.themeSource = 'dark';
    });
    await expect.poll(ground).not.toBe(light);
  });

  test('closed while it writes, it keeps every change that was acknowledged', async () => {
    const north = aFarm('north');
    const { page } = await start(north);
    const ask = `async (path, body) => (await (await fetch('/trpc/' + path + '?batch=1', { method: 'POST',
      headers: { 'content-type': 'application/json' }, body: JSON.stringify({ 0: body }) })).json())[0].result.data`;
    const kept = await page.evaluate<number>(`(async () => {
      const ask = ${ask};
      let done = 0;
      for (let n = 1; n <= 20; n += 1) {
        const { revision } = await ask('farm.get');
        await ask('farm.set', { values: { elevation_m: n }, revision });
        done = n;
      }
      ask('farm.get').then(({ revision }) => ask('farm.set', { values: { elevation_m: 21 }, revision }));
      return done;
    })()`);
    await desktop?.close();
    const again = await start(north);
    const { elevation_m } = await again.page.evaluate<{ elevation_m: number }>(`(${ask})('farm.get')`);
    expect(elevation_m).toBeGreaterThanOrEqual(kept);
  });

  test('tests itself and ends with 0', () => {
    const said = execFileSync(executablePath, words('--self-test'), { env: env(), encoding: 'utf8', timeout: 120_000 });
    expect(said).toMatch(/Self-test passed: 10 of 10\./);
  });
});
