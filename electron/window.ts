import { app, BrowserWindow } from 'electron';
import { ORIGIN } from './lock-down.ts';
import { readWindowState, writeWindowState } from './window-state.ts';

/** Opens a window on one farm. The page has no Node, no bridge and no way out: all it can do is ask the one door. */
export function openWindow(farmKey: string | null, statePath: string, log: (line: string) => void): BrowserWindow {
  const state = readWindowState(statePath, log);
  const window = new BrowserWindow({
    width: state.width,
    height: state.height,
    ...(state.x === undefined || state.y === undefined ? {} : { x: state.x, y: state.y }),
    minWidth: 900,
    minHeight: 600,
    show: false,
    title: 'Bedwright',
    webPreferences: {
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
      devTools: !app.isPackaged,
    },
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
  void window.loadURL(farmKey === null ? `${ORIGIN}/` : `${ORIGIN}/?farm=${encodeURIComponent(farmKey)}`);
  return window;
}
