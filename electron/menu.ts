import { app, type BrowserWindow, dialog, Menu, type MenuItemConstructorOptions } from 'electron';

export type MenuActions = {
  readonly openFarm: (path: string) => void;
  readonly newWindow: () => void;
  /** Sends the window to a page of the program. */
  readonly goTo: (window: BrowserWindow, path: string) => void;
};

const FARM_FILES = [{ name: 'Farm files', extensions: ['bedwright'] }];

async function askForFarm(window: BrowserWindow | undefined, actions: MenuActions): Promise<void> {
  const options = { properties: ['openFile' as const], filters: FARM_FILES };
  const said = window === undefined ? await dialog.showOpenDialog(options) : await dialog.showOpenDialog(window, options);
  const path = said.filePaths[0];
  if (!said.canceled && path !== undefined) actions.openFarm(path);
}

/** The menu bar. Undo and redo of the farm are the page's own keys, so that a text field keeps its own undo. */
export function installMenu(actions: MenuActions): void {
  const isMac = process.platform === 'darwin';
  const go = (label: string, path: string): MenuItemConstructorOptions => ({
    label,
    click: (_item, window) => {
      if (window !== undefined) actions.goTo(window as BrowserWindow, path);
    },
  });
  const template: MenuItemConstructorOptions[] = [
    ...(isMac ? [{ role: 'appMenu' as const }] : []),
    {
      label: '&File',
      submenu: [
        {
          label: 'Open farm…',
          accelerator: 'CmdOrCtrl+O',
          click: (_item, window) => void askForFarm(window as BrowserWindow | undefined, actions),
        },
        { label: 'Open recent', role: 'recentDocuments', submenu: [{ label: 'Clear', role: 'clearRecentDocuments' }] },
        { label: 'New window', accelerator: 'CmdOrCtrl+Shift+N', click: actions.newWindow },
        go('Files and backups', '/farm'),
        { type: 'separator' },
        {
          label: 'Print…',
          accelerator: 'CmdOrCtrl+P',
          click: (_item, window) => (window as BrowserWindow | undefined)?.webContents.print(),
        },
        { type: 'separator' },
        isMac ? { role: 'close' } : { role: 'quit' },
      ],
    },
    { role: 'editMenu' },
    {
      label: '&Go',
      submenu: [
        go('This week', '/week'),
        go('Beds', '/beds'),
        go('Season', '/season'),
        go('Soil', '/soil'),
        go('Water', '/water'),
        go('Orders', '/orders'),
        go('Harvest', '/harvest'),
        go('Costs', '/costs'),
        go('Library', '/library'),
        go('Farm', '/farm'),
      ],
    },
    {
      label: '&View',
      submenu: [
        { role: 'resetZoom' },
        { role: 'zoomIn' },
        { role: 'zoomOut' },
        { role: 'togglefullscreen' },
        ...(app.isPackaged ? [] : [{ role: 'toggleDevTools' as const }]),
      ],
    },
    { role: 'windowMenu' },
  ];
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
}
