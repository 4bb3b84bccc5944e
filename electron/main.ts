/** The desktop window: a private scheme in front of the program's one door. No rule of the trade lives here. */
import { appendFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { app, type BrowserWindow, crashReporter, dialog, protocol, session } from 'electron';
import { desktopDoor } from '../api/http/desktop-door.ts';
import { openFirstFarm, placesOf, startProgram } from '../api/program/start-program.ts';
import { isOurs, lockNavigation, lockSession, ORIGIN, SCHEME } from './lock-down.ts';
import { installMenu } from './menu.ts';
import { openWindow } from './window.ts';

protocol.registerSchemesAsPrivileged([
  { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
]);
app.enableSandbox();
crashReporter.start({ uploadToServer: false });

const places = placesOf(import.meta.url, process.env);
const logPath = join(places.data, 'program.log');
const statePath = join(places.data, 'window.json');

function log(line: string): void {
  mkdirSync(places.data, { recursive: true });
  appendFileSync(logPath, `${line}\n`);
}

/** The farm named on the command line or by a double click on its file. */
const farmIn = (words: readonly string[]): string | undefined => words.find((word) => word.endsWith('.bedwright'));

function run(): void {
  const program = startProgram(places, log);
  const door = desktopDoor(program, places.pages);
  const windows = new Map<BrowserWindow, string | null>();
  const show = (farmKey: string | null): void => {
    const window = openWindow(farmKey, statePath, log);
    windows.set(window, farmKey);
    window.on('closed', () => windows.delete(window));
  };
  const showFarm = (path: string): void => {
    try {
      const { key } = program.open(path);
      app.addRecentDocument(path);
      show(key);
    } catch (error) {
      dialog.showErrorBox('This farm was not opened', error instanceof Error ? error.message : String(error));
    }
  };

  lockNavigation(app);
  app.on('second-instance', (_event, words) => {
    const path = farmIn(words.slice(1));
    if (path !== undefined) return showFarm(path);
    const first = windows.keys().next().value;
    if (first === undefined) return show(null);
    if (first.isMinimized()) first.restore();
    first.focus();
  });
  app.on('open-file', (event, path) => {
    event.preventDefault();
    if (app.isReady()) showFarm(path);
  });
  app.on('window-all-closed', () => {
    if (process.platform !== 'darwin') app.quit();
  });
  app.on('activate', () => {
    if (windows.size === 0) show(null);
  });
  let closed = false;
  app.on('will-quit', (event) => {
    if (closed) return;
    event.preventDefault();
    closed = true;
    void program.closeAll().finally(() => app.quit());
  });

  void app.whenReady().then(() => {
    lockSession(session.defaultSession);
    protocol.handle(SCHEME, (request) =>
      isOurs(request.url) ? door(request) : new Response('There is no such page.', { status: 404 }),
    );
    installMenu({
      openFarm: showFarm,
      newWindow: () => show(null),
      goTo: (window, path) => void window.loadURL(`${ORIGIN}${path}${windows.get(window) ? `?farm=${windows.get(window)}` : ''}`),
    });
    try {
      openFirstFarm(program, farmIn(process.argv.slice(1)));
    } catch (error) {
      dialog.showErrorBox('This farm was not opened', error instanceof Error ? error.message : String(error));
    }
    show(null);
  });
}

if (app.requestSingleInstanceLock()) run();
else app.quit();
