import { app, BrowserWindow } from 'electron';
import type { Program, ProgramPlaces } from '../api/program/program.ts';
import { exitCodeOf, printedResult, selfTest } from '../api/program/self-test.ts';
import { lockNavigation, ORIGIN } from './lock-down.ts';
import { serve } from './scheme.ts';
import { pagePreferences } from './window.ts';

const PAGE_LIMIT_MS = 60_000;

/** `--self-test`: tries what every start rests on, a drawn page too, says so a line each, and ends with 0 when all is fine, else 1. */
export async function runSelfTest(places: ProgramPlaces): Promise<void> {
  // without a listener the runtime ends the program with its last window, before the test is through
  app.on('window-all-closed', () => undefined);
  lockNavigation(app, { openOurs: () => undefined, mayGo: () => true });
  await app.whenReady();
  const lines = await selfTest(places, drawFirstPage);
  process.stdout.write(`${printedResult(lines)}\n`, () => app.exit(exitCodeOf(lines)));
}

/** The page is drawn once it names itself and its farm in the window's title: its script ran and its questions were answered. */
async function drawFirstPage(program: Program): Promise<string> {
  serve(program);
  const window = new BrowserWindow({ show: false, webPreferences: pagePreferences() });
  try {
    return await new Promise<string>((resolve, reject) => {
      const limit = setTimeout(() => reject(new Error('No page was drawn in a minute.')), PAGE_LIMIT_MS);
      window.on('page-title-updated', (_event, title) => {
        if (!title.includes(' · ')) return;
        clearTimeout(limit);
        resolve(title);
      });
      window.webContents.on('render-process-gone', (_event, { reason }) => {
        clearTimeout(limit);
        reject(new Error(`The page broke off: ${reason}.`));
      });
      window.loadURL(`${ORIGIN}/week`).catch(reject);
    });
  } finally {
    window.destroy();
  }
}
