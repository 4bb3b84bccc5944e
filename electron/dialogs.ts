import { BrowserWindow, dialog, type OpenDialogOptions } from 'electron';
import type { FileWish } from '../api/program/desktop.ts';
import { say } from './words.ts';

const farmFiles = () => [{ name: say('Farm files'), extensions: ['bedwright'] }];

/** The system's own dialog over the window that is in front; null when the reader closes it. */
export async function chooseFile({ kind, title, at }: FileWish, over = BrowserWindow.getFocusedWindow()): Promise<string | null> {
  if (kind === 'save') {
    const options = { title, defaultPath: at, filters: farmFiles() };
    const said = over === null ? await dialog.showSaveDialog(options) : await dialog.showSaveDialog(over, options);
    return said.canceled || said.filePath === '' ? null : said.filePath;
  }
  const options: OpenDialogOptions =
    kind === 'folder'
      ? { title, defaultPath: at, properties: ['openDirectory', 'createDirectory'] }
      : { title, defaultPath: at, properties: ['openFile'], filters: farmFiles() };
  const said = over === null ? await dialog.showOpenDialog(options) : await dialog.showOpenDialog(over, options);
  return said.canceled ? null : (said.filePaths[0] ?? null);
}

/** Says in plain words why something was not done. */
export function tellRefusal(title: string, error: unknown): void {
  dialog.showErrorBox(title, error instanceof Error ? error.message : String(error));
}
