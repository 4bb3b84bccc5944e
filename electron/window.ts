import { app, BrowserWindow, screen, type WebPreferences } from 'electron';
import { groundNow } from './look.ts';
import { readWindowState, type WindowState, writeWindowState } from './window-state.ts';

/** A page has no Node, no bridge and no way out: all it can do is ask the one door. */
export const pagePreferences = (): WebPreferences => ({
  sandbox: true,
  contextIsolation: true,
  webSecurity: true,
  nodeIntegration: false,
  nodeIntegrationInWorker: false,
  nodeIntegrationInSubFrames: false,
  webviewTag: false,
  navigateOnDragDrop: false,
  spellcheck: false,
  allowRunningInsecureContent: false,
  experimentalFeatures: false,
  devTools: !app.isPackaged,
});

/** Each further window stands a little lower and to the right, so that it does not hide the first. */
const STEP_px = 28;

/** Where a window stood last, unless that screen is gone. */
function placeOf({ x, y, width, height }: WindowState, count: number): { readonly x: number; readonly y: number } | undefined {
  if (x === undefined || y === undefined) return undefined;
  const seen = screen.getAllDisplays().some(({ workArea }) => {
    const across = Math.min(x + width, workArea.x + workArea.width) - Math.max(x, workArea.x);
    const down = Math.min(y + height, workArea.y + workArea.height) - Math.max(y, workArea.y);
    return across > 100 && down > 100 && y >= workArea.y - 1;
  });
  return seen ? { x: x + count * STEP_px, y: y + count * STEP_px } : undefined;
}

/** Opens a window on a page of the program; `count` others are open. */
export function openWindow(url: string, count: number, statePath: string, log: (line: string) => void): BrowserWindow {
  const state = readWindowState(statePath, log);
  const window = new BrowserWindow({
    width: state.width,
    height: state.height,
    ...placeOf(state, count),
    minWidth: 900,
    minHeight: 600,
    show: false,
    title: 'Bedwright',
    backgroundColor: groundNow(),
    webPreferences: pagePreferences(),
  });
  window.once('ready-to-show', () => {
    if (state.maximized) window.maximize();
    window.show();
  });
  window.on('close', () => {
    const bounds = window.getNormalBounds();
    writeWindowState(
      statePath,
      { width: bounds.width, height: bounds.height, x: bounds.x, y: bounds.y, maximized: window.isMaximized() },
      log,
    );
  });
  void window.loadURL(url);
  return window;
}
