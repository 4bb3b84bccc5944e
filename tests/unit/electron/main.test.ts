import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';

type Handler = (...args: never[]) => unknown;

/** A stand-in for the runtime's interface: it records what the program sets, and lets a test call it. */
const fake = vi.hoisted(() => {
  const handlers = new Map<string, Handler[]>();
  const on = (name: string, handler: Handler) => handlers.set(name, [...(handlers.get(name) ?? []), handler]);
  const contents = new Map<string, Handler>();
  const windows: { options: Record<string, unknown>; url: string }[] = [];
  return {
    handlers,
    windows,
    schemes: [] as unknown[],
    scheme: null as null | { name: string; handle: (request: Request) => Promise<Response> },
    session: {} as Record<string, Handler>,
    contents,
    sandboxed: false,
    on,
    outside: [] as string[],
  };
});

vi.mock('electron', () => {
  class BrowserWindow {
    webContents = { print: () => undefined };
    constructor(options: Record<string, unknown>) {
      fake.windows.push({ options, url: '' });
    }
    once() {}
    on() {}
    loadURL(url: string) {
      const last = fake.windows.at(-1);
      if (last !== undefined) last.url = url;
      return Promise.resolve();
    }
  }
  return {
    app: {
      isPackaged: true,
      on: fake.on,
      quit: () => undefined,
      enableSandbox: () => {
        fake.sandboxed = true;
      },
      requestSingleInstanceLock: () => true,
      whenReady: () => Promise.resolve(),
      isReady: () => true,
      addRecentDocument: () => undefined,
    },
    BrowserWindow,
    crashReporter: { start: (options: unknown) => fake.schemes.push(options) },
    dialog: { showErrorBox: () => undefined },
    Menu: { buildFromTemplate: (template: unknown) => template, setApplicationMenu: () => undefined },
    protocol: {
      registerSchemesAsPrivileged: (schemes: unknown[]) => fake.schemes.push(...schemes),
      handle: (name: string, handle: (request: Request) => Promise<Response>) => {
        fake.scheme = { name, handle };
      },
    },
    session: {
      defaultSession: {
        setPermissionRequestHandler: (handler: Handler) => {
          fake.session['request'] = handler;
        },
        setPermissionCheckHandler: (handler: Handler) => {
          fake.session['check'] = handler;
        },
        setDevicePermissionHandler: (handler: Handler) => {
          fake.session['device'] = handler;
        },
        webRequest: {
          onBeforeRequest: (handler: Handler) => {
            fake.session['before'] = handler;
          },
        },
      },
    },
    shell: {
      openExternal: (url: string) => {
        fake.outside.push(url);
        return Promise.resolve();
      },
    },
  };
});

let home: string;
beforeAll(async () => {
  home = mkdtempSync(join(tmpdir(), 'bedwright-desktop-'));
  process.env['BEDWRIGHT_HOME'] = home;
  await import('../../../electron/main.ts');
  await vi.waitFor(() => expect(fake.windows).toHaveLength(1), { timeout: 30_000 });
});
afterAll(() => {
  rmSync(home, { recursive: true, force: true });
});

const call = (name: string, ...args: unknown[]) => (fake.session[name] as (...args: unknown[]) => unknown)(...args);

describe('the desktop window', () => {
  test('is sandboxed, with no Node and no bridge in the page', () => {
    const preferences = fake.windows[0]?.options['webPreferences'] as Record<string, unknown>;
    expect(fake.sandboxed).toBe(true);
    expect(preferences).toMatchObject({
      sandbox: true,
      contextIsolation: true,
      webSecurity: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      devTools: false,
    });
    expect(preferences['preload']).toBeUndefined();
    expect(fake.windows[0]?.url).toBe('bedwright://app/');
  });
  test('registers its private scheme before it is ready, with no way round the content policy', () => {
    expect(fake.schemes[0]).toEqual({
      scheme: 'bedwright',
      privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true },
    });
  });
  test('keeps crash reports on this computer', () => {
    expect(fake.schemes[1]).toEqual({ uploadToServer: false });
  });
  test('opens the sample farm in the program’s own folder and answers through the scheme', async () => {
    expect(existsSync(join(home, 'Saltgrass Lane (invented sample).bedwright'))).toBe(true);
    const answer = await fake.scheme?.handle(
      new Request('bedwright://app/trpc/farm.get?batch=1', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: '{}',
      }),
    );
    expect(answer?.status).toBe(200);
    expect(await answer?.json()).toMatchObject([{ result: { data: { invented: true } } }]);
  });
  test('answers no other address under its scheme', async () => {
    expect((await fake.scheme?.handle(new Request('bedwright://app.evil/')))?.status).toBe(404);
  });
  test('cancels every request that leaves the program', () => {
    const decided = (url: string) => {
      let cancel: boolean | undefined;
      call('before', { url }, (answer: { cancel: boolean }) => {
        cancel = answer.cancel;
      });
      return cancel;
    };
    expect(decided('https://example.org/')).toBe(true);
    expect(decided('file:///etc/passwd')).toBe(true);
    expect(decided('bedwright://app/assets/a.js')).toBe(false);
  });
  test('gives no permission but writing text to the clipboard', () => {
    const asked = (permission: string) => {
      let given: boolean | undefined;
      call('request', null, permission, (answer: boolean) => {
        given = answer;
      });
      return given;
    };
    expect(asked('clipboard-sanitized-write')).toBe(true);
    for (const permission of ['media', 'geolocation', 'notifications', 'clipboard-read', 'openExternal'])
      expect(asked(permission), permission).toBe(false);
    expect(call('check', null, 'media')).toBe(false);
    expect(call('device')).toBe(false);
  });
  test('never leaves the program: other pages, windows and embedded views are refused', () => {
    const created = fake.handlers.get('web-contents-created')?.[0] as (event: unknown, contents: unknown) => void;
    let opened: ((details: { url: string }) => { action: string }) | undefined;
    const events = new Map<string, (event: { url: string; preventDefault: () => void }) => void>();
    created(null, {
      setWindowOpenHandler: (handler: typeof opened) => {
        opened = handler;
      },
      on: (name: string, handler: never) => events.set(name, handler),
    });
    expect(opened?.({ url: 'https://example.org/source' })).toEqual({ action: 'deny' });
    expect(fake.outside).toEqual(['https://example.org/source']);
    expect(opened?.({ url: 'file:///etc/passwd' })).toEqual({ action: 'deny' });
    expect(fake.outside).toHaveLength(1);
    const prevented = (name: string, url: string) => {
      let stopped = false;
      events.get(name)?.({
        url,
        preventDefault: () => {
          stopped = true;
        },
      });
      return stopped;
    };
    expect(prevented('will-frame-navigate', 'https://example.org/')).toBe(true);
    expect(prevented('will-redirect', 'bedwright://app.evil/')).toBe(true);
    expect(prevented('will-frame-navigate', 'bedwright://app/beds')).toBe(false);
    expect(prevented('will-attach-webview', '')).toBe(true);
  });
});
