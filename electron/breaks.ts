import { app, type BrowserWindow, dialog, type WebContents } from 'electron';
import type { FaultReports } from '../api/program/fault-reports.ts';
import type { Program } from '../api/program/program.ts';
import { say } from './words.ts';

const LEAST_BETWEEN_RELOADS_MS = 60_000;

/** How a page or a helper ended where nothing is broken. */
const inOrder: ReadonlySet<string> = new Set(['clean-exit', 'killed']);

/**
 * Keeps a report of whatever breaks; the next start says so, nothing sends it. A fault of the program itself ends it, since every change is in
 * the farm's file already and nobody knows what else is wrong; a page that broke off is read anew, once a minute at most. The runtime's own
 * crash reporter is not started: its dumps hold the memory of a process, and with it the farm.
 */
export function reportBreaks({ reports, log, markEnded }: Pick<Program, 'reports' | 'log' | 'markEnded'>): void {
  const words = (error: unknown): string => (error instanceof Error ? (error.stack ?? error.message) : String(error));
  process.on('uncaughtException', (error) => {
    log(words(error));
    reports.add('program', error);
    dialog.showErrorBox(
      say('Bedwright must end'),
      say(
        'Something is wrong in the program. What was entered is kept. A report lies on this computer; the next start shows it.',
      ),
    );
    markEnded();
    app.exit(1);
  });
  process.on('unhandledRejection', (error) => {
    log(words(error));
    reports.add('promise', error);
  });
  const reloaded = new WeakMap<WebContents, number>();
  app.on('render-process-gone', (_event, contents, { reason, exitCode }) => {
    if (reason === 'clean-exit') return;
    log(`a page broke off: ${reason} (${exitCode})`);
    if (!inOrder.has(reason)) reports.add('page', reason);
    const now_ms = Date.now();
    if (now_ms - (reloaded.get(contents) ?? Number.NEGATIVE_INFINITY) < LEAST_BETWEEN_RELOADS_MS) return;
    reloaded.set(contents, now_ms);
    contents.reload();
  });
  app.on('child-process-gone', (_event, { type, reason }) => {
    if (inOrder.has(reason)) return;
    log(`a helper (${type}) broke off: ${reason}`);
    reports.add('helper', `${type}-${reason}`.replaceAll(/[^\w-]/g, '-'));
  });
}

/** A page that does not answer is reported, and the reader may wait for it or have it read anew. */
export function watchAnswers(window: BrowserWindow, reports: FaultReports): void {
  let asked = false;
  window.on('unresponsive', () => {
    reports.add('unanswering', 'unresponsive');
    if (asked) return;
    asked = true;
    void dialog
      .showMessageBox(window, {
        type: 'question',
        message: say('This window does not answer.'),
        detail: say('What was entered is kept. An entry that was not saved yet is lost when the page is read anew.'),
        buttons: [say('Wait'), say('Read the page anew')],
        defaultId: 0,
        cancelId: 0,
      })
      .then(({ response }) => {
        asked = false;
        if (response === 1) window.webContents.reload();
      });
  });
}
