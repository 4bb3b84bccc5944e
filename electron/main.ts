/** The desktop window: a private scheme in front of the program's one door. No rule of the trade lives here. */
import { appendFileSync, mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { app, BrowserWindow, nativeTheme, protocol } from 'electron';
import type { Desktop, WindowLook } from '../api/program/desktop.ts';
import { openFirstFarm, placesOf, startProgram } from '../api/program/start-program.ts';
import { farmsIn } from './asked-farms.ts';
import { reportBreaks, watchAnswers } from './breaks.ts';
import { readCommands, tellPage } from './commands.ts';
import { chooseFile, tellRefusal } from './dialogs.ts';
import { createFarmWindows, NO_FARM } from './farm-windows.ts';
import { askBeforeLeaving } from './leaving.ts';
import { lockNavigation, SCHEME } from './lock-down.ts';
import { followTheme, groundNow, readLook, writeLook } from './look.ts';
import { installMenu } from './menu.ts';
import { watchPower } from './power.ts';
import { serve } from './scheme.ts';
import { runSelfTest } from './self-test.ts';
import { openWindow } from './window.ts';
import { say, speak } from './words.ts';

protocol.registerSchemesAsPrivileged([
  { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
]);
app.enableSandbox();

const places = placesOf(import.meta.url, process.env);
const logPath = join(places.data, 'program.log');
const statePath = join(places.data, 'window.json');
const lookPath = join(places.data, 'look.json');

function log(line: string): void {
  mkdirSync(places.data, { recursive: true });
  appendFileSync(logPath, `${line}\n`);
}

function run(): void {
  const commands = readCommands(places.resources);
  const take = (look: WindowLook): void => {
    followTheme(look.theme);
    speak(places.resources, look.language, log);
  };
  take(readLook(lookPath, log));

  const desktop: Desktop = {
    chooseFile,
    followLook(look) {
      take(look);
      writeLook(lookPath, look, log);
      renewMenu();
    },
    recentChanged(added) {
      if (added === null) app.clearRecentDocuments();
      else app.addRecentDocument(added);
      renewMenu();
    },
  };
  const program = startProgram(places, log, desktop);
  reportBreaks(program);
  const leaving = askBeforeLeaving(program);
  const windows = createFarmWindows(program, (url, count) => {
    const window = openWindow(url, count, statePath, log);
    watchAnswers(window, program.reports);
    window.on('close', (event) => {
      const endsAll = windows.all().length === 1 && process.platform !== 'darwin';
      if (endsAll && !leaving.mayLeave(window)) event.preventDefault();
    });
    return window;
  });

  function openFarm(path: string): void {
    try {
      windows.show(program.open(path).key);
    } catch (error) {
      tellRefusal(say('This farm was not opened'), error);
    }
  }
  const askForFarm = async (over: BrowserWindow | null): Promise<void> => {
    const path = await chooseFile({ kind: 'open', title: say('Open a farm'), at: places.data }, over);
    if (path !== null) openFarm(path);
  };
  /** The farms asked for, else the last one used, else the invented sample. */
  function openAsked(asked: readonly string[]): void {
    for (const path of asked) openFarm(path);
    if (windows.all().length > 0) return;
    try {
      if (asked.length === 0 && program.farms().length === 0) openFirstFarm(program, undefined);
    } catch (error) {
      tellRefusal(say('This farm was not opened'), error);
    }
    windows.show(program.farms()[0]?.key ?? NO_FARM);
  }
  function renewMenu(): void {
    if (!app.isReady()) return;
    installMenu(
      {
        askForFarm: (over) => void askForFarm(over),
        openFarm,
        newWindow: () => windows.show(NO_FARM),
        clearRecent: () => program.recent.clear(),
      },
      { commands, recent: program.recent.list() },
    );
  }

  const asked = [...farmsIn(process.argv.slice(1), process.cwd())];
  lockNavigation(app, { openOurs: windows.showPage, mayGo: windows.mayGo });
  app.on('second-instance', (_event, words, folder) => {
    const paths = farmsIn(words.slice(1), folder);
    for (const path of paths) openFarm(path);
    if (paths.length === 0 && !windows.toFront()) openAsked([]);
  });
  app.on('open-file', (event, path) => {
    event.preventDefault();
    // a double click that starts the program says so before its windows can be made
    if (app.isReady()) openFarm(resolve(path));
    else asked.push(resolve(path));
  });
  app.on('window-all-closed', () => {
    if (process.platform !== 'darwin') app.quit();
  });
  app.on('activate', () => {
    if (windows.all().length === 0) openAsked([]);
  });
  nativeTheme.on('updated', () => {
    for (const window of BrowserWindow.getAllWindows()) window.setBackgroundColor(groundNow());
  });
  app.on('before-quit', (event) => {
    if (!leaving.mayLeave(BrowserWindow.getFocusedWindow())) event.preventDefault();
  });
  let closed = false;
  app.on('will-quit', (event) => {
    if (closed) return;
    event.preventDefault();
    closed = true;
    void program.closeAll().finally(() => app.quit());
  });

  void app.whenReady().then(() => {
    serve(program);
    renewMenu();
    watchPower(program, {
      renew: () => {
        for (const window of windows.all()) tellPage(window.webContents, 'renew');
      },
      leave: leaving.force,
    });
    if (process.platform === 'win32') app.setJumpList([{ type: 'recent' }]);
    openAsked(asked);
  });
}

// beside a program that runs already: the test touches nothing of it
if (process.argv.includes('--self-test')) void runSelfTest(places);
else if (app.requestSingleInstanceLock()) run();
else app.quit();
