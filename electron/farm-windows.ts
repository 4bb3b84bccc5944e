import { basename } from 'node:path';
import { type BrowserWindow, dialog, type WebContents } from 'electron';
import type { Program } from '../api/program/program.ts';
import { isOurs, ORIGIN } from './lock-down.ts';
import { say } from './words.ts';

/** The address of a window in which no farm is open yet: the program knows none by this key. */
export const NO_FARM = 'none';

export const addressOfFarm = (key: string, path = '/'): string => `${ORIGIN}${path}?farm=${encodeURIComponent(key)}`;

/** The farm that an address of ours is about. */
export const farmOfAddress = (url: string): string | null =>
  isOurs(url) && URL.canParse(url) ? new URL(url).searchParams.get('farm') : null;

export type FarmWindows = {
  /** Shows a farm in a window of its own; one that is shown already comes to the front, which is said. */
  readonly show: (key: string, url?: string) => void;
  /** Shows a page of ours that another page wants in a second window. */
  readonly showPage: (url: string) => void;
  /** Brings any window to the front; false when there is none. */
  readonly toFront: () => boolean;
  /** Whether a window may go to an address of ours: not when another window shows that farm; then that one comes to the front. */
  readonly mayGo: (contents: WebContents, url: string) => boolean;
  readonly all: () => readonly BrowserWindow[];
};

/** The program's windows, each with the farm it shows. A farm is shown in one window at a time, and let go of with its window. */
export function createFarmWindows(program: Program, open: (url: string, count: number) => BrowserWindow): FarmWindows {
  const shown = new Map<BrowserWindow, string>();

  const windowOf = (key: string): BrowserWindow | undefined => [...shown].find(([, other]) => other === key)?.[0];

  function raise(window: BrowserWindow): void {
    if (window.isMinimized()) window.restore();
    window.show();
    window.focus();
  }

  function sayShown(window: BrowserWindow, key: string): void {
    raise(window);
    const path = program.farms().find((farm) => farm.key === key)?.path ?? '';
    void dialog.showMessageBox(window, {
      type: 'info',
      message: say('{farm} is open already.', { farm: basename(path, '.bedwright') }),
      detail: say('A farm is shown in one window at a time. This is its window.'),
    });
  }

  /** A farm that no window shows any more is closed, so that its file can be moved, copied or opened elsewhere. */
  function letGo(key: string): void {
    if (key === NO_FARM || windowOf(key) !== undefined) return;
    try {
      program.close(key);
    } catch (error) {
      // every change is in the file already; what could not be done is the tidying
      program.log(`a farm could not be closed: ${String(error)}`);
    }
  }

  function show(key: string, url = addressOfFarm(key)): void {
    const known = key === NO_FARM ? undefined : windowOf(key);
    if (known !== undefined) {
      sayShown(known, key);
      return;
    }
    const window = open(url, shown.size);
    shown.set(window, key);
    window.webContents.on('did-navigate', (_event, address) => {
      const before = shown.get(window);
      const now = farmOfAddress(address);
      if (before === undefined || now === null || now === before) return;
      shown.set(window, now);
      letGo(before);
    });
    window.on('closed', () => {
      const last = shown.get(window);
      shown.delete(window);
      if (last !== undefined) letGo(last);
    });
  }

  return {
    show,
    showPage(url) {
      const key = farmOfAddress(url) ?? NO_FARM;
      show(key, url);
    },
    toFront() {
      const [first] = shown.keys();
      if (first === undefined) return false;
      raise(first);
      return true;
    },
    mayGo(contents, url) {
      const key = farmOfAddress(url);
      const other = key === null || key === NO_FARM ? undefined : windowOf(key);
      if (key === null || other === undefined || other.webContents === contents) return true;
      sayShown(other, key);
      return false;
    },
    all: () => [...shown.keys()],
  };
}
