import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { askScheme, desktop, endDesktop, menuItem, startDesktop } from '../../builders/stand-in-desktop.ts';

vi.mock('electron', async () => (await import('../../builders/stand-in-desktop.ts')).standInRuntime());

let home: string;
beforeAll(async () => {
  home = await startDesktop();
});
afterAll(() => endDesktop(home));

describe('the desktop program', () => {
  test('lets the runtime write no dumps, which would hold the farm, and sends none', () => {
    expect(desktop.crashReporters).toBe(0);
  });
  test('opens the sample farm in its own folder and answers through its scheme', async () => {
    expect(existsSync(join(home, 'Saltgrass Lane (invented sample).bedwright'))).toBe(true);
    expect(desktop.windows[0]?.webContents.url).toBe('bedwright://app/?farm=1');
    expect(await askScheme('farm.get')).toMatchObject([{ result: { data: { invented: true } } }]);
  });
  test('answers no other address under its scheme', async () => {
    expect((await desktop.scheme?.handle(new Request('bedwright://app.evil/')))?.status).toBe(404);
  });
  test('lets the system’s dialogs choose, from where the page is', async () => {
    desktop.chosen = join(home, 'north.bedwright');
    expect(await askScheme('files.choose', { kind: 'open', title: 'Open', at: '' })).toMatchObject([
      { result: { data: { path: join(home, 'north.bedwright') } } },
    ]);
    expect(await askScheme('files.choose', { kind: 'save', title: 'A copy', at: 'copy' })).toMatchObject([
      { result: { data: {} } },
    ]);
    desktop.chosen = null;
    expect(await askScheme('files.choose', { kind: 'folder', title: 'Where to', at: home })).toMatchObject([
      { result: { data: { path: null } } },
    ]);
    expect(desktop.dialogs).toMatchObject([
      {
        kind: 'open',
        options: { title: 'Open', defaultPath: home, properties: ['openFile'], filters: [{ extensions: ['bedwright'] }] },
      },
      { kind: 'save', options: { title: 'A copy', defaultPath: join(home, 'copy.bedwright') } },
      { kind: 'open', options: { title: 'Where to', defaultPath: home, properties: ['openDirectory', 'createDirectory'] } },
    ]);
    expect(await askScheme('files.state')).toMatchObject([{ result: { data: { chooser: 'system' } } }]);
  });
});

describe('the look', () => {
  const tokens = readFileSync(new URL('../../../renderer/look/tokens.css', import.meta.url), 'utf8');
  const [, light = '', dark = ''] = /--paper: light-dark\((#\w+), (#\w+)\)/.exec(tokens) ?? [];

  test('of a new window is the page’s own ground, so that nothing flashes white', () => {
    expect(desktop.windows[0]?.options).toMatchObject({ backgroundColor: light, show: false });
  });
  test('follows the page, the frame with it, and is kept for the next start', async () => {
    await askScheme('program.followLook', { theme: 'dark', language: 'en' });
    expect(desktop.theme.themeSource).toBe('dark');
    desktop.theme.tell('updated');
    expect(desktop.windows[0]?.ground).toBe(dark);
    expect(JSON.parse(readFileSync(join(home, 'look.json'), 'utf8'))).toEqual({ theme: 'dark', language: 'en' });
  });
  test('follows the system where the page leaves it to the system', async () => {
    await askScheme('program.followLook', { theme: 'system', language: 'en' });
    desktop.theme.systemDark = true;
    desktop.theme.tell('updated');
    expect(desktop.windows[0]?.ground).toBe(dark);
    desktop.theme.systemDark = false;
    desktop.theme.tell('updated');
    expect(desktop.windows[0]?.ground).toBe(light);
  });
  test('is refused where it is none', async () => {
    expect(await askScheme('program.followLook', { theme: 'pink', language: '../../etc/passwd' })).toMatchObject([
      { error: { data: { bedwright: { faults: [{ path: 'theme' }, { path: 'language' }] } } } },
    ]);
  });
});

describe('the menu', () => {
  const commands = JSON.parse(readFileSync(new URL('../../../resources/commands.json', import.meta.url), 'utf8')) as readonly {
    readonly id: string;
    readonly does: string;
    readonly keys?: string;
    readonly by: string;
  }[];

  test('has every command of the table, with its keys; those that the page hears itself are only shown', () => {
    for (const { does, keys, by, id } of commands) {
      expect(menuItem(does), does).toMatchObject({
        id,
        ...(keys === undefined ? {} : { accelerator: keys, registerAccelerator: by === 'window' }),
      });
    }
    const keys = commands.flatMap((command) => command.keys ?? []);
    expect(new Set(keys).size).toBe(keys.length);
  });
  test('tells the page what to do, and prints', () => {
    const window = desktop.windows[0];
    menuItem('Find and go').click?.({}, window);
    menuItem('Orders').click?.({}, window);
    menuItem('Print the page').click?.({}, window);
    expect(window?.webContents.scripts.slice(-2)).toEqual([
      `window.dispatchEvent(new CustomEvent('bedwright:command', { detail: "find" }))`,
      `window.dispatchEvent(new CustomEvent('bedwright:command', { detail: "orders" }))`,
    ]);
    expect(window?.webContents.printed).toBe(1);
  });
  test('lists the farms opened of late and empties that list, in the system too', () => {
    const sample = join(home, 'Saltgrass Lane (invented sample).bedwright');
    expect(desktop.app.recent).toEqual([sample]);
    expect(menuItem('Open recent').submenu?.[0]?.label).toContain('Saltgrass Lane (invented sample)');
    menuItem('Empty this list').click?.({}, undefined);
    expect(desktop.app.recent).toEqual([]);
    expect(menuItem('Open recent')).toMatchObject({ enabled: false });
  });
});
