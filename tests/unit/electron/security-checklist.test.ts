/**
 * The checklist "Security recommendations" of Electron's published documentation (Security, a tutorial), point by point under its own names:
 * points 1 to 17 as read there, 18 to 20 from memory. What only the runtime can show (that a setting takes effect) is for `desktop.e2e.ts`.
 */
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { anEvent, desktop, endDesktop, type StandInWindow, startDesktop } from '../../builders/stand-in-desktop.ts';

vi.mock('electron', async () => (await import('../../builders/stand-in-desktop.ts')).standInRuntime());

const root = new URL('../../../', import.meta.url).pathname;
const read = (path: string): string => readFileSync(join(root, path), 'utf8');
const sourceOf = (room: string): string => globSync(`${room}/**/*.{ts,tsx}`, { cwd: root }).map(read).join('\n');

let home: string;
let window: StandInWindow;
beforeAll(async () => {
  home = await startDesktop();
  window = desktop.windows[0] as StandInWindow;
});
afterAll(() => endDesktop(home));

const preferences = () => window.options['webPreferences'] as Readonly<Record<string, unknown>>;
const ask = (name: string, ...args: unknown[]): unknown => (desktop.session[name] as (...args: unknown[]) => unknown)(...args);
const cancelled = (url: string): boolean | undefined => {
  let cancel: boolean | undefined;
  ask('before', { url }, (answer: { readonly cancel: boolean }) => {
    cancel = answer.cancel;
  });
  return cancel;
};
const stopped = (name: string, more: Readonly<Record<string, unknown>>): boolean => {
  const event = anEvent(more);
  window.webContents.tell(name, event);
  return event.prevented;
};

describe('Electron’s security checklist', () => {
  test('1. Only load secure content: none but the program’s own is loaded', () => {
    for (const url of [
      'http://example.org/',
      'https://example.org/',
      'ws://example.org/',
      'wss://example.org/',
      'ftp://example.org/',
      'file:///etc/passwd',
    ])
      expect(cancelled(url), url).toBe(true);
    for (const url of ['bedwright://app/assets/a.js', 'blob:bedwright://app/1', 'data:image/png;base64,'])
      expect(cancelled(url), url).toBe(false);
    expect(read('renderer/index.html')).not.toMatch(/https?:/);
  });
  test('2. Do not enable Node.js integration for remote content: in no page, worker or frame at all', () => {
    expect(preferences()).toMatchObject({
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
    });
  });
  test('3. Enable context isolation', () => {
    expect(preferences()).toMatchObject({ contextIsolation: true });
  });
  test('4. Enable process sandboxing: for every process, and again for the window', () => {
    expect(desktop.app.sandboxed).toBe(true);
    expect(preferences()).toMatchObject({ sandbox: true });
  });
  test('5. Handle session permission requests: none is given but writing plain text to the clipboard', () => {
    const given = (permission: string): boolean | undefined => {
      let answer: boolean | undefined;
      ask('request', null, permission, (said: boolean) => {
        answer = said;
      });
      return answer;
    };
    expect(given('clipboard-sanitized-write')).toBe(true);
    for (const permission of [
      'media',
      'geolocation',
      'notifications',
      'clipboard-read',
      'openExternal',
      'fullscreen',
      'fileSystem',
      'unknown',
    ]) {
      expect(given(permission), permission).toBe(false);
      expect(ask('check', null, permission), permission).toBe(false);
    }
    expect(ask('device')).toBe(false);
  });
  test('6. Do not disable webSecurity', () => {
    expect(preferences()).toMatchObject({ webSecurity: true });
  });
  test('7. Define a Content-Security-Policy: on pages and on answers, without unsafe-* or a wild card', async () => {
    for (const path of ['/', '/beds', '/trpc/farm.get', '/nowhere.txt']) {
      const policy =
        (await desktop.scheme?.handle(new Request(`bedwright://app${path}`)))?.headers.get('content-security-policy') ?? '';
      expect(policy, path).toContain("default-src 'none'");
      expect(policy, path).toContain("script-src 'self'");
      expect(policy, path).toContain("frame-ancestors 'none'");
      expect(policy, path).not.toMatch(/unsafe-|\*|https?:/);
    }
  });
  test('8. Do not enable allowRunningInsecureContent', () => {
    expect(preferences()).toMatchObject({ allowRunningInsecureContent: false });
  });
  test('9. Do not enable experimental features', () => {
    expect(preferences()).toMatchObject({ experimentalFeatures: false });
  });
  test('10. Do not use enableBlinkFeatures', () => {
    expect(preferences()['enableBlinkFeatures']).toBeUndefined();
    expect(sourceOf('electron')).not.toMatch(/enableBlinkFeatures|appendSwitch/);
  });
  test('11. <webview>: Do not use allowpopups: there is no such element in the pages', () => {
    expect(preferences()).toMatchObject({ webviewTag: false });
    expect(sourceOf('renderer')).not.toMatch(/<webview|allowpopups/);
  });
  test('12. <webview>: Verify options and params: none is ever attached', () => {
    expect(stopped('will-attach-webview', {})).toBe(true);
  });
  test('13. Disable or limit navigation: to the program’s own addresses, in frames and redirects too', () => {
    for (const name of ['will-frame-navigate', 'will-redirect'])
      for (const url of [
        'https://example.org/',
        'bedwright://app.evil/',
        'bedwright://other/',
        'file:///etc/passwd',
        'javascript:alert(1)',
        'data:text/html,x',
        'blob:https://example.org/1',
      ]) {
        expect(stopped(name, { url, isMainFrame: true }), url).toBe(true);
        expect(stopped(name, { url, isMainFrame: false }), url).toBe(true);
      }
    expect(stopped('will-frame-navigate', { url: 'bedwright://app/beds?farm=1', isMainFrame: true })).toBe(false);
    expect(stopped('will-frame-navigate', { url: 'blob:bedwright://app/1', isMainFrame: false })).toBe(false);
  });
  test('14. Disable or limit creation of new windows: a page makes none; the program makes locked ones for its own pages', () => {
    const count = desktop.windows.length;
    for (const url of [
      'https://example.org/',
      'bedwright://app.evil/',
      'file:///etc/passwd',
      'about:blank',
      'javascript:alert(1)',
    ])
      expect(window.webContents.opened({ url }), url).toEqual({ action: 'deny' });
    expect(desktop.windows).toHaveLength(count);
    expect(window.webContents.opened({ url: 'bedwright://app/week?farm=none' })).toEqual({ action: 'deny' });
    expect(desktop.windows).toHaveLength(count + 1);
    expect(desktop.windows.at(-1)?.options['webPreferences']).toEqual(preferences());
  });
  test('15. Do not use shell.openExternal with untrusted content: nothing is handed to the system to open', async () => {
    expect(sourceOf('electron')).not.toMatch(/\bshell\b|openExternal|openPath/);
    expect((await import('electron')).shell.openExternal).not.toHaveBeenCalled();
  });
  test('16. Use a current version of Electron: one exact version, of which the lock knows the checksum', () => {
    const wanted = (JSON.parse(read('package.json')) as { readonly devDependencies: Readonly<Record<string, string>> })
      .devDependencies['electron'];
    const lock = JSON.parse(read('package-lock.json')) as {
      readonly packages: Readonly<Record<string, { readonly version: string; readonly integrity: string }>>;
    };
    expect(wanted).toMatch(/^\d+\.\d+\.\d+$/);
    // the newest known when this was written; a new major comes every eight weeks and the newest three are cared for
    expect(Number(wanted?.split('.')[0])).toBeGreaterThanOrEqual(45);
    expect(lock.packages['node_modules/electron']).toMatchObject({
      version: wanted,
      integrity: expect.stringMatching(/^sha512-/),
    });
  });
  test('17. Validate the sender of all IPC messages: there are none, and no preload through which a page could send them', async () => {
    expect(preferences()['preload']).toBeUndefined();
    expect(sourceOf('electron')).not.toMatch(/ipcMain|ipcRenderer|contextBridge|preload|MessageChannelMain/);
    const { ipcMain } = await import('electron');
    expect(ipcMain.on).not.toHaveBeenCalled();
    expect(ipcMain.handle).not.toHaveBeenCalled();
  });
  test('18. Avoid usage of the file:// protocol and prefer usage of custom protocols: one, with no way round the policy', async () => {
    expect(desktop.schemes).toEqual([
      { scheme: 'bedwright', privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
    ]);
    expect(desktop.scheme?.name).toBe('bedwright');
    for (const each of desktop.windows) expect(each.webContents.url).toMatch(/^bedwright:\/\/app\//);
    for (const path of [
      '/../package.json',
      '/assets/..%2f..%2fpackage.json',
      '/%2e%2e/package.json',
      '/assets/%2e%2e/%2e%2e/package.json',
    ])
      expect((await desktop.scheme?.handle(new Request(`bedwright://app${path}`)))?.status, path).toBe(404);
    expect(sourceOf('electron')).not.toMatch(/loadFile|file:\/\//);
  });
  test('19. Check which fuses you can change: each is set in the packaging', () => {
    const { electronFuses } = JSON.parse(read('electron/packaging/builder.json')) as { readonly electronFuses: unknown };
    expect(electronFuses).toEqual({
      runAsNode: false,
      enableCookieEncryption: true,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      loadBrowserProcessSpecificV8Snapshot: false,
      grantFileProtocolExtraPrivileges: false,
    });
  });
  test('20. Do not expose Electron APIs to untrusted web content: the page has the one door, and scripts run in it hold only names of our table', () => {
    const source = sourceOf('electron');
    expect(source.match(/executeJavaScript/g)?.length).toBe(1);
    expect(source).toMatch(/executeJavaScript\(\s*`[^`]*detail: \$\{JSON\.stringify\(id\)\} \}\)\)`/);
    expect(preferences()).toMatchObject({ devTools: false });
  });
});
