import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { vi } from 'vitest';

type Listener = (...args: never[]) => unknown;

/** Something that tells its listeners, as the runtime's own objects do. */
export class Emitter {
  readonly listeners = new Map<string, Listener[]>();
  on(name: string, listener: Listener): this {
    this.listeners.set(name, [...(this.listeners.get(name) ?? []), listener]);
    return this;
  }
  once(name: string, listener: Listener): this {
    return this.on(name, listener);
  }
  tell(name: string, ...args: unknown[]): void {
    for (const listener of this.listeners.get(name) ?? []) (listener as (...args: unknown[]) => unknown)(...args);
  }
}

/** An event that remembers whether its usual course was stopped. */
export const anEvent = (more: Readonly<Record<string, unknown>> = {}) => {
  const event = {
    ...more,
    prevented: false,
    preventDefault: () => {
      event.prevented = true;
    },
  };
  return event;
};

type Opened = (details: { readonly url: string }) => { readonly action: string };

export class StandInContents extends Emitter {
  url = '';
  readonly scripts: string[] = [];
  readonly downloads: string[] = [];
  printed = 0;
  reloads = 0;
  opened: Opened = () => ({ action: 'allow' });
  setWindowOpenHandler(handler: Opened): void {
    this.opened = handler;
  }
  executeJavaScript(script: string): Promise<unknown> {
    this.scripts.push(script);
    return Promise.resolve(desktop.pageSays(script));
  }
  downloadURL(url: string): void {
    this.downloads.push(url);
  }
  print(): void {
    this.printed += 1;
  }
  reload(): void {
    this.reloads += 1;
  }
  getURL(): string {
    return this.url;
  }
}

export class StandInWindow extends Emitter {
  readonly webContents = new StandInContents();
  focused = 0;
  shown = 0;
  gone = false;
  ground = '';
  readonly options: Readonly<Record<string, unknown>>;
  constructor(options: Readonly<Record<string, unknown>>) {
    super();
    this.options = options;
    desktop.windows.push(this);
    desktop.app.tell('web-contents-created', {}, this.webContents);
  }
  static getFocusedWindow(): StandInWindow | null {
    return null;
  }
  static getAllWindows(): readonly StandInWindow[] {
    return desktop.windows.filter((window) => !window.gone);
  }
  loadURL(url: string): Promise<void> {
    this.webContents.url = url;
    this.webContents.tell('did-navigate', {}, url);
    return Promise.resolve();
  }
  /** The page goes to another address by itself; false when the program did not let it. */
  go(url: string): boolean {
    const event = anEvent({ url, isMainFrame: true });
    this.webContents.tell('will-frame-navigate', event);
    if (!event.prevented) void this.loadURL(url);
    return !event.prevented;
  }
  /** The reader closes the window; false when the program did not let him. */
  close(): boolean {
    const event = anEvent();
    this.tell('close', event);
    if (event.prevented) return false;
    this.gone = true;
    this.tell('closed');
    if (StandInWindow.getAllWindows().length === 0) desktop.app.tell('window-all-closed');
    return true;
  }
  focus(): void {
    this.focused += 1;
  }
  show(): void {
    this.shown += 1;
  }
  setBackgroundColor(colour: string): void {
    this.ground = colour;
  }
  destroy(): void {
    this.gone = true;
    this.tell('closed');
  }
  isMinimized(): boolean {
    return false;
  }
  isMaximized(): boolean {
    return false;
  }
  getNormalBounds() {
    return { x: 40, y: 40, width: 1100, height: 800 };
  }
}

class StandInApp extends Emitter {
  isPackaged = true;
  sandboxed = false;
  ended = false;
  quits = 0;
  exits: number[] = [];
  recent: string[] = [];
  quit(): void {
    this.quits += 1;
    const before = anEvent();
    this.tell('before-quit', before);
    if (before.prevented) return;
    const last = anEvent();
    this.tell('will-quit', last);
    this.ended = !last.prevented;
  }
  exit(code: number): void {
    this.exits.push(code);
  }
  enableSandbox(): void {
    this.sandboxed = true;
  }
  requestSingleInstanceLock(): boolean {
    return true;
  }
  whenReady(): Promise<void> {
    return Promise.resolve();
  }
  isReady(): boolean {
    return true;
  }
  addRecentDocument(path: string): void {
    this.recent = [path, ...this.recent.filter((other) => other !== path)];
  }
  clearRecentDocuments(): void {
    this.recent = [];
  }
  setJumpList(): void {}
}

class StandInTheme extends Emitter {
  themeSource = 'system';
  systemDark = false;
  get shouldUseDarkColors(): boolean {
    return this.themeSource === 'dark' || (this.themeSource === 'system' && this.systemDark);
  }
}

export type StandInItem = {
  readonly id?: string;
  readonly label?: string;
  readonly role?: string;
  readonly accelerator?: string;
  readonly registerAccelerator?: boolean;
  readonly submenu?: readonly StandInItem[];
  readonly click?: (item: unknown, window: unknown) => void;
};
type Scheme = { readonly name: string; readonly handle: (request: Request) => Promise<Response> };
type Box = { readonly message: string; readonly detail?: string; readonly buttons?: readonly string[] };

/** What the program set in the runtime, and what the runtime is to answer. */
export const desktop = {
  app: new StandInApp(),
  theme: new StandInTheme(),
  power: new Emitter(),
  blockers: new Set<number>(),
  windows: [] as StandInWindow[],
  schemes: [] as unknown[],
  scheme: undefined as Scheme | undefined,
  session: {} as Record<string, Listener>,
  crashReporters: 0,
  menu: [] as readonly StandInItem[],
  boxes: [] as Box[],
  errors: [] as { readonly title: string; readonly text: string }[],
  /** Which button the reader presses in the next boxes. */
  presses: 0,
  /** What the next dialogs for files answer; null closes them. */
  chosen: null as string | null,
  dialogs: [] as { readonly kind: string; readonly options: Readonly<Record<string, unknown>> }[],
  /** What a page answers to a script of the program's. */
  pageSays: (_script: string): unknown => undefined,
};

const withoutWindow = (args: readonly unknown[]): Readonly<Record<string, unknown>> =>
  args.at(-1) as Readonly<Record<string, unknown>>;

/** The runtime's interface, as far as the program uses it: for `vi.mock('electron', standInRuntime)`. */
export function standInRuntime() {
  const keep = (name: string) => (handler: Listener) => {
    desktop.session[name] = handler;
  };
  const box = (...args: unknown[]): number => {
    desktop.boxes.push(withoutWindow(args) as Box);
    return desktop.presses;
  };
  let blocker = 0;
  return {
    app: desktop.app,
    BrowserWindow: StandInWindow,
    nativeTheme: desktop.theme,
    powerMonitor: desktop.power,
    powerSaveBlocker: {
      start: () => {
        blocker += 1;
        desktop.blockers.add(blocker);
        return blocker;
      },
      stop: (id: number) => desktop.blockers.delete(id),
    },
    screen: { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] },
    crashReporter: {
      start: () => {
        desktop.crashReporters += 1;
      },
    },
    dialog: {
      showErrorBox: (title: string, text: string) => desktop.errors.push({ title, text }),
      showMessageBox: (...args: unknown[]) => Promise.resolve({ response: box(...args) }),
      showMessageBoxSync: box,
      showOpenDialog: (...args: unknown[]) => {
        desktop.dialogs.push({ kind: 'open', options: withoutWindow(args) });
        return Promise.resolve({ canceled: desktop.chosen === null, filePaths: desktop.chosen === null ? [] : [desktop.chosen] });
      },
      showSaveDialog: (...args: unknown[]) => {
        desktop.dialogs.push({ kind: 'save', options: withoutWindow(args) });
        return Promise.resolve({ canceled: desktop.chosen === null, filePath: desktop.chosen ?? '' });
      },
    },
    Menu: {
      buildFromTemplate: (template: readonly StandInItem[]) => template,
      setApplicationMenu: (menu: readonly StandInItem[]) => {
        desktop.menu = menu;
      },
    },
    protocol: {
      registerSchemesAsPrivileged: (schemes: readonly unknown[]) => desktop.schemes.push(...schemes),
      handle: (name: string, handle: Scheme['handle']) => {
        desktop.scheme = { name, handle };
      },
    },
    session: {
      defaultSession: {
        setPermissionRequestHandler: keep('request'),
        setPermissionCheckHandler: keep('check'),
        setDevicePermissionHandler: keep('device'),
        webRequest: { onBeforeRequest: keep('before') },
      },
    },
    ipcMain: { on: vi.fn(), handle: vi.fn() },
    shell: { openExternal: vi.fn() },
  };
}

/** A menu's item by its label, at any depth. */
export function menuItem(label: string, items: readonly StandInItem[] = desktop.menu): StandInItem {
  const flat = (list: readonly StandInItem[]): readonly StandInItem[] =>
    list.flatMap((item) => [item, ...flat(item.submenu ?? [])]);
  const found = flat(items).find((item) => item.label === label);
  if (found === undefined) throw new Error(`There is no menu item ${label}.`);
  return found;
}

/** Asks the program through its scheme, as a page does. */
export async function askScheme(path: string, body?: unknown): Promise<unknown> {
  const answer = await desktop.scheme?.handle(
    new Request(`bedwright://app/trpc/${path}?batch=1`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body === undefined ? {} : { 0: body }),
    }),
  );
  return answer?.json();
}

/** Starts the real program under the stand-in in a folder of its own, on the invented sample farm; answers that folder. */
export async function startDesktop(prepare: (home: string) => void = () => undefined): Promise<string> {
  const home = mkdtempSync(join(tmpdir(), 'bedwright-desktop-'));
  process.env['BEDWRIGHT_HOME'] = home;
  prepare(home);
  await import('../../electron/main.ts');
  await vi.waitFor(() => {
    if (desktop.windows.length === 0) throw new Error('No window yet.');
  }, 30_000);
  return home;
}

/** Ends the program in order and removes its folder. */
export async function endDesktop(home: string): Promise<void> {
  desktop.presses = 1;
  if (!desktop.app.ended) desktop.app.quit();
  await vi.waitFor(() => {
    if (!desktop.app.ended) throw new Error('Not ended yet.');
  }, 30_000);
  rmSync(home, { recursive: true, force: true });
}
